"""Dragging a visit: just those starts are offered at which nothing else moves and all rules hold.

Every start of the grid is tried by hand, and the checker alone says whether it is good.
"""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.check_plan import open_steps, violations
from studio_log.planning.effort import Effort
from studio_log.planning.grip import BadMoveError
from studio_log.planning.moves import moved, windows
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Lot, Plan, Problem, Score, Span
from tests.planning.kit import instance, read, studio, studios


def planned(value: Any, tries: int = 2) -> tuple[Problem, Plan]:
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=tries)).plan
    assert plan is not None
    return problem, plan


def good(problem: Problem, plan: Plan) -> bool:
    """Whether the checker finds nothing but the score that was not worked out."""
    said = violations(problem, replace(plan, score=Score(-1, -1, -1)))
    return len(said) == 3 and all(one.startswith("The ") for one in said)


def dragged(lot: Lot, plan: Plan, step: str, start: int) -> Plan:
    """A step moved with the hands-on steps it touches; what lies around lasts as it has to."""
    steps, spans = open_steps(lot), dict(plan.spans[lot.name])
    place = next(n for n, one in enumerate(steps) if one.name == step)
    first = place
    while first and steps[first - 1].hands is not None and not steps[first - 1].then_within:
        first -= 1
    last = place
    while steps[last].hands is not None and last + 1 < len(steps) and not steps[last].then_within:
        last += 1
    by = start - spans[step].start
    for one in steps[first:last]:
        spans[one.name] = Span(spans[one.name].start + by, spans[one.name].end + by)
    end = steps[last].name  # by itself, or the last by hand, or by hand with a pause behind it
    whole = steps[last].hands is not None or steps[last].cure
    spans[end] = Span(spans[end].start + by, spans[end].end + by * whole)
    if first and not steps[first - 1].then_within:
        before = steps[first - 1].name
        spans[before] = Span(spans[before].start, spans[before].end + by)
    if last + 1 < len(steps) and steps[last + 1].cure:
        cure = steps[last + 1].name
        spans[cure] = Span(spans[cure].start + by, spans[cure].end + by)
    return replace(plan, spans={**plan.spans, lot.name: spans})


def by_trying(problem: Problem, plan: Plan, lot: Lot, step: str) -> list[int]:
    """All starts on the grid at which the dragged plan is good."""
    return [
        at
        for at in range(0, problem.horizon + 1, problem.grid)
        if abs(at - plan.spans[lot.name][step].start) < 9000
        and good(problem, dragged(lot, plan, step, at))
    ]


def listed(problem: Problem, ranges: Any) -> list[int]:
    found: list[int] = []
    for first, last in ranges:
        found += range(first, last + 1, problem.grid)
    return found


def ends_agree(problem: Problem, plan: Plan, lot: str, step: str) -> int:
    ranges = windows(problem, plan, lot, step)
    for start in {one for ends in ranges for one in ends}:
        new = moved(problem, plan, lot, step, start)
        assert violations(problem, new) == []
        assert new.spans[lot][step].start == start
        others = {name: own for name, own in new.spans.items() if name != lot}
        assert others == {name: own for name, own in plan.spans.items() if name != lot}
        assert new.vessels == plan.vessels
    return len(ranges)


def test_the_ranges_of_a_visit_by_hand() -> None:
    """Hours 09:00 to 12:00 and 14:00 to 17:00; loaded Mon 16:40 the soak runs from 17:00.

    Lifting Tue at 09:00 and taking down at 14:00: the soak may end 03:00 to 11:00 and cloth dries
    four hours. So lifting, 10 min, has 09:00 to 09:50. Taking down may be any time on Tuesday from
    14:00, and on to Thursday 09:10, two days after hanging.
    """
    problem, plan = planned(studio(start="2027-03-01T12:00"), 0)
    spans = plan.spans["L1"]
    noon = 12 * 60
    assert (spans["load"].start + noon, spans["lift"].start + noon) == (1000, 1440 + 540)
    assert windows(problem, plan, "L1", "lift") == ((1440 + 540 - noon, 1440 + 590 - noon),)
    wednesday, thursday = 2 * 1440 - noon, 3 * 1440 - noon
    assert windows(problem, plan, "L1", "take down") == (
        (1440 + 840 - noon, 1440 + 1010 - noon), (wednesday + 540, wednesday + 710),
        (wednesday + 840, wednesday + 1010), (thursday + 540, thursday + 550),
    )  # fmt: skip
    assert windows(problem, plan, "L1", "dry") == ((1440 + 550 - noon, 1440 + 600 - noon),)
    assert windows(problem, plan, "L1", "cure") == ()
    assert windows(problem, plan, "L9", "lift") == windows(problem, plan, "L1", "x") == ()


def test_what_is_asked_beyond_the_ranges_is_refused() -> None:
    problem, plan = planned(studio(start="2027-03-01T12:00"), 0)
    at = plan.spans["L1"]["lift"].start
    for step, start in (("lift", at + 60), ("lift", at + 3), ("lift", -10), ("cure", at)):
        with pytest.raises(BadMoveError, match="moved"):
            moved(problem, plan, "L1", step, start)
    spans = {"L1": {"load": Span(0, 20)}}
    with pytest.raises(BadMoveError, match="does not fit"):
        moved(problem, replace(plan, spans=spans), "L1", "lift", at)
    assert windows(problem, replace(plan, spans=spans), "L1", "lift") == ()


@pytest.mark.parametrize("name", ["studio-four-lots-two-running", "studio-six-lots-weather"])
def test_the_checker_agrees_at_every_end_of_every_range(name: str) -> None:
    problem, plan = planned(instance(name))
    found = sum(
        ends_agree(problem, plan, lot, step) for lot, own in plan.spans.items() for step in own
    )
    assert found > 10


@pytest.mark.long
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.data())
def test_ranges_are_just_the_starts_that_the_checker_takes(value: Any, data: st.DataObject) -> None:
    value["grid_min"] = 15
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=1)).plan
    if plan is None:
        return
    lot = data.draw(st.sampled_from([one for one in problem.lots if one.name in plan.spans]))
    steps = [one for one in open_steps(lot) if not one.cure and one.name not in lot.facts]
    if not steps:
        return
    step = data.draw(st.sampled_from(steps)).name
    found = listed(problem, windows(problem, plan, lot.name, step))
    assert plan.spans[lot.name][step].start in found
    near = [one for one in found if abs(one - plan.spans[lot.name][step].start) < 9000]
    assert near == by_trying(problem, plan, lot, step)
    ends_agree(problem, plan, lot.name, step)


def test_links_and_hours_through_a_clock_change_bound_a_move() -> None:
    """18 hours of soak are 18 real hours: the night to 31 October 2027 is an hour longer.

    Loaded on Saturday 16:00 to 17:00, it may be lifted until Sunday 10:00 on the wall, not 11:00.
    British Summer Time ends at 01:00 UTC that day (Summer Time Order 2002; the day from memory).
    """
    steps = [
        {"id": "load", "hands": 60}, {"id": "soak", "min": 600, "max": 18 * 60},
        {"id": "lift", "hands": 10},
    ]  # fmt: skip
    week = {"sat": [["16:00", "17:00"]], "sun": [["09:00", "12:00"]]}
    base = studio(start="2027-10-30T12:00", zone="Europe/London", horizon_days=2,
                  lots=[{"id": "L1", "steps": steps}], calendar={"working": week})  # fmt: skip
    problem, plan = planned(base, 0)
    ((first, last),) = windows(problem, plan, "L1", "lift")
    wall = [problem.clock.local(one).strftime("%a %H:%M") for one in (first, last)]
    assert wall == ["Sun 09:00", "Sun 10:00"]
    assert last - plan.spans["L1"]["soak"].start == 18 * 60
    base["lots"][0]["links"] = [{"from": "load.end", "to": "lift.start", "max": 17 * 60 + 30}]
    problem, plan = planned(base, 0)
    assert windows(problem, plan, "L1", "lift") == ((first, last - 30),)
    assert windows(problem, plan, "L1", "load") == ((240, 240),)
