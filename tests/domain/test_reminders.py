"""What becomes of a reminder: raised, rung again, answered, void, come back."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.reminders import (
    AGAIN,
    Cause,
    Fate,
    Kind,
    Record,
    Reminder,
    Urgency,
    reconcile,
    rings_next,
    told_together,
)
from tests.support.builders import DAY, HOUR, MINUTE, NINE


def a_reminder(key: str = "26-001/1/ready", due=NINE, **rest: object) -> Reminder:
    values: dict[str, object] = {
        "subject": "26-001", "step": 1, "kind": Kind.READY, "urgency": Urgency.NOW,
        "rings_at": due, "title": "Drain the beans 26-001", "why": "Since six.", "if_late": "Sour.",
    }  # fmt: skip
    return Reminder(key=key, due=due, **(values | rest))  # type: ignore[arg-type]


def raised(one: Reminder, times: int = 1, rung=NINE) -> Record:
    return Record(one, Fate.RAISED, raised_at=NINE, times=times, rung_at=rung)


def answered(one: Reminder, answer: str = "done") -> Record:
    return replace(raised(one), fate=Fate.ANSWERED, answered_at=NINE, answer=answer)


LOOK = Cause()
DONE = Cause(step=1, answer="done")
UNDO = Cause(undoing=True, why="its entry was taken back")


def test_a_new_reminder_waits_for_its_moment():
    one = a_reminder(due=NINE + HOUR)
    (record,) = reconcile([one], [], NINE, LOOK)
    assert record == Record(one)
    assert rings_next(record) == NINE + HOUR


def test_what_has_not_changed_is_not_written():
    one = a_reminder()
    for record in (Record(one), raised(one), answered(one)):
        assert reconcile([one], [record], NINE, LOOK) == []


@pytest.mark.parametrize("urgency", list(Urgency))
def test_unanswered_ones_ring_again_at_gaps_that_grow(urgency):
    one = a_reminder(urgency=urgency)
    gaps = [rings_next(raised(one, times)) - NINE for times in range(1, 8)]
    assert gaps == sorted(gaps)
    assert gaps[0] == AGAIN[urgency][0]
    assert gaps[-1] == gaps[-2] == AGAIN[urgency][-1]
    assert gaps[0] < gaps[-1]


def test_calmer_ones_ring_again_less_often():
    for times in (1, 2, 3, 9):
        found = [rings_next(raised(a_reminder(urgency=u), times)) for u in Urgency]
        assert found == sorted(found, reverse=True)


def test_a_mark_of_the_cure_rings_again_next_day_then_weekly():
    mark = a_reminder(kind=Kind.CURE_MARK, urgency=Urgency.CALM)
    assert rings_next(raised(mark, 1)) == NINE + DAY
    assert rings_next(raised(mark, 2)) == NINE + 7 * DAY
    assert rings_next(raised(mark, 9)) == NINE + 7 * DAY


def test_an_act_answers_the_reminders_of_its_step_and_voids_the_others():
    mine = a_reminder()
    other = a_reminder("26-001/2/start", step=2)
    found = {one.reminder.step: one for one in
             reconcile([], [raised(mine), Record(other)], NINE + HOUR, DONE)}  # fmt: skip
    assert (found[1].fate, found[1].answer) == (Fate.ANSWERED, "done")
    assert found[1].answered_at == NINE + HOUR
    assert (found[2].fate, found[2].void_why) == (Fate.VOID, "no longer needed")


def test_what_goes_by_an_undo_is_void_and_not_answered():
    cause = replace(UNDO, step=1, answer="done")
    (record,) = reconcile([], [raised(a_reminder())], NINE, cause)
    assert record.fate is Fate.VOID
    assert record.void_why == "its entry was taken back"


@pytest.mark.parametrize("cause", [LOOK, DONE, Cause(why="the settings changed")])
def test_an_answered_one_never_rings_again_though_it_is_worked_out(cause):
    one = a_reminder(due=NINE + HOUR)
    assert reconcile([one], [answered(one)], NINE, cause) == []


def test_by_an_undo_it_rings_if_its_moment_is_still_ahead():
    one = a_reminder(due=NINE + HOUR)
    (record,) = reconcile([one], [answered(one)], NINE, UNDO)
    assert record == Record(one)
    assert rings_next(record) == NINE + HOUR


def test_by_an_undo_it_does_not_ring_at_once_if_its_moment_is_past():
    one = a_reminder(due=NINE - HOUR)
    (record,) = reconcile([one], [answered(one)], NINE, UNDO)
    assert record.fate is Fate.RAISED, "it is on the bench"
    assert record.answer == ""
    assert rings_next(record) > NINE


def test_of_several_gone_at_once_only_the_one_answered_is_answered():
    """A mark is seen while another of the same step has run out by itself."""
    seen, over = (a_reminder(key=f"26-001/16/cure_mark/3/{one}") for one in ("paint", "resists"))
    cause = Cause(seen.step, "seen", key=seen.key)
    after = {one.reminder.key: one for one in reconcile([], map(Record, (seen, over)), NINE, cause)}
    assert (after[seen.key].fate, after[seen.key].answer) == (Fate.ANSWERED, "seen")
    assert after[over.key].fate is Fate.VOID


def test_one_that_never_rang_and_comes_back_by_itself_is_not_lost():
    one = a_reminder(due=NINE - HOUR)
    void = Record(one, Fate.VOID, void_at=NINE - 2 * HOUR, void_why="the settings changed")
    (record,) = reconcile([one], [void], NINE, LOOK)
    assert record.fate is Fate.WAITING
    assert rings_next(record) <= NINE


def test_one_put_off_rings_again_at_its_new_moment():
    one = a_reminder()
    later = replace(one, rings_at=NINE + 2 * HOUR)
    (record,) = reconcile([later], [raised(one)], NINE, Cause(1))
    assert record.fate is Fate.WAITING
    assert rings_next(record) == NINE + 2 * HOUR
    assert record.raised_at == NINE, "that it rang is not forgotten"


def test_a_mark_put_off_stays_so_whatever_else_happens_to_the_lot():
    mark = a_reminder(kind=Kind.CURE_MARK)
    off = Record(replace(mark, rings_at=NINE + 5 * DAY), Fate.WAITING, raised_at=NINE, times=1)
    for cause in (LOOK, UNDO, Cause(3, "tended")):
        left = reconcile([mark], [off], NINE + HOUR, cause)
        assert [rings_next(one) for one in left] in ([], [NINE + 5 * DAY])


def test_a_mark_whose_day_moves_forgets_that_it_was_put_off():
    mark = a_reminder(kind=Kind.CURE_MARK)
    off = Record(replace(mark, rings_at=NINE + 5 * DAY))
    sooner = a_reminder(kind=Kind.CURE_MARK, due=NINE + 2 * DAY)
    (record,) = reconcile([sooner], [off], NINE, LOOK)
    assert rings_next(record) == NINE + 2 * DAY


FATES = st.sampled_from(["waiting", "raised", "answered", "void"])


@given(
    st.lists(st.tuples(st.integers(0, 5), FATES, st.integers(-300, 300)), max_size=6),
    st.lists(st.tuples(st.integers(0, 5), st.integers(-300, 300)), max_size=6),
    st.sampled_from([LOOK, DONE, Cause(why="x")]),
)
def test_none_is_forgotten_and_no_answered_one_reopened(old, new, cause):
    kept = {}
    for number, fate, minutes in old:
        one = a_reminder(f"26-001/{number}/ready", NINE + minutes * MINUTE, step=number)
        kept[one.key] = {
            "waiting": Record(one), "raised": raised(one), "answered": answered(one),
            "void": Record(one, Fate.VOID, void_at=NINE),
        }[fate]  # fmt: skip
    wanted = {}
    for number, minutes in new:
        one = a_reminder(f"26-001/{number}/ready", NINE + minutes * MINUTE, step=number)
        wanted[one.key] = one
    changed = {r.reminder.key: r for r in reconcile(wanted.values(), kept.values(), NINE, cause)}
    after = kept | changed
    assert set(after) == set(kept) | set(wanted)
    for key, record in after.items():
        if key in kept and kept[key].fate is Fate.ANSWERED:
            assert record == kept[key]
        elif key in wanted:
            assert record.open
            assert record.reminder == wanted[key]
        else:
            assert not record.open
    # And settled once is settled.
    assert reconcile(wanted.values(), after.values(), NINE, LOOK) == []


# -- told together -------------------------------------------------------------------------


def test_several_are_told_oldest_danger_first():
    calm = Record(a_reminder("a", NINE - 9 * HOUR, subject="26-001", urgency=Urgency.CALM))
    late = Record(a_reminder("b", NINE - HOUR, subject="26-002", urgency=Urgency.SPOILING))
    older = Record(a_reminder("c", NINE - 2 * HOUR, subject="26-003", urgency=Urgency.SPOILING))
    soon = Record(a_reminder("d", NINE, subject="26-004", urgency=Urgency.SOON))
    told = told_together([soon, late, calm, older])
    assert [one.reminder.key for one in told] == ["c", "b", "d", "a"]


def test_of_one_step_the_most_urgent_is_told_and_its_stir_beside_it():
    may = Record(a_reminder("may", kind=Kind.MAY_END, urgency=Urgency.CALM))
    ready = Record(a_reminder("ready"))
    past = Record(a_reminder("past", NINE + HOUR, kind=Kind.PAST, urgency=Urgency.SPOILING))
    stir = Record(a_reminder("stir", kind=Kind.TEND))
    told = {one.reminder.key for one in told_together([may, ready, past, stir])}
    assert told == {"past", "stir"}


def test_urgencies_are_in_order():
    assert [one.rank for one in (Urgency.CALM, Urgency.SOON, Urgency.NOW, Urgency.SPOILING)] == [
        0, 1, 2, 3,
    ]  # fmt: skip
    assert timedelta(0) < AGAIN[Urgency.SPOILING][0] < AGAIN[Urgency.NOW][0]


# -- a clock that was set back ---------------------------------------------------------------


def test_a_step_back_within_its_gap_changes_nothing():
    one = a_reminder()
    assert reconcile([one], [raised(one)], NINE - 9 * MINUTE, LOOK) == []


def test_after_a_greater_step_back_its_moment_counts_anew_and_its_ring_is_kept():
    one = a_reminder()
    (waits,) = reconcile([one], [raised(one)], NINE - HOUR, LOOK)
    assert (waits.fate, waits.rung_at) == (Fate.WAITING, NINE)
    assert rings_next(waits) == NINE
    assert reconcile([one], [waits], NINE - HOUR, LOOK) == []


def test_where_the_clock_comes_right_again_it_has_rung():
    one = a_reminder()
    (waits,) = reconcile([one], [raised(one)], NINE - 365 * DAY, LOOK)
    (back,) = reconcile([one], [waits], NINE + MINUTE, LOOK)
    assert back == raised(one)
    assert rings_next(back) == NINE + AGAIN[Urgency.NOW][0]


def test_one_that_rang_too_early_by_a_wrong_clock_waits_for_its_moment():
    one = a_reminder()
    early = raised(one, rung=NINE + 3 * DAY)
    (waits,) = reconcile([one], [early], NINE - HOUR, LOOK)
    assert reconcile([one], [waits], NINE, LOOK) == [], "at its moment it still waits, so it rings"
    assert rings_next(waits) == NINE


def test_one_overdue_is_heard_again_a_gap_after_the_clock_was_put_right():
    one = a_reminder()
    (now_raised,) = reconcile([one], [raised(one, rung=NINE + 3 * DAY)], NINE + HOUR, LOOK)
    assert rings_next(now_raised) == NINE + HOUR + AGAIN[Urgency.NOW][0]
