"""An estimate of a length of time: its least, its likely and its most, and what it stands on."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

_STEPS: Final = (
    (timedelta(hours=1), timedelta(minutes=5)),
    (timedelta(hours=4), timedelta(minutes=15)),
    (timedelta(hours=12), timedelta(minutes=30)),
)
"""Below this length, a step that an estimate may be told to; whole hours from there on."""
_COARSEST: Final = timedelta(hours=1)


@dataclass(frozen=True)
class Estimate:
    """How long a thing takes; earliest <= aim <= latest. `why` says what it was worked out from."""

    earliest: timedelta
    aim: timedelta
    latest: timedelta
    why: str

    @property
    def as_said(self) -> "Estimate":
        """The same, rounded to what an estimate can mean; the range never grows narrower."""
        return Estimate(
            rough(self.earliest, math.floor), rough(self.aim), rough(self.latest, math.ceil),
            self.why,
        )  # fmt: skip


def hours(of: float) -> timedelta:
    """Give so many hours to the whole second."""
    return timedelta(seconds=round(of * 3600))


def rough(of: timedelta, to_whole: Callable[[float], int] = round) -> timedelta:
    """Give a length to 5 min below an hour, 15 below four, 30 below twelve, else to the hour."""
    step = next((step for below, step in _STEPS if of < below), _COARSEST)
    return step * to_whole(of / step)
