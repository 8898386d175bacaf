"""Undo, redo and correct, by later entries only."""

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.domain.lots import LotState, cure_of
from studio_log.domain.pieces import Piece
from studio_log.services import questions as q
from studio_log.services.commands import (
    AnswerReminder,
    Correct,
    GoOn,
    NewMilk,
    NoteTagsPrinted,
    Redo,
    SetLot,
    SetMilk,
    SplitLot,
    Undo,
)
from tests.support.builders import DAY, HOUR, NINE, SCOUR


@pytest.fixture
def soaking(shop):
    """A lot whose beans lie in water since nine."""
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    return code


def test_undo_goes_back_to_before_the_first_and_redo_restores_all(shop, soaking):
    shop.clock.move(hours=12)
    shop.mark(soaking, "bean-soak", Act.END)
    shop.mark(soaking, "now", Act.NOTE, note="smells fine")
    shop.do(SetLot(soaking, place="shelf 3"))
    whole = shop.lot(soaking)
    states = [whole]
    for _ in range(4):
        shop.do(Undo(soaking))
        states.append(shop.lot(soaking))
    assert not states[-1].started
    assert states[-1].place == ""
    shop.do(Undo(soaking))
    assert shop.lot(soaking).voided
    with pytest.raises(Refusal, match=r"Nothing of .* is left"):
        shop.do(Undo(soaking))
    shop.do(Redo(soaking))
    assert not shop.lot(soaking).voided
    for state in reversed(states[:-1]):
        shop.do(Redo(soaking))
        assert shop.lot(soaking) == state
    with pytest.raises(Refusal, match="was taken back"):
        shop.do(Redo(soaking))
    assert shop.lot(soaking) == whole


def test_nothing_is_ever_struck_out(shop, soaking):
    before = shop.entries(soaking)
    shop.do(Undo(soaking))
    shop.do(Redo(soaking))
    after = shop.entries(soaking)
    assert after[: len(before)] == before
    assert [entry.act for entry in after[len(before) :]] == [Act.UNDO, Act.REDO]


def test_an_earlier_entry_on_which_another_stands_is_refused_by_name(shop, soaking):
    shop.clock.move(hours=1)
    shop.mark(soaking, "now", Act.NOTE, note="frothy")
    shop.clock.move(hours=11)
    shop.mark(soaking, "bean-soak", Act.END)
    shop.clock.move(minutes=5)
    shop.mark(soaking, "blend", Act.START)
    before = shop.everything()
    with pytest.raises(Refusal, match=r"Entry 5 \(start\) stands on it: Before Blend"):
        shop.do(Undo(soaking, 4))
    assert shop.everything() == before
    shop.do(Undo(soaking, 3))
    acts = [entry.act for entry in shop.entries(soaking)]
    assert acts.count(Act.NOTE) == 1
    assert acts[-1] is Act.UNDO


def test_a_lot_on_which_anything_stands_is_not_taken_back(shop, soaking):
    before = shop.everything()
    with pytest.raises(Refusal, match=r"Entry 2 \(start\)"):
        shop.do(Undo(soaking, 1))
    assert shop.everything() == before


@pytest.mark.parametrize("entry", [0, -1, 99, 10**9])
def test_an_entry_that_is_not_there_is_refused(shop, soaking, entry):
    before = shop.everything()
    with pytest.raises(Refusal, match="There is no entry"):
        shop.do(Undo(soaking, entry))
    with pytest.raises(Refusal, match="There is no entry"):
        shop.do(Correct(soaking, entry, at=NINE - HOUR))
    assert shop.everything() == before


def test_a_taken_back_lot_gives_its_code_to_no_other(shop):
    first = shop.new()
    shop.do(Undo(first))
    assert shop.lot(first).state(shop.clock.at) is LotState.STOPPED
    second = shop.new()
    assert (first, second) == ("26-001", "26-002")
    assert [line.code for line in shop.studio.ask(q.LotLinesFor("live")).lines] == [second]
    assert not shop.records(first)


def test_a_printed_tag_is_not_taken_back(shop, soaking):
    shop.do(NoteTagsPrinted((soaking,)))
    shop.do(Undo(soaking))
    assert not shop.lot(soaking).started
    with pytest.raises(Refusal, match="cannot be changed"):
        shop.do(Undo(soaking, 3))


def test_correcting_a_start_moves_the_windows_and_the_ring(shop, soaking):
    assert shop.records(soaking)["1/ready"].due == NINE + 12 * HOUR
    shop.clock.move(hours=1)
    shop.do(Correct(soaking, 2, at=NINE - 3 * HOUR))
    assert shop.lot(soaking).step(1).start == NINE - 3 * HOUR
    assert shop.records(soaking)["1/ready"].due == NINE + 9 * HOUR
    assert shop.alarm.at is not None


def test_a_correction_that_puts_things_out_of_order_is_refused(shop, soaking):
    shop.clock.move(hours=12)
    shop.mark(soaking, "bean-soak", Act.END)
    shop.clock.move(hours=5)
    before = shop.everything()
    with pytest.raises(Refusal, match=r"Entry 3 \(end\) stands on it"):
        shop.do(Correct(soaking, 2, at=NINE + 14 * HOUR))
    assert shop.everything() == before


def test_a_doubtful_correction_is_a_question_that_can_be_answered(shop, soaking):
    shop.clock.move(hours=12)
    shop.mark(soaking, "bean-soak", Act.END)
    with pytest.raises(Question, match="far shorter"):
        shop.do(Correct(soaking, 3, at=NINE + HOUR))
    shop.do(Correct(soaking, 3, at=NINE + HOUR, sure=True))
    assert shop.lot(soaking).step(1).end == NINE + HOUR


def test_note_and_readings_are_corrected_and_the_rest_stays(shop, soaking):
    shop.mark(soaking, "1", Act.NOTE, note="pH 5", readings={"water-temperature": 14.0})
    shop.do(Correct(soaking, 3, note="pH 6", readings={"water-temperature": 16.0}))
    sheet = shop.studio.ask(q.LotSheetFor(soaking))
    line = next(entry for entry in sheet.entries if entry.number == 3)
    assert line.corrected_by == 4
    assert shop.entries(soaking)[2].note == "pH 5"


def test_a_correction_of_nothing_is_refused(shop, soaking):
    before = shop.everything()
    for command in (Correct(soaking, 2), Correct(soaking, 2, sure=True)):
        with pytest.raises(Refusal, match="what is to be corrected"):
            shop.do(command)
    with pytest.raises(Refusal, match="made is not corrected"):
        shop.do(Correct(soaking, 1, at=NINE - HOUR))
    assert shop.everything() == before


# -- reminders that come back --------------------------------------------------------------


def test_a_reminder_that_comes_back_rings_if_its_moment_is_still_ahead(shop, soaking):
    shop.clock.move(hours=11)
    shop.mark(soaking, "bean-soak", Act.END)
    assert shop.records(soaking)["1/ready"].status == "answered"
    shop.clock.move(minutes=2)
    shop.do(Undo(soaking))
    assert shop.records(soaking)["1/ready"].status == "waiting"
    assert not shop.ring()
    (notice,) = shop.ring(at=NINE + 12 * HOUR)
    assert "Drain the beans" in notice.title


def test_a_reminder_that_comes_back_does_not_ring_if_its_moment_is_past(shop, soaking):
    (first,) = shop.ring(at=NINE + 12 * HOUR)
    assert "26-001/1/ready" in first.keys
    shop.clock.move(minutes=1)
    shop.mark(soaking, "bean-soak", Act.END)
    shop.clock.move(minutes=2)
    shop.do(Undo(soaking))
    assert not shop.ring()
    assert shop.records(soaking)["1/ready"].status == "raised"
    assert any(card.key == "26-001/1/ready" for card in shop.studio.ask(q.BenchFor()).now)


def test_a_mark_that_was_seen_stays_so_when_something_else_is_taken_back(shop):
    code = shop.new()
    shop.walk_to(code, "cure")
    dry = shop.clock.at
    shop.ring_on(dry + 12 * DAY + 12 * HOUR)
    (key,) = [one.key for one in shop.studio.ask(q.BenchFor()).now if one.kind == "cure_mark"]
    shop.do(AnswerReminder(key, "done"))
    shop.mark(code, "now", Act.NOTE, note="lovely hand")
    shop.do(Undo(code))
    with shop.studio.store.reading() as look:
        assert look.reminders.get(key).status == "answered"
    assert not shop.ring(days=1)


# -- splits --------------------------------------------------------------------------------


def test_a_split_is_shown_both_ways_and_each_walks_on_alone(shop, soaking):
    shop.clock.move(hours=12)
    child = shop.do(SplitLot(soaking, (2,), "half")).code
    assert shop.lot(soaking).children == (child,)
    assert shop.lot(child).parents == (soaking,)
    assert [piece.number for piece in shop.lot(soaking).pieces] == [1]
    assert [piece.number for piece in shop.lot(child).pieces] == [2]
    assert shop.lot(child).step(1).start == NINE
    assert shop.lot(soaking).grams == pytest.approx(shop.lot(child).grams)
    assert shop.lot(soaking).grams == pytest.approx(1.8 * 0.45 * 185)
    shop.mark(child, "bean-soak", Act.END)
    assert shop.lot(soaking).step(1).running
    assert not shop.lot(child).step(1).running
    sheets = [shop.studio.ask(q.LotSheetFor(code)).lineage for code in (soaking, child)]
    assert child in sheets[0]
    assert soaking in sheets[1]


def test_a_split_takes_every_kind_of_past_along(shop):
    """Whatever was written before it reads under the new code too."""
    code = shop.new()
    shop.mark(code, "1", Act.START)
    shop.mark(code, "1", Act.PUTOFF, put_off=HOUR)
    shop.mark(code, "1", Act.PLAN, at=NINE + 10 * HOUR)
    shop.do(SetLot(code, grams=310.0, place="shelf 3", cure_days=30, amounts={"beans": 20.0}))
    shop.do(NoteTagsPrinted((code,)))
    shop.mark(code, "now", Act.NOTE, note="frothy", readings={"pH": 6.5})
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shop.do(NewMilk(lots=(code,), litres=0.9))
    shop.clock.move(minutes=10)
    shop.mark(code, "now", Act.TEND)
    shop.mark(code, "dip-3", Act.SKIP, note="two coats do")
    shop.mark(code, "dip-2", Act.REPEAT)
    shop.do(GoOn(code, SCOUR, sure=True))
    before = shop.lot(code)
    child = shop.lot(shop.do(SplitLot(code, (2,), "half")).code)
    assert child.steps == before.steps
    assert (child.place, child.cure_days, child.methods) == ("shelf 3", 30, before.methods)
    assert child.grams == pytest.approx(155.0)
    assert shop.studio.check() == []


def test_a_lot_begun_years_ago_is_split_without_a_question(shop, soaking):
    shop.clock.move(days=800)
    child = shop.do(SplitLot(soaking, (2,), "half")).code
    assert shop.lot(child).step(1).start == NINE


def test_a_split_is_taken_back_with_its_child(shop, soaking):
    child = shop.do(SplitLot(soaking, (2,), "half")).code
    outcome = shop.do(Undo(soaking))
    assert {soaking, child} <= outcome.lots
    assert len(shop.lot(soaking).pieces) == 2
    assert shop.lot(soaking).children == ()
    assert shop.lot(child).voided
    with pytest.raises(Refusal, match="made again"):
        shop.do(Redo(soaking))
    with pytest.raises(Refusal, match="made again"):
        shop.do(Redo(child))
    assert shop.do(SplitLot(soaking, (2,), "half")).code == "26-003"


def test_a_split_on_which_the_child_has_built_is_refused(shop, soaking):
    child = shop.do(SplitLot(soaking, (2,), "half")).code
    shop.mark(child, "now", Act.NOTE, note="on its own")
    before = shop.everything()
    with pytest.raises(Refusal, match=f"{child} has been worked on"):
        shop.do(Undo(soaking))
    assert shop.everything() == before
    shop.do(Undo(child))
    shop.do(Undo(soaking))
    assert shop.lot(child).voided


def test_the_shared_past_is_not_taken_back_from_the_child(shop, soaking):
    child = shop.do(SplitLot(soaking, (1,), "half")).code
    with pytest.raises(Refusal, match="Nothing of"):
        shop.do(Undo(child))
    with pytest.raises(Refusal, match="past"):
        shop.do(Undo(child, 2))


def test_a_split_of_a_split_keeps_its_own_pieces(shop):
    pieces = tuple(shop.lot(shop.new()).pieces) * 2
    code = shop.new(pieces=pieces)
    child = shop.do(SplitLot(code, (3, 4), "half")).code
    grandchild = shop.do(SplitLot(child, (4,), "quarter")).code
    held = [[piece.number for piece in shop.lot(one).pieces] for one in (code, child, grandchild)]
    assert held == [[1, 2], [3], [4]]


def test_half_is_painted_and_half_cures_on(shop):
    """Painted on day ten the age is frozen; the other half goes on to another method."""
    code = shop.new()
    shop.walk_to(code, "cure")
    dry = shop.clock.at
    shop.clock.move(days=10)
    child = shop.do(SplitLot(code, (2,), "painted half")).code
    shop.mark(child, "now", Act.USE, note="painted")
    shop.clock.move(days=85)
    painted, curing = (cure_of(shop.lot(one)) for one in (child, code))
    assert painted.fully_dry == curing.fully_dry == dry
    assert painted.age(shop.clock.at) == 10 * DAY
    assert curing.age(shop.clock.at) == 95 * DAY
    assert shop.lot(child).state(shop.clock.at) is LotState.USED
    assert shop.lot(code).state(shop.clock.at) is LotState.READY
    shop.do(GoOn(code, SCOUR, sure=True))
    first = next(step for step in shop.lot(code).steps if step.join == 1)
    shop.mark(code, str(first.number), Act.START)
    shop.clock.move(days=30)
    assert cure_of(shop.lot(code)).age(shop.clock.at) == 95 * DAY


# -- milk ----------------------------------------------------------------------------------


def test_a_milk_is_taken_back_from_the_coat_that_named_it(shop):
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    milk = shop.do(NewMilk(lots=(code,), beans_grams=90.0, strength=100.0)).code
    assert shop.lot(code).step(4).milk == milk
    assert shop.studio.ask(q.BenchFor()).take_back.subject == milk
    shop.do(Undo(milk))
    assert shop.lot(code).step(4).milk is None
    assert shop.lot(code).step(4).running
    assert shop.studio.ask(q.MilksFor()) == ()
    with pytest.raises(Refusal, match="left to take back"):
        shop.do(Undo(milk))
    assert shop.do(NewMilk(lots=(code,))).code == "M26-002"


def test_a_change_of_a_milk_is_taken_back_before_the_milk(shop):
    milk = shop.do(NewMilk(litres=0.9)).code
    shop.do(SetMilk(milk, cold=False))
    with pytest.raises(Refusal, match="Take that back first"):
        shop.do(Undo(milk, 1))
    shop.do(Undo(milk))
    (line,) = shop.studio.ask(q.MilksFor())
    assert line.cold
    shop.do(Undo(milk))
    assert shop.studio.ask(q.MilksFor()) == ()


def test_a_lot_split_from_a_split_lot_names_only_the_lot_it_came_from(shop):
    first = shop.new(pieces=tuple(Piece(n, "linen", given_grams=100.0) for n in (1, 2, 3)))
    second = shop.do(SplitLot(first, (2, 3), "second")).code
    third = shop.do(SplitLot(second, (3,), "third")).code
    assert shop.lot(third).parents == (second,)
    assert shop.lot(second).parents == (first,)
    assert (shop.lot(first).children, shop.lot(second).children) == ((second,), (third,))
    assert [piece.number for piece in shop.lot(third).pieces] == [3]


def test_the_journal_says_what_was_done_in_the_methods_own_words(shop):
    code = shop.new()
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shop.clock.move(minutes=20)
    shop.mark(code, "first-soak", Act.TEND)
    said = [line.words for line in shop.studio.ask(q.LotSheetFor(code)).entries]
    assert "Bean soak: begun" in said
    assert "Bean soak: drained" in said
    assert said[-2:] == ["First soak: begun", "First soak: stirred"]


def test_a_milk_is_taken_back_and_restored_with_its_coats(shop):
    lot = shop.new()
    code = shop.do(NewMilk(lots=(lot,), beans_grams=90.0, litres=0.9)).code
    shop.do(SetMilk(code, cold=False))
    shop.do(Undo(code))
    assert shop.studio.ask(q.MilksFor())[0].cold
    shop.do(Redo(code))
    assert not shop.studio.ask(q.MilksFor())[0].cold
    shop.do(Undo(code))
    shop.do(Undo(code))
    assert shop.studio.ask(q.MilksFor()) == ()
    shop.do(Redo(code))
    (again,) = shop.studio.ask(q.MilksFor())
    assert again.lots == (lot,)
    with pytest.raises(Refusal, match="taken back"):
        shop.do(Redo(code))
