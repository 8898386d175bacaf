"""Reading places in a picture as they are typed on the command line."""

import re
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import clean, quoted

NOTHING: Final = "Nothing was changed."
MOST_PLACE: Final = 100_000.0
"""Pixels."""
_FIGURE: Final = re.compile(r"-?[0-9]{1,6}(?:\.[0-9]{1,12})?")

Point = tuple[float, float]
Rect = tuple[float, float, float, float]


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
