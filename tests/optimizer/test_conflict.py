"""What fails only together: worked out by hand, with a plan in hand for each limit left out."""

from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest

pytest.importorskip("ortools", reason="the extra optimizer is not installed")

from studio_log.optimizer.conflict import Conflicts
from studio_log.optimizer.limits import Limit, limits_of, only
from studio_log.optimizer.plan_optimal import plan_optimal
from studio_log.optimizer.solving import Measure
from studio_log.planning.apart import Apart, Ask
from studio_log.planning.change_kinds import LeaveOut
from studio_log.planning.changes import apply_change
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Problem
from studio_log.planning.why_joint import joint_reason, read_joint
from tests.planning.kit import SOAK, instance, read, studio
from tests.planning.test_why_act import asked
from tests.planning.test_why_late import one_tub

pytestmark = pytest.mark.long


def conflict(problem: Problem, *, late: bool = True, looks: int = 10**9) -> Any:
    """The conflict in a problem whose plan is late, or that has none."""
    plan = plan_studio(problem, Effort(tries=3)).plan if late else None
    left = [looks]

    def stop() -> bool:
        left[0] -= 1
        return left[0] < 0

    return Conflicts(problem, stop, Measure()).found(plan)


def two_in_one_tub(**more: Any) -> Any:
    """Both are to be lifted by Tuesday noon, and each soaks a night in the only tub.

    Loaded on Monday from 09:00 to 17:00, soaked 10 to 18 hours, lifted on Tuesday from 09:00 on.
    With hands at any hour one could be loaded at midnight and lifted at 10:20, the other after it.
    """
    lots = [
        {"id": name, "due": "2027-03-02T12:00", "steps": deepcopy(SOAK[:3])} for name in ("A", "B")
    ]
    return studio(lots=lots, **more)


PARTS = {Limit("due", "", "A"), Limit("due", "", "B"), Limit("vessel", "tub"), Limit("hours")}


def as_limits(found: Any) -> set[Limit]:
    return {Limit(one["part"], one.get("name", ""), one.get("lot", "")) for one in found["parts"]}


def test_two_dates_one_tub_and_the_hours_cannot_all_be_kept() -> None:
    problem = read(two_in_one_tub())
    found = conflict(problem)
    assert as_limits(found) == PARTS
    words = joint_reason(problem, read_joint(problem, found)).sentence
    assert words.startswith("Not all together: A is due by Tue 2 March, 12:00, B is due")
    assert words.endswith("A and B both need a tub on Monday 1 March.")
    assert "there is one tub" in words


@pytest.mark.parametrize("left_out", sorted(PARTS - {Limit("hours")}, key=repr))
def test_without_any_one_of_them_our_own_engine_has_a_plan(left_out: Limit) -> None:
    """A plan in hand, which the checker passes; so none of the parts is too many."""
    problem = read(two_in_one_tub())
    rest = only(problem, [one for one in limits_of(problem, late=True) if one != left_out])
    plan = plan_studio(rest, Effort(tries=10)).plan
    assert plan is not None
    assert violations(rest, plan) == []
    assert plan.score.late == 0


def test_with_hours_around_the_clock_there_is_a_plan_too() -> None:
    value = two_in_one_tub()
    value["calendar"] = {"working": {day: [["00:00", "24:00"]] for day in ("mon", "tue")}}
    plan = plan_studio(read(value), Effort(tries=10)).plan
    assert plan is not None
    assert plan.score.late == 0


def test_without_any_plan_no_date_stands_in_the_way() -> None:
    problem = read(two_in_one_tub(horizon_days=2))
    problem = replace(problem, horizon=36 * 60)
    found = conflict(problem, late=False)
    assert as_limits(found) == {Limit("vessel", "tub"), Limit("hours")}


def test_where_nothing_fails_or_nothing_is_decided_nothing_is_said() -> None:
    two_tubs = [{"id": f"tub{n}", "kind": "tub", "litres": 20} for n in (1, 2)]
    assert conflict(read(two_in_one_tub(resources={"vessels": two_tubs, "line_m": 6}))) is None
    for looks in (0, 1, 3, 6):
        found = conflict(read(two_in_one_tub()), looks=looks)
        assert found is None or as_limits(found) == PARTS


def test_how_many_pieces_are_possible_is_the_most_there_can_be() -> None:
    """Six by the class of studio-five-lots-too-early: with seven a date is late, with six none."""
    value = instance("studio-five-lots-too-early")
    problem = read(value)
    found = conflict(problem)
    assert (found["goal"], found["possible"]) == ("class", 6)
    (goal,) = problem.goals
    six, seven = (
        plan_optimal(replace(problem, goals=(replace(goal, pieces=many),)), Effort(tries=1))
        for many in (6, 7)
    )
    assert six.plan is not None
    assert six.plan.score.late == 0
    assert seven.bound is not None
    assert seven.bound.late > 0


def test_the_process_says_it_among_its_reasons() -> None:
    heard: list[Any] = []
    ask = Ask(two_in_one_tub(), do="why", engine="optimizer", seconds=60.0, tries=2)
    assert Apart(ask, heard.append).wait(120.0)
    reasons = heard[-1]["done"]["reasons"]
    assert reasons[0]["kind"] == "joint"
    assert set(reasons[0]["lots"]) == {"A", "B"}


def test_one_tub_and_these_hours_hold_two_pieces_of_four() -> None:
    # With a second tub both are taken down on Tuesday at 14:20. With hours from 07:00 to 22:00 one
    # tub is enough: L1 from 07:00 to 17:20, L2 until Tue 07:00, dry at 11:10. So it is both.
    problem = read(one_tub())
    found = conflict(problem)
    assert as_limits(found) == {Limit("goal", "fair"), Limit("vessel", "tub"), Limit("hours")}
    assert joint_reason(problem, read_joint(problem, found)).sentence == (
        "Two pieces can be ready by Tue 2 March, 16:00, not four; the working hours leave no more "
        "time, there is one tub and L1 and L2 both need a tub on Monday 1 March."
    )


def test_a_line_for_one_and_these_hours() -> None:
    # A tub each, but the line holds one: L2 hangs when L1 is down, on Tuesday from 14:10 on.
    whole = one_tub()
    whole["resources"] |= {"line_m": 6}
    whole["resources"]["vessels"].append({"id": "tub2", "kind": "tub", "litres": 20})
    problem = read(whole)
    sentence = joint_reason(problem, read_joint(problem, conflict(problem))).sentence
    assert "the line holds 6 m" in sentence
    assert "tub" not in sentence
    assert sentence.endswith("L1 and L2 both hang on Tuesday 2 March.")


def test_a_lot_that_stands_in_nobodys_way_is_not_named() -> None:
    value = two_in_one_tub()
    late = {"id": "C", "due": "2027-03-09T12:00", "steps": deepcopy(SOAK[:3])}
    value["lots"].insert(1, late)
    found = conflict(read(value))
    assert (found["lots"], found["day"]) == (["A", "B"], "2027-03-01")


def test_each_of_them_holds_the_tub_at_that_moment_in_every_plan_of_its_own() -> None:
    """By our own engine, which shares no code with the proof: a lot alone, by many seeds.

    Lifted by Tuesday noon after ten hours at least, with hands till 17:00: in by Monday evening.
    """
    whole = read(two_in_one_tub())
    for name in ("A", "B"):
        alone = apply_change(whole, LeaveOut("B" if name == "A" else "A"))
        for seed in range(5):
            plan = plan_studio(alone, Effort(tries=3, seed=seed)).plan
            assert plan is not None
            assert plan.score.late == 0
            midnight = 24 * 60  # in minutes of the plan, which begins with the Monday
            soak = plan.spans[name]["soak"]
            assert soak.start < midnight < soak.end


def test_a_date_that_can_be_kept_has_no_conflict() -> None:
    assert conflict(read(studio(2))) is None
    assert conflict(read(studio(2)), late=False) is None


def test_the_reference_that_is_too_early_fails_by_its_hours() -> None:
    problem = read(instance("studio-five-lots-too-early"))
    assert as_limits(conflict(problem)) == {Limit("goal", "class"), Limit("hours")}


def test_the_process_of_the_optimizer_tells_it_first() -> None:
    (_, fields) = asked(one_tub(), engine="optimizer")[-1]
    assert [one["kind"] for one in fields["reasons"]] == ["joint", "late"]
    assert fields["why"][0].startswith("Two pieces can be ready by Tue 2 March, 16:00, not four;")
    assert any(one["words"] == "a second tub of 10 L" for one in fields["ways_out"])
