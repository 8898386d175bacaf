"""A menu of filters, for those who do not know what can be typed: each adds its own words."""

from collections.abc import Callable, Iterator
from datetime import date
from functools import partial
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu

from studio_log.domain.lots import LotState
from studio_log.language.calendar_words import MONTHS
from studio_log.language.words import tr, tr_later
from studio_log.ui.lots.list_tool import ToolChip

_STATES: Final = tuple(state.value.replace("-", " ") for state in LotState)
FILTERS: Final = (
    (
        tr_later("&Fibre"),
        ("cotton", "linen", "hemp", "ramie", "nettle", "viscose", "silk", "wool"),
        "",
    ),
    (
        tr_later("&Weight"),
        ("over 100 g", "over 250 g", "over 500 g", "over 1 kg",
         "under 100 g", "under 250 g", "under 500 g", "under 1 kg"),
        "over ",
    ),
    (
        tr_later("&Coats"),
        ("1 coat or more", "2 coats or more", "3 coats or more",
         "exactly 1 coat", "exactly 2 coats", "exactly 3 coats"),
        "exactly ",
    ),
    (
        tr_later("&Age of the cure"),
        ("cured over 3 days", "cured over 14 days", "cured over 30 days", "cured over 90 days",
         "cured under 14 days", "cured under 30 days", "cured under 90 days"),
        "cured over ",
    ),
    (tr_later("&State"), _STATES, ""),
)  # fmt: skip
"""Name of a menu, the words that it offers, and what is begun for a figure of one's own."""
OWN: Final = tr_later("Another: “{words}…”")
PLACE: Final = tr_later("&Shelf or place: “at …”")
MONTHS_BACK: Final = 6


def begun_words(today: date) -> Iterator[str]:
    """Give what the menu offers for when a lot was begun: the months behind, the years."""
    for back in range(MONTHS_BACK):
        at = today.year * 12 + today.month - 1 - back
        yield f"since {MONTHS[at % 12]} {at // 12}"
    for year in (today.year, today.year - 1, today.year - 2):
        yield f"begun in {year}"


class FilterButton(ToolChip):
    """Opens the menu; what is chosen is told in the words that could have been typed."""

    chosen = Signal(str)
    begun = Signal(str)
    """Words that the person goes on from: "over "."""

    def __init__(self, today: Callable[[], date]) -> None:
        super().__init__(tr("Filter"), "filter")
        self._today = today
        self.setAccessibleName(tr("Add a filter"))
        self.setToolTip(tr("Add a filter; the same words can be typed above"))
        self.menu().aboutToShow.connect(self.fill)

    def fill(self) -> None:
        """Fill the menu; the months behind are those of today."""
        menu = self.menu()
        menu.clear()
        begun = (tr_later("&Begun"), tuple(begun_words(self._today())), "since ")
        for name, offered, own in (*FILTERS, begun):
            self._add(menu.addMenu(tr(name)), offered, own)
        self._own(menu, "at ")

    def _add(self, menu: QMenu, offered: tuple[str, ...], own: str) -> None:
        for words in offered:
            menu.addAction(words).triggered.connect(partial(self.chosen.emit, words))
        if own:
            menu.addSeparator()
            self._own(menu, own)

    def _own(self, menu: QMenu, words: str) -> None:
        said = tr(PLACE) if words == "at " else tr(OWN, words=words)
        menu.addAction(said).triggered.connect(partial(self.begun.emit, words))
