"""Kitchen measures: cups, tablespoons and teaspoons (US customary) beside the gram."""

from typing import Final

from studio_log.domain.number_text import plain
from studio_log.language.words import tr
from studio_log.science.units import convert

_QUARTERS: Final = ("", "¼", "½", "¾")
_CUPS_FROM: Final = 3.5 / 16
"""From here on a quarter cup is nearer than a count of tablespoons."""


def cups_of(grams: float, cup_grams: float) -> float:
    """Give the US cups that so many grams fill; `cup_grams` fill one."""
    return grams / cup_grams


def dry_litres(grams: float, cup_grams: float) -> float:
    """Give the litres that a dry material fills, by its weight in a US cup."""
    return convert(cups_of(grams, cup_grams), "cup", "L")


def measure(cups: float) -> str:
    """Say a volume in US cups as a person measures it: "about ½ US cup", "about 2 tbsp".

    Rounded to quarter cups, half tablespoons or quarter teaspoons; above 16 cups to
    quarter gallons.
    """
    if cups >= 15.875:
        return _about(cups / 16, 4, tr("US gal"), tr("US gal"))
    if cups >= _CUPS_FROM:
        return _about(cups, 4, tr("US cup"), tr("US cups"))
    if cups * 16 >= 0.75:
        return _about(cups * 16, 2, tr("tbsp"), tr("tbsp"))
    if cups * 48 >= 0.125:
        return _about(cups * 48, 4, tr("tsp"), tr("tsp"))
    return tr("less than ¼ tsp")


def _about(value: float, parts: int, one: str, many: str) -> str:
    quarters = int(value * parts + 0.5) * (4 // parts)
    whole, rest = divmod(quarters, 4)
    figure = f"{whole or ''}{_QUARTERS[rest]}" or plain(value, 2)
    return tr("about {figure} {measure}", figure=figure, measure=one if quarters <= 4 else many)
