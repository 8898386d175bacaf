"""The bench: one click or one key answers; another takes it back."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.services.commands import AnswerReminder, Undo
from studio_log.services.questions import Bench
from studio_log.ui.bench.bench_page import NO_TAKE_BACK, BenchPage
from studio_log.ui.bench.card_view import CardView, headed
from studio_log.ui.chime import Chime
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.style import sheet
from tests.ui.fake_studio import DRY, NOW, SPIN, STIR, FakeStudio, HandClock
from tests.ui.window_kit import WrittenAsk, bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
"""The off-screen platform says this of every window that it shows."""


class CountedChime(Chime):
    """Counts instead of sounding."""

    def __init__(self) -> None:
        super().__init__()
        self.times = 0

    def sound(self, sound: str = "rings") -> None:
        """Count, and keep which sound it was."""
        self.times += 1
        self.last = sound


class Stand:
    """A bench page over a fake studio."""

    def __init__(self, qtbot: QtBot, studio: FakeStudio) -> None:
        self.studio = studio
        self.clock = HandClock()
        self.bridge = bridge_over(studio, self.clock)
        self.ask = WrittenAsk()
        self.chime = CountedChime()
        self.page = BenchPage(self.bridge, self.ask, self.chime)
        self.page.setStyleSheet(sheet(theme()))
        self.page.resize(360, 800)
        qtbot.addWidget(self.page)
        self.page.show()
        self.refresh()

    def refresh(self) -> None:
        """Ask anew."""
        self.page.refresh()
        settle()

    def answers(self) -> list[AnswerReminder]:
        """Give the answers sent."""
        return self.studio.sent(AnswerReminder)


@pytest.fixture
def stand(qtbot: QtBot) -> Stand:
    """Give the bench with two cards for now."""
    return Stand(qtbot, FakeStudio())


def test_answers_are_at_least_72_pixels_high(stand: Stand) -> None:
    heights = [view.answer.height() for view in stand.page.views]
    heights.append(stand.page.views[1].second_answer.height())
    assert len(heights) == 3
    assert min(heights) >= 72


def test_a_card_says_its_urgency_in_a_word(stand: Stand) -> None:
    first, second = stand.page.views
    assert first.due.text() == "Now · due 13:00, 8 min late"
    assert second.due.text() == "Soon · asked from 13:05"
    assert first.title.text() == "26-031 · Stir the soak"


def test_a_title_sets_the_act_apart_from_its_lot() -> None:
    card = replace(STIR, title=f"Drain the beans {STIR.lot} Linen runners × 2")
    assert headed(card) == (
        f"Drain the beans · {STIR.lot} Linen runners\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}2"
    )
    assert headed(replace(STIR, title="Stir the soak")) == f"{STIR.lot} · Stir the soak"
    dye = "Dye arm no soy of T26-001 on 1 Dec"
    assert headed(replace(STIR, lot="T26-001", title=dye)) == dye, "a sentence is not parted"


def test_one_click_answers_and_holds_further_clicks_until_it_is_home(
    stand: Stand, qtbot: QtBot
) -> None:
    button = stand.page.views[0].answer
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert stand.answers() == [AnswerReminder(STIR.key, "done")]


def test_the_card_that_rings_is_answered_before_one_that_stands_above_it(qtbot: QtBot) -> None:
    studio = FakeStudio(bench=Bench((replace(DRY, raised=False), STIR), (), (), "", ""))
    stand = Stand(qtbot, studio)
    assert stand.page.answer_top()
    assert stand.answers() == [AnswerReminder(STIR.key, "done")]
    assert stand.page.answer_top()
    assert stand.answers()[1].key == DRY.key
    assert not stand.page.answer_top()


def test_still_damp_is_sent_as_damp(stand: Stand, qtbot: QtBot) -> None:
    qtbot.mouseClick(stand.page.views[1].second_answer, Qt.MouseButton.LeftButton)
    assert stand.answers() == [AnswerReminder(DRY.key, "damp")]


@pytest.mark.parametrize(
    ("at", "span", "morning"),
    [
        (0, timedelta(minutes=10), False),
        (1, timedelta(minutes=30), False),
        (2, timedelta(hours=1), False),
        (3, None, True),
    ],
)
def test_putting_off_sends_its_span(
    stand: Stand, at: int, span: timedelta | None, morning: bool
) -> None:
    menu = stand.page.views[0].later.menu()
    menu.actions()[at].trigger()
    assert stand.answers() == [
        AnswerReminder(STIR.key, "putoff", put_off=span, until_morning=morning)
    ]


def test_what_putting_off_costs_is_said_before_it_is_chosen(stand: Stand) -> None:
    first, second = stand.page.views
    assert not first.warning.isVisibleTo(stand.page)
    assert "the last call is at 14:00" in second.warning.text()


def test_everything_can_be_put_off_ten_minutes_at_once(stand: Stand) -> None:
    stand.page.put_all_off()
    ten = timedelta(minutes=10)
    assert stand.answers() == [
        AnswerReminder(key, "putoff", put_off=ten) for key in (STIR.key, DRY.key)
    ]


def test_a_skip_goes_with_its_reason_and_not_without_an_answer(stand: Stand) -> None:
    stand.page.views[0].skip_action.trigger()
    assert stand.answers() == []
    stand.ask.answers["reason"] = "the milk turned"
    stand.page.views[0].skip_action.trigger()
    assert stand.answers() == [AnswerReminder(STIR.key, "skip", note="the milk turned")]


def test_an_answer_at_a_stated_time_carries_that_instant(stand: Stand) -> None:
    stand.ask.answers["moment"] = NOW - timedelta(minutes=20)
    stand.page.views[0].at_action.trigger()
    assert stand.answers() == [AnswerReminder(STIR.key, "done", NOW - timedelta(minutes=20))]


def test_a_refused_answer_frees_the_card_and_says_why(stand: Stand) -> None:
    said: list[str] = []
    stand.bridge.refused.connect(said.append)
    stand.studio.refusals.append(Refusal("It was answered already."))
    stand.page.answer(STIR.key)
    settle()
    assert said == ["It was answered already."]
    assert not stand.page.views[0].waiting


def test_a_doubted_answer_can_be_insisted_on(stand: Stand) -> None:
    doubts = []
    stand.bridge.questioned.connect(doubts.append)
    stand.studio.refusals.append(Question("That is very early. Take it?"))
    stand.page.answer(STIR.key)
    settle()
    stand.bridge.insist(doubts[0])
    assert [answer.sure for answer in stand.answers()] == [False, True]


def test_the_last_act_is_taken_back_from_the_same_place(stand: Stand, qtbot: QtBot) -> None:
    before = stand.page.take_back.geometry()
    assert stand.page.take_back.text() == "Take back: 26-031 stirred 10:05"
    qtbot.mouseClick(stand.page.take_back, Qt.MouseButton.LeftButton)
    assert stand.studio.sent(Undo) == [Undo("26-031")]
    stand.clock.at = NOW + timedelta(minutes=10)
    stand.refresh()
    assert stand.page.take_back.text() == NO_TAKE_BACK
    assert not stand.page.take_back.isEnabled()
    assert stand.page.take_back.geometry() == before


def test_the_second_timer_runs_only_while_something_counts_down(stand: Stand) -> None:
    assert not stand.page.counting
    stand.studio.bench = replace(stand.studio.bench, now=(SPIN, STIR))
    stand.refresh()
    assert stand.page.counting
    assert stand.page.views[0].digits.text() == "12:05"
    stand.studio.bench = replace(stand.studio.bench, now=(STIR,))
    stand.refresh()
    assert not stand.page.counting


def test_the_digits_are_large_and_the_end_chimes_once(qtbot: QtBot) -> None:
    stand = Stand(qtbot, FakeStudio(bench=Bench((SPIN,), (), (), "", "")))
    assert stand.page.views[0].digits.font().pixelSize() >= 64
    stand.clock.at = NOW + timedelta(minutes=12)
    stand.page.tick()
    assert stand.page.views[0].digits.text() == "0:05"
    assert stand.chime.times == 0
    stand.clock.at = NOW + timedelta(minutes=12, seconds=5)
    stand.page.tick()
    stand.page.tick()
    assert stand.page.views[0].digits.text() == "0:00"
    assert stand.chime.times == 1


def test_the_keyboard_stays_on_the_bench_when_its_card_goes(stand: Stand) -> None:
    stand.page.activateWindow()
    first, second = stand.page.views
    first.answer.setFocus()
    stand.studio.bench = replace(stand.studio.bench, now=(DRY,))
    stand.refresh()
    assert second.answer.hasFocus()


def test_an_empty_bench_says_so_kindly(qtbot: QtBot) -> None:
    stand = Stand(qtbot, FakeStudio(bench=Bench((), (), (), "Next: 16:00 26-031 stir", "")))
    assert stand.page.nothing.isVisible()
    assert stand.page.next_words.text() == "Next: 16:00 26-031 stir"
    assert stand.page.count.text() == "nothing due"


def test_a_card_says_once_what_happens_if_it_waits(qtbot: QtBot) -> None:
    late = "The milk turns sour."
    warned = replace(STIR, if_late=late, put_off_warning=f"The limit is today 16:00. {late}")
    view = CardView(warned)
    qtbot.addWidget(view)
    assert view.late.text() == late
    assert view.warning.text() == "If put off: The limit is today 16:00."
    view.show_card(replace(warned, put_off_warning=""))
    assert view.warning.isHidden()
