"""The lot list: search, filters by state, one row a lot."""

import re
from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QButtonGroup,
    QLineEdit,
    QListView,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.services.commands import Outcome
from studio_log.services.lots_found import LotsFound
from studio_log.services.questions import LotLine
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.lots.kept_searches import KeptSearches
from studio_log.ui.lots.lot_delegate import LotDelegate
from studio_log.ui.lots.lot_model import LINE_ROLE, LotModel
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button

FILTERS: Final = (
    ("live", "Live"),
    ("in-work", "In work"),
    ("curing", "Curing"),
    ("ready", "Ready"),
    ("planned", "Planned"),
    ("all", "All"),
)
EMPTY: Final = {
    "live": "No lot is under way. Make the first one, and its steps stand here.",
    "in-work": "No lot is in work just now.",
    "curing": "No lot is curing just now.",
    "ready": "No lot is ready just now.",
    "planned": "No lot is planned.",
    "all": "No lots yet. Make the first one, and its steps stand here.",
}
HINT: Final = (
    "Any word that was typed, and: cotton · over 400 g · soyed twice · cured over 30 days · "
    "curing · since June · at shelf 3 · by weight. "
    "In quotation marks it is only looked for as words."
)
CODE: Final = re.compile(r"\d{2}-\d{3,}", re.ASCII)
TYPING_MS: Final = 60
MANY: Final = 200
"""From so many rows on all are as high as the tallest, so that none need be known to place them."""


class SearchField(QLineEdit):
    """Where lots are looked for: Down goes on to the rows, Escape empties it."""

    down = Signal()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down:
            self.down.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)


class LotView(QListView):
    """The rows; Space is left to the bench."""

    opened = Signal()
    """Enter was pressed on a row."""

    def __init__(self) -> None:
        super().__init__()
        self.arriving = False
        """Whether the keyboard is just coming, with no lot chosen."""
        self.setObjectName("lots")
        self.setAccessibleName("Lots")
        self.setUniformItemSizes(False)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setItemDelegate(LotDelegate(self))

    def known_lines(self) -> Sequence[LotLine]:
        """Give the rows that are known now."""
        model = self.model()
        return model.lines if isinstance(model, LotModel) else ()

    @override
    def focusInEvent(self, event: QFocusEvent) -> None:
        # Qt makes the first row current when the keyboard comes; nobody has chosen that lot.
        none = not self.currentIndex().isValid()
        self.arriving = none
        super().focusInEvent(event)
        if none:
            self.selectionModel().clear()
        self.arriving = False

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            event.ignore()
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
            return
        super().keyPressEvent(event)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()


class LotList(QWidget):
    """Left in the window: which lots there are, what each does and needs."""

    lot_chosen = Signal(str)
    lot_opened = Signal(str)
    new_wanted = Signal()

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("side")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self._state = "live"
        self._wanted = ""
        self._to_open = ""
        self.model = LotModel(self)
        self.search = self._make_search()
        self.kept = KeptSearches(bridge, self.search)
        self.chips = self._make_chips()
        self.said = Words(tone="danger_ink")
        self.said.hide()
        self.understood = Words(tone="soft", size="small")
        self.understood.setAccessibleName("Understood")
        self.understood.hide()
        self.view = LotView()
        self.view.setModel(self.model)
        self.empty_words = Words(tone="soft")
        self.empty_new = button("New lot", kind="primary")
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
        self.view.selectionModel().currentChanged.connect(self._current_changed)
        self.view.opened.connect(self._opened)
        self.view.doubleClicked.connect(self._opened)
        self.empty_new.clicked.connect(self.new_wanted)
        self._bridge.changed.connect(self.on_changed)

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
        self._bridge.ask(FindLots(find, self._state), self._show)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask again where a change touches the rows."""
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
        if not self.view.currentIndex().isValid():
            self.view.setCurrentIndex(self.model.index(0))
        self.view.setFocus(Qt.FocusReason.TabFocusReason)

    def _make_search(self) -> SearchField:
        search = SearchField()
        search.setPlaceholderText("Find a lot or cloth — or scan a tag")
        search.setToolTip(HINT)
        search.setAccessibleName("Find a lot")
        search.setClearButtonEnabled(True)
        search.setMaxLength(200)
        return search

    def _make_chips(self) -> QButtonGroup:
        group = QButtonGroup(self)
        for at, (state, title) in enumerate(FILTERS):
            chip = button(title, says=f"Show: {title}")
            chip.setObjectName("chip")
            chip.setCheckable(True)
            chip.setChecked(state == self._state)
            group.addButton(chip, at)
        group.idClicked.connect(self._filter)
        return group

    def _lay_out(self) -> None:
        head = QWidget()
        chips = FlowLayout(gap=6)
        for chip in self.chips.buttons():
            chips.addWidget(chip)
        chips.addWidget(self.kept)
        column = QVBoxLayout(head)
        column.setContentsMargins(14, 14, 14, 10)
        column.setSpacing(10)
        column.addWidget(self.search)
        column.addWidget(self.said)
        column.addWidget(self.understood)
        column.addLayout(chips)
        empty = QWidget()
        blank = QVBoxLayout(empty)
        blank.setContentsMargins(14, 24, 14, 14)
        blank.setSpacing(14)
        blank.addWidget(self.empty_words)
        blank.addWidget(self.empty_new, 0, Qt.AlignmentFlag.AlignLeft)
        blank.addStretch()
        self._pages.addWidget(self.view)
        self._pages.addWidget(empty)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(head)
        whole.addWidget(self._pages, 1)

    def _filter(self, at: int) -> None:
        self._state = FILTERS[at][0]
        self.refresh()

    def _typed(self, _text: str) -> None:
        self.said.hide()
        self._soon.start()

    def _entered(self) -> None:
        """Open the lot of the code typed or scanned, else the first row found."""
        self._soon.stop()
        typed = self.search.text().strip().upper()
        if CODE.fullmatch(typed):
            self._to_open = typed
            self._bridge.ask(FindLots(typed, "all"), self._found, failed=self._say)
        elif typed:
            self._to_open = "*"
            self.refresh()

    def _found(self, answer: LotsFound) -> None:
        code, self._to_open = self._to_open, ""
        if code in answer.codes:
            self.search.clear()
            self._say("")
            self._open(code)
        else:
            self._say(f"There is no lot {code} in this studio.")

    def _say(self, words: str) -> None:
        self.said.show_words(words)

    def _show(self, answer: LotsFound) -> None:
        codes = answer.codes
        self.view.setUniformItemSizes(len(codes) > MANY)
        self.model.show_lots(codes, answer.first)
        self.understood.show_words(" · ".join(answer.understood))
        for at, (state, title) in enumerate(FILTERS):
            count = answer.counts.get(state, 0)
            chip = self.chips.button(at)
            chip.setText(f"{title} {count}")
            chip.setAccessibleName(f"Show: {title}, {count} lots")
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
        words = f"Nothing found for “{find}”." if find else EMPTY[self._state]
        self.empty_words.setText(words)
        self.empty_new.setVisible(not find)
        self._pages.setCurrentIndex(0 if codes else 1)

    def _follow(self) -> None:
        row = self.model.row_of(self._wanted)
        selection = self.view.selectionModel()
        if row < 0:
            selection.clear()
            return
        index = self.model.index(row)
        if selection.currentIndex() != index or not selection.isSelected(index):
            selection.setCurrentIndex(index, QItemSelectionModel.SelectionFlag.ClearAndSelect)
            self.view.scrollTo(index)

    def _current_changed(self, now: QModelIndex, _before: QModelIndex) -> None:
        if self.view.arriving:
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
