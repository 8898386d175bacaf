"""The window “What rang”: search, days, the rows, the chosen one in words, export."""

from collections.abc import Sequence
from datetime import UTC, datetime, time, timedelta
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.domain.wall_clock import known_zone
from studio_log.language.words import tr, tr_later
from studio_log.services.questions import SettingsFor
from studio_log.services.rang import Rang, WhatRangFor
from studio_log.services.rang_export import rang_csv
from studio_log.services.rang_words import unanswered
from studio_log.services.settings import Settings
from studio_log.services.whole_file import write_whole
from studio_log.ui.bridge import Bridge
from studio_log.ui.rang.rang_model import RangModel
from studio_log.ui.rang.rang_view import FindLine, RangView, RangWords
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, one_of

SPANS: Final = (
    (0, tr_later("&Today")),
    (7, tr_later("&7 days")),
    (30, tr_later("&30 days")),
    (90, tr_later("&90 days")),
)
"""Days back from this morning, and their words."""
SOON_MS: Final = 150
LOOKING: Final = tr_later("Looking what rang…")
NOTHING: Final = tr_later("Nothing rang in these days.")
NOT_FOUND: Final = tr_later(
    "Nothing found for “{find}” in these days. Try fewer words or more days."
)
FAILED: Final = tr_later("What rang cannot be shown just now. Close this window and open it again.")


class RangBox(QDialog):
    """Every reminder of some days: due, rung, answered. Asks again only while it is seen."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("What rang — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge = bridge
        self._asked = 0
        self._chosen = ""
        self._seen_from = bridge.now()
        self.model = RangModel(self)
        self.search = FindLine()
        self.spans = self._make_spans()
        self.view = RangView(self.model)
        self.words = RangWords()
        self.empty = Words(tr(LOOKING), tone="soft")
        self.said = Words("", tone="soft")
        self.export = button(tr("&Export…"), says=tr("Export these rows as CSV"))
        self.leave = button(tr("&Close"))
        self._pages = QStackedWidget()
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._lay_out()
        self._connect()
        self._show_empty(tr(LOOKING))

    @property
    def days(self) -> int:
        """How many days back from this morning are shown."""
        return self.spans.checkedId()

    def refresh(self) -> None:
        """Ask for the rows; the studio's own zone says where a day begins."""
        self._soon.stop()
        self._asked += 1
        number = self._asked
        self._bridge.ask(
            SettingsFor(), partial(self._ask, number), failed=partial(self._fail, number)
        )

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()

    def _make_spans(self) -> QButtonGroup:
        titles = [(days, tr(title)) for days, title in SPANS]
        rows = (
            (days, words, tr("Show: {span}", span=words.replace("&", ""))) for days, words in titles
        )
        return one_of(self, rows, chosen=SPANS[-1][0])

    def _lay_out(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(10)
        whole.addLayout(self._head())
        whole.addWidget(self._middle(), 1)
        foot = QHBoxLayout()
        foot.setSpacing(8)
        foot.addWidget(self.said, 1)
        foot.addWidget(self.export)
        foot.addWidget(self.leave)
        whole.addLayout(foot)
        room = self.screen().availableSize()
        self.resize(min(em(self, 62), room.width()), min(em(self, 42), room.height()))

    def _head(self) -> FlowLayout:
        head = FlowLayout(gap=8)
        self.search.setMinimumWidth(em(self, 14))
        head.addWidget(growing(self.search))
        for chip in self.spans.buttons():
            head.addWidget(chip)
        return head

    def _middle(self) -> QWidget:
        halves = QSplitter(Qt.Orientation.Vertical)
        halves.setChildrenCollapsible(False)
        halves.addWidget(self.view)
        halves.addWidget(self.words)
        halves.setStretchFactor(0, 2)
        halves.setStretchFactor(1, 1)
        halves.setSizes([em(self, 26), em(self, 13)])
        self.words.setMinimumHeight(em(self, 4))
        self.view.setMinimumHeight(em(self, 5))
        blank = QWidget()
        column = QVBoxLayout(blank)
        column.addWidget(self.empty)
        column.addStretch()
        self._pages.addWidget(halves)
        self._pages.addWidget(blank)
        return self._pages

    def _connect(self) -> None:
        self._soon.timeout.connect(self.refresh)
        self.search.textChanged.connect(self._note_change)
        self.search.downward.connect(self._enter_rows)
        self.spans.idClicked.connect(self.refresh)
        self.view.row_chosen.connect(self._choose)
        self.export.clicked.connect(self._export)
        self.leave.clicked.connect(self.reject)
        find = QShortcut(QKeySequence(QKeySequence.StandardKey.Find), self)
        find.activated.connect(self._find)
        for news in (self._bridge.changed, self._bridge.raised, self._bridge.shown):
            news.connect(self._note_change)
        self.search.setFocus(Qt.FocusReason.OtherFocusReason)

    def _note_change(self, _news: object) -> None:
        """Ask again soon; nobody looks at a window that is hidden."""
        if self.isVisible():
            self._soon.start()

    def _find(self) -> None:
        self.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.search.selectAll()

    def _enter_rows(self) -> None:
        if self.model.rowCount():
            self.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def _ask(self, number: int, settings: Settings) -> None:
        now = self._bridge.now()
        zone = known_zone(settings.zone or self._bridge.zone())
        day = now.astimezone(zone).date() - timedelta(days=self.days)
        since = datetime.combine(day, time(0), zone).astimezone(UTC)
        question = WhatRangFor(since, now, self.search.text().strip())
        self._bridge.ask(
            question, partial(self._show, number, now), failed=partial(self._fail, number)
        )

    def _show(self, number: int, now: datetime, rows: Sequence[Rang]) -> None:
        if number != self._asked:
            return  # something else has been asked for since
        self._seen_from = now
        self.model.show_rows(rows, now)
        self.view.choose(self._chosen)
        self.export.setEnabled(bool(rows))
        if rows:
            self.said.set_tone("soft")
            self.said.setText(_counted(rows))
            self._pages.setCurrentIndex(0)
            return
        find = self.search.text().strip()
        self._show_empty(tr(NOT_FOUND).format(find=find) if find else tr(NOTHING))

    def _fail(self, number: int, words: str) -> None:
        if number == self._asked:
            self.model.show_rows((), self._seen_from)
            self._show_empty(words or tr(FAILED))

    def _show_empty(self, words: str) -> None:
        self.empty.setText(words)
        self.said.setText("")
        self.export.setEnabled(False)
        self._pages.setCurrentIndex(1)

    def _choose(self, row: Rang | None) -> None:
        if row is not None:
            self._chosen = row.key
        self.words.show_row(row, self._seen_from)

    def _export(self) -> None:
        name = tr("what-rang-{seen_from:%Y-%m-%d}.csv", seen_from=self._seen_from)
        chosen, _ = QFileDialog.getSaveFileName(
            self, tr("Export what rang"), name, tr("Comma-separated values (*.csv)")
        )
        if not chosen:
            return
        try:
            write_whole(Path(chosen), rang_csv(self.model.rows))
        except Refusal as refusal:
            self.said.set_tone("danger_ink")
            self.said.setText(str(refusal))
            return
        self.said.set_tone("soft")
        self.said.setText(
            tr("{counted} Written to {chosen}.", counted=_counted(self.model.rows), chosen=chosen)
        )


def _counted(rows: Sequence[Rang]) -> str:
    count = (
        tr("1 reminder.")
        if len(rows) == 1
        else tr("{count:,} reminders, the latest due first.", count=len(rows))
    )
    left = sum(map(unanswered, rows))
    if not left:
        return count
    waits = tr("1 waits") if left == 1 else tr("{left:,} wait", left=left)
    return tr("{count} {waits} for an answer.", count=count, waits=waits)
