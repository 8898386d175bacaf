"""The cheapest ways out: one worked out by hand, and no single cheaper change is enough."""

from collections.abc import Iterator
from copy import deepcopy
from dataclasses import replace
from typing import Any, Final

import pytest

pytest.importorskip("ortools", reason="the extra optimizer is not installed")

from studio_log.optimizer.cheapest import Cheapest
from studio_log.optimizer.solving import Measure
from studio_log.planning.change_kinds import (
    AddSession,
    AddVessel,
    Change,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LongerPause,
    LongerStep,
    MoreHands,
)
from studio_log.planning.changes import apply_changes
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plain_words import DAY
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.solver import Cheap
from tests.optimizer.kit import GRID, best_of_all, tiny
from tests.planning.kit import read, studio
from tests.planning.test_why_act import asked
from tests.planning.test_why_late import one_tub

pytestmark = pytest.mark.long


def cheapest(problem: Problem, *, late: bool = True) -> list[Cheap]:
    """All that is found, each looked at: it is enough, and its plan is good."""
    plan = plan_studio(problem, Effort(tries=10)).plan if late else None
    found = list(Cheapest(problem, lambda: False, lambda: False, Measure()).found(plan))
    for one in found:
        assert violations(apply_changes(problem, one.changes), one.plan) == []
        assert one.plan.score.late == 0 or not late
    return found


def test_half_an_hour_in_the_evening_is_cheaper_than_a_tub() -> None:
    """Loaded at 09:10 L1 may be lifted at 19:30; then L2 gets the tub, and soaks till 06:00.

    Lifting takes ten minutes and loading twenty: half an hour is just enough. It costs 60 for
    coming and a minute each; a tub costs 350, a day 780, a piece 1,440.
    """
    problem = read(one_tub())
    whole, *kinds = cheapest(problem)
    (session,) = whole.changes
    assert isinstance(session, AddSession)
    assert session.day == problem.clock.start.date()
    assert session.ends - session.begins == 30
    assert session.begins >= 19 * 60 + 20
    assert price_of(problem, whole.changes)[0] == 90
    assert whole.least, "it is proved to be the cheapest"
    alone = [one.changes for one in kinds]
    assert (LaterGoal("fair", DAY),) in alone
    assert (GoalPieces("fair", 2),) in alone
    assert (AddVessel("tub", 10_000),) in alone
    assert not any(one.least for one in kinds)


def test_pieces_are_cured_a_day_less_where_that_is_cheapest() -> None:
    # Four pieces, cured five days by Sunday 16:00, in a week in which nobody may come otherwise.
    whole = one_tub(date="2027-03-07T16:00", cured_days=5)
    whole["calendar"]["waking"] = whole["calendar"]["working"]
    found = cheapest(read(whole))
    assert found[0].changes == (GoalCured("fair", 2, 4),)
    assert found[0].least


def test_a_plan_is_found_where_there_was_none() -> None:
    # The second lot would be taken down on Wednesday, behind the last day that is planned.
    problem = read(one_tub() | {"goals": [], "horizon_days": 2})
    assert plan_studio(problem, Effort(tries=10)).plan is None
    found = cheapest(problem, late=False)
    assert price_of(problem, found[0].changes)[0] == 90
    assert found[0].least
    assert {type(change) for one in found for change in one.changes} == {AddSession, AddVessel}


def test_a_rule_is_never_stretched_and_nobody_comes_in_quiet_hours() -> None:
    whole = one_tub()
    whole["calendar"]["waking"] = whole["calendar"]["working"]
    for lot in whole["lots"]:
        lot["steps"][1]["limit"] = "rule"
    for one in cheapest(read(whole)):
        assert not any(isinstance(it, AddSession | LongerStep) for it in one.changes)


def test_a_soak_is_stretched_by_just_enough() -> None:
    # Loaded Mon 14:00 to 16:40 at the latest; nobody comes on Tuesday before 14:00: 21 h 20 min.
    lot = {"id": "A", "due": "2027-03-03T12:00", "steps": deepcopy(two_visits())}
    working = {day: [["14:00", "17:00"]] for day in ("mon", "tue", "wed")}
    problem = read(studio(lots=[lot], horizon_days=3, calendar={"working": working,
                                                                "waking": working}))  # fmt: skip
    assert plan_studio(problem, Effort(tries=3)).plan is None
    found = cheapest(problem, late=False)
    assert [one.changes for one in found if isinstance(one.changes[0], LongerStep)]
    minutes = 14 * 60 + DAY - 17 * 60 - 1080
    assert found[0].changes == (LongerStep("A", "soak", minutes),)
    assert found[0].least


def two_visits() -> list[dict[str, Any]]:
    return [{"id": "load", "hands": 20, "use": {"tub": 10}},
            {"id": "soak", "min": 600, "max": 1080, "use": {"tub": 10}},
            {"id": "lift", "hands": 10, "use": {"tub": 10}}]  # fmt: skip


def singles(problem: Problem) -> Iterator[Change]:
    """Single changes of every kind that is weighed up, by few and by more."""
    yield AddVessel("tub", 8_000)
    yield MoreHands(1)
    for lot in problem.lots:
        soak = lot.steps[1]
        for minutes in range(GRID, (soak.most or 0) + 1, GRID):
            yield LongerStep(lot.name, "soak", minutes)
        yield LongerPause(lot.name, "load", GRID)
        yield from (LaterDue(lot.name, days * DAY) for days in (1, 2))
    for goal in problem.goals:
        yield GoalPieces(goal.name, 1)
        yield from (LaterGoal(goal.name, days * DAY) for days in (1, 2))
    day = problem.clock.start.date()
    for begins, ends in ((420, 480), (420, 510), (1020, 1140), (1080, 1320)):
        yield from (AddSession(one, begins, ends) for one in (day, day.replace(day=2)))


LATE: Final = (1, 3, 5, 7, 12, 13, 19, 22, 24, 25, 26, 28, 30, 32, 34, 35, 36, 37, 39)
"""Seeds of tiny problems in which every plan there is misses a date."""


@pytest.mark.parametrize("seed", LATE)
def test_no_single_cheaper_change_is_enough(seed: int) -> None:
    """Every plan of the changed problem is looked at, so this is true whatever solver says so."""
    problem = tiny(seed)
    found = cheapest(problem)
    assert found[0].least
    price = price_of(problem, found[0].changes)[0]
    looked = 0
    for change in singles(problem):
        try:
            changed = apply_changes(problem, (change,))
        except BadProblemError:
            continue
        if price_of(problem, (change,))[0] < price:
            best = best_of_all(changed)
            assert best is None or best[0] > 0, change
            looked += 1
    assert looked


def test_told_to_stop_nothing_is_said() -> None:
    problem = read(one_tub())
    plan = plan_studio(problem, Effort(tries=3)).plan
    assert list(Cheapest(problem, lambda: True, lambda: True, Measure()).found(plan)) == []


def test_a_studio_without_hours_is_no_fault() -> None:
    problem = read(one_tub() | {"calendar": {"working": {}}})
    assert cheapest(replace(problem, goals=()), late=False) == []


def test_it_is_offered_with_the_others_and_said_to_be_proved() -> None:
    _, (kind, fields) = asked(one_tub(), engine="optimizer")[-2:]
    assert kind == "done"
    first = fields["ways_out"][0]
    assert first["sentence"].endswith(
        "no date is late then. The price: 30 min outside the hours of that day; proved, nothing "
        "cheaper is enough."
    )
    # What-if: who goes on from its plan keeps what it is worth, with whatever engine.
    more = {"changes": first["changes"], "go_on": True}
    (_, then) = asked(one_tub(), "plan", tries=3, keep=first["plan"], more=more)[-1]
    assert then["score"][0] == 0
