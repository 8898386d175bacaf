"""Swatches by the age of their cure: where everything stands, for a screen or a file.

Two squares, chroma and lightness against the logarithm of the age, each swatch in its own colour.
What was cut before a day of cure was over has no place on it and stands in a column at the left.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.present.swatch_plot import DOT, Coloured, Dot, Label, Panel, Plot, Stroke, squares
from studio_log.science.colour.lab import Lab

TICKS: Final = (1, 3, 7, 14, 30, 60, 90, 180, 365, 730, 1825, 3650)
"""Days that may be named on the axis."""
LEAST_SPAN: Final = (1.0, 90.0)
"""Days that are shown at the least."""
COLUMN: Final = 0.15
"""Part of the width for what is not cured."""
TICK_ROOM: Final = 2.2
"""Between two named days, in heights of a line."""
TEN: Final = 10


@dataclass(frozen=True)
class _Measure:
    title: str
    of: Callable[[Lab], float]
    least: float
    """The end of its axis lies here at the least."""


_MEASURES: Final = (
    _Measure(tr_later("Chroma C* by days of cure"), lambda lab: lab.chroma, 20),
    _Measure(tr_later("Lightness L* by days of cure"), lambda lab: lab.lightness, 100),
)


@dataclass(frozen=True)
class _Scale:
    left: float
    top: float
    side: float
    column: float
    low: float
    high: float
    end: float

    def x(self, age_d: float | None) -> float:
        """Give the place of an age; of what is not cured that of its column."""
        if age_d is None or age_d < 1:
            return self.left + self.side * self.column / 2
        along = (math.log10(age_d) - self.low) / (self.high - self.low)
        return self.left + self.side * (self.column + (1 - self.column) * (0.04 + 0.92 * along))

    def y(self, value: float) -> float:
        return self.top + self.side * (1 - value / self.end)


def lay_out_ages(swatches: Sequence[Coloured], size: tuple[float, float], line: float) -> Plot:
    """Lay out chroma and lightness by the age of the cure, beside each other or below."""
    boxes = squares(len(_MEASURES), size, line, titled=True)
    panels = tuple(
        _panel(swatches, measure, box, line) for measure, box in zip(_MEASURES, boxes, strict=True)
    )
    return Plot(*size, line, 0, panels, 0)


def _panel(
    swatches: Sequence[Coloured], measure: _Measure, box: tuple[float, float, float], line: float
) -> Panel:
    scale = _scale(swatches, measure, box)
    left, top, side = box
    ages = _named(scale, line)
    values = range(0, round(scale.end) + 1, TEN if scale.end <= 60 else 2 * TEN)
    strokes = [
        Stroke(left, top + side, left + side, top + side, strong=True),
        Stroke(left, top, left, top + side, strong=True),
        *(Stroke(scale.x(age), top, scale.x(age), top + side) for age in ages),
        *(Stroke(left, scale.y(one), left + side, scale.y(one)) for one in values if one),
    ]
    below = top + side + 1.05 * line
    labels = [
        Label(left, top - 0.6 * line, tr(measure.title), "start", strong=True),
        *(Label(scale.x(age), below, str(age)) for age in ages),
        *(Label(left - 0.3 * line, scale.y(one) + 0.3 * line, str(one), "end") for one in values),
    ]
    if scale.column:
        labels.append(Label(scale.x(None), below, tr("not cured")))
    radius = min(DOT * line, side / 26)
    dots = tuple(
        Dot(one.code, scale.x(one.age_d), scale.y(measure.of(one.lab)), radius, one.shown,
            one.relative, one.told)
        for one in swatches
    )  # fmt: skip
    return Panel("", left, top, side, tuple(strokes), (), tuple(labels), dots)


def _scale(
    swatches: Sequence[Coloured], measure: _Measure, box: tuple[float, float, float]
) -> _Scale:
    ages = [one.age_d for one in swatches if one.age_d is not None and one.age_d >= 1]
    low, high = min([LEAST_SPAN[0], *ages]), max([LEAST_SPAN[1], *ages])
    column = COLUMN if len(ages) < len(swatches) else 0.0
    most = max((measure.of(one.lab) for one in swatches), default=0.0)
    end = max(measure.least, TEN * math.ceil(most / TEN))
    return _Scale(*box, column, math.log10(low), math.log10(high), end)


def _named(scale: _Scale, line: float) -> list[int]:
    """Give the days that are named: those in reach whose words do not run into each other."""
    kept: list[int] = []
    for age in TICKS:
        inside = scale.low - 1e-9 <= math.log10(age) <= scale.high + 1e-9
        if inside and (not kept or scale.x(age) - scale.x(kept[-1]) >= TICK_ROOM * line):
            kept.append(age)
    return kept
