"""Swatches on the a*b* plane: where everything stands, for a screen or a file, at one scale.

Red lies to the right, yellow above, grey in the middle; every panel shows the same stretch, so that
lots beside each other can be compared. One step across is one step up.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.language.words import tr
from studio_log.science.colour.lab import Lab

STEP: Final = 20
"""Between rings and lines of the grid, in a* and b*."""
LEAST: Final = 20
MOST_PANELS: Final = 12
DOT: Final = 0.55
"""Radius of a swatch, in heights of a line."""
ROOMY: Final = 16
"""From so many heights of a line on, a panel has room for the names of its directions."""
EDGE: Final = 1.6
"""Room about a panel for its words, in heights of a line."""


@dataclass(frozen=True)
class Coloured:
    """A swatch to be drawn: `shown` is its colour as "#rrggbb"; `told` says all of it."""

    code: str
    lot: str
    lot_name: str
    lab: Lab
    shown: str
    relative: bool
    told: str
    age_d: float | None = None
    """Days that its lot had cured when it was cut, None before any or where it was not asked."""


@dataclass(frozen=True)
class Dot:
    """A swatch where it stands; a hollow one is relative only."""

    code: str
    x: float
    y: float
    radius: float
    shown: str
    hollow: bool
    told: str


@dataclass(frozen=True)
class Stroke:
    """A line of the grid; the axes are strong."""

    x1: float
    y1: float
    x2: float
    y2: float
    strong: bool = False


@dataclass(frozen=True)
class Ring:
    """All colours of one chroma."""

    x: float
    y: float
    radius: float


@dataclass(frozen=True)
class Label:
    """A word; `anchor` is "start", "middle" or "end", `y` its baseline."""

    x: float
    y: float
    text: str
    anchor: str = "middle"
    strong: bool = False


@dataclass(frozen=True)
class Panel:
    """One plane: a square with all that stands in it."""

    title: str
    left: float
    top: float
    side: float
    strokes: tuple[Stroke, ...]
    rings: tuple[Ring, ...]
    labels: tuple[Label, ...]
    dots: tuple[Dot, ...]


@dataclass(frozen=True)
class Plot:
    """The panels on a sheet of so many units across and down; `reach` is the end of each axis."""

    width: float
    height: float
    line: float
    """Height of a line of words."""
    reach: int
    panels: tuple[Panel, ...]
    left_out: int
    """Lots that found no panel."""


def lay_out_plot(
    swatches: Sequence[Coloured], size: tuple[float, float], line: float, *, by_lot: bool = False
) -> Plot:
    """Lay out one plane of all swatches, or one for each lot, those with most swatches first."""
    groups = _groups(swatches) if by_lot else [("", list(swatches))]
    shown = groups[:MOST_PANELS]
    reach = reach_of_axes([one.lab for _, group in shown for one in group])
    boxes = squares(len(shown), size, line, titled=by_lot)
    panels = tuple(
        _panel(title, group, box, reach, line)
        for (title, group), box in zip(shown, boxes, strict=True)
    )
    return Plot(*size, line, reach, panels, len(groups) - len(shown))


def squares(
    count: int, size: tuple[float, float], line: float, *, titled: bool
) -> list[tuple[float, float, float]]:
    """Give left, top and side of so many equal squares, as large as they fit on a sheet."""
    width, height = size
    columns, side = _fitting(max(count, 1), width, height, line)
    cell_wide, cell_high = width / columns, height / max(math.ceil(count / columns), 1)
    return [
        (
            at % columns * cell_wide + (cell_wide - side) / 2,
            at // columns * cell_high + (cell_high - side) / 2 + (line * 0.6 if titled else 0),
            side,
        )
        for at in range(count)
    ]


def reach_of_axes(colours: Sequence[Lab]) -> int:
    """Give the end of the axes: the next whole step beyond the colour furthest from grey."""
    furthest = max((max(abs(one.a), abs(one.b)) for one in colours), default=0.0)
    return max(LEAST, STEP * math.ceil((furthest + 1) / STEP))


def _groups(swatches: Sequence[Coloured]) -> list[tuple[str, list[Coloured]]]:
    found: dict[str, list[Coloured]] = {}
    for one in swatches:
        found.setdefault(f"{one.lot} {one.lot_name}".strip(), []).append(one)
    return sorted(found.items(), key=lambda pair: (-len(pair[1]), pair[0]))


def _fitting(count: int, width: float, height: float, line: float) -> tuple[int, float]:
    """Give the number of columns that leaves the largest squares, and their side."""
    best = (1, 0.0)
    for columns in range(1, count + 1):
        rows = math.ceil(count / columns)
        room_high = height / rows - (2 * EDGE + 1) * line
        side = min(width / columns - 2 * EDGE * line, room_high)
        if side > best[1]:
            best = columns, side
    return best[0], max(best[1], 4 * line)


def _panel(
    title: str, group: Sequence[Coloured], box: tuple[float, float, float], reach: int, line: float
) -> Panel:
    left, top, side = box
    middle = left + side / 2, top + side / 2
    scale = side / 2 / reach
    steps = range(STEP, reach + 1, STEP)
    strokes = [
        Stroke(left, middle[1], left + side, middle[1], strong=True),
        Stroke(middle[0], top, middle[0], top + side, strong=True),
    ]
    for one in (at * sign for at in steps for sign in (-1, 1)):
        x, y = middle[0] + one * scale, middle[1] - one * scale
        strokes += [Stroke(x, top, x, top + side), Stroke(left, y, left + side, y)]
    labels = _labels(title, box, reach, line)
    rings = tuple(Ring(*middle, at * scale) for at in steps)
    radius = min(DOT * line, side / 26)
    # The darker ones first: a light one that lies on them is seen, and they about it.
    dots = tuple(
        Dot(
            one.code, middle[0] + one.lab.a * scale, middle[1] - one.lab.b * scale, radius,
            one.shown, one.relative, one.told,
        )
        for one in sorted(group, key=lambda one: one.lab.lightness)
    )  # fmt: skip
    return Panel(title, left, top, side, tuple(strokes), rings, tuple(labels), dots)


def _labels(title: str, box: tuple[float, float, float], reach: int, line: float) -> list[Label]:
    left, top, side = box
    middle, level = left + side / 2, top + side / 2 - 0.3 * line
    small = side < ROOMY * line
    yellow, blue, red, green = (
        ("b* {figure}", "{figure}", "a* {figure}", "{figure}")
        if small
        else (
            tr("b* yellow {figure}"), tr("blue {figure}"), tr("a* red {figure}"),
            tr("green {figure}"),
        )
    )  # fmt: skip
    found = [
        Label(middle, top - 0.4 * line, yellow.format(figure=reach)),
        Label(middle, top + side + 1.05 * line, blue.format(figure=-reach)),
        Label(left + side, level, red.format(figure=reach), "end"),
        Label(left, level, green.format(figure=-reach), "start"),
    ]
    if title:
        found.append(Label(left, top - 1.5 * line, title, "start", strong=True))
    return found
