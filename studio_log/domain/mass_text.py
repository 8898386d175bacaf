"""Reading a weight, a volume or cups as a dyer types them."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.number_text import NUMBER, NUMBER_START, clean, quoted, read_exact
from studio_log.science.units import convert, convert_exactly

LONGEST: Final = 60

MASS_WORDS: Final[Mapping[str, str]] = {
    "mg": "mg",
    "g": "g", "gr": "g", "gm": "g", "gms": "g", "gram": "g", "grams": "g", "gramme": "g",
    "grammes": "g",
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg",
    "oz": "oz", "ozs": "oz", "ounce": "oz", "ounces": "oz",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
}  # fmt: skip

VOLUME_WORDS: Final[Mapping[str, str]] = {
    "ml": "mL", "millilitre": "mL", "millilitres": "mL", "milliliter": "mL", "milliliters": "mL",
    "l": "L", "litre": "L", "litres": "L", "liter": "L", "liters": "L", "ltr": "L",
    "gal": "gal", "gals": "gal", "gallon": "gal", "gallons": "gal", "us gal": "gal",
    "us gallon": "gal", "us gallons": "gal",
    "qt": "qt", "quart": "qt", "quarts": "qt", "us qt": "qt",
    "pt": "pt", "pint": "pt", "pints": "pt", "us pint": "pt", "us pints": "pt",
    "cup": "cup", "cups": "cup", "us cup": "cup", "us cups": "cup",
    "metric cup": "metric cup", "metric cups": "metric cup",
    "imperial gal": "imperial gal", "imperial gallon": "imperial gal",
    "imperial gallons": "imperial gal", "imperial pint": "imperial pt",
    "imperial pints": "imperial pt",
    "fl oz": "fl oz", "fluid ounce": "fl oz", "fluid ounces": "fl oz",
    "tbsp": "tbsp", "tbsps": "tbsp", "tablespoon": "tbsp", "tablespoons": "tbsp",
    "tsp": "tsp", "tsps": "tsp", "teaspoon": "tsp", "teaspoons": "tsp",
}  # fmt: skip


@dataclass(frozen=True)
class _Measure:
    """What is read: its name in sentences, its unit, its words, its limits, examples."""

    what: str
    unit: str
    words: Mapping[str, str]
    least: float
    most: float
    limits: str
    examples: str


_MASS: Final = _Measure(
    "the weight", "g", MASS_WORDS, 0.001, 50_000_000.0, "1 mg and 50,000 kg",
    "412 g, 0.4 kg, 14.5 oz or 1 lb 3 oz",
)  # fmt: skip
_VOLUME: Final = _Measure(
    "the volume", "L", VOLUME_WORDS, 0.000_1, 10_000.0, "0.1 mL and 10,000 L",
    "10 L, 450 mL, 2.5 gal or 3 cups",
)  # fmt: skip


def units_pattern(words: Mapping[str, str]) -> str:
    """Give a pattern of the unit words, longest first, ending where the word ends."""
    spelt = sorted(words, key=len, reverse=True)
    return "(?:" + "|".join(re.escape(word) for word in spelt) + r")(?![A-Za-z0-9])\.?"


def read_grams(text: str) -> float:
    """Give the grams of "412g", "14.5 oz", "1 lb 3 oz" or "0,4 kg".

    A bare number is asked about, never guessed.
    """
    return _read(text, _MASS)


def read_litres(text: str) -> float:
    """Give the litres of "10 L", "2.5 gal" or "3 cups"; bare cups and gallons are US ones."""
    return _read(text, _VOLUME)


def read_cups(text: str) -> float:
    """Give the US cups of "1/4 cup", "½", "4 tbsp"; a bare number is a number of cups."""
    plain = clean(text, "the cups", longest=LONGEST)
    if re.fullmatch(NUMBER, plain):
        plain = f"{plain} cup"
    return convert(_read(plain, _VOLUME), "L", "cup")


def _read(text: str, measure: _Measure) -> float:
    plain = clean(text, measure.what, longest=LONGEST).casefold()
    if re.fullmatch(NUMBER, plain):
        raise Question(f"{quoted(plain)} of what? Say the unit: {measure.examples}.")
    pattern = rf"{NUMBER_START}(?P<number>{NUMBER})\s?(?P<unit>{units_pattern(measure.words)})"
    parts = list(re.finditer(pattern, plain))
    rest = re.sub(r"\s|,|\band\b", "", re.sub(pattern, "", plain))
    if not parts or rest:
        raise Refusal(
            f"{quoted(text)} cannot be read as {measure.what}. Nothing was changed. "
            f"Write it as {measure.examples}."
        )
    total = _sum(parts, measure)
    if not measure.least <= total <= measure.most:
        raise Refusal(
            f"{quoted(text)} cannot be {measure.what}: it has to lie between {measure.limits}. "
            "Nothing was changed."
        )
    return total


def _sum(parts: Sequence[re.Match[str]], measure: _Measure) -> float:
    """Add up what was typed largest unit first, exactly; "1 lb 3 oz"."""
    sizes: list[Fraction] = []
    total = Fraction(0)
    for part in parts:
        unit = measure.words[part["unit"].rstrip(".")]
        sizes.append(convert_exactly(1, unit, measure.unit))
        total += convert_exactly(read_exact(part["number"]), unit, measure.unit)
    if any(later >= earlier for earlier, later in pairwise(sizes)):
        raise Refusal(
            f"Only one figure is wanted for {measure.what}, such as {measure.examples}. "
            "Nothing was changed."
        )
    return float(total)
