"""Lanes and a scale -> rectangles, texts and what lies under the pointer.

All x are pixels of the sheet (0 at the scale's start), all y pixels from the top of the
lane. Nothing is drawn here.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Final

from studio_log.domain.methods import StepKind
from studio_log.language.words import tr
from studio_log.present.lanes import Bar, BarState, Closed, Lane, Mark, Night
from studio_log.present.text_room import Interval, Measure, Text, free_parts, text_in
from studio_log.present.time_scale import TimeScale, flat_parts
from studio_log.present.timeline_places import (
    LEAST_BAR,
    DropShape,
    LanePlaces,
    Run,
    StitchShape,
    places_of,
    seen,
)

PLAN_END: Final = 1.5
STITCH_HALF: Final = 3.0
"""Pixels from the middle of a stitch to its edge, up and down."""
LEAST_NIGHT: Final = 2.0
"""Narrower nights are left out, in pixels."""


@dataclass(frozen=True, slots=True)
class RowSizes:
    """Heights and widths inside one lane, in pixels; scaled with the font by the view."""

    row: float = 48.0
    bar_top: float = 7.0
    bar: float = 22.0
    planned_gap: float = 2.0
    """From the bar to the line of the plan; the line's ends reach `PLAN_END` up and down."""
    strip_top: float = 32.0
    """Under the bar: stitches, and marks with their words."""
    strip: float = 13.0
    pad: float = 6.0
    glyph: float = 13.0
    drop: float = 12.0
    stitch: float = 9.0
    mark: float = 11.0

    @property
    def planned_y(self) -> float:
        """Middle of the line of the plan, just under its bar."""
        return self.bar_top + self.bar + self.planned_gap + 0.5

    @property
    def stitch_y(self) -> float:
        """Middle of the stitches, at the foot of the strip: clear of the line of the plan."""
        return self.strip_top + self.strip - STITCH_HALF - 1


@dataclass(frozen=True, slots=True)
class BarShape:
    """A bar as it is drawn; `left`…`right` is its body, cut to the window."""

    bar: Bar
    left: float
    right: float
    dyed_to: float
    """Up to here it is dyed: all of a done bar, a running one up to now, none ahead."""
    cut_left: bool
    """Its start lies outside the window."""
    soft: Interval | None
    aim: float | None
    """The aim inside the soft end."""
    planned: Interval | None
    glyph_at: float | None
    label: Text | None
    merged: tuple[Bar, ...] = ()

    @property
    def reach(self) -> Interval:
        """Body and soft end together."""
        return (self.left, max(self.right, self.soft[1] if self.soft else self.right))

    @property
    def story(self) -> str:
        """What it says of itself; several bars too narrow to tell apart say so."""
        if not self.merged:
            return self.bar.story
        titles = ", ".join(bar.title for bar in self.merged)
        return tr(
            "{count} short steps: {titles}. Zoom in to see them apart.",
            count=len(self.merged),
            titles=titles,
        )


@dataclass(frozen=True, slots=True)
class MarkShape:
    """A mark, centred on x, with its words to the right where there is room."""

    mark: Mark
    x: float
    label: Text | None


@dataclass(frozen=True, slots=True)
class LaneLayout:
    """Everything of one lane inside the window."""

    lane: Lane
    bars: tuple[BarShape, ...] = ()
    stitches: tuple[StitchShape, ...] = ()
    drops: tuple[DropShape, ...] = ()
    marks: tuple[MarkShape, ...] = ()


@dataclass(frozen=True, slots=True)
class KeptLane:
    """What was laid out of a lane: its places, and the shapes of runs that lie whole in sight."""

    places: LanePlaces
    shapes: dict[int, BarShape]
    """By the number of the run."""


MOST_KEPT: Final = 240
"""Lanes whose places are kept at once: a screenful many times over."""


@dataclass(frozen=True)
class Sheet:
    """What all lanes share: scale, window of x that is seen, now, sizes and font."""

    scale: TimeScale
    window: Interval
    now: datetime
    sizes: RowSizes
    measure: Measure
    measure_small: Measure
    kept: dict[int, KeptLane] = field(default_factory=dict, compare=False)
    """By the lane's `id`; good as long as lanes, scale, now and font are the same."""
    now_x: float = field(init=False)
    folds: tuple[Interval, ...] = field(init=False)
    """Where no text may lie."""
    seen: tuple[datetime, datetime] = field(init=False)
    """The first and the last moment of the window."""
    now_band: Interval = field(init=False)
    """Where no text should lie, if there is room elsewhere."""

    def __post_init__(self) -> None:
        now_x = self.scale.x(self.now)
        object.__setattr__(self, "now_x", now_x)
        object.__setattr__(self, "now_band", (now_x - 4, now_x + 4))
        left, right = self.window
        object.__setattr__(self, "seen", (self.scale.moment(left), self.scale.moment(right)))
        seen = (f for f in self.scale.folds if f.right > left and f.left < right)
        folds = tuple((fold.left, fold.right) for fold in seen)
        object.__setattr__(self, "folds", folds)


def lay_out_lane(lane: Lane, sheet: Sheet) -> LaneLayout:
    """Lay out the part of one lane that lies inside the window."""
    kept = _kept(lane, sheet)
    places, sizes = kept.places, sheet.sizes
    drops = tuple(seen(places.drops, sheet.window, sizes.drop))
    stitches = tuple(seen(places.stitches, sheet.window, sizes.stitch))
    half = sizes.drop / 2 + 2
    avoid = (*sheet.folds, *((shape.x - half, shape.x + half) for shape in drops))
    left, right = sheet.window
    bars = tuple(
        _shape_of(number, kept, sheet, avoid)
        for number, run in enumerate(places.runs)
        if run.left <= right and run.reach >= left
    )
    return LaneLayout(lane, bars, stitches, drops, _marks(places, sheet, bars, stitches))


def _kept(lane: Lane, sheet: Sheet) -> KeptLane:
    kept = sheet.kept.get(id(lane))
    if kept is None:
        if len(sheet.kept) >= MOST_KEPT:
            # The oldest alone: letting go of all at once costs a frame, and wakes the collector.
            del sheet.kept[next(iter(sheet.kept))]
        kept = KeptLane(places_of(lane, sheet.scale, sheet.sizes.stitch), {})
        sheet.kept[id(lane)] = kept
    return kept


def night_bands(
    nights: Sequence[Night | Closed], scale: TimeScale, window: Interval
) -> list[Interval]:
    """List quiet or closed hours inside the window as (left, right), without what is folded."""
    first = bisect_left(nights, scale.moment(window[0]), key=lambda night: night.end)
    last = bisect_right(nights, scale.moment(window[1]), key=lambda night: night.start)
    bands: list[Interval] = []
    for night in nights[first:last]:
        left = max(scale.x(night.start), window[0])
        right = min(scale.x(night.end), window[1])
        if right - left < LEAST_NIGHT:
            continue  # a year of nights would only be a grey veil
        bands += flat_parts(scale, left, right)
    return bands


def _shape_of(number: int, kept: KeptLane, sheet: Sheet, avoid: tuple[Interval, ...]) -> BarShape:
    """Give the shape from those kept; what the window's edge cuts is laid out each time."""
    shape = kept.shapes.get(number)
    run = kept.places.runs[number]
    left, right = sheet.window
    margin = sheet.sizes.drop
    if run.left < left + margin or run.reach > right - margin or not _whole(run.bars[0], sheet):
        return _bar_shape(run, sheet, avoid)
    if shape is None:
        shape = kept.shapes[number] = _bar_shape(run, sheet, avoid)
    return shape


def _whole(bar: Bar, sheet: Sheet) -> bool:
    """Whether its planned line lies in the window too."""
    left, right = sheet.seen
    return bar.planned is None or (bar.planned[0] >= left and bar.planned[1] <= right)


def _bar_shape(run: Run, sheet: Sheet, avoid: tuple[Interval, ...]) -> BarShape:
    bar, from_x = run.bars[0], run.left
    sizes, now_x = sheet.sizes, sheet.now_x
    soft, aim, to_x = _soft_end(bar, run.right, sheet)
    left = max(from_x, sheet.window[0] - sizes.pad)
    right = max(min(max(to_x, from_x + LEAST_BAR), sheet.window[1] + sizes.pad), left)
    glyph_at, label = _words(bar, (max(left, sheet.window[0]), right), avoid, sheet)
    return BarShape(
        bar=bar,
        left=left,
        right=right,
        dyed_to=_dyed_to(bar.state, left, right, now_x),
        cut_left=from_x < left,
        soft=soft,
        aim=aim,
        planned=_planned(bar, sheet),
        glyph_at=glyph_at,
        label=label,
        merged=run.bars if len(run.bars) > 1 else (),
    )


def _soft_end(bar: Bar, to_x: float, sheet: Sheet) -> tuple[Interval | None, float | None, float]:
    """Give the hatched part, the aim in it and where the body ends.

    The body of a running bar grows into its soft end as time passes.
    """
    if bar.soft_from is None or bar.soft_until is None or bar.soft_until <= bar.soft_from:
        return None, None, to_x
    from_x = sheet.scale.x(bar.soft_from)
    until_x = max(sheet.scale.x(bar.soft_until), to_x)
    if bar.state in ("running", "broken"):
        from_x = max(from_x, sheet.now_x)
    if from_x >= until_x:
        return None, None, max(from_x, to_x)
    left = max(from_x, sheet.window[0] - sheet.sizes.pad)
    right = min(until_x, sheet.window[1] + sheet.sizes.pad)
    soft = (left, right) if right > left else None
    return soft, to_x if from_x < to_x < until_x else None, from_x


def _dyed_to(state: BarState, left: float, right: float, now_x: float) -> float:
    if state == "done":
        return right
    if state == "ahead":
        return left
    return min(max(now_x, left), right)


def _planned(bar: Bar, sheet: Sheet) -> Interval | None:
    """Give the planned line where it differs from what happened by more than a pixel or two."""
    if bar.planned is None:
        return None
    left, right = sheet.scale.x(bar.planned[0]), sheet.scale.x(bar.planned[1])
    start, end = sheet.scale.x(bar.start), sheet.scale.x(bar.end)
    if abs(left - start) < LEAST_BAR and abs(right - end) < LEAST_BAR:
        return None
    left, right = max(left, sheet.window[0]), min(right, sheet.window[1])
    return (left, right) if right > left else None


def _words(
    bar: Bar, span: Interval, avoid: tuple[Interval, ...], sheet: Sheet
) -> tuple[float | None, Text | None]:
    """Give where the kind's small shape stands, and the title behind it.

    The title keeps clear of the now line, or else crosses it whole, or else stands without
    its shape, or else is cut.
    Where nothing of it fits, the shape alone says the kind.
    """
    sizes = sheet.sizes
    lead = sizes.glyph + sizes.pad * 0.7
    wide, room = sheet.measure(bar.title), span[1] - span[0] - 2 * sizes.pad
    if room >= lead + wide and _is_free(span, avoid, sheet.now_band):
        at = span[0] + sizes.pad  # as most bars are: the rest need not be tried
        return at, Text(at + lead, wide, bar.title)
    return (None, None) if room < 0 else _fitted_words(bar, span, avoid, sheet)


def _fitted_words(
    bar: Bar, span: Interval, avoid: tuple[Interval, ...], sheet: Sheet
) -> tuple[float | None, Text | None]:
    sizes = sheet.sizes
    lead = sizes.glyph + sizes.pad * 0.7

    def measure(text: str) -> float:
        return sheet.measure(text) + lead

    label = None
    if span[0] < sheet.now_x < span[1]:
        label = text_in(bar.title, span, (*avoid, sheet.now_band), measure, sizes.pad)
    if label is None or label.text != bar.title:
        label = text_in(bar.title, span, avoid, measure, sizes.pad)
    if label is not None and label.text == bar.title:
        return label.x, Text(label.x + lead, label.width - lead, label.text)
    bare = text_in(bar.title, span, avoid, sheet.measure, sizes.pad)
    if bare is not None and bare.text == bar.title:
        return None, bare
    if label is not None:
        return label.x, Text(label.x + lead, label.width - lead, label.text)
    return _lone_shape(span, (*avoid, sheet.now_band), sizes), None


def _is_free(span: Interval, avoid: tuple[Interval, ...], now_band: Interval) -> bool:
    """Whether nothing lies in a span that words have to keep clear of."""
    left, right = span
    return not any(one < right and other > left for one, other in (*avoid, now_band))


def _lone_shape(span: Interval, avoid: tuple[Interval, ...], sizes: RowSizes) -> float | None:
    for left, right in free_parts(span, avoid):
        if right - left >= sizes.glyph + 4:
            return left + min((right - left - sizes.glyph) / 2, sizes.pad)
    return None


def _marks(
    lane: LanePlaces, sheet: Sheet, bars: tuple[BarShape, ...], stitches: tuple[StitchShape, ...]
) -> tuple[MarkShape, ...]:
    sizes = sheet.sizes
    places = [(one.mark, one.x) for one in seen(lane.marks, sheet.window, sizes.mark)]
    if not places:
        return ()
    for number in range(1, len(places)):  # "best until" and "resists from" are one moment
        mark, x = places[number]
        places[number] = (mark, max(x, places[number - 1][1] + sizes.mark + 2))
    taken = [(s.x - sizes.stitch, s.x + sizes.stitch) for s in stitches]
    taken += [bar.planned for bar in bars if bar.planned]
    shapes: list[MarkShape] = []
    used = sheet.window[0]
    for number, (mark, x) in enumerate(places):
        ahead = places[number + 1][1] - sizes.mark if number + 1 < len(places) else float("inf")
        right = (x + sizes.mark / 2, min(ahead, sheet.window[1]))
        left = (used, x - sizes.mark / 2)
        label = _mark_words(mark.title, (left, right), taken, sheet)
        shapes.append(MarkShape(mark, x, label))
        used = max(x + sizes.mark, label.x + label.width + 6 if label else 0.0)
    return tuple(shapes)


def _mark_words(
    title: str, sides: tuple[Interval, Interval], taken: list[Interval], sheet: Sheet
) -> Text | None:
    """Place the words right of the mark, or left of it where only there they fit whole."""
    left, right = sides
    width = sheet.measure_small(title) + 6
    spot = (left[1] - width, left[1])
    avoid = [*taken, (sheet.now_x - 3, sheet.now_x + 3)]
    parts = free_parts(right, avoid) if right[1] > right[0] else []
    near = parts[0] if parts and parts[0][0] == right[0] else None
    if near and near[1] - near[0] >= width:
        return text_in(title, near, (), sheet.measure_small, 3.0)
    if spot[0] >= left[0] and free_parts(spot, avoid) == [spot]:
        return Text(spot[0] + 3, width - 6, title)
    return text_in(title, near, (), sheet.measure_small, 3.0) if near else None


def kinds_of(lanes: Iterable[Lane]) -> tuple[StepKind, ...]:
    """List the kinds of step that occur, in their own order, for the legend."""
    seen = {bar.kind for lane in lanes for bar in lane.bars}
    seen |= {StepKind.DIP for lane in lanes if lane.drops}
    return tuple(kind for kind in StepKind if kind in seen)
