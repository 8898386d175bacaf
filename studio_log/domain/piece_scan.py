"""Finding the measures in what a dyer types for a piece: size, g/m², weight, count."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import MASS_WORDS, read_grams, units_pattern
from studio_log.domain.number_text import (
    NUMBER,
    NUMBER_START,
    NUMBER_WORDS,
    plain,
    quoted,
    read_number,
)
from studio_log.domain.pieces import Weighed
from studio_log.science.units import convert

LEAST_GSM: Final = 5.0
MOST_GSM: Final = 3_000.0
LENGTH_WORDS: Final[Mapping[str, str]] = {
    "mm": "mm", "cm": "cm", "cms": "cm", "centimetre": "cm", "centimetres": "cm",
    "centimeter": "cm", "centimeters": "cm",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m", "mtr": "m",
    "in": "in", "ins": "in", "inch": "in", "inches": "in", '"': "in",
    "ft": "ft", "foot": "ft", "feet": "ft", "'": "ft",
    "yd": "yd", "yds": "yd", "yard": "yd", "yards": "yd",
}  # fmt: skip

_SQUARE_METRE: Final = r"(?:m ?\^?2|sq\.? ?m|sqm|square met(?:re|er))"
_SQUARE_YARD: Final = r"(?:(?:yd|yard) ?\^?2|sq\.? ?(?:yd|yard)|square (?:yd|yard))"
_RUNNING: Final = r"(?:running|linear|lin\.?) ?"
_PER: Final = r" ?(?:/|per) ?(?:a )?"
_DENSITIES: Final[tuple[tuple[str, str], ...]] = (
    (r"gsm|g\.s\.m\.?", "g/m2"),
    (rf"(?:g|gr|grams?){_PER}{_SQUARE_METRE}", "g/m2"),
    (rf"kg{_PER}{_SQUARE_METRE}", "kg/m2"),
    (rf"(?:oz|ounces?){_PER}{_SQUARE_YARD}", "oz/yd2"),
    (rf"lbs?{_PER}{_SQUARE_YARD}", "lb/yd2"),
    (r"mommes?", "momme"),
    (rf"(?:g|gr|grams?){_PER}{_RUNNING}(?:m|met(?:re|er))", "g/m"),
    (rf"(?:oz|ounces?){_PER}{_RUNNING}(?:yd|yard)", "oz/yd"),
    (rf"(?:g|gr|grams?){_PER}(?:m|met(?:re|er))", "? g/m"),
    (rf"(?:oz|ounces?){_PER}(?:yd|yard)", "? oz/yd"),
)
_DOUBTS: Final[Mapping[str, str]] = {
    "? oz/yd": "Is that ounces per square yard or per running yard? Write oz/yd2 or oz per "
    "running yard.",
    "? g/m": "Is that grams per square metre or per running metre? Write g/m2 or g per "
    "running metre.",
}

_LENGTH_ANY: Final = "|".join(re.escape(word) for word in sorted(LENGTH_WORDS, key=len)[::-1])
_LENGTH: Final = rf"(?:{_LENGTH_ANY})(?![A-Za-z0-9])\.?"
_MASS: Final = units_pattern(MASS_WORDS)
_MINUS: Final = r"(?:(?<![A-Za-z0-9])- ?)?"
_SIDE: Final = rf"{_MINUS}(?:{NUMBER})(?: ?{_LENGTH})?"
_CHAIN: Final = rf"(?:(?<= )|(?<=^)|(?<=[,;(])){_SIDE}(?: × {_SIDE})+"
_SINGLE: Final = (
    rf"(?P<minus>{_MINUS}){NUMBER_START}(?P<number>{NUMBER}) ?(?P<unit>{_LENGTH})"
    r"(?: (?P<role>wide|long|square)\b)?"
)
_FEET: Final = (
    rf"(?P<by>× )?{NUMBER_START}(?P<feet>[0-9]{{1,3}}) ?(?:ft|feet|') ?(?P<inches>[0-9]{{1,2}})"
    r" ?(?:ins?|inch|inches|\")(?P<then> ×)?"
)
_WEIGHT: Final = (
    rf"(?P<minus>{_MINUS}){NUMBER_START}(?P<weight>(?:{NUMBER}) ?{_MASS}"
    rf"(?: (?:and )?(?:{NUMBER}) ?{_MASS})?)"
)
_SCOUR: Final = (
    r"\(?(?:,? ?(?:dry )?weighe?[dt]? )?\b(?P<when>before|after) (?:the )?(?:scour(?:ing|ed)?|"
    r"wash(?:ing)?)\b\)?"
)
GAP: Final = "\n"
"""Stands where a measure was taken out; no typed line holds one."""


@dataclass(frozen=True)
class Side:
    """A length as typed; `unit` empty where none was given."""

    number: float
    unit: str
    role: str = ""
    """"wide", "long" or "square" where it was said."""


@dataclass(frozen=True)
class Weight:
    """A weight off the scale in grams, and the words it was typed in."""

    grams: float
    said: str


@dataclass(frozen=True)
class Density:
    """Weight of an area, or of a running length for g/m and oz/yd."""

    number: float
    unit: str


class Line:
    """A cleaned line from which measures are taken out one after the other."""

    def __init__(self, plain: str) -> None:
        spaced = re.sub(
            rf"(?<=[0-9]) ?(?P<unit>{_LENGTH_ANY})? ?(?:[x*]|\bby\b) ?(?=-? ?[0-9.])",
            lambda found: f"{found['unit'] or ''} × ",
            plain,
            flags=re.IGNORECASE,
        )
        self.rest = re.sub(_FEET, _feet_joined, spaced, flags=re.IGNORECASE)

    def find(self, pattern: str) -> re.Match[str] | None:
        """Give the first place where the pattern stands, whatever its case."""
        return re.search(pattern, self.rest, flags=re.IGNORECASE)

    def take(self, pattern: str) -> re.Match[str] | None:
        """Give the first such place and take it out of the line."""
        found = self.find(pattern)
        if found is not None:
            self.rest = f"{self.rest[: found.start()]}{GAP}{self.rest[found.end() :]}"
        return found


def take_weighed(line: Line) -> Weighed | None:
    """Take out "after scour" or "before scouring"."""
    found = line.take(_SCOUR)
    return None if found is None else Weighed(found["when"].casefold())


def take_density(line: Line) -> Density | None:
    """Take out the weight of an area; asks where square or running yard is not said."""
    for pattern, unit in _DENSITIES:
        number = rf"(?P<minus>{_MINUS}){NUMBER_START}(?P<number>{NUMBER})"
        found = line.take(rf"{number} ?(?:{pattern})(?![A-Za-z0-9^])")
        if found is None:
            continue
        if unit in _DOUBTS:
            raise Question(f"{quoted(found[0])}: {_DOUBTS[unit]}")
        return Density(_above_nought(found), unit)
    return None


def gsm_of(density: Density, width_m: float | None) -> float:
    """Give g/m²; a weight of the running length needs the width. Refuses what is no cloth."""
    if density.unit not in {"g/m", "oz/yd"}:
        gsm = convert(density.number, density.unit, "g/m2")
    elif width_m is not None:
        gsm = convert(density.number, density.unit, "g/m") / width_m
    else:
        raise Refusal(
            "A weight of the running length needs the width of the cloth. Nothing was kept. "
            "Add length and width, or give g/m2 or oz/yd2."
        )
    if not LEAST_GSM <= gsm <= MOST_GSM:
        raise Refusal(
            f"Cloth of {plain(gsm, 1)} g/m² cannot be: it lies between {plain(LEAST_GSM, 0)} and "
            f"{plain(MOST_GSM, 0)} g/m². Nothing was kept."
        )
    return gsm


def take_weight(line: Line) -> Weight | None:
    """Take out a weight off the scale; refuses two of them."""
    found = line.take(_WEIGHT)
    if found is None:
        return None
    grams = read_grams(found["weight"])
    _refuse_minus(found)
    if line.find(_WEIGHT) is not None:
        raise Refusal("Two weights were typed for one kind of piece. Nothing was kept. Say one.")
    return Weight(grams, found["weight"])


def take_sides(line: Line) -> tuple[int | None, tuple[Side, ...]]:
    """Take out length and width, as typed, and the count where it stands before them.

    "2 x 180 x 45 cm" gives 2 and both sides; "3 yd of 45 in" and "3yd 45in" both sides.
    """
    chain = line.take(_CHAIN)
    singles = _take_singles(line)
    if chain is None:
        return None, _joined_feet(singles)
    if singles or line.find(_CHAIN) is not None:
        raise _too_many()
    sides = [_side(part) for part in chain[0].split(" × ")]
    if len(sides) == 2 and not _may_be_count(chain, sides):
        return None, tuple(sides)
    if len(sides) == 2:
        raise Question(
            f"{quoted(chain[0])}: so many pieces of that length, or one piece of that size? "
            "Give the length, the width and their unit."
        )
    count = sides[0]
    if len(sides) > 3 or chain.start() > 0 or count.unit or count.number != int(count.number):
        raise _too_many()
    return int(count.number), tuple(sides[1:])


def _may_be_count(chain: re.Match[str], sides: list[Side]) -> bool:
    """Tell "2 x 180 cm", which may be a count and a length."""
    first, second = sides
    return (
        chain.start() == 0
        and not first.unit
        and bool(second.unit)
        and first.number < 10 < 10 * first.number < second.number
    )


def _take_singles(line: Line) -> list[Side]:
    sides: list[Side] = []
    while (found := line.take(_SINGLE)) is not None:
        _refuse_minus(found)
        role = (found["role"] or "").casefold()
        sides.append(Side(_above_nought(found), LENGTH_WORDS[_word(found["unit"])], role))
    return sides


def _feet_joined(found: re.Match[str]) -> str:
    """Write 5 ft 6 in as 66 in where a × beside it says that it is one side."""
    if int(found["inches"]) >= 12 or not (found["by"] or found["then"]):
        return found[0]
    inches = int(found["feet"]) * 12 + int(found["inches"])
    return f"{found['by'] or ''}{inches} in{found['then'] or ''}"


def _by_role(sides: list[Side]) -> tuple[Side, ...]:
    """Put the length first, as said by "wide", "long" or "square"."""
    if len(sides) == 1 and sides[0].role == "square":
        return (sides[0], sides[0])
    if len(sides) == 1 and sides[0].role == "wide":
        raise Refusal("The width was typed without the length. Nothing was kept. Add the length.")
    if len(sides) == 2 and (sides[0].role == "wide" or sides[1].role == "long"):
        return (sides[1], sides[0])
    return tuple(sides)


def _joined_feet(sides: list[Side]) -> tuple[Side, ...]:
    """Join feet and inches: 5 ft 6 in of 45 in; asks where two sides may be one."""
    if len(sides) >= 2 and (sides[0].unit, sides[1].unit) == ("ft", "in") and sides[1].number < 12:
        if len(sides) == 2:
            raise Question(
                "Feet and inches: is that one length, or length and width? "
                "Write the size as 66 x 45 in."
            )
        sides = [Side(sides[0].number * 12 + sides[1].number, "in"), *sides[2:]]
    if len(sides) > 2:
        raise _too_many()
    if len(sides) == 1 and sides[0].unit == "mm":
        raise Question("Is mm meant as momme or as millimetres? Write momme, or the size in cm.")
    return _by_role(sides)


def _side(text: str) -> Side:
    found = re.fullmatch(
        rf"(?P<minus>{_MINUS})(?P<number>{NUMBER}) ?(?P<unit>{_LENGTH})?", text, re.IGNORECASE
    )
    if found is None:
        raise Refusal(f"{quoted(text)} cannot be read as a length. Nothing was kept.")
    unit = LENGTH_WORDS[_word(found["unit"])] if found["unit"] else ""
    return Side(_above_nought(found), unit)


def take_count(line: Line) -> int | None:
    """Take out how many pieces there are: "2 x", "2", "two", "3 pieces of", "x2" at the end."""
    pieces = r"(?:pieces?|pcs?\.?)"
    number = rf"(?P<count>[0-9]{{1,9}}|{'|'.join(NUMBER_WORDS)})"
    for pattern in (
        rf"^ ?(?P<minus>{_MINUS}){number}(?: ?x\b| ?{pieces}(?: of)?\b)? ?(?=[^\W0-9]|{GAP})",
        rf"\b(?P<minus>{_MINUS}){number} ?{pieces}(?![A-Za-z])",
        rf"\bx ?(?P<minus>{_MINUS}){number} ?$",
        r"^(?P<minus>)(?P<count>a pair of)\b",
    ):
        found = line.take(pattern)
        if found is not None:
            _refuse_minus(found)
            said = found["count"].casefold()
            return NUMBER_WORDS.get(said) or (2 if "pair" in said else int(said))
    return None


def metres(side: Side) -> float:
    """Give a side in metres."""
    return convert(side.number, side.unit, "m")


def _word(unit: str) -> str:
    return unit.casefold().rstrip(".")


def _refuse_minus(found: re.Match[str]) -> None:
    if found["minus"]:
        raise Refusal(f"{quoted(found[0].strip())} is below nought. Nothing was kept.")


def _above_nought(found: re.Match[str]) -> float:
    _refuse_minus(found)
    value = read_number(found["number"])
    if value <= 0:
        raise Refusal(f"{quoted(found[0].strip())} is nought. Nothing was kept.")
    return value


def _too_many() -> Refusal:
    return Refusal(
        "More than a length and a width were typed for one kind of piece. Nothing was kept. "
        "Write it as 2 x linen 180x45cm 185g/m2."
    )
