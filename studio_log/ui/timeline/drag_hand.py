"""The hand on a planned moment: taken by mouse or by keys, moved, set or let go of.

Knows the lanes and the scale, not the widget: the view tells it where the pointer is and asks
what to draw and to say. Nothing is written before `release`.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Final

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from studio_log.present.lanes import Lane
from studio_log.present.timeline_hits import Hit
from studio_log.present.timeline_move import Moved, Reach, moved, reach_of
from studio_log.present.timeline_story import LaneFacts
from studio_log.ui.timeline.pan_hand import SLACK
from studio_log.ui.timeline.pencils import Pencils
from studio_log.ui.timeline.sheet_painter import Scene

NEAR: Final = timedelta(minutes=5)
FAR: Final = timedelta(minutes=15)
NEAR_FROM: Final = 24.0
"""Pixels an hour from which a move snaps to `NEAR`: below, five minutes are under two pixels."""
HANDLE: Final = 9.0
"""Pixels to either side of the end of a running step at which it can be taken."""


class Hand:
    """Holds at most one planned moment."""

    def __init__(self) -> None:
        self._code = ""
        self._step = 0
        self._facts: LaneFacts | None = None
        self._from = 0.0
        """Where it was taken, on the sheet, which may be scrolled meanwhile."""
        self._wanted: datetime | None = None
        self._reach: Reach | None = None
        """Between which moments it may go, drawn as a frame while it is held."""
        self.pressed: Hit | None = None
        """What a click means if the pointer is not moved."""
        self.held: Moved | None = None
        """The move as it stands, once there is one."""

    def press(self, scene: Scene, hit: Hit, point: QPointF) -> bool:
        """Take what lies under the pointer, if it can be moved."""
        grip = self.grip(scene, hit, point)
        if grip is None:
            return False
        self._take(hit, grip)
        self.pressed, self._from = hit, scene.place.to_sheet(point.x())
        return True

    def grip(self, scene: Scene, hit: Hit, point: QPointF) -> LaneFacts | None:
        """Give the facts of what can be moved here: a step ahead, or the end of a running one."""
        facts = _facts(scene.state.lanes, hit)
        if facts is None or hit.step is None:
            return None
        reach = reach_of(facts, hit.step, scene.state.now)
        if reach is None:
            return None
        if facts.lot.step(hit.step).running:
            end = scene.place.to_view(scene.state.scale.x(reach.now_at))
            if abs(point.x() - end) > HANDLE:
                return None
        return facts

    def drag(self, scene: Scene, point: QPointF) -> bool:
        """Move what is held by as much as the pointer moved; False while it only trembles."""
        if self._facts is None or self.pressed is None:
            return False
        went = scene.place.to_sheet(point.x()) - self._from
        if self.held is None and abs(went) < SLACK:
            return False
        reach = reach_of(self._facts, self._step, scene.state.now)
        if reach is None:
            self.cancel()
            return False
        self._reach, scale = reach, scene.state.scale
        self._move(scene, scale.moment(scale.x(reach.now_at) + went))
        return True

    def nudge(self, scene: Scene, hit: Hit, by: int) -> bool:
        """Move what the keyboard is on by a snap; False where it cannot be moved."""
        if self.held is None or (hit.code, hit.step) != (self._code, self._step):
            facts = _facts(scene.state.lanes, hit)
            reach = reach_of(facts, hit.step, scene.state.now) if facts and hit.step else None
            if facts is None or reach is None:
                return False
            self._take(hit, facts)
            self._wanted, self._reach = reach.now_at, reach
        start = self.held.at if self.held is not None else self._wanted
        assert start is not None  # noqa: S101 - taken just above, or held
        self._move(scene, start + by * snap_of(scene))
        return True

    def release(self) -> tuple[str, int, datetime] | None:
        """Let go: the lot, step and moment to plan, or None where nothing was moved."""
        made = None if self.held is None else (self._code, self._step, self.held.at)
        self.cancel()
        return made

    def cancel(self) -> bool:
        """Forget the move; True if there was one."""
        was = self.held is not None
        self.held, self.pressed, self._facts, self._wanted = None, None, None, None
        self._reach = None
        return was

    def lanes_changed(self, lanes: Sequence[Lane], now: datetime) -> bool:
        """Keep a move through new lanes if its step can still be moved; True if it was lost."""
        if self._facts is None:
            return False
        code, step = self._code, self._step
        facts = next((lane.facts for lane in lanes if lane.code == code), None)
        known = facts is not None and any(one.number == step for one in facts.lot.steps)
        if facts is None or not known or reach_of(facts, step, now) is None:
            return self.cancel()
        self._facts = facts
        return False

    def place(self, scene: Scene, pencils: Pencils) -> QRect:
        """Give where the moved step lies in the viewport, for the words beside it."""
        row = scene.state.row_of(self._code)
        if self.held is None or row is None:
            return QRect()
        return _box(scene, pencils, row, self.held.ghosts[0].start, self.held.ghosts[0].end)

    def draw(self, painter: QPainter, scene: Scene, pencils: Pencils) -> None:
        """Draw the moved step and each that moves with it, as outlines over the lane."""
        row = scene.state.row_of(self._code)
        if self.held is None or row is None:
            return
        place, colours = scene.place, pencils.colours
        painter.save()
        room = QRectF(place.gutter, place.header, place.width, place.height)
        painter.setClipRect(room)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        veil = QColor(colours.accent)
        if self._reach is not None:
            _draw_reach(painter, scene, self._reach, row, pencils)
        for number, ghost in enumerate(self.held.ghosts):
            box = QRectF(_box(scene, pencils, row, ghost.start, ghost.end))
            style = Qt.PenStyle.SolidLine if number == 0 else Qt.PenStyle.DashLine
            veil.setAlpha(110 if number == 0 else 45)
            painter.setPen(QPen(colours.accent, 2.4 if number == 0 else 1.6, style))
            painter.setBrush(veil)
            painter.drawRoundedRect(box, 4, 4)
        _draw_thread(painter, scene, self.held.at, pencils)
        painter.restore()

    def _take(self, hit: Hit, facts: LaneFacts) -> None:
        self.cancel()
        self._code, self._step, self._facts = hit.code, hit.step or 0, facts

    def _move(self, scene: Scene, wanted: datetime) -> None:
        if self._facts is not None:
            now = scene.state.now
            self.held = moved(self._facts, self._step, wanted, now, snap_of(scene))


def snap_of(scene: Scene) -> timedelta:
    """Give the steps in which a moment moves at this zoom."""
    return NEAR if scene.state.zoom >= NEAR_FROM else FAR


def _facts(lanes: Sequence[Lane], hit: Hit) -> LaneFacts | None:
    if hit.step is None or hit.part not in ("bar", "drop"):
        return None
    return next((lane.facts for lane in lanes if lane.code == hit.code), None)


def _box(scene: Scene, pencils: Pencils, row: int, start: datetime, end: datetime) -> QRect:
    place, sizes, scale = scene.place, pencils.sizes, scene.state.scale
    left, right = place.to_view(scale.x(start)), place.to_view(scale.x(end))
    top = place.header + row * sizes.row - place.scroll_y + sizes.bar_top
    left = max(left, place.gutter - 20)
    right = min(max(right, left + sizes.drop), place.width + 20)
    return QRect(round(left), round(top), max(round(right - left), 1), round(sizes.bar))


def _draw_reach(painter: QPainter, scene: Scene, reach: Reach, row: int, pencils: Pencils) -> None:
    """Frame the window in which the moment may lie: a brace at each end, none where it is open."""
    until = reach.until or scene.state.scale.moment(scene.place.window[1])
    box = QRectF(_box(scene, pencils, row, reach.since, until)).adjusted(0, -4, 0, 4)
    veil = QColor(pencils.colours.accent)
    veil.setAlpha(26)
    painter.fillRect(box, veil)
    painter.setPen(QPen(pencils.colours.accent, 2))
    ends = [(box.left(), 5.0)] + ([(box.right(), -5.0)] if reach.until is not None else [])
    for x, inward in ends:
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        for y in (box.top(), box.bottom()):
            painter.drawLine(QPointF(x, y), QPointF(x + inward, y))


def _draw_thread(painter: QPainter, scene: Scene, at: datetime, pencils: Pencils) -> None:
    """Draw a thread down the sheet at the new moment, so that other lots can be compared."""
    x = scene.place.to_view(scene.state.scale.x(at))
    painter.setPen(QPen(pencils.colours.accent, 1, Qt.PenStyle.DotLine))
    painter.drawLine(QPointF(x, scene.place.header), QPointF(x, scene.place.height))
