"""Asks for what the window shows: after a change, as time passes, and only while it is seen."""

from dataclasses import dataclass

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QWidget

from studio_log.services.commands import Outcome
from studio_log.services.questions import Status, StatusFor, Timeline, TimelineFor
from studio_log.ui.bench.bench_page import BenchPage
from studio_log.ui.bench.reminder_bar import ReminderBar
from studio_log.ui.bridge import FOREIGN, Bridge
from studio_log.ui.lots.lot_list import LotList
from studio_log.ui.lots.lot_sheet import LotSheetPage
from studio_log.ui.panes import Panes
from studio_log.ui.passing import Passing
from studio_log.ui.status_line import StatusLine
from studio_log.ui.timeline.timeline_page import TimelinePage
from studio_log.ui.top_bar import TopBar


@dataclass(frozen=True)
class Shown:
    """The parts that show what the studio answers."""

    top_bar: TopBar
    reminder_bar: ReminderBar
    lots: LotList
    timeline: TimelinePage
    sheet: LotSheetPage
    bench: BenchPage
    status_line: StatusLine
    panes: Panes


class Refreshing(QObject):
    """Keeps the parts of one window true; `minute` says when time alone has aged them."""

    def __init__(self, window: QWidget, bridge: Bridge, minute: Passing, shown: Shown) -> None:
        super().__init__(window)
        self._window = window
        self._bridge = bridge
        self._minute = minute
        self._at = shown
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self.timeline)
        minute.moved.connect(self._move_on)
        minute.aged.connect(self._refresh_ages)
        minute.stale.connect(self._refresh_stale)

    @property
    def seen(self) -> bool:
        """Whether the window is on the screen."""
        return self._window.isVisible() and not self._window.isMinimized()

    def after(self, outcome: Outcome) -> None:
        """Ask for what a change touches beyond the pages, which see to themselves."""
        if outcome.lots or outcome.settings or outcome is FOREIGN:
            self._soon.start()
        self.status()

    def all(self) -> None:
        """Ask for everything."""
        self._at.lots.refresh()
        self._at.sheet.refresh()
        self._at.bench.refresh()
        self.timeline()
        self.status()

    def timeline(self) -> None:
        """Ask for the steps over time."""
        self._bridge.ask(TimelineFor(), self._show_timeline)

    def status(self) -> None:
        """Ask what the foot of the window says."""
        self._bridge.ask(StatusFor(), self._show_status)

    def _move_on(self) -> None:
        if self.seen:
            self._at.top_bar.tick(rests=self._minute.rests)
            self._at.timeline.set_now(self._bridge.now())

    def _refresh_stale(self) -> None:
        refresh = self.all if self.seen else self._at.bench.refresh
        refresh()  # unseen, the tray still says what is next

    def _refresh_ages(self) -> None:
        if self.seen:
            self._at.lots.refresh()
            self._at.sheet.refresh()

    def _show_timeline(self, timeline: Timeline) -> None:
        page = self._at.timeline
        page.show_around(timeline.closed, timeline.shared, left_out=timeline.left_out)
        page.show_lanes(timeline.lanes, timeline.nights, timeline.now, timeline.zone)
        self._at.panes.share(page.wanted_height())

    def _show_status(self, status: Status) -> None:
        self._at.status_line.show_status(status)
        self._at.reminder_bar.show_status(status)
