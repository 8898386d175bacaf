"""The table of “What rang” and the words about the chosen row."""

from datetime import datetime
from typing import Final

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QFont, QKeyEvent, QResizeEvent, QTextCharFormat, QTextCursor
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QLineEdit,
    QTableView,
    QTextEdit,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.rang import Rang
from studio_log.services.rang_words import details, tame
from studio_log.ui.rang.rang_delegate import RangDelegate, row_height
from studio_log.ui.rang.rang_model import COLUMNS, HOW, LOT, ROW_ROLE, RangModel
from studio_log.ui.widgets.parts import breakable, em

NARROW: Final = 52.0
"""Below so many line heights the lot stands with the act, and the channels in the words below."""
NOTHING_CHOSEN: Final = tr_later("Choose a reminder to read when and how it rang.")


class FindLine(QLineEdit):
    """The search field; Down leads into the rows."""

    downward = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setPlaceholderText(tr("Find a lot, an act, an answer, a channel"))
        self.setAccessibleName(tr("Find in what rang"))
        self.setClearButtonEnabled(True)
        self.setMaxLength(200)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.downward.emit()
            return
        super().keyPressEvent(event)


class RangView(QTableView):
    """One row a reminder; all rows are equally high, so that thousands cost nothing."""

    row_chosen = Signal(object)
    """The Rang chosen, None for none."""

    def __init__(self, model: RangModel) -> None:
        super().__init__()
        self._model = model
        self.setModel(model)
        self.setAccessibleName(tr("What rang"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setItemDelegate(RangDelegate(self))
        self.setCornerButtonEnabled(False)
        self.verticalHeader().hide()
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setHighlightSections(False)
        self.selectionModel().currentRowChanged.connect(self._current_changed)

    def choose(self, key: str) -> None:
        """Choose the row of a reminder, else the first."""
        if self._model.rowCount() == 0:
            self.row_chosen.emit(None)
            return
        row = max(self._model.row_of(key), 0)
        self.setCurrentIndex(self._model.index(row, 0))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.share_width()

    def share_width(self) -> None:
        """Give each column its share; where there is little room, fewer columns, higher rows."""
        room, line = self.viewport().width(), em(self)
        narrow = room < NARROW * line
        lines = 3 if narrow else 2
        self._model.set_narrow(narrow=narrow)
        self.setColumnHidden(LOT, narrow)
        self.setColumnHidden(HOW, narrow)
        self.verticalHeader().setDefaultSectionSize(row_height(line, lines))
        shown = [at for at in range(len(COLUMNS)) if not self.isColumnHidden(at)]
        whole = sum(COLUMNS[at].wide for at in shown)
        for at in shown:
            self.setColumnWidth(at, int(room * COLUMNS[at].wide / whole))

    def _current_changed(self, now: QModelIndex, _before: QModelIndex) -> None:
        self.viewport().update()
        self.row_chosen.emit(now.data(ROW_ROLE))


class RangWords(QTextEdit):
    """Everything about one reminder, to be read and copied."""

    def __init__(self) -> None:
        super().__init__()
        self.setReadOnly(True)
        self.setTabChangesFocus(True)
        self.setAcceptRichText(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName(tr("The chosen reminder"))
        self.show_row(None, None)

    def show_row(self, row: Rang | None, now: datetime | None) -> None:
        """Tell of one, seen from `now`; None tells what to do."""
        if row is None or now is None:
            self.setPlainText(tr(NOTHING_CHOSEN))
            return
        self.clear()
        cursor = QTextCursor(self.document())
        bold, plain = QTextCharFormat(), QTextCharFormat()
        bold.setFontWeight(QFont.Weight.Bold)
        cursor.insertText(breakable(tame(row.title)), bold)
        for line in details(row, now):
            cursor.insertBlock()
            cursor.insertText(breakable(line), plain)
        self.moveCursor(QTextCursor.MoveOperation.Start)
