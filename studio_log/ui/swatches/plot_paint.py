"""The plane of swatches painted, for the window and as a picture in a file."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen

from studio_log.present.swatch_files import GRID, INK, PAPER, SOFT
from studio_log.present.swatch_plot import Dot, Label, Panel, Plot
from studio_log.ui.ink.device import need_fonts, png_of
from studio_log.ui.ink.marks import tag_font
from studio_log.ui.widgets.parts import sized

PNG_SCALE: Final = 2
LETTERS: Final = 0.78
"""Of a line's height, as in the SVG."""
_FLAGS: Final = {
    "start": Qt.AlignmentFlag.AlignLeft,
    "middle": Qt.AlignmentFlag.AlignHCenter,
    "end": Qt.AlignmentFlag.AlignRight,
}


def plot_png(plot: Plot) -> bytes:
    """Give the plot as a PNG, on white, in the inks of the SVG; may refuse."""
    need_fonts()
    image = QImage(
        round(plot.width) * PNG_SCALE, round(plot.height) * PNG_SCALE, QImage.Format.Format_RGB32
    )
    image.fill(QColor(PAPER))
    painter = QPainter(image)
    painter.scale(PNG_SCALE, PNG_SCALE)
    font = tag_font(bold=False)
    font.setPixelSize(round(LETTERS * plot.line))
    painter.setFont(font)
    paint_plot(painter, plot, (INK, SOFT, GRID))
    painter.end()
    return png_of(image)


def paint_plot(painter: QPainter, plot: Plot, inks: tuple[str, str, str]) -> None:
    """Paint every panel; `inks` are those of words, of axes, and of the grid."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for panel in plot.panels:
        _paint_grid(painter, panel, inks)
        for label in panel.labels:
            _paint_label(painter, label, inks, panel, plot)
        for dot in panel.dots:
            paint_dot(painter, dot, inks)


def _paint_grid(painter: QPainter, panel: Panel, inks: tuple[str, str, str]) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for one in panel.strokes:
        painter.setPen(QPen(QColor(inks[1] if one.strong else inks[2]), 1))
        painter.drawLine(QPointF(one.x1, one.y1), QPointF(one.x2, one.y2))
    painter.setPen(QPen(QColor(inks[2]), 1))
    for ring in panel.rings:
        painter.drawEllipse(QPointF(ring.x, ring.y), ring.radius, ring.radius)


def _paint_label(
    painter: QPainter, label: Label, inks: tuple[str, str, str], panel: Panel, plot: Plot
) -> None:
    painter.save()
    font = sized(painter.font(), 1.0 if label.strong else 0.9, bold=label.strong)
    painter.setFont(font)
    painter.setPen(QColor(inks[0] if label.strong else inks[1]))
    wide = panel.side + plot.line
    left = {"start": label.x, "middle": label.x - wide / 2, "end": label.x - wide}[label.anchor]
    box = QRectF(left, label.y - plot.line, wide, 1.3 * plot.line)
    text = painter.fontMetrics().elidedText(label.text, Qt.TextElideMode.ElideRight, round(wide))
    painter.drawText(box, _FLAGS[label.anchor] | Qt.AlignmentFlag.AlignVCenter, text)
    painter.restore()


def paint_dot(painter: QPainter, dot: Dot, inks: tuple[str, str, str]) -> None:
    """Paint one swatch in its true colour: a disc, or a ring where it is relative only."""
    at = QPointF(dot.x, dot.y)
    if dot.hollow:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor(dot.shown), dot.radius * 0.5))
        painter.drawEllipse(at, dot.radius * 0.75, dot.radius * 0.75)
        return
    painter.setPen(QPen(QColor(inks[1]), 0.8))
    painter.setBrush(QColor(dot.shown))
    painter.drawEllipse(at, dot.radius, dot.radius)
