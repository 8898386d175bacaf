"""What lies under the pointer in one lane, and what it says."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from studio_log.language.words import tr
from studio_log.present.lanes import Bar, Drop, Lane
from studio_log.present.timeline_layout import LaneLayout, RowSizes, Sheet
from studio_log.present.timeline_story import step_story

Part = Literal["bar", "drop", "stitch", "mark", "pleat", "lane", "taking", "clash", "row"]


@dataclass(frozen=True, slots=True)
class Hit:
    """What lies under the pointer or has the keyboard."""

    code: str
    part: Part
    step: int | None
    story: str
    at: datetime | None = None


def hit_lane(layout: LaneLayout, sheet: Sheet, x: float, y: float) -> Hit:
    """Find what lies at x, y of a lane; the lane itself where there is nothing."""
    for part in (_hit_drop, _hit_stitch, _hit_mark, _hit_bar):
        found = part(layout, sheet.sizes, x, y)
        if found is not None:
            return found
    return Hit(layout.lane.code, "lane", None, lane_story(layout.lane))


def story_of(lane: Lane, thing: Bar | Drop) -> str:
    """Tell the story of a bar or a drop: the one function for pointer, keys and screen readers."""
    return thing.story if lane.facts is None else step_story(lane.facts, thing.step)


def lane_story(lane: Lane) -> str:
    """Tell the lot and what runs on it, as a sentence."""
    running = [bar.title for bar in lane.bars if bar.state in ("running", "broken")]
    doing = tr(" Now: {join}.", join=", ".join(running)) if running else ""
    return f"{lane.code} {lane.name}.{doing}"


def _hit_drop(layout: LaneLayout, sizes: RowSizes, x: float, y: float) -> Hit | None:
    if not sizes.bar_top - 4 <= y <= sizes.bar_top + sizes.bar + 4:
        return None
    reach = sizes.drop / 2 + 3
    for shape in layout.drops:
        if abs(shape.x - x) <= reach:
            drop = shape.drop
            return Hit(layout.lane.code, "drop", drop.step, story_of(layout.lane, drop), drop.at)
    return None


def _hit_stitch(layout: LaneLayout, sizes: RowSizes, x: float, y: float) -> Hit | None:
    if y < sizes.strip_top - 3:
        return None
    for shape in layout.stitches:
        if abs(shape.x - x) <= sizes.stitch / 2 + 2:
            return Hit(layout.lane.code, "stitch", None, shape.stitch.story, shape.stitch.at)
    return None


def _hit_mark(layout: LaneLayout, sizes: RowSizes, x: float, y: float) -> Hit | None:
    if y < sizes.strip_top - 3:
        return None
    for shape in layout.marks:
        left, right = shape.x - sizes.mark / 2, shape.x + sizes.mark / 2
        if shape.label:
            left = min(left, shape.label.x)
            right = max(right, shape.label.x + shape.label.width)
        if left - 2 <= x <= right + 2:
            return Hit(layout.lane.code, "mark", None, shape.mark.story, shape.mark.at)
    return None


def _hit_bar(layout: LaneLayout, sizes: RowSizes, x: float, y: float) -> Hit | None:
    if not sizes.bar_top - 2 <= y <= sizes.strip_top:
        return None
    for shape in reversed(layout.bars):
        if shape.reach[0] - 1 <= x <= shape.reach[1] + 1:
            story = shape.story if shape.merged else story_of(layout.lane, shape.bar)
            return Hit(layout.lane.code, "bar", shape.bar.step, story, shape.bar.start)
    return None
