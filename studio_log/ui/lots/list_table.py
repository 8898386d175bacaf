"""The lots as a table: a line each, chosen columns, a header that puts them in order."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QMenu, QTableView
from typing_extensions import override

from studio_log.services.questions import LotLine
from studio_log.services.search import COLUMNS
from studio_log.ui.lots.list_order import Order, arrow
from studio_log.ui.lots.lot_model import LINE_ROLE, LotModel, spoken
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import URGENT_INK, em

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
    "code": Column("Code", "code", 6.2),
    "name": Column("Name", "name", 13),
    "state": Column("State", "need", 5),
    "next": Column("Next", "need", 8),
    "when": Column("When", "need", 8),
    "fibre": Column("Fibre", "fibre", 7),
    "weight": Column("Weight", "weight", 6, figures=True),
    "coats": Column("Coats", "coats", 5, figures=True),
    "age": Column("Cure age", "age", 6, figures=True),
    "vessel": Column("Vessel", "", 5, figures=True),
    "shelf": Column("Shelf", "shelf", 7),
}
URGENT: Final = ("next", "when")
MOVED_MS: Final = 400


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
            return column.heading + (arrow(self._order) if section == self._giving else "")
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


def _letters(_line: LotLine, name: str) -> QFont | None:
    return theme().font(bold=True) if name == "code" or name in URGENT else None


def _ink(line: LotLine, name: str) -> QColor | None:
    """Give the colour of what presses; the words say it too."""
    ink = URGENT_INK.get(line.urgency, "accent_ink")
    return getattr(theme().colours, ink) if name in URGENT else None


SAYS: Final[Mapping[int, Callable[[LotLine, str], Any]]] = {
    LINE_ROLE: lambda line, _name: line,
    Qt.ItemDataRole.DisplayRole: cell,
    Qt.ItemDataRole.ToolTipRole: lambda line, _name: spoken(line),
    Qt.ItemDataRole.AccessibleTextRole: (
        lambda line, name: f"{TABLE[name].heading}: {cell(line, name) or 'nothing'}"
    ),
    Qt.ItemDataRole.TextAlignmentRole: lambda _line, name: _side(TABLE[name]),
    Qt.ItemDataRole.FontRole: _letters,
    Qt.ItemDataRole.ForegroundRole: _ink,
}
"""What a cell gives for each role that Qt asks for."""


class LotTable(QTableView):
    """Enter opens a lot; Space is left to the bench; columns are moved by their heads."""

    opened = Signal()
    order_wanted = Signal(str)
    columns_moved = Signal(tuple)
    columns_asked = Signal(QPoint)

    def __init__(self, lots: LotModel) -> None:
        super().__init__()
        self.cells = LotCells(lots)
        self.setModel(self.cells)
        self.setObjectName("lottable")
        self.setAccessibleName("Lots as a table")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setCornerButtonEnabled(False)
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head = self.horizontalHeader()
        head.setSectionsMovable(True)
        head.setSectionsClickable(True)
        head.setHighlightSections(False)
        head.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self._moved = QTimer(self, singleShot=True, interval=MOVED_MS)
        self._moved.timeout.connect(self._tell_moved)
        head.sectionClicked.connect(self._clicked)
        head.sectionMoved.connect(self._moved.start)
        head.customContextMenuRequested.connect(self._ask_columns)
        self.fit()

    def fit(self) -> None:
        """Give rows and columns the size of the letters in use."""
        self.verticalHeader().setDefaultSectionSize(round(theme().metrics.line * 1.7))
        for section, name in enumerate(COLUMNS):
            self.horizontalHeader().resizeSection(section, em(self, TABLE[name].wide))

    def show_columns(self, names: Sequence[str]) -> None:
        """Show these columns in this order."""
        head = self.horizontalHeader()
        head.blockSignals(True)
        for section, name in enumerate(COLUMNS):
            head.setSectionHidden(section, name not in names)
        for place, name in enumerate(names):
            head.moveSection(head.visualIndex(COLUMNS.index(name)), place)
        head.blockSignals(False)
        self.viewport().update()

    def show_order(self, order: Order) -> None:
        """Show by its heading which column gives the order, and which way."""
        name = "code" if order[0] == "newest" else order[0]
        head = self.horizontalHeader()
        giving = [at for at, one in enumerate(COLUMNS) if TABLE[one].sort == name]
        shown = (at for at in giving if not head.isSectionHidden(at))
        self.cells.show_order(order, next(shown, -1))

    def wanted(self) -> int:
        """Give the width at which every column is seen whole."""
        head = self.horizontalHeader()
        return head.length() + self.verticalScrollBar().sizeHint().width() + 6

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            event.ignore()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
        else:
            super().keyPressEvent(event)

    def _clicked(self, section: int) -> None:
        if sort := TABLE[COLUMNS[section]].sort:
            self.order_wanted.emit(sort)

    def _tell_moved(self) -> None:
        head = self.horizontalHeader()
        shown = [at for at in range(len(COLUMNS)) if not head.isSectionHidden(at)]
        shown.sort(key=head.visualIndex)
        self.columns_moved.emit(tuple(COLUMNS[at] for at in shown))

    def _ask_columns(self, at: QPoint) -> None:
        self.columns_asked.emit(self.horizontalHeader().mapToGlobal(at))


def fill_columns(menu: QMenu, shown: Sequence[str]) -> None:
    """Fill a menu with the columns, those shown ticked; the last one stays."""
    for name, column in TABLE.items():
        action = menu.addAction(column.heading)
        action.setCheckable(True)
        action.setChecked(name in shown)
        action.setEnabled(name not in shown or len(shown) > 1)
        action.setData(name)
