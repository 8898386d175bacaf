"""Kitchen measures beside the gram and the litre: US customary ones, and metric ones.

A US cup is 236.6 mL, a metric one 250 mL, with spoons of 15 and 5 mL (in Australia a tablespoon is
20 mL: from memory); the words always say which cup is meant.
"""

from typing import Final

from studio_log.domain.number_text import plain
from studio_log.language.words import tr
from studio_log.science.units import convert

_QUARTERS: Final = ("", "¼", "½", "¾")
_CUPS_FROM: Final = 3.5 / 16
"""From here on a quarter cup is nearer than a count of tablespoons."""
_METRIC_CUPS_FROM: Final = 3.5 * 0.015
MOST_METRIC_L: Final = 4.0


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


def measure_metric(litres: float) -> str:
    """Say a volume in metric cups and spoons: "about ½ metric cup", "about 2 tbsp of 15 mL".

    Rounded as `measure`; "" from four litres on, where the litre is the measure.
    """
    if litres >= MOST_METRIC_L:
        return ""
    if litres >= _METRIC_CUPS_FROM:
        cups = convert(litres, "L", "metric cup")
        return _about(cups, 4, tr("metric cup"), tr("metric cups"))
    spoons = convert(litres, "L", "label tbsp")
    if spoons >= 0.75:
        return _about(spoons, 2, tr("tbsp of 15 mL"), tr("tbsp of 15 mL"))
    small = convert(litres, "L", "label tsp")
    if small >= 0.125:
        return _about(small, 4, tr("tsp of 5 mL"), tr("tsp of 5 mL"))
    return tr("less than ¼ tsp")


def _about(value: float, parts: int, one: str, many: str) -> str:
    quarters = int(value * parts + 0.5) * (4 // parts)
    whole, rest = divmod(quarters, 4)
    figure = f"{whole or ''}{_QUARTERS[rest]}" or plain(value, 2)
    return tr("about {figure} {measure}", figure=figure, measure=one if quarters <= 4 else many)
