"""Where the takings and clashes of a shared row lie, and what is under the pointer.

x in pixels of the sheet, y from the top of the row.
"""

from dataclasses import dataclass
from typing import Final

from studio_log.domain.sharing import Clash, Shared, Taking
from studio_log.language.words import tr
from studio_log.present.text_room import Interval, Text, text_in
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_layout import Sheet
from studio_log.present.timeline_shared import SharedRow, line_words
from studio_log.present.timeline_shared_words import (
    clash_label,
    clash_story,
    row_story,
    taking_story,
)

MOST_SLOTS: Final = 4
"""Lots drawn one above another in a row; beyond that they share the lowest."""
LEAST_CLASH: Final = 6.0
"""Pixels: a clash of minutes is still to be seen."""
TAG_PAD: Final = 5.0
"""Pixels beside the words on a tag."""
PAD, GAP = 4.0, 2.0
"""Pixels above the topmost taking, and between two."""


@dataclass(frozen=True, slots=True)
class TakingShape:
    """A taking as it is drawn, y from the row's top."""

    taking: Taking
    left: float
    right: float
    top: float
    high: float
    label: Text | None


@dataclass(frozen=True, slots=True)
class ClashShape:
    """A clash as it is drawn over the takings, with its short words on a tag."""

    clash: Clash
    left: float
    right: float
    label: Text

    @property
    def reach(self) -> Interval:
        """Lattice and tag together: where no other words may lie."""
        tag = self.label.x - TAG_PAD, self.label.x + self.label.width + TAG_PAD
        return min(self.left, tag[0]) - 2, max(self.right, tag[1]) + 2


@dataclass(frozen=True, slots=True)
class SharedLayout:
    """What is seen of one row."""

    row: SharedRow
    takings: tuple[TakingShape, ...]
    clashes: tuple[ClashShape, ...]
    bottom: float
    """Where the lowest may end."""


def lay_out_shared(row: SharedRow, sheet: Sheet) -> SharedLayout:
    """Lay out the part of a row that lies in the window."""
    count = min(max(row.slots, default=0) + 1, MOST_SLOTS)
    high = min((sheet.sizes.row - 2 * PAD) / count, sheet.sizes.bar + GAP)
    met = tuple(_clash_shape(row, one, sheet) for one in row.clashes if _seen(one, sheet))
    avoid = (*sheet.folds, *(one.reach for one in met))
    shapes = tuple(
        _taking_shape(row, one, (min(slot, MOST_SLOTS - 1), high), avoid, sheet)
        for one, slot in zip(row.takings, row.slots, strict=True)
        if _seen(one, sheet)
    )
    return SharedLayout(row, shapes, met, sheet.sizes.row - 2 * PAD)


def _seen(one: Taking | Clash, sheet: Sheet) -> bool:
    return one.end >= sheet.seen[0] and one.start <= sheet.seen[1]


def _taking_shape(
    row: SharedRow,
    one: Taking,
    slot: tuple[int, float],
    avoid: tuple[Interval, ...],
    sheet: Sheet,
) -> TakingShape:
    place, high = slot
    left = max(sheet.scale.x(one.start), sheet.window[0] - 4)
    right = max(min(sheet.scale.x(one.end), sheet.window[1] + 4), left + 2)
    label = None
    if high >= sheet.sizes.glyph:
        span = (max(left, sheet.window[0]), right)
        label = text_in(_label(row, one), span, avoid, sheet.measure_small, 3.0)
        label = label or text_in(one.code, span, avoid, sheet.measure_small, 2.0)
    return TakingShape(one, left, right, PAD + place * high, high - GAP, label)


def _label(row: SharedRow, one: Taking) -> str:
    if row.shared is not Shared.LINE:
        return f"{one.code} {one.title}"
    length = line_words(one.amount, row.units) if one.amount else tr("length unknown")
    return f"{one.code} {length}"


def _clash_shape(row: SharedRow, one: Clash, sheet: Sheet) -> ClashShape:
    left, right = sheet.scale.x(one.start), sheet.scale.x(one.end)
    left, right = max(left, sheet.window[0] - 4), min(right, sheet.window[1] + 4)
    middle, half = (left + right) / 2, max(right - left, LEAST_CLASH) / 2
    left, right = middle - half, middle + half
    text = clash_label(row, one)
    width = sheet.measure_small(text)
    label = Text(max(min(middle - width / 2, sheet.window[1] - width - 4), sheet.window[0] + 4),
                 width, text)  # fmt: skip
    return ClashShape(one, left, right, label)


def hit_shared(layout: SharedLayout, x: float, y: float) -> Hit:
    """Find what lies at x, y of a row: a clash before a taking, the row where nothing does."""
    row = layout.row
    for met in layout.clashes:
        if met.left - 1 <= x <= met.right + 1:
            one = met.clash
            return Hit(one.codes[0], "clash", None, clash_story(row, one), one.start)
    for shape in layout.takings:
        if shape.left - 1 <= x <= shape.right + 1 and shape.top <= y <= shape.top + shape.high:
            taking = shape.taking
            story = taking_story(row, taking)
            return Hit(taking.code, "taking", taking.step, story, taking.start)
    return Hit("", "row", None, row_story(row))
