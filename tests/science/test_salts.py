"""Salts and hydrates; molar masses as reagent catalogues print them (from memory)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science.salts import (
    SALTS,
    acetate_for,
    element_percent,
    in_place_of,
    molar_mass,
)


@pytest.mark.parametrize(
    ("name", "printed"),
    [("soda-ash", 105.99), ("washing-soda", 286.14), ("alum", 474.39), ("alum-dry", 258.21),
     ("aluminium-sulphate", 666.43), ("sodium-acetate-dry", 82.03), ("sodium-acetate", 136.08),
     ("ferrous-sulphate", 278.01), ("aluminium-lactate", 294.19), ("aluminium-triformate", 162.03)],
)  # fmt: skip
def test_a_mole_weighs_what_catalogues_print(name: str, printed: float) -> None:
    assert SALTS[name].molar_mass == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(
    ("name", "percent"),
    [("alum", 5.69), ("alum-dry", 10.45), ("aluminium-sulphate", 8.10), ("aluminium-acetate", 22.5),
     ("aluminium-lactate", 9.17), ("aluminium-triformate", 16.7)],
)  # fmt: skip
def test_the_aluminium_in_a_salt(name: str, percent: float) -> None:
    """Computed table of aluminium contents; 10.45 is also printed for dry alum."""
    assert element_percent(SALTS[name], "Al") == pytest.approx(percent, abs=0.05)


def test_a_gram_of_soda_ash_is_two_point_seven_of_crystals() -> None:
    """Molar masses 286.1 and 106.0 (computed)."""
    assert in_place_of(1, "soda-ash", "washing-soda") == pytest.approx(2.70, abs=0.005)


def test_seventy_grams_of_aluminium_sulphate_stand_for_a_hundred_of_alum() -> None:
    """By aluminium (computed); 15 % alum are 10.5 % of it."""
    assert in_place_of(100, "alum", "aluminium-sulphate") == pytest.approx(70, abs=0.5)
    assert in_place_of(15, "alum", "aluminium-sulphate") == pytest.approx(10.5, abs=0.05)
    assert in_place_of(15, "alum", "alum-dry") == pytest.approx(8.2, abs=0.05)


def test_the_acetate_that_alum_needs() -> None:
    """150 g alum: 0.316 mol, three acetates each, 78 g dry or 129 g of crystals (computed)."""
    assert acetate_for(150, "sodium-acetate-dry") == pytest.approx(78, abs=0.5)
    assert acetate_for(150, "sodium-acetate") == pytest.approx(129, abs=0.5)
    printed_excess = 150 / acetate_for(150, "sodium-acetate") - 1
    assert printed_excess == pytest.approx(0.16, abs=0.01)


def test_iron_in_ferrous_sulphate() -> None:
    """A tablet of 325 mg holds 65 mg of iron (eMedicineHealth): 20 %; crystals 20.1 %."""
    percent = element_percent(SALTS["ferrous-sulphate"], "Fe")
    assert percent == pytest.approx(20.1, abs=0.05)
    assert 325 * percent / 100 == pytest.approx(65, abs=0.5)


def test_what_does_not_stand_for_another_is_refused() -> None:
    with pytest.raises(ValueError, match="does not stand for"):
        in_place_of(1, "alum", "soda-ash")
    with pytest.raises(ValueError, match="is no acetate"):
        acetate_for(1, "alum")
    with pytest.raises(KeyError):
        in_place_of(1, "alum", "chrome")
    with pytest.raises(KeyError):
        molar_mass("CuSO4")


PAIRS = [(a, b) for a in SALTS for b in SALTS if SALTS[a].counts == SALTS[b].counts]


@given(st.floats(0, 1e6), st.sampled_from(PAIRS))
def test_a_swap_there_and_back_gives_the_same(grams: float, pair: tuple[str, str]) -> None:
    there = in_place_of(grams, *pair)
    assert in_place_of(there, pair[1], pair[0]) == pytest.approx(grams, rel=1e-12)
