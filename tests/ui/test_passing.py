"""The window as time passes: each minute in use or while something is due, seldom at rest."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from studio_log.services.questions import BenchFor, LotSheetFor, TimelineFor
from studio_log.services.search import FindLots
from studio_log.ui.bridge import FOREIGN
from studio_log.ui.freshness import Freshness
from studio_log.ui.main_window import MainWindow
from studio_log.ui.minute import MINUTE, MinuteClock
from studio_log.ui.passing import AT_REST
from studio_log.ui.theme.look import apply_theme
from tests.ui.fake_studio import NOW, FakeStudio, HandClock
from tests.ui.window_kit import HandTray, WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints|raise")
ALL = {FindLots, LotSheetFor, BenchFor, TimelineFor}
ZONE = "Europe/London"


class Room:
    """The window over a studio in which nothing is due, and its clock."""

    def __init__(self) -> None:
        self.studio = FakeStudio()
        whole = self.studio.bench
        coming = tuple(replace(one, due=NOW + timedelta(hours=5)) for one in whole.later)
        self.busy = whole
        self.quiet = replace(whole, now=(), later=coming, tonight=(), take_back=None)
        self.studio.bench = self.quiet
        self.clock = HandClock()
        self.clock.at = NOW
        self.bridge = bridge_over(self.studio, self.clock)
        self.window = MainWindow(
            self.bridge,
            ask=WrittenAsk(),  # type: ignore[arg-type]
            tray=HandTray(available=True),  # type: ignore[arg-type]
        )
        self.window.show()
        self.window.start()
        settle()
        self.window.choose_lot("26-031")
        settle()

    def strike(self, **later: float) -> set[type]:
        """Let time pass and the clock strike; gives the kinds of questions asked."""
        self.clock.at += timedelta(**later)
        self.studio.asked.clear()
        self.window.minute.strike()
        settle()
        return {type(question) for question in self.studio.asked}

    @property
    def told(self) -> str:
        return self.window.top_bar.moment.text()


@pytest.fixture
def room(qapp: QApplication) -> Iterator[Room]:
    apply_theme(qapp, "light", 100, family="DejaVu Sans")
    made = Room()
    yield made
    made.window.minute.stop()
    made.window.end_session()
    made.window.close()
    made.bridge.close()
    made.window.deleteLater()
    settle()


def test_in_use_everything_is_asked_for_each_minute(room: Room) -> None:
    assert room.strike(minutes=1) >= ALL
    assert not room.window.minute.rests
    assert room.told == "Tue 9 June · 13:09"


def test_left_alone_only_lengths_of_time_are_asked_for_and_the_clock_says_as_of_when(
    room: Room,
) -> None:
    room.strike(minutes=2)
    assert room.window.minute.rests
    assert room.strike(minutes=15) == {FindLots, LotSheetFor}
    assert room.told == "Tue 9 June · as of 13:25"


def test_what_is_due_keeps_the_window_awake(room: Room) -> None:
    room.studio.bench = room.busy
    room.window.bench.refresh()
    settle()
    assert room.strike(minutes=30) >= ALL
    assert not room.window.minute.rests
    assert room.told == "Tue 9 June · 13:38"


def test_a_reminder_wakes_a_window_at_rest(room: Room) -> None:
    room.strike(minutes=2)
    room.clock.at += timedelta(minutes=3)
    room.studio.bench = room.busy
    room.bridge.tell_changed(FOREIGN)
    settle()
    assert not room.window.minute.rests
    assert room.told == "Tue 9 June · 13:13"


def test_a_moment_at_which_words_change_has_everything_asked_for(room: Room) -> None:
    room.strike(minutes=2)
    assert room.strike(hours=5) >= ALL


@pytest.mark.parametrize("sign", ["key", "mouse"])
def test_the_first_key_or_move_of_the_mouse_brings_all_up_to_date(room: Room, sign: str) -> None:
    room.strike(minutes=2)
    room.clock.at += timedelta(minutes=7)
    room.studio.asked.clear()
    handle = room.window.windowHandle()
    if sign == "key":
        QTest.keyClick(handle, Qt.Key.Key_Shift)
    else:
        QTest.mouseMove(handle, QPoint(40, 40))
        QTest.mouseMove(handle, QPoint(60, 60))
    settle()
    assert {type(question) for question in room.studio.asked} >= ALL
    assert not room.window.minute.rests
    assert room.told == "Tue 9 June · 13:17"


def test_hidden_the_window_asks_for_the_bench_only_where_its_words_change(room: Room) -> None:
    room.strike(minutes=2)
    room.window.hide()
    assert room.strike(minutes=15) == set()
    assert room.strike(hours=5) == {BenchFor}
    room.studio.asked.clear()
    room.window.show()
    settle()
    assert {type(question) for question in room.studio.asked} >= ALL


def test_the_caret_stands_still_at_rest_and_blinks_again_in_use(room: Room) -> None:
    before = QApplication.cursorFlashTime()
    assert before > 0
    room.strike(minutes=2)
    assert QApplication.cursorFlashTime() == 0
    room.window.minute.use()
    assert QApplication.cursorFlashTime() == before


def test_a_field_of_a_dialog_counts_as_use(room: Room) -> None:
    room.strike(minutes=2)
    field = QLineEdit()
    field.show()
    room.window.minute.watch(field.windowHandle())
    QTest.keyClick(field.windowHandle(), Qt.Key.Key_A)
    settle()
    field.deleteLater()
    assert not room.window.minute.rests


@pytest.mark.parametrize(
    ("every", "ms"), [(MINUTE, 60_000 - 8_000 + 20), (AT_REST, 7 * 60_000 - 8_000 + 20)]
)
@pytest.mark.usefixtures("qapp")
def test_the_clock_strikes_when_the_time_is_full(every: timedelta, ms: int) -> None:
    clock = HandClock()
    clock.at = NOW.replace(minute=8, second=8, microsecond=0)
    bridge = bridge_over(FakeStudio(), clock)
    minute = MinuteClock(bridge)
    minute.start(every)
    assert minute._timer.interval() == ms
    minute.stop()
    bridge.close()


def test_midnight_on_the_wall_changes_words() -> None:
    fresh = Freshness()
    late = NOW.replace(hour=22, minute=30)  # 23:30 in London in June, which is at UTC + 1 h
    bench = replace(FakeStudio().bench, now=(), later=(), tonight=(), take_back=None)
    fresh.learn(bench, late, ZONE)
    assert not fresh.turned(late + timedelta(minutes=29))
    assert fresh.turned(late + timedelta(minutes=30))
    assert fresh.turned(late - timedelta(minutes=1)), "a clock set back"


def test_a_clock_set_back_does_not_make_the_window_look_used() -> None:
    fresh = Freshness()
    fresh.use(NOW)
    assert not fresh.left(NOW + timedelta(seconds=119))
    assert fresh.left(NOW + timedelta(minutes=2))
    assert fresh.left(NOW - timedelta(days=1))
