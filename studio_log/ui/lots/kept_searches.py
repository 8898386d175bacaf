"""Searches kept for another day: a menu beside the search field."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLineEdit, QMenu

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.questions import SettingsFor
from studio_log.services.settings import Settings
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.lots.list_tool import ToolChip

EMPTY: Final = tr_later("No search is kept yet. Type one, then keep it here.")
KEEP: Final = tr_later("&Keep this search")
LONGEST: Final = 48
"""Letters of a search that the menu shows; the whole is in its tip."""


def shortened(words: str) -> str:
    """Give the words as a menu shows them: not too long, with no letter underlined."""
    short = words if len(words) <= LONGEST else f"{words[: LONGEST - 1]}…"
    return short.replace("&", "&&")


class KeptSearches(ToolChip):
    """Offers what was kept, keeps what stands in the field, forgets."""

    def __init__(self, bridge: Bridge, field: QLineEdit) -> None:
        super().__init__(tr("Kept"), "kept", brief=True)
        self._bridge = bridge
        self._field = field
        self.searches: tuple[str, ...] = ()
        self.setAccessibleName(tr("Kept searches"))
        self.setToolTip(tr("Searches that are kept"))
        menu = self.menu()
        menu.setToolTipsVisible(True)
        menu.aboutToShow.connect(self.fill)
        bridge.changed.connect(self.on_changed)
        bridge.ask(SettingsFor(), self._learn)

    def on_changed(self, outcome: Outcome) -> None:
        """Ask again where the settings changed."""
        if outcome.settings or outcome is FOREIGN:
            self._bridge.ask(SettingsFor(), self._learn)

    def fill(self) -> None:
        """Fill the menu: what is kept, to keep, to forget."""
        menu = self.menu()
        menu.clear()
        typed = self._typed()
        for words in self.searches:
            self._add(menu, words).triggered.connect(self._take)
        if not self.searches:
            menu.addAction(tr(EMPTY)).setEnabled(False)
        menu.addSeparator()
        keep = menu.addAction(tr(KEEP))
        keep.setEnabled(bool(typed) and typed not in self.searches)
        keep.triggered.connect(self.keep)
        if self.searches:
            forget = menu.addMenu(tr("&Forget"))
            for words in self.searches:
                self._add(forget, words).triggered.connect(self._forget)

    def keep(self) -> None:
        """Keep what stands in the field, first in the menu."""
        typed = self._typed()
        if typed:
            self._save((typed, *(one for one in self.searches if one != typed)))

    def _add(self, menu: QMenu, words: str) -> QAction:
        action = menu.addAction(shortened(words))
        action.setData(words)
        action.setToolTip(words)
        return action

    def _typed(self) -> str:
        return " ".join(self._field.text().split())

    def _chosen(self) -> str:
        action = self.sender()
        return str(action.data()) if isinstance(action, QAction) else ""

    def _take(self) -> None:
        self._field.setText(self._chosen())
        self._field.setFocus(Qt.FocusReason.OtherFocusReason)

    def _forget(self) -> None:
        chosen = self._chosen()
        self._save(tuple(one for one in self.searches if one != chosen))

    def _save(self, searches: tuple[str, ...]) -> None:
        self._bridge.do(ChangeSettings({"searches": "\n".join(searches)}))

    def _learn(self, settings: Settings) -> None:
        self.searches = tuple(settings.searches.splitlines())
