"""What a late lot lacks beside the others: worked out by hand, and true of any plan."""

from typing import Any

import pytest
from hypothesis import given, settings

from studio_log.planning.effort import Effort
from studio_log.planning.lates import late_dues, late_goals
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.score import Lateness
from studio_log.planning.why_beside import HANDS, Beside, beside, beside_words
from tests.planning.kit import read, studio, studios
from tests.planning.test_why_late import one_tub

DEADLINE = 16 * 60 + 24 * 60
"""Tue 2 March, 16:00."""


def looked(whole: dict[str, Any]) -> tuple[Problem, Beside | None]:
    problem = read(whole)
    plan = plan_studio(problem, Effort(tries=20)).plan
    assert plan is not None
    (late,) = late_goals(problem, plan)
    (name,) = late.late
    return problem, beside(problem, plan, name, DEADLINE, lambda: False)


def test_a_lot_lacks_the_line_on_the_day_on_which_it_would_have_to_hang() -> None:
    # Both have a tub and hang 5 m from Tuesday on, where 6 m are: the second hangs a day later.
    whole = one_tub()
    tub = whole["resources"]["vessels"][0]
    whole["resources"] = {"vessels": [tub, tub | {"id": "tub2"}], "line_m": 6}
    problem, found = looked(whole)
    assert found is not None
    assert found.thing == "line"
    (other,) = found.others
    assert beside_words(problem, found) == (
        f"To be in time {found.lot} has to hang on Tuesday 2 March; the line holds 6 m, and "
        f"{other} hangs on it then in this plan."
    )


def test_vessels_that_are_too_small_do_not_count() -> None:
    # The second tub holds 4 L; each lot needs 10 L.
    whole = one_tub()
    whole["resources"]["vessels"].append({"id": "tub2", "kind": "tub", "litres": 4})
    problem, found = looked(whole)
    assert found is not None
    assert "there is one tub large enough, and" in beside_words(problem, found)


def test_hands_are_what_is_short_where_two_would_have_to_work_at_once() -> None:
    # Each is worked at for an hour, and both are due by 10:00; somebody is there from nine on.
    steps = [{"id": "brush", "hands": 60}]
    lots = [{"id": name, "due": "2027-03-01T10:00", "steps": steps} for name in ("A", "B")]
    problem = read(studio(lots=lots))
    plan = plan_studio(problem, Effort(tries=5)).plan
    assert plan is not None
    ((lot, _),) = late_dues(problem, plan)
    found = beside(problem, plan, lot.name, lot.due or 0, lambda: False)
    assert found is not None
    other = "A" if lot.name == "B" else "B"
    assert found == Beside(lot.name, HANDS, 9 * 60, (other,))
    assert beside_words(problem, found) == (
        f"To be in time {lot.name} needs hands on Monday 1 March; there is one pair of hands, and "
        f"{other} needs it then in this plan."
    )


def test_told_to_stop_it_says_nothing() -> None:
    problem = read(one_tub())
    plan = plan_studio(problem, Effort(tries=5)).plan
    assert plan is not None
    assert beside(problem, plan, "L2", DEADLINE, lambda: True) is None


def has_at(problem: Problem, plan: Plan, lot: str, thing: str, at: int) -> bool:
    """Whether a lot has a thing at a minute of a plan, from its steps; a vessel is kept between."""
    steps = next(one.steps for one in problem.lots if one.name == lot)
    own = [plan.spans[lot][one.name] for one in steps
           if one.name in plan.spans.get(lot, {})
           and (one.hands if thing == HANDS else thing in one.uses)]  # fmt: skip
    return bool(own) and min(it.start for it in own) <= at < max(it.end for it in own)


@pytest.mark.long
@settings(max_examples=60)
@given(studios())
def test_who_is_said_to_have_it_has_it_then(whole: dict[str, Any]) -> None:
    problem = read(whole)
    plan = plan_studio(problem, Effort(tries=2)).plan
    if plan is None:
        return
    cure = Lateness(problem).cure
    late = [(lot.name, (lot.due or 0) - cure[lot.name]) for lot, _ in late_dues(problem, plan)]
    late += [(name, one.goal.at - one.goal.cured) for one in late_goals(problem, plan)
             for name in one.late]  # fmt: skip
    for name, by in late:
        found = beside(problem, plan, name, by, lambda: False)
        if found is None:
            continue
        assert found.at < by
        assert name not in found.others
        assert found.others
        for other in found.others:
            assert has_at(problem, plan, other, found.thing, found.at), (other, found)
