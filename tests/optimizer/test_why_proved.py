"""Conflicts that the solver proves: of small problems worked out by hand, and of the reference."""

import pytest

from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Problem
from studio_log.planning.why_joint import joint_reason, read_joint
from tests.planning.kit import instance, read, studio
from tests.planning.test_why_act import asked
from tests.planning.test_why_late import one_tub

pytest.importorskip("ortools")
from studio_log.optimizer.why_proved import conflict_of, fails

pytestmark = pytest.mark.long


def never() -> bool:
    return False


def said(problem: Problem) -> str:
    plan = plan_studio(problem, Effort(tries=20)).plan
    found = conflict_of(problem, plan, never)
    assert found is not None
    return joint_reason(problem, read_joint(problem, found)).sentence


def test_one_tub_and_these_hours_hold_two_pieces_of_four() -> None:
    # With a second tub both are taken down on Tuesday at 14:20. With hours from 07:00 to 22:00 one
    # tub is enough: L1 from 07:00 to 17:20, L2 until Tue 07:00, dry at 11:10. So it is both.
    assert said(read(one_tub())) == (
        "Two pieces can be ready by Tue 2 March, 16:00, not four; there is one tub and the "
        "working hours leave no more time."
    )


def test_a_line_for_one_and_these_hours() -> None:
    # A tub each, but the line holds one: L2 hangs when L1 is down, on Tuesday from 14:10 on.
    whole = one_tub()
    whole["resources"] |= {"line_m": 6}
    whole["resources"]["vessels"].append({"id": "tub2", "kind": "tub", "litres": 20})
    sentence = said(read(whole))
    assert "the line holds 6 m" in sentence
    assert "tub" not in sentence


def test_a_date_that_can_be_kept_has_no_conflict() -> None:
    problem = read(studio(2))
    assert fails(problem, never) is False
    assert conflict_of(problem, None, never) is None
    assert fails(read(one_tub()), lambda: True) is None  # told to stop, it knows nothing


def test_the_reference_that_is_too_early_fails_by_its_hours() -> None:
    problem = read(instance("studio-five-lots-too-early"))
    found = conflict_of(problem, None, never)
    assert found == {"parts": [{"part": "hours"}]}
    assert joint_reason(problem, read_joint(problem, found)).sentence == (
        "Even if everything else were free, it fails: the working hours leave no more time."
    )


def test_the_process_of_the_optimizer_tells_it_first() -> None:
    (_, fields) = asked(one_tub(), engine="optimizer")[-1]
    assert [one["kind"] for one in fields["reasons"]] == ["joint", "late"]
    assert fields["why"][0].startswith("Two pieces can be ready by Tue 2 March, 16:00, not four;")
    assert any(one["words"] == "a second tub of 10 L" for one in fields["ways_out"])
