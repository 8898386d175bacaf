"""The lots as a table: a line each, chosen columns, a head that puts them in order."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QEvent, QPoint, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QMenu, QTableView
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.search import COLUMNS
from studio_log.ui.lots.list_cells import TABLE, CellPainter, LotCells
from studio_log.ui.lots.list_order import Order
from studio_log.ui.lots.lot_model import LotModel
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import em

MOVED_MS: Final = 400


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
        self.setItemDelegate(CellPainter(self))
        self.setObjectName("lottable")
        self.setAccessibleName(tr("Lots as a table"))
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
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self.fit()

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
        action = menu.addAction(tr(column.heading))
        action.setCheckable(True)
        action.setChecked(name in shown)
        action.setEnabled(name not in shown or len(shown) > 1)
        action.setData(name)
