"""Paints marks that were laid out in mm, alike on screen, in a PDF and on paper."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from studio_log.present.tag_marks import (
    CircleMark,
    FrameMark,
    LineMark,
    Mark,
    QrMark,
    TextMark,
    TextSize,
)

INK = QColor(0, 0, 0)
"""A tag is ink on paper whatever the window's colours are."""
_FAMILIES = ["DejaVu Sans", "Noto Sans", "Liberation Sans", "Segoe UI", "Helvetica Neue"]
_EM = 200
"""Pixels to the em at which text is measured and drawn before it is scaled, so that
widths are the same at every resolution."""
_ROW_OVERLAP = 0.02


def tag_font(*, bold: bool) -> QFont:
    """Give the tag's font, the same with and without a window."""
    font = QFont()
    font.setFamilies(_FAMILIES)
    font.setStyleHint(QFont.StyleHint.SansSerif)
    font.setPixelSize(_EM)
    font.setBold(bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    # A joined "fi" would come out of the PDF as one odd letter when words are searched for.
    font.setFeature(QFont.Tag("liga"), 0)
    return font


class FontMeasure:
    """Measures text in the tag's font. Needs a QGuiApplication."""

    def __init__(self) -> None:
        self._metrics = {bold: QFontMetricsF(tag_font(bold=bold)) for bold in (False, True)}
        self._known: dict[tuple[str, bool], tuple[float, float, float]] = {}

    def __call__(self, text: str, size: float, *, bold: bool) -> TextSize:
        """Give the room of a text, ink that reaches out of its advance with it."""
        key = (text, bold)
        if key not in self._known:
            metrics = self._metrics[bold]
            ink = metrics.tightBoundingRect(text)
            width = max(metrics.horizontalAdvance(text), ink.right())
            self._known[key] = (width, max(0.0, -ink.top()), max(0.0, ink.bottom()))
        width, ascent, descent = (value * size / _EM for value in self._known[key])
        return TextSize(width, ascent, descent)


def paint_tag(
    painter: QPainter,
    marks: Sequence[Mark],
    device_per_mm: float,
    at: tuple[float, float] = (0.0, 0.0),
) -> None:
    """Paint the marks of a tag whose top left corner lies `at` mm from the device's."""
    painter.save()
    painter.scale(device_per_mm, device_per_mm)
    painter.translate(*at)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    for mark in marks:
        _paint(painter, mark)
    painter.restore()


def _paint(painter: QPainter, mark: Mark) -> None:
    match mark:
        case TextMark():
            _text(painter, mark)
        case QrMark():
            painter.fillPath(_qr_path(mark), INK)
        case LineMark():
            painter.setPen(_pen(mark.width))
            painter.drawLine(QPointF(mark.x1, mark.y1), QPointF(mark.x2, mark.y2))
        case FrameMark():
            box = mark.box.grown(-mark.width / 2)
            painter.setPen(_pen(mark.width))
            painter.drawRect(QRectF(box.x, box.y, box.width, box.height))
        case CircleMark():
            radius = mark.radius - mark.width / 2
            painter.setPen(_pen(mark.width))
            painter.drawEllipse(QPointF(mark.x, mark.y), radius, radius)


def _pen(width: float) -> QPen:
    pen = QPen(INK, width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return pen


def _text(painter: QPainter, mark: TextMark) -> None:
    painter.save()
    painter.translate(mark.x, mark.baseline)
    painter.scale(mark.size / _EM, mark.size / _EM)
    painter.setFont(tag_font(bold=mark.bold))
    painter.setPen(INK)
    painter.drawText(QPointF(0, 0), mark.text)
    painter.restore()


def _qr_path(mark: QrMark) -> QPainterPath:
    """Give the dark runs as one path; rows overlap a little, so that no hairline shows."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    last = mark.symbol.modules - 1
    for run in mark.symbol.runs:
        height = 1 + _ROW_OVERLAP if run.row < last else 1
        path.addRect(
            mark.x + run.column * mark.module,
            mark.y + run.row * mark.module,
            run.length * mark.module,
            height * mark.module,
        )
    return path
