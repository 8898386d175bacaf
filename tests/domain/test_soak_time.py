"""How long beans soak, by room; the figures behind are checked in tests/science/test_soaking.py."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.soak_time import soak_time, soaked_words

HOUR = timedelta(hours=1)


@pytest.mark.parametrize(("celsius", "likely"), [(5, 10.887), (20, 7.103), (25, 6.220)])
def test_the_likely_time_is_that_of_the_table_and_the_band_is_two_fifths(
    celsius: float, likely: float
) -> None:
    """tests/reference/soak_peleg_check.csv, h_to_100; the band of soak_points.csv."""
    time = soak_time(celsius).time
    assert time.aim / HOUR == pytest.approx(likely, rel=1e-3)
    assert time.earliest / HOUR == pytest.approx(likely * 0.6, rel=1e-3)
    assert time.latest / HOUR == pytest.approx(likely * 1.4, rel=1e-3)


def test_in_heat_souring_ends_the_soak() -> None:
    found = soak_time(35)
    assert found.time.latest == found.sours_after == 6 * HOUR
    assert found.change_water == 3 * HOUR


def test_in_the_cold_the_water_need_not_be_changed() -> None:
    found = soak_time(5)
    assert found.change_water is None
    assert found.sours_after == 48 * HOUR


def test_published_practice_lies_in_the_window() -> None:
    """Best milk at 8 h, about 20 °C (black-soybean and soymilk papers); 4 to 6 h at 25 (trade)."""
    assert soak_time(20).time.earliest < 8 * HOUR < soak_time(20).time.latest
    assert soak_time(25).time.earliest < 5 * HOUR < soak_time(25).time.latest


@pytest.mark.parametrize(
    ("celsius", "words"), [(36, "not soak hot"), (50, "not soak hot"), (3, "hardly swell"),
                           (-5, "hardly swell"), (float("nan"), "not soak hot")],
)  # fmt: skip
def test_too_hot_and_too_cold_are_refused(celsius: float, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        soak_time(celsius)


@pytest.mark.parametrize(
    ("soaked", "words"),
    [(240, "2.4 times the dry weight: soaked through."), (190, "keep soaking, to 200 g at least"),
     (270, "more than beans take up"), (200, "soaked through"), (260, "soaked through")],
)  # fmt: skip
def test_the_drained_weight_says_whether_they_are_through(soaked: float, words: str) -> None:
    """2.0 to 2.6 times the dry weight; 100 g gave about 240 g (shukuko.net)."""
    assert words in soaked_words(100, soaked)


def test_weights_of_nothing_are_refused() -> None:
    with pytest.raises(Refusal, match="above nought"):
        soaked_words(0, 240)


@given(st.floats(4, 35))
def test_a_window_is_in_order_and_before_the_souring(celsius: float) -> None:
    found = soak_time(celsius)
    assert timedelta(0) < found.time.earliest < found.time.aim <= found.time.latest
    assert found.time.latest <= found.sours_after
    assert found.look_at < found.time.aim


@given(st.floats(4, 34), st.floats(0.1, 1))
def test_warmer_beans_are_through_no_later(celsius: float, more: float) -> None:
    one, other = soak_time(celsius), soak_time(celsius + more)
    assert other.time.aim <= one.time.aim
    assert other.sours_after <= one.sours_after
