"""A sheet under mouse, wheel and fingers: rolled, drawn along, zoomed, and its moments dragged."""

from html import escape
from typing import Final

from PySide6.QtCore import QEvent, QPointF, Qt, QTimer, Slot
from PySide6.QtGui import QHelpEvent, QMouseEvent, QNativeGestureEvent, QWheelEvent
from PySide6.QtWidgets import QGestureEvent, QPinchGesture, QScrollBar, QToolTip, QWidget
from typing_extensions import override

from studio_log.present.timeline_hits import Hit
from studio_log.ui.timeline.drag_sheet import DragSheet
from studio_log.ui.timeline.pan_hand import PanHand
from studio_log.ui.timeline.pointer import hit_at
from studio_log.ui.timeline.sheet_scroll import ZOOM_STEP

_NOTCH: Final = 120
"""Eighths of a degree in one notch of a wheel."""
_ROLL: Final = 60
"""Pixels a notch."""
EDGE: Final = 36.0
"""Pixels from an edge at which a dragged moment draws the sheet along."""
_EDGE_STEP: Final = 14.0
"""Pixels a turn of the timer at the very edge."""
_Cursor = Qt.CursorShape


class PointSheet(DragSheet):
    """What the pointer does; what a click means is for the view."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.viewport().setMouseTracking(True)
        self.viewport().grabGesture(Qt.GestureType.PinchGesture)
        self._pan = PanHand(self.horizontalScrollBar(), self.verticalScrollBar())
        self._pointer = QPointF()
        self._edging = QTimer(self, interval=30)
        self._edging.timeout.connect(self._edge_on)

    def story_at(self, point: QPointF) -> str:
        """Tell what lies under a point of the viewport, or ""."""
        hit = self._hit(point)
        return hit.story if hit else ""

    @override
    def wheelEvent(self, event: QWheelEvent) -> None:
        self._slip.hide()
        keys, turned, pixels = event.modifiers(), event.angleDelta(), event.pixelDelta()
        sideways = bool(keys & Qt.KeyboardModifier.ShiftModifier) or abs(turned.x()) > abs(
            turned.y()
        )
        if keys & Qt.KeyboardModifier.ControlModifier:
            self.glide_by(ZOOM_STEP ** (turned.y() / _NOTCH), event.position().x())
        elif sideways or not self.verticalScrollBar().maximum():
            _roll(self.horizontalScrollBar(), pixels.x() or pixels.y(), turned.x() or turned.y())
        else:
            _roll(self.verticalScrollBar(), pixels.y(), turned.y())
        event.accept()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._cancel_move()
        self._slip.hide()
        point, hit = event.position(), self._hit(event.position())
        if event.button() is Qt.MouseButton.MiddleButton:
            self._pan.press(point, None)
            return
        if event.button() is not Qt.MouseButton.LeftButton or not self._state.lanes:
            return
        if hit is None or not self._hand.press(self.scene(), hit, point):
            self._pan.press(point, hit)

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._pointer = event.position()
        if self._hand.pressed is not None:
            self._drag_moment()
        elif self._pan.pressed:
            if self._pan.drag(self._pointer):
                self.viewport().setCursor(_Cursor.ClosedHandCursor)
        else:
            self.viewport().setCursor(self._pointer_for(self._pointer))

    @override
    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._edging.stop()
        pressed = self._hand.pressed
        if pressed is not None and event.button() is Qt.MouseButton.LeftButton:
            if self._hand.held is None:
                self._hand.cancel()
                self._act_on(pressed)
            else:
                self._set_move()
        elif self._pan.pressed:
            clicked = self._pan.release()
            if clicked is not None:
                self._act_on(clicked)
        self.viewport().setCursor(self._pointer_for(event.position()))
        event.accept()

    @override
    def viewportEvent(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            story = self.story_at(QPointF(event.pos()))
            # Names are the dyer's own and may hold anything: never let them be read as markup.
            text = f"<qt>{escape(story)}</qt>" if story else ""
            QToolTip.showText(event.globalPos(), text, self.viewport())
            return True
        if isinstance(event, QNativeGestureEvent) and self._native(event):
            return True
        if isinstance(event, QGestureEvent) and self._pinched(event):
            return True
        return super().viewportEvent(event)

    def _act_on(self, hit: Hit) -> None:
        """Do what a click on it means."""
        raise NotImplementedError

    def _hit(self, point: QPointF) -> Hit | None:
        return hit_at(self.scene(), self._tools(), point) if self._state.lanes else None

    def _native(self, event: QNativeGestureEvent) -> bool:
        """Zoom by two fingers on a touch pad; each event tells by how much more."""
        if event.gestureType() is not Qt.NativeGestureType.ZoomNativeGesture:
            return False
        self._slip.hide()
        self.zoom_by(max(1 + event.value(), 0.1), event.position().x())
        event.accept()
        return True

    def _pinched(self, event: QGestureEvent) -> bool:
        """Zoom by two fingers on a screen, and go with them."""
        pinch = event.gesture(Qt.GestureType.PinchGesture)
        if not isinstance(pinch, QPinchGesture):
            return False
        self._slip.hide()
        self._cancel_move()
        self._pan.release()  # the first finger came as a mouse
        if pinch.state() is not Qt.GestureState.GestureFinished:
            went = pinch.centerPoint() - pinch.lastCenterPoint()
            across, down = self.horizontalScrollBar(), self.verticalScrollBar()
            across.setValue(across.value() - round(went.x()))
            down.setValue(down.value() - round(went.y()))
            about = self.viewport().mapFromGlobal(pinch.centerPoint())
            self.zoom_by(pinch.scaleFactor(), about.x())
        event.accept(pinch)
        return True

    def _drag_moment(self) -> None:
        if self._hand.drag(self.scene(), self._pointer):
            self.viewport().setCursor(_Cursor.SizeHorCursor)
            self._show_move()
            if self._beyond_edge() and not self._edging.isActive():
                self._edging.start()

    @Slot()
    def _edge_on(self) -> None:
        """Draw the sheet along while a moment is held at its edge."""
        by = self._beyond_edge()
        if self._hand.held is None or not by:
            self._edging.stop()
            return
        bar = self.horizontalScrollBar()
        before = bar.value()
        bar.setValue(before + round(by * _EDGE_STEP))
        if bar.value() != before:
            self._drag_moment()

    def _beyond_edge(self) -> float:
        """Say how far the pointer is into an edge: -1 to 0 at the left, 0 to 1 at the right."""
        place, x = self._place(), self._pointer.x()
        left, right = place.gutter + EDGE - x, x - (place.width - EDGE)
        return min(max(right, 0) / EDGE, 1.0) - min(max(left, 0) / EDGE, 1.0)

    def _pointer_for(self, point: QPointF) -> Qt.CursorShape:
        """Give the pointer that says what a press would do."""
        hit = self._hit(point)
        if hit is None:
            return _Cursor.ArrowCursor
        if self._hand.grip(self.scene(), hit, point) is not None:
            return _Cursor.SizeHorCursor
        bare = (hit.part == "lane" and hit.code) or hit.part == "row"
        ground = bare and point.x() > self._place().gutter
        return _Cursor.OpenHandCursor if ground else _Cursor.PointingHandCursor


def _roll(bar: QScrollBar, pixels: int, turned: int) -> None:
    bar.setValue(bar.value() - (pixels or round(turned / _NOTCH * _ROLL)))
