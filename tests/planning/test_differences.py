"""What a new plan does otherwise, in words: cases worked out by hand, and properties."""

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from studio_log.planning.differences import differences, moved_visits, times
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem, Span
from tests.planning.kit import hours, read, studio, studios

DIP: list[dict[str, Any]] = [
    {"id": "dip", "hands": 30, "use": {"line": 4}},
    {"id": "dry", "min": 240, "max": 6000, "use": {"line": 4}},
    {"id": "take down", "hands": 10},
]


def planned(problem: Problem, keep: Plan | None = None, tries: int = 0) -> Plan:
    plan = plan_studio(problem, Effort(tries=tries), keep=keep).plan
    assert plan is not None
    return plan


def said(problem: Problem, old: Plan, new: Plan) -> list[str]:
    return [one.words for one in differences(problem, old, new)]


def dips(*lots: str, **changes: Any) -> Any:
    """Lots of one dip on a line of 6 m, hours 09:00 to 17:00 from Monday 1 March on."""
    value = studio(
        lots=[{"id": name, "steps": deepcopy(DIP)} for name in lots],
        calendar={"working": hours(("09:00", "17:00"))},
        resources={"line_m": 6},
    )
    return value | changes


def at(plan: Plan, lot: str, dip: int, down: int) -> Plan:
    """The plan with a lot's dip and taking down at these minutes."""
    own = {"dip": Span(dip, dip + 30), "dry": Span(dip + 30, down),
           "take down": Span(down, down + 10)}  # fmt: skip
    return replace(plan, spans={**plan.spans, lot: own})


def test_a_plan_against_itself_stays() -> None:
    problem = read(dips("L1", "L2"))
    plan = planned(problem)
    assert said(problem, plan, plan) == ["Everything stays as it was planned."]


def test_a_visit_that_a_full_line_moves_is_told_with_its_reason() -> None:
    """By hand: L1 hangs on the line until it is taken down on Tuesday at 13:40.

    L4 was to be dipped at 09:00 that day, which 4 + 4 m on a line of 6 m do not allow.
    """
    value = dips("L1", "L4")
    problem = read(value)
    day = 1440
    free = planned(problem)
    old = at(at(free, "L1", 540, day - 600), "L4", day + 540, 2 * day + 600)
    new = at(at(free, "L1", 540, day + 820), "L4", day + 840, 2 * day + 600)
    new = replace(new, score=replace(free.score, sessions=3))
    assert said(problem, old, new)[:2] == [
        "Moved: L1's take down from Mon 14:00 to Tue 13:40.",
        "Moved: L4's dip from Tue 09:00 to Tue 14:00, because the line is full until Tue 13:40.",
    ]
    assert said(problem, old, new)[-1] == "Everything else stays."


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ((540, 820), (540, 830), "because dry is not over before Mon 13:50"),
        ((1430, 2400), (1440 + 540, 2400), "because those are no working hours"),
        ((1000, 2400), (1440 + 540, 2400), "because the working hours end before"),
        ((-30, 600), (540, 1000), "because that moment has passed"),
        ((60, 900), (540, 1000), "because L1 is not to begin before Mon 08:00"),
        ((540, 7000), (540, 6300), "because dry is to end by Fri 13:30"),
    ],
)
def test_each_reason_is_said(old: Any, new: Any, why: str) -> None:
    value = dips("L1")
    value["lots"][0] |= {"release": 480}
    if why.startswith("because dry is not"):
        value["dry_min_by_date"] = {"2027-03-01": 260}
        value["lots"][0]["steps"][1]["drying"] = True
    problem = read(value)
    plan = planned(problem)
    moves = moved_visits(problem, at(plan, "L1", *old), at(plan, "L1", *new))
    assert why.removeprefix("because ") in {one.why for one in moves}


def test_hands_that_are_full_are_said() -> None:
    value = dips("L1", "L2", resources={"line_m": 20})
    problem = read(value)
    plan = planned(problem)
    old = at(at(plan, "L1", 600, 1000), "L2", 540, 900)
    new = at(at(plan, "L1", 600, 1000), "L2", 570, 900)
    del plan
    moves = moved_visits(problem, at(old, "L2", 590, 900), new)
    assert [(one.lot, one.old, one.new, one.why) for one in moves] == [
        ("L2", 590, 570, "your hands are full until Mon 10:30")
    ]


def test_sessions_dates_and_lots_are_told_in_the_order_of_their_weight() -> None:
    """L1 was due on Tuesday 09:00 and is taken down, by hand, at 17:00 instead of Monday 16:00."""
    value = dips("L1", "L3")
    value["lots"][0]["due"] = "2027-03-02T09:00"
    problem = read(value)
    day, plan = 1440, planned(problem)
    old = at(replace(plan, spans={}), "L1", 540, 960)
    old = replace(old, spans={**old.spans, "L9": {"dip": Span(3 * day + 600, 3 * day + 630)}})
    new = at(at(plan, "L3", 2 * day + 540, 3 * day + 600), "L1", 540, day + 1000)
    new = replace(new, score=replace(plan.score, sessions=4))
    words = said(problem, old, new)
    assert words == [
        "L1 is 7.8 h late; it was in time.",
        "L9 is no longer planned.",
        "L3 is planned for the first time.",
        "You come in 4 times instead of 1.",
        "Moved: L1's take down from Mon 16:00 to Tue 16:40.",
        "Everything else stays.",
    ]
    back = said(problem, new, replace(old, spans={**new.spans, **at(new, "L1", 540, 960).spans}))
    assert back[0] == "L1 is no longer late; it was 7.8 h late."


def test_a_late_goal_is_told_through_its_lot() -> None:
    """By hand: cured a day by Wed 09:00 is down by Tue 09:00; down at 12:00 is three hours late."""
    goal = {"id": "The class", "date": "2027-03-03T09:00", "pieces": 1, "cured_days": 1,
            "lots": ["L7"]}  # fmt: skip
    value = dips("L7", goals=[goal])
    value["lots"][0]["pieces"] = 1
    problem = read(value)
    plan = planned(problem)
    old, new = at(plan, "L7", 540, 960), at(plan, "L7", 540, 1440 + 710)
    assert said(problem, old, new)[0] == "The class is 3.0 h late through L7; it was in time."
    worse = at(plan, "L7", 540, 1440 + 740)
    assert said(problem, new, worse)[0] == "The class is 3.5 h late through L7; it was 3.0 h late."


def test_many_moved_visits_are_told_lot_by_lot_and_the_rest_is_counted() -> None:
    steps = [
        step
        for n in range(5)
        for step in ({"id": f"dip {n}", "hands": 10}, {"id": f"dry {n}", "min": 60, "max": 3000})
    ]
    value = dips()
    value["lots"] = [{"id": f"L{n:02}", "steps": steps} for n in range(12)]
    problem = read(value)
    new = planned(problem)
    spans = {
        lot: {name: Span(one.start + 1440, one.end + 1440) for name, one in own.items()}
        for lot, own in new.spans.items()
    }
    words = said(problem, replace(new, spans=spans), new)
    first = "Moved: five visits of L00, the first from Tue 09:00 to Mon 09:00"
    told = [one for one in words if one.startswith("Moved")]
    assert told[0].startswith(first)
    assert len(told) == 9
    assert told[-1].startswith("Moved besides: visits of L")
    named = "".join(told)
    assert all(f"L{n:02}" in named for n in range(12))


def test_another_vessel_is_told() -> None:
    tubs = [{"id": f"tub{n}", "kind": "tub", "litres": 20} for n in (1, 2)]
    problem = read(studio(resources={"vessels": tubs, "line_m": 6}))
    plan = planned(problem)
    other = {"tub1": "tub2", "tub2": "tub1"}
    vessels = {
        lot: {
            step: {kind: other[name] for kind, name in held.items()} for step, held in own.items()
        }
        for lot, own in plan.vessels.items()
    }
    words = said(problem, plan, replace(plan, vessels=vessels))
    was = plan.vessels["L1"]["load"]["tub"]
    assert words[0] == f"L1's load and lift are in {other[was]} instead of {was}."
    assert words[-1] == "Everything else stays."


def test_how_often_in_words() -> None:
    assert [times(n) for n in (0, 1, 2, 3, 14)] == [
        "0 times",
        "once",
        "twice",
        "3 times",
        "14 times",
    ]


@pytest.mark.long
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), studios())
def test_any_two_plans_are_told_apart(value: Any, other: Any) -> None:
    problem = read(value)
    old = plan_studio(read(other), Effort(tries=0)).plan
    new = plan_studio(problem, Effort(tries=0)).plan
    if old is None or new is None:
        return
    found = differences(problem, old, new)
    assert found
    assert all(one.words.endswith(".") and len(one.words) < 300 for one in found)
    order = ["late", "gone", "new", "sessions", "moved", "vessel", "stays"]
    assert [one.kind for one in found] == sorted((one.kind for one in found), key=order.index)
    assert [one.kind for one in differences(problem, new, new)] == ["stays"]


def test_cloth_that_only_cures_is_not_planned_for_the_first_time() -> None:
    value = dips("L1")
    steps = [{"id": "hang", "min": 0}, {"id": "cure", "min": 20000, "cure": True}]
    began = {"start": "2027-02-27T10:00", "end": "2027-02-28T10:00"}
    actual = {"hang": began, "cure": {"start": "2027-02-28T10:00", "end": None}}
    value["lots"].append({"id": "L2", "steps": steps, "actual": actual})
    problem = read(value)
    plan = planned(problem)
    assert "L2" in plan.spans
    old = replace(plan, spans={"L1": plan.spans["L1"]})
    assert said(problem, old, plan) == ["Everything stays as it was planned."]
    fresh = replace(plan, spans={"L2": plan.spans["L2"]})
    assert "L1 is planned for the first time." in said(problem, fresh, plan)
