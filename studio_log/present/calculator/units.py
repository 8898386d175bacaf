"""One quantity in every unit that a dyer meets: weight, volume, length, area, cloth, heat."""

from collections.abc import Callable, Mapping
from typing import Final

from studio_log.domain.cloth_text import read_gsm, read_metres, read_square_metres
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.mass_text import read_grams, read_litres
from studio_log.domain.number_text import plain, quoted
from studio_log.domain.room_text import read_celsius
from studio_log.language.words import tr, tr_later
from studio_log.present.calculator.parts import Answer, Calculation, Input, Reader, Values
from studio_log.science.units import convert, fahrenheit_of_celsius

FIGURES: Final = 4
"""Significant figures shown: more than a scale or a tape can tell."""

_Kind = tuple[str, Callable[[str], float], str, tuple[tuple[str, str], ...]]
"""Its words, what reads it, the unit that is read to, the units shown with their words."""

_KINDS: Final[Mapping[str, _Kind]] = {
    "cloth": (
        tr_later("weight by area"), read_gsm, "g/m2",
        (("g/m2", "g/m²"), ("oz/yd2", "oz/yd²"), ("momme", "momme")),
    ),
    "area": (
        tr_later("area"), read_square_metres, "m2",
        (("m2", "m²"), ("cm2", "cm²"), ("yd2", "yd²"), ("ft2", "ft²")),
    ),
    "weight": (
        tr_later("weight"), read_grams, "g", (("g", "g"), ("kg", "kg"), ("oz", "oz"), ("lb", "lb"))
    ),
    "volume": (
        tr_later("volume"), read_litres, "L",
        (("L", "L"), ("mL", "mL"), ("cup", tr_later("US cups")), ("gal", "US gal"),
         ("tbsp", tr_later("tbsp")), ("tsp", tr_later("tsp"))),
    ),
    "length": (
        tr_later("length"), read_metres, "m",
        (("m", "m"), ("cm", "cm"), ("yd", "yd"), ("ft", "ft"), ("in", "in")),
    ),
}  # fmt: skip


def significant(value: float) -> str:
    """Write a figure with so many significant figures: 0.4536, 152.6, 1235."""
    whole = len(str(int(abs(value)))) if abs(value) >= 1 else 0
    lead = 0 if whole or not value else -int(f"{value:e}".partition("e")[2]) - 1
    return plain(value, max(0, FIGURES - whole + lead))


def kind_of(text: str) -> tuple[str, float] | None:
    """Give what kind of quantity a text names and its value in the kind's own unit."""
    for kind, (_, read, _, _) in _KINDS.items():
        try:
            return kind, read(text)
        except (Refusal, Question):
            continue
    try:
        return "heat", read_celsius(text)
    except (Refusal, Question):
        return None


def _read(text: str) -> float:
    found = kind_of(text)
    if found is None:
        raise Refusal(
            tr("{typed} names no quantity. Write a figure and its unit: 4.5 oz/yd², 3.5 yd, "
               "1/4 cup, 70 F.", typed=quoted(text))
        )  # fmt: skip
    return found[1]


def _said(text: str) -> str:
    kind = kind_of(text)
    if kind is None:
        return ""
    return tr("heat") if kind[0] == "heat" else tr(_KINDS[kind[0]][0])


QUANTITY: Final = Reader(_read, lambda _value: "", keeps_text=True)


def _convert(values: Values) -> Answer:
    text = str(values["quantity"])
    found = kind_of(text)
    if found is None:
        raise Refusal(tr("This names no quantity."))
    kind, value = found
    source = tr("Units by their definitions (NIST SP 811).")
    if kind == "heat":
        degrees = plain(fahrenheit_of_celsius(value), 1)
        return Answer(f"{plain(value, 1)} °C = {degrees} °F", (_said(text),), source)
    _, _, own, shown = _KINDS[kind]
    figures = [f"{significant(convert(value, own, unit))} {tr(words)}" for unit, words in shown]
    return Answer(figures[0], (_said(text).capitalize(), *figures[1:]), source)


CALCULATIONS: Final = (
    Calculation(
        "units", tr_later("From one unit to the others"),
        tr_later("Any weight, volume, length, area, cloth or heat, in all units that are met."),
        (Input("quantity", tr_later("&Quantity"), "own", "4.5 oz/yd2",
               tr_later("A figure and its unit, mixed if you like: 3.5 yd, 1/4 cup, 70 F."),
               reader=QUANTITY),),
        _convert,
    ),
)  # fmt: skip
