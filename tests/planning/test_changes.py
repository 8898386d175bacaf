"""Changes: what they make of a problem, their words, and their JSON both ways."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.planning.change_json import KINDS, change_to_json, read_change
from studio_log.planning.change_kinds import (
    AddSession,
    AddVessel,
    Change,
    GoalCured,
    LeaveOut,
    LongerPause,
)
from studio_log.planning.change_words import change_words
from studio_log.planning.changes import apply_change, apply_changes, with_stretch
from studio_log.planning.problem import BadProblemError, Problem
from tests.planning.kit import read, studio
from tests.planning.test_reading import ANY

WORDS: list[tuple[dict[str, Any], str]] = [
    ({"change": "add_vessel", "kind": "tub", "litres": 20}, "a second tub of 20 L"),
    ({"change": "add_vessel", "kind": "bucket", "litres": 7.5}, "a bucket of 7.5 L"),
    ({"change": "add_vessel", "kind": "urn", "litres": 9}, "an urn of 9 L"),
    ({"change": "remove_vessel", "vessel": "tub1"}, "no tub1"),
    ({"change": "more_line", "metres": 1}, "one metre of line more"),
    ({"change": "more_line", "metres": -2.5}, "2.5 m of line less"),
    ({"change": "more_burners", "burners": 1}, "one burner more"),
    ({"change": "more_hands", "hands": 1}, "one pair of hands more"),
    (
        {"change": "add_session", "date": "2027-03-07", "from": "18:00", "to": "20:00"},
        "one session on Sunday 7 March from 18:00 to 20:00",
    ),
    ({"change": "close_day", "date": "2027-03-07"}, "no hours on Sunday 7 March"),
    (
        {"change": "add_hours", "days": ["tue", "mon", "wed"], "from": "19:00", "to": "21:00"},
        "hours from 19:00 to 21:00 from Monday to Wednesday",
    ),
    (
        {"change": "add_hours", "days": ["sun", "tue"], "from": "19:00", "to": "24:00"},
        "hours from 19:00 to 24:00 on Tuesdays and Sundays",
    ),
    (
        {"change": "longer_step", "lot": "L1", "step": "soak", "minutes": 120},
        "soak of L1 for up to 20 h instead of 18 h",
    ),
    (
        {"change": "longer_pause", "lot": "L1", "step": "lift", "minutes": 90},
        "1 h 30 min more of waiting after lift of L1",
    ),
    (
        {"change": "longer_link", "lot": "L1", "from": "load.end", "to": "dry.start", "minutes": 5},
        "5 min more from the end of load to the start of dry of L1",
    ),
    ({"change": "later_goal", "goal": "class", "minutes": 5760}, "class four days later"),
    ({"change": "goal_pieces", "goal": "class", "pieces": 1}, "one piece for class instead of two"),
    (
        {"change": "goal_cured", "goal": "class", "pieces": 1, "days": 84},
        "one piece for class cured 84 days",
    ),
    ({"change": "leave_out", "lot": "L2"}, "L2 left out"),
    (
        {"change": "later_release", "lot": "L1", "minutes": 1500},
        "L1 begun 25 h later at the earliest",
    ),
    ({"change": "later_due", "lot": "L2", "minutes": 2880}, "L2 due two days later"),
    ({"change": "more_days", "days": 1}, "a plan that reaches one day further"),
]


def two_lots() -> Problem:
    """L1 may wait behind lifting, L2 has a date, and two of four pieces are wanted."""
    goals = [{"id": "class", "date": "2027-03-13T09:00", "pieces": 2, "cured_days": 2,
              "lots": ["L1", "L2"]}]  # fmt: skip
    value = studio(2, goals=goals)
    value["lots"][0]["steps"][2]["then_within"] = 60
    value["lots"][0]["links"] = [{"from": "load.end", "to": "dry.start", "max": 2000}]
    value["lots"][1]["due"] = "2027-03-09T12:00"
    return read(value)


def test_every_kind_is_tried_here() -> None:
    assert {one["change"] for one, _ in WORDS} == set(KINDS)


@pytest.mark.parametrize(("value", "words"), WORDS, ids=lambda one: str(one)[:40])
def test_a_change_has_words_and_reads_as_it_was_written(value: dict[str, Any], words: str) -> None:
    change = read_change(value)
    assert change_words(two_lots(), change) == words
    again = change_to_json(change)
    assert read_change(again) == change
    if "days" not in value:  # days come back in their order
        assert again == value
    changed = apply_change(two_lots(), change)
    assert changed != two_lots()


def test_what_changes_is_what_was_asked_for() -> None:
    before = two_lots()
    after = apply_changes(before, tuple(read_change(one) for one, _ in WORDS if one["change"] in {
        "add_vessel", "more_line", "add_session", "close_day", "longer_step", "later_goal",
        "later_due", "later_release",
    }))  # fmt: skip
    assert [(one.kind, one.size) for one in after.vessels] == [
        ("tub", 20_000), ("tub", 20_000), ("bucket", 7_500), ("urn", 9_000),
    ]  # fmt: skip
    assert after.stores == {"line": 4_500, "burner": 0, "hands": 1_000}  # 6 + 1 - 2.5
    assert after.calendar.on(date(2027, 3, 7)) == ()  # closing came after the session
    assert after.lots[0].steps[1].most == 1080 + 120
    assert after.lots[0].release == 1500
    assert after.goals[0].at - before.goals[0].at == 4 * 1440
    assert (after.lots[1].due, before.lots[1].due) == (8 * 1440 + 720 + 2880, 8 * 1440 + 720)


def test_a_session_that_meets_other_hours_becomes_one_with_them() -> None:
    morning, afternoon = (540, 720), (840, 1020)
    assert with_stretch((morning, afternoon), 1080, 1200) == (morning, afternoon, (1080, 1200))
    assert with_stretch((morning, afternoon), 1020, 1200) == (morning, (840, 1200))
    assert with_stretch((morning, afternoon), 700, 850) == ((540, 1020),)


def test_pieces_cured_less_are_a_goal_of_their_own() -> None:
    one, other = apply_change(two_lots(), GoalCured("class", 1, 1)).goals
    assert (one.pieces, one.cured, other.pieces, other.cured) == (1, 2880, 1, 1440)
    (whole,) = apply_change(two_lots(), GoalCured("class", 2, 1)).goals
    assert (whole.name, whole.pieces, whole.cured) == ("class", 2, 1440)


def test_a_goal_wants_fewer_pieces_when_the_lots_left_hold_fewer() -> None:
    goals = [{"id": "class", "date": "2027-03-13T09:00", "pieces": 3, "lots": ["L1", "L2"]}]
    left = apply_change(
        read(studio(2, goals=goals)), read_change({"change": "leave_out", "lot": "L2"})
    )
    assert [(one.pieces, one.lots) for one in left.goals] == [(2, ("L1",))]
    none = apply_change(left, LeaveOut("L1"))
    assert (none.lots, none.goals) == ((), ())


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (None, "nothing, where an object is due"), ([], "a list, where an object is due"),
        ({}, "kind nothing; one of add_vessel"), ({"change": "fly"}, "kind 'fly'"),
        ({"change": ["leave_out"]}, "kind a list"),
        ({"change": "leave_out", "lot": "L1", "now": 1}, "'now', which has no meaning"),
        ({"change": "leave_out"}, "lot nothing"),
        ({"change": "add_vessel", "kind": "tub", "litres": 0}, "litres 0"),
        ({"change": "add_vessel", "kind": "tub", "litres": float("nan")}, "litres nan"),
        ({"change": "more_line", "metres": float("inf")}, "metres inf"),
        ({"change": "more_line", "metres": 0}, "metres 0"),
        ({"change": "more_burners", "burners": 1.5}, "burners 1.5"),
        ({"change": "add_session", "date": "2027-02-30", "from": "18:00", "to": "20:00"}, "date"),
        ({"change": "add_session", "date": "2027-02-20", "from": "20:00", "to": "18:00"}, "before"),
        ({"change": "add_hours", "days": ["mon", "mon"], "from": "18:00", "to": "19:00"}, "once"),
        ({"change": "add_hours", "days": [["mon"]], "from": "18:00", "to": "19:00"}, "once"),
        ({"change": "longer_step", "lot": "L1", "step": "soak", "minutes": -5}, "minutes -5"),
    ],
    ids=lambda one: str(one)[:40],
)  # fmt: skip
def test_what_is_no_change_is_said_in_a_sentence(value: Any, words: str) -> None:
    with pytest.raises(BadProblemError) as bad:
        read_change(value)
    assert any(words in one for one in bad.value.faults), bad.value.faults


REFUSED: list[tuple[dict[str, Any], str]] = [
    ({"change": "remove_vessel", "vessel": "tub9"}, "There is no vessel tub9."),
    ({"change": "more_line", "metres": -6.5}, "not so much of line"),
    ({"change": "more_burners", "burners": -1}, "not so much of burner"),
    ({"change": "close_day", "date": "2027-05-01"}, "Saturday 1 May 2027 is no day of"),
    ({"change": "longer_step", "lot": "L9", "step": "soak", "minutes": 5}, "no lot L9"),
    ({"change": "longer_step", "lot": "L1", "step": "sock", "minutes": 5}, "no step sock"),
    ({"change": "longer_step", "lot": "L1", "step": "lift", "minutes": 5}, "no longest time"),
    ({"change": "longer_pause", "lot": "L1", "step": "load", "minutes": 5}, "is a rule"),
    ({"change": "longer_link", "lot": "L1", "from": "load.end", "to": "dry.end", "minutes": 5},
     "no limit from load.end to dry.end"),
    ({"change": "later_goal", "goal": "fair", "minutes": 5}, "no goal fair"),
    ({"change": "goal_pieces", "goal": "class", "pieces": 9}, "fewer than 9 pieces"),
    ({"change": "goal_cured", "goal": "class", "pieces": 3, "days": 1}, "wants 2 pieces"),
    ({"change": "more_hands", "hands": -1}, "for 1 to 20 pairs of hands"),
    ({"change": "more_days", "days": 800}, "cannot reach so far ahead"),
    ({"change": "later_due", "lot": "L1", "minutes": 5}, "no date of its own"),
    ({"change": "add_vessel", "kind": "line", "litres": 5}, "line is no kind of vessel"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "words"), REFUSED, ids=lambda one: str(one)[:50])
def test_what_cannot_be_made_is_refused_in_words(value: Any, words: str) -> None:
    with pytest.raises(BadProblemError, match=words):
        apply_change(two_lots(), read_change(value))


def test_a_rule_is_never_made_longer() -> None:
    value = studio()
    value["lots"][0]["steps"][1]["limit"] = "rule"
    value["lots"][0]["steps"][0] |= {"then_within": 30, "then_limit": "rule"}
    value["lots"][0]["steps"][2]["then_limit"] = "advice"
    value["lots"][0]["links"] = [
        {"from": "load.end", "to": "dry.start", "max": 2000, "limit": "rule"}
    ]
    problem = read(value)
    for change in (
        {"change": "longer_step", "lot": "L1", "step": "soak", "minutes": 5},
        {"change": "longer_pause", "lot": "L1", "step": "load", "minutes": 5},
        {"change": "longer_link", "lot": "L1", "from": "load.end", "to": "dry.start", "minutes": 5},
    ):
        with pytest.raises(BadProblemError, match="is a rule"):
            apply_change(problem, read_change(change))
    assert apply_change(problem, LongerPause("L1", "lift", 5)).lots[0].steps[2].then_within == 5


def test_no_more_vessels_or_goals_than_a_file_may_hold() -> None:
    problem = two_lots()
    with pytest.raises(BadProblemError, match="60 vessels already"):
        apply_changes(problem, (AddVessel("tub", 9_000),) * 60)
    assert len(apply_changes(problem, (AddVessel("tub", 9_000),) * 59).vessels) == 60


@given(st.sampled_from(sorted(KINDS)), st.data())
def test_anything_in_a_change_reads_or_is_told_of(kind: str, data: st.DataObject) -> None:
    value = {"change": kind, **{key: data.draw(ANY) for key in KINDS[kind][1]}}
    change, said = read_or_faults(value)
    assert all(one.endswith(".") and len(one) < 400 for one in said)
    assert change is None or read_change(change_to_json(change)) == change


def read_or_faults(value: Any) -> tuple[Change | None, tuple[str, ...]]:
    try:
        return read_change(value), ()
    except BadProblemError as bad:
        return None, bad.faults


def test_hours_of_a_day_of_a_clock_change_are_hours_of_the_wall() -> None:
    # 28 March 2027: clocks in London go from 01:00 to 02:00, so the day is 23 hours long.
    value = studio(zone="Europe/London", start="2027-03-27T00:00")
    problem = apply_change(read(value), AddSession(date(2027, 3, 28), 1080, 1200))
    assert problem.calendar.on(date(2027, 3, 28))[-1] == (1080, 1200)
