"""Soy milk: published points (tests/reference/soymilk_points.csv) and the trade's own sums."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science import soy_milk
from studio_log.science.soy_milk import (
    grind_litres,
    keeps_hours,
    milk_left,
    protein_on_cloth,
    protein_per_litre,
    recovery,
    solids_recovery,
)
from tests.support.reference import rows

POINTS = {row["n"]: float(row["value"]) for row in rows("soymilk_points.csv") if row["n"] != "17"}


def test_what_comes_into_the_milk_is_as_measured() -> None:
    """Yuwono and Susanto, abstract: ten parts of water, and thirty."""
    assert recovery(10) * 100 == pytest.approx(POINTS["3"])
    assert solids_recovery(10) * 100 == pytest.approx(POINTS["1"])
    assert recovery(30) * 100 == pytest.approx(83.21)
    assert solids_recovery(30) * 100 == pytest.approx(68.44)
    assert recovery(20) * 100 == pytest.approx((73.08 + 83.21) / 2)
    assert recovery(1) == recovery(10)


def test_the_traditional_way_leaves_a_third_in_the_pulp() -> None:
    """Beverages 2 (2016) 15: about 35 % of the solids stay behind."""
    assert 1 - solids_recovery(20) == pytest.approx(POINTS["5"] / 100, abs=0.06)


def test_the_figures_of_the_table_are_ours() -> None:
    assert POINTS["13"] == soy_milk.KG_PER_L
    assert POINTS["11"] == soy_milk.LEAST_WATER


def test_protein_of_the_craft_milk_and_of_the_kitchen_milk() -> None:
    """100 g to the litre: about 2.7 % (computed); 125 g to 1 L at 0.70: about 32 g/L."""
    assert protein_per_litre(100, 1) == pytest.approx(27, abs=0.5)
    assert protein_per_litre(125, 1, part=0.70) == pytest.approx(32, abs=0.1)


def test_the_beans_for_a_cloth_carry_eight_grams_of_protein_to_the_hundred() -> None:
    """30 % WOF x 0.365 x 0.73: about 8 g to 100 g of cloth (computed)."""
    milk_litres = 30 / 100
    assert protein_per_litre(30, milk_litres) * milk_litres == pytest.approx(8, abs=0.1)


def test_three_times_the_milk_stays_on_cloth_wrung_by_hand() -> None:
    """300 g of cloth at 52 % hold 156 g, at 150 % 450 g (computed)."""
    assert milk_left(300, 0.52) == pytest.approx(156)
    assert milk_left(300, 1.50) == pytest.approx(450)


def test_protein_left_on_cloth() -> None:
    """52 % of a bath of 4.5 g/L: 52 g, 51 mL, 0.23 g to 100 g of cloth (computed)."""
    assert protein_on_cloth(4.5, 0.52) == pytest.approx(52 / 1020 * 4.5)


def test_the_first_grind_takes_four_times_the_soaked_beans() -> None:
    """Sakura Iro no Ie: 400 mL to 100 g of soaked beans."""
    assert grind_litres(100) == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("celsius", "hours"),
    [(0, 48), (4, 48), (18, 8), (20, 4), (22, 4), (25, 4), (28, 2), (32, 1), (40, 1)],
)
def test_raw_milk_keeps_as_proposed(celsius: float, hours: float) -> None:
    """Proposals; 2 h out of the cold and 1 h above 32 °C are the food rule (as quoted)."""
    assert keeps_hours(celsius) == pytest.approx(hours)


def test_raw_milk_is_never_said_to_outlast_heated_milk() -> None:
    """Heated milk: 16 h in Indian rooms, 5 days cold (shelf-life study, abstract)."""
    assert keeps_hours(18) < POINTS["7"]
    assert keeps_hours(4) < 5 * 24


@pytest.mark.parametrize("celsius", [-1, 46, float("nan")])
def test_milk_is_not_kept_in_ice_or_fire(celsius: float) -> None:
    with pytest.raises(ValueError, match="is not kept"):
        keeps_hours(celsius)


@pytest.mark.parametrize("figures", [(0, 1), (1, 0), (float("nan"), 1), (1, float("nan"))])
def test_milk_of_nothing_is_refused(figures: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="beans and water"):
        protein_per_litre(*figures)


@given(st.floats(10, 2000), st.floats(0.1, 20))
def test_thinner_milk_is_weaker_and_never_beyond_the_bean(beans: float, litres: float) -> None:
    found = protein_per_litre(beans, litres)
    assert found > protein_per_litre(beans, litres * 1.5)
    assert found * litres <= beans * soy_milk.BEAN_PROTEIN


@given(st.floats(0, 44), st.floats(0.01, 1))
def test_warmer_milk_never_keeps_longer(celsius: float, more: float) -> None:
    assert keeps_hours(celsius + more) <= keeps_hours(celsius)
