"""The window “Hours”: the week above, holidays and single days below, kept together."""

from collections.abc import Mapping
from dataclasses import asdict
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QSize, Qt, QTimer, Slot
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QBoxLayout, QDialog, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.domain.hours_draft import NAMES, HoursDraft, draft_from, draft_values
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.questions import SettingsFor
from studio_log.services.settings import Settings
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.hours.days_pane import DaysPane
from studio_log.ui.hours.history import History
from studio_log.ui.hours.holidays_pane import HolidaysPane
from studio_log.ui.hours.week_pane import WeekPane
from studio_log.ui.typed import typed
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

DRAFT: Final = "hours"
CHANGED: Final = "changed"
"""Of a draft left here: the names of the settings that it changes."""
LEFT: Final = tr_later(
    "What was changed here and not kept stands here again. Undo goes back to what is in force."
)
NOT_PUT_IN: Final = tr_later(
    "Something is typed for a single day and not put in. Put it in, or clear its lines."
)
ELSEWHERE: Final = tr_later(
    "The hours were changed elsewhere meanwhile. What stands here is as you left it; keeping it "
    "replaces them."
)
BESIDE: Final = 50
"""From so many line heights of width on, holidays and single days stand side by side."""
STILL_MS: Final = 700
QUIET: Final = frozenset({"quiet_start", "quiet_end", "quiet_days"})


class HoursBox(QDialog):
    """Edits a draft and keeps it by one command; what is left without keeping waits here."""

    def __init__(self, bridge: Bridge, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Hours — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self._bridge = bridge
        draft = draft_from(settings_of(settings))
        self._before = draft_values(draft)
        today = bridge.now().astimezone(ZoneInfo(settings.zone or bridge.zone())).date()
        self.history = History(draft)
        self.week = WeekPane()
        self.holidays = HolidaysPane(bridge, today)
        self.days = DaysPane(today)
        self.message = MessageBar(bridge)
        self.said = Words(tone="soft")
        self.undo = button(tr("&Undo"))
        self.redo = button(tr("Re&do"))
        self.keep = button(tr("Keep t&hese"), kind="primary")
        self.leave = button(tr("C&lose"))
        self._still = QTimer(self, singleShot=True, interval=STILL_MS)
        self._lay_out()
        self._connect()
        self.show_draft()
        self._take_up()
        self.week.view.setFocus(Qt.FocusReason.OtherFocusReason)

    @property
    def draft(self) -> HoursDraft:
        """The hours as they stand here."""
        return self.history.now

    def show_draft(self) -> None:
        """Show the draft in hand everywhere."""
        self.week.show_draft(self.draft)
        self.holidays.show_draft(self.draft)
        self.days.show_draft(self.draft, self.holidays.names)
        self.undo.setEnabled(self.history.can_undo)
        self.redo.setEnabled(self.history.can_redo)

    @Slot()
    def submit(self) -> None:
        """Send what was changed; the window stays where something is wrong or refused."""
        self.message.put_away()
        wrong = self.week.lead_to_fault()
        if wrong:
            self.message.refuse(wrong)
            return
        if self.days.pending():
            self.days.hours.setFocus(Qt.FocusReason.OtherFocusReason)
            self.message.advise(tr(NOT_PUT_IN))
            return
        try:
            draft_values(self.draft)
        except Refusal as refusal:
            self.message.refuse(str(refusal))
            return
        changed = self._changed()
        if changed:
            self._bridge.do(ChangeSettings(changed), self._kept, failed=self.message.refuse)
        else:
            self._kept(None)

    @Slot()
    def take_back(self) -> None:
        """Take the last change back."""
        if self.history.undo():
            self._edited()

    @Slot()
    def restore(self) -> None:
        """Restore what was taken back."""
        if self.history.redo():
            self._edited()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        beside = self.width() >= em(self, BESIDE)
        way = QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
        self._below.setDirection(way)

    @override
    def done(self, result: int) -> None:
        self._keep_draft()
        super().done(result)

    def _lay_out(self) -> None:
        body = QWidget()
        page = QVBoxLayout(body)
        page.setContentsMargins(20, 16, 20, 16)
        page.setSpacing(22)
        page.addWidget(self.week)
        self._below = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._below.setSpacing(28)
        self._below.addWidget(self.holidays, 1)
        self._below.addWidget(self.days, 1)
        page.addLayout(self._below, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        self._area = scrolled(body, name=tr("Hours"))
        whole.addWidget(self._area, 1)
        whole.addWidget(self.message)
        foot = QWidget()
        flow = FlowLayout(foot, gap=10)
        flow.setContentsMargins(20, 8, 20, 14)
        for part in (growing(self.said), self.undo, self.redo, self.keep, self.leave):
            flow.addWidget(part)
        whole.addWidget(foot)
        room = self.screen().availableGeometry().size() - QSize(40, 60)
        self.resize(QSize(em(self, 62), em(self, 54)).boundedTo(room))

    def _connect(self) -> None:
        for pane in (self.week, self.holidays, self.days):
            pane.edited.connect(self._take)
        self.holidays.known.connect(self._holidays_known)
        self._bridge.changed.connect(self._changed_elsewhere)
        self.undo.clicked.connect(self.take_back)
        self.redo.clicked.connect(self.restore)
        self.keep.clicked.connect(self.submit)
        self.leave.clicked.connect(self.reject)
        self._still.timeout.connect(self._keep_draft)
        for keys, act in (
            (QKeySequence.StandardKey.Undo, self.take_back),
            (QKeySequence.StandardKey.Redo, self.restore),
            (QKeySequence.StandardKey.Save, self.submit),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(act)

    @Slot(object)
    def _changed_elsewhere(self, outcome: Outcome) -> None:
        if outcome.settings and self.isVisible():
            self._bridge.ask(SettingsFor(), self._compare)

    def _compare(self, settings: Settings) -> None:
        """Show hours that another window or a command set; with changes of one's own, say so."""
        there = draft_from(settings_of(settings))
        before = draft_from(self._before)
        if there == before:
            return
        self._before = draft_values(there)
        if self.draft == before:
            self.history = History(there)
            self.show_draft()
        else:
            self.message.advise(tr(ELSEWHERE))

    @Slot(object, str)
    def _take(self, draft: HoursDraft, source: str) -> None:
        self.history.push(draft, source)
        self._edited()

    def _edited(self) -> None:
        self.message.put_away()
        self.show_draft()
        self._still.start()

    @Slot()
    def _holidays_known(self) -> None:
        self.days.show_draft(self.draft, self.holidays.names)

    def _take_up(self) -> None:
        """Show again what was left here without keeping, as far as it makes sense."""
        left = typed().draft(DRAFT)
        if left is None:
            return
        try:
            draft = draft_from({**self._before, **_known(left.values)})
        except Refusal:
            typed().drop_draft(DRAFT)
            return
        if draft != self.draft:
            self.history.push(draft)
            self.show_draft()
        self.week.type_again(left.values)
        self.days.type_again(left.values)
        self.message.advise(tr(LEFT))

    @Slot()
    def _keep_draft(self) -> None:
        """Keep what is not kept yet, so that no crash and no other step loses it."""
        self._still.stop()
        half = {**self.week.half_typed(), **self.days.half_typed()}
        changed = self._changed()
        if changed:
            half |= {**changed, CHANGED: " ".join(changed)}
        typed().keep_draft(DRAFT, half, self._bridge.now())

    def _changed(self) -> dict[str, str]:
        """Give the settings that differ from those in force; none where they cannot be kept."""
        try:
            values = draft_values(self.draft)
        except Refusal:
            return {}
        changed = {name for name in NAMES if values[name] != self._before[name]}
        if changed & QUIET:
            # They are written together: each alone means another week.
            changed |= QUIET
        return {name: values[name] for name in NAMES if name in changed}

    def _kept(self, _outcome: Outcome | None) -> None:
        self._before = draft_values(self.draft)
        typed().drop_draft(DRAFT)
        self.accept()


def settings_of(settings: Settings) -> dict[str, str]:
    """Give the settings that the hours are made of, by name."""
    values = asdict(settings)
    return {name: values[name] for name in NAMES}


def _known(values: Mapping[str, str]) -> dict[str, str]:
    """Give what was changed; a name whose text is gone was emptied."""
    return {name: values.get(name, "") for name in values.get(CHANGED, "").split() if name in NAMES}
