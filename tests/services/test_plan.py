"""The log as a planning problem, and a plan that lots follow."""

import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.windows import windows_of
from studio_log.planning.answer import answer
from studio_log.planning.effort import Effort
from studio_log.planning.read import read_problem
from studio_log.services.commands import ChangeSettings, GoOn, Redo, Undo
from studio_log.services.plan import PLAN, AcceptPlan, PlanFor, PlannedFor, PlanSetup
from tests.support.builders import DAY, HOUR, NINE, SCOUR
from tests.support.fixtures import Workshop

HOURS = {"open_hours": "mon-sat 08:00-19:00"}
NAPKINS = {
    "name": "napkins", "method": "soy-immersion-long", "pieces": "6 x linen 45 x 45 cm 200 g/m2",
}  # fmt: skip
CLASS = {"name": "class", "at": "2026-10-09T09:00", "pieces": 6, "cured_days": 90}


def settings(shop: Workshop, **more: object) -> None:
    kept = {**HOURS, **more}
    told = {
        name: value if isinstance(value, str | int | float) else json.dumps(value)
        for name, value in kept.items()
    }
    shop.do(ChangeSettings(told))


def planned(shop: Workshop) -> tuple[PlanSetup, dict[str, Any]]:
    """The first plan of the studio: no tries, so the same each time."""
    setup: PlanSetup = shop.studio.ask(PlanFor())
    problem = read_problem(json.dumps(setup.problem).encode())
    return setup, answer(problem, Effort(tries=0)).fields


def instants(fields: dict[str, dict[str, str]]) -> dict[str, dict[str, datetime]]:
    return {
        code: {name: datetime.fromisoformat(at).astimezone(UTC) for name, at in one.items()}
        for code, one in fields.items()
    }


def accept(shop: Workshop, fields: dict[str, Any], *codes: str) -> str:
    starts, ends = instants(fields["starts"]), instants(fields["ends"])
    return shop.do(AcceptPlan(starts, ends, codes or None)).code


def test_lots_follow_an_accepted_plan_and_it_reads_back_as_it_was(shop: Workshop) -> None:
    settings(shop)
    code = shop.new()
    _, fields = planned(shop)
    assert fields["status"] in {"feasible", "optimal"}
    accept(shop, fields)
    kept = shop.studio.ask(PlanFor()).keep
    assert kept["starts"] == {code: fields["starts"][code]}
    assert kept["ends"] == {code: fields["ends"][code]}


def test_windows_and_reminders_go_by_the_plan(shop: Workshop) -> None:
    settings(shop)
    code = shop.new()
    _, fields = planned(shop)
    accept(shop, fields)
    starts = instants(fields["starts"])[code]
    windows = windows_of(shop.lot(code), shop.clock.at, shop.studio.settings.quiet("Europe/London"))
    assert windows[1].best_start == starts["Bean soak, begin"]
    assert windows[4].best_end == starts["Spin"], "the soak ends when the dyer comes to spin"
    texts = shop.ring(at=starts["Bean soak, begin"])
    assert [one.title for one in texts] == [f"Put the beans to soak {code} runners"]


def test_a_lot_that_is_wanted_is_made_when_its_plan_is_accepted(shop: Workshop) -> None:
    settings(shop, plan_wanted=[NAPKINS], plan_goals=[CLASS])
    setup, fields = planned(shop)
    assert setup.problem["goals"][0]["lots"] == ["napkins"]
    code = accept(shop, fields)
    lot = shop.lot(code)
    assert (lot.name, len(lot.pieces), lot.planned) == ("napkins", 6, True)
    assert shop.studio.settings.plan_wanted == ""
    after: PlanSetup = shop.studio.ask(PlanFor())
    assert [one.code for one in after.lots] == [code]
    assert after.lots[0].follows


def test_a_plan_of_several_lots_is_taken_back_and_restored_as_one_act(shop: Workshop) -> None:
    settings(shop)
    codes = [shop.new("first"), shop.new("second"), shop.new("third")]
    _, fields = planned(shop)
    accept(shop, fields, codes[2])
    alone = shop.lot(codes[2]).planned
    shop.clock.move(minutes=5)
    starts, ends = instants(fields["starts"]), instants(fields["ends"])
    outcome = shop.do(AcceptPlan(starts, ends, tuple(codes[:2])))
    assert outcome.subject == PLAN
    rings = {code: shop.records(code) for code in codes}
    shop.clock.move(minutes=5)
    shop.mark(codes[0], "1", Act.NOTE, note="beans are here")
    assert shop.do(Undo(PLAN)).lots == frozenset(codes[:2])
    assert not shop.lot(codes[0]).planned
    assert not shop.lot(codes[1]).planned
    assert shop.lot(codes[2]).planned == alone, "that one was accepted before"
    assert shop.entries(codes[0])[-2].note == "beans are here", "what was done since stays"
    shop.clock.move(minutes=5)
    assert shop.do(Redo(PLAN)).lots == frozenset(codes[:2])
    assert all(shop.lot(code).planned for code in codes)
    assert {code: set(shop.records(code)) for code in codes} == {
        code: set(one) for code, one in rings.items()
    }
    shop.do(Undo(PLAN))
    shop.do(Undo(PLAN))
    assert not any(shop.lot(code).planned for code in codes)
    with pytest.raises(Refusal, match="No lot follows a plan"):
        shop.do(Undo(PLAN))


def test_no_plan_is_restored_over_what_was_done_since(shop: Workshop) -> None:
    settings(shop)
    code, other = shop.new("first"), shop.new("second")
    with pytest.raises(Refusal, match="No plan was taken back"):
        shop.do(Redo(PLAN))
    _, fields = planned(shop)
    accept(shop, fields, code, other)
    shop.do(Undo(PLAN))
    shop.mark(code, "1", Act.START)
    shop.mark(other, "1", Act.START)
    with pytest.raises(Refusal, match="went on since"):
        shop.do(Redo(PLAN))


def test_part_of_a_plan_can_be_accepted_and_undone(shop: Workshop) -> None:
    settings(shop)
    one, other = shop.new("first"), shop.new("second")
    _, fields = planned(shop)
    accept(shop, fields, other)
    assert not shop.lot(one).planned
    assert shop.lot(other).planned
    shop.do(Undo(other))
    assert not shop.lot(other).planned
    assert shop.records(other) == {} or all(
        one.status == "void" for one in shop.records(other).values()
    )


def test_a_plan_of_a_lot_that_has_gone_on_since_is_refused(shop: Workshop) -> None:
    settings(shop)
    code = shop.new()
    _, fields = planned(shop)
    shop.mark(code, "bean-soak", Act.START)
    with pytest.raises(Refusal, match="has changed since"):
        accept(shop, fields)
    assert not shop.lot(code).planned


def test_the_timeline_beforehand_is_what_accepting_gives(shop: Workshop) -> None:
    settings(shop)
    shop.new()
    _, fields = planned(shop)
    starts, ends = instants(fields["starts"]), instants(fields["ends"])
    before = shop.studio.ask(PlannedFor(starts, ends)).lanes
    accept(shop, fields)
    after = shop.studio.ask(PlannedFor(starts, ends)).lanes
    assert [replace(one, facts=None) for one in before] == [
        replace(one, facts=None) for one in after
    ]
    assert before[0].bars


def test_a_running_step_is_a_fact_and_its_end_is_planned(shop: Workshop) -> None:
    settings(shop)
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    shop.clock.at += 2 * HOUR
    setup, fields = planned(shop)
    (lot,) = setup.problem["lots"]
    assert lot["actual"] == {"Bean soak": {"start": "2026-06-09T09:00", "end": None}}
    accept(shop, fields)
    step = shop.lot(code).step(1)
    assert step.plan is None
    assert step.plan_end == instants(fields["starts"])[code]["Bean soak, end"]


def test_cloth_that_cures_serves_a_goal_and_is_not_planned(shop: Workshop) -> None:
    settings(shop, plan_goals=[{**CLASS, "pieces": 2}])
    code = shop.new()
    shop.walk_to(code, "cure")
    setup, fields = planned(shop)
    (line,) = setup.lots
    assert (line.code, line.open) == (code, False)
    assert fields["serves"] == {"class": {code: 2}}
    assert fields["score"][0] == 0


def test_a_dye_bath_behind_a_cure_waits_until_the_cloth_is_ready(shop: Workshop) -> None:
    settings(shop)
    code = shop.new(method="soy-painting-short")
    shop.walk_to(code, "cure")
    shop.do(GoOn(code, "dye-madder", sure=True))
    setup = shop.studio.ask(PlanFor())
    (lot,) = setup.problem["lots"]
    ready = shop.lot(code)
    days = ready.methods[0].cure.default_days  # type: ignore[union-attr]
    dry = max(step.end for step in ready.steps if step.end)
    release = datetime.fromisoformat(lot["release"])
    assert release == (dry + days * DAY + HOUR).replace(tzinfo=None)  # local time, British Summer
    assert lot["steps"][0]["id"].startswith(ready.steps[-7].title)


def test_what_cannot_be_planned_is_said_and_the_rest_is_planned(shop: Workshop) -> None:
    settings(shop, plan_wanted=[{**NAPKINS, "pieces": "six nice ones"}], plan_goals=[CLASS])
    shop.new()
    setup, fields = planned(shop)
    assert any(one.startswith("napkins: ") for one in setup.notes)
    assert any("class wants 6 pieces" in one for one in setup.notes)
    assert fields["serves"]["class"] == {setup.lots[0].code: 2}


def test_vessels_line_and_heat_are_waited_for_only_where_they_were_said(shop: Workshop) -> None:
    settings(shop)
    shop.new(method=SCOUR)
    (lot,) = shop.studio.ask(PlanFor()).problem["lots"]
    assert not any(one.get("use") for one in lot["steps"])
    settings(shop, vessels="bucket 20 L; pot 40 L", line_metres=12.0, burners=1)
    setup = shop.studio.ask(PlanFor())
    (lot,) = setup.problem["lots"]
    used = {kind for one in lot["steps"] for kind in one.get("use", ())}
    assert {"pot", "burner", "line"} <= used
    assert [one["id"] for one in setup.problem["resources"]["vessels"]] == ["bucket 1", "pot 1"]


@pytest.mark.parametrize("bad", ["[", "{}", '[{"name": 3}]', "[1]", '[{"name": "x"}]' * 2])
def test_wishes_that_make_no_sense_are_refused(shop: Workshop, bad: str) -> None:
    for name in ("plan_goals", "plan_wanted", "plan_slow_days"):
        with pytest.raises(Refusal, match=r"Nothing was changed"):
            shop.do(ChangeSettings({name: bad}))
    assert shop.clock.at == NINE + timedelta(0)
