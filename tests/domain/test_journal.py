"""Which entries stand: taken back, restored, corrected."""

from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.journal import META, Act, Entry, corrected, standing, taken_back
from tests.support.builders import HOUR, NINE


def entry(number: int, act: Act = Act.NOTE, target: int | None = None, **rest: object) -> Entry:
    at = NINE + number * HOUR
    return Entry("26-001", act, at, at, "Europe/London", number, target=target, **rest)  # type: ignore[arg-type]


def numbers(entries) -> list[int]:
    return [one.number for one in entries]


def test_what_is_taken_back_does_not_stand_and_may_be_restored():
    notes = [entry(1), entry(2), entry(3)]
    undone = [*notes, entry(4, Act.UNDO, 3), entry(5, Act.UNDO, 2)]
    assert numbers(standing(undone)) == [1]
    assert numbers(taken_back(undone)) == [3, 2]
    restored = [*undone, entry(6, Act.REDO, 2)]
    assert numbers(standing(restored)) == [1, 2]
    assert numbers(taken_back(restored)) == [3]


def test_a_new_act_ends_what_redo_could_restore():
    entries = [entry(1), entry(2), entry(3, Act.UNDO, 2), entry(4)]
    assert numbers(standing(entries)) == [1, 4]
    assert taken_back(entries) == ()


def test_a_correction_leaves_the_order_of_writing_and_what_it_does_not_name():
    first = entry(1, readings={"pH": 6.5, "room": "cool"}, note="as told", step=4)
    second = entry(2)
    later = NINE - HOUR
    correction = Entry(
        "26-001", Act.CORRECT, later, NINE + 9 * HOUR, "Europe/Paris", 3,
        readings={"pH": 6.8}, data={"at": True}, target=1,
    )  # fmt: skip
    found = standing([first, second, correction])
    assert numbers(found) == [1, 2]
    assert found[0].at == later
    assert found[0].zone == "Europe/Paris"
    assert found[0].readings == {"pH": 6.8, "room": "cool"}
    assert (found[0].note, found[0].step) == ("as told", 4)
    assert found[0].written == first.written


def test_a_correction_of_the_note_alone_leaves_the_moment():
    first = entry(1, note="eigth")
    fixed = corrected(first, entry(2, Act.CORRECT, 1, note="eight"))
    assert (fixed.at, fixed.zone, fixed.note) == (first.at, first.zone, "eight")


def test_the_latest_correction_counts():
    entries = [entry(1), entry(2, Act.CORRECT, 1, note="b"), entry(3, Act.CORRECT, 1, note="c")]
    assert [one.note for one in standing(entries)] == ["c"]


def test_a_corrected_entry_that_is_taken_back_comes_back_corrected():
    entries = [entry(1), entry(2, Act.CORRECT, 1, note="b"), entry(3, Act.UNDO, 1)]
    assert standing(entries) == ()
    (found,) = standing([*entries, entry(4, Act.REDO, 1)])
    assert found.note == "b"


def test_an_entry_about_nothing_changes_nothing():
    entries = [entry(1), entry(2, Act.UNDO, 9), entry(3, Act.CORRECT, None), entry(4, Act.REDO, 7)]
    assert numbers(standing(entries)) == [1]


def test_a_correction_may_answer_a_question():
    fixed = corrected(entry(1, data={"milk": "M26-001"}), entry(2, Act.CORRECT, 1,
                                                                data={"sure": True}))  # fmt: skip
    assert fixed.data == {"milk": "M26-001", "sure": True}


@given(st.lists(st.sampled_from(["act", "undo", "redo"]), max_size=30))
def test_undo_and_redo_walk_a_line_of_acts(moves):
    """Against a plain list with a cursor, as undo works everywhere."""
    journal: list[Entry] = []
    done: list[int] = []
    undone: list[int] = []
    for move in moves:
        number = len(journal) + 1
        if move == "act":
            journal.append(entry(number))
            done.append(number)
            undone = []
        elif move == "undo" and done:
            undone.append(done.pop())
            journal.append(entry(number, Act.UNDO, undone[-1]))
        elif move == "redo" and undone:
            gone = taken_back(journal)
            assert gone[-1].number == undone[-1]
            done.append(undone.pop())
            journal.append(entry(number, Act.REDO, done[-1]))
        assert numbers(standing(journal)) == done
        assert numbers(taken_back(journal)) == undone


def test_entries_about_entries_never_stand_themselves():
    entries = [entry(1), *(entry(2 + n, act, 1) for n, act in enumerate(sorted(META)))]
    assert not {one.act for one in standing(entries)} & META
    assert timedelta(0) < entries[1].written - entries[0].written
