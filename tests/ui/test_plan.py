"""The plan's window as it is used: it plans, it is tried otherwise, lots follow it."""

import json
from collections.abc import Iterator
from datetime import datetime
from typing import Any

import pytest
from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.domain.plan_wishes import SharedMilk
from studio_log.language.catalogue import catalogue_of
from studio_log.language.words import ENGLISH, speak
from studio_log.planning.apart import Ask
from studio_log.planning.job import ACTS
from studio_log.planning.talking import Asked
from studio_log.services.commands import ChangeSettings
from studio_log.services.questions import StatusFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan import told
from studio_log.ui.plan.accept_form import AcceptForm
from studio_log.ui.plan.milk_form import MilkForm
from studio_log.ui.plan.plan_box import PlanBox
from studio_log.ui.plan.plan_face import OTHERWISE, WHY
from studio_log.ui.plan.run import PlanRun
from studio_log.ui.plan.told import Drawn
from studio_log.ui.plan.what_if import DayBox, Tried, closed, offers
from studio_log.ui.plan.wish_forms import GoalForm, WantedForm
from studio_log.ui.widgets.parts import Words
from tests.support.builders import DAY, HOUR, SCOUR
from tests.support.fixtures import Workshop
from tests.support.tree import TREE

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


TOO_EARLY = json.dumps(
    [{"name": "class", "at": "2026-06-20T09:00", "pieces": 6, "cured_days": 90, "lots": []}]
)


class Sheet(QWidget):
    """A timeline that only keeps what it is shown."""

    plan_wanted = Signal(str, int, object)

    def __init__(self) -> None:
        super().__init__()
        self.lanes: Any = ()
        self.chosen = ""

    def show_lanes(self, lanes: Any, *_rest: object) -> None:
        self.lanes = lanes

    def show_around(self, *_rest: object, left_out: int = 0) -> None:
        assert left_out == 0

    def choose(self, code: str) -> None:
        self.chosen = code


class Told:
    """Hears the planner in this process: a few tries, then it is over."""

    def __init__(self) -> None:
        self.told = False

    def over(self) -> bool:
        return False

    def passed(self) -> float:
        return 0.0

    def better(self, _fields: dict[str, Any]) -> None:
        return


@pytest.fixture(autouse=True)
def _planned_here(monkeypatch: pytest.MonkeyPatch) -> None:
    """The process is tried in tests/planning: here its acts are done at once, with few tries."""

    def start(run: PlanRun, ask: Ask) -> None:
        run.close()
        problem = json.dumps(ask.problem).encode()
        keep = dict(ask.keep) if ask.keep is not None else None
        asked = Asked(ask.do, problem, "own", 1.0, 3, 1, keep, dict(ask.more))
        fields = ACTS[ask.do](asked, Told())  # type: ignore[arg-type]
        run._heard.emit(run._number, {"done": json.loads(json.dumps(fields))})

    monkeypatch.setattr(PlanRun, "start", start)


@pytest.fixture
def box(qtbot: QtBot, shop: Workshop) -> Iterator[PlanBox]:
    shop.do(ChangeSettings({"open_hours": "mon-sat 08:00-19:00", "vessels": "2 buckets of 20 L"}))
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    made = PlanBox(bridge, Sheet)  # type: ignore[arg-type]
    qtbot.addWidget(made)
    yield made
    made.close()
    bridge.close()


def settle(box: PlanBox) -> None:
    for _ in range(12):
        QApplication.processEvents()
    if box._soon.isActive():
        box._soon.stop()
        box.refresh()
        settle(box)


def shown(box: PlanBox) -> None:
    box.show()
    settle(box)


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


def test_only_the_lots_that_are_ticked_follow(box: PlanBox, shop: Workshop) -> None:
    one, other = shop.new("first"), shop.new("second")
    shown(box)
    box.open_accept()
    form = box.form
    row = next(form.list.item(n) for n in range(2) if one in form.list.item(n).text())  # type: ignore[union-attr]
    row.setCheckState(Qt.CheckState.Unchecked)
    form.accept()  # type: ignore[union-attr]
    settle(box)
    assert (shop.lot(one).planned, shop.lot(other).planned) == (False, True)


def test_a_goal_is_typed_and_taken_out(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.open_goal(-1)
    goal = box.form
    assert isinstance(goal, GoalForm)
    goal.submit()
    assert "Give it a name" in goal.fault.text()
    goal.name.setText("Spring class")
    goal.pieces.setValue(4)
    goal.day.setDate(QDate(2026, 12, 1))
    goal.submit()
    settle(box)
    assert box.setup is not None
    assert [(one.name, one.pieces) for one in box.setup.goals] == [("Spring class", 4)]
    box.pane.goals.removed.emit(0)
    settle(box)
    assert box.setup.goals == ()


def test_a_wanted_lot_is_typed_planned_and_taken_out(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.open_wanted()
    wanted = box.form
    assert isinstance(wanted, WantedForm)
    wanted.name.setText("Napkins")
    wanted.pieces.setPlainText("six nice ones")
    wanted.submit()
    assert wanted.isVisible()
    assert wanted.understood.text()
    wanted.pieces.setPlainText("6 x linen 45 x 45 cm 200 g/m2")
    wanted.submit()
    settle(box)
    assert box.setup is not None
    assert [one.name for one in box.setup.wanted] == ["Napkins"]
    assert "Napkins" in box.visits.text()
    box.pane.lots.removed.emit(0)
    settle(box)
    assert box.setup.wanted == ()


def test_what_a_plan_counts_on_is_written_into_the_studio_when_it_is_followed(
    box: PlanBox, shop: Workshop
) -> None:
    shop.new()
    shown(box)
    box.what_if.take(closed(QDate(2026, 6, 12)))
    settle(box)
    box.open_accept()
    form = box.form
    assert isinstance(form, AcceptForm)
    assert form.keep.isVisible()
    form.keep.setChecked(False)
    assert form.changes == ()
    form.keep.setChecked(True)
    form.accept()
    settle(box)
    assert shop.studio.settings.single_days == "2026-06-12 closed"
    assert box.what_if.tried == [], "the studio has it now: it is not tried a second time"
    box.open_accept()
    assert isinstance(box.form, AcceptForm)
    assert not box.form.keep.isVisible()


def test_one_milk_is_shared_on_a_form_and_taken_out_again(box: PlanBox, shop: Workshop) -> None:
    maker = shop.new("first")
    shown(box)
    assert not box.pane.milks.isVisible(), "one lot alone shares with nobody"
    other, third = (shop.new(name) for name in ("second", "third"))
    box.refresh()
    settle(box)
    box.pane.milks.add.click()
    form = box.pane.milk_form
    assert form is not None
    assert [form.maker.itemData(n) for n in range(3)] == [maker, other, third]
    form.submit()
    assert "Tick at least one lot" in form.fault.text()
    items = [form.others.item(n) for n in range(form.others.count())]
    assert [one.text() for one in items] == [f"{other} second", f"{third} third"]
    items[1].setCheckState(Qt.CheckState.Checked)
    form.maker.setCurrentIndex(1)
    assert form.shared == SharedMilk(other, (third,)), "what was ticked stays ticked"
    form.submit()
    settle(box)
    assert box.setup is not None
    assert box.setup.shared == (SharedMilk(other, (third,)),)
    assert f"train the milk, for {third} too" in box.visits.text()
    assert not box.pane.milks.add.isEnabled(), "one lot is left, and nobody to share with"
    row = box.pane.milks.findChildren(Words)
    assert f"{other} second, for {third} third too" in [one.text() for one in row]
    box.pane.milks.removed.emit(0)
    settle(box)
    assert box.setup.shared == ()


def test_a_name_is_given_once(box: PlanBox, shop: Workshop) -> None:
    shop.do(ChangeSettings({"plan_goals": json.dumps([
        {"name": "class", "at": "2026-12-01T09:00", "pieces": 1, "cured_days": 30}
    ])}))  # fmt: skip
    shown(box)
    box.open_goal(-1)
    box.form.name.setText("class")  # type: ignore[union-attr]
    box.form.submit()  # type: ignore[union-attr]
    assert "is there already" in box.form.fault.text()  # type: ignore[union-attr]


def test_vessels_are_read_while_they_are_typed_and_kept(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    field = box.pane.vessels
    field.setText("3 buckets and a bathtub")
    assert "is no vessel" in field.understood.text()
    field.line.editingFinished.emit()
    settle(box)
    assert shop.studio.settings.vessels == "2 buckets of 20 L"
    box.refresh()
    settle(box)
    assert field.text() == "3 buckets and a bathtub", "what was typed is not lost"
    field.setText("bucket 20 L; pot 40 L")
    field.line.editingFinished.emit()
    settle(box)
    assert shop.studio.settings.vessels == "bucket 20 L; pot 40 L"


def test_days_of_slow_drying_count(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.slow.setText("tomorrow 40 h")
    box.pane.slow.line.editingFinished.emit()
    settle(box)
    assert box.setup is not None
    assert box.setup.problem["dry_min_by_date"] == {"2026-06-10": 2400}


def test_two_pairs_of_hands_are_counted_with(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.hands.setValue(2)
    settle(box)
    assert shop.studio.settings.hands == 2
    assert box.setup is not None
    assert box.setup.problem["resources"]["hands"] == 2
    assert box.fields is not None
    assert box.fields["starts"]


def test_the_slider_is_kept(box: PlanBox, shop: Workshop) -> None:
    shop.new()
    shown(box)
    box.pane.slider.setValue(box.pane.slider.maximum())
    settle(box)
    assert shop.studio.settings.plan_visit_hours == 0
    assert box.setup is not None
    assert box.setup.problem["session_worth"] == 0
    box.pane.slider.setValue(0)
    settle(box)
    assert "session_worth" not in box.setup.problem


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


def letters(box: QWidget) -> list[str]:
    """The letters by which parts of a box are reached."""
    bar = getattr(box, "message", None)
    apart = (bar.yes, bar.no, bar.copy) if bar is not None else ()
    parts = box.findChildren(QAbstractButton) + box.findChildren(QLabel)
    texts = [one.text() for one in parts if one not in apart]
    return [one[one.index("&") + 1].lower() for one in texts if "&" in one.replace("&&", "")]


@pytest.mark.parametrize("language", ["en", "de"])
def test_no_two_parts_of_a_form_share_a_letter(box: PlanBox, shop: Workshop, language: str) -> None:
    shop.new("first")
    shop.new("second")
    shown(box)
    assert box.setup is not None
    if language == "de":
        speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        forms = (
            GoalForm(QDate(2026, 6, 9), ()), WantedForm((), ()), MilkForm(box.setup),
            AcceptForm([], [closed(QDate(2026, 6, 12))]),
        )  # fmt: skip
    finally:
        speak(ENGLISH)
    for form in forms:
        found = letters(form)
        assert len(found) > 2
        assert sorted(found) == sorted(set(found)), type(form).__name__
        form.deleteLater()


@pytest.mark.parametrize("language", ["en", "de"])
def test_no_two_acts_of_the_window_share_a_letter(box: PlanBox, language: str) -> None:
    if language == "de":
        speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        made = PlanBox(box._bridge, Sheet)  # type: ignore[arg-type]
    finally:
        speak(ENGLISH)
    assert len(letters(made)) > 10
    assert sorted(letters(made)) == sorted(set(letters(made)))
    made.deleteLater()


def test_a_day_is_chosen_in_a_month_with_room(box: PlanBox) -> None:
    day = DayBox("Close a day", QDate(2026, 6, 9), box)
    form = GoalForm(QDate(2026, 6, 9), (), None, box)
    for month in (day.calendar, form.day.calendarWidget()):
        cell = month.minimumWidth() / 7
        assert cell > month.fontMetrics().horizontalAdvance("28") * 2.5
        assert month.minimumDate() == QDate(2026, 6, 9)


def test_hours_and_days_are_told_in_the_language_spoken(box: PlanBox) -> None:
    speak(catalogue_of("de", TREE / "resources" / "translations"))
    try:
        shown(box)
        form = GoalForm(QDate(2026, 6, 9), (), None, box)
        assert box.pane.hours.text() == "Geöffnet: Mo–Sa 08:00–19:00."
        assert form.day.text() == "Mi. 7. Oktober 2026"
    finally:
        speak(ENGLISH)


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
