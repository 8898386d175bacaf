"""Moving through the timeline by keys: which thing comes next, and what it says."""

from dataclasses import dataclass
from datetime import datetime

from studio_log.present.lanes import Lane
from studio_log.present.pleats import Pleat, days_in_words
from studio_log.present.timeline_hits import Hit, lane_story, story_of

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


def moved(spot: Spot, by: int, rows: int, *, pleats: bool) -> Spot:
    """Go up or down a row; the pleats lie above the first lane."""
    top = PLEAT_ROW if pleats else 0
    row = min(max(spot.row + by, top), rows - 1)
    return Spot(row, 0 if row == PLEAT_ROW else None)


def told(spot: Spot, lanes: tuple[Lane, ...], pleats: tuple[Pleat, ...]) -> Hit | None:
    """Give what the keyboard is on."""
    if spot.row == PLEAT_ROW:
        stops = pleat_stops(pleats)
    elif 0 <= spot.row < len(lanes):
        lane = lanes[spot.row]
        if spot.stop is None:
            return Hit(lane.code, "lane", None, lane_story(lane))
        stops = lane_stops(lane)
    else:
        return None
    return stops[spot.stop] if spot.stop is not None and spot.stop < len(stops) else None
