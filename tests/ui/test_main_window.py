"""The window whole: keys, bars, refreshing by what changed, closing, and room for everything."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    GoOn,
    Mark,
    Outcome,
    SetLot,
    SplitLot,
    Undo,
)
from studio_log.services.ports import NoticeText
from studio_log.services.questions import (
    BenchFor,
    LotSheetFor,
    SettingsFor,
    StatusFor,
    Timeline,
    TimelineFor,
)
from studio_log.services.settings import Settings
from studio_log.ui.ask import LotChange, SplitChoice
from studio_log.ui.bridge import FOREIGN
from studio_log.ui.lots.lot_model import LINE_ROLE
from studio_log.ui.main_window import TITLE, MainWindow
from studio_log.ui.theme.look import apply_theme
from studio_log.ui.widgets.parts import Words
from studio_log.ui.widgets.wrap_button import WrapButton
from tests.ui.fake_studio import DRY, NOW, SILENT, SPIN, STIR, FakeStudio, HandClock
from tests.ui.window_kit import HandTray, WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints|raise")


class Kit:
    """The window over a fake studio."""

    def __init__(self, studio: FakeStudio) -> None:
        self.studio = studio
        self.clock = HandClock()
        self.bridge = bridge_over(studio, self.clock)
        self.ask = WrittenAsk()
        self.tray = HandTray(available=True)
        self.window = MainWindow(self.bridge, ask=self.ask, tray=self.tray)  # type: ignore[arg-type]
        self.window.show()
        self.window.start()
        settle()
        self.window.choose_lot("26-031")
        settle()

    def leave(self) -> None:
        """Close for good."""
        self.window.minute.stop()
        self.window.end_session()
        self.window.close()
        self.bridge.close()
        self.window.deleteLater()
        settle()

    def trigger(self, slug: str) -> None:
        """Choose an act of the menus."""
        self.window.actions_by_slug[slug].trigger()
        settle()


@pytest.fixture
def kit(qapp: QApplication) -> Iterator[Kit]:
    """Give the window with its eight lots."""
    apply_theme(qapp, "light", 100, family="DejaVu Sans")
    made = Kit(FakeStudio())
    yield made
    made.leave()
    QApplication.setQuitOnLastWindowClosed(True)


def test_the_window_names_itself_and_its_studio(kit: Kit) -> None:
    assert kit.window.windowTitle() == TITLE == "Studio Log — a dyer’s logbook"
    assert kit.window.top_bar.studio.text() == "Harbour Lane Cloth Studio"
    assert kit.window.top_bar.moment.text() == "Tue 9 June · 13:08"


def test_space_answers_what_rings_from_the_lot_list(kit: Kit, qtbot: QtBot) -> None:
    qtbot.keyClick(kit.window.lots.view, Qt.Key.Key_Space)
    assert kit.studio.sent(AnswerReminder) == [AnswerReminder(STIR.key, "done")]


def test_space_in_a_field_is_a_space(kit: Kit, qtbot: QtBot) -> None:
    qtbot.keyClicks(kit.window.lots.search, "a b")
    assert kit.window.lots.search.text() == "a b"
    assert kit.studio.sent(AnswerReminder) == []


def test_a_click_leaves_the_keyboard_where_it_was(kit: Kit, qtbot: QtBot) -> None:
    kit.window.activateWindow()
    kit.window.lots.view.setFocus()
    qtbot.mouseClick(kit.window.bench.views[0].answer, Qt.MouseButton.LeftButton)
    assert kit.window.lots.view.hasFocus()


def test_the_bar_shows_what_rings_and_answers_it(kit: Kit, qtbot: QtBot) -> None:
    bar = kit.window.reminder_bar
    assert bar.isVisible()
    assert bar.words.text() == "26-031 · Stir the soak"
    assert bar.answer.height() >= 72
    qtbot.mouseClick(bar.answer, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(bar.later, Qt.MouseButton.LeftButton)
    assert kit.studio.sent(AnswerReminder) == [
        AnswerReminder(STIR.key, "done"),
        AnswerReminder(STIR.key, "putoff", put_off=timedelta(minutes=10)),
    ]


def test_silent_channels_are_said_in_bar_and_status_line(kit: Kit, qtbot: QtBot) -> None:
    kit.studio.bench = replace(kit.studio.bench, now=(DRY,))
    kit.studio.status = SILENT
    kit.bridge.changed.emit(Outcome(reminders=True))
    settle()
    bar = kit.window.reminder_bar
    assert bar.words.text() == "Desktop notices are off: no service answers; ringing here only"
    assert kit.window.status_line.channels.text() == SILENT.channels
    assert kit.window.status_line.channels.property("tone") == "danger_ink"
    qtbot.mouseClick(bar.away, Qt.MouseButton.LeftButton)
    assert not bar.isVisible()


def test_a_reminder_that_is_raised_chimes_and_asks_for_the_bench(kit: Kit) -> None:
    heard: list[str] = []
    kit.window.chime.sound = heard.append  # type: ignore[assignment, method-assign]
    kit.studio.asked.clear()
    kit.bridge.tell_raised(NoticeText("Stir", "26-031", "now", (STIR.key,)))
    settle()
    assert heard == ["rings"]
    assert kit.studio.asked == [BenchFor()]
    kit.bridge.tell_raised(NoticeText("Too long", "26-031", "spoiling", (STIR.key,)))
    settle()
    assert heard == ["rings", "spoils"], "what spoils has its own sound"


def test_only_what_a_change_touches_is_asked_for(kit: Kit) -> None:
    kit.studio.asked.clear()
    kit.bridge.changed.emit(Outcome(lots=frozenset({"26-030"})))
    settle()
    kinds = [type(question) for question in kit.studio.asked]
    assert LotSheetFor not in kinds
    assert SettingsFor not in kinds
    assert kinds.count(TimelineFor) == 1
    kit.studio.asked.clear()
    kit.bridge.changed.emit(Outcome(reminders=True))
    settle()
    kinds = [type(question) for question in kit.studio.asked]
    assert TimelineFor not in kinds
    assert BenchFor in kinds
    assert StatusFor in kinds


def test_a_change_by_another_program_asks_for_everything(kit: Kit) -> None:
    kit.studio.asked.clear()
    kit.bridge.tell_changed(FOREIGN)
    settle()
    kinds = {type(question) for question in kit.studio.asked}
    assert {SettingsFor, TimelineFor, BenchFor, LotSheetFor, StatusFor} <= kinds


def test_the_clock_of_the_window_moves_with_the_minute(kit: Kit) -> None:
    kit.clock.at = NOW + timedelta(minutes=1)
    kit.window.minute.strike()
    assert kit.window.top_bar.moment.text() == "Tue 9 June · 13:09"


def test_advice_is_said_above_the_panes_until_put_away(kit: Kit, qtbot: QtBot) -> None:
    advice = "Start by 19:40 or after 21:10 and it ends in waking hours."
    kit.studio.outcomes.append(Outcome(advice=(advice,), lots=frozenset({"26-031"})))
    qtbot.keyClick(kit.window.lots.view, Qt.Key.Key_Space)
    settle()
    assert kit.window.message.words.text() == advice
    qtbot.mouseClick(kit.window.message.close_it, Qt.MouseButton.LeftButton)
    assert not kit.window.message.isVisible()


def test_a_doubt_is_asked_in_the_window_and_yes_sends_it_sure(kit: Kit, qtbot: QtBot) -> None:
    kit.studio.refusals.append(Question("It was stirred ten minutes ago. Again?"))
    qtbot.keyClick(kit.window.lots.view, Qt.Key.Key_Space)
    settle()
    assert kit.window.message.words.text() == "It was stirred ten minutes ago. Again?"
    qtbot.mouseClick(kit.window.message.yes, Qt.MouseButton.LeftButton)
    settle()
    assert [answer.sure for answer in kit.studio.sent(AnswerReminder)] == [False, True]


def test_a_fault_says_what_was_kept_and_its_details_can_be_copied(kit: Kit) -> None:
    kit.studio.refusals.append(ValueError("a bug"))
    kit.window.bench.answer_top()
    settle()
    assert "What was confirmed before is kept" in kit.window.message.words.text()
    kit.window.message.copy.click()
    assert QApplication.clipboard().text() == "ValueError: a bug"


def test_undo_takes_back_the_last_act_while_it_is_fresh_then_the_lots(kit: Kit) -> None:
    assert kit.window.top_bar.undo.toolTip() == "Take back: 26-031 stirred 10:05"
    kit.trigger("undo")
    kit.clock.at = NOW + timedelta(hours=1)
    kit.window.choose_lot("26-030")
    settle()
    kit.trigger("undo")
    assert kit.studio.sent(Undo) == [Undo("26-031"), Undo("26-030")]


def test_pieces_are_split_off_under_their_own_name_and_shown(kit: Kit) -> None:
    kit.ask.answers["split"] = SplitChoice((2,), "One runner, painted")
    kit.studio.outcomes.append(Outcome(code="26-030", lots=frozenset({"26-030", "26-031"})))
    kit.trigger("split")
    assert kit.studio.sent(SplitLot) == [SplitLot("26-031", (2,), "One runner, painted")]
    assert kit.window.sheet.code == "26-030"


def test_a_lot_goes_on_changes_and_stops_by_its_menu(kit: Kit) -> None:
    kit.ask.answers.update(
        method="soy-painting-short", lot_change=LotChange(place="shelf 3"), reason="moth"
    )
    for slug in ("go_on", "change", "stop"):
        kit.trigger(slug)
    assert kit.studio.sent(GoOn) == [GoOn("26-031", "soy-painting-short")]
    assert kit.studio.sent(SetLot) == [SetLot("26-031", place="shelf 3", seen=5)]
    assert kit.studio.sent(Mark) == [Mark("26-031", "4", Act.STOP, note="moth")]


def test_left_questions_send_nothing(kit: Kit) -> None:
    for slug in ("split", "go_on", "change", "stop"):
        kit.trigger(slug)
    assert kit.studio.done == []
    assert [name for name, _args in kit.ask.heard] == ["split", "method", "lot_change", "reason"]


def test_a_click_in_the_timeline_opens_that_step(kit: Kit) -> None:
    kit.window.timeline.step_chosen.emit("26-031", 2)
    settle()
    assert kit.window.sheet.steps.chosen == 2
    assert kit.window.lots.chosen == "26-031"


def test_closing_keeps_reminding_from_the_tray_and_says_so_once(kit: Kit) -> None:
    kit.ask.answers["closing"] = "keep"
    kit.window.close()
    settle()
    assert not kit.window.isVisible()
    assert kit.studio.sent(ChangeSettings) == [ChangeSettings({"closing_said": True})]
    assert "tray" in str(kit.ask.heard)
    kit.window.bring_forward()
    assert kit.window.isVisible()
    kit.studio.settings = replace(kit.studio.settings, closing_said=True)
    kit.bridge.tell_changed(FOREIGN)
    settle()
    kit.ask.heard.clear()
    kit.window.close()
    assert kit.ask.heard == []
    assert not kit.window.isVisible()


def test_without_a_tray_closing_makes_the_window_small(kit: Kit) -> None:
    kit.tray.available = False
    kit.ask.answers["closing"] = "keep"
    kit.window.close()
    assert kit.window.isMinimized()
    kit.window.bring_forward()
    assert not kit.window.isMinimized()


def test_leaving_the_question_leaves_the_window_open(kit: Kit) -> None:
    kit.window.close()
    assert kit.window.isVisible()


def test_quit_ends_for_good_without_a_question(kit: Kit, qtbot: QtBot) -> None:
    with qtbot.waitSignal(kit.window.quit_wanted):
        kit.trigger("quit")
    assert not kit.window.isVisible()
    assert kit.ask.heard == []


def test_the_tray_is_told_what_is_next(kit: Kit) -> None:
    assert kit.tray.bench is not None
    assert kit.tray.bench.now[0].key == STIR.key


@pytest.mark.usefixtures("qapp")
def test_a_studio_never_opened_is_welcomed_first() -> None:
    fresh = Kit(FakeStudio(settings=Settings()))
    assert fresh.window.welcome.isVisible()
    fresh.studio.settings = Settings(studio="My studio", welcomed=True)
    fresh.window.welcome.accept()
    fresh.bridge.changed.emit(Outcome(settings=True))
    settle()
    assert not fresh.window.welcome.isVisible()
    assert fresh.window.top_bar.studio.text() == "My studio"
    fresh.leave()


def test_a_test_rings_here_where_no_channel_can_be_tried(kit: Kit) -> None:
    kit.trigger("ring_test")
    assert "all that can be tried here" in kit.window.message.words.text()


def test_a_refused_setting_is_said(kit: Kit) -> None:
    kit.studio.refusals.append(Refusal("The text is as large as it gets."))
    kit.trigger("larger")
    assert kit.window.message.words.text() == "The text is as large as it gets."
    assert kit.studio.sent(ChangeSettings) == [ChangeSettings({"text_percent": 110})]


def test_larger_struck_twice_at_once_counts_twice(kit: Kit) -> None:
    for _ in range(2):
        kit.window.actions_by_slug["larger"].trigger()
    settle()
    sizes = [one.values["text_percent"] for one in kit.studio.sent(ChangeSettings)]
    assert sizes == [110, 120]


@pytest.mark.parametrize(
    ("size", "percent"), [((1440, 900), 100), ((1024, 700), 100), ((1024, 700), 200)]
)
def test_nothing_is_cut_at_any_size(
    qapp: QApplication, size: tuple[int, int], percent: int
) -> None:
    studio = FakeStudio()
    studio.settings = replace(studio.settings, text_percent=percent)
    studio.bench = replace(studio.bench, now=(SPIN, DRY, STIR))
    apply_theme(qapp, "light", percent, family="DejaVu Sans")
    kit = Kit(studio)
    kit.window.resize(*size)
    settle()
    cut = []
    for page in ("lots", "time", "lot", "bench"):
        kit.window.panes.go(page)
        settle()
        cut += cut_widgets(kit.window)
    shown = kit.window.size().toTuple()
    kit.leave()
    apply_theme(qapp, "light", 100, family="DejaVu Sans")
    assert cut == []
    assert shown == size


def test_a_low_window_leaves_what_rings_to_the_bench_beside_it(kit: Kit) -> None:
    ringing = replace(STIR, raised=True)
    kit.studio.bench = replace(kit.studio.bench, now=(ringing, DRY))
    kit.window.bench.refresh()
    kit.window.resize(1440, 900)
    settle()
    assert kit.window.reminder_bar.isVisible()
    kit.window.resize(1024, 700)
    settle()
    assert not kit.window.reminder_bar.isVisible()
    assert kit.window.bench.views[0].card == ringing
    quiet_first = replace(DRY, raised=False)
    kit.studio.bench = replace(kit.studio.bench, now=(quiet_first, ringing))
    kit.window.bench.refresh()
    settle()
    assert kit.window.reminder_bar.isVisible(), "the bench shows another card on top"


def test_in_a_small_window_with_large_text_pages_take_turns_and_take_the_keyboard(
    qapp: QApplication,
) -> None:
    apply_theme(qapp, "light", 200, family="DejaVu Sans")
    studio = FakeStudio()
    studio.settings = replace(studio.settings, text_percent=200)
    kit = Kit(studio)
    window = kit.window
    window.resize(1024, 700)
    settle()
    window.activateWindow()
    assert window.lots.isVisible()
    assert not window.bench.isVisible()
    assert window.reminder_bar.isVisible()
    window.panes.chips.button(3).click()
    settle()
    assert window.bench.isVisible()
    assert not window.lots.isVisible()
    assert not window.reminder_bar.isVisible()
    assert window.bench.views[0].answer.hasFocus()
    kit.leave()
    apply_theme(qapp, "light", 100, family="DejaVu Sans")


def cut_widgets(window: MainWindow) -> list[str]:
    """Name every visible button and line of words narrower or lower than its text."""
    cut = []
    for button in window.findChildren(QPushButton):
        shown = button.isVisible() and not isinstance(button, WrapButton)
        if shown and button.width() < button.minimumSizeHint().width():
            cut.append(f"button {button.text()}: {button.width()}")
    for words in window.findChildren(Words):
        if not words.isVisible():
            continue
        needed = words.heightForWidth(words.width()) if words.wordWrap() else 0
        wide = 0 if words.wordWrap() else words.minimumSizeHint().width()
        if words.height() < needed or words.width() < wide:
            cut.append(f"words {words.text()!r}: {words.size().toTuple()}")
    return cut


def test_a_lot_is_chosen_at_the_start_so_that_no_half_of_the_window_is_empty() -> None:
    studio = FakeStudio()
    kit = Kit(studio)
    first = kit.window.lots.model.index(0).data(LINE_ROLE).code
    kit.leave()
    window = MainWindow(bridge_over(studio), ask=WrittenAsk(), tray=HandTray(available=True))  # type: ignore[arg-type]
    window.start()
    settle()
    assert window.lots.chosen == first
    assert window.sheet.code == first
    window.minute.stop()
    window.end_session()
    window.close()
    window.deleteLater()
    settle()


class OneLane(FakeStudio):
    """A studio with one lot in the timeline."""

    def _TimelineFor(self, of: TimelineFor) -> Timeline:  # noqa: N802
        whole = super()._TimelineFor(of)
        return replace(whole, lanes=whole.lanes[:1])


def test_few_lots_leave_the_height_to_the_chosen_lot() -> None:
    heights = []
    for studio in (FakeStudio(), OneLane()):
        kit = Kit(studio)
        kit.window.resize(1440, 900)
        settle()
        heights.append(tuple(kit.window.panes.middle.sizes()))
        kit.leave()
    (many, beside_many), (few, beside_few) = heights
    assert few < many
    assert beside_few > beside_many
    assert few < beside_few


def test_a_long_name_does_not_make_the_window_wide(kit: Kit) -> None:
    kit.window.resize(1440, 900)
    settle()
    before = kit.window.panes.sizes()
    kit.window.bench.take_back.setText(f"Take back: {'x' * 180} is made.")
    kit.window.sheet.title.setText("y" * 200)
    settle()
    assert kit.window.panes.sizes() == before


def test_the_keyboard_coming_to_the_list_chooses_no_lot(kit: Kit) -> None:
    kit.window.choose_lot("26-999x")
    kit.window.lots.search.setFocus()
    settle()
    kit.window.lots.view.setFocus()
    settle()
    assert kit.window.lots.chosen == "26-999x"


def test_a_moment_moved_on_the_timeline_is_planned(kit: Kit) -> None:
    at = kit.bridge.now() + timedelta(hours=3)
    kit.window.timeline.view.plan_wanted.emit("26-031", 4, at)
    assert kit.studio.sent(Mark) == [Mark("26-031", "4", Act.PLAN, at)]


@pytest.mark.parametrize("wide", [1024, 1440])
def test_a_table_of_lots_is_given_room_and_takes_none_from_the_bench(kit: Kit, wide: int) -> None:
    window = kit.window
    window.resize(wide, 800)
    settle()
    rows, bench = window.lots.width(), window.bench.width()
    window.lots.look.as_table.trigger()
    settle()
    assert window.lots.width() >= rows
    assert window.lots.width() > rows or wide < 1440
    assert window.bench.width() == bench
    window.lots.look.as_rows.trigger()
    settle()
    assert window.lots.width() == rows
