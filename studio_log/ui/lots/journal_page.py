"""A lot's journal: a note or reading at any time, every entry, and what can be done with it."""

from collections.abc import Mapping, Sequence
from functools import partial

from PySide6.QtCore import QPoint, QRect, QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from studio_log.domain.journal import Act
from studio_log.language.words import tr
from studio_log.services.commands import Mark, Outcome
from studio_log.services.questions import EntryLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.entry_form import EntryForm, Typed
from studio_log.ui.lots.entry_tools import EntryTools
from studio_log.ui.lots.journal_list import JournalList
from studio_log.ui.typed import typed as typed_here


class JournalPage(QWidget):
    """The entries, latest first; an earlier one can be taken back or corrected."""

    take_back = Signal(int)
    wanted_in_sight = Signal(QRect)
    """The part of the page that should be seen, in its own coordinates."""

    def __init__(self, bridge: Bridge) -> None:
        super().__init__()
        self._bridge = bridge
        self._code = ""
        self._told: tuple[object, ...] = ()
        self._entries: tuple[EntryLine, ...] = ()
        self.form = EntryForm(
            bridge,
            tr("&Write it down"),
            nothing=tr("Type a note or a reading first."),
        )
        self.list = JournalList()
        self.tools: EntryTools | None = None
        self._settled = QTimer(self, singleShot=True, interval=0)
        self._settled.timeout.connect(self._stand_tools)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(10)
        column.addWidget(self.form)
        column.addWidget(self.list)
        column.addStretch()
        self.form.sent.connect(self._note)
        self.list.chosen.connect(self._chosen)
        self.list.correct_wanted.connect(self._correct)
        self.list.take_back_wanted.connect(self._take_back)
        self.list.wanted_in_sight.connect(self._want_in_sight)

    def show_entries(
        self,
        entries: Sequence[EntryLine],
        zone: str,
        became: Mapping[str, str] | None = None,
        *,
        code: str = "",
    ) -> None:
        """Show a lot's; `became` says by number what replaced a corrected one."""
        if code != self._code:
            self._code = code
            self.list.setCurrentRow(-1)
            self.form.belong_to(f"note/{code}")
        told = (code, tuple(entries))
        if told != self._told:
            self._told = told
            self._entries = tuple(entries)
            self.list.show_entries(self._entries, zone, became or {})

    def _note(self, typed: Typed) -> None:
        key = self.form.draft.key
        self._bridge.do(
            Mark(self._code, "now", Act.NOTE, typed.at, typed.note, typed.readings),
            partial(self._noted, key),
            failed=self.form.said.refuse,
            asked=self.form.said.question,
        )

    def _noted(self, key: str, _outcome: Outcome) -> None:
        self.form.done(key)

    def _chosen(self, _number: object) -> None:
        # The list is in the middle of its own work when it says so.
        self._settled.start()

    def _stand_tools(self) -> None:
        entry = next((one for one in self._entries if one.number == self.list.number), None)
        if entry is None:
            self.tools = None
            self.list.put_tools(None)
            return
        if self.tools is not None and self.tools.entry == entry and self.list.holds(self.tools):
            return
        self.tools = EntryTools(self._bridge, self._code, entry)
        self.tools.take_back.connect(self.take_back)
        self.tools.resized.connect(self.list.fit_soon)
        self.tools.bring_back(half_typed=typed_here().draft(self.tools.key) is not None)
        self.list.put_tools(self.tools)

    def _correct(self) -> None:
        self._stand_tools()
        if self.tools is not None:
            self.tools.begin()

    def _take_back(self) -> None:
        entry = next((one for one in self._entries if one.number == self.list.number), None)
        if entry is not None and not entry.taken_back:
            self.take_back.emit(entry.number)

    def _want_in_sight(self, part: QRect) -> None:
        self.wanted_in_sight.emit(part.translated(self.list.mapTo(self, QPoint(0, 0))))
