"""Units of mass, volume, length, area density and heat, as exact fractions.

Sources: NIST Handbook 44 App. C and NIST SP 811 App. B (inch, yard, pound, US gallon and
what follows from them); 21 CFR 101.9(b)(5)(viii) (labelling cup, tablespoon, teaspoon and
fluid ounce); UK Units of Measurement Regulations 1995 (imperial gallon, from memory).
Checked by tests/reference/units.csv and by pint.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final


class Kind(StrEnum):
    """What a unit measures; the value names the unit in which sizes are given."""

    LENGTH = "m"
    AREA = "m2"
    MASS = "g"
    VOLUME = "L"
    DENSITY = "g/m2"
    RUNNING = "g/m"


@dataclass(frozen=True)
class Unit:
    """A unit and its exact size in metres, m², grams, litres, g/m² or g/m."""

    name: str
    kind: Kind
    size: Fraction


INCH: Final = Fraction(254, 10000)
FOOT: Final = 12 * INCH
YARD: Final = 36 * INCH
POUND: Final = Fraction(45359237, 100000)
OUNCE: Final = POUND / 16
GALLON: Final = 231 * (10 * INCH) ** 3
"""231 cubic inches in litres: an inch in decimetres, cubed, is litres."""
US_CUP: Final = GALLON / 16
IMPERIAL_GALLON: Final = Fraction(454609, 100000)
OUNCE_PER_YARD2: Final = OUNCE / YARD**2
MOMME: Final = POUND / (45 * INCH * 100 * YARD)
"""Silk of one momme: a piece 45 in by 100 yd weighs one pound; 4.3399 g/m²."""

_SIZES: Final[tuple[tuple[str, Kind, Fraction], ...]] = (
    ("mm", Kind.LENGTH, Fraction(1, 1000)),
    ("cm", Kind.LENGTH, Fraction(1, 100)),
    ("m", Kind.LENGTH, Fraction(1)),
    ("in", Kind.LENGTH, INCH),
    ("ft", Kind.LENGTH, FOOT),
    ("yd", Kind.LENGTH, YARD),
    ("cm2", Kind.AREA, Fraction(1, 10000)),
    ("m2", Kind.AREA, Fraction(1)),
    ("in2", Kind.AREA, INCH**2),
    ("ft2", Kind.AREA, FOOT**2),
    ("yd2", Kind.AREA, YARD**2),
    ("mg", Kind.MASS, Fraction(1, 1000)),
    ("g", Kind.MASS, Fraction(1)),
    ("kg", Kind.MASS, Fraction(1000)),
    ("grain", Kind.MASS, POUND / 7000),
    ("oz", Kind.MASS, OUNCE),
    ("lb", Kind.MASS, POUND),
    ("momme mass", Kind.MASS, Fraction(375, 100)),
    ("mL", Kind.VOLUME, Fraction(1, 1000)),
    ("L", Kind.VOLUME, Fraction(1)),
    ("gal", Kind.VOLUME, GALLON),
    ("qt", Kind.VOLUME, GALLON / 4),
    ("pt", Kind.VOLUME, GALLON / 8),
    ("cup", Kind.VOLUME, US_CUP),
    ("fl oz", Kind.VOLUME, US_CUP / 8),
    ("tbsp", Kind.VOLUME, US_CUP / 16),
    ("tsp", Kind.VOLUME, US_CUP / 48),
    ("label cup", Kind.VOLUME, Fraction(240, 1000)),
    ("label fl oz", Kind.VOLUME, Fraction(30, 1000)),
    ("label tbsp", Kind.VOLUME, Fraction(15, 1000)),
    ("label tsp", Kind.VOLUME, Fraction(5, 1000)),
    ("metric cup", Kind.VOLUME, Fraction(250, 1000)),
    ("imperial gal", Kind.VOLUME, IMPERIAL_GALLON),
    ("imperial qt", Kind.VOLUME, IMPERIAL_GALLON / 4),
    ("imperial pt", Kind.VOLUME, IMPERIAL_GALLON / 8),
    ("imperial fl oz", Kind.VOLUME, IMPERIAL_GALLON / 160),
    ("g/m2", Kind.DENSITY, Fraction(1)),
    ("kg/m2", Kind.DENSITY, Fraction(1000)),
    ("oz/yd2", Kind.DENSITY, OUNCE_PER_YARD2),
    ("lb/yd2", Kind.DENSITY, POUND / YARD**2),
    ("momme", Kind.DENSITY, MOMME),
    ("g/m", Kind.RUNNING, Fraction(1)),
    ("oz/yd", Kind.RUNNING, OUNCE / YARD),
)

UNITS: Final[dict[str, Unit]] = {name: Unit(name, kind, size) for name, kind, size in _SIZES}
"""Every unit by its name. A bare cup, pint, quart, gallon, spoon is the US customary one."""


def convert(value: float | Fraction, unit: str, to: str) -> float:
    """Give `value` of one unit in another of the same kind.

    Raises KeyError for a unit that is not in `UNITS`, ValueError where the kinds differ or
    the value is not a finite number.
    """
    return float(convert_exactly(value, unit, to))


def convert_exactly(value: float | Fraction, unit: str, to: str) -> Fraction:
    """Give `value` of one unit in another, as a fraction; errors as for `convert`."""
    source, target = UNITS[unit], UNITS[to]
    if source.kind is not target.kind:
        raise ValueError(f"{unit} cannot be turned into {to}")
    try:
        exact = Fraction(value)
    except OverflowError:
        raise ValueError("an endless number has no size") from None
    return exact * source.size / target.size


def celsius_of_fahrenheit(degrees_f: float | Fraction) -> float:
    """Give °C for °F: (F - 32) x 5/9, exact (NIST SP 811 App. B)."""
    return float((Fraction(degrees_f) - 32) * 5 / 9)


def fahrenheit_of_celsius(degrees_c: float | Fraction) -> float:
    """Give °F for °C: C x 9/5 + 32, exact (NIST SP 811 App. B)."""
    return float(Fraction(degrees_c) * 9 / 5 + 32)
