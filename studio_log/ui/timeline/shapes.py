"""The small shapes that stand beside the hues: each kind of step, drops, marks, hatching."""

from collections.abc import Callable, Mapping
from functools import cache
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPixmap, QTransform

from studio_log.domain.methods import StepKind
from studio_log.present.lanes import MarkKind

UNIT: Final = 12.0
"""Kinds are drawn in a square of this side, then scaled."""
_TWILL: Final = 6
"""Distance of the hatching's lines, in pixels."""
_WEAVE: Final = 14
"""Repeat of the pattern of closed hours, in pixels."""


def _beans() -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QRectF(1, 1.8, 6, 4.6))
    path.addEllipse(QRectF(5, 6, 6, 4.6))
    return path


def _milk() -> QPainterPath:
    path = QPainterPath(QPointF(0.8, 4))
    path.lineTo(11.2, 4)
    path.cubicTo(11.2, 12.6, 0.8, 12.6, 0.8, 4)
    return path


def _wave(path: QPainterPath, y: float) -> None:
    path.moveTo(0.8, y)
    path.cubicTo(3, y - 3, 4.4, y + 3, 6, y)
    path.cubicTo(7.6, y - 3, 9, y + 3, 11.2, y)


def _soak() -> QPainterPath:
    path = QPainterPath()
    for y in (3.2, 6.2, 9.2):
        _wave(path, y)
    return path


def _spin() -> QPainterPath:
    path = QPainterPath()
    path.arcMoveTo(QRectF(1, 1, 10, 10), 60)
    path.arcTo(QRectF(1, 1, 10, 10), 60, 280)
    path.arcMoveTo(QRectF(4, 4, 4, 4), 60)
    path.arcTo(QRectF(4, 4, 4, 4), 60, 280)
    return path


def _dry() -> QPainterPath:
    path = QPainterPath(QPointF(0.5, 2.2))
    path.lineTo(11.5, 2.2)
    path.moveTo(3, 2.2)
    path.lineTo(3, 10.8)
    path.lineTo(9, 10.8)
    path.lineTo(9, 2.2)
    return path


def drop_path(centre: QPointF, width: float, height: float) -> QPainterPath:
    """Draw a drop hanging about its centre."""
    top, bottom = centre.y() - height / 2, centre.y() + height / 2
    belly = bottom - width / 2
    left, right = centre.x() - width / 2, centre.x() + width / 2
    path = QPainterPath(QPointF(centre.x(), top))
    path.cubicTo(
        centre.x() + width * 0.12, top + height * 0.24, right, belly - width * 0.4, right, belly
    )
    path.cubicTo(right, bottom + width * 0.17, left, bottom + width * 0.17, left, belly)
    path.cubicTo(
        left, belly - width * 0.4, centre.x() - width * 0.12, top + height * 0.24, centre.x(), top
    )
    return path


def _dip() -> QPainterPath:
    return drop_path(QPointF(6, 6), 7.4, 10.6)


def _cure() -> QPainterPath:
    moon = QPainterPath()
    moon.addEllipse(QRectF(1, 1, 10, 10))
    bite = QPainterPath()
    bite.addEllipse(QRectF(4.6, -0.4, 9, 9))
    return moon.subtracted(bite)


def _scour() -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QRectF(0.8, 5, 6, 6))
    path.addEllipse(QRectF(6.6, 2.2, 4.2, 4.2))
    path.addEllipse(QRectF(8, 8.4, 2.6, 2.6))
    return path


def _rinse() -> QPainterPath:
    path = QPainterPath()
    for x in (3.2, 6.4, 9.6):
        path.moveTo(x + 0.9, 1)
        path.lineTo(x - 0.9, 5.6)
    _wave(path, 9.4)
    return path


def _hand() -> QPainterPath:
    path = QPainterPath(QPointF(2, 2))
    path.lineTo(10, 10)
    path.moveTo(10, 2)
    path.lineTo(2, 10)
    return path


_KINDS: Final[Mapping[StepKind, Callable[[], QPainterPath]]] = {
    StepKind.BEANS: _beans,
    StepKind.MILK: _milk,
    StepKind.SOAK: _soak,
    StepKind.SPIN: _spin,
    StepKind.DRY: _dry,
    StepKind.DIP: _dip,
    StepKind.CURE: _cure,
    StepKind.SCOUR: _scour,
    StepKind.RINSE: _rinse,
    StepKind.HAND: _hand,
}


@cache
def kind_path(kind: StepKind) -> QPainterPath:
    """Give the shape of a kind of step, in a square of `UNIT`."""
    return _KINDS[kind]()


def draw_kind(painter: QPainter, kind: StepKind, place: QRectF, colour: QColor) -> None:
    """Draw the shape of a kind as a line drawing that fills the square."""
    painter.save()
    painter.translate(place.topLeft())
    painter.scale(place.width() / UNIT, place.height() / UNIT)
    painter.setPen(
        QPen(
            colour, 1.35, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin
        )
    )
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(kind_path(kind))
    painter.restore()


def draw_mark(painter: QPainter, kind: MarkKind, place: QRectF, colour: QColor) -> None:
    """Draw a mark of the cure: a pennant, a knot, or a ring with a bar through it."""
    painter.save()
    painter.setPen(
        QPen(colour, 1.6, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
    )
    painter.setBrush(colour if kind != "resists" else Qt.BrushStyle.NoBrush)
    inner = place.adjusted(1, 1, -1, -1)
    if kind == "paint":
        pole = inner.left() + inner.width() * 0.2
        painter.drawLine(QPointF(pole, inner.top()), QPointF(pole, inner.bottom()))
        painter.drawPolygon(
            [
                QPointF(pole, inner.top()),
                QPointF(inner.right(), inner.top() + inner.height() * 0.3),
                QPointF(pole, inner.top() + inner.height() * 0.6),
            ]
        )
    elif kind == "ready":
        painter.drawPolygon(
            [
                QPointF(inner.center().x(), inner.top()),
                QPointF(inner.right(), inner.center().y()),
                QPointF(inner.center().x(), inner.bottom()),
                QPointF(inner.left(), inner.center().y()),
            ]
        )
    else:
        painter.drawEllipse(inner)
        painter.drawLine(inner.topLeft() + QPointF(2, 2), inner.bottomRight() - QPointF(2, 2))
    painter.restore()


def twill(colour: QColor, ground: QColor, ratio: float) -> QBrush:
    """Make the hatching of a soft end: diagonal lines as in a twill, sharp at `ratio`."""
    side = round(_TWILL * ratio)
    tile = QPixmap(side, side)
    tile.fill(ground)
    painter = QPainter(tile)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, 1.3 * ratio))
    for shift in (-side, 0, side):
        painter.drawLine(QPointF(shift - 1, side + 1), QPointF(shift + side + 1, -1))
    painter.end()
    brush = QBrush(tile)
    brush.setTransform(QTransform.fromScale(1 / ratio, 1 / ratio))
    return brush


def plain_weave(colour: QColor, ratio: float) -> QBrush:
    """Make the pattern of closed hours: short threads over and under, on a ground seen through."""
    side = round(_WEAVE * ratio)
    tile = QPixmap(side, side)
    tile.fill(Qt.GlobalColor.transparent)
    painter = QPainter(tile)
    half = side / 2
    for left, top in ((0.0, half / 2), (half, half * 1.5)):
        painter.fillRect(QRectF(round(left), round(top), round(half), max(round(ratio), 1)), colour)
    painter.end()
    brush = QBrush(tile)
    brush.setTransform(QTransform.fromScale(1 / ratio, 1 / ratio))
    return brush
