"""Units against NIST's tables (units.csv), worked conversions and pint's registry."""

import csv
import re
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.science import soybeans
from studio_log.science.units import (
    UNITS,
    Kind,
    celsius_of_fahrenheit,
    convert,
    convert_exactly,
    fahrenheit_of_celsius,
)

REFERENCE = Path(__file__).parent.parent / "reference"

OURS = {
    "inch": "in", "yard": "yd", "square inch": "in2", "pound (avoirdupois)": "lb",
    "grain": "grain", "US gallon": "gal", "US pint (liquid)": "pt", "US fluid ounce": "fl oz",
    "US teaspoon (customary)": "tsp", "US legal tablespoon (food labelling)": "label tbsp",
    "metric cup": "metric cup", "imperial pint": "imperial pt",
    "ounce per square yard": "oz/yd2", "momme (Japanese mass)": "momme mass",
}  # fmt: skip

PINT = {
    "mm": "millimeter", "cm": "centimeter", "m": "meter", "in": "inch", "ft": "foot",
    "yd": "yard", "cm2": "cm**2", "m2": "m**2", "in2": "inch**2", "ft2": "foot**2",
    "yd2": "yard**2", "mg": "milligram", "g": "gram", "kg": "kilogram", "grain": "grain",
    "oz": "ounce", "lb": "pound", "mL": "milliliter", "L": "liter", "gal": "gallon",
    "qt": "quart", "pt": "pint", "cup": "cup", "fl oz": "fluid_ounce", "tbsp": "tablespoon",
    "tsp": "teaspoon", "imperial gal": "imperial_gallon", "imperial qt": "imperial_quart",
    "imperial pt": "imperial_pint", "imperial fl oz": "imperial_fluid_ounce",
    "g/m2": "gram/meter**2", "kg/m2": "kilogram/meter**2", "oz/yd2": "ounce/yard**2",
    "lb/yd2": "pound/yard**2", "momme": "pound/(45 inch * 100 yard)", "g/m": "gram/meter",
    "oz/yd": "ounce/yard",
}  # fmt: skip


def rows(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("row", rows("units.csv"), ids=lambda row: row["unit"])
def test_a_unit_has_the_size_that_the_handbooks_print(row: dict[str, str]) -> None:
    """NIST Handbook 44 App. C, NIST SP 811 App. B; the other sources stand in the row."""
    ours = convert_exactly(1, OURS[row["unit"]], {"kg": "g"}.get(row["in"], row["in"]))
    if row["in"] == "kg":
        ours /= 1000
    printed = Fraction(Decimal(row["value"]))
    if row["exact"] == "yes":
        assert ours == printed
    else:
        assert float(ours) == pytest.approx(float(printed), rel=1e-14)


@pytest.mark.parametrize("name", sorted(PINT))
def test_a_unit_has_the_size_that_pint_gives(name: str, registry: pint.UnitRegistry) -> None:
    theirs = registry(PINT[name])
    si = {
        Kind.LENGTH: "m", Kind.AREA: "m**2", Kind.MASS: "g", Kind.VOLUME: "liter",
        Kind.DENSITY: "g/m**2", Kind.RUNNING: "g/m",
    }[UNITS[name].kind]  # fmt: skip
    assert float(UNITS[name].size) == pytest.approx(theirs.to(si).magnitude, rel=1e-14)


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


def test_every_unit_is_checked_from_outside() -> None:
    labels = {"label cup", "label fl oz", "label tsp"}  # checked against 21 CFR below
    assert set(UNITS) == set(PINT) | set(OURS.values()) | labels


@pytest.mark.parametrize(
    ("name", "millilitres"), [("label cup", 240), ("label fl oz", 30), ("label tsp", 5)]
)
def test_a_labelling_measure_is_the_regulations(name: str, millilitres: int) -> None:
    """21 CFR 101.9(b)(5)(viii): cup 240 mL, fluid ounce 30 mL; teaspoon 5 mL."""
    assert convert(1, name, "mL") == millilitres


EXAMPLES = {row["from"]: float(row["value"]) for row in rows("unit_examples.csv")}


def test_the_worked_conversions_come_out() -> None:
    """tests/reference/unit_examples.csv: worked from the exact definitions, 1e-9 relative."""
    area = convert(2.5, "yd", "m") * convert(45, "in", "m")
    ours = {
        "2.5 yd x 45 in of 4.2 oz/yd2 cloth": area * convert(4.2, "oz/yd2", "g/m2"),
        "1.5 US cup (customary)": convert(1.5, "cup", "mL"),
        "1 imperial pint": convert(1, "imperial pt", "mL"),
        "5 US gal": convert(5, "gal", "L"),
        "212 degF": celsius_of_fahrenheit(212),
        "140 g/m2": convert(140, "g/m2", "oz/yd2"),
    }
    assert ours == pytest.approx(EXAMPLES, rel=1e-9)


@pytest.mark.parametrize(("momme", "printed"), [(16, 69.4), (19, 82.5), (22, 95.5), (25, 108.5)])
def test_silk_by_momme_is_as_the_trade_prints_it(momme: int, printed: float) -> None:
    """Printed tables of silk sellers, corrected for truncation: 4.340 g/m² a momme."""
    assert convert(momme, "momme", "g/m2") == pytest.approx(printed, abs=0.05)


def test_a_cup_of_beans_weighs_what_their_density_says() -> None:
    """774 kg/m³: Deere's table of standard densities (60 lb a bushel)."""
    grams = convert(1, "cup", "L") * soybeans.BULK_KG_PER_M3
    assert grams == pytest.approx(soybeans.CUP_GRAMS, abs=0.5)


def test_water_boils_and_freezes_on_both_scales() -> None:
    """NIST SP 811 App. B.8."""
    assert fahrenheit_of_celsius(0) == 32
    assert celsius_of_fahrenheit(212) == 100
    assert celsius_of_fahrenheit(-40) == -40


def test_kinds_do_not_mix() -> None:
    with pytest.raises(ValueError, match=re.escape("oz cannot be turned into mL")):
        convert(1, "oz", "mL")


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        convert(value, "g", "oz")


PAIRS = [(a.name, b.name) for a in UNITS.values() for b in UNITS.values() if a.kind is b.kind]


@given(st.floats(-1e9, 1e9), st.sampled_from(PAIRS))
def test_there_and_back_gives_the_same(value: float, pair: tuple[str, str]) -> None:
    there = convert_exactly(value, *pair)
    assert convert(there, pair[1], pair[0]) == value


@given(st.floats(-400, 4000))
def test_heat_there_and_back_gives_the_same(value: float) -> None:
    assert celsius_of_fahrenheit(fahrenheit_of_celsius(value)) == pytest.approx(value, abs=1e-9)
