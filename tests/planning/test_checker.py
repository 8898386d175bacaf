"""The checker takes every plan the engine makes, and refuses planted faults of each kind."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.check_plan import violations
from studio_log.planning.check_project import project_violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_project import plan_project
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem, Score, Span
from studio_log.planning.sessions import sessions_of
from tests.planning.kit import project, read, read_tasks, studio, studios


def planned(value: Any, tries: int = 3) -> tuple[Problem, Plan]:
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=tries)).plan
    assert plan is not None
    return problem, plan


def moved(plan: Plan, lot: str, step: str, start: int = 0, end: int = 0) -> Plan:
    spans = {name: dict(own) for name, own in plan.spans.items()}
    was = spans[lot][step]
    spans[lot][step] = Span(was.start + start, was.end + end)
    return replace(plan, spans=spans)


def all_moved(plan: Plan, lot: str, by: int) -> Plan:
    spans = {name: dict(own) for name, own in plan.spans.items()}
    spans[lot] = {name: Span(one.start + by, one.end + by) for name, one in spans[lot].items()}
    return replace(plan, spans=spans)


def over(plan: Plan, lot: str, other: str) -> Plan:
    """One lot at the very moments of another."""
    spans = {name: dict(own) for name, own in plan.spans.items()}
    spans[lot] = dict(spans[other])
    return replace(plan, spans=spans)


GOAL = {
    "id": "class",
    "date": "2027-03-05T09:00",
    "pieces": 3,
    "cured_days": 1,
    "lots": ["L1", "L2"],
}
PLANTED: list[tuple[str, Callable[[Plan], Plan], str]] = [
    ("a step missing", lambda p: replace(p, spans={**p.spans, "L1": {}}), "ought not to be, or"),
    ("an unknown lot", lambda p: replace(p, spans={**p.spans, "L9": {}}), "is no lot"),
    ("off the grid", lambda p: all_moved(p, "L1", 3), "off the grid"),
    ("too short", lambda p: moved(p, "L1", "soak", end=-600), "less than 600"),
    ("too long", lambda p: moved(p, "L1", "soak", end=5000), "more than 1080"),
    ("a gap", lambda p: moved(p, "L1", "lift", start=10, end=10), "follows soak after 10 min"),
    ("an overlap", lambda p: moved(p, "L1", "lift", start=-10), "follows soak after -10 min"),
    ("at night", lambda p: all_moved(p, "L1", 720), "outside the working hours"),
    ("hands too short", lambda p: moved(p, "L1", "load", end=-10), "min of hands, not 20"),
    ("hands too long", lambda p: moved(p, "L1", "load", end=10), "min of hands, not 20"),
    ("before its release", lambda p: all_moved(p, "L1", -10 * 1440), "begins before it may"),
    ("beyond the horizon", lambda p: all_moved(p, "L1", 14 * 1440), "outside the time"),
    ("no vessel", lambda p: replace(p, vessels={}), "is in no tub"),
    ("too many hands", lambda p: over(p, "L2", "L1"), "hands is asked for too much"),
    ("too much line", lambda p: over(p, "L2", "L1"), "line is asked for too much"),
    ("two in a tub", lambda p: over(p, "L2", "L1"), "tub1 is asked for too much"),
    ("a wrong lateness", lambda p: replace(p, score=replace(p.score, late=1)), "The lateness is"),
    ("a wrong count", lambda p: replace(p, score=replace(p.score, sessions=1)), "The sessions is"),
    ("a wrong sum", lambda p: replace(p, score=Score(*p.score.parts()[:2], 1)), "The fine part is"),
    ("a goal not served", lambda p: replace(p, serves={}), "served 0 pieces, not 3"),
    ("more than there is", lambda p: replace(p, serves={"class": {"L1": 3}}), "serves 3 pieces"),
    ("none of its lots", lambda p: replace(p, serves={"class": {"X": 3}}), "none of its lots"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("plant", "words"), [one[1:] for one in PLANTED], ids=[o[0] for o in PLANTED]
)
def test_a_planted_fault_is_found(plant: Callable[[Plan], Plan], words: str) -> None:
    value = studio(2, goals=[GOAL], start="2027-03-01T08:00")
    value["lots"][0]["release"] = "2027-03-01T08:30"
    problem, plan = planned(value)
    assert violations(problem, plan) == []
    assert any(words in one for one in violations(problem, plant(plan)))


def test_a_wet_day_that_is_not_heeded_is_found() -> None:
    problem, plan = planned(studio())
    wet = {problem.clock.local(plan.spans["L1"]["dry"].start).date(): 2880}
    lasts = plan.spans["L1"]["dry"].end - plan.spans["L1"]["dry"].start
    found = violations(replace(problem, drying=wet), plan)
    assert f"L1: dry lasts {lasts} min, less than 2880." in found


def test_another_vessel_in_the_middle_is_found() -> None:
    tubs = [{"id": f"tub{n}", "kind": "tub", "litres": 20} for n in (1, 2)]
    problem, plan = planned(studio(resources={"vessels": tubs, "line_m": 6}))
    other = {"tub1": "tub2", "tub2": "tub1"}[plan.vessels["L1"]["lift"]["tub"]]
    wrong = {"L1": {**plan.vessels["L1"], "lift": {"tub": other}}}
    assert "L1: lift is in another tub than soak." in violations(
        problem, replace(plan, vessels=wrong)
    )


def test_a_link_that_is_broken_and_a_fact_that_is_moved_are_found() -> None:
    value = studio()
    value["lots"][0]["links"] = [{"from": "load.start", "to": "take down.end", "max": 2000}]
    problem, plan = planned(value)
    late = moved(moved(moved(plan, "L1", "dry", end=2000), "L1", "take down", 2000, 2000),
                 "L1", "cure", 2000, 2000)  # fmt: skip
    assert any("from load to take down pass" in one for one in violations(problem, late))
    value = studio()
    value["lots"][0]["actual"] = {
        "load": {"start": "2027-02-28T23:00", "end": "2027-02-28T23:20"},
        "soak": {"start": "2027-02-28T23:20", "end": None},
    }
    problem, plan = planned(value)
    assert any("another time than is recorded" in one
               for one in violations(problem, moved(plan, "L1", "soak", start=10)))  # fmt: skip


def begun(**facts: tuple[str, str]) -> Any:
    """A studio at noon on Saturday whose lot has some steps behind it."""
    value = studio(start="2027-03-06T12:00")
    value["lots"][0]["actual"] = {
        name: {"start": f"2027-03-06T{start}", "end": f"2027-03-06T{end}"}
        for name, (start, end) in facts.items()
    }
    return value


def test_a_step_that_goes_by_itself_runs_since_the_one_before_it_ended() -> None:
    problem, plan = planned(begun(load=("05:00", "05:20")))
    assert plan.spans["L1"]["soak"].start == -400
    later = violations(problem, moved(plan, "L1", "soak", start=20))
    assert "L1: soak follows load after 20 min." in later


def test_a_pause_counts_from_the_recorded_end() -> None:
    value = begun(load=("01:00", "01:20"), soak=("01:20", "11:20"), lift=("11:20", "11:30"))
    value["lots"][0]["steps"][2]["then_within"] = 300
    problem, plan = planned(value)
    assert plan.spans["L1"]["dry"].start in range(271)
    spans = {"L1": {name: Span(one.start + 400, one.end + 400)
                    for name, one in plan.spans["L1"].items()}}  # fmt: skip
    assert any("dry follows lift after" in one
               for one in violations(problem, replace(plan, spans=spans)))  # fmt: skip
    value["lots"][0]["steps"][2]["then_within"] = 20  # it is over already: planned on
    problem, plan = planned(value)
    assert plan.spans["L1"]["dry"].start >= 0


@pytest.mark.long
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios())
def test_every_plan_made_passes_and_what_has_none_is_never_called_better(value: Any) -> None:
    problem = read(value)
    outcome = plan_studio(problem, Effort(tries=4))
    if outcome.plan is None:
        assert outcome.status in {"infeasible", "unknown"}
        return
    assert violations(problem, outcome.plan) == []
    assert len(sessions_of(problem, outcome.plan)) == outcome.plan.score.sessions
    bound = outcome.bound
    assert bound is not None
    low, got = (bound.late, bound.sessions, bound.fine), outcome.plan.score.parts()
    assert all(one <= other for one, other in zip(low, got, strict=True))
    assert (outcome.status == "optimal") == (low == got)


@pytest.mark.long
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.data())
def test_a_step_that_is_moved_alone_is_found(value: Any, data: st.DataObject) -> None:
    problem = read(value)
    plan = plan_studio(problem, Effort(tries=0)).plan
    if plan is None:
        return
    lot = data.draw(st.sampled_from(sorted(plan.spans)))
    step = data.draw(st.sampled_from(sorted(plan.spans[lot])))
    by = data.draw(st.sampled_from([-20_000, -problem.grid, problem.grid, 20_000]))
    if step == "cure" and by > 0:
        return
    assert violations(problem, moved(plan, lot, step, start=by)) != []


TASKS = [{"id": n, "duration": 3, "demand": {"R": 1}, "release": 1} for n in (1, 2, 3)]


@pytest.mark.parametrize(
    ("starts", "makespan", "words"),
    [
        ({"1": 1, "2": 1}, None, "not each planned once: 3"),
        ({"1": 0, "2": 3, "3": 6}, None, "Task 1 starts before it may"),
        ({"1": 1, "2": 1, "3": 1}, None, "asked for 3 at 1, and has 2"),
        ({"1": 1, "2": 4, "3": 9}, None, "Task 2 starts -5 after 3, not -4 or more"),
        ({"1": 1, "2": 1, "3": 4}, 8, "ends at 7; the plan says 8"),
        ({"1": 2, "2": 1, "3": 4}, None, "Task 2 starts -1 after 1, not 0 or more"),
    ],
)
def test_a_projects_planted_faults_are_found(starts: Any, makespan: Any, words: str) -> None:
    lags = [{"from": 1, "to": 2, "min": 0}, {"from": 2, "to": 3, "max": 4}]
    found = read_tasks(project(TASKS, lags))
    best = plan_project(found, Effort(tries=5))
    assert (best.status, best.makespan) == ("optimal", 7)
    assert best.starts is not None
    assert project_violations(found, best.starts, best.makespan) == []
    assert any(words in one for one in project_violations(found, starts, makespan))
