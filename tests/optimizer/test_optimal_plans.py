"""The optimizer: what it calls proved is compared with every plan there is, or a published one."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

pytest.importorskip("ortools", reason="the extra optimizer is not installed")

from hypothesis import HealthCheck, given, settings

from studio_log.optimizer.plan_optimal import plan_optimal
from studio_log.optimizer.project_model import plan_with_solver
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_project import plan_project
from tests.optimizer.kit import best_of_all, tiny
from tests.planning.kit import (
    PUBLIC,
    STUDIOS,
    instance,
    project,
    read,
    read_tasks,
    studio,
    studios,
)
from tests.planning.test_milks import shared

pytestmark = pytest.mark.long

if TYPE_CHECKING:
    from studio_log.planning.problem import Plan


@pytest.mark.parametrize("seed", range(24))
def test_proofs_of_tiny_problems_hold_against_every_plan_there_is(seed: int) -> None:
    problem = tiny(seed)
    best = best_of_all(problem)
    found = plan_optimal(problem, Effort(tries=40, seed=seed))
    if best is None:
        assert (found.status, found.plan) == ("infeasible", None)
        return
    assert found.plan is not None
    assert found.plan.score.parts() == best
    assert (found.status, found.proved) == ("optimal", (True, True, True))


def test_the_tiny_problems_are_of_every_kind() -> None:
    """Else the comparison with every plan would say little."""
    found = [best_of_all(tiny(seed)) for seed in range(24)]
    assert None in found
    assert any(one is not None and one[0] > 0 for one in found)
    assert len({one for one in found if one is not None}) > 8


@pytest.mark.parametrize("name", ["studio-one-lot", "studio-four-lots-two-running"])
def test_studios_reach_the_best_score_that_is_known_and_prove_it(name: str) -> None:
    """Proved by a solver before, with another model; see "best" in the file."""
    value = instance(name)
    seen: list[Plan] = []
    problem = read(value)
    found = plan_optimal(problem, Effort(tries=6, on_better=seen.append))
    assert found.plan is not None
    assert list(found.plan.score.parts()) == value["best"]["score"]
    assert found.status == "optimal"
    assert [violations(problem, one) for one in seen] == [[]] * len(seen)
    assert seen[-1] == found.plan


@pytest.mark.parametrize("name", STUDIOS)
def test_no_bound_of_a_studio_is_above_the_best_score_known(name: str) -> None:
    value = instance(name)
    found = plan_optimal(read(value), Effort(tries=1))
    assert found.plan is not None
    assert found.bound is not None
    late, sessions, _ = value["best"]["score"]
    assert found.bound.late <= late <= found.plan.score.late
    if found.proved[0]:
        assert found.bound.sessions <= sessions


@given(value=studios())
@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_plan_of_a_random_studio_passes_the_checker(value: dict[str, Any]) -> None:
    """And none is worse than the plan of our own engine, from which it starts."""
    problem = read(value)
    seen: list[Plan] = []
    found = plan_optimal(problem, Effort(tries=2, on_better=seen.append))
    assert all(violations(problem, one) == [] for one in seen)
    if found.status == "infeasible":
        assert found.plan is None
    if found.status == "optimal":
        assert found.plan is not None
        assert found.bound is not None
        bound = (found.bound.late, found.bound.sessions, found.bound.fine)
        assert found.plan.score.parts() == bound


def test_the_same_problem_seed_and_tries_give_the_same_plan() -> None:
    problem = read(instance("studio-five-lots-too-early"))
    one, other = (plan_optimal(problem, Effort(tries=2, seed=5)) for _ in range(2))
    assert one == other


@pytest.mark.parametrize("asked", [0, 1, 5, 30, 200])
def test_it_ends_where_it_is_told_whatever_it_is_at(asked: int) -> None:
    """Counted in questions: after the one that says so, only a few more are asked."""
    problem = read(instance("studio-ten-lots-class"))
    questions = 0

    def stop() -> bool:
        nonlocal questions
        questions += 1
        return questions > asked

    found = plan_optimal(problem, Effort(stop=stop, tries=50))
    assert found.status in {"unknown", "feasible"}
    assert questions <= asked + 120


def test_two_lots_that_fit_alone_and_not_together_are_proved_to_fail() -> None:
    """One tub, and hours in which both would have to lie in it at once."""
    lots = studio(2)["lots"]
    for lot in lots:
        lot["release"], lot["steps"] = 540, lot["steps"][:3]
    value = studio(lots=lots, horizon_days=1, calendar={"working": {
        "mon": [["09:00", "12:00"], ["20:00", "22:00"]]}})  # fmt: skip
    found = plan_optimal(read(value), Effort(tries=3))
    assert (found.status, found.plan) == ("infeasible", None)
    assert "cannot all be done" in found.why[0]


def test_where_a_session_is_worth_minutes_the_sum_is_what_counts() -> None:
    """With 10 minutes a session, waiting for company is not worth it; with a week, it is."""
    value = studio(2)
    value["lots"][1]["release"] = 1440
    cheap, dear = (
        plan_optimal(read(value | {"session_worth": worth}), Effort(tries=12))
        for worth in (10, 10_000)
    )
    assert cheap.plan is not None
    assert dear.plan is not None
    assert cheap.plan.score.sessions >= dear.plan.score.sessions
    assert cheap.plan.score.fine <= dear.plan.score.fine
    for found, worth in ((cheap, 10), (dear, 10_000)):
        for other in (cheap, dear):
            assert found.plan is not None
            assert other.plan is not None
            own, least = found.plan.score, other.plan.score
            assert own.sessions * worth + own.fine <= least.sessions * worth + least.fine


def test_an_old_plan_is_kept_where_it_still_holds() -> None:
    problem = read(studio(3))
    old = plan_optimal(problem, Effort(tries=4)).plan
    assert old is not None
    again = plan_optimal(problem, Effort(tries=4), old)
    assert again.plan == old
    later = read(studio(3, dry_min_by_date={"2027-03-02": 600}))
    found = plan_optimal(later, Effort(tries=4), old)
    assert found.plan is not None
    assert violations(later, found.plan) == []
    same = sum(found.plan.spans[lot] == spans for lot, spans in old.spans.items())
    assert same >= 1


# -- projects ----------------------------------------------------------------------------


@pytest.mark.skipif(not PUBLIC.is_dir(), reason="the public instances are not beside this project")
@pytest.mark.parametrize("path", sorted(PUBLIC.glob("[jpu]*.json")), ids=lambda path: path.stem)
def test_public_projects_reach_their_published_optimum(path: Path) -> None:
    """Each file names the public lists that know it ("source")."""
    value = json.loads(path.read_text("utf-8"))
    found = plan_with_solver(read_tasks(value), Effort(), 2)
    assert found.status == value["known"]["status"]
    assert found.makespan == value["known"].get("makespan")


@pytest.mark.parametrize("seed", range(12))
def test_projects_agree_with_our_own_whole_search(seed: int) -> None:
    """Another way altogether; both prove what they say."""
    from random import Random

    chance = Random(seed)
    tasks = [{"id": n, "duration": chance.randint(0, 5), "demand": {"R": chance.randint(0, 3)},
              "release": chance.choice((0, 0, 3)), "tail": chance.choice((0, 9))}
             for n in range(7)]  # fmt: skip
    lags = [{"from": a, "to": b, chance.choice(("min", "max")): chance.randint(0, 12)}
            for a, b in [sorted(chance.sample(range(7), 2)) for _ in range(6)]]  # fmt: skip
    value = read_tasks(project(tasks, lags, room=3))
    one, other = plan_with_solver(value, Effort(), 1), plan_project(value, Effort())
    assert (one.status, one.makespan) == (other.status, other.makespan)
    assert one.status in {"optimal", "infeasible"}


# -- milks -------------------------------------------------------------------------------


def test_two_lots_and_their_milk_take_three_sessions_and_that_is_proved() -> None:
    """Worked out by hand in tests/planning/test_milks.py."""
    problem = read(shared(2, 120))
    found = plan_optimal(problem, Effort(tries=6))
    assert found.plan is not None
    assert (found.plan.score.sessions, found.status) == (3, "optimal")
    assert violations(problem, found.plan) == []


def test_where_a_milk_takes_a_vessel_nothing_is_proved_by_the_model() -> None:
    """There it takes it for all of its life, which no rule asks for."""
    value = shared(2, 1440, use={"bowl": 5})
    value["resources"]["vessels"] = value["resources"]["vessels"][:1]
    problem = read(value)
    found = plan_optimal(problem, Effort(tries=3))
    assert found.plan is not None
    assert violations(problem, found.plan) == []
    assert found.plan.milks == {"milk": "bowl1"}
    assert found.proved[0]
    assert not found.proved[2]


@pytest.mark.parametrize("made", ["2027-03-01T08:00", 480])
def test_a_milk_that_is_made_at_a_known_time_binds_its_uses(made: Any) -> None:
    problem = read(shared(2, 600, made_by=None, made_at=made))
    found = plan_optimal(problem, Effort(tries=3))
    assert found.plan is not None
    assert all(found.plan.spans[name]["dip"].start >= 480 for name in ("L1", "L2"))
    assert all(found.plan.spans[name]["dip"].end <= 1080 for name in ("L1", "L2"))
