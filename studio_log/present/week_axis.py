"""A week on one time axis: pixels and minutes, what a hand has hold of, what it makes of it.

Bars are stretches of one day in minutes, in order, and never overlap: a bar stops at its neighbour.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from studio_log.domain.stretch_text import MINUTES_OF_DAY, Stretch

STEP: Final = 15
"""Minutes of one step of the mouse or of a key."""
Bars = tuple[Stretch, ...]


class Grip(StrEnum):
    """Which part of a bar is held."""

    START = "start"
    END = "end"
    WHOLE = "whole"


@dataclass(frozen=True)
class Axis:
    """Where a day of 24 hours lies: from `left`, `width` pixels wide."""

    left: float
    width: float

    def x(self, minute: float) -> float:
        """Give the place of a minute."""
        return self.left + self.width * minute / MINUTES_OF_DAY

    def minute(self, x: float) -> float:
        """Give the minute at a place, inside the day."""
        return min(max((x - self.left) / self.width, 0.0), 1.0) * MINUTES_OF_DAY

    def held(self, bars: Bars, x: float, reach: float) -> tuple[int, Grip] | None:
        """Say which bar a hand has hold of, and where; its ends reach `reach` pixels both ways."""
        ends = [
            (abs(self.x(minute) - x), place, grip)
            for place, bar in enumerate(bars)
            for minute, grip in zip(bar, (Grip.START, Grip.END), strict=True)
        ]
        near = min(ends, default=None)
        if near is not None and near[0] <= reach and not self._mid(bars, x):
            return near[1], near[2]
        at = self.minute(x)
        inside = next((place for place, bar in enumerate(bars) if bar[0] <= at < bar[1]), None)
        return None if inside is None else (inside, Grip.WHOLE)

    def _mid(self, bars: Bars, x: float) -> bool:
        """Say whether the place is in the middle third of a bar, also of a short one."""
        for start, end in bars:
            left, right = self.x(start), self.x(end)
            third = (right - left) / 3
            if left + third < x < right - third:
                return True
        return False


def snapped(minute: float) -> int:
    """Give the nearest step."""
    return round(minute / STEP) * STEP


def pulled(bars: Bars, place: int, grip: Grip, by: int) -> Bars:
    """Give the bars with one moved or stretched by so many minutes, as far as there is room."""
    start, end = bars[place]
    least = bars[place - 1][1] if place else 0
    most = bars[place + 1][0] if place + 1 < len(bars) else MINUTES_OF_DAY
    if grip is Grip.WHOLE:
        by = min(max(by, least - start), most - end)
        made = (start + by, end + by)
    elif grip is Grip.START:
        made = (min(max(start + by, least), max(end - STEP, least)), end)
    else:
        made = (start, max(min(end + by, most), min(start + STEP, most)))
    return (*bars[:place], made, *bars[place + 1 :])


def drawn(bars: Bars, at: int, to: int) -> Bars:
    """Give the bars with a new one between two minutes, cut to the room there is at the first."""
    if any(start < at < end for start, end in bars):
        return bars
    least = max((end for _, end in bars if end <= at), default=0)
    most = min((start for start, _ in bars if start >= at), default=MINUTES_OF_DAY)
    start, end = max(min(at, to), least), min(max(at, to), most)
    return tuple(sorted((*bars, (start, end)))) if end - start >= STEP else bars


def room_for_one(bars: Bars, wanted: Stretch) -> Stretch | None:
    """Give where a new bar fits: as wanted, else in the longest stretch free; None if nowhere."""
    if drawn(bars, *wanted) != bars and not any(
        start < wanted[1] and wanted[0] < end for start, end in bars
    ):
        return wanted
    edges = [0, *(minute for bar in bars for minute in bar), MINUTES_OF_DAY]
    gaps = [(edges[n], edges[n + 1]) for n in range(0, len(edges), 2)]
    start, end = max(gaps, key=lambda gap: gap[1] - gap[0])
    if end - start < STEP:
        return None
    length = min(wanted[1] - wanted[0], end - start)
    begin = snapped(start + (end - start - length) / 2)
    begin = min(max(begin, start), end - length)
    return begin, begin + length
