"""Weighings of one cloth while it dries: its own rate, and when it will be dry.

The same two parts as in `drying`: a straight fall, then a slower end. Found from the weighings
alone, it needs neither room nor area. Checked by a shirt weighed on a line,
tests/reference/drying_series.csv.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.science.drying import DRY_WITHIN

LEAST_WEIGHINGS: Final = 3


@dataclass(frozen=True)
class Weighing:
    """Grams of the cloth so many minutes after it was hung."""

    minute: float
    grams: float


@dataclass(frozen=True)
class Course:
    """Grams lost a minute while the surface is wet, and the minute at which it is dry."""

    rate: float
    dry_minute: float


def course_of(
    weighings: Sequence[Weighing], dry_grams: float, *, critical: float, regain: float
) -> Course | None:
    """Give the course of a drying, or None before three weighings tell of the straight fall.

    `dry_grams` is the cloth bone dry, `critical` and `regain` kg of water to the kg of it. Right to
    about a fifth. ValueError for weights that are not above nought.
    """
    if not dry_grams > 0 or any(not one.grams > 0 for one in weighings):
        raise ValueError("cloth weighs more than nothing")
    wet = [one for one in weighings if one.grams / dry_grams - 1 >= critical]
    if len(wet) < LEAST_WEIGHINGS:
        return None
    rate = -_slope(wet)
    if not rate > 0:
        return None
    start = wet[0]
    water = start.grams / dry_grams - 1
    slow = critical - regain
    parts = water - critical + slow * math.log(slow / DRY_WITHIN)
    return Course(rate, start.minute + dry_grams / rate * parts)


def _slope(weighings: Sequence[Weighing]) -> float:
    """Give the grams a minute of the straight line through the weighings, by least squares."""
    count = len(weighings)
    minutes = math.fsum(one.minute for one in weighings) / count
    grams = math.fsum(one.grams for one in weighings) / count
    spread = math.fsum((one.minute - minutes) ** 2 for one in weighings)
    if not spread:
        return 0.0
    return math.fsum((one.minute - minutes) * (one.grams - grams) for one in weighings) / spread
