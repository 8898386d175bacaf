"""Above the list: the search, what was understood of it, filters, order, look and states."""

from datetime import date
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.domain.search_text import with_part, without_part
from studio_log.language.words import tr, tr_later
from studio_log.services.lots_found import LotsFound
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.kept_searches import KeptSearches
from studio_log.ui.lots.list_filters import FilterButton
from studio_log.ui.lots.list_look import LookButton
from studio_log.ui.lots.list_order import OrderButton
from studio_log.ui.lots.list_search import PartChips, SearchField
from studio_log.ui.lots.list_tool import ToolChip
from studio_log.ui.widgets.find_line import LONGEST
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, em, one_of

FILTERS: Final = (
    ("live", tr_later("Live")),
    ("in-work", tr_later("In work")),
    ("curing", tr_later("Curing")),
    ("ready", tr_later("Ready")),
    ("planned", tr_later("Planned")),
    ("all", tr_later("All")),
)
TOO_LONG: Final = tr_later(
    "The search would be longer than can be kept. It stays as it was; take a part away first."
)
NARROW: Final = 17
"""Below so many line heights of width the buttons above the rows are icons."""


class ListHead(QWidget):
    """Everything by which lots are looked for."""

    at_once = Signal()
    """What stands in the field is looked for now, and not a moment after the last letter."""
    state_chosen = Signal(str)
    tools: tuple[ToolChip, ...] = ()
    """The buttons with menus."""

    def __init__(self, bridge: Bridge) -> None:
        super().__init__()
        self._bridge = bridge
        self.search = SearchField()
        self.said = Words(tone="danger_ink")
        self.said.hide()
        self.understood = PartChips(self.search)
        self.filter = FilterButton(self.today)
        self.order = OrderButton()
        self.look = LookButton()
        self.kept = KeptSearches(bridge, self.search)
        self.tools = (self.filter, self.order, self.look, self.kept)
        self.chips = self._made_chips()
        self._lay_out()
        self.understood.taken_away.connect(self.take_away)
        self.understood.left.connect(self._to_search)
        self.filter.chosen.connect(self.add_filter)
        self.filter.begun.connect(self._begin_filter)

    @property
    def stops(self) -> tuple[QWidget, ...]:
        """Where the keyboard goes from one to the next."""
        return (self.search, *self.tools, *self.chips.buttons())

    def today(self) -> date:
        """Give the day it is on the wall."""
        return self._bridge.now().astimezone(ZoneInfo(self._bridge.zone())).date()

    def add_filter(self, words: str) -> None:
        """Add a filter in its words; one of the same sort gives way."""
        made = with_part(self.search.text(), words, self.today())
        if len(made) > LONGEST:
            self.said.show_words(tr(TOO_LONG))
            return
        self.search.setText(made)
        self.at_once.emit()

    def take_away(self, part: str) -> None:
        """Take a part of the search away."""
        self.search.setText(without_part(self.search.text(), part, self.today()))
        self.at_once.emit()

    def unsay_order(self) -> None:
        """Take away an order that was typed: another one was chosen."""
        for part in self.understood.parts:
            if part.startswith("by "):
                self.take_away(part)

    def show_found(self, answer: LotsFound) -> None:
        """Show what was understood, the order in force, and how many lots each state has."""
        self.understood.show_parts(answer.understood)
        self.order.show_order(answer.order)
        for at, (state, title) in enumerate(FILTERS):
            count = answer.counts.get(state, 0)
            chip = self.chips.button(at)
            chip.setText(f"{tr(title)} {count}")
            chip.setAccessibleName(tr("Show: {state}, {n} lots", state=tr(title), n=count))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        for tool in self.tools:
            tool.set_compact(compact=self.width() < em(self, NARROW))

    def _to_search(self) -> None:
        self.search.setFocus(Qt.FocusReason.OtherFocusReason)

    def _begin_filter(self, words: str) -> None:
        """Begin a filter that the person goes on with."""
        before = self.search.text().strip().rstrip(",")
        self.search.setText(f"{before}, {words}" if before else words)
        self._to_search()

    def _made_chips(self) -> QButtonGroup:
        titles = [tr(title) for _state, title in FILTERS]
        rows = ((at, title, tr("Show: {state}", state=title)) for at, title in enumerate(titles))
        group = one_of(self, rows, chosen=0)
        group.idClicked.connect(self._chosen)
        return group

    def _chosen(self, at: int) -> None:
        self.state_chosen.emit(FILTERS[at][0])

    def _lay_out(self) -> None:
        tools, chips = FlowLayout(gap=6), FlowLayout(gap=6)
        for tool in self.tools:
            tools.addWidget(tool)
        for chip in self.chips.buttons():
            chips.addWidget(chip)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 14, 14, 10)
        column.setSpacing(10)
        for widget in (self.search, self.said, self.understood):
            column.addWidget(widget)
        column.addLayout(tools)
        column.addLayout(chips)
