"""A plan made anew keeps to the old one: it does not dance, and what moves is worth it."""

import json
from copy import deepcopy
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.answer import answer
from studio_log.planning.apart import Apart, Ask
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import BadProblemError, Clock, Plan, Problem, Score, Span
from studio_log.planning.read_plan import read_plan
from tests.planning.kit import hours, instance, read, studio, studios

FORMAT = "%Y-%m-%dT%H:%M"


def planned(problem: Problem, tries: int = 10) -> Plan:
    plan = plan_studio(problem, Effort(tries=tries)).plan
    assert plan is not None
    return plan


def kept(problem: Problem, old: Plan, tries: int = 10) -> Plan:
    outcome = plan_studio(problem, Effort(tries=tries), keep=old)
    assert outcome.plan is not None, outcome.why
    assert violations(problem, outcome.plan) == []
    return outcome.plan


def moment(problem: Problem, minute: int) -> str:
    return problem.clock.local(minute).strftime(FORMAT)


def later(value: Any, plan: Plan, minutes: int) -> tuple[Any, Plan]:
    """The problem so many minutes later, all done as planned until then; and the plan from then."""
    problem = read(value)
    found = deepcopy(value)
    found["start"] = moment(problem, minutes)
    for lot in found["lots"]:
        facts = lot.setdefault("actual", {})
        if isinstance(lot.get("release"), int):
            lot["release"] = max(0, lot["release"] - minutes)
        for step, span in plan.spans.get(lot["id"], {}).items():
            if span.start <= minutes:
                over = span.end <= minutes
                facts[step] = {
                    "start": moment(problem, span.start),
                    "end": moment(problem, span.end) if over else None,
                }
    spans = {
        lot: {step: Span(one.start - minutes, one.end - minutes) for step, one in own.items()}
        for lot, own in plan.spans.items()
    }
    return found, replace(plan, spans=spans)


def moved(old: Plan, new: Plan, problem: Problem) -> list[tuple[str, str]]:
    """Hands-on steps that the new plan has at another time."""
    return [
        (lot.name, step.name)
        for lot in problem.lots
        for step in lot.steps
        if step.hands and step.name in new.spans.get(lot.name, {})
        and old.spans.get(lot.name, {}).get(step.name) != new.spans[lot.name][step.name]
    ]  # fmt: skip


@pytest.mark.parametrize("name", ["studio-four-lots-two-running", "studio-ten-lots-class"])
@pytest.mark.parametrize("seed", [1, 5])
def test_an_unchanged_problem_and_plan_give_the_same_plan(name: str, seed: int) -> None:
    problem = read(instance(name))
    old = planned(problem, 3)
    again = plan_studio(problem, Effort(tries=30, seed=seed), keep=old)
    assert again.plan == old


@pytest.mark.parametrize("name", ["studio-four-lots-two-running", "studio-six-lots-weather"])
@pytest.mark.parametrize("days", [1, 3])
def test_when_all_goes_as_planned_nothing_moves(name: str, days: int) -> None:
    value = instance(name)
    problem = read(value)
    old = planned(problem, 60)
    then, old = later(value, old, days * 1440)
    problem = read(then)
    held = plan_studio(problem, Effort(tries=0), keep=old).plan
    assert held is not None
    assert held.spans.keys() == {lot for lot, own in old.spans.items() if own}
    assert moved(old, held, problem) == []
    for lot, own in held.spans.items():
        assert own == {step: old.spans[lot][step] for step in own}
        vessels = held.vessels.get(lot, {})
        assert all(one == old.vessels[lot][step] for step, one in vessels.items())


def test_what_moves_is_paid_for_with_sessions() -> None:
    """A moved visit costs a quarter of a session, so four of them are worth one at most."""
    value = instance("studio-ten-lots-class")
    old = planned(read(value), 0)
    then, old = later(value, old, 1440)
    problem = read(then)
    held = plan_studio(problem, Effort(tries=0), keep=old).plan
    better = plan_studio(problem, Effort(tries=60), keep=old).plan
    assert held is not None
    assert better is not None
    assert moved(old, held, problem) == []
    assert better.score.parts() <= held.score.parts()
    if better.score.late == held.score.late:
        visits = len({(lot, better.spans[lot][step].start // 60)
                      for lot, step in moved(old, better, problem)})  # fmt: skip
        assert visits <= 4 * (held.score.sessions - better.score.sessions) or visits == 0
    soon = [(lot, step) for lot, step in moved(old, better, problem)
            if old.spans[lot][step].start < 1440]  # fmt: skip
    assert soon == []


def test_a_new_lot_goes_round_those_that_are_planned() -> None:
    value = studio(2, resources={"vessels": [{"id": "t1", "kind": "tub", "litres": 20}],
                                 "line_m": 6})  # fmt: skip
    old = planned(read(value), 20)
    more = deepcopy(value)
    more["lots"].append(deepcopy(value["lots"][0]) | {"id": "L3"})
    problem = read(more)
    new = kept(problem, old, 0)
    assert [one for one in moved(old, new, problem) if one[0] != "L3"] == []
    assert set(new.spans) == {"L1", "L2", "L3"}


def test_what_is_to_start_within_a_day_stays_though_a_session_could_be_spared() -> None:
    """By hand: L1 is to be loaded on Monday at 10:00 and L2 on Tuesday at 09:00.

    Loading both at once would spare a session. But both are within 24 h of Monday 09:30, so they
    stay; from Sunday 10:00 they are not, and one goes to the other.
    """
    steps = [{"id": "load", "hands": 20}, {"id": "rest", "min": 10, "max": 20_000}]
    value = studio(lots=[{"id": n, "steps": steps} for n in ("L1", "L2")], resources={},
                   calendar={"working": hours(("09:00", "12:00"))})  # fmt: skip

    def old(since: int) -> Plan:
        times = {"L1": 600 - since, "L2": 1440 + 540 - since}
        spans = {
            lot: {"load": Span(at, at + 20), "rest": Span(at + 20, at + 30)}
            for lot, at in times.items()
        }
        return replace(planned(read(value), 0), spans=spans, made_for="")

    problem = read(value | {"start": "2027-03-01T09:30"})
    assert moved(old(570), kept(problem, old(570), 40), problem) == []
    problem = read(value | {"start": "2027-02-28T10:00"})
    new = kept(problem, old(-840), 40)
    assert moved(old(-840), new, problem) in ([("L1", "load")], [("L2", "load")])
    assert new.score.sessions == 1


def test_a_lot_stays_in_the_vessel_that_it_lies_in() -> None:
    tubs = [{"id": f"tub{n}", "kind": "tub", "litres": 20} for n in (1, 2)]
    value = studio(resources={"vessels": tubs, "line_m": 6}, start="2027-03-06T12:00")
    value["lots"][0]["actual"] = {
        "load": {"start": "2027-03-06T05:40", "end": "2027-03-06T06:00"},
        "soak": {"start": "2027-03-06T06:00", "end": None},
    }
    problem = read(value)
    for tub in ("tub1", "tub2"):
        vessels = {"L1": {"soak": {"tub": tub}, "lift": {"tub": tub}}}
        old = replace(planned(problem, 0), vessels=vessels, made_for="")
        assert kept(problem, old).vessels["L1"]["soak"] == {"tub": tub}


@pytest.mark.long
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.integers(0, 6), st.integers(0, 3))
def test_every_plan_that_keeps_to_another_passes(value: Any, tries: int, quarter: int) -> None:
    """All went as planned for some time: then what is left holds, and nothing moves for nothing."""
    problem = read(value)
    old = plan_studio(problem, Effort(tries=2)).plan
    if old is None:
        return
    assert plan_studio(problem, Effort(tries=tries), keep=old).plan == old
    minutes = quarter * 360
    then, old = later(value, old, minutes)
    problem = read(then)
    outcome = plan_studio(problem, Effort(tries=0), keep=old)
    assert outcome.plan is not None
    assert violations(problem, outcome.plan) == []
    assert moved(old, outcome.plan, problem) == []
    better = plan_studio(problem, Effort(tries=tries), keep=old).plan
    assert better is not None
    soon = [one for one in moved(old, better, problem) if old.spans[one[0]][one[1]].start < 1440]
    assert soon == []


@pytest.mark.long
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), studios())
def test_any_old_plan_does_no_harm(value: Any, other: Any) -> None:
    """Even one that was made for another studio."""
    problem = read(value)
    old = plan_studio(read(other), Effort(tries=0)).plan
    free = plan_studio(problem, Effort(tries=0)).plan
    if old is None:
        return
    outcome = plan_studio(problem, Effort(tries=2), keep=old)
    assert free is None or outcome.plan is not None
    if outcome.plan is not None:
        assert violations(problem, outcome.plan) == []
    again = plan_studio(problem, Effort(tries=2), keep=old)
    assert again.plan == outcome.plan


@pytest.mark.parametrize("name", ["studio-four-lots-two-running", "studio-ten-lots-class"])
def test_who_looks_longer_goes_on_from_the_plan_in_hand(name: str) -> None:
    """The very plan is where it begins; it becomes no worse, and what is near stays."""
    problem = read(instance(name))
    old = planned(problem, 0)
    seen: list[Plan] = []
    effort = Effort(tries=40, on_better=seen.append, go_on=True)
    found = plan_studio(problem, effort, keep=old)
    assert found.plan is not None
    assert seen[0].score == old.score
    assert found.plan.score.parts() < old.score.parts()
    assert found.tries == 40
    soon = [
        one for one in moved(old, found.plan, problem) if old.spans[one[0]][one[1]].start < 1440
    ]
    assert soon == []


# -- reading a plan back -----------------------------------------------------------------


@pytest.mark.parametrize("zone", [None, "Europe/London"])
def test_a_plan_is_read_back_from_its_answer(zone: str | None) -> None:
    value = studio(2, start="2027-03-27T12:00") | ({"zone": zone} if zone else {})
    problem = read(value)
    found = answer(problem, Effort(tries=3))
    fields = json.loads(json.dumps(found.fields))
    assert read_plan(problem, fields) == found.plan
    shift = timedelta(hours=3)
    clock = Clock(problem.clock.start + shift, problem.clock.zone)
    then = read_plan(replace(problem, clock=clock), fields)
    assert found.plan is not None
    first = found.plan.spans["L1"]["load"].start
    # London's clocks go forward in the night to the 28th; three hours on the wall are three here.
    assert then.spans["L1"]["load"].start == first - 180


GOOD: dict[str, Any] = {
    "starts": {"L1": {"load": "2027-03-01T09:00"}}, "ends": {"L1": {"load": "2027-03-01T09:20"}},
    "score": [0, 1, 5], "vessels": {"L1": {"load": {"tub": "tub1"}}},
    "serves": {"class": {"L1": 2}}, "made_for": "",
}  # fmt: skip


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ([], "The plan is a list, where an object is due."),
        ({"starts": None}, "The plan has no starts."),
        ({"ends": {}}, "not the same lots"),
        ({"ends": {"L1": {}}}, "not the same steps"),
        ({"ends": {"L1": {"load": "2027-03-01T08:00"}}}, "end before it starts"),
        ({"ends": {"L1": {"load": "2027-03-01T09:20:00Z"}}}, "a moment such as 2027-03-01T09:00"),
        ({"ends": {"L1": {"load": 7}}}, "a moment such as"),
        ({"ends": {"L1": {"load": "9999-03-01T08:00"}}}, "a moment such as"),
        ({"ends": {"L1": 3}}, "is 3, where an object is due"),
        ({"score": [1, 2]}, "no list of three whole numbers"),
        ({"score": [1, 2, -3]}, "no list of three whole numbers"),
        ({"score": [1, 2, True]}, "no list of three whole numbers"),
        ({"vessels": {"L1": {"load": {"tub": 4.5}}}}, "a name of 1 to 120"),
        ({"serves": {"class": {"L1": "two"}}}, "a whole number from 0"),
        ({"made_for": ["x"]}, "a text of up to 64"),
    ],
)
def test_a_plan_that_makes_no_sense_is_refused(change: Any, words: str) -> None:
    problem = read(studio())
    assert read_plan(problem, GOOD).spans == {"L1": {"load": Span(540, 560)}}
    with pytest.raises(BadProblemError) as raised:
        read_plan(problem, GOOD | change if isinstance(change, dict) else change)
    assert any(words in one for one in raised.value.faults), raised.value.faults


@given(st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(
        st.sampled_from(["starts", "ends", "score", "vessels", "serves", "L1", "load"]) | st.text(),
        inner, max_size=4), max_leaves=20,
))  # fmt: skip
def test_anything_reads_as_a_plan_or_is_told_of(value: Any) -> None:
    said: tuple[str, ...] = ()
    try:
        found = read_plan(read(studio()), value)
    except BadProblemError as bad:
        said = bad.faults
    else:
        assert isinstance(found.score, Score)
    assert all(one.endswith(".") and len(one) < 400 for one in said)


def test_a_process_of_its_own_keeps_to_a_plan_too() -> None:
    value = instance("studio-four-lots-two-running")
    old = answer(read(value), Effort(tries=0)).fields
    heard: list[Any] = []
    for keep in (old, {"starts": 3}):
        one = Apart(Ask(value, engine="own", seconds=60, tries=8, keep=keep), heard.append)
        assert one.wait(60)
    done = [message["done"] for message in heard if "done" in message]
    assert [one["status"] for one in done] == ["feasible", "invalid"]
    assert {key: done[0][key] for key in ("starts", "vessels", "score", "made_for")} == {
        key: old[key] for key in ("starts", "vessels", "score", "made_for")
    }
    ask = Ask(value, engine="own", seconds=60, tries=8, keep=old, more={"go_on": True})
    heard.clear()
    assert Apart(ask, heard.append).wait(60)
    assert (heard[-1]["done"]["tries"], heard[-1]["done"]["score"] < old["score"]) == (8, True)
