"""Picking a colour from the screen with the mouse, where the desktop lets a program see it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPoint, QRect, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QGuiApplication,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QScreen,
)
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.widgets.parts import em

AROUND: Final = 1
"""Pixels about the pointer that are averaged: a single one may be a speck."""
LENS: Final = 6
"""Pixels about the pointer that are shown large."""
STEP: Final = 11
"""Size of one of them on the screen."""
BLIND: Final = tr_later(
    "This desktop does not let a program see the screen. Choose the colour in the colour box, type "
    "it, or take it from a photo."
)


def sees_screen() -> bool:
    """Say whether the screen can be seen here; Wayland shows a program its own windows only."""
    return not QGuiApplication.platformName().startswith("wayland")


def screen_pixmaps() -> list[tuple[QScreen, QPixmap]]:
    """Give what every screen shows; [] where that is not allowed."""
    if not sees_screen():
        return []
    seen = [(screen, screen.grabWindow(0)) for screen in QGuiApplication.screens()]
    return [(screen, shot) for screen, shot in seen if not shot.isNull() and shot.width() > 1]


def mean_colour(image: QImage, at: QPoint, around: int = AROUND) -> QColor:
    """Give the mean colour about a point, in linear light as an eye would mix it."""
    box = QRect(at.x() - around, at.y() - around, 2 * around + 1, 2 * around + 1)
    box = box.intersected(image.rect())
    lights = [
        [_light(part) for part in _parts(QColor(image.pixel(x, y)))]
        for x in range(box.left(), box.right() + 1)
        for y in range(box.top(), box.bottom() + 1)
    ]
    if not lights:
        return QColor()
    red, green, blue = (_code(sum(one) / len(lights)) for one in zip(*lights, strict=True))
    return QColor.fromRgbF(red, green, blue)


def _parts(colour: QColor) -> tuple[float, float, float]:
    return colour.redF(), colour.greenF(), colour.blueF()


def _light(code: float) -> float:
    return code / 12.92 if code <= 0.04045 else float(((code + 0.055) / 1.055) ** 2.4)


def _code(light: float) -> float:
    found = 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
    return min(1.0, max(0.0, float(found)))


class PickLayer(QWidget):
    """Lies over one screen and shows it as it was; a click picks, Esc leaves."""

    picked = Signal(QColor)
    left = Signal()

    def __init__(self, screen: QScreen, shot: QPixmap) -> None:
        super().__init__(
            None, Qt.WindowType.FramelessWindowHint | Qt.WindowType.WindowStaysOnTopHint
        )
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setAccessibleName(tr("Click the colour; Esc leaves"))
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setMouseTracking(True)
        self.setGeometry(screen.geometry())
        self._shot, self._image = shot, shot.toImage()
        self._ratio = shot.width() / max(screen.geometry().width(), 1)
        self._at: QPoint | None = None

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.drawPixmap(self.rect(), self._shot)
        if self._at is not None:
            self._lens(painter, self._at)
        painter.end()

    @override
    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._at = event.position().toPoint()
        self.update()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self.picked.emit(mean_colour(self._image, self._seen(event.position().toPoint())))
        else:
            self.left.emit()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()

    def _seen(self, at: QPoint) -> QPoint:
        return QPoint(round(at.x() * self._ratio), round(at.y() * self._ratio))

    def _lens(self, painter: QPainter, at: QPoint) -> None:
        """Show the pixels about the pointer large, with the colour that would be picked."""
        side = (2 * LENS + 1) * STEP
        corner = at + QPoint(24, 24)
        if corner.x() + side > self.width():
            corner.setX(at.x() - 24 - side)
        if corner.y() + side + em(self, 2) > self.height():
            corner.setY(at.y() - 24 - side - em(self, 2))
        seen = self._seen(at)
        source = QRect(seen.x() - LENS, seen.y() - LENS, 2 * LENS + 1, 2 * LENS + 1)
        painter.drawImage(QRect(corner.x(), corner.y(), side, side), self._image, source)
        colour = mean_colour(self._image, seen)
        below = QRect(corner.x(), corner.y() + side, side, em(self, 2))
        painter.fillRect(below, colour)
        painter.setPen(QColor("#000000" if colour.lightnessF() > 0.5 else "#ffffff"))
        painter.drawText(below, Qt.AlignmentFlag.AlignCenter, colour.name())
        painter.setPen(QColor("#ffffff"))
        painter.drawRect(QRect(corner.x(), corner.y(), side, side + em(self, 2)))
        painter.setPen(QColor("#000000"))
        painter.drawRect(QRect(corner.x() - 1, corner.y() - 1, side + 2, side + em(self, 2) + 2))


class ScreenPick(QWidget):
    """Lays a layer over every screen until a colour is picked or the picking is left."""

    picked = Signal(str)
    """The colour, "#rrggbb"."""
    over = Signal()
    """The layers are gone, whether a colour was picked or not."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.hide()
        self.layers: list[PickLayer] = []

    def begin(self, seen: Sequence[tuple[QScreen, QPixmap]] | None = None) -> str:
        """Begin to pick; give a sentence where that cannot be, "" where it can."""
        shots = screen_pixmaps() if seen is None else list(seen)
        if not shots:
            return tr(BLIND)
        for screen, shot in shots:
            layer = PickLayer(screen, shot)
            layer.picked.connect(self._take)
            layer.left.connect(self.end)
            layer.showFullScreen()
            self.layers.append(layer)
        self.layers[0].activateWindow()
        self.layers[0].setFocus(Qt.FocusReason.OtherFocusReason)
        return ""

    def end(self) -> None:
        """Take the layers away."""
        layers, self.layers = self.layers, []
        for layer in layers:
            layer.close()
        self.over.emit()

    def _take(self, colour: QColor) -> None:
        self.end()
        if colour.isValid():
            self.picked.emit(colour.name())
