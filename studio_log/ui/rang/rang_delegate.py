"""Paints a cell of “What rang”: wrapped words, and an ellipsis where some do not fit."""

from typing import Final

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QTextLayout, QTextOption
from PySide6.QtWidgets import QAbstractItemView, QStyledItemDelegate, QStyleOptionViewItem
from typing_extensions import override

from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Colours

PAD: Final = 8
"""Left and right of the words, as the heading has it."""
ABOVE: Final = 5
Index = QModelIndex | QPersistentModelIndex


def row_height(line: int, lines: int) -> int:
    """Give the height of a row of so many lines of text."""
    return lines * line + 2 * ABOVE


def wrapped(text: str, font: QFont, width: int, most: int) -> list[str]:
    """Break a text into at most so many lines; the last says by an ellipsis that more follows."""
    layout = QTextLayout(text, font)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    layout.setTextOption(option)
    layout.beginLayout()
    lines: list[str] = []
    line = layout.createLine()
    while line.isValid() and len(lines) < most:
        line.setLineWidth(max(width, 20))
        start = line.textStart()
        last = len(lines) == most - 1
        lines.append(text[start:] if last else text[start : start + line.textLength()])
        line = layout.createLine()
    layout.endLayout()
    if len(lines) == most:
        elide = Qt.TextElideMode.ElideRight
        lines[-1] = QFontMetrics(font).elidedText(lines[-1], elide, max(width, 20))
    return lines


class RangDelegate(QStyledItemDelegate):
    """Words at the top left of their cell; the chosen row has a ground and an edge."""

    def __init__(self, view: QAbstractItemView) -> None:
        super().__init__(view)
        self._view = view

    @override
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        rect: QRect = option.rect
        colours = theme().colours
        chosen = index.row() == self._view.currentIndex().row()
        painter.save()
        painter.fillRect(rect, self._ground(index.row(), colours, chosen=chosen))
        painter.fillRect(rect.adjusted(0, rect.height() - 1, 0, 0), colours.line)
        if chosen and self._view.hasFocus():
            painter.fillRect(QRect(rect.left(), rect.top(), rect.width(), 2), colours.focus)
            painter.fillRect(QRect(rect.left(), rect.bottom() - 1, rect.width(), 2), colours.focus)
        ink = index.data(Qt.ItemDataRole.ForegroundRole)
        painter.setPen(ink if isinstance(ink, QColor) else colours.ink)
        self._words(painter, rect, str(index.data(Qt.ItemDataRole.DisplayRole) or ""))
        painter.restore()

    def _ground(self, row: int, colours: Colours, *, chosen: bool) -> QColor:
        if chosen:
            return colours.chosen
        return colours.panel if row % 2 else colours.raised

    def _words(self, painter: QPainter, rect: QRect, text: str) -> None:
        font = self._view.font()
        metrics = QFontMetrics(font)
        high = metrics.height()
        painter.setFont(font)
        most = max((rect.height() - 2 * ABOVE) // high, 1)
        for at, line in enumerate(wrapped(text, font, rect.width() - 2 * PAD, most)):
            base = rect.top() + ABOVE + at * high + metrics.ascent()
            painter.drawText(QPointF(rect.left() + PAD, base), line.rstrip())
