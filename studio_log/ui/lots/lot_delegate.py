"""Paints one row of the lot list: code, name, doing, need, and the strip of its steps."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import (
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget
from typing_extensions import override

from studio_log.domain.methods import StepKind
from studio_log.services.questions import LotLine
from studio_log.ui.lots.lot_model import LINE_ROLE
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Colours, KindColours, Theme
from studio_log.ui.widgets.parts import URGENT_INK, sized

EDGE: Final = 4
PAD: Final = 14
GAP: Final = 4
_WRAP: Final = int(Qt.TextFlag.TextWordWrap)
_ROOM: Final = 100_000
Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True)
class RowPlaces:
    """Where everything of a row stands, from the row's upper left corner."""

    code: QRect
    name: QRect
    doing: QRect
    need: QRect
    strip: QRect
    height: int


def places(line: LotLine, font: QFont, width: int) -> RowPlaces:
    """Lay a row out: the name wraps; the need stands beside the doing, below where narrow."""
    bold = QFontMetrics(sized(font, 1.0, bold=True))
    plain = QFontMetrics(font)
    left, room = PAD, max(width - 2 * PAD, 40)
    code_wide = bold.horizontalAdvance(line.code)
    name_left = code_wide + plain.horizontalAdvance("  ")
    name_high = _high(plain, line.name, room - name_left)
    name = QRect(left + name_left, PAD - 4, room - name_left, max(name_high, bold.height()))
    code = QRect(left, name.top(), code_wide + 2, bold.height())
    top = name.bottom() + 1 + GAP
    doing, need, bottom = _second_line(line, plain, bold, QRect(left, top, room, 0))
    strip_high = max(plain.height() // 3, 6)
    strip = QRect(left, bottom + GAP + 3, room, strip_high)
    return RowPlaces(code, name, doing, need, strip, strip.bottom() + 1 + PAD - 2)


def _second_line(
    line: LotLine, plain: QFontMetrics, bold: QFontMetrics, area: QRect
) -> tuple[QRect, QRect, int]:
    wide = bold.horizontalAdvance(line.need) + 2 if line.need else 0
    gap = plain.horizontalAdvance("  ")
    beside = plain.horizontalAdvance(line.doing) + gap + wide <= area.width()
    if beside or not line.need:
        high = _high(plain, line.doing, area.width())
        doing = QRect(area.left(), area.top(), area.width() - wide, high)
        need = QRect(area.left() + area.width() - wide, area.top(), wide, high)
        return doing, need, area.top() + high
    doing_high = _high(plain, line.doing, area.width())
    need_high = _high(bold, line.need, area.width())
    doing = QRect(area.left(), area.top(), area.width(), doing_high)
    need = QRect(area.left(), area.top() + doing_high + 2, area.width(), need_high)
    return doing, need, need.bottom() + 1


def _high(metrics: QFontMetrics, text: str, width: int) -> int:
    box = metrics.boundingRect(QRect(0, 0, max(width, 20), _ROOM), _WRAP, text or " ")
    return int(box.height())


class LotDelegate(QStyledItemDelegate):
    """Paints lot lines; a row is as high as its words need."""

    def __init__(self, view: QWidget, parent: QObject | None = None) -> None:
        super().__init__(parent or view)
        self._view = view
        self._tallest = ((0, ""), 0)
        """Width and letters, and the tallest row known at them: a long list has one height."""
        self._measured: dict[str, LotLine] = {}
        """The rows that were measured so."""

    @override
    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        line = index.data(LINE_ROLE)
        width = self._width()
        if not isinstance(line, LotLine):
            return QSize(width, 0)
        height = places(line, self._view.font(), width).height
        if isinstance(self._view, QListView) and self._view.uniformItemSizes():
            height = self._common(width, height)
        return QSize(width, height)

    def _common(self, width: int, height: int) -> int:
        known = getattr(self._view, "known_lines", lambda: ())()
        at = (width, self._view.font().key())
        if self._tallest[0] != at:
            self._tallest, self._measured = (at, 0), {}
        new = [line for line in known if self._measured.get(line.code) is not line]
        high = [places(line, self._view.font(), width).height for line in new]
        self._measured = {line.code: line for line in known}
        self._tallest = (at, max(self._tallest[1], height, *high))
        return self._tallest[1]

    @override
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        line = index.data(LINE_ROLE)
        if not isinstance(line, LotLine):
            return
        rect: QRect = option.rect
        state = option.state
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        focused = bool(state & QStyle.StateFlag.State_HasFocus)
        painter.save()
        self._ground(painter, rect, chosen=chosen, focused=focused)
        painter.translate(rect.topLeft())
        self._row(painter, line, places(line, self._view.font(), rect.width()))
        painter.restore()

    def _width(self) -> int:
        viewport = getattr(self._view, "viewport", None)
        return int(viewport().width()) if viewport is not None else self._view.width()

    def _ground(self, painter: QPainter, rect: QRect, *, chosen: bool, focused: bool) -> None:
        c = theme().colours
        painter.fillRect(rect, c.raised if chosen else c.ground)
        if chosen:
            painter.fillRect(QRect(rect.left(), rect.top(), EDGE, rect.height()), c.accent)
        painter.fillRect(QRect(rect.left() + PAD, rect.bottom(), rect.width() - 2 * PAD, 1), c.line)
        if focused:
            painter.setPen(QPen(c.focus, 2))
            painter.drawRect(rect.adjusted(1, 1, -2, -2))

    def _row(self, painter: QPainter, line: LotLine, at: RowPlaces) -> None:
        c = theme().colours
        font = self._view.font()
        bold = sized(font, 1.0, bold=True)
        right = int(Qt.AlignmentFlag.AlignRight if at.need.top() == at.doing.top() else 0)
        tone = getattr(c, URGENT_INK.get(line.urgency, "accent_ink"))
        for words, rect, letters, ink, flags in (
            (line.code, at.code, bold, c.ink, 0),
            (line.name, at.name, font, c.ink, _WRAP),
            (line.doing, at.doing, font, c.soft, _WRAP),
            (line.need, at.need, bold, tone, _WRAP | right),
        ):
            painter.setFont(letters)
            painter.setPen(ink)
            painter.drawText(rect, flags, words)
        paint_strip(painter, line.strip, at.strip, theme())


def paint_strip(
    painter: QPainter, strip: tuple[tuple[StepKind, str], ...], rect: QRect, look: Theme
) -> None:
    """Paint the steps side by side: done full, running half, ahead a pale outline."""
    if not strip:
        return
    gap = 2.0 if len(strip) > 14 else 3.0
    wide = (rect.width() - gap * (len(strip) - 1)) / len(strip)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for at, (kind, state) in enumerate(strip):
        box = QRectF(rect.left() + at * (wide + gap), rect.top(), wide, rect.height())
        _segment(painter, box, state, (look.kind(kind), look.colours))


def _segment(painter: QPainter, box: QRectF, state: str, look: tuple[KindColours, Colours]) -> None:
    hue, c = look
    inner = box.adjusted(0.5, 0.5, -0.5, -0.5)
    if state == "done":
        # The edge keeps pale hues, such as milk's, from looking undone.
        painter.setPen(QPen(hue.edge, 1))
        painter.setBrush(hue.fill)
        painter.drawRoundedRect(inner, 2, 2)
        return
    running = state == "running"
    painter.setBrush(hue.tint if running else Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(hue.edge if running else c.outline if state == "open" else c.line, 1))
    painter.drawRoundedRect(inner, 2, 2)
    if running:
        painter.fillRect(QRectF(box.left(), box.top(), box.width() / 2, box.height()), hue.fill)
    elif state == "skipped":
        middle = box.center().y()
        painter.setPen(QPen(c.outline, 1.5))
        painter.drawLine(QPointF(box.left(), middle), QPointF(box.right(), middle))
