"""Soaking beans: the arithmetic, and how near it comes to what was published."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science import soaking
from studio_log.science.soaking import gain_after, hours_to, k1_at, soaked_ratio, sours_after
from tests.support.reference import numbers, rows

POINTS = {row["n"]: row for row in rows("soak_points.csv")}
SOURING = {row["n"]: row for row in rows("soak_souring.csv")}


@pytest.mark.parametrize("row", numbers("soak_peleg_check.csv"), ids=lambda row: f"{row['n']:g}")
def test_the_equation_gives_the_checked_values(row: dict[str, float]) -> None:
    """tests/reference/soak_peleg_check.csv, derived constants: 0.1 %."""
    assert k1_at(row["T_C"]) == pytest.approx(row["k1"], rel=1e-3)
    assert pytest.approx(row["k2"], rel=1e-3) == soaking.K2
    assert gain_after(row["hours"], row["T_C"]) == pytest.approx(row["gain_pct"], rel=1e-3)
    assert hours_to(100, row["T_C"]) == pytest.approx(row["h_to_100"], rel=1e-3)
    equilibrium = 0.9 / soaking.K2
    assert hours_to(equilibrium, row["T_C"]) == pytest.approx(row["h_to_90pct_eq"], rel=1e-3)


@pytest.mark.parametrize("number", ["1", "3"])
def test_the_korean_points_are_met_within_a_thirtieth(number: str) -> None:
    """Korean J. Food Sci. Technol., December 1987, abstract: the points it was fitted to."""
    row = POINTS[number]
    found = gain_after(float(row["hours"]), float(row["T_C"]))
    assert found == pytest.approx(float(row["gain_pct"]), rel=1 / 30)


def test_points_it_was_not_fitted_to_lie_in_the_band() -> None:
    """Soybean microwave-roasting paper, 87.9 % at 5 h in the room; tofu page, 120 % at 25 °C."""
    roasting, tofu = POINTS["7"], POINTS["11"]
    assert gain_after(5, 20) == pytest.approx(float(roasting["gain_pct"]), rel=soaking.GAIN_BAND)
    low, high = (float(one) for one in tofu["hours"].split(".."))
    for hours in (low, high):
        assert gain_after(hours, 25) == pytest.approx(120, rel=0.30)  # grade C; just outside


def test_the_kitchen_full_soak_is_about_the_equilibrium() -> None:
    """A Japanese tofu page: 130 %; ours is 132.9, the mean of 70 varieties."""
    equilibrium = 1 / soaking.K2
    assert equilibrium == pytest.approx(float(POINTS["13"]["gain_pct"]), rel=0.03)


def test_boiling_is_outside_the_equation() -> None:
    """100 °C for a quarter of an hour gives 100 % (Johnson and Snyder 1978, as cited)."""
    assert float(POINTS["5"]["T_C"]) == 100
    with pytest.raises(ValueError, match="outside"):
        gain_after(0.25, 100)


def test_no_limit_is_later_than_a_reported_souring() -> None:
    """tests/reference/soak_souring.csv; limits themselves are judgement."""
    assert sours_after(18) < float(SOURING["1"]["hours"])  # not sour yet at 48 h
    assert sours_after(30) < float(SOURING["7"]["hours"])  # full fermentation by 24 h
    for celsius in (20, 25):
        assert sours_after(celsius) <= float(SOURING["9"]["hours"]) * 4 / 3  # 12 h may spoil
    assert sours_after(25) <= float(SOURING["9"]["hours"])


@pytest.mark.parametrize(
    ("celsius", "hours"),
    [(0, 48), (5, 48), (10, 36), (15, 24), (20, 16), (25, 12), (30, 8), (35, 6)],
)
def test_the_souring_limits_are_the_proposed_ones(celsius: float, hours: float) -> None:
    """Judgement, no source."""
    assert sours_after(celsius) == hours


def test_a_hot_soak_is_refused() -> None:
    """Korean paper 1987: 10 to 15 g of 100 g are lost at 50 °C."""
    for celsius in (35.1, 50, float("nan")):
        with pytest.raises(ValueError, match="not meant"):
            sours_after(celsius)


def test_soaked_over_dry() -> None:
    """shukuko.net: 100 g dry gave about 240 g."""
    assert soaked_ratio(100, 240) == pytest.approx(2.40)
    assert soaking.RATIO_LEAST <= soaked_ratio(250, 575) <= soaking.RATIO_MOST
    for weights in ((0, 1), (1, 0), (float("nan"), 1), (1, float("inf"))):
        with pytest.raises(ValueError, match="above nought"):
            soaked_ratio(*weights)


@pytest.mark.parametrize("hours", [-1, float("nan"), float("inf")])
def test_hours_that_cannot_have_passed_are_refused(hours: float) -> None:
    with pytest.raises(ValueError, match="have not passed"):
        gain_after(hours, 20)


@pytest.mark.parametrize("gain", [-1, 132.92, 200, float("nan")])
def test_a_gain_that_is_never_reached_is_refused(gain: float) -> None:
    with pytest.raises(ValueError, match="never gain"):
        hours_to(gain, 20)


@given(st.floats(0, 120), st.floats(4, 50))
def test_gain_and_hours_there_and_back(gain: float, celsius: float) -> None:
    assert gain_after(hours_to(gain, celsius), celsius) == pytest.approx(gain, abs=1e-6)


@given(st.floats(4, 49), st.floats(0.1, 1), st.floats(0.5, 48))
def test_warmer_water_and_longer_soaks_give_more(celsius: float, more: float, hours: float) -> None:
    assert gain_after(hours, celsius + more) > gain_after(hours, celsius)
    assert gain_after(hours + more, celsius) > gain_after(hours, celsius)
    if celsius < 34:
        assert sours_after(celsius + more) <= sours_after(celsius)
