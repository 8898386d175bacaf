"""What no plan falls below: cases by hand, and against plans of made-up studios."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.bounds import bound_of, sessions_by_stores
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Studio
from studio_log.planning.plan_studio import plan_studio
from tests.planning.kit import hours, read, studio, studios
from tests.speed.studio_families import FAMILIES, family


def dips(count: int, least: int, metres: float = 2) -> Any:
    """Lots of two dips, hung up in between; hours 09:00 to 13:00, six metres of line."""
    steps = [
        {"id": "dip 1", "hands": 20}, {"id": "dry 1", "min": least, "use": {"line": metres}},
        {"id": "dip 2", "hands": 20}, {"id": "dry 2", "min": least, "use": {"line": metres}},
        {"id": "down", "hands": 10},
    ]  # fmt: skip
    return studio(
        lots=[{"id": f"L{n}", "steps": steps} for n in range(count)], horizon_days=60,
        calendar={"working": hours(("09:00", "13:00"))}, resources={"line_m": 6},
    )  # fmt: skip


@pytest.mark.parametrize(
    ("count", "least", "metres", "bound"),
    [
        (6, 240, 2, 4),
        (7, 240, 2, 5),
        (6, 230, 2, 4),
        (6, 210, 2, 0),
        (6, 240, 3, 6),
        (1, 240, 2, 1),
    ],
)
def test_the_line_bounds_the_sessions(count: int, least: int, metres: float, bound: int) -> None:
    """By hand: each lot is hung up twice, and what is hung up in a session hangs when it ends.

    So six metres take three lots of 2 m a session: twelve hangings ask for four. Cloth that dries
    in 210 min and was dipped for 20 could come down before 13:00 and make room.
    """
    problem = read(dips(count, least, metres))
    assert sessions_by_stores(Studio(problem, lambda: False)) == bound


def test_vessels_bound_the_sessions_by_lots_and_by_litres() -> None:
    """Five soaks of 10 l in two tubs of one lot each, or in one of 20 l: three sessions."""
    steps = [{"id": "load", "hands": 20, "use": {"tub": 10}},
             {"id": "soak", "min": 600, "max": 2000, "use": {"tub": 10}},
             {"id": "lift", "hands": 10}]  # fmt: skip
    lots = [{"id": f"L{n}", "steps": steps} for n in range(5)]
    for vessels in (
        [{"id": f"t{n}", "kind": "tub", "litres": 90} for n in (1, 2)],
        [{"id": "t1", "kind": "tub", "litres": 20, "one_lot": False}],
    ):
        problem = read(studio(lots=lots, resources={"vessels": vessels}))
        assert sessions_by_stores(Studio(problem, lambda: False)) == 3


@pytest.mark.parametrize("name", FAMILIES)
def test_a_made_up_studio_is_planned_above_its_bound_and_better_than_at_first(name: str) -> None:
    problem = family(name, 5, 3)
    assert problem == family(name, 5, 3) != family(name, 5, 4)
    first = plan_studio(problem, Effort(tries=0)).plan
    outcome = plan_studio(problem, Effort(tries=30))
    assert first is not None
    assert outcome.plan is not None
    assert outcome.bound is not None
    assert violations(problem, outcome.plan) == []
    assert 5 <= outcome.bound.sessions <= outcome.plan.score.sessions < first.score.sessions
    again = plan_studio(problem, Effort(tries=30))
    assert again.plan == outcome.plan


@pytest.mark.long
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(studios(), st.integers(0, 30))
def test_no_plan_has_fewer_sessions_than_the_bound(value: Any, tries: int) -> None:
    problem = read(value)
    outcome = plan_studio(problem, Effort(tries=tries))
    if outcome.plan is not None:
        assert bound_of(problem, lambda: False).sessions <= outcome.plan.score.sessions
