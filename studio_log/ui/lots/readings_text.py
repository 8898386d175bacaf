"""Readings as a dyer types them: "71 F, pH 6.8, 160 g", read one by one, with their doubts."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER, clean, plain, pointed, quoted, read_number
from studio_log.language.words import tr
from studio_log.science.units import celsius_of_fahrenheit, convert, fahrenheit_of_celsius

LONGEST: Final = 600
MOST: Final = 20
"""Readings in one entry."""
BETWEEN: Final = re.compile(r"\s*(?:[;\n]|,(?![0-9])|(?<![0-9]),)\s*")
"""What parts one reading from the next; a comma between figures is a decimal one."""
FIGURE: Final = re.compile(rf"(?P<sign>[-+]?) ?(?P<number>{NUMBER}) ?(?P<unit>[^0-9\s][^0-9]*)?\Z")
NAMED: Final = re.compile(
    r"(?P<name>[^\W\d][^:=]*?) ?(?:(?<![0-9])[:=]|[:=](?![0-9])) ?(?P<value>.+)\Z"
)
"""A colon between figures is no such mark: 3:30 is a time."""
BEFORE: Final = re.compile(r"(?P<name>[^\W\d][^0-9:=]*?) ?(?P<value>[-+]?(?:[0-9]|[.,][0-9]).*)\Z")
BOILING: Final = 100.0
COLDEST: Final = -30.0
HEAVIEST: Final = 500_000.0

UNITS: Final[Mapping[str, tuple[str, str]]] = {
    **dict.fromkeys(("c", "°c", "deg c", "celsius", "centigrade"), ("temperature", "°C")),
    **dict.fromkeys(("f", "°f", "deg f", "fahrenheit"), ("temperature", "°F")),
    **dict.fromkeys(("g", "gram", "grams", "gr"), ("weight", "g")),
    **dict.fromkeys(("kg", "kilo", "kilos"), ("weight", "kg")),
    **dict.fromkeys(("oz", "ounce", "ounces"), ("weight", "oz")),
    **dict.fromkeys(("lb", "lbs", "pound", "pounds"), ("weight", "lb")),
    "ph": ("pH", ""),
}
"""What a unit measures, and how it is written."""
NAMES: Final[Mapping[str, str]] = {
    **dict.fromkeys(("t", "temp", "temperature", "bath", "heat"), "temperature"),
    **dict.fromkeys(("w", "weight", "weighed"), "weight"),
    "ph": "pH",
}
BARE: Final[Mapping[str, str]] = {"temperature": "°C", "weight": "g"}
"""The unit of a figure that was typed without one; what was understood says so."""


@dataclass(frozen=True)
class Reading:
    """One reading: `value` is kept in the unit in which it was typed."""

    name: str
    value: float | str
    understood: str
    doubt: str = ""


@dataclass(frozen=True)
class Readings:
    """All that a line says; `fault` is a sentence where some of it cannot be read."""

    found: tuple[Reading, ...] = ()
    fault: str = ""

    @property
    def values(self) -> dict[str, float | str]:
        """Names and values as an entry keeps them."""
        return {one.name: one.value for one in self.found}

    @property
    def understood(self) -> str:
        """What was understood, in one line."""
        return " · ".join(one.understood for one in self.found)

    @property
    def doubt(self) -> str:
        """What looks wrong, as questions; "" where nothing does."""
        return " ".join(one.doubt for one in self.found if one.doubt)


def read_readings(text: str) -> Readings:
    """Read a line; empty gives none. Nothing is raised: a fault comes as its sentence."""
    if not text.strip():
        return Readings()
    found: list[Reading] = []
    try:
        typed = clean(text.replace("\n", "; ").strip("; "), tr("the readings"), longest=LONGEST)
        parts = [part for part in BETWEEN.split(typed) if part]
        found.extend(_read(part) for part in parts[: MOST + 1])
    except Refusal as refusal:
        return Readings(tuple(found), str(refusal))
    names = [one.name for one in found]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        fault = tr("{name} is there twice. Name one of them, as in “rinse: 6”.", name=twice)
        return Readings(tuple(found), fault)
    if len(found) > MOST:
        fault = tr("An entry takes {count} readings. Use a second one.", count=MOST)
        return Readings(tuple(found[:MOST]), fault)
    return Readings(tuple(found))


def _read(part: str) -> Reading:
    named = NAMED.match(part)
    figure = FIGURE.match(part)
    if named is None and figure is None:
        named = BEFORE.match(part)
    if named is None:
        if figure is None:
            raise Refusal(
                tr("{typed} has no value. Write name: value, as in “smell: sweet”.",
                   typed=quoted(part))
            )  # fmt: skip
        return _measured("", figure, part)
    name = _name(named["name"])
    figure = FIGURE.match(named["value"])
    if figure is None:
        return Reading(name, named["value"], f"{name}: {named['value']}")
    return _measured(name, figure, part)


def _name(typed: str) -> str:
    name = NAMES.get(typed.casefold(), typed)
    if len(name) > 60:
        raise Refusal(
            tr("{typed} is long for a name. Write the rest as a note.", typed=quoted(name))
        )
    return name


def _measured(name: str, figure: re.Match[str], part: str) -> Reading:
    value = read_number(figure["number"]) * (-1 if figure["sign"] == "-" else 1)
    typed = (figure["unit"] or "").strip()
    kind, unit = UNITS.get(typed.casefold().rstrip("."), ("", typed))
    if kind == "pH" and not name:
        name = "pH"
    if not name and not kind:
        raise Refusal(
            tr("{typed} of what? Write pH 6.8, 71 F, 160 g, or name: value.", typed=quoted(part))
        )
    name = name or kind
    assumed = "" if unit else BARE.get(name, "")
    unit = unit or assumed
    shown = f"{name} {plain(value, 4)}{f' {unit}' if unit else ''}"
    kept: float | str = f"{pointed(value, 4)} {unit}" if unit else value
    doubt = _doubt(name, value, unit)
    other = _other(value, unit)
    more = ", ".join(part for part in (other, tr("no unit typed") if assumed else "") if part)
    return Reading(name, kept, f"{shown} ({more})" if more else shown, doubt)


def _other(value: float, unit: str) -> str:
    """Say a figure in the unit of the other system, where that helps to see a slip."""
    if unit == "°F":
        return f"{plain(celsius_of_fahrenheit(value), 1)} °C"
    if unit == "°C":
        return f"{plain(fahrenheit_of_celsius(value), 0)} °F"
    if unit in ("oz", "lb"):
        return f"{plain(convert(value, unit, 'g'), 0)} g"
    return ""


def _doubt(name: str, value: float, unit: str) -> str:
    """Ask about a figure that a dye bath, a scale or a strip hardly gives."""
    if unit in ("°C", "°F"):
        return _heat_doubt(value, unit)
    if name == "pH" and not 0 <= value <= 14:
        return tr("A pH of {value}? The scale goes from 0 to 14.", value=plain(value, 2))
    grams = convert(value, unit, "g") if unit in ("g", "kg", "oz", "lb") else 1.0
    if grams <= 0:
        weight = f"{plain(value, 2)} {unit}"
        return tr("A weight of {weight}? Nothing weighs so little.", weight=weight)
    if grams <= HEAVIEST:
        return ""
    return tr("{weight}? That is over half a tonne.", weight=f"{plain(value, 0)} {unit}")


def _heat_doubt(value: float, unit: str) -> str:
    celsius = value if unit == "°C" else celsius_of_fahrenheit(value)
    heat = f"{plain(value, 1)} {unit}"
    if celsius < COLDEST:
        return tr("{heat}? That is far below freezing.", heat=heat)
    if celsius <= BOILING:
        return ""
    hot = tr("A bath of {heat}? Water boils at 100 °C.", heat=heat)
    if unit == "°F" or value > 212:
        return hot
    meant = tr("Or was it °F?")
    return f"{hot} {meant}"
