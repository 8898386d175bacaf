"""Paints a method's steps to scale, one row a step, with soft ends hatched."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPen

from studio_log.present.method_drawing import DrawnStep, hours_words, scale_lines, whole_hours
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Theme

LEAST_BAR: Final = 3.0
"""A step of a minute is still seen, in pixels."""
HATCH: Final = 6.0
"""Pixels between two lines of a soft end."""
FOLD: Final = 4.2
"""Width of a folded rest, in line heights."""
MOST_TITLE: Final = 0.36
"""Share of the width that the titles may take."""


class _Sheet:
    """Where hours and rows lie on a picture of one width."""

    def __init__(self, rows: Sequence[DrawnStep], width: float, hours: float, look: Theme) -> None:
        self.look = look
        line = look.metrics.line
        letters = QFontMetricsF(look.font("small"))
        widest = max((letters.horizontalAdvance(row.title) for row in rows), default=0.0)
        self.row = line * 1.5
        self.head = line * 1.4
        self.titles = min(widest + line, width * MOST_TITLE)
        fold = FOLD * line if any(row.folded for row in rows) else 0.0
        self.hours = max(hours, 1e-9)
        self.span = max(width - self.titles - fold - line * 0.5, line)
        self.right = width - line * 0.5
        self.height = self.head + self.row * len(rows) + line * 0.4

    def x(self, hours: float) -> float:
        """Give the place of a moment."""
        return self.titles + self.span * hours / self.hours

    def bar(self, row: int, start: float, end: float) -> QRectF:
        """Give the place of a bar; never narrower than can be seen."""
        left, right = self.x(start), self.x(end)
        top = self.head + self.row * row + self.row * 0.16
        return QRectF(left, top, max(right - left, LEAST_BAR), self.row * 0.58)


def drawing(
    rows: Sequence[DrawnStep],
    width: int,
    *,
    hours: float | None = None,
    ratio: float = 1.0,
    chosen: int = -1,
    look: Theme | None = None,
) -> QImage:
    """Give the picture, `width` logical pixels wide; `hours` makes two methods one scale.

    The row `chosen` stands on a ground of its own; `look` is for paper, else as the window.
    """
    sheet = _Sheet(rows, width, hours or whole_hours(rows), look or theme())
    size = QSize(width, round(sheet.height))
    image = QImage(size * ratio, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if 0 <= chosen < len(rows):
        ground = QRectF(0, sheet.head + sheet.row * chosen, width, sheet.row)
        painter.fillRect(ground, sheet.look.colours.chosen)
    _draw_scale(painter, sheet)
    for number, row in enumerate(rows):
        _draw_title(painter, sheet, number, row)
        draw = _draw_fold if row.folded else _draw_bar
        draw(painter, sheet, number, row)
    painter.end()
    return image


def row_at(rows: Sequence[DrawnStep], width: int, y: float) -> int | None:
    """Give the row at a height of the picture, None above and below them."""
    sheet = _Sheet(rows, width, 1.0, theme())
    row = int((y - sheet.head) // sheet.row)
    return row if 0 <= row < len(rows) else None


def _draw_scale(painter: QPainter, sheet: _Sheet) -> None:
    colours = sheet.look.colours
    painter.setFont(sheet.look.font("small"))
    letters = QFontMetricsF(painter.font())
    free = -1e9
    for hours in scale_lines(sheet.hours):
        x = sheet.x(hours)
        painter.setPen(QPen(colours.line, 1))
        painter.drawLine(QPointF(x, sheet.head), QPointF(x, sheet.height))
        said = hours_words(hours)
        half = letters.horizontalAdvance(said) / 2
        if x - half < free:
            continue  # the line stands; its words would touch those before
        free = x + half + letters.averageCharWidth()
        painter.setPen(colours.soft)
        place = QRectF(x - half - 2, 0, 2 * half + 4, sheet.head)
        painter.drawText(place, Qt.AlignmentFlag.AlignCenter, said)


def _draw_title(painter: QPainter, sheet: _Sheet, number: int, row: DrawnStep) -> None:
    painter.setFont(sheet.look.font("small"))
    painter.setPen(sheet.look.colours.ink)
    gap = sheet.look.metrics.line * 0.6
    place = QRectF(0, sheet.head + sheet.row * number, sheet.titles - gap, sheet.row * 0.9)
    letters = QFontMetricsF(painter.font())
    said = letters.elidedText(row.title, Qt.TextElideMode.ElideRight, place.width())
    painter.drawText(place, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, said)


def _draw_bar(painter: QPainter, sheet: _Sheet, number: int, row: DrawnStep) -> None:
    hue = sheet.look.kind(row.kind)
    sure = sheet.bar(number, row.start, row.earliest)
    soft = sheet.bar(number, row.earliest, row.latest)
    painter.setPen(QPen(hue.edge, 1))
    painter.setBrush(hue.fill)
    painter.drawRoundedRect(sure, 3, 3)
    if row.latest > row.earliest:
        painter.setBrush(hue.tint)
        painter.drawRect(soft)
        _hatch(painter, soft)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(soft)
        aim = sheet.x(row.aim)
        painter.setPen(QPen(sheet.look.colours.ink, 2))
        painter.drawLine(QPointF(aim, soft.top() - 2), QPointF(aim, soft.bottom() + 2))
    _draw_tends(painter, sheet, sure.bottom(), row, sheet.look.colours.ink)
    _draw_length(painter, sheet, sure.united(soft), row.length)


def _draw_length(painter: QPainter, sheet: _Sheet, bar: QRectF, said: str) -> None:
    """Write how long it lasts behind its bar, or before it where there is no room behind."""
    painter.setFont(sheet.look.font("small"))
    painter.setPen(sheet.look.colours.soft)
    wide = QFontMetricsF(painter.font()).horizontalAdvance(said)
    gap = sheet.look.metrics.line * 0.4
    left = bar.right() + gap
    if left + wide > sheet.right:
        left = bar.left() - gap - wide
    if left >= sheet.titles:
        place = QRectF(left, bar.top(), wide + 1, bar.height())
        painter.drawText(place, Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip, said)


def _hatch(painter: QPainter, place: QRectF) -> None:
    """Draw slanted lines; Qt's own pattern would be as fine as the printer's dots."""
    painter.save()
    painter.setClipRect(place)
    x = place.left() - place.height()
    while x < place.right():
        painter.drawLine(QPointF(x, place.bottom()), QPointF(x + place.height(), place.top()))
        x += HATCH
    painter.restore()


def _draw_tends(
    painter: QPainter, sheet: _Sheet, below: float, row: DrawnStep, ink: QColor
) -> None:
    """Draw each tending as a stitch under its bar; where they would touch, fewer."""
    painter.setPen(QPen(ink, 2))
    last = -1e9
    for at in row.tends:
        x = sheet.x(at)
        if x - last >= 7:
            painter.drawLine(QPointF(x - 2, below + 4), QPointF(x + 2, below + 4))
            last = x


def _draw_fold(painter: QPainter, sheet: _Sheet, number: int, row: DrawnStep) -> None:
    hue = sheet.look.kind(row.kind)
    place = sheet.bar(number, row.start, row.start)
    place.setRight(sheet.right)
    painter.setPen(QPen(hue.edge, 1))
    painter.setBrush(hue.tint)
    painter.drawRoundedRect(place, 3, 3)
    for at in (0.2, 0.8):
        for shift in (-3.0, 0.0, 3.0):
            x = place.left() + place.width() * at + shift
            painter.drawLine(QPointF(x, place.top()), QPointF(x, place.bottom()))
    painter.setPen(sheet.look.colours.ink)
    painter.setFont(sheet.look.font("small", bold=True))
    painter.drawText(place, Qt.AlignmentFlag.AlignCenter, row.folded)
