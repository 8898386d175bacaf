"""Draws a trial, alike on the screen, in a picture and on paper."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.trial_plot import SHAPES, Point, TrialPlot
from studio_log.ui.ink.marks import tag_font
from studio_log.ui.theme.look import theme

DOT: Final = 0.34
"""Radius of a dot, in letters' heights."""
LEFT: Final = 3.6
BELOW: Final = 3.0
LEGEND: Final = 1.5


@dataclass(frozen=True)
class PlotInk:
    """The colours of a drawing."""

    ink: QColor
    soft: QColor
    grid: QColor
    ground: QColor
    line: QColor
    mean: QColor
    new: QColor


PAPER_INK: Final = PlotInk(
    QColor("#000000"), QColor("#404040"), QColor("#c8c8c8"), QColor("#ffffff"),
    QColor("#1f3a66"), QColor("#b9c8e2"), QColor("#e4eaf4"),
)  # fmt: skip


def screen_ink() -> PlotInk:
    """Give the colours of the window's look."""
    colours = theme().colours
    mean, new = QColor(colours.accent_ink), QColor(colours.accent_ink)
    mean.setAlpha(80)
    new.setAlpha(32)
    return PlotInk(
        colours.ink, colours.soft, colours.line, colours.panel, colours.accent_ink, mean, new
    )


class Drawing:
    """One plot in one rectangle; `em` is the height of its letters in the painter's units."""

    def __init__(self, plot: TrialPlot, rect: QRectF, em: float, ink: PlotInk) -> None:
        self._plot, self._em, self._ink = plot, em, ink
        legend = em * LEGEND if self._legend_words() else 0.0
        self._area = rect.adjusted(em * LEFT, em * 2.0, -em * 0.8, -(em * BELOW + legend))
        self._rect = rect
        self._font = tag_font(bold=False)
        self._font.setPixelSize(max(1, round(em)))

    def paint(self, painter: QPainter) -> None:
        """Paint bands, grid, lines, dots and words."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(self._font)
        self._bands(painter)
        self._grid(painter)
        self._lines(painter)
        self._bars(painter)
        for dot in self._plot.dots:
            fill = QColor(dot.fill) if dot.fill else self._ink.ground
            self._dot(painter, self._at((dot.x, dot.y)), dot.shape, fill)
        self._words(painter)
        self._legend(painter)

    def _at(self, point: Point) -> QPointF:
        x, y = point
        area = self._area
        return QPointF(area.left() + x * area.width(), area.bottom() - y * area.height())

    def _polygon(self, points: Sequence[Point]) -> QPolygonF:
        return QPolygonF([self._at(one) for one in points])

    def _bands(self, painter: QPainter) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        for band, colour in ((self._plot.new_band, self._ink.new),
                             (self._plot.mean_band, self._ink.mean)):  # fmt: skip
            if band:
                painter.setBrush(colour)
                painter.drawPolygon(self._polygon(band))

    def _grid(self, painter: QPainter) -> None:
        plot, area, em = self._plot, self._area, self._em
        hair, words = QPen(self._ink.grid, em / 14), QPen(self._ink.soft)
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        for tick in plot.y_ticks:
            y = self._at((0, tick.at)).y()
            painter.setPen(hair)
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setPen(words)
            box = QRectF(
                self._rect.left(), y - em, area.left() - self._rect.left() - em / 3, 2 * em
            )
            painter.drawText(box, right, tick.words)
        if plot.part_at is not None:
            x = self._at((plot.part_at, 0)).x()
            painter.setPen(QPen(self._ink.grid, em / 10, Qt.PenStyle.DashLine))
            painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        painter.setPen(QPen(self._ink.soft, em / 12))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        for tick in plot.x_ticks:
            x = self._at((tick.at, 0)).x()
            painter.drawLine(QPointF(x, area.bottom()), QPointF(x, area.bottom() + em / 3))
            self._below(painter, x, tick.words, self._room(tick.at))

    def _room(self, at: float) -> float:
        """Give how wide the words at a place may be: to the middle between it and the next."""
        others = [abs(one.at - at) for one in self._plot.x_ticks if one.at != at and one.words]
        return max(min(others, default=1.0) * self._area.width() - self._em * 0.6, self._em * 1.6)

    def _below(self, painter: QPainter, x: float, words: str, wide: float) -> None:
        """Write under the axis, cut where it has no room."""
        cut = QFontMetricsF(self._font).elidedText(words, Qt.TextElideMode.ElideRight, wide)
        box = QRectF(x - wide / 2, self._area.bottom() + self._em * 0.4, wide, self._em * 1.3)
        painter.drawText(box, Qt.AlignmentFlag.AlignHCenter, cut)

    def _lines(self, painter: QPainter) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        rows: tuple[tuple[Sequence[Point], float, Qt.PenStyle], ...] = (
            *((line, 12.0, Qt.PenStyle.DotLine) for line in self._plot.by_batch),
            (self._plot.fit, 6.0, Qt.PenStyle.SolidLine),
            (self._plot.curve, 6.0, Qt.PenStyle.DashLine),
        )
        for points, part, style in rows:
            if points:
                painter.setPen(QPen(self._ink.line, self._em / part, style))
                painter.drawPolyline(self._polygon(points))

    def _bars(self, painter: QPainter) -> None:
        """Draw the control's mean across, and the bars of the arms held against it."""
        plot, em = self._plot, self._em
        if plot.level is None:
            return
        painter.setPen(QPen(self._ink.line, em / 9, Qt.PenStyle.DashDotLine))
        painter.drawLine(self._at((0, plot.level)), self._at((1, plot.level)))
        for bar in plot.bars:
            painter.setPen(QPen(self._ink.line, em / (4.5 if bar.clear else 9)))
            low, high = self._at((bar.x, bar.low)), self._at((bar.x, bar.high))
            painter.drawLine(low, high)
            for end in (low, high):
                painter.drawLine(end - QPointF(em / 3, 0), end + QPointF(em / 3, 0))
            middle = self._at((bar.x, bar.at))
            painter.setBrush(self._ink.line if bar.clear else self._ink.ground)
            painter.drawEllipse(middle, em / 4, em / 4)

    def _dot(self, painter: QPainter, at: QPointF, shape: int, fill: QColor) -> None:
        painter.setPen(QPen(self._ink.ink, self._em / 9))
        painter.setBrush(fill)
        _SHAPES[shape % SHAPES](painter, at, self._em * DOT)

    def _words(self, painter: QPainter) -> None:
        em, area, rect = self._em, self._area, self._rect
        painter.setPen(self._ink.soft)
        below = QRectF(area.left(), area.bottom() + em * 1.7, area.width(), em * 1.3)
        painter.drawText(below, Qt.AlignmentFlag.AlignHCenter, self._plot.x_words)
        above = QRectF(rect.left() + em * 0.3, rect.top() + em * 0.3, rect.width(), em * 1.4)
        painter.drawText(above, Qt.AlignmentFlag.AlignLeft, self._plot.y_words)

    def _legend_words(self) -> list[tuple[str, int | None]]:
        """Give the words of the legend; shapes by their number, the fit's own words without."""
        plot = self._plot
        found: list[tuple[str, int | None]] = [
            (name, place) for place, name in enumerate(plot.batches[:SHAPES])
        ]
        if plot.bars:
            words = tr("bar: the mean held against the control’s, the line; 95 % for all "
                       "together; filled: clear")  # fmt: skip
            found.append((words, None))
        if plot.fit:
            found.append((tr("dark band: the mean, 95 %; light: a new piece"), None))
        if plot.curve:
            found.append((tr("dashed: the curve that fits better"), None))
        return found

    def _legend(self, painter: QPainter) -> None:
        em = self._em
        x, y = self._area.left(), self._rect.bottom() - em * 0.9
        metrics = QFontMetricsF(self._font)
        for words, shape in self._legend_words():
            if shape is not None:
                self._dot(painter, QPointF(x + em / 2, y), shape, self._ink.ground)
                x += em * 1.2
            room = self._rect.right() - x
            if room < em * 3:
                return
            painter.setPen(self._ink.soft)
            cut = metrics.elidedText(words, Qt.TextElideMode.ElideRight, room)
            wide = metrics.horizontalAdvance(cut)
            box = QRectF(x, y - em, wide + em, 2 * em)
            left = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(box, left, cut)
            x += wide + em * 1.3


def _circle(painter: QPainter, at: QPointF, r: float) -> None:
    painter.drawEllipse(at, r, r)


def _shape(*points: Point) -> Callable[[QPainter, QPointF, float], None]:
    """Give what paints a closed shape of points in radii."""

    def paint(painter: QPainter, at: QPointF, r: float) -> None:
        painter.drawPolygon(QPolygonF([QPointF(at.x() + x * r, at.y() + y * r) for x, y in points]))

    return paint


_SHAPES: Final[tuple[Callable[[QPainter, QPointF, float], None], ...]] = (
    _circle,
    _shape((-0.9, -0.9), (0.9, -0.9), (0.9, 0.9), (-0.9, 0.9)),
    _shape((0, -1.2), (1.1, 0.8), (-1.1, 0.8)),
    _shape((0, -1.3), (1.1, 0), (0, 1.3), (-1.1, 0)),
    _shape((0, 1.2), (1.1, -0.8), (-1.1, -0.8)),
    _shape((-0.5, -1.1), (0.5, -1.1), (1.1, 0), (0.5, 1.1), (-0.5, 1.1), (-1.1, 0)),
)


class TrialPlotView(QWidget):
    """Shows a trial's drawing; its words are for whoever hears it."""

    def __init__(self) -> None:
        super().__init__()
        self.plot: TrialPlot | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_plot(self, plot: TrialPlot | None) -> None:
        """Draw this; nothing at all for None."""
        self.plot = plot
        self.setVisible(plot is not None and bool(plot.dots))
        self.setAccessibleName(plot.says if plot is not None else "")
        self.setToolTip(plot.says if plot is not None else "")
        self.update()

    @override
    def sizeHint(self) -> QSize:
        line = theme().metrics.line
        return QSize(round(line * 30), round(line * 20))

    @override
    def minimumSizeHint(self) -> QSize:
        line = theme().metrics.line
        return QSize(round(line * 14), round(line * 13))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        if self.plot is None:
            return
        painter = QPainter(self)
        letters = QFont(theme().font("small"))
        em = QFontMetricsF(letters).ascent()
        Drawing(self.plot, QRectF(self.rect()), em, screen_ink()).paint(painter)
        painter.end()
