"""The drawing of a sum: a band of what may be, a line of what is likely, the typed values."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget
from typing_extensions import override

from studio_log.domain.number_text import plain
from studio_log.present.calculator.parts import Curve
from studio_log.ui.theme.look import theme

LINES: Final = 5
"""Grid lines across, at the most."""
STEPS: Final = (0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100)


def round_step(span: float) -> float:
    """Give a round step that parts a span into `LINES` at the most."""
    return next((step for step in STEPS if span / step <= LINES), span / LINES)


class CurveView(QWidget):
    """Draws a `Curve` with its axes; its words are for whoever hears it."""

    def __init__(self) -> None:
        super().__init__()
        self._curve: Curve | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.hide()

    def show_curve(self, curve: Curve | None) -> None:
        """Draw this; nothing at all for None."""
        self._curve = curve
        self.setVisible(curve is not None)
        self.setAccessibleName(curve.says if curve is not None else "")
        self.setToolTip(curve.says if curve is not None else "")
        self.update()

    @override
    def sizeHint(self) -> QSize:
        line = theme().metrics.line
        return QSize(round(line * 24), round(line * 13))

    @override
    def minimumSizeHint(self) -> QSize:
        line = theme().metrics.line
        return QSize(round(line * 14), round(line * 9))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        if self._curve is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _Drawing(self._curve, QRectF(self.rect())).paint(painter)


class _Drawing:
    """One curve in one rectangle."""

    def __init__(self, curve: Curve, rect: QRectF) -> None:
        self._curve = curve
        self._line = theme().metrics.line
        left, below = self._line * 2.8, self._line * 2.4
        self._area = rect.adjusted(left, self._line * 1.5, -self._line, -below)
        self._low = min(curve.xs), min(0.0, *curve.least) if min(curve.least) < 1 else 1.0
        self._step = round_step(max(curve.most) - self._low[1])
        lines = -(-(max(curve.most) - self._low[1]) // self._step)
        self._high = max(curve.xs), self._low[1] + lines * self._step

    def paint(self, painter: QPainter) -> None:
        painter.setFont(theme().font("small"))
        self._grid(painter)
        self._band(painter)
        self._point(painter)

    def _at(self, x: float, y: float) -> QPointF:
        across = (x - self._low[0]) / (self._high[0] - self._low[0])
        up = (y - self._low[1]) / (self._high[1] - self._low[1])
        area = self._area
        return QPointF(area.left() + across * area.width(), area.bottom() - up * area.height())

    def _points(self, ys: Sequence[float]) -> QPolygonF:
        return QPolygonF([self._at(x, y) for x, y in zip(self._curve.xs, ys, strict=True)])

    def _grid(self, painter: QPainter) -> None:
        colours, line = theme().colours, self._line
        hair, words = QPen(colours.line, 1), QPen(colours.soft)
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        y = self._low[1]
        while y <= self._high[1] + 1e-9:
            at = self._at(self._low[0], y)
            painter.setPen(hair)
            painter.drawLine(at, QPointF(self._area.right(), at.y()))
            painter.setPen(words)
            painter.drawText(QRectF(0, at.y() - line, at.x() - 6, 2 * line), right, plain(y, 2))
            y += self._step
        step = round_step(self._high[0] - self._low[0])
        x = self._low[0]
        while x <= self._high[0] + 1e-9:
            at = self._at(x, self._low[1])
            box = QRectF(at.x() - 2 * line, at.y() + 3, 4 * line, line)
            painter.drawText(box, Qt.AlignmentFlag.AlignHCenter, plain(x, 1))
            x += step
        area = self._area
        whole = QRectF(area.left(), area.bottom() + line * 1.25, area.width(), line)
        painter.drawText(whole, Qt.AlignmentFlag.AlignHCenter, self._curve.x_words)
        painter.drawText(QPointF(2, self._area.top() - line * 0.6), self._curve.y_words)

    def _band(self, painter: QPainter) -> None:
        colours = theme().colours
        path = QPainterPath()
        below = self._points(self._curve.least)
        path.addPolygon(self._points(self._curve.most))
        for at in range(below.size() - 1, -1, -1):
            path.lineTo(below.at(at))
        path.closeSubpath()
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colours.indigo_ground)
        painter.drawPath(path)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(colours.accent_ink, 2))
        painter.drawPolyline(self._points(self._curve.likely))

    def _point(self, painter: QPainter) -> None:
        if self._curve.at is None:
            return
        colours, at = theme().colours, self._at(*self._curve.at)
        painter.setPen(QPen(colours.danger_ink, 1, Qt.PenStyle.DashLine))
        painter.drawLine(at, QPointF(at.x(), self._area.bottom()))
        painter.drawLine(at, QPointF(self._area.left(), at.y()))
        painter.setPen(QPen(colours.panel, 2))
        painter.setBrush(colours.danger_ink)
        painter.drawEllipse(at, self._line * 0.3, self._line * 0.3)
