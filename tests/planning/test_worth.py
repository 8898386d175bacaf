"""Fewer visits or sooner ready: what a session is worth decides; the score stays three parts."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.worth import USUAL, WORTHS
from tests.planning.kit import faults, hours, read, studio, studios
from tests.planning.test_plans import every_plan, score_of

STEPS: list[dict[str, Any]] = [
    {"id": "load", "hands": 30, "use": {"tub": 5}},
    {"id": "soak", "min": 100, "max": 700, "use": {"tub": 5}},
    {"id": "lift", "hands": 40, "use": {"tub": 5}},
    {"id": "dry", "min": 150, "max": 1620},
    {"id": "take down", "hands": 20},
]


def lone_lot() -> dict[str, Any]:
    """One lot, hours in the morning, at noon and in the evening."""
    return studio(
        lots=[{"id": "L1", "steps": STEPS}], grid_min=60, horizon_days=3,
        resources={"vessels": [{"id": "tub1", "kind": "tub", "litres": 5}]},
        calendar={"working": hours(("08:00", "09:00"), ("13:00", "15:00"), ("18:00", "20:00"))},
    )  # fmt: skip


def planned(problem: Problem, tries: int = 0) -> Plan:
    plan = plan_studio(problem, Effort(tries=tries)).plan
    assert plan is not None
    assert violations(problem, plan) == []
    return plan


@pytest.mark.parametrize("worth", WORTHS)
@pytest.mark.parametrize("due", [None, 2000])
def test_one_lot_is_placed_as_its_worth_asks(worth: int | None, due: int | None) -> None:
    """Against every plan of the lot, in which minutes late always come first."""
    value = lone_lot() | ({} if worth is None else {"session_worth": worth})
    value["lots"][0]["due"] = due
    problem = read(value)

    def cost(score: tuple[int, ...]) -> tuple[int, ...]:
        return score if worth is None else (score[0], worth * score[1] + score[2])

    plan = planned(problem)
    scores = [one for p in every_plan(problem, 2880) if (one := score_of(problem, p)) is not None]
    assert cost(plan.score.parts()) == min(cost(one) for one in scores)


@pytest.mark.parametrize("worth", WORTHS)
def test_from_end_to_end_the_waiting_that_a_session_is_worth_decides(worth: int | None) -> None:
    """By hand: in two sessions the lot is down at 11:00, in one at 17:00, six hours later."""
    steps = [{"id": "dip", "hands": 60}, {"id": "dry", "min": 60, "max": 2000},
             {"id": "take down", "hands": 60}]  # fmt: skip
    week = hours(("08:00", "09:00"), ("10:00", "11:00"), ("14:00", "18:00"))
    problem = read(studio(
        lots=[{"id": "L1", "steps": steps}], grid_min=60, calendar={"working": week}, resources={}
    ))  # fmt: skip
    parts = planned(replace(problem, session_worth=worth)).score.parts()
    assert parts in {(0, 1, 1020), (0, 2, 660)}
    if worth != 360:
        assert parts == ((0, 1, 1020) if worth is None or worth > 360 else (0, 2, 660))
    assert WORTHS[USUAL] == 12 * 60


@pytest.mark.parametrize("worth", [-1, 100_001, "much", True])
def test_a_worth_that_makes_no_sense_is_told(worth: Any) -> None:
    (said,) = faults(studio(session_worth=worth))
    assert said.startswith("The problem has session_worth")


@pytest.mark.long
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.sampled_from([0, 120, 720]))
def test_every_worth_gives_plans_that_pass(value: Any, worth: int) -> None:
    outcome = plan_studio(read(value | {"session_worth": worth}), Effort(tries=5))
    if outcome.plan is not None:
        assert violations(read(value), outcome.plan) == []
