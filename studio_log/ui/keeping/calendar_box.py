"""The window “Calendar”: the plan as a file, once or following."""

from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QDialog, QHBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.calendar import SaveCalendar
from studio_log.services.commands import Outcome
from studio_log.services.places import ChangePlaces, PlacesFor, PlacesSeen
from studio_log.ui.bridge import Bridge
from studio_log.ui.keeping.place_part import Pick, PlacePart, Way, file_to_write, folder_of
from studio_log.ui.widgets.paged import paged
from studio_log.ui.widgets.parts import Words, button

WHAT: Final = tr_later(
    "What is ahead as a file for the calendar of a phone or of another computer: starts, ends, "
    "tendings, marks of the cure and baths, each with its alarm."
)
ONCE: Final = tr_later(
    "Open the file in your calendar. A later one brings it up to date: what moved is moved, and "
    "what fell away is called off."
)
FOLLOWS: Final = tr_later(
    "A file that is written anew whenever the plan changes. Choose a place from which your "
    "calendar can subscribe to it, such as a synced folder."
)
SEEN: Final = tr_later(
    "Whoever can read the file sees the names and codes of your lots. It holds no notes."
)
FILE_NAME: Final = "studio-log.ics"
KINDS: Final = tr_later("Calendars (*.ics)")


class CalendarBox(QDialog):
    """Saves the calendar, and chooses what follows the plan on this laptop."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Calendar — Studio Log"))
        self._bridge = bridge
        self.pick_file: Pick = file_to_write(tr("Save the calendar"), FILE_NAME, tr(KINDS))
        self.save = button(tr("&Save the calendar…"), kind="primary")
        self.said = Words(tone="soft")
        self.follows = PlacePart(
            tr("Following the plan"),
            tr(FOLLOWS),
            (
                Way(tr("Choose a &file…"), self._pick_file),
                Way(tr("Choose a f&older…"), folder_of(tr("A folder for the calendar"))),
            ),
            self._choose,
        )
        self.leave = button(tr("&Close"))
        self._lay_out()
        self.save.clicked.connect(self._save)
        self.leave.clicked.connect(self.reject)
        bridge.changed.connect(self._note_change)
        self.said.show_words("")
        self.refresh()

    def refresh(self) -> None:
        """Ask what is chosen, and how it fares."""
        self._bridge.ask(PlacesFor(), self._show)

    def _lay_out(self) -> None:
        page = paged(self, tr("Calendar"), leave=self.leave, wide=40)
        page.addWidget(Words(tr(WHAT)))
        page.addSpacing(8)
        page.addWidget(Words(tr("Once"), size="large", bold=True))
        page.addWidget(Words(tr(ONCE), tone="soft"))
        line = QHBoxLayout()
        line.addWidget(self.save)
        line.addStretch(1)
        page.addLayout(line)
        page.addWidget(self.said)
        page.addSpacing(8)
        page.addWidget(self.follows)
        page.addSpacing(8)
        page.addWidget(Words(tr(SEEN), tone="soft"))
        page.addStretch(1)

    def _pick_file(self, parent: QWidget) -> str:
        return self.pick_file(parent)

    def _save(self) -> None:
        chosen = self.pick_file(self)
        if chosen:
            self._say(tr("Writing…"))
            self._bridge.ask(SaveCalendar(Path(chosen)), self._say, failed=self._refuse)

    def _choose(self, where: str) -> None:
        self._bridge.do(ChangePlaces(calendar=where), self._changed, failed=self._refuse_place)

    def _changed(self, _outcome: Outcome) -> None:
        self.refresh()

    def _refuse_place(self, words: str) -> None:
        self.follows.fault.show_words(words)

    def _say(self, words: str) -> None:
        self.said.set_tone("soft")
        self.said.show_words(words)

    def _refuse(self, words: str) -> None:
        self.said.set_tone("danger_ink")
        self.said.show_words(words)

    def _show(self, seen: PlacesSeen) -> None:
        where = seen.places.calendar
        self.follows.show_place(where, seen.calendar_words, seen.calendar_fault)

    def _note_change(self, _outcome: Outcome) -> None:
        if self.isVisible():
            self.refresh()
