"""Moment <-> place on the sheet: straight where it lies flat, a fixed width at each pleat."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Final

from studio_log.present.pleats import Pleat

LEAST_ZOOM: Final = 0.02
"""Pixels an hour: a year in 175 px."""
_HOUR: Final = timedelta(hours=1)
MOST_ZOOM: Final = 3000.0
"""Pixels an hour: two minutes in 100 px."""


@dataclass(frozen=True, slots=True)
class Fold:
    """Where a folded pleat lies on the sheet, in pixels."""

    pleat: Pleat
    left: float
    right: float


@dataclass(frozen=True)
class TimeScale:
    """A map of moments to x in pixels; x is 0 at `start` and grows with time.

    Strictly monotone, so that each x is one moment. Beyond both ends it runs on straight.
    Build it by `time_scale`.
    """

    start: datetime
    end: datetime
    zoom: float
    """Pixels an hour where the sheet lies flat."""
    pleat_width: float
    pleats: tuple[Pleat, ...]
    folds: tuple[Fold, ...]
    _hours: tuple[float, ...]
    _places: tuple[float, ...]

    @property
    def width(self) -> float:
        """The whole sheet in pixels."""
        return self._places[-1]

    def x(self, moment: datetime) -> float:
        """Where the moment lies."""
        hours = (moment - self.start) / _HOUR
        return _along(hours, self._hours, self._places, self.zoom)

    def moment(self, x: float) -> datetime:
        """Give the moment that lies there, to a microsecond."""
        hours = _along(x, self._places, self._hours, 1 / self.zoom)
        return self.start + timedelta(hours=hours)

    def fold_at(self, x: float) -> Fold | None:
        """Find the folded pleat under x, if any."""
        return next((fold for fold in self.folds if fold.left <= x <= fold.right), None)

    def zoomed(self, factor: float) -> "TimeScale":
        """Give the same sheet, closer (factor > 1) or farther, within the limits of zoom."""
        return time_scale(
            self.start, self.end, self.zoom * factor, self.pleats, pleat_width=self.pleat_width
        )


def time_scale(
    start: datetime,
    end: datetime,
    zoom: float,
    pleats: Sequence[Pleat] = (),
    *,
    pleat_width: float = 56.0,
) -> TimeScale:
    """Make a scale from start to end at `zoom` pixels an hour, with the closed pleats folded.

    Pleats that reach outside the span are left flat. At a zoom so small that the
    stretch is narrower than its pleat would be, it lies flat too.
    """
    zoom = min(max(zoom, LEAST_ZOOM), MOST_ZOOM)
    hours, places, folds = [0.0], [0.0], []
    for pleat in pleats:
        left = (pleat.start - start) / timedelta(hours=1)
        right = (pleat.end - start) / timedelta(hours=1)
        fits = pleat.start >= start and pleat.end <= end
        if pleat.opened or not fits or (right - left) * zoom <= pleat_width:
            continue
        from_x = places[-1] + (left - hours[-1]) * zoom
        folds.append(Fold(pleat, from_x, from_x + pleat_width))
        if left > hours[-1]:
            hours.append(left)
            places.append(from_x)
        hours.append(right)
        places.append(from_x + pleat_width)
    last = (end - start) / timedelta(hours=1)
    if last > hours[-1]:
        places.append(places[-1] + (last - hours[-1]) * zoom)
        hours.append(last)
    return TimeScale(
        start, end, zoom, pleat_width, tuple(pleats), tuple(folds), tuple(hours), tuple(places)
    )


def zoomed_about(scale: TimeScale, factor: float, x: float) -> tuple[TimeScale, float]:
    """Give the zoomed scale, and where the moment that lay at x lies on it.

    A view that scrolls by the difference keeps that moment under the pointer.
    """
    nearer = scale.zoomed(factor)
    return nearer, nearer.x(scale.moment(x))


def flat_parts(scale: TimeScale, left: float, right: float) -> list[tuple[float, float]]:
    """List the parts of left…right that are not folded, as (left, right)."""
    edges = [left]
    for fold in scale.folds:
        if fold.right > left and fold.left < right:
            edges += [fold.left, fold.right]
    edges.append(right)
    parts = list(pairwise(edges))[::2]
    return [(one, other) for one, other in parts if other > one]


def _along(
    value: float, knots: tuple[float, ...], targets: tuple[float, ...], slope: float
) -> float:
    """Straight-line interpolation between knots, and with `slope` beyond the ends."""
    if value <= knots[0]:
        return targets[0] + (value - knots[0]) * slope
    if value >= knots[-1]:
        return targets[-1] + (value - knots[-1]) * slope
    at = bisect_right(knots, value)
    share = (value - knots[at - 1]) / (knots[at] - knots[at - 1])
    return targets[at - 1] + share * (targets[at] - targets[at - 1])
