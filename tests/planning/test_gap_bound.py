"""The bound of sessions by what hangs from one to the next: against plans, and by hand."""

from copy import deepcopy
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from studio_log.planning.effort import Effort
from studio_log.planning.engine import Studio
from studio_log.planning.gap_bound import gap_bound
from studio_log.planning.plan_studio import plan_studio
from tests.planning.kit import STUDIOS, hours, instance, read, studio, studios


def bound(value: Any) -> int:
    return gap_bound(Studio(read(value), lambda: False))


@pytest.mark.parametrize(("lots", "sessions"), [(1, 4), (2, 5), (3, 6), (4, 7)])
def test_by_hand_with_one_tub_and_a_line_for_one(lots: int, sessions: int) -> None:
    """Load, lift and hang, take down: each wait is longer than a window of three hours.

    So a lot takes three sessions and, with a visit at the end that is far off, a fourth. One tub
    and a line for one lot: of N lots each hangs over a gap of its own, N gaps between N + 1
    sessions; before the first lies a loading, behind the last the last visit.
    """
    value = studio(lots)
    for lot in value["lots"]:
        lot["steps"] = [*deepcopy(lot["steps"][:-1]), {"id": "rest", "min": 300, "max": 9000},
                        {"id": "fold", "hands": 10}]  # fmt: skip
    assert bound(value) == 1 + lots + 1 + 1 == sessions + 0
    value["resources"]["line_m"] = 100
    value["resources"]["vessels"][0]["litres"] = 10
    assert bound(value) == lots + 1 + 2


def test_windows_that_touch_bound_nothing() -> None:
    value = studio(3, calendar={"working": hours(("09:00", "12:00"), ("12:00", "15:00"))})
    assert bound(value) == 0


@pytest.mark.parametrize("name", STUDIOS)
def test_no_bound_is_above_the_sessions_known(name: str) -> None:
    value = instance(name)
    assert 7 <= bound(value) <= value["best"]["score"][1]


@given(value=studios())
@pytest.mark.long
@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
def test_no_plan_of_a_random_studio_is_below_it(value: dict[str, Any]) -> None:
    problem = read(value)
    found = plan_studio(problem, Effort(tries=15))
    if found.plan is not None:
        assert gap_bound(Studio(problem, lambda: False)) <= found.plan.score.sessions
