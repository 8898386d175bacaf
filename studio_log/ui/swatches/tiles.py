"""The swatches as a grid of tiles in their true colour: the model behind it, and its painter."""

from typing import Any, Final

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPen
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.swatch_plane import told
from studio_log.services.swatches import SwatchesThere, SwatchShown
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import em, sized

SHOWN: Final = Qt.ItemDataRole.UserRole
PAGE: Final = 400
"""Swatches asked for at once."""
WIDE, HIGH = 8.4, 6.6
"""Of a tile, in line heights."""
Index = QModelIndex | QPersistentModelIndex


class SwatchModel(QAbstractListModel):
    """The swatches that are there so far; more are asked for when the end comes into sight."""

    more_wanted = Signal(int)
    """How many there are already."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.lines: list[SwatchShown] = []
        self.total = 0
        self._asked = -1

    def show_first(self, there: SwatchesThere) -> None:
        """Show a new list."""
        self.beginResetModel()
        self.lines, self.total, self._asked = list(there.lines), there.total, -1
        self.endResetModel()

    def add(self, there: SwatchesThere) -> None:
        """Add what was asked for further."""
        if not there.lines:
            self.total = len(self.lines)
            return
        self.beginInsertRows(QModelIndex(), len(self.lines), len(self.lines) + len(there.lines) - 1)
        self.lines += there.lines
        self.total = there.total
        self.endInsertRows()

    def row_of(self, code: str) -> int:
        """Give the row of a swatch, -1 where it is not there."""
        return next((at for at, one in enumerate(self.lines) if one.code == code), -1)

    @override
    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.lines)

    @override
    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if not index.isValid():
            return None
        line = self.lines[index.row()]
        if role == SHOWN:
            return line
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{line.code} {line.name}".strip()
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return told(line)
        return None

    @override
    def canFetchMore(self, parent: Index) -> bool:
        return not parent.isValid() and len(self.lines) < self.total

    @override
    def fetchMore(self, parent: Index) -> None:
        if self._asked != len(self.lines):
            self._asked = len(self.lines)
            self.more_wanted.emit(len(self.lines))


class TilePainter(QStyledItemDelegate):
    """Paints a tile: the colour whole and flat, the words below it and never on it."""

    @override
    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        height = option.fontMetrics.height()
        return QSize(round(WIDE * height), round(HIGH * height))

    @override
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        line: SwatchShown = index.data(SHOWN)
        palette = theme().palette
        painter.save()
        em_ = option.fontMetrics.height()
        box: QRect = option.rect.adjusted(4, 4, -4, -4)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(option.rect.adjusted(1, 1, -1, -1), QColor(palette.chosen))
        cloth = QRect(box.left() + 3, box.top() + 3, box.width() - 6, box.height() - 2 * em_ - 8)
        paint_cloth(painter, cloth, line)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(QColor(palette.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box)
        below = QRect(cloth.left(), cloth.bottom() + 3, cloth.width(), em_)
        _words(painter, below, option.font, line.code, palette.ink, bold=True)
        below.translate(0, em_)
        name = line.name or line.lot_name or line.lot
        _words(painter, below, option.font, name, palette.soft, bold=False)
        painter.restore()


def paint_cloth(painter: QPainter, box: QRect, line: SwatchShown) -> None:
    """Paint a swatch's colour; hatched where none was read, notched where it is relative only."""
    palette = theme().palette
    painter.setPen(QPen(QColor(palette.line), 1))
    if line.shown:
        painter.setBrush(QColor(line.shown))
        painter.drawRect(box)
    else:
        painter.setBrush(QColor(palette.raised))
        painter.drawRect(box)
        painter.fillRect(box, _hatch(palette.line))
        painter.setPen(QColor(palette.soft))
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(box.adjusted(4, 2, -4, -2), flags, tr("not read"))
    if line.source == "relative":
        _mark(painter, box, "~")
    elif line.beyond:
        _mark(painter, box, "≈")


def _hatch(colour: str) -> QBrush:
    return QBrush(QColor(colour), Qt.BrushStyle.BDiagPattern)


def _mark(painter: QPainter, box: QRect, sign: str) -> None:
    """Put a small sign on a ground of its own into the corner: read on any colour."""
    palette = theme().palette
    side = round(painter.fontMetrics().height() * 1.1)
    corner = QRect(box.right() - side, box.top() + 1, side, side)
    painter.fillRect(corner, QColor(palette.raised))
    painter.setPen(QColor(palette.ink))
    painter.drawText(corner, Qt.AlignmentFlag.AlignCenter, sign)


def _words(
    painter: QPainter, box: QRect, font: QFont, text: str, colour: str, *, bold: bool
) -> None:
    painter.setFont(sized(font, 1.0 if bold else 0.88, bold=bold))
    painter.setPen(QColor(colour))
    metrics = painter.fontMetrics()
    cut = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, cut)


class SwatchGrid(QListView):
    """The grid; arrows walk it, Enter opens nothing: the chosen one stands beside it."""

    chosen = Signal(str)
    """The code of the chosen swatch, "" for none."""

    def __init__(self, model: SwatchModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self._model = model
        self.setItemDelegate(TilePainter(self))
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setMovement(QListView.Movement.Static)
        self.setUniformItemSizes(True)
        self.setSpacing(2)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(tr("Swatches"))
        self.setMinimumWidth(em(self, WIDE + 2))

    def choose(self, code: str) -> None:
        """Choose a swatch of the list; the first where it is not in it."""
        row = max(self._model.row_of(code), 0)
        if self._model.lines:
            index = self._model.index(row)
            self.setCurrentIndex(index)
            self.scrollTo(index)

    @override
    def currentChanged(self, current: Index, previous: Index) -> None:
        super().currentChanged(current, previous)
        line = current.data(SHOWN) if current.isValid() else None
        self.chosen.emit(line.code if line is not None else "")
