"""Why not, of problems that nobody has looked at: words, no hang, and planning goes on."""

from copy import deepcopy
from itertools import count
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.planning.changes import apply_changes
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Problem
from studio_log.planning.why import MOST_REASONS, explain
from studio_log.planning.why_reasons import Reasons
from tests.planning.kit import SOAK, faults, hours, read, studio, studios


def after(calls: int) -> Effort:
    """Planning that is told to stop when it has asked so often."""
    asked = count()
    return Effort(stop=lambda: next(asked) > calls, tries=2)


def told(problem: Problem, effort: Effort) -> Reasons:
    """Have a problem planned and explained; what is offered is a plan, and all words are whole."""
    found = explain(problem, plan_studio(problem, Effort(tries=2)).plan, effort)
    for way in found.ways:
        assert violations(apply_changes(problem, way.changes), way.plan) == []
        assert way.sentence.endswith(".")
    assert all(one.sentence.endswith(".") for one in found.reasons)
    return found


def with_facts(facts: dict[str, Any], **more: Any) -> dict[str, Any]:
    whole = studio(2, **more)
    whole["lots"][0]["actual"] = facts
    return whole


@pytest.mark.long
def test_ten_thousand_steps_are_too_many_and_a_thousand_are_looked_at() -> None:
    steps = [{"id": f"s{n}", "min": 10, "max": 50} for n in range(10_000)]
    assert any("10,000 steps" in one for one in faults(studio(lots=[{"id": "A", "steps": steps}])))
    lots = [{"id": f"L{n}", "due": "2027-03-01T00:10", "steps": steps[:100]} for n in range(10)]
    found = told(read(studio(lots=lots)), after(60))
    assert [one.kind for one in found.reasons] == ["late"] * (MOST_REASONS + 1)
    assert found.reasons[-1].sentence.startswith("Two more reasons of this kind: L8 and L9.")


def test_a_step_that_no_slot_of_the_grid_fits_is_told_of() -> None:
    lot = {"id": "A", "steps": [{"id": "dip", "min": 1, "max": 5}, {"id": "lift", "hands": 5}]}
    (reason,) = told(read(studio(lots=[lot])), Effort(tries=2)).reasons
    assert reason.sentence == (
        "A cannot be done in these hours: dip lasts 1 min to 5 min, and on a grid of 10 min no "
        "moment lies between."
    )


def test_many_lots_without_a_place_are_few_sentences() -> None:
    lots = [{"id": f"L{n}", "steps": [{"id": "begin", "hands": 10}, {"id": "rest", "min": 840,
             "max": 840}, {"id": "lift", "hands": 10}]} for n in range(60)]  # fmt: skip
    found = told(read(studio(lots=[*lots, {"id": "good", "steps": SOAK}])), after(4000))
    (reason,) = found.reasons
    assert reason.sentence.startswith(
        "L0, L1, L2, L3, L4, L5, L6, L7 and 52 other lots cannot be done in these hours: rest may "
    )
    assert len(found.ways[-1].changes) == 60  # all of them left out


def test_limits_that_contradict_each_other_are_a_reason_with_a_way_out() -> None:
    # From load to take down at most 5 h, while the soak alone takes 10 and the drying 4.
    whole = studio(2)
    whole["lots"][0]["links"] = [
        {"from": "load.end", "to": "take down.end", "max": 300},
        {"from": "lift.start", "to": "dry.end", "max": 3000},
    ]
    found = told(read(whole), Effort(tries=2))
    assert [(one.kind, one.lots) for one in found.reasons] == [("alone", ("L1",))]
    assert [type(one).__name__ for one in found.ways[0].changes] == ["LongerLink"]
    assert found.ways[-1].words == "L1 left out"


FACTS: list[tuple[dict[str, Any], str]] = [
    # The soak has lasted 62 h of its 18: it is over its limit, and is lifted when somebody comes.
    ({"load": {"start": "2027-02-26T09:00", "end": "2027-02-26T10:00"},
      "soak": {"start": "2027-02-26T10:00", "end": None}}, "longer than its 1080"),
    # Each begins before the one before it ends.
    ({"load": {"start": "2027-02-28T20:00", "end": "2027-02-28T22:00"},
      "soak": {"start": "2027-02-28T21:00", "end": None}}, "begins before load ends"),
    # Only a later step is recorded, from long ago.
    ({"dry": {"start": "1990-01-01T00:00", "end": None}}, "count as done"),
    # No end, though the next has begun.
    ({"load": {"start": "2027-02-28T20:00", "end": None},
      "soak": {"start": "2027-02-28T21:00", "end": None}}, "no end, though soak"),
]  # fmt: skip


@pytest.mark.parametrize(("facts", "words"), FACTS, ids=lambda one: str(one)[:30])
def test_facts_that_break_a_rule_are_told_of_and_planning_goes_on(
    facts: dict[str, Any], words: str
) -> None:
    problem = read(with_facts(facts))
    assert any(words in one for one in problem.notes), problem.notes
    outcome = plan_studio(problem, Effort(tries=2))
    assert outcome.plan is not None
    assert set(outcome.plan.spans) == {"L1", "L2"}
    assert told(problem, Effort(tries=2)) == Reasons()


def test_two_lots_recorded_in_one_tub_are_no_reason_to_fall_silent() -> None:
    whole = studio(2)
    facts = {"load": {"start": "2027-02-28T20:00", "end": "2027-02-28T20:20"},
             "soak": {"start": "2027-02-28T20:20", "end": None}}  # fmt: skip
    for lot in whole["lots"]:
        lot["actual"] = facts
    problem = read(whole)
    assert any("recorded as running" in one for one in problem.notes)
    found = told(problem, Effort(tries=2))
    assert [one.kind for one in found.reasons] == ["open"]
    assert any(one.words.startswith("a second tub") for one in found.ways) or found.ways == ()


@pytest.mark.parametrize("start", ["2027-03-27T00:00", "2027-10-30T00:00"])
def test_the_nights_of_the_clock_change(start: str) -> None:
    # London goes forward on 28 March 2027 and back on 31 October: that Sunday has 23 or 25 hours.
    whole = studio(2, start=start, zone="Europe/London", horizon_days=4)
    whole["calendar"] = {"working": hours(("09:00", "12:00")) | {"sun": []},
                         "waking": hours(("00:00", "24:00"))}  # fmt: skip
    day = start[:8]
    whole["lots"][0]["actual"] = {
        "load": {"start": f"{day}{int(start[8:10]) - 1}T18:00",
                 "end": f"{day}{int(start[8:10]) - 1}T18:30"},
        "soak": {"start": f"{day}{int(start[8:10]) - 1}T18:30", "end": None},
    }  # fmt: skip
    whole["lots"][1]["steps"][1] |= {"min": 1200, "max": 1260}  # 20 to 21 h: over Saturday night
    found = told(read(whole), Effort(tries=2))
    assert [one.lots for one in found.reasons] in [[("L2",)], [("L1",), ("L2",)]]
    assert found.ways


def test_moments_before_the_start_are_as_good_as_none() -> None:
    whole = studio(2)
    whole["lots"][0]["due"] = "2026-12-24T09:00"
    whole["goals"] = [{"id": "past", "date": "2026-12-24T09:00", "pieces": 2, "cured_days": 900,
                       "lots": ["L1"]}]  # fmt: skip
    found = told(read(whole), Effort(tries=2))
    assert {one.kind for one in found.reasons} == {"late"}
    assert all("would be late even if everything else were free" in one.sentence
               for one in found.reasons)  # fmt: skip


@pytest.mark.long
@settings(max_examples=30)
@given(studios(), st.integers(0, 40), st.integers(0, 40))
def test_told_to_stop_at_any_time_it_says_no_more_than_is_true(
    whole: dict[str, Any], calls: int, shut: int
) -> None:
    if shut % 3 == 0:
        whole = deepcopy(whole)
        whole["calendar"]["working"] = {"wed": [["09:00", "10:00"]]}
    problem = read(whole)
    plan = plan_studio(problem, Effort(tries=0)).plan
    found = explain(problem, plan, after(calls))
    if plan is not None and not plan.score.late:
        assert found == Reasons()
    for way in found.ways:
        assert violations(apply_changes(problem, way.changes), way.plan) == []
