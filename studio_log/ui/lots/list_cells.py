"""What stands in the cells of the list as a table, and how each is painted."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRect, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.questions import LotLine
from studio_log.services.search import COLUMNS
from studio_log.ui.lots.list_order import Order, arrow
from studio_log.ui.lots.lot_model import LINE_ROLE, LotModel, spoken
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import URGENT_INK

Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True)
class Column:
    """A column: its heading, the order it gives ("" for none), its width in line heights."""

    heading: str
    sort: str
    wide: float
    figures: bool = False
    """Whether it stands at the right, as figures do."""


TABLE: Final[Mapping[str, Column]] = {
    "code": Column(tr_later("Code"), "code", 6.2),
    "name": Column(tr_later("Name"), "name", 13),
    "state": Column(tr_later("State"), "need", 5),
    "next": Column(tr_later("Next"), "need", 8),
    "when": Column(tr_later("When"), "need", 8),
    "fibre": Column(tr_later("Fibre"), "fibre", 7),
    "weight": Column(tr_later("Weight"), "weight", 6, figures=True),
    "coats": Column(tr_later("Coats"), "coats", 5, figures=True),
    "age": Column(tr_later("Cure age"), "age", 6, figures=True),
    "vessel": Column(tr_later("Vessel"), "", 5, figures=True),
    "shelf": Column(tr_later("Shelf"), "shelf", 7),
}
URGENT: Final = ("next", "when")


class LotCells(QAbstractTableModel):
    """The rows of a LotModel, cell by cell."""

    def __init__(self, lots: LotModel) -> None:
        super().__init__(lots)
        self._lots = lots
        self._order: Order = ("need", False)
        self._giving = -1
        lots.modelAboutToBeReset.connect(self.beginResetModel)
        lots.modelReset.connect(self.endResetModel)
        lots.dataChanged.connect(self._changed)

    @override
    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else self._lots.rowCount()

    @override
    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(COLUMNS)

    @override
    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        say, row = SAYS.get(role), index.row()
        if say is None or row >= self._lots.rowCount():
            return None
        return say(self._lots.line_at(row), COLUMNS[index.column()])

    @override
    def headerData(
        self, section: int, way: Qt.Orientation, role: int = int(Qt.ItemDataRole.DisplayRole)
    ) -> Any:
        column = TABLE[COLUMNS[section]] if way is Qt.Orientation.Horizontal else None
        if column is None:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(column)
        if role == Qt.ItemDataRole.DisplayRole:
            return tr(column.heading) + (arrow(self._order) if section == self._giving else "")
        return None

    def show_order(self, order: Order, giving: int) -> None:
        """Mark the column that gives the order, -1 for none."""
        self._order, self._giving = order, giving
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(COLUMNS) - 1)

    def _changed(self, first: QModelIndex, last: QModelIndex) -> None:
        end = self.index(last.row(), len(COLUMNS) - 1)
        self.dataChanged.emit(self.index(first.row(), 0), end)


def cell(line: LotLine, name: str) -> str:
    """Give what one cell says."""
    if name in ("code", "name"):
        return str(getattr(line, name))
    return line.cells.get(name, "")


def _side(column: Column) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column.figures else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


def _aloud(line: LotLine, name: str) -> str:
    """Say a cell with its heading, as a screen reader reads it."""
    nothing = tr("nothing")
    return f"{tr(TABLE[name].heading)}: {cell(line, name) or nothing}"


SAYS: Final[Mapping[int, Callable[[LotLine, str], Any]]] = {
    LINE_ROLE: lambda line, _name: line,
    Qt.ItemDataRole.DisplayRole: cell,
    Qt.ItemDataRole.ToolTipRole: lambda line, _name: spoken(line),
    Qt.ItemDataRole.AccessibleTextRole: _aloud,
}
"""What a cell gives for each role that Qt asks for; how it looks is the painter's."""


class CellPainter(QStyledItemDelegate):
    """Paints a cell: the code bold, what presses in its colour. Qt alone would ask seven times."""

    @override
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        line = index.data(LINE_ROLE)
        if not isinstance(line, LotLine):
            return
        name, now, state = COLUMNS[index.column()], theme(), option.state
        rect: QRect = option.rect
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, now.colours.chosen)
        urgent = name in URGENT
        ink = URGENT_INK.get(line.urgency, "accent_ink") if urgent else "ink"
        painter.setPen(getattr(now.colours, ink))
        painter.setFont(now.font(bold=urgent or name == "code"))
        room = rect.adjusted(now.metrics.m, 0, -now.metrics.m, 0)
        letters = painter.fontMetrics()
        said = letters.elidedText(cell(line, name), Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(room, _side(TABLE[name]), said)
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(now.colours.focus, now.metrics.focus))
            painter.drawRect(rect.adjusted(1, 1, -2, -2))
