"""Why not, fourth layer: a conflict that another process proved gets its words, if it is one."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.planning.effort import Effort
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import BadProblemError
from studio_log.planning.solver import Solver
from studio_log.planning.why import explain
from studio_log.planning.why_joint import joint_reason, read_joint
from tests.planning.kit import read, studio
from tests.planning.test_reading import ANY
from tests.planning.test_why_late import one_tub

PROBLEM = read(one_tub(cured_days=0))
LINE = {"part": "store", "name": "line"}

TWO = "Two pieces can be ready by Tue 2 March, 16:00, not four"
SOAKED = "soak of L1 may last 18 h at most"
HOURS = "the hours on Sunday 7 March are 09:00 to 12:00 and 14:00 to 17:00"

SAID: list[tuple[dict[str, Any], str]] = [
    (
        {"goal": "fair", "possible": 2, "parts": [LINE], "lots": ["L1", "L2"],
         "day": "2027-03-07"},
        f"{TWO}; the line holds 10 m and L1 and L2 both hang on Sunday 7 March.",
    ),
    (
        {"goal": "fair", "possible": 2, "parts": [{"part": "vessel", "name": "tub"}]},
        f"{TWO}; even if everything else were free, there is one tub.",
    ),
    (
        {"parts": [{"part": "hours", "name": "2027-03-07"}, {"part": "step", "lot": "L1",
         "name": "soak"}, {"part": "store", "name": "hands"}]},
        f"Not all together: {HOURS}, {SOAKED} and there is one pair of hands.",
    ),
    (
        {"parts": [{"part": "vessel", "name": "tub"}], "lots": ["L1"]},
        "Not all together: there is one tub and L1 needs a tub.",
    ),
    (
        {"goal": "fair", "possible": 2, "parts": [{"part": "goal", "name": "fair"}, LINE,
         {"part": "hours"}], "lots": ["L1", "L2"], "day": "2027-03-07"},
        (f"{TWO}; the working hours leave no more time, the line holds 10 m and L1 and L2 both "
         "hang on Sunday 7 March."),
    ),
    (
        {"parts": [{"part": "hours"}, {"part": "store", "name": "hands"}], "lots": ["L1", "L2"]},
        ("Not all together: the working hours leave no more time, there is one pair of hands and "
         "L1 and L2 cannot all be worked at when they need it."),
    ),
    (
        {"parts": [{"part": "goal", "name": "fair"}, {"part": "store", "name": "burner"}]},
        "Not all together: fair wants four pieces by Tue 2 March, 16:00 and there are no burners.",
    ),
    (
        {"parts": [{"part": "step", "lot": "L2", "name": "lift"}]},
        "Even if everything else were free, it fails: lift of L2 takes 10 min.",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("value", "words"), SAID, ids=lambda one: str(one)[:30])
def test_a_conflict_has_words(value: dict[str, Any], words: str) -> None:
    reason = joint_reason(PROBLEM, read_joint(PROBLEM, value))
    assert (reason.kind, reason.sentence) == ("joint", words)


def test_links_and_dates_have_words_too() -> None:
    whole = studio()
    whole["lots"][0] |= {"due": "2027-03-05T12:00", "links": [
        {"from": "load.end", "to": "dry.start", "max": 2000}]}  # fmt: skip
    problem = read(whole)
    parts = [{"part": "link", "lot": "L1"}, {"part": "due", "lot": "L1"}, {"part": "hours"}]
    assert joint_reason(problem, read_joint(problem, {"parts": parts})).sentence == (
        "Not all together: from load to dry of L1 may pass 33 h 20 min at most, L1 is due by "
        "Fri 5 March, 12:00 and the working hours leave no more time."
    )


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ([], "a list, where an object is due"), ({}, "has no parts"),
        ({"parts": [{"part": "moon"}]}, "'moon'; one of store"),
        ({"parts": [{"part": ["store"]}]}, "a list; one of store"),
        ({"parts": [{"part": "store", "name": "gas"}]}, "The problem has no store gas."),
        ({"parts": [{"part": "vessel", "name": "vat"}]}, "The problem has no vessel vat."),
        ({"parts": [{"part": "step", "lot": "L9", "name": "soak"}]}, "no lot L9"),
        ({"parts": [{"part": "step", "lot": "L1", "name": "sock"}]}, "no step sock"),
        ({"parts": [{"part": "due", "lot": "L1"}]}, "no due"),
        ({"parts": [{"part": "link", "lot": "L1"}]}, "no link"),
        ({"parts": [{"part": "hours", "name": "Sunday"}]}, "no hours Sunday"),
        ({"parts": [LINE], "goal": "ball"}, "no goal ball"),
        ({"parts": [LINE], "lots": ["L1", 7]}, "no lot 7"),
        ({"parts": [LINE], "day": "soon"}, "day 'soon'"),
        ({"parts": [LINE] * 13}, "13 parts"), ({"parts": [LINE], "more": 1}, "no meaning"),
    ],
    ids=lambda one: str(one)[:40],
)  # fmt: skip
def test_what_is_no_conflict_of_this_problem_is_refused(value: Any, words: str) -> None:
    with pytest.raises(BadProblemError) as bad:
        read_joint(PROBLEM, value)
    assert any(words in one for one in bad.value.faults), bad.value.faults


def test_a_proved_conflict_stands_before_the_late_date() -> None:
    plan = plan_studio(PROBLEM, Effort(tries=20)).plan
    value = SAID[0][0]
    found = explain(PROBLEM, plan, Effort(stop=lambda: True), solver=Solver(lambda *_: value))
    assert [one.kind for one in found.reasons] == ["joint", "late"]
    assert found.reasons[0].lots == ("L1", "L2")


@given(st.sampled_from(["parts", "goal", "possible", "lots", "day"]), ANY)
def test_nothing_of_another_process_is_believed_but_its_form(key: str, value: Any) -> None:
    odd = {**SAID[0][0], key: value}
    plan = plan_studio(PROBLEM, Effort(tries=0)).plan
    found = explain(PROBLEM, plan, Effort(stop=lambda: True), solver=Solver(lambda *_: odd))
    assert {one.kind for one in found.reasons} <= {"joint", "late"}
    assert all(one.sentence.endswith(".") for one in found.reasons)
