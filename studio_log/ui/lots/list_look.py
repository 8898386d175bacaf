"""How the list looks: rows or a table, and the columns of the table."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMenu

from studio_log.language.words import tr
from studio_log.ui.lots.list_table import fill_columns
from studio_log.ui.lots.list_tool import ToolChip


class LookButton(ToolChip):
    """Its menu turns from rows to a table and back, and chooses the columns."""

    table_chosen = Signal(bool)
    columns_chosen = Signal(tuple)

    def __init__(self) -> None:
        super().__init__(tr("View"), "columns", brief=True)
        self.table = False
        self.columns: tuple[str, ...] = ()
        self.setAccessibleName(tr("Rows or table, and its columns"))
        self.setToolTip(self.accessibleName())
        menu = self.menu()
        self.as_rows, self.as_table = menu.addAction(tr("&Rows")), menu.addAction(tr("&Table"))
        group = QActionGroup(self)
        for action in (self.as_rows, self.as_table):
            action.setCheckable(True)
            group.addAction(action)
        menu.addSeparator()
        self.which = menu.addMenu(tr("&Columns"))
        self.which.aboutToShow.connect(self._fill)
        self.which.triggered.connect(self._ticked)
        group.triggered.connect(self._turned)
        self.show_look((), table=False)

    def show_look(self, columns: Sequence[str], *, table: bool) -> None:
        """Show what is in force."""
        self.columns, self.table = tuple(columns), table
        (self.as_table if table else self.as_rows).setChecked(True)
        self.which.menuAction().setEnabled(table)

    def ask_columns(self, at: QPoint) -> None:
        """Offer the columns where the head of the table was pressed."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        fill_columns(menu, self.columns)
        menu.triggered.connect(self._ticked)
        menu.popup(at)

    def _fill(self) -> None:
        self.which.clear()
        fill_columns(self.which, self.columns)

    def _turned(self) -> None:
        self.show_look(self.columns, table=self.as_table.isChecked())
        self.table_chosen.emit(self.table)

    def _ticked(self, action: QAction) -> None:
        name = str(action.data())
        if name in self.columns:
            names = tuple(one for one in self.columns if one != name)
        else:
            names = (*self.columns, name)
        if names:
            self.columns_chosen.emit(names)
