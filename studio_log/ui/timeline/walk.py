"""Moving through the timeline by keys: which thing comes next, and what it says."""

from dataclasses import dataclass
from datetime import datetime

from studio_log.present.lanes import Lane
from studio_log.present.pleats import Pleat, days_in_words
from studio_log.present.timeline_hits import Hit, lane_story, story_of
from studio_log.present.timeline_shared_words import row_stops, row_story, with_clash
from studio_log.ui.timeline.sheet_state import SheetState

PLEAT_ROW = -1
"""The row of the pleats, above the first lane."""


@dataclass(frozen=True)
class Spot:
    """Where the keyboard is: a row, and a stop in it or None for the row itself."""

    row: int = 0
    stop: int | None = None


def lane_stops(lane: Lane) -> list[Hit]:
    """List everything of a lane that can have the keyboard, in order of time."""
    stops = [Hit(lane.code, "bar", bar.step, story_of(lane, bar), bar.start) for bar in lane.bars]
    stops += [
        Hit(lane.code, "drop", drop.step, story_of(lane, drop), drop.at) for drop in lane.drops
    ]
    stops += [Hit(lane.code, "stitch", None, one.story, one.at) for one in lane.stitches]
    stops += [Hit(lane.code, "mark", None, mark.story, mark.at) for mark in lane.marks]
    return sorted(stops, key=_when)


def _when(hit: Hit) -> float:
    return hit.at.timestamp() if hit.at else 0.0


def pleat_stops(pleats: tuple[Pleat, ...]) -> list[Hit]:
    """List the pleats as stops."""
    return [Hit("", "pleat", None, days_in_words(pleat), pleat.key) for pleat in pleats]


def stepped(spot: Spot, stops: list[Hit], by: int, now: datetime) -> Spot:
    """Go to the next stop of the row, or from the row itself to the step that began last."""
    if not stops:
        return spot
    if spot.stop is not None:
        return Spot(spot.row, min(max(spot.stop + by, 0), len(stops) - 1))
    begun = [n for n, hit in enumerate(stops) if hit.part == "bar" and hit.at and hit.at <= now]
    return Spot(spot.row, begun[-1] if begun else 0)


def moved(spot: Spot, by: int, state: SheetState) -> Spot:
    """Go up or down a row; the pleats lie above the first lane, what lots share below the last."""
    top = PLEAT_ROW if state.pleats else 0
    row = min(max(spot.row + by, top), state.row_count - 1)
    return Spot(row, 0 if row == PLEAT_ROW else None)


def stops_of(row: int, state: SheetState) -> list[Hit]:
    """List everything of a row that can have the keyboard."""
    if row == PLEAT_ROW:
        return pleat_stops(state.pleats)
    if 0 <= row < len(state.lanes):
        return lane_stops(state.lanes[row])
    shared = state.shared_at(row)
    return row_stops(shared) if shared is not None else []


def told(spot: Spot, state: SheetState) -> Hit | None:
    """Give what the keyboard is on."""
    if spot.stop is not None:
        stops = stops_of(spot.row, state)
        return with_clash(stops[spot.stop], state.all_shared) if spot.stop < len(stops) else None
    if 0 <= spot.row < len(state.lanes):
        lane = state.lanes[spot.row]
        return Hit(lane.code, "lane", None, lane_story(lane))
    shared = state.shared_at(spot.row)
    return Hit("", "row", None, row_story(shared)) if shared is not None else None
