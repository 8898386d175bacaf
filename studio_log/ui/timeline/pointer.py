"""What lies under a point of the viewport."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final, TypeVar

from PySide6.QtCore import QPointF

from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.present.lanes import Closed, Night
from studio_log.present.pleats import Pleat, days_in_words
from studio_log.present.timeline_hits import Hit, hit_lane, lane_story
from studio_log.present.timeline_shared_layout import hit_shared
from studio_log.present.timeline_shared_words import row_story, with_clash
from studio_log.ui.timeline.header_painter import flag_place, now_in_sight, pleat_span, pleat_tab
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.sheet_painter import Scene

_T = TypeVar("_T", Night, Closed)
_BESIDE: Final = 3.0
"""Pixels to either side of the line of now that still mean it."""
NOW_STORY = tr_later("Now. Click or press N to find it again.")


def hit_at(scene: Scene, pencils: Pencils, point: QPointF) -> Hit | None:
    """Find the lane, bar, drop, stitch, mark or pleat; the flag of now is a hit without code."""
    place = scene.place
    if point.y() < place.header:
        return _hit_header(scene, pencils, point)
    row = int((point.y() - place.header + place.scroll_y) // pencils.sizes.row)
    layout = next((layout for at, layout in scene.rows if at == row), None)
    if layout is None:
        return _hit_shared(scene, pencils, point, row)
    if point.x() < place.gutter:
        return Hit(layout.lane.code, "lane", None, lane_story(layout.lane))
    y = (point.y() - place.header + place.scroll_y) % pencils.sizes.row
    hit = hit_lane(layout, scene.sheet, place.to_sheet(point.x()), y)
    fold = scene.state.scale.fold_at(place.to_sheet(point.x()))
    if hit.part != "lane":
        return with_clash(hit, scene.state.all_shared)
    return pleat_hit(fold.pleat) if fold is not None else _hit_ground(scene, hit, point.x())


def _hit_shared(scene: Scene, pencils: Pencils, point: QPointF, row: int) -> Hit | None:
    layout = next((layout for at, layout in scene.shared if at == row), None)
    if layout is None:
        return None
    place = scene.place
    if point.x() < place.gutter:
        return Hit("", "row", None, row_story(layout.row))
    y = (point.y() - place.header + place.scroll_y) % pencils.sizes.row
    hit = hit_shared(layout, place.to_sheet(point.x()), y)
    fold = scene.state.scale.fold_at(place.to_sheet(point.x()))
    return pleat_hit(fold.pleat) if hit.part == "row" and fold is not None else hit


def _hit_ground(scene: Scene, hit: Hit, x: float) -> Hit:
    """Tell what the empty cloth is: the line of now, a stretch of quiet hours, or plain."""
    state, place = scene.state, scene.place
    zone = state.zone.key

    def at(moment: datetime) -> str:
        return words.moment(moment, state.now, zone)

    if abs(place.to_view(state.scale.x(state.now)) - x) <= _BESIDE:
        return replace(hit, story=f"Now: {at(state.now)}. {hit.story}")
    moment = state.scale.moment(place.to_sheet(x))
    told = ""
    night = _holds(state.nights, moment)
    if night is not None:
        told += tr(
            "Quiet hours, {at} to {at2}: only what spoils may ring. ",
            at=at(night.start),
            at2=at(night.end),
        )
    closed = _holds(state.closed, moment)
    if closed is not None:
        told += tr(
            "The workshop is closed, {at} to {at2}. ", at=at(closed.start), at2=at(closed.end)
        )
        today = moment.astimezone(state.zone).date()
        told += "".join(f"{day_words(day)}: {why}. " for day, why in closed.days if day == today)
    return replace(hit, story=f"{told}{hit.story}")


def _holds(stretches: Sequence[_T], moment: datetime) -> _T | None:
    """Find the stretch that holds a moment."""
    after = bisect_right(stretches, moment, key=_start)
    found = stretches[after - 1] if after else None
    return found if found is not None and moment < found.end else None


def _start(stretch: Night | Closed) -> datetime:
    return stretch.start


def pleat_hit(pleat: Pleat) -> Hit:
    """Give a pleat as a hit; its key is the moment."""
    return Hit("", "pleat", None, days_in_words(pleat), pleat.key)


def _hit_header(scene: Scene, pencils: Pencils, point: QPointF) -> Hit | None:
    if now_in_sight(scene) and flag_place(scene, pencils).contains(point):
        return Hit("", "lane", None, tr(NOW_STORY))
    if point.x() < scene.place.gutter:
        return None
    for pleat in scene.state.pleats:
        left, right = pleat_span(scene, pleat)
        folded = not pleat.opened and left <= point.x() <= right
        if folded or pleat_tab(scene, pleat, pencils).contains(point):
            return pleat_hit(pleat)
    return None
