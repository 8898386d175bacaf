"""Why not, third layer: the date that is late, through which lots, and what puts it right."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    AddVessel,
    Change,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LeaveOut,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreDays,
    MoreLine,
)
from studio_log.planning.changes import apply_changes
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.ends import least_late
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.why import explain
from studio_log.planning.why_reasons import Reasons, Way, in_order
from tests.planning.kit import PLANNER, instance, read, studio, studios

SOME = Effort(tries=20)


def told(whole: dict[str, Any], effort: Effort = SOME) -> tuple[Problem, Reasons]:
    """Plan a problem and have it explained; each way out has to be what it says."""
    problem = read(whole)
    plan = plan_studio(problem, effort).plan
    assert plan is not None
    found = explain(problem, plan, effort)
    for way in found.ways:
        changed = apply_changes(problem, way.changes)
        assert violations(changed, way.plan) == []
        assert way.plan.score.late < plan.score.late
    order = [(one.plan.score.late > 0, one.price) for one in found.ways]
    assert order == sorted(order), "those that keep all dates first, the cheapest of them first"
    return problem, found


def one_tub(**goal: Any) -> dict[str, Any]:
    """Two lots of two pieces, one tub, a line for both, and a date on Tuesday at 16:00.

    L1 is loaded on Monday afternoon, lifted Tue 09:00, dry at 13:10, taken down 14:00 to 14:10.
    L2 gets the tub on Tuesday at 09:10 and is taken down on Wednesday at 14:10: 22 h 10 min late.
    """
    wanted = {"id": "fair", "date": "2027-03-02T16:00", "pieces": 4, "lots": ["L1", "L2"]} | goal
    whole = studio(2, goals=[wanted])
    whole["resources"]["line_m"] = 10
    return whole


def test_a_date_is_late_through_the_lot_that_waits_for_the_tub() -> None:
    _, found = told(one_tub())
    (reason,) = found.reasons
    late = reason.lots[0]
    assert (reason.kind, len(reason.lots)) == ("late", 1)
    assert reason.sentence == (
        f"Fair on Tue 2 March, 16:00 is out of reach by 22 hours: two pieces of {late} would be "
        f"ready by Wed 3 March, 14:10, two pieces in time. To be in time {late} needs a tub on "
        f"Monday 1 March; there is one tub, and {'L1' if late == 'L2' else 'L2'} has it then in "
        "this plan."
    )
    by_changes = {one.changes: one for one in found.ways}
    tub = by_changes[(AddVessel("tub", 10_000),)]
    assert tub.sentence == (
        "A second tub of 10 L: no date is late then. The price: a tub of 10 L to find or buy."
    )
    assert (LaterGoal("fair", 1440),) in by_changes
    assert by_changes[(GoalPieces("fair", 2),)].price_words == "two fewer pieces for fair"


def test_with_the_tub_it_is_planned_in_time_from_new() -> None:
    _, found = told(one_tub())
    for way in found.ways:
        changed = apply_changes(read(one_tub()), way.changes)
        anew = plan_studio(changed, Effort(tries=60)).plan
        assert anew is not None
        assert anew.score.late <= way.plan.score.late


def test_pieces_may_be_cured_less() -> None:
    # Cured five days by Sunday 16:00: L2 is ready Wed 14:10 and cured four days and some hours.
    _, found = told(one_tub(date="2027-03-07T16:00", cured_days=5))
    by_changes = {one.changes: one for one in found.ways}
    way = by_changes[(GoalCured("fair", 2, 4),)]
    assert way.words == "two pieces for fair cured 4 days"
    assert way.achieves == "no date is late then"
    assert way.price_words == "two pieces are one day short of the cure"


def test_a_lots_own_date_that_no_plan_keeps() -> None:
    # Taken down Tue 14:10 at the earliest, cured a day: Wed 14:10, 26 h 10 min after Tue 12:00.
    whole = studio()
    whole["lots"][0] |= {"due": "2027-03-02T12:00", "weight": 3}
    problem, found = told(whole)
    assert least_late(problem) == 3 * (26 * 60 + 10)
    (reason,) = found.reasons
    assert reason.sentence == (
        "L1 misses its date, Tue 2 March, 12:00, by 26 hours: it is over on Wed 3 March, 14:10. "
        "L1 would be late even if everything else were free."
    )
    by_changes = {one.changes: one for one in found.ways}
    assert by_changes[(LaterDue("L1", 2880),)].achieves == "no date is late then"
    # Lifted at 07:00, dry at 11:10 and taken down then: cured on Wed 11:20, 23 h 20 min late.
    day = problem.clock.start.replace(day=2).date()
    assert by_changes[(AddSession(day, 420, 450),)].achieves == "23 hours late instead of 26 hours"


def test_longer_hours_are_no_longer_than_is_enough() -> None:
    # With an evening hour it is lifted on Monday at 20:00, dry by midnight and taken down on
    # Tuesday at 09:00: cured on Wed 09:10. Half an hour in the evening is enough for that.
    whole = studio()
    whole["lots"][0]["due"] = "2027-03-03T10:00"
    _, found = told(whole)
    evenings = [one for one in found.ways for change in one.changes
                if isinstance(change, AddHours) and change.begins == 1200]  # fmt: skip
    assert [one.words for one in evenings] == ["hours from 20:00 to 20:30 every day"]
    assert evenings[0].sentence == (
        "Hours from 20:00 to 20:30 every day: no date is late then. "
        "The price: one day with up to 30 min beyond the present hours."
    )


def test_a_way_out_that_only_asks_for_more_is_left_out() -> None:
    plan = plan_studio(read(studio()), SOME).plan
    assert plan is not None
    ways = [
        Way(changes, "", price, "", "", plan)
        for price, changes in enumerate([
            (MoreLine(1_000),), (MoreLine(1_000), MoreBurners(1)), (MoreLine(5_000),),
            (MoreBurners(1),),
        ])
    ]  # fmt: skip
    assert [one.changes for one in in_order(ways)] == [(MoreLine(1_000),), (MoreBurners(1),)]


def way(price: int, *changes: Change, least: bool = False) -> Way:
    plan = plan_studio(read(studio()), SOME).plan
    assert plan is not None
    return Way(changes, "", price, "", "", plan, least)


def test_of_one_kind_the_least_is_offered() -> None:
    day = read(studio()).clock.start.date()
    two = (AddSession(day, 1080, 1140), AddSession(day.replace(day=2), 1080, 1140))
    ways = [
        way(2_880, GoalPieces("fair", 2)), way(1_440, GoalPieces("fair", 3)),
        way(350, AddVessel("tub", 10_000)), way(400, AddVessel("tub", 20_000)),
        way(180, GoalCured("fair", 1, 88)), way(540, GoalCured("fair", 4, 88)),
        way(240, *two), way(260, AddSession(day, 1080, 1140), AddSession(day, 420, 500)),
    ]  # fmt: skip
    assert [one.price for one in in_order(ways)] == [180, 240, 350, 1_440]


def test_a_proof_is_not_told_where_something_else_is_cheaper() -> None:
    # Leaving a lot out is not among what the solver weighs up.
    proved = way(780, LaterGoal("fair", 1440), least=True)
    assert in_order([proved])[0].least
    assert not any(one.least for one in in_order([proved, way(90, MoreBurners(1))]))


def test_no_more_line_is_asked_for_than_is_enough() -> None:
    # Two tubs, and 5 m for each lot; where six metres are there, four more are enough.
    whole = one_tub()
    tub = whole["resources"]["vessels"][0]
    whole["resources"] = {"vessels": [tub, tub | {"id": "tub2"}], "line_m": 6}
    _, found = told(whole)
    lines = [one.changes for one in found.ways if isinstance(one.changes[0], MoreLine)]
    assert lines == [(MoreLine(4_000),)]


def test_the_most_pieces_that_can_be_ready_are_offered() -> None:
    """Three lots of two pieces and one tub; all are wanted, and two of them can be in time.

    With a tub for a night each, L1 is taken down on Tuesday, L2 on Wednesday, L3 on Thursday.
    """
    goal = {"id": "fair", "date": "2027-03-03T16:00", "pieces": 6, "lots": ["L1", "L2", "L3"]}
    whole = studio(3, goals=[goal])
    whole["resources"]["line_m"] = 15
    _, found = told(whole)
    fewer = [one.changes for one in found.ways if isinstance(one.changes[0], GoalPieces)]
    assert fewer == [(GoalPieces("fair", 4),)]


def test_a_plan_that_is_not_late_has_no_reasons() -> None:
    # L2 has no date and wants the only tub too; L1 goes first, and all is well.
    whole = studio(2)
    whole["lots"][0] |= {"due": "2027-03-03T15:00"}
    whole["lots"][1]["steps"][1] |= {"min": 1000}
    whole["lots"][1]["links"] = [{"from": "load.start", "to": "take down.end", "max": 4000}]
    problem = read(whole)
    plan = plan_studio(problem, SOME).plan
    assert plan is not None
    assert plan.score.late == 0
    assert explain(problem, plan, SOME) == Reasons()


def test_several_dates_are_moved_together_too() -> None:
    whole = one_tub()
    for lot in whole["lots"]:
        lot["due"] = "2027-03-02T15:00"
    _, found = told(whole)
    moved = [one for one in found.ways if len(one.changes) > 1]
    assert moved
    assert all(isinstance(one, LaterGoal | LaterDue) for one in moved[0].changes)
    assert moved[0].plan.score.late == 0


@pytest.mark.skipif(not PLANNER.exists(), reason="the reference instances are not here")
def test_five_lots_too_early() -> None:
    # The least lateness, 21610 min, is proved by a solver (best.proof of the file).
    whole = instance("studio-five-lots-too-early")
    problem, found = told(whole, Effort(tries=4))
    assert least_late(problem) <= 21_610
    (reason,) = found.reasons
    assert reason.sentence.startswith("Class on Sun 6 June, 09:00 is out of reach by 1")
    assert "L05 would be late even if everything else were free." in reason.sentence
    kinds = {type(one.changes[0]) for one in found.ways}
    assert kinds >= {LaterGoal, GoalCured, GoalPieces, AddHours}
    assert {type(one) for way in found.ways for one in way.changes} <= kinds


def test_told_to_stop_it_gives_what_needs_no_search() -> None:
    problem = read(one_tub())
    plan = plan_studio(problem, SOME).plan
    found = explain(problem, plan, Effort(stop=lambda: True))
    assert found.reasons
    assert {type(one.changes[0]) for one in found.ways} == {LaterGoal, GoalPieces}


# -- a looser limit is never worse -------------------------------------------------------

DAY = read(studio()).clock.start.date()
LOOSER: list[Change] = [
    AddVessel("tub", 40_000), MoreLine(3_000), MoreBurners(1), AddHours((0, 3, 6), 360, 480),
    AddHours((1, 2, 4), 700, 800), AddSession(DAY, 300, 400), AddSession(DAY, 780, 1320),
    LongerStep("L0", "soak", 600), LongerPause("L0", "lift", 900), LaterDue("L0", 777),
    LaterGoal("class", 1000), MoreDays(3),
]  # fmt: skip


@pytest.mark.long
@settings(max_examples=150)
@given(studios(), st.sampled_from(LOOSER))
def test_loosening_a_limit_never_makes_the_proved_score_worse(
    whole: dict[str, Any], change: Change
) -> None:
    # One lot is placed exactly: what is proved before and after can be compared.
    whole["lots"] = whole["lots"][:1]
    for goal in whole["goals"]:
        goal |= {"lots": ["L0"], "pieces": 1}
    tight = read(whole)
    try:
        loose = apply_changes(tight, (change,))
    except BadProblemError:
        return
    before, after = (plan_studio(one, Effort(tries=0)) for one in (tight, loose))
    if before.status == after.status == "optimal":
        assert before.plan is not None
        assert after.plan is not None
        assert after.plan.score.parts() <= before.plan.score.parts()
    assert before.plan is None or after.status != "infeasible"
    assert least_late(loose) <= least_late(tight)


@pytest.mark.long
@settings(max_examples=25)
@given(studios())
def test_whatever_is_late_is_explained_and_each_way_out_holds(whole: dict[str, Any]) -> None:
    problem = read(whole)
    plan = plan_studio(problem, Effort(tries=3)).plan
    if plan is None:
        return
    found = explain(problem, plan, Effort(tries=1))
    assert bool(found.reasons) is (plan.score.late > 0)
    for way in found.ways:
        assert violations(apply_changes(problem, way.changes), way.plan) == []
        assert way.plan.score.late < plan.score.late
    wanted = {LeaveOut(name) for goal in problem.goals for name in goal.lots}
    assert not any(one in wanted for way in found.ways for one in way.changes)
