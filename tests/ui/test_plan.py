"""The plan's window as it is used: it plans, it is tried otherwise, lots follow it."""

import json
from datetime import datetime

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.planning.apart import Ask
from studio_log.services.commands import ChangeSettings
from studio_log.services.questions import StatusFor
from studio_log.ui.plan import told
from studio_log.ui.plan.plan_box import PlanBox
from studio_log.ui.plan.plan_face import OTHERWISE, WHY
from studio_log.ui.plan.run import PlanRun
from studio_log.ui.plan.told import Drawn
from studio_log.ui.plan.what_if import Tried, closed, offers
from studio_log.ui.widgets.parts import Words
from tests.support.builders import DAY, HOUR, SCOUR
from tests.support.fixtures import Workshop
from tests.ui.plan_kit import box, settle, shown

__all__ = ["box"]
pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")

TOO_EARLY = json.dumps(
    [{"name": "class", "at": "2026-06-20T09:00", "pieces": 6, "cured_days": 90, "lots": []}]
)


def test_an_empty_studio_says_how_to_begin(box: PlanBox) -> None:
    shown(box)
    assert "Add a lot that is wanted" in box.head.text()
    assert not box.follow.isEnabled()


def test_a_lot_is_planned_and_follows_its_plan(box: PlanBox, shop: Workshop, qtbot: QtBot) -> None:
    code = shop.new()
    shown(box)
    assert "no date is late" in box.head.text()
    assert [lane.code for lane in box.sheet.lanes] == [code]  # type: ignore[attr-defined]
    text = box.visits.text()
    assert f"{code} runners: Put the beans to soak" in text
    qtbot.mouseClick(box.follow, Qt.MouseButton.LeftButton)
    assert box.form is not None
    box.form.accept()
    settle(box)
    assert shop.lot(code).planned
    assert "1 lot follows the plan." in box.message.words.text()
    assert box.setup is not None
    assert box.setup.lots[0].follows


def test_what_if_is_tried_on_a_copy_and_taken_back(box: PlanBox, shop: Workshop) -> None:
    code = shop.new()
    shown(box)
    before = dict(box.fields or {})
    box.what_if.take(closed(QDate(2026, 6, 9)))
    settle(box)
    assert box.fields is not None
    first = min(box.fields["starts"][code].values())
    assert first >= "2026-06-10"
    assert box.what_if.isVisible()
    assert "·" in box.chips.button(OTHERWISE).text()
    assert not shop.lot(code).planned
    box.what_if.clear()
    settle(box)
    assert box.fields["starts"] == before["starts"]


def test_every_offer_of_what_if_makes_sense_to_the_planner(box: PlanBox, shop: Workshop) -> None:
    shop.do(ChangeSettings({"line_metres": 12.0, "burners": 1}))
    shop.new()
    shown(box)
    assert box.setup is not None
    for one in offers(box.setup):
        box.what_if.take(one)
        settle(box)
        assert box.fields is not None
        assert box.fields["status"] != "invalid", one
        box.what_if.clear()
        settle(box)


def test_what_cannot_be_helped_is_said_and_a_way_out_is_one_click(
    box: PlanBox, shop: Workshop
) -> None:
    """The first soak has to be lifted by 15:30, and nobody is there before 17:00."""
    shop.do(ChangeSettings({"open_hours": "mon-sat 17:00-20:30"}))
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shown(box)
    box.chips.button(WHY).click()
    assert box.why.ways, "a way out is offered"
    way = box.why.ways[0]
    box.why.taken.emit(way)
    settle(box)
    assert [one.words for one in box.what_if.tried] == [way["words"]]
    assert box.fields is not None
    assert code in box.fields["starts"]


def test_a_way_out_that_is_taken_keeps_the_plan_it_was_offered_with(
    box: PlanBox, shop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop.new()
    shown(box)
    asks: list[Ask] = []
    begun = PlanRun.start

    def start(run: PlanRun, ask: Ask) -> None:
        asks.append(ask)
        begun(run, ask)

    monkeypatch.setattr(PlanRun, "start", start)
    box.why.taken.emit({
        "words": "evenings", "plan": box.fields,
        "changes": [{"change": "add_hours", "days": ["mon"], "from": "19:30", "to": "20:00"}],
    })  # fmt: skip
    settle(box)
    assert asks[0].keep == asks[0].more["before"]
    assert asks[0].more["go_on"] is True
    box.start()
    assert asks[-1].more["go_on"] is False, "it is gone on from once"


def test_a_step_that_is_drawn_elsewhere_moves_and_all_else_stays(
    box: PlanBox, shop: Workshop
) -> None:
    code = shop.new()
    shown(box)
    assert box.fields is not None
    old = box.fields["starts"][code]
    at = shop.clock.at + 4 * HOUR
    box.sheet.plan_wanted.emit(code, 1, at)
    settle(box)
    new = box.fields["starts"][code]
    assert new["Bean soak, begin"] > old["Bean soak, begin"]
    assert {name for name in old if old[name] != new[name]} <= {"Bean soak, begin", "Bean soak"}


def test_a_step_that_cannot_lie_where_it_is_drawn_says_where_it_lies(
    box: PlanBox, shop: Workshop
) -> None:
    code = shop.new()
    shown(box)
    box.sheet.plan_wanted.emit(code, 1, shop.clock.at + 3 * DAY)
    settle(box)
    assert f"{code} cannot go to Fri 12 June 09:00." in box.message.words.text()
    box.message.put_away()
    assert box.fields is not None
    lies = datetime.fromisoformat(box.fields["starts"][code]["Bean soak, begin"])
    box.sheet.plan_wanted.emit(code, 1, lies)
    settle(box)
    assert not box.message.isVisible()


def test_a_plan_that_was_taken_back_is_followed_again_with_one_click(
    box: PlanBox, shop: Workshop, qtbot: QtBot
) -> None:
    code = shop.new()
    shown(box)
    box.open_accept()
    box.form.accept()  # type: ignore[union-attr]
    settle(box)
    planned = shop.lot(code).planned
    assert planned
    assert not box.refollow.isVisible()
    box.unfollow.setFocus()
    qtbot.keyClick(box.unfollow, Qt.Key.Key_Space)
    settle(box)
    assert not shop.lot(code).planned
    assert box.focusWidget() is box.plan_it, "the keyboard is not lost with the button"
    qtbot.mouseClick(box.refollow, Qt.MouseButton.LeftButton)
    settle(box)
    assert shop.lot(code).planned == planned
    assert "1 lot follows the plan again." in box.message.words.text()
    assert (box.refollow.isVisible(), box.unfollow.isVisible()) == (False, True)


def test_a_move_by_hand_is_said_in_the_head_and_undone_at_once(
    box: PlanBox, shop: Workshop, qtbot: QtBot
) -> None:
    code = shop.new()
    shown(box)
    assert not box.unmove.isVisible()
    old, head = box.fields, box.head.text()
    for hours in (4, 0):
        box.sheet.plan_wanted.emit(code, 1, shop.clock.at + hours * HOUR)
        settle(box)
        assert "A step lies where you moved it" in box.head.text()
    qtbot.mouseClick(box.unmove, Qt.MouseButton.LeftButton)
    assert "A step lies where you moved it" in box.head.text(), "one move is left"
    qtbot.mouseClick(box.unmove, Qt.MouseButton.LeftButton)
    settle(box)
    assert (box.fields, box.before, box.head.text()) == (old, None, head)
    assert not box.unmove.isVisible()
    assert "Put the beans to soak" in box.visits.text()


def test_a_step_that_has_nowhere_else_to_go_stays_and_nothing_is_to_undo(
    box: PlanBox, shop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    code = shop.new()
    shown(box)
    old, head = box.fields, box.head.text()
    assert old is not None
    drawn = Drawn(code, "Bean soak, begin", shop.clock.at + 3 * DAY)
    monkeypatch.setattr(PlanRun, "start", lambda _run, _ask: None)
    box.moves.start(Ask({}, do="move"), drawn, (old, None))
    box.moves._done(old)
    assert f"{code} cannot go to Fri 12 June 09:00. It stays at" in box.message.words.text()
    assert (box.fields, box.before, box.head.text()) == (old, None, head)
    assert not box.unmove.isVisible()


def test_a_move_that_is_planned_on_is_no_more_undone(box: PlanBox, shop: Workshop) -> None:
    code = shop.new()
    shown(box)
    box.sheet.plan_wanted.emit(code, 1, shop.clock.at + 4 * HOUR)
    settle(box)
    box.plan_it.click()
    settle(box)
    assert not box.unmove.isVisible()
    assert "A step lies where you moved it" not in box.head.text()


def test_after_a_move_ways_out_are_looked_for_anew(
    box: PlanBox, shop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    code = shop.new()
    shop.do(ChangeSettings({"plan_goals": TOO_EARLY}))
    shown(box)
    assert told.is_late(box.fields or {})
    begun: list[str] = []
    monkeypatch.setattr(PlanRun, "start", lambda _run, ask: begun.append(ask.do))
    assert box.fields is not None
    box._moved(box.fields, "")
    assert begun == ["why"], code


def test_a_plan_that_is_followed_is_what_the_next_is_compared_with(
    box: PlanBox, shop: Workshop
) -> None:
    code = shop.new()
    shown(box)
    box.sheet.plan_wanted.emit(code, 1, shop.clock.at + 4 * HOUR)
    settle(box)
    assert "·" in box.chips.button(OTHERWISE).text()
    box.open_accept()
    box.form.accept()  # type: ignore[union-attr]
    settle(box)
    assert box.before is None
    assert "·" not in box.chips.button(OTHERWISE).text()


def test_a_slip_is_said_and_the_plan_is_mended(box: PlanBox, shop: Workshop) -> None:
    code = shop.new()
    shown(box)
    box.open_accept()
    box.form.accept()  # type: ignore[union-attr]
    settle(box)
    assert not any("slipped" in one for one in shop.studio.ask(StatusFor()).warnings)
    box.close()
    shop.clock.at += DAY
    assert any(code in one and "slipped" in one for one in shop.studio.ask(StatusFor()).warnings)
    box.fields = None
    shown(box)
    assert box.fields is not None
    assert min(box.fields["starts"][code].values()) >= "2026-06-10"
    assert "·" in box.chips.button(OTHERWISE).text()


def test_the_visits_are_copied_as_text(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.visits.copy()
    assert QApplication.clipboard().text() == box.visits.text()
    assert "Tue 9 June" in box.visits.text()


def test_lots_without_a_place_are_told_in_the_head_and_cannot_be_followed(
    box: PlanBox, shop: Workshop
) -> None:
    shop.do(ChangeSettings({"open_hours": "mon-sat 17:00-20:30"}))
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shown(box)
    assert box.head.text() == "There is no plan. 1 lot is left out."
    assert not box.follow.isEnabled()
    other = shop.new("other", method=SCOUR)
    box.refresh()
    settle(box)
    assert "1 lot is left out." in box.head.text()
    assert box.follow.isEnabled()
    box.open_accept()
    told = [box.form.list.item(n).text() for n in range(box.form.list.count())]  # type: ignore[union-attr]
    assert told == [f"{other} other · from tomorrow 17:00"]


def test_a_goal_whose_lot_is_left_out_is_not_told_as_kept(box: PlanBox, shop: Workshop) -> None:
    """What is planned keeps its dates; the goal asks for more than that."""
    goal = {"name": "class", "at": "2027-06-20T09:00", "pieces": 3, "cured_days": 10, "lots": []}
    hours = {"open_hours": "mon-sat 17:00-20:30", "plan_goals": json.dumps([goal])}
    shop.do(ChangeSettings(hours))
    begun, done = shop.clock.at, shop.new("other")
    shop.walk_to(done, "cure")
    shop.clock.at = begun + 7 * DAY  # Tuesday morning again
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shop.new("scoured", method=SCOUR)
    shown(box)
    assert "goals lack 1 piece. 1 lot is left out." in box.head.text()
    assert "no date is late" not in box.head.text()
    box.chips.button(WHY).click()
    told = [one.text() for one in box.why.findChildren(Words)]
    assert told[0].startswith("class lacks 1 of its 3 pieces")
    box.what_if.take(Tried("fewer", ({"change": "goal_pieces", "goal": "class", "pieces": 2},)))
    settle(box)
    assert "no date is late" in box.head.text()


def test_a_goal_of_more_pieces_than_there_are_says_how_many_it_lacks(
    box: PlanBox, shop: Workshop
) -> None:
    goal = {"name": "class", "at": "2027-06-20T09:00", "pieces": 50, "cured_days": 10, "lots": []}
    shop.do(ChangeSettings({"plan_goals": json.dumps([goal])}))
    code = shop.new()
    pieces = len(shop.lot(code).pieces)
    shown(box)
    assert f"goals lack {50 - pieces} pieces" in box.head.text()
    told = [one.text() for one in box.why.findChildren(Words)]
    assert told[0] == f"class lacks {50 - pieces} of its 50 pieces in this plan."


def test_stirs_stand_among_the_visits(box: PlanBox, shop: Workshop) -> None:
    code = shop.new()
    shown(box)
    lines = box.visits.text().splitlines()
    stirs = [at for at, one in enumerate(lines) if one.endswith(f"{code} runners: stir")]
    lifted = next(at for at, one in enumerate(lines) if "Spin" in one or "spin" in one)
    assert stirs
    assert max(stirs) < lifted, "a stir belongs before the end of its soak"
    assert [stir["lot"] for stir in (box.fields or {})["stirs"]] == [code] * len(stirs)


def test_a_planning_process_that_breaks_off_leaves_the_best_plan_standing(
    box: PlanBox, shop: Workshop
) -> None:
    shop.new()
    shown(box)
    box._say_head(looking=True)
    box.follow.setEnabled(False)
    box.run.failed.emit("The planning process ended before it was done (it gave -9).")
    assert "Plan again" in box.message.words.text()
    assert "Looking" not in box.head.text()
    assert box.follow.isEnabled()


def test_a_plan_that_was_ended_before_it_was_compared_says_so(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.what_if.take(closed(QDate(2026, 6, 9)))
    settle(box)
    assert box.fields is not None
    ended = {key: value for key, value in box.fields.items() if key != "differences"}
    box.run.done.emit(ended)
    words = [one.text() for one in box.otherwise.findChildren(Words)]
    assert any("before it was compared" in one for one in words)


def test_a_wanted_lot_is_named_once_on_the_timeline(box: PlanBox, shop: Workshop) -> None:
    shop.do(ChangeSettings({"plan_wanted": json.dumps([
        {"name": "Napkins", "method": "soy-immersion-long",
         "pieces": "6 x linen 45 x 45 cm 200 g/m2"}
    ])}))  # fmt: skip
    shown(box)
    assert [(one.code, one.name) for one in box.sheet.lanes] == [("Napkins", "wanted")]  # type: ignore[attr-defined]


def test_in_a_low_window_no_chip_is_cut(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.resize(520, 360)
    settle(box)
    chips = [box.chips.button(at) for at in range(3)]
    top = box.turns.geometry().top()
    assert all(one.geometry().bottom() < top for one in (*chips, box.copy, box.leave))
    below = box.turns.parentWidget()
    assert below is not None
    assert below.height() >= below.minimumHeight() > top
    assert box._plan.verticalScrollBar().maximum() > 0, "what has no room scrolls"


def test_a_wide_window_can_be_made_narrow_again(box: PlanBox) -> None:
    """The left pane takes part of what there is, and holds no window wide."""
    shown(box)
    least = box.minimumSizeHint().width()
    box.resize(1800, 900)
    settle(box)
    assert box._side.width() > box._side.minimumWidth()
    assert box.minimumSizeHint().width() == least
    box.resize(least, 700)
    settle(box)
    assert box.width() == least
