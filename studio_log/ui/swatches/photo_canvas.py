"""The photo with handles: the target's corners, the swatch and cards, dragged to where they go."""

import math
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QMimeData, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QDragEnterEvent,
    QDropEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QPolygonF,
)
from PySide6.QtWidgets import QLabel
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.ui.swatches.photo_job import Corners, Rect
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import em

REACH: Final = 16
"""Pixels of the screen about a handle that take hold of it."""
SIZE: Final = 6
LEAST: Final = 4.0
"""Least side of a swatch or card, in pixels of the photo."""
WHOLE: Final = -1
LIGHT, DARK = QColor("#ffffff"), QColor("#000000")
"""Marks are drawn in both: seen on any photo."""
_STEPS: Final = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}  # fmt: skip


@dataclass(frozen=True)
class Handle:
    """What is taken hold of: "target", "swatch", "card1"…; a corner from 0, or the whole of it."""

    what: str
    at: int = WHOLE


class PhotoCanvas(QLabel):
    """Shows a photo whole. Handles are dragged; Space goes to the next, arrows move it."""

    changed = Signal()
    """A mark was moved."""
    dropped = Signal(QMimeData)

    def __init__(self) -> None:
        super().__init__()
        self.setPixmap(QPixmap(1, 1))  # a label with a picture: so it is read aloud as one
        self._image = QImage()
        self._size = (1, 1)
        self._target: list[QPointF] | None = None
        self._rects: dict[str, QRectF] = {}
        self._held: Handle | None = None
        self._chosen = Handle("swatch")
        self._from = QPointF()
        self.setMinimumSize(em(self, 18), em(self, 14))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setAcceptDrops(True)
        self.setAccessibleName(tr("The photo, with handles for target, swatch and card"))

    def show_photo(self, image: QImage, size: tuple[int, int]) -> None:
        """Show a photo; `size` is its own, in pixels."""
        self._image, self._size = image, size
        self.update()

    def mark(self, target: Corners | None, rects: dict[str, Rect]) -> None:
        """Set the marks, in pixels of the photo."""
        self._target = None if target is None else [QPointF(x, y) for x, y in target]
        self._rects = {name: QRectF(*one) for name, one in rects.items()}
        self._chosen = Handle("swatch")
        self.update()

    @property
    def target(self) -> Corners | None:
        """The target's corners, in pixels of the photo, clockwise from dark skin."""
        if self._target is None:
            return None
        return tuple((one.x(), one.y()) for one in self._target)

    @property
    def rects(self) -> dict[str, Rect]:
        """Swatch and cards by their names, in pixels of the photo."""
        return {
            name: (one.x(), one.y(), one.width(), one.height()) for name, one in self._rects.items()
        }

    def turn_target(self) -> None:
        """Let the next corner be that of dark skin: where the guess has it the wrong way round."""
        if self._target is not None:
            self._target = [*self._target[1:], self._target[0]]
            self.update()
            self.changed.emit()

    @override
    def sizeHint(self) -> QSize:
        return QSize(em(self, 44), em(self, 32))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(theme().palette.panel))
        if self._image.isNull():
            painter.setPen(QColor(theme().palette.soft))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            words = tr("Drop a photo here: the swatch beside a 24-patch target, or a grey card.")
            painter.drawText(self.rect().adjusted(20, 20, -20, -20), flags, words)
        else:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(self._room(), self._image)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_marks(painter)
            if self._held is not None:
                self._paint_lens(painter)
        if self.hasFocus():
            painter.setPen(QPen(QColor(theme().palette.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        painter.end()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._held = self._under(event.position())
            if self._held is not None:
                self._chosen, self._from = self._held, self._photo(event.position())
            self.update()

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._held is None:
            over = self._under(event.position())
            shape = Qt.CursorShape.ArrowCursor
            if over is not None:
                whole = over.at == WHOLE
                shape = Qt.CursorShape.SizeAllCursor if whole else Qt.CursorShape.CrossCursor
            self.setCursor(shape)
            return
        now = self._photo(event.position())
        self._move(self._held, now - self._from)
        self._from = now

    @override
    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._held is not None:
            self._held = None
            self.update()
            self.changed.emit()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = _STEPS.get(Qt.Key(event.key()))
        if step is not None and not self._image.isNull():
            far = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            by = QPointF(step[0] * far, step[1] * far) / self._scale()
            self._move(self._chosen, by)
            self.changed.emit()
        elif event.key() == Qt.Key.Key_Space:
            every = self._handles()
            at = every.index(self._chosen) + 1 if self._chosen in every else 0
            self._chosen = every[at % len(every)] if every else self._chosen
            self.update()
        else:
            super().keyPressEvent(event)

    @override
    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasUrls() or event.mimeData().hasImage():
            event.acceptProposedAction()

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        event.acceptProposedAction()
        self.dropped.emit(event.mimeData())

    def seen(self, point: QPointF) -> QPointF:
        """Give where a point of the photo lies in the widget."""
        room = self._room()
        return room.topLeft() + point * self._scale()

    def _photo(self, point: QPointF) -> QPointF:
        """Give the point of the photo that lies there, within the photo."""
        found = (point - self._room().topLeft()) / self._scale()
        width, height = self._size
        return QPointF(min(max(found.x(), 0.0), width), min(max(found.y(), 0.0), height))

    def _scale(self) -> float:
        width, height = self._size
        return max(min(self.width() / width, self.height() / height), 1e-6)

    def _room(self) -> QRectF:
        scale = self._scale()
        room = QRectF(0, 0, self._size[0] * scale, self._size[1] * scale)
        room.moveCenter(QRectF(self.rect()).center())
        return room

    def _handles(self) -> list[Handle]:
        found = [Handle("target", at) for at in range(4)] if self._target is not None else []
        for name in self._rects:
            found += [Handle(name), *(Handle(name, at) for at in range(4))]
        return found

    def _place(self, handle: Handle) -> QPointF:
        """Give where a handle lies in the photo."""
        if handle.what == "target" and self._target is not None:
            return self._target[handle.at]
        box = self._rects[handle.what]
        corners = (box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft())
        return box.center() if handle.at == WHOLE else corners[handle.at]

    def _under(self, point: QPointF) -> Handle | None:
        """Give the corner that is near, else the swatch or card that lies there, or the target."""
        near = [
            (_apart(self.seen(self._place(one)), point), one)
            for one in self._handles()
            if one.at != WHOLE
        ]
        if near and min(near, key=lambda pair: pair[0])[0] <= REACH:
            return min(near, key=lambda pair: pair[0])[1]
        there = self._photo(point)
        for name, box in self._rects.items():
            if box.contains(there):
                return Handle(name)
        if self._target is not None and QPolygonF(self._target).containsPoint(
            there, Qt.FillRule.OddEvenFill
        ):
            return Handle("target")
        return None

    def _move(self, handle: Handle, by: QPointF) -> None:
        """Move a corner, or the whole; nothing leaves the photo, and no box turns inside out."""
        if handle.what == "target" and self._target is not None:
            moved = range(4) if handle.at == WHOLE else (handle.at,)
            for at in moved:
                self._target[at] = self._within(self._target[at] + by)
        elif handle.what in self._rects:
            self._rects[handle.what] = self._moved(self._rects[handle.what], handle.at, by)
        self.update()

    def _within(self, point: QPointF) -> QPointF:
        width, height = self._size
        return QPointF(min(max(point.x(), 0.0), width), min(max(point.y(), 0.0), height))

    def _moved(self, box: QRectF, at: int, by: QPointF) -> QRectF:
        width, height = self._size
        if at == WHOLE:
            moved = box.translated(by)
            moved.moveLeft(min(max(moved.left(), 0.0), width - moved.width()))
            moved.moveTop(min(max(moved.top(), 0.0), height - moved.height()))
            return moved
        left, top, right, bottom = box.left(), box.top(), box.right(), box.bottom()
        if at in (0, 3):
            left = min(max(left + by.x(), 0.0), right - LEAST)
        else:
            right = max(min(right + by.x(), float(width)), left + LEAST)
        if at in (0, 1):
            top = min(max(top + by.y(), 0.0), bottom - LEAST)
        else:
            bottom = max(min(bottom + by.y(), float(height)), top + LEAST)
        return QRectF(QPointF(left, top), QPointF(right, bottom))

    def _paint_marks(self, painter: QPainter) -> None:
        if self._target is not None:
            self._outline(painter, QPolygonF([self.seen(one) for one in self._target]))
            self._paint_patches(painter)
            self._label(painter, self._target[0], tr("dark skin"))
        names = {"swatch": tr("swatch")}
        for name, box in self._rects.items():
            corners = (box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft())
            self._outline(painter, QPolygonF([self.seen(one) for one in corners]))
            self._label(painter, box.topLeft(), names.get(name, tr("card")))
        for handle in self._handles():
            if handle.at == WHOLE and handle != self._chosen:
                continue
            at = self.seen(self._place(handle))
            chosen = handle == self._chosen
            painter.setPen(QPen(DARK, 1))
            painter.setBrush(QColor(theme().palette.focus) if chosen else LIGHT)
            size = SIZE + 2 if chosen else SIZE
            painter.drawEllipse(at, size, size)

    def _outline(self, painter: QPainter, shape: QPolygonF) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for colour, width in ((DARK, 3), (LIGHT, 1)):
            painter.setPen(QPen(colour, width))
            painter.drawPolygon(shape)

    def _paint_patches(self, painter: QPainter) -> None:
        """Put a point where the middle of each patch should be."""
        from studio_log.science.colour.regions import patch_corners  # noqa: PLC0415 - numpy

        if self.target is None:
            return
        first, second, third, fourth = self.target
        try:
            patches = patch_corners((first, second, third, fourth))
        except ValueError:  # the corners lie on one line just now
            return
        painter.setPen(QPen(DARK, 1))
        painter.setBrush(LIGHT)
        for one in patches:
            middle = sum((QPointF(x, y) for x, y in one), QPointF()) / 4
            painter.drawEllipse(self.seen(middle), 2.5, 2.5)

    def _label(self, painter: QPainter, at: QPointF, words: str) -> None:
        where = self.seen(at)
        metrics = painter.fontMetrics()
        box = QRectF(0, 0, metrics.horizontalAdvance(words) + 10, metrics.height() + 2)
        box.moveBottomLeft(where + QPointF(0, -SIZE - 4))
        box.moveTop(max(box.top(), 0.0))
        painter.fillRect(box, QColor(0, 0, 0, 190))
        painter.setPen(LIGHT)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def _paint_lens(self, painter: QPainter) -> None:
        """Show what lies about the handle that is held four times as large, in a free corner."""
        if self._held is None or self._held.at == WHOLE:
            return
        middle = self._place(self._held)
        share = self._image.width() / self._size[0]
        half = 26 / self._scale() * share / 2
        source = QRectF(0, 0, 2 * half, 2 * half)
        source.moveCenter(middle * share)
        side = em(self, 8)
        left = self.seen(middle).x() > self.width() / 2
        box = QRectF(10 if left else self.width() - side - 10, 10, side, side)
        painter.fillRect(box, DARK)
        painter.drawImage(box, self._image, source)
        painter.setPen(QPen(LIGHT, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(box)
        x, y = box.center().x(), box.center().y()
        painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y))


def _apart(one: QPointF, other: QPointF) -> float:
    return math.hypot(one.x() - other.x(), one.y() - other.y())
