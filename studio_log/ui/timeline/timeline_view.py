"""The timeline as people use it: what is shown, chosen, pointed at and walked through."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from html import escape
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QScrollBar, QToolTip, QWidget
from typing_extensions import override

from studio_log.present.lanes import Lane, Night
from studio_log.present.timeline_hits import Hit
from studio_log.ui.timeline.drag_sheet import DragSheet
from studio_log.ui.timeline.pointer import hit_at
from studio_log.ui.timeline.sheet_scroll import NOTHING, ZOOM_STEP
from studio_log.ui.timeline.walk import (
    PLEAT_ROW,
    Spot,
    lane_stops,
    moved,
    pleat_stops,
    stepped,
    told,
)

_Key = Qt.Key
_NOTCH: Final = 120
"""Eighths of a degree in one notch of a wheel."""
_ROLL: Final = 60
"""Pixels a notch."""


class TimelineView(DragSheet):
    """Lanes of lots over time; see `show_lanes`."""

    lot_chosen = Signal(str)
    step_chosen = Signal(str, int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Steps over time")
        self.setAccessibleDescription(NOTHING)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setMouseTracking(True)

    def show_lanes(
        self, lanes: Sequence[Lane], nights: Sequence[Night], now: datetime, zone: str
    ) -> None:
        """Show lots with the nights in an IANA zone; zoom, place and opened folds are kept."""
        left = self._left_moment()
        self._hand.lanes_changed(lanes, now)
        at = self._state.lanes[self._spot.row].code if self._on_a_lane() else self._chosen
        self._state.show(lanes, nights, now, ZoneInfo(zone))
        row = self._state.row_of(at)
        kept = row is not None and (row == self._spot.row or self._on_a_lane())
        if row is None:
            row = min(max(self._spot.row, 0), max(len(lanes) - 1, 0))
        self._spot = Spot(row, self._spot.stop if kept else None)
        self._settle(left)
        self._tell()
        self.folds_changed.emit()

    def choose(self, code: str) -> None:
        """Highlight a lot and bring its lane into sight; says nothing to listeners."""
        self._chosen = code
        row = self._state.row_of(code)
        if row is not None:
            self._spot = self._spot if self._spot.row == row else Spot(row)
            self._show_row(row)
        self._repaint()

    @property
    def chosen(self) -> str:
        """Code of the highlighted lot, or ""."""
        return self._chosen

    def step_row(self, by: int) -> None:
        """Move the keyboard up or down a lane."""
        self._go(moved(self._spot, by, len(self._state.lanes), pleats=bool(self._state.pleats)))

    def step_along(self, by: int) -> None:
        """Move the keyboard to the next thing of its row."""
        self._go(stepped(self._spot, self._stops(), by, self._state.now))

    def enter(self) -> None:
        """Open what the keyboard is on: the lot, its step, or the pleat."""
        hit = told(self._spot, self._state.lanes, self._state.pleats)
        if hit is not None:
            self._act_on(hit)

    def story_at(self, point: QPointF) -> str:
        """Tell what lies under a point of the viewport, or ""."""
        hit = self._hit(point)
        return hit.story if hit else ""

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._hand_key(event):
            act = _KEYS.get(event.key())
            if act is None or not self._state.lanes:
                super().keyPressEvent(event)
            else:
                act(self)

    @override
    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._repaint()
        self._tell()

    @override
    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._cancel_move()
        self._slip.hide()
        self._repaint()

    @override
    def wheelEvent(self, event: QWheelEvent) -> None:
        self._slip.hide()
        keys, turned, pixels = event.modifiers(), event.angleDelta(), event.pixelDelta()
        sideways = bool(keys & Qt.KeyboardModifier.ShiftModifier) or abs(turned.x()) > abs(
            turned.y()
        )
        if keys & Qt.KeyboardModifier.ControlModifier:
            self.zoom_by(ZOOM_STEP ** (turned.y() / _NOTCH), event.position().x())
        elif sideways or not self.verticalScrollBar().maximum():
            _roll(self.horizontalScrollBar(), pixels.x() or pixels.y(), turned.x() or turned.y())
        else:
            _roll(self.verticalScrollBar(), pixels.y(), turned.y())
        event.accept()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        hit = self._hit(event.position())
        self._cancel_move()
        self._slip.hide()
        if event.button() is not Qt.MouseButton.LeftButton or hit is None:
            return
        if not self._hand.press(self.scene(), hit, event.position()):
            self._act_on(hit)

    @override
    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        pressed = self._hand.pressed
        if event.button() is Qt.MouseButton.LeftButton and pressed is not None:
            if self._hand.held is None:
                self._hand.cancel()
                self._act_on(pressed)
            else:
                self._set_move()
        event.accept()

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._hand.pressed is not None:
            if self._hand.drag(self.scene(), event.position()):
                self.viewport().setCursor(Qt.CursorShape.SizeHorCursor)
                self._show_move()
            return
        self.viewport().setCursor(self._pointer_for(event.position()))

    @override
    def viewportEvent(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            story = self.story_at(QPointF(event.pos()))
            # Names are the dyer's own and may hold anything: never let them be read as markup.
            text = f"<qt>{escape(story)}</qt>" if story else ""
            QToolTip.showText(event.globalPos(), text, self.viewport())
            return True
        return super().viewportEvent(event)

    def _pointer_for(self, point: QPointF) -> Qt.CursorShape:
        """Give the pointer that says what a press would do."""
        hit = self._hit(point)
        if hit is None:
            return Qt.CursorShape.ArrowCursor
        if self._hand.grip(self.scene(), hit, point) is not None:
            return Qt.CursorShape.SizeHorCursor
        return Qt.CursorShape.PointingHandCursor

    def _on_a_lane(self) -> bool:
        """Whether somebody walks the lots by keys: new lanes then leave the keyboard there."""
        return self.hasFocus() and 0 <= self._spot.row < len(self._state.lanes)

    def _hit(self, point: QPointF) -> Hit | None:
        return hit_at(self.scene(), self._tools(), point) if self._state.lanes else None

    def _stops(self) -> list[Hit]:
        if self._spot.row == PLEAT_ROW:
            return pleat_stops(self._state.pleats)
        return lane_stops(self._state.lanes[self._spot.row])

    def _go(self, spot: Spot) -> None:
        self._spot = spot
        hit = told(spot, self._state.lanes, self._state.pleats)
        if spot.row >= 0:
            self._show_row(spot.row)
        if hit is not None and hit.at is not None:
            self._show_moment(hit.at)
        self._repaint()
        self._tell()
        self._slip.say(hit.story if hit is not None else "", self._spot_place())

    def _act_on(self, hit: Hit) -> None:
        if hit.part == "pleat":
            pleat = next((p for p in self._state.pleats if p.key == hit.at), None)
            if pleat is not None:
                self.toggle_pleat(pleat)
                self._tell()
        elif not hit.code:
            self.find_now()
        else:
            self.choose(hit.code)
            self.lot_chosen.emit(hit.code)
            if hit.step is not None:
                self.step_chosen.emit(hit.code, hit.step)

    def _show_row(self, row: int) -> None:
        bar, place = self.verticalScrollBar(), self._place()
        height = self._tools().sizes.row
        room = place.height - place.header
        if row * height < bar.value():
            bar.setValue(round(row * height))
        elif (row + 1) * height > bar.value() + room:
            bar.setValue(round((row + 1) * height - room))

    def _show_moment(self, moment: datetime) -> None:
        """Scroll only if the moment is not well inside the window."""
        place = self._place()
        x = place.to_view(self._state.scale.x(moment))
        margin = min(48.0, (place.width - place.gutter) / 4)
        if not place.gutter + margin <= x <= place.width - margin:
            self._follows_now = False
            self._hold(moment, place.gutter + (place.width - place.gutter) / 3)

    def _tell(self) -> None:
        """Tell screen readers what the keyboard is on."""
        hit = told(self._spot, self._state.lanes, self._state.pleats)
        story = hit.story if hit else NOTHING
        if story == self._told:
            return
        self._told = story
        self._announce(story)


def _roll(bar: QScrollBar, pixels: int, turned: int) -> None:
    bar.setValue(bar.value() - (pixels or round(turned / _NOTCH * _ROLL)))


_KEYS: Final[Mapping[int, Callable[[TimelineView], None]]] = {
    _Key.Key_Up: lambda view: view.step_row(-1),
    _Key.Key_Down: lambda view: view.step_row(1),
    _Key.Key_Left: lambda view: view.step_along(-1),
    _Key.Key_Right: lambda view: view.step_along(1),
    _Key.Key_Return: TimelineView.enter,
    _Key.Key_Enter: TimelineView.enter,
    _Key.Key_Home: TimelineView.find_now,
    _Key.Key_N: TimelineView.find_now,
    _Key.Key_Plus: lambda view: view.zoom_by(ZOOM_STEP),
    _Key.Key_Equal: lambda view: view.zoom_by(ZOOM_STEP),
    _Key.Key_Minus: lambda view: view.zoom_by(1 / ZOOM_STEP),
}
"""What each key does, while there is anything to walk through."""
