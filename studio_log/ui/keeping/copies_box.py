"""The window “Copies”: those there are, another disk for them, and putting one back."""

from datetime import date
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QListWidget,
    QListWidgetItem,
    QWidget,
)

from studio_log.domain.number_text import plain
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.copies import (
    BackupTo,
    CompareCopy,
    CopiesFor,
    CopiesSeen,
    CopySeen,
    RestoreCopy,
    TakeCopy,
)
from studio_log.services.places import ChangePlaces
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.keeping.place_part import (
    Pick,
    PlacePart,
    Way,
    file_to_read,
    file_to_write,
    folder_of,
)
from studio_log.ui.settings_parts import flowing
from studio_log.ui.widgets.paged import paged
from studio_log.ui.widgets.parts import Words, button, em

WHAT: Final = tr_later(
    "One copy a day is kept: of seven days, of four weeks and of twelve months. Each was read "
    "back when it was written."
)
ELSEWHERE: Final = tr_later(
    "Against a lost laptop: a folder on a stick, or one that is synced, gets a copy each day as "
    "well, with the photos."
)
CHOOSE: Final = tr_later("Choose a copy to see what putting it back would change.")
KINDS: Final = tr_later("Copies of a studio (*.sqlite3)")
MB: Final = 1_000_000
ROWS: Final = (3, 6)


class CopiesBox(QDialog):
    """Lists the copies, takes one, and puts one back once its changes were seen."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Copies — Studio Log"))
        self._bridge = bridge
        self._chosen: Path | None = None
        self.pick_file: Pick = file_to_write(
            tr("Copy the studio to a file"), "studio-log.sqlite3", tr(KINDS)
        )
        self.pick_copy: Pick = file_to_read(tr("A copy to put back"), tr(KINDS))
        self.rows = QListWidget()
        self.rows.setAccessibleName(tr("Copies"))
        self.told = Words(tr(CHOOSE), tone="soft")
        self.take = button(tr("&Take one now"), kind="primary")
        self.to_file = button(tr("C&opy to a file…"))
        self.back = button(tr("&Put this one back…"))
        self.from_file = button(tr("Put &another file back…"))
        self.elsewhere = PlacePart(
            tr("On another disk too"),
            tr(ELSEWHERE),
            (Way(tr("Choose a &folder…"), folder_of(tr("A folder for copies"))),),
            self._choose_place,
        )
        self.message = MessageBar(bridge)
        self.leave = button(tr("&Close"))
        self._lay_out()
        self._connect()
        self.back.setEnabled(False)
        self.refresh()

    def refresh(self) -> None:
        """Ask which copies there are."""
        self._bridge.ask(CopiesFor(), self.show_copies)

    def show_copies(self, seen: CopiesSeen) -> None:
        """Show them, the chosen one still chosen."""
        self.rows.blockSignals(True)
        self.rows.clear()
        for copy in seen.copies:
            item = QListWidgetItem(_words(copy, seen.today))
            item.setData(Qt.ItemDataRole.UserRole, str(copy.path))
            self.rows.addItem(item)
            if copy.path == self._chosen:
                self.rows.setCurrentItem(item)
        self.rows.blockSignals(False)
        self._fit_rows()
        self.elsewhere.show_place(seen.elsewhere, seen.elsewhere_words, seen.fault)

    def _fit_rows(self) -> None:
        """Give the list the height of its rows, within bounds: what is below stays in sight."""
        row = max(self.rows.sizeHintForRow(0), em(self, 1.5))
        least, most = ROWS
        count = min(max(self.rows.count(), least), most)
        self.rows.setFixedHeight(row * count + 2 * self.rows.frameWidth())

    def _lay_out(self) -> None:
        page = paged(self, tr("Copies"), self.message, leave=self.leave, wide=46)
        page.addWidget(Words(tr(WHAT)))
        page.addWidget(flowing(self.take, self.to_file))
        self._fit_rows()
        self.rows.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.rows.setWordWrap(True)
        page.addWidget(self.rows)
        page.addWidget(self.told)
        page.addWidget(flowing(self.back, self.from_file))
        page.addSpacing(8)
        page.addWidget(self.elsewhere)
        page.addStretch(1)

    def _connect(self) -> None:
        self.take.clicked.connect(self._take)
        self.to_file.clicked.connect(self._copy_to_file)
        self.back.clicked.connect(self._put_back)
        self.from_file.clicked.connect(self._put_file_back)
        self.leave.clicked.connect(self.reject)
        self.rows.currentItemChanged.connect(self._choose)
        self._bridge.changed.connect(self._note_change)

    def _choose(self, item: QListWidgetItem | None) -> None:
        if item is None:
            return
        self._chosen = Path(str(item.data(Qt.ItemDataRole.UserRole)))
        self.back.setEnabled(True)
        self._compare(self._chosen)

    def _compare(self, chosen: Path) -> None:
        self._tell(tr("Looking into it…"))
        show = partial(self._show_difference, chosen)
        self._bridge.ask(CompareCopy(chosen), show, failed=self._tell)

    def _show_difference(self, chosen: Path, told: tuple[str, ...]) -> None:
        if chosen == self._chosen:
            self._tell(" ".join(told))

    def _tell(self, words: str) -> None:
        self.told.setText(words)

    def _take(self) -> None:
        self._bridge.do(TakeCopy(), self._done, failed=self.message.refuse)

    def _copy_to_file(self) -> None:
        if chosen := self.pick_file(self):
            self.message.advise(tr("Writing…"))
            self._bridge.do(BackupTo(Path(chosen)), self._done, failed=self.message.refuse)

    def _put_back(self) -> None:
        if self._chosen is not None:
            self._restore(self._chosen)

    def _put_file_back(self) -> None:
        if chosen := self.pick_copy(self):
            self._restore(Path(chosen))

    def _restore(self, source: Path) -> None:
        self._bridge.do(
            RestoreCopy(source),
            self._done,
            failed=self.message.refuse,
            asked=self.message.question,
        )

    def _choose_place(self, where: str) -> None:
        self._bridge.do(ChangePlaces(copies=where), self._placed, failed=self._refuse_place)

    def _placed(self, _outcome: Outcome) -> None:
        self.refresh()

    def _refuse_place(self, words: str) -> None:
        self.elsewhere.fault.show_words(words)

    def _done(self, outcome: Outcome) -> None:
        self.message.advise(outcome.words)
        self.refresh()
        if self._chosen is not None:
            self._compare(self._chosen)

    def _note_change(self, _outcome: Outcome) -> None:
        if self.isVisible():
            self.refresh()


def _words(copy: CopySeen, today: date) -> str:
    day = tr("today") if copy.day == today else ""
    if copy.day is not None and not day:
        day = date_words(copy.day, year=True)
    size = tr("{size} MB", size=plain(max(copy.size / MB, 0.1), 1))
    return " · ".join(filter(None, (day, copy.words, size)))
