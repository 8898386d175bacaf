"""Projects with lags: proofs are true, and public instances come to their published optimum."""

from itertools import product
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.planning.check_project import project_violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_project import plan_project
from tests.planning.kit import PUBLIC, instance, project, read_tasks

HARD = {"psplib-j30-21_10", "psplib-j30-45_10"}
"""Their optimum is found in seconds and not proved: see tests/speed/planner.py."""
NAMES = sorted(path.stem for path in PUBLIC.glob("[jpu]*.json"))


@pytest.mark.skipif(not NAMES, reason="the public instances are not beside this project")
@pytest.mark.parametrize("name", [one for one in NAMES if one not in HARD])
def test_a_public_instance_comes_to_its_published_optimum(name: str) -> None:
    """ProGen/max sets UBO10/20 and SM J10-J30; each file's "source" names list and commit."""
    value = instance(name, PUBLIC)
    outcome = plan_project(read_tasks(value), Effort(tries=12))
    assert outcome.status == value["known"]["status"]
    assert outcome.makespan == value["known"].get("makespan")


@pytest.mark.skipif(not NAMES, reason="the public instances are not beside this project")
@pytest.mark.parametrize("name", sorted(HARD & set(NAMES)))
def test_a_hard_public_instance_is_near_its_optimum_and_not_called_proved(name: str) -> None:
    value = instance(name, PUBLIC)
    outcome = plan_project(read_tasks(value), Effort(tries=3))
    best = value["known"]["makespan"]
    assert outcome.makespan is not None
    assert best <= outcome.makespan <= 1.1 * best
    assert outcome.status == "feasible" or outcome.makespan == best


@st.composite
def small(draw: st.DrawFn) -> Any:
    count = draw(st.integers(1, 3))
    tasks = [
        {"id": n, "duration": draw(st.integers(0, 3)), "demand": {"R": draw(st.integers(0, 2))},
         "release": draw(st.integers(0, 2))}
        for n in range(count)
    ]  # fmt: skip
    ends, which = st.integers(0, count - 1), st.sampled_from(["min", "max"])
    lags = [
        {"from": draw(ends), "to": draw(ends), draw(which): draw(st.integers(-2, 4))}
        for _ in range(draw(st.integers(0, 4)))
    ]  # fmt: skip
    return project(tasks, lags)


@pytest.mark.long
@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(small())
def test_optimum_and_infeasible_are_those_of_all_starts_listed(value: Any) -> None:
    found = read_tasks(value)
    names = [task.name for task in found.tasks]
    spans = []
    for starts in product(range(16), repeat=len(names)):  # none has to start after 14
        told = dict(zip(names, starts, strict=True))
        if not project_violations(found, told):
            spans.append(max(told[task.name] + task.tail for task in found.tasks))
    outcome = plan_project(found, Effort())
    assert outcome.status == ("optimal" if spans else "infeasible")
    assert outcome.makespan == min(spans, default=None)


def test_lags_that_contradict_each_other_are_named() -> None:
    tasks = [{"id": one, "duration": 1} for one in "abc"]
    lags = [{"from": "a", "to": "b", "min": 5}, {"from": "b", "to": "c", "min": 4},
            {"from": "a", "to": "c", "max": 7}]  # fmt: skip
    outcome = plan_project(read_tasks(project(tasks, lags)), Effort())
    assert outcome.status == "infeasible"
    assert outcome.why[0].startswith("The lags contradict each other by 2: ")
    assert all(one in outcome.why[0] for one in "abc")


def test_a_task_that_is_too_large_is_said() -> None:
    tasks = [{"id": 1, "duration": 1, "demand": {"R": 3}}]
    outcome = plan_project(read_tasks(project(tasks, [])), Effort())
    assert outcome.status == "infeasible"
    assert "more of a resource than there is" in outcome.why[0]


def test_the_largest_project_ends_when_it_is_told() -> None:
    tasks = [{"id": n, "duration": 5, "demand": {"R": 1}} for n in range(200)]
    questions = 0

    def stop() -> bool:
        nonlocal questions
        questions += 1
        return questions > 30

    outcome = plan_project(read_tasks(project(tasks, [])), Effort(stop=stop))
    assert outcome.status == "unknown"
    assert questions < 35


def test_the_same_tries_give_the_same_plan() -> None:
    tasks = [{"id": n, "duration": 2 + n % 3, "demand": {"R": 1 + n % 2}} for n in range(12)]
    found = read_tasks(project(tasks, [{"from": 0, "to": 9, "min": 4}], room=3))
    assert plan_project(found, Effort(tries=3)) == plan_project(found, Effort(tries=3))
