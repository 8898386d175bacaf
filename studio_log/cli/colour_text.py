"""Reading colours and places in a picture as they are typed on the command line."""

import re
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import clean, quoted
from studio_log.science.colour.lab import Lab

NOTHING: Final = "Nothing was changed."
LIGHTNESS: Final = (0.0, 110.0)
"""A little above 100: cloth that fluoresces is lighter than white."""
MOST_COLOUR: Final = 200.0
"""No surface is further from grey in a* or b*."""
MOST_PLACE: Final = 100_000.0
"""Pixels."""
_FIGURE: Final = re.compile(r"-?[0-9]{1,6}(?:\.[0-9]{1,12})?")

Point = tuple[float, float]
Rect = tuple[float, float, float, float]


def read_lab(typed: str) -> Lab:
    """Give the colour of "52.1,31.8,24.0"; with semicolons between, "52,1;31,8;24" as well."""
    figures = _figures(typed, "a colour", 3, "L*, a* and b* such as 52.1,31.8,24.0")
    lab = Lab(*figures)
    low, high = LIGHTNESS
    if not low <= lab.lightness <= high or max(abs(lab.a), abs(lab.b)) > MOST_COLOUR:
        raise Refusal(
            f"{quoted(typed)} is no colour of a surface: L* is 0 to 100, a* and b* are between "
            f"-{MOST_COLOUR:g} and {MOST_COLOUR:g}. {NOTHING}"
        )
    return lab


def read_corners(typed: str) -> tuple[Point, Point, Point, Point]:
    """Give four points of "x,y x,y x,y x,y", in pixels of the picture as it is seen."""
    wanted = "four corners such as “120,80 980,90 970,650 115,640”"
    figures = _figures(typed.replace(" ", ","), "the target", 8, wanted)
    first, second, third, fourth = zip(figures[::2], figures[1::2], strict=True)
    return first, second, third, fourth


def read_rect(typed: str, what: str) -> Rect:
    """Give left, top, width and height of "x,y,width,height", in pixels."""
    figures = _figures(typed, what, 4, "left, top, width and height such as 400,300,120,90")
    left, top, width, height = figures
    if min(width, height) <= 0:
        raise Refusal(f"{quoted(typed)} has no area. {NOTHING}")
    return left, top, width, height


def _figures(typed: str, what: str, count: int, wanted: str) -> list[float]:
    plain = clean(typed, what, longest=200)
    parts = plain.replace(",", ".").split(";") if ";" in plain else plain.split(",")
    parts = [part.strip() for part in parts if part.strip() or ";" in plain]
    if len(parts) != count or not all(_FIGURE.fullmatch(part) for part in parts):
        raise Refusal(f"{quoted(plain)} is not read as {what}: {wanted}. {NOTHING}")
    figures = [float(part) for part in parts]
    if max(map(abs, figures)) > MOST_PLACE:
        raise Refusal(f"{quoted(plain)} holds a figure that is too large. {NOTHING}")
    return figures
