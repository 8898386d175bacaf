"""The entries of a journal as one long list: the page scrolls, the list never does."""

from collections.abc import Mapping, Sequence
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget
from typing_extensions import override

from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr
from studio_log.services.questions import EntryLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.wrapped_items import fit_item

BELOW: Final = 6
"""Pixels under what can be done with an entry."""
NUMBER_ROLE = int(Qt.ItemDataRole.UserRole)


def entry_words(entry: EntryLine, zone: str) -> str:
    """Say an entry in words: its time of day, what, note, and what became of it."""
    words = f"{entry.at.astimezone(ZoneInfo(zone)):%H:%M}   {entry.words}"
    if entry.note and entry.note not in entry.words:
        words += f" — {entry.note}"
    became = []
    if entry.taken_back:
        became.append(tr("(taken back)"))
    if entry.corrected_by is not None:
        became.append(tr("(corrected by entry {number})", number=entry.corrected_by))
    return "   ".join([words, *became])


class JournalList(QListWidget):
    """Days and entries, latest first; under the chosen entry stands what can be done with it."""

    chosen = Signal(object)
    """The number of the entry chosen, None for none."""
    correct_wanted = Signal()
    take_back_wanted = Signal()
    wanted_in_sight = Signal(QRect)
    """The part of the list that should be seen, in its own coordinates."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Journal"))
        self.setWordWrap(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._tools: QWidget | None = None
        self._tools_item: QListWidgetItem | None = None
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self.fit)
        self.currentItemChanged.connect(self._choose)

    @property
    def number(self) -> int | None:
        """Number of the entry chosen, None for none."""
        item = self.currentItem() if self.currentRow() >= 0 else None
        number = item.data(NUMBER_ROLE) if item is not None else None
        return None if number is None else int(number)

    def show_entries(
        self, entries: Sequence[EntryLine], zone: str, became: Mapping[str, str]
    ) -> None:
        """Show these; `became` says by number what replaced a corrected one."""
        kept = self.number
        before = self.blockSignals(True)
        self._drop_tools()
        self.clear()
        above = ""
        for entry in reversed(entries):
            day = day_words(entry.at.astimezone(ZoneInfo(zone)).date())
            if day != above:
                self._head(day)
                above = day
            now = became.get(str(entry.number), "")
            item = self._add(entry_words(entry, zone), entry, struck=entry.taken_back or bool(now))
            if now:
                item = self._add(tr("now:  {words}", words=now), entry, struck=False)
            if entry.number == kept:
                self.setCurrentItem(item)
        self.blockSignals(before)
        self.chosen.emit(self.number)
        self._soon.start()

    def put_tools(self, tools: QWidget | None) -> None:
        """Stand a widget under the chosen entry, in place of the one before."""
        self._drop_tools()
        row = self.currentRow()
        if tools is None or row < 0:
            self._soon.start()
            return
        number = self.number
        while row + 1 < self.count() and self.item(row + 1).data(NUMBER_ROLE) == number:
            row += 1
        item = QListWidgetItem()
        item.setFlags(Qt.ItemFlag.NoItemFlags)
        self.insertItem(row + 1, item)
        self.setItemWidget(item, tools)
        self._tools, self._tools_item = tools, item
        self.fit()
        self._soon.start()  # words wrap at their width only once they are shown

    def holds(self, tools: QWidget) -> bool:
        """Say whether a widget stands under the chosen entry now."""
        return self._tools is tools

    def fit_soon(self) -> None:
        """Fit once what has changed is laid out."""
        self._soon.start()

    def fit(self) -> None:
        """Be as high as all entries together, so that nothing scrolls in what scrolls."""
        for row in range(self.count()):
            if self.item(row) is not self._tools_item:
                fit_item(self, self.item(row))
        layout = self._tools.layout() if self._tools is not None else None
        if layout is not None and self._tools_item is not None:
            layout.activate()
            high = layout.totalHeightForWidth(self.viewport().width())
            self._tools_item.setSizeHint(QSize(0, high + BELOW))
        self.doItemsLayout()
        last = self.item(self.count() - 1) if self.count() else None
        bottom = self.visualItemRect(last).bottom() + self.verticalOffset() if last else 0
        self.setFixedHeight(bottom + 2 * self.frameWidth() + 4)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._soon.start()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.number is not None:
            self.correct_wanted.emit()
        elif key is Qt.Key.Key_Delete and self.number is not None:
            self.take_back_wanted.emit()
        else:
            super().keyPressEvent(event)

    def _choose(self, item: QListWidgetItem | None) -> None:
        self.chosen.emit(self.number)
        if item is not None:
            self.wanted_in_sight.emit(self.visualItemRect(item))

    def _drop_tools(self) -> None:
        item, self._tools_item, self._tools = self._tools_item, None, None
        if item is not None:
            self.removeItemWidget(item)
            self.takeItem(self.row(item))

    def _head(self, day: str) -> None:
        """Add the day that the lines below it share; it cannot be chosen."""
        item = QListWidgetItem(day)
        item.setFlags(Qt.ItemFlag.NoItemFlags)
        font = item.font()
        font.setBold(True)
        item.setFont(font)
        item.setForeground(theme().colours.soft)
        self.addItem(item)

    def _add(self, words: str, entry: EntryLine, *, struck: bool) -> QListWidgetItem:
        """Add a line; a struck one says in words too what became of it."""
        item = QListWidgetItem(words)
        item.setData(NUMBER_ROLE, entry.number)
        font = item.font()
        font.setStrikeOut(struck)
        item.setFont(font)
        self.addItem(item)
        return item
