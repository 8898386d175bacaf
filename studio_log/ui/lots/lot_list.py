"""The lot list: search, filters, order; rows or a table."""

import re
from typing import Final

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.swatch_text import SWATCH_CODE, whole_swatch_code
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.lots_found import LotsFound
from studio_log.services.questions import LotLine, SettingsFor
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.services.settings import Settings
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.lots.list_head import ListHead
from studio_log.ui.lots.list_order import Order, order_text, read_order
from studio_log.ui.lots.list_rows import LotView
from studio_log.ui.lots.list_table import LotTable
from studio_log.ui.lots.lot_model import LINE_ROLE, LotModel
from studio_log.ui.widgets.parts import Words, button

EMPTY: Final = {
    "live": tr_later("No lot is under way. Make the first one, and its steps stand here."),
    "in-work": tr_later("No lot is in work just now."),
    "curing": tr_later("No lot is curing just now."),
    "ready": tr_later("No lot is ready just now."),
    "planned": tr_later("No lot is planned."),
    "all": tr_later("No lots yet. Make the first one, and its steps stand here."),
}
CODE: Final = re.compile(r"\d{2}-\d{3,}", re.ASCII)
TYPING_MS: Final = 60
CHOOSE_ROW: Final = (
    QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
)
MANY: Final = 200
"""From so many rows on all are as high as the tallest, so that none need be known to place them."""


class LotList(QWidget):
    """Left in the window: which lots there are, what each does and needs."""

    lot_chosen = Signal(str)
    lot_opened = Signal(str)
    other_opened = Signal(str)
    """The code of a swatch was typed or scanned."""
    new_wanted = Signal()
    room_wanted = Signal(int)
    """Pixels of width that the table would take; nought for rows."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("side")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self._state = "live"
        self._wanted = ""
        self._to_open = ""
        self.model = LotModel(self)
        self.head = ListHead(bridge)
        self.search, self.chips, self.kept = self.head.search, self.head.chips, self.head.kept
        self.understood, self.said = self.head.understood, self.head.said
        self.order, self.look = self.head.order, self.head.look
        self.view = LotView()
        self.view.setModel(self.model)
        self.table = LotTable(self.model)
        self._wish: Order = ("need", False)
        self.empty_words = Words(tone="soft")
        self.empty_new = button(tr("New lot"), kind="primary")
        self._pages = QStackedWidget()
        self._lay_out()
        self._soon = QTimer(self, singleShot=True, interval=TYPING_MS)
        self._listen()

    def _listen(self) -> None:
        self._soon.timeout.connect(self.refresh)
        self.model.rows_wanted.connect(self._fetch)
        self.search.down.connect(self._to_rows)
        self.search.textChanged.connect(self._typed)
        self.search.returnPressed.connect(self._entered)
        for view in (self.view, self.table):
            view.selectionModel().currentChanged.connect(self._current_changed)
            view.opened.connect(self._opened)
            view.doubleClicked.connect(self._opened)
        self.head.at_once.connect(self.refresh)
        self.head.state_chosen.connect(self._filter)
        self.order.chosen.connect(self._choose_order)
        self.table.order_wanted.connect(self._head_clicked)
        self.table.columns_moved.connect(self._keep_columns)
        self.table.columns_asked.connect(self.look.ask_columns)
        self.look.columns_chosen.connect(self._keep_columns)
        self.look.table_chosen.connect(self._choose_table)
        self.empty_new.clicked.connect(self.new_wanted)
        self._bridge.changed.connect(self.on_changed)
        self._bridge.ask(SettingsFor(), self._learn)

    @property
    def rows(self) -> QAbstractItemView:
        """The view that is shown: rows or table."""
        return self.table if self.look.table else self.view

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """Where the keyboard goes from one to the next."""
        return (*self.head.stops, self.view, self.table)

    @property
    def chosen(self) -> str:
        """Code of the chosen lot, "" for none."""
        return self._wanted

    def choose(self, code: str) -> None:
        """Choose a lot; its row follows where it is shown."""
        self._wanted = code
        self._follow()

    def refresh(self) -> None:
        """Ask for the rows again."""
        find = self.search.text().strip()
        sort, backwards = self._wish
        self._bridge.ask(FindLots(find, self._state, sort, backwards=backwards), self._show)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask again where a change touches the rows."""
        if outcome is FOREIGN or outcome.settings:
            self._bridge.ask(SettingsFor(), self._learn)
        if outcome is FOREIGN or outcome.lots or outcome.reminders or outcome.settings:
            self.refresh()

    def _fetch(self, codes: tuple[str, ...]) -> None:
        self._bridge.ask(LotRowsFor(codes), self._came)

    def _came(self, lines: tuple[LotLine, ...]) -> None:
        self.model.take(lines)
        self.view.scheduleDelayedItemsLayout()  # a name that wraps needs a higher row

    def _to_rows(self) -> None:
        if not self.model.rowCount():
            return
        if not self.rows.currentIndex().isValid():
            self.rows.setCurrentIndex(self.rows.model().index(0, 0))
        self.rows.setFocus(Qt.FocusReason.TabFocusReason)

    def _learn(self, settings: Settings) -> None:
        """Take order, columns and look from what is kept."""
        wish, was = read_order(settings.list_sort), self.look.table
        self.look.show_look(settings.list_columns.split(), table=settings.list_table)
        self.table.show_columns(self.look.columns)
        self._show_pages()
        if was != self.look.table:
            self._ask_room()
        if wish != self._wish:
            self._wish = wish
            self.refresh()

    def _choose_order(self, sort: str, backwards: bool) -> None:  # noqa: FBT001 - a signal's value
        """Keep an order; one that was typed gives way to it."""
        order = (sort, backwards)
        self.head.unsay_order()
        if order != self._wish:
            self._wish = order
            self._bridge.do(ChangeSettings({"list_sort": order_text(order)}), failed=self._say)
            self.refresh()

    def _head_clicked(self, sort: str) -> None:
        """Put the table in a column's order, and the other way at the second click."""
        now, backwards = self.order.order
        if now == "newest" and sort == "code":
            self._choose_order("code", False)
        else:
            self._choose_order(sort, now == sort and not backwards)

    def _choose_table(self, table: bool) -> None:  # noqa: FBT001 - a signal's value
        self._show_pages()
        self._ask_room()
        self._bridge.do(ChangeSettings({"list_table": table}), failed=self._say)
        self.rows.setFocus(Qt.FocusReason.OtherFocusReason)

    def _ask_room(self) -> None:
        self.room_wanted.emit(self.table.wanted() if self.look.table else 0)

    def _keep_columns(self, names: tuple[str, ...]) -> None:
        self.look.columns = names
        self.table.show_columns(names)
        self._bridge.do(ChangeSettings({"list_columns": " ".join(names)}), failed=self._say)

    def _lay_out(self) -> None:
        empty = QWidget()
        blank = QVBoxLayout(empty)
        blank.setContentsMargins(14, 24, 14, 14)
        blank.setSpacing(14)
        blank.addWidget(self.empty_words)
        blank.addWidget(self.empty_new, 0, Qt.AlignmentFlag.AlignLeft)
        blank.addStretch()
        self._pages.addWidget(self.view)
        self._pages.addWidget(empty)
        self._pages.addWidget(self.table)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.head)
        whole.addWidget(self._pages, 1)

    def _filter(self, state: str) -> None:
        self._state = state
        self.refresh()

    def _typed(self, _text: str) -> None:
        self.said.hide()
        self._soon.start()

    def _entered(self) -> None:
        """Open the lot of the code typed or scanned, else the first row found."""
        self._soon.stop()
        typed = self.search.text().strip().upper()
        if SWATCH_CODE.match(typed):
            self.search.clear()
            self.other_opened.emit(whole_swatch_code(typed))
        elif CODE.fullmatch(typed):
            self.open_code(typed)
        elif typed:
            self._to_open = "*"
            self.refresh()

    def open_code(self, code: str) -> None:
        """Open the lot of a whole code, whatever is filtered; say where there is none."""
        self._to_open = code
        self._bridge.ask(FindLots(code, "all"), self._found, failed=self._say)

    def _found(self, answer: LotsFound) -> None:
        code, self._to_open = self._to_open, ""
        if code in answer.codes:
            self.search.clear()
            self._say("")
            self._open(code)
        else:
            self._say(tr("There is no lot {lot} in this studio.", lot=code))

    def _say(self, words: str) -> None:
        self.said.show_words(words)

    def _show(self, answer: LotsFound) -> None:
        codes = answer.codes
        self.view.setUniformItemSizes(len(codes) > MANY)
        self.model.show_lots(codes, answer.first)
        self.head.show_found(answer)
        self.table.show_order(answer.order)
        self._show_empty(codes)
        if codes and not self._wanted:
            # Nobody should look at an empty half of a window at the start of a day.
            self._wanted = codes[0]
            self.lot_chosen.emit(self._wanted)
        self._follow()
        if self._to_open == "*":
            self._to_open = ""
            if codes:
                self._open(codes[0])

    def _show_empty(self, codes: tuple[str, ...]) -> None:
        find = self.search.text().strip()
        words = tr("Nothing found for “{find}”.", find=find) if find else tr(EMPTY[self._state])
        self.empty_words.setText(words)
        self.empty_new.setVisible(not find)
        self._show_pages()

    def _show_pages(self) -> None:
        """Show rows or table, or the page that says why there are none."""
        if not self.model.rowCount():
            self._pages.setCurrentIndex(1)
        elif self._pages.currentWidget() is not self.rows:
            self._pages.setCurrentWidget(self.rows)
            self._follow()

    def _follow(self) -> None:
        row, view = self.model.row_of(self._wanted), self.rows
        selection = view.selectionModel()
        if row < 0:
            selection.clear()
            return
        column = max(selection.currentIndex().column(), 0)
        index = view.model().index(row, column)
        if selection.currentIndex() != index or not selection.isSelected(index):
            selection.setCurrentIndex(index, CHOOSE_ROW)
            view.scrollTo(index)

    def _current_changed(self, now: QModelIndex, _before: QModelIndex) -> None:
        if self.view.arriving or self.sender() is not self.rows.selectionModel():
            return
        line = now.data(LINE_ROLE)
        if isinstance(line, LotLine) and line.code != self._wanted:
            self._wanted = line.code
            self.lot_chosen.emit(line.code)

    def _opened(self) -> None:
        if self._wanted:
            self.lot_opened.emit(self._wanted)

    def _open(self, code: str) -> None:
        self._wanted = code
        self._follow()
        self.lot_chosen.emit(code)
        self.lot_opened.emit(code)
