"""From the state and the size of the viewport to the scene that is painted."""

from dataclasses import dataclass
from datetime import datetime
from math import ceil

from PySide6.QtCore import QRect, QRectF

from studio_log.present.ticks import tick_rows
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_layout import BarShape, LaneLayout, Sheet, lay_out_lane
from studio_log.present.timeline_shared_layout import SharedLayout, lay_out_shared
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.sheet_painter import Place, Scene
from studio_log.ui.timeline.sheet_state import SheetState
from studio_log.ui.timeline.walk import PLEAT_ROW, Spot, told

_NAMES_FROM = 900
"""Width from which the gutter shows names too."""
_NAME_LETTERS = 20


@dataclass(frozen=True)
class Looking:
    """From where the sheet is looked at."""

    width: float
    height: float
    scroll_x: int
    scroll_y: int
    chosen: str
    spot: Spot | None


def place_of(state: SheetState, looking: Looking, pencils: Pencils) -> Place:
    """Work out gutter and header."""
    metrics = pencils.theme.metrics
    names = looking.width >= _NAMES_FROM * metrics.scale
    codes = state.widest_code(pencils.bold)
    if names:
        codes = max(codes, pencils.small("n" * _NAME_LETTERS))
    elif state.shared:
        both = ((pencils.bold(one.title), pencils.small(one.note)) for one in state.shared)
        widest = max(wide for pair in both for wide in pair)
        codes = max(codes, min(widest, pencils.small("n" * _NAME_LETTERS)))
    return Place(
        width=looking.width,
        height=looking.height,
        gutter=round(codes + metrics.l + metrics.xl),
        names=names,
        days=round(pencils.bold.metrics.height() + metrics.m),
        hours=round(pencils.small.metrics.height() + 2),
        flag=round(pencils.tag.metrics.height() + metrics.m + 2),
        scroll_x=looking.scroll_x,
        scroll_y=looking.scroll_y,
    )


def make_scene(state: SheetState, looking: Looking, pencils: Pencils) -> Scene:
    """Lay out the rows that are seen, and no others."""
    place = place_of(state, looking, pencils)
    sheet = Sheet(
        state.scale,
        place.window,
        state.now,
        pencils.sizes,
        pencils.bar,
        pencils.small,
        kept=state.laid,
    )
    row_height = pencils.sizes.row
    first = max(0, int(place.scroll_y // row_height))
    last = ceil((place.scroll_y + place.height - place.header) / row_height)
    rows = tuple(
        (row, lay_out_lane(state.lanes[row], sheet))
        for row in range(first, min(last, len(state.lanes)))
    )
    below = range(max(first, len(state.lanes)), min(last, state.row_count))
    shared = tuple(
        (row, lay_out_shared(one, sheet))
        for row in below
        if (one := state.shared_at(row)) is not None
    )
    ticks = tick_rows(
        state.scale,
        state.zone,
        place.window,
        now=state.now,
        measure=pencils.small,
        measure_day=pencils.bold,
    )
    spot = looking.spot
    focus = None
    if spot is not None:
        in_shared = next((layout for row, layout in shared if row == spot.row), None)
        focus = (
            _shared_focus(in_shared, told(spot, state))
            if in_shared is not None
            else _focus_place(sheet, state, rows, spot)
        )
    return Scene(
        state, place, sheet, rows, shared, ticks, state.row_of(looking.chosen), spot, focus
    )


def _shared_focus(layout: SharedLayout, hit: Hit | None) -> QRectF | None:
    """Give where the ring goes in a row of what lots share."""
    if hit is None or hit.at is None:
        return None
    for met in layout.clashes:
        if hit.part == "clash" and met.clash.start == hit.at:
            return QRectF(met.left - 3, 1, met.right - met.left + 6, layout.bottom + 4)
    for one in layout.takings:
        taking = one.taking
        if (taking.code, taking.step, taking.start) == (hit.code, hit.step, hit.at):
            return QRectF(one.left - 3, one.top - 3, one.right - one.left + 6, one.high + 6)
    return None


def _focus_place(
    sheet: Sheet, state: SheetState, rows: tuple[tuple[int, LaneLayout], ...], spot: Spot
) -> QRectF | None:
    """Give where the ring goes, on the sheet and from the lane's top."""
    hit = told(spot, state)
    layout = next((layout for row, layout in rows if row == spot.row), None)
    if hit is None or layout is None or hit.at is None:
        return None
    sizes, x = sheet.sizes, sheet.scale.x(hit.at)
    if hit.part in ("stitch", "mark"):
        return QRectF(x - sizes.mark, sizes.strip_top - 3, 2 * sizes.mark, sizes.strip + 4)
    half = sizes.drop / 2 + 2
    left, right = x - half, x + half
    if hit.part == "bar":
        reach = (_reach(shape, hit.step) for shape in layout.bars)
        left, right = next((span for span in reach if span), (left, right))
    return QRectF(left - 3, sizes.bar_top - 3.5, right - left + 6, sizes.bar + 7)


def _reach(shape: BarShape, step: int | None) -> tuple[float, float] | None:
    steps = {shape.bar.step, *(bar.step for bar in shape.merged)}
    return shape.reach if step in steps else None


def spot_place(state: SheetState, looking: Looking, pencils: Pencils, spot: Spot) -> QRect:
    """Give where a row or a thing of it lies in the viewport, also where it is out of sight."""
    place, sizes = place_of(state, looking, pencils), pencils.sizes
    top = place.header + spot.row * sizes.row - place.scroll_y
    high = sizes.row
    if spot.row == PLEAT_ROW:
        top, high = 0.0, place.header
    if spot.stop is None:
        return QRect(0, round(top), round(place.width), round(high))
    hit = told(spot, state)
    if hit is None or hit.at is None:
        return QRect()
    since, until = _span(state, spot.row, hit, hit.at)
    left, right = place.to_view(state.scale.x(since)), place.to_view(state.scale.x(until))
    left, right = left - sizes.drop / 2, max(right, left + sizes.drop / 2)
    left = max(left, place.gutter)
    return QRect(round(left), round(top), max(round(right - left), 0), round(high))


def _span(state: SheetState, row: int, hit: Hit, at: datetime) -> tuple[datetime, datetime]:
    """Give from when to when a thing lies on the sheet; twice its moment for what has no length."""
    shared = state.shared_at(row)
    ends: list[datetime] = []
    if shared is not None and hit.part == "clash":
        ends = [one.end for one in shared.clashes if one.start == at]
    elif shared is not None:
        mine = (hit.code, hit.step, at)
        ends = [one.end for one in shared.takings if (one.code, one.step, one.start) == mine]
    elif hit.part == "pleat":
        return next(((one.start, one.end) for one in state.pleats if one.key == at), (at, at))
    elif hit.part == "bar":
        ends = [bar.end for bar in state.lanes[row].bars if bar.step == hit.step]
    return at, max([at, *ends])
