"""Where everything of a lane lies on the sheet, whatever part of the sheet is seen.

Worked out once a scale; what is seen of it is cut out for each picture by `timeline_layout`.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Protocol, TypeVar

from studio_log.present.lanes import Bar, Drop, Lane, Mark, Stitch
from studio_log.present.text_room import Interval
from studio_log.present.time_scale import TimeScale

LEAST_BAR: Final = 2.0
"""Narrower bars that touch are merged into one."""


class _Placed(Protocol):
    @property
    def x(self) -> float: ...


_P = TypeVar("_P", bound=_Placed)


@dataclass(frozen=True, slots=True)
class Run:
    """A bar, or several neighbours too narrow to tell apart; x of its ends."""

    bars: tuple[Bar, ...]
    left: float
    right: float
    reach: float
    """The right end with the soft end."""


@dataclass(frozen=True, slots=True)
class StitchShape:
    """A stitch, centred on x."""

    stitch: Stitch
    x: float


@dataclass(frozen=True, slots=True)
class DropShape:
    """A drop, centred on x."""

    drop: Drop
    x: float


@dataclass(frozen=True, slots=True)
class MarkPlace:
    """A mark of the cure, centred on x."""

    mark: Mark
    x: float


@dataclass(frozen=True, slots=True)
class LanePlaces:
    """A whole lane, each row of things in order of x."""

    runs: tuple[Run, ...]
    stitches: tuple[StitchShape, ...]
    drops: tuple[DropShape, ...]
    marks: tuple[MarkPlace, ...]


def places_of(lane: Lane, scale: TimeScale, stitch: float) -> LanePlaces:
    """Place a lane; stitches (so many pixels long) that would lie on one another are left out."""
    return LanePlaces(
        _runs(lane.bars, scale),
        _stitches(lane.stitches, scale, stitch + 2),
        tuple(DropShape(drop, scale.x(drop.at)) for drop in lane.drops),
        tuple(MarkPlace(mark, scale.x(mark.at)) for mark in lane.marks),
    )


def seen(things: Sequence[_P], window: Interval, margin: float) -> Sequence[_P]:
    """Clip things in order of x by bisecting."""
    first = bisect_left(things, window[0] - margin, key=_x)
    return things[first : bisect_right(things, window[1] + margin, key=_x)]


def _x(thing: _Placed) -> float:
    return thing.x


def _runs(bars: Sequence[Bar], scale: TimeScale) -> tuple[Run, ...]:
    """Group neighbours that are each under `LEAST_BAR` wide and touch."""
    runs: list[Run] = []
    before = float("-inf")
    """Where the last narrow bar ended."""
    for bar in bars:
        left, right = scale.x(bar.start), scale.x(bar.end)
        reach = max(right, scale.x(bar.soft_until)) if bar.soft_until else right
        narrow = right - left < LEAST_BAR
        if narrow and left - before < LEAST_BAR:
            last = runs[-1]
            runs[-1] = Run(
                (*last.bars, bar), last.left, max(last.right, right), max(last.reach, reach)
            )
        else:
            runs.append(Run((bar,), left, right, reach))
        before = right if narrow else float("-inf")
    return tuple(runs)


def _stitches(
    stitches: Sequence[Stitch], scale: TimeScale, least: float
) -> tuple[StitchShape, ...]:
    found: list[StitchShape] = []
    after = float("-inf")
    for stitch in stitches:
        x = scale.x(stitch.at)
        if x >= after:
            found.append(StitchShape(stitch, x))
            after = x + least
    return tuple(found)
