"""The bridge: commands go down, answers come home in the GUI thread, refusals with words."""

import threading
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import Hush, Mark, Outcome, Undo
from studio_log.services.ports import NoticeText
from studio_log.services.questions import BenchFor
from studio_log.ui.bridge import FOREIGN, Bridge, Doubt, insisted, touches
from tests.ui.fake_studio import FakeStudio, HandClock
from tests.ui.window_kit import bridge_over, settle

pytestmark = pytest.mark.usefixtures("qapp")

STIR = Mark("26-031", "4", Act.TEND)


def test_answers_of_a_real_thread_come_home_in_the_gui_thread_in_order(qtbot: QtBot) -> None:
    seen: list[tuple[Any, int]] = []
    told: list[int] = []
    studio = FakeStudio()
    with ThreadPoolExecutor(max_workers=1) as worker:
        bridge = Bridge(worker, studio, HandClock())
        bridge.changed.connect(lambda _outcome: told.append(threading.get_ident()))
        bridge.do(STIR, lambda outcome: seen.append((outcome, threading.get_ident())))
        bridge.ask(BenchFor(), lambda bench: seen.append((bench, threading.get_ident())))
        qtbot.waitUntil(lambda: len(seen) == 2)
    here = threading.get_ident()
    assert seen == [(Outcome(lots=frozenset({"26-031"})), here), (studio.bench, here)]
    assert told == [here]


def test_a_refusal_goes_to_the_caller_who_asked_for_it_else_to_all() -> None:
    studio = FakeStudio(refusals=[Refusal("No such step."), Refusal("No such lot.")])
    bridge = bridge_over(studio)
    to_all: list[str] = []
    mine: list[str] = []
    bridge.refused.connect(to_all.append)
    bridge.do(STIR, failed=mine.append)
    bridge.do(STIR)
    settle()
    assert (mine, to_all) == (["No such step."], ["No such lot."])


def test_an_insisted_doubt_is_sent_again_sure() -> None:
    studio = FakeStudio(refusals=[Question("That is before the lot was made. Take it?")])
    bridge = bridge_over(studio)
    doubts: list[Doubt] = []
    went: list[Outcome] = []
    bridge.questioned.connect(doubts.append)
    bridge.do(STIR, went.append)
    settle()
    assert [doubt.words for doubt in doubts] == ["That is before the lot was made. Take it?"]
    assert went == []
    bridge.insist(doubts[0])
    settle()
    assert [command.sure for command in studio.sent(Mark)] == [False, True]
    assert len(went) == 1


def test_a_fault_of_the_program_is_told_with_its_details_and_is_no_change() -> None:
    studio = FakeStudio(refusals=[ValueError("a bug")])
    bridge = bridge_over(studio)
    broken: list[str] = []
    changes: list[Outcome] = []
    bridge.broke.connect(broken.append)
    bridge.changed.connect(changes.append)
    bridge.do(STIR)
    settle()
    assert broken == ["ValueError: a bug"]
    assert changes == []


class Screen(QObject):
    """A screen that notes its answers."""

    heard: list[Any] = []

    def take(self, answer: Any) -> None:
        """Note it."""
        self.heard.append(answer)


def test_an_answer_for_a_screen_that_is_gone_is_dropped() -> None:
    import shiboken6

    bridge = bridge_over(FakeStudio())
    screen = Screen()
    bridge.ask(BenchFor(), screen.take)
    shiboken6.delete(screen)
    settle()
    assert Screen.heard == []


def test_changes_by_others_and_notices_are_told_from_any_thread() -> None:
    bridge = bridge_over(FakeStudio())
    changes: list[Any] = []
    notices: list[Any] = []
    bridge.changed.connect(changes.append)
    bridge.raised.connect(notices.append)
    notice = NoticeText("Stir", "26-031", "now", ("k",))

    def elsewhere() -> None:
        bridge.tell_changed(FOREIGN)
        bridge.tell_raised(notice)

    thread = threading.Thread(target=elsewhere)
    thread.start()
    thread.join()
    assert changes == []
    settle()
    assert changes == [FOREIGN]
    assert changes[0] is FOREIGN
    assert notices == [notice]


def test_a_closed_bridge_sends_and_tells_nothing() -> None:
    studio = FakeStudio()
    bridge = bridge_over(studio)
    bridge.close()
    bridge.do(STIR)
    bridge.tell_changed(FOREIGN)
    settle()
    assert studio.done == []


def test_only_commands_that_can_be_doubted_are_made_sure() -> None:
    assert insisted(STIR) == Mark("26-031", "4", Act.TEND, sure=True)
    assert insisted(Undo("26-031")) == Undo("26-031", sure=True)
    assert insisted(Hush()) == Hush()


def test_a_foreign_change_touches_every_lot() -> None:
    assert touches(FOREIGN, "26-001")
    assert touches(Outcome(lots=frozenset({"26-001"})), "26-001")
    assert not touches(Outcome(lots=frozenset({"26-002"})), "26-001")
