"""Reading what a room is like as it is typed: its heat, its humidity, its moving air."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.number_text import NUMBER, clean, quoted, read_exact
from studio_log.science.units import celsius_of_fahrenheit

LONGEST: Final = 40
COLDEST_C: Final = -40.0
HOTTEST_C: Final = 150.0
SURELY_FAHRENHEIT: Final = 45.0
"""A bare number above this may be meant in °F: it is asked about."""
MOST_SPEED: Final = 40.0
"""m/s: a gale."""

_FAHRENHEIT: Final = r"(?:° ?f|degf|deg\.? f|f|fahrenheit|degrees fahrenheit)"
_CELSIUS: Final = r"(?:° ?c|degc|deg\.? c|c|celsius|centigrade|degrees celsius|℃)"
_SIGNED: Final = rf"(?P<sign>[-+]?) ?(?P<figure>{NUMBER})"
_SPEEDS: Final[Mapping[str, Fraction]] = {
    "m/s": Fraction(1), "km/h": Fraction(10, 36), "kmh": Fraction(10, 36),
    "mph": Fraction(1609344, 3600000), "ft/min": Fraction(3048, 600000),
}  # fmt: skip
"""Metres a second of each; the mile is 1609.344 m, the foot 0.3048 m exactly (NIST SP 811)."""
ROOM_AIR_M_S: Final = 0.1
"""How the air moves in a room with people in it, where nobody says."""
_AIRS: Final[Mapping[str, float]] = {
    "still": 0.0, "room": ROOM_AIR_M_S, "fan": 1.0, "breeze": 2.0,
}  # fmt: skip
"""Words for moving air in m/s: orders of size, from memory."""


@dataclass(frozen=True)
class Room:
    """Air as it was typed: °C, relative humidity in per cent, its speed in m/s."""

    celsius: float
    humidity: float
    air_m_s: float


def read_celsius(text: str, what: str = "the temperature") -> float:
    """Give °C for "21", "21,5 °C", "70 F"; a bare number means °C and is asked about above 45."""
    plain = clean(text, what, longest=LONGEST).casefold()
    found = re.fullmatch(rf"{_SIGNED} ?(?:(?P<f>{_FAHRENHEIT})|(?P<c>{_CELSIUS}|°))?", plain)
    if found is None:
        raise Refusal(
            f"{quoted(text)} cannot be read as {what}. Nothing was changed. "
            "Write it as 21, 21.5 °C or 70 °F."
        )
    value = read_exact(found["figure"]) * (-1 if found["sign"] == "-" else 1)
    if found["f"]:
        celsius = celsius_of_fahrenheit(value)
    elif found["c"] or value <= SURELY_FAHRENHEIT:
        celsius = float(value)
    else:
        raise Question(f"Is {quoted(plain)} meant in °C or in °F? Say which: {plain} F, {plain} C.")
    if not COLDEST_C <= celsius <= HOTTEST_C:
        raise Refusal(
            f"{quoted(text)} cannot be {what}: it lies between {COLDEST_C:g} and {HOTTEST_C:g} °C. "
            "Nothing was changed."
        )
    return celsius


def read_humidity(text: str, what: str = "the humidity") -> float:
    """Give the relative humidity in per cent of "50", "50 %", "50,5% rh"."""
    plain = clean(text, what, longest=LONGEST).casefold()
    found = re.fullmatch(rf"({NUMBER}) ?(?:%|per cent|percent)? ?(?:rh|r\.h\.)?", plain)
    value = float(read_exact(found[1])) if found else -1.0
    if not 0 <= value <= 100:
        raise Refusal(
            f"{quoted(text)} cannot be read as {what}: per cent, from 0 to 100, such as 65. "
            "Nothing was changed."
        )
    return value


def read_air(text: str, what: str = "the moving air") -> float:
    """Give m/s of "0.1", "0.5 m/s", "2 km/h", "1 mph", "20 ft/min", "still", "room", "fan"."""
    plain = clean(text, what, longest=LONGEST).casefold()
    if plain in _AIRS:
        return _AIRS[plain]
    units = "|".join(re.escape(unit) for unit in _SPEEDS)
    found = re.fullmatch(rf"({NUMBER}) ?({units})?", plain)
    value = float(read_exact(found[1]) * _SPEEDS[found[2] or "m/s"]) if found else -1.0
    if not 0 <= value <= MOST_SPEED:
        raise Refusal(
            f"{quoted(text)} cannot be read as {what}: metres a second, such as 0.1 in a room, "
            "or still, room, fan, breeze. Nothing was changed."
        )
    return value
