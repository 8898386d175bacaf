"""A lot's journal: every entry, what was taken back and what was corrected."""

from collections.abc import Mapping, Sequence
from zoneinfo import ZoneInfo

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from studio_log.domain.calendar_words import day_words
from studio_log.services.questions import EntryLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import button

NUMBER_ROLE = int(Qt.ItemDataRole.UserRole)


def entry_words(entry: EntryLine, zone: str) -> str:
    """Say an entry in words: its time of day, what, note, and what became of it."""
    words = f"{entry.at.astimezone(ZoneInfo(zone)):%H:%M}   {entry.words}"
    if entry.note and entry.note not in entry.words:
        words += f" — {entry.note}"
    if entry.taken_back:
        words += "   (taken back)"
    if entry.corrected_by is not None:
        words += f"   (corrected by entry {entry.corrected_by})"
    return words


class JournalPage(QWidget):
    """The entries, latest first; an earlier one can be taken back or corrected."""

    take_back = Signal(int)
    correct = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._entries: tuple[EntryLine, ...] = ()
        self.list = QListWidget()
        self.list.setAccessibleName("Journal")
        self.list.setWordWrap(True)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.back_button = button("&Take this entry back")
        self.correct_button = button("&Correct its time…")
        line = FlowLayout(gap=8)
        line.addWidget(self.back_button)
        line.addWidget(self.correct_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.addWidget(self.list, 1)
        column.addLayout(line)
        self.list.currentRowChanged.connect(self._offer)
        self.back_button.clicked.connect(self._take_back)
        self.correct_button.clicked.connect(self._correct)
        self._offer(-1)

    def show_entries(
        self, entries: Sequence[EntryLine], zone: str, became: Mapping[str, str] | None = None
    ) -> None:
        """Show these, latest first; `became` says by number what replaced a corrected one."""
        if tuple(entries) == self._entries:
            return
        became = became or {}
        kept = self._number()
        self._entries = tuple(entries)
        self.list.clear()
        above = ""
        for entry in reversed(self._entries):
            day = day_words(entry.at.astimezone(ZoneInfo(zone)).date())
            if day != above:
                self._head(day)
                above = day
            now = became.get(str(entry.number), "")
            item = self._add(entry_words(entry, zone), entry, struck=entry.taken_back or bool(now))
            if now:
                item = self._add(f"now:  {now}", entry, struck=False)
            if entry.number == kept:
                self.list.setCurrentItem(item)
        self._offer(self.list.currentRow())

    def _head(self, day: str) -> None:
        """Add the day that the lines below it share; it cannot be chosen."""
        item = QListWidgetItem(day)
        item.setFlags(Qt.ItemFlag.NoItemFlags)
        font = item.font()
        font.setBold(True)
        item.setFont(font)
        item.setForeground(theme().colours.soft)
        self.list.addItem(item)

    def _add(self, words: str, entry: EntryLine, *, struck: bool) -> QListWidgetItem:
        """Add a line; a struck one says in words too what became of it."""
        item = QListWidgetItem(words)
        item.setData(NUMBER_ROLE, entry.number)
        font = item.font()
        font.setStrikeOut(struck)
        item.setFont(font)
        self.list.addItem(item)
        return item

    def _number(self) -> int | None:
        item = self.list.currentItem() if self.list.currentRow() >= 0 else None
        number = item.data(NUMBER_ROLE) if item is not None else None
        return None if number is None else int(number)

    def _entry(self) -> EntryLine | None:
        number = self._number()
        return next((one for one in self._entries if one.number == number), None)

    def _offer(self, _row: int) -> None:
        entry = self._entry()
        free = entry is not None and not entry.taken_back
        self.back_button.setEnabled(free)
        self.correct_button.setEnabled(free)

    def _take_back(self) -> None:
        number = self._number()
        if number is not None:
            self.take_back.emit(number)

    def _correct(self) -> None:
        number = self._number()
        if number is not None:
            self.correct.emit(number)
