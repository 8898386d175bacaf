"""The air while cloth hangs; 65 % and moving air below 60: CCI Notes 13/15."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.room_air import damp_warnings, mean_air
from studio_log.domain.sensor_file import RoomReading

START = datetime(2026, 6, 9, 12, tzinfo=UTC)
HOUR = timedelta(hours=1)


def readings(*humidities: float, every: timedelta = HOUR) -> list[RoomReading]:
    return [RoomReading(START + n * every, 20 + n, one) for n, one in enumerate(humidities)]


def test_the_mean_goes_by_time() -> None:
    """50 % for one hour, 80 % for two (computed): 70."""
    found = mean_air(readings(50, 80), START, START + 3 * HOUR)
    assert found is not None
    assert (found.humidity, found.dampest, found.covered) == pytest.approx((70, 80, 1))
    assert found.celsius == pytest.approx((20 + 2 * 21) / 3)


def test_each_reading_counts_until_the_next() -> None:
    """40, 50, 90 % for an hour each (computed): 60."""
    found = mean_air(readings(40, 50, 90), START, START + 3 * HOUR)
    assert found is not None
    assert (found.humidity, found.dampest) == pytest.approx((60, 90))


def test_a_reading_from_before_stands_for_the_beginning() -> None:
    found = mean_air(readings(50, 80), START + HOUR / 2, START + HOUR)
    assert found is not None
    assert (found.humidity, found.covered) == pytest.approx((50, 1))


def test_a_sensor_that_fell_silent_says_nothing_after_three_hours() -> None:
    found = mean_air(readings(50), START, START + 12 * HOUR)
    assert found is not None
    assert found.covered == pytest.approx(3 / 12)
    assert mean_air(readings(50), START + 4 * HOUR, START + 5 * HOUR) is None


def test_without_readings_or_time_there_is_no_mean() -> None:
    assert mean_air([], START, START + HOUR) is None
    assert mean_air(readings(50), START, START) is None
    assert mean_air(readings(50), START - 2 * HOUR, START - HOUR) is None


@given(st.lists(st.floats(0, 100), min_size=1, max_size=30), st.floats(0, 40), st.floats(0.1, 40))
def test_a_mean_lies_between_what_was_read(
    humidities: list[float], from_hour: float, hours: float
) -> None:
    start = START + from_hour * HOUR
    found = mean_air(readings(*humidities), start, start + hours * HOUR)
    if found is not None:
        assert min(humidities) - 1e-9 <= found.humidity <= found.dampest + 1e-9
        assert found.dampest <= max(humidities)
        assert 0 < found.covered <= 1 + 1e-9


@pytest.mark.parametrize(
    ("humidity", "hours", "slugs"),
    [(66, 3, ["damp-air"]), (65, 3, []), (50, 24, []), (50, 25, ["damp-long"]),
     (80, 30, ["damp-air", "damp-long"]), (None, 30, ["damp-long"]), (None, 3, [])],
)  # fmt: skip
def test_damp_cloth_in_damp_air_is_warned_of(
    humidity: float | None, hours: float, slugs: list[str]
) -> None:
    found = damp_warnings(humidity, hours * HOUR)
    assert [one.slug for one in found] == slugs
    assert all(one.source == "CCI Notes 13/15" and one.words.endswith(".") for one in found)
