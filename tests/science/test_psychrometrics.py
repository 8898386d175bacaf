"""Moist air against values of two other programs (tests/reference/psychrometrics.csv)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science.psychrometrics import Air, pressure_at, saturation_pa
from tests.support.reference import numbers

ROWS = numbers("psychrometrics.csv")


def air(row: dict[str, float]) -> Air:
    return Air(row["T_C"], row["RH_pct"], pressure_at(row["alt_m"]))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['T_C']:g}C-{row['RH_pct']:g}")
def test_air_is_as_two_other_programs_have_it(row: dict[str, float]) -> None:
    """ASHRAE Fundamentals 2017, ch. 1, by psychrolib; tolerances as in the table's head."""
    found = air(row)
    assert found.pressure_pa == pytest.approx(row["P_Pa"], abs=0.1)
    assert saturation_pa(row["T_C"]) == pytest.approx(row["pws_Pa"], rel=5e-4)
    assert found.vapour_pa == pytest.approx(row["pw_Pa"], rel=5e-4)
    assert found.deficit_pa == pytest.approx(row["VPD_Pa"], rel=5e-4)
    assert found.humidity_ratio * 1000 == pytest.approx(row["W_g_kg"], rel=1e-3)
    assert found.water_kg_per_m3 * 1000 == pytest.approx(row["abs_hum_g_m3"], rel=1e-3)
    assert found.wet_bulb_c == pytest.approx(row["Twb_C"], abs=0.02)
    assert found.dew_point_c == pytest.approx(row["Tdp_C"], abs=0.02)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['T_C']:g}C-{row['RH_pct']:g}")
def test_a_real_gas_is_as_near_as_the_table_says(row: dict[str, float]) -> None:
    """CoolProp's HAPropsSI, which knows that air is no ideal gas."""
    found = air(row)
    assert found.humidity_ratio * 1000 == pytest.approx(row["W_cp"], rel=6e-3)
    assert found.wet_bulb_c == pytest.approx(row["Twb_cp"], abs=0.1)
    assert found.dew_point_c == pytest.approx(row["Tdp_cp"], abs=0.1)


def test_water_at_its_triple_point_and_over_ice() -> None:
    """611.2 Pa at 0.01 °C, 103.2 Pa over ice at -20 °C: steam tables (from memory)."""
    assert saturation_pa(0.01) == pytest.approx(611.2, rel=1e-3)
    assert saturation_pa(-20) == pytest.approx(103.2, rel=2e-3)


def test_full_air_has_its_wet_bulb_and_dew_point_at_its_own_temperature() -> None:
    full = Air(20, 100)
    assert full.wet_bulb_c == 20
    assert full.dew_point_c == pytest.approx(20, abs=1e-6)
    assert full.deficit_pa == 0


@pytest.mark.parametrize(
    ("celsius", "humidity", "pressure"),
    [(-41, 50, 101325), (91, 50, 101325), (20, -1, 101325), (20, 101, 101325), (20, 50, 0),
     (float("nan"), 50, 101325), (20, float("nan"), 101325), (20, 50, float("nan")),
     (float("inf"), 50, 101325)],
)  # fmt: skip
def test_air_that_cannot_be_is_refused(celsius: float, humidity: float, pressure: float) -> None:
    with pytest.raises(ValueError, match=r"\d|nan|inf"):
        Air(celsius, humidity, pressure)


def test_a_room_on_the_moon_and_air_without_water_are_refused() -> None:
    with pytest.raises(ValueError, match="above the sea"):
        pressure_at(400_000)
    with pytest.raises(ValueError, match="no dew point"):
        _ = Air(20, 0).dew_point_c


def test_where_a_wick_freezes_there_is_no_wet_bulb() -> None:
    """At 5 °C and 40 % the bulb shows 0.577 °C (check table), so that drier air freezes it."""
    assert Air(5, 40).wet_bulb_c > 0
    with pytest.raises(ValueError, match="freezes"):
        _ = Air(5, 25).wet_bulb_c
    with pytest.raises(ValueError, match="freezes"):
        _ = Air(-5, 50).wet_bulb_c


@given(st.floats(12, 45), st.floats(10, 99))
def test_dew_point_wet_bulb_and_air_stand_in_order(celsius: float, humidity: float) -> None:
    found = Air(celsius, humidity)
    assert found.dew_point_c - 0.01 <= found.wet_bulb_c <= celsius
    assert saturation_pa(found.dew_point_c) == pytest.approx(found.vapour_pa, rel=1e-6)


@given(st.floats(-10, 40), st.floats(0.01, 5))
def test_warmer_air_holds_more(celsius: float, warmer: float) -> None:
    assert saturation_pa(celsius + warmer) > saturation_pa(celsius)
