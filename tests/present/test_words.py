"""Figures and times as text."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.amounts import work_out
from studio_log.domain.methods import AmountRule, Basis, Spread
from studio_log.domain.span_text import read_span
from studio_log.present import words

NOW = datetime(2026, 6, 9, 8, 0, tzinfo=UTC)
"""Tuesday 9 June 2026, 09:00 in London."""
LONDON = "Europe/London"


def hours(*figures: float) -> Spread:
    return Spread(*(timedelta(hours=figure) for figure in figures))


@pytest.mark.parametrize(
    ("grams", "metric", "us"),
    [
        (299.7, "299.7 g", "10.6 oz"),
        (149.85, "149.9 g", "5.3 oz"),
        (5, "5 g", "0.18 oz"),
        (538.640939375, "538.6 g", "1 lb 3 oz"),
        (453.59237, "453.6 g", "1 lb"),
        (1234.5, "1.235 kg", "2 lb 11.5 oz"),
        (None, "not known", "not known"),
    ],
)
def test_a_weight_is_said_in_both_systems(grams: float | None, metric: str, us: str) -> None:
    """1 oz = 28.349523125 g (NIST Handbook 44 App. C)."""
    assert (words.mass(grams), words.mass(grams, "us")) == (metric, us)


@pytest.mark.parametrize(
    ("volume", "metric", "us"),
    [
        (0.8991, "0.9 L", "3.8 US cups"),
        (0.2365882365, "0.24 L", "1 US cup"),
        (5.3946, "5.4 L", "1.4 US gal"),
        (None, "not known", "not known"),
    ],
)
def test_a_volume_is_said_in_both_systems(volume: float | None, metric: str, us: str) -> None:
    """1 US cup = 236.5882365 mL (NIST Handbook 44 App. C)."""
    assert (words.litres(volume), words.litres(volume, "us")) == (metric, us)


@pytest.mark.parametrize(
    ("metres", "metric", "us"),
    [(1.8, "180 cm", "70.9 in"), (2.7432, "274.3 cm", "3 yd"), (12.5, "12.5 m", "13.67 yd"),
     (None, "not known", "not known")],
)  # fmt: skip
def test_a_length_is_said_in_both_systems(metres: float | None, metric: str, us: str) -> None:
    assert (words.length(metres), words.length(metres, "us")) == (metric, us)


def test_density_is_said_in_both_systems() -> None:
    """140 g/m² = 4.129 oz/yd² (tests/reference/unit_examples.csv)."""
    assert words.density(140) == "140 g/m²"
    assert words.density(140, "us") == "4.1 oz/yd²"
    assert words.density(None) == "not known"


def test_an_amount_has_its_kitchen_measure_beside_it() -> None:
    beans, water = work_out(
        (
            AmountRule("beans", "dry soybeans", Basis.WOF, 30, cup_grams=183),
            AmountRule("soak", "soak water", Basis.TIMES_VOLUME, 4, of="beans", at_least=True),
        ),
        grams=299.7,
    )
    assert words.amount_with_kitchen(beans) == "90 g (about ½ US cup)"
    assert words.amount_with_kitchen(beans, "us") == "3.2 oz (about ½ US cup)"
    assert words.amount_with_kitchen(water) == "0.47 L or more"
    assert words.amount(water, "us") == "2 US cups or more"


@pytest.mark.parametrize(
    ("text", "said"),
    [("40 s", "40 s"), ("2 min", "2 min"), ("1 h", "1 h"), ("3 h 40 min", "3 h 40 min"),
     ("59 min 40 s", "1 h"), ("36 h", "36 h"), ("47 h 59 min", "47 h 59 min"), ("2 d", "2 d"),
     ("2 d 5 h", "2 d 5 h"), ("17 d", "17 d"), ("17 d 13 h", "18 d"), ("90 d", "90 d")],
)  # fmt: skip
def test_a_length_of_time_is_said(text: str, said: str) -> None:
    assert words.span(read_span(text)) == said


def test_no_time_at_all_is_said() -> None:
    assert words.span(timedelta(0)) == "0 min"


@pytest.mark.parametrize(
    ("seconds", "said"), [(119, "1:59"), (840, "14:00"), (0.2, "0:01"), (0, "0:00"), (-5, "0:00")]
)
def test_a_countdown_is_said(seconds: float, said: str) -> None:
    assert words.countdown(timedelta(seconds=seconds)) == said


@pytest.mark.parametrize(
    ("at", "said"),
    [
        (datetime(2026, 6, 9, 12, 8, tzinfo=UTC), "today 13:08"),
        (datetime(2026, 6, 8, 19, 0, tzinfo=UTC), "yesterday 20:00"),
        (datetime(2026, 6, 9, 23, 30, tzinfo=UTC), "tomorrow 00:30"),
        (datetime(2026, 6, 16, 12, 8, tzinfo=UTC), "Tue 16 June 13:08"),
        (datetime(2026, 3, 11, 8, 0, tzinfo=UTC), "Wed 11 March 08:00"),
        (datetime(2027, 1, 1, 8, 0, tzinfo=UTC), "Fri 1 January 2027 08:00"),
    ],
)
def test_a_moment_is_said_as_seen_from_now(at: datetime, said: str) -> None:
    """Weekdays of 2026 and 2027 by the calendar; London is an hour ahead of UTC in summer."""
    assert words.moment(at, NOW, LONDON) == said


def test_the_wall_is_that_of_the_zone() -> None:
    assert words.clock(NOW, LONDON) == "09:00"
    assert words.clock(NOW, "Asia/Kolkata") == "13:30"
    assert words.day(NOW, LONDON) == "Tue 9 June"
    assert words.day(NOW, "Pacific/Kiritimati") == "Tue 9 June"
    assert words.day(NOW + timedelta(hours=2), "Pacific/Kiritimati") == "Wed 10 June"


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(120, "2 h late"), (0.5, "on time"), (-120, "in 2 h"), (25, "25 min late")],
)
def test_lateness_is_said(minutes: float, said: str) -> None:
    assert words.lateness(timedelta(minutes=minutes)) == said


@pytest.mark.parametrize(
    ("spread", "said"),
    [
        (hours(10, 14, 18), "10–18 h, aim 14 h"),
        (hours(8, 12, 18), "8–18 h, aim 12 h"),
        (hours(1, 1, 1), "1 h"),
        (hours(0, 1, 2), "up to 2 h, aim 1 h"),
        (hours(0.5, 1, 2), "30 min – 2 h, aim 1 h"),
        (hours(1 / 60, 1 / 60, 2 / 60), "1–2 min, aim 1 min"),
        (hours(1.5, 2, 3.5), "1 h 30 min – 3 h 30 min, aim 2 h"),
    ],
)
def test_a_window_is_said(spread: Spread, said: str) -> None:
    assert words.window_words(spread) == said


def test_a_ratio_is_said() -> None:
    assert words.ratio(5) == "5:1"
    assert words.ratio(17.53) == "17.5:1"


@given(st.integers(1, 2 * 24 * 60 - 1))
def test_what_is_said_of_a_length_of_time_is_read_back(minutes: int) -> None:
    length = timedelta(minutes=minutes)
    assert read_span(words.span(length)) == length
