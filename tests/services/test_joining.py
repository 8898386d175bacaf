"""Lots that are joined: what must be alike, what is asked, what becomes of both, and back."""

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.domain.lots import LotState, cure_of
from studio_log.domain.pieces import Piece
from studio_log.services import questions as q
from studio_log.services.commands import (
    Correct,
    GoOn,
    JoinLots,
    NewMilk,
    NoteTagsPrinted,
    Redo,
    SetLot,
    SplitLot,
    Undo,
)
from studio_log.services.joins import JoinFor, JoinOfferFor
from tests.support.builders import MINUTE, NINE, SCOUR

LINEN = (Piece(1, "linen", given_grams=150.0), Piece(2, "linen", given_grams=250.0))
COTTON = (Piece(1, "cotton", given_grams=100.0),)


@pytest.fixture
def pair(shop):
    """Two lots of the same method, the second begun five minutes after the first."""
    first, second = shop.new(pieces=LINEN), shop.new(pieces=COTTON)
    shop.mark(first, "bean-soak", Act.START)
    shop.clock.move(minutes=5)
    shop.mark(second, "bean-soak", Act.START)
    return first, second


def join(shop, *codes, name="together", **more):
    return shop.do(JoinLots(codes, name, **more)).code


def test_two_lots_at_the_same_step_become_one_with_the_pieces_of_both(shop, pair):
    code = join(shop, *pair)
    assert code == "26-003", "a code of its own; no code is used twice"
    lot = shop.lot(code)
    assert lot.name == "together"
    assert [(piece.number, piece.fibre, piece.grams) for piece in lot.pieces] == [
        (1, "linen", 150.0),
        (2, "linen", 250.0),
        (3, "cotton", 100.0),
    ]
    assert lot.grams == 500.0
    assert lot.step(1).start == NINE + 5 * MINUTE, "the later counts: it is soaked enough last"
    assert lot.step(1).running


def test_lineage_is_shown_both_ways(shop, pair):
    code = join(shop, *pair)
    assert shop.lot(code).parents == pair
    sheets = {one: shop.studio.ask(q.LotSheetFor(one)) for one in (*pair, code)}
    for parent in pair:
        assert shop.lot(parent).children == (code,)
        assert sheets[parent].lineage == f"joined into {code}"
        assert sheets[parent].doing == f"Joined into {code}"
        assert sheets[parent].entries[-1].words == f"joined into {code}"
        assert sheets[parent].data["children"] == [code]
    assert sheets[code].lineage == f"joined from {pair[0]}, {pair[1]}"
    assert sheets[code].entries[-1].words == f"joined from {pair[0]}, {pair[1]}"
    assert sheets[code].data["parents"] == list(pair)


def test_a_lot_that_was_joined_is_over_and_says_where_to_mark(shop, pair):
    code = join(shop, *pair)
    for parent in pair:
        assert shop.lot(parent).state(shop.clock.at) is LotState.STOPPED
        with pytest.raises(Refusal, match=f"was joined into {code}: mark it there"):
            shop.mark(parent, "bean-soak", Act.END)
        shop.mark(parent, "now", Act.NOTE, note="tag is lost")
    shop.clock.move(hours=20)
    due = shop.studio.ask(q.RemindersFor(within=86400.0))
    assert {reminder.subject for reminder, _late in due} == {code}


def test_the_journal_of_a_joined_lot_reads_again_from_nothing(shop, pair):
    shop.mark(pair[0], "now", Act.NOTE, note="first foam")
    shop.do(SetLot(pair[0], vessel="blue tub"))
    shop.do(SetLot(pair[1], place="line 2", grams=120.0, weighed="after"))
    join(shop, *pair, sure=True)
    before = {one: shop.lot(one) for one in (*pair, "26-003")}
    assert shop.studio.check() == []
    shop.studio.rebuild()
    assert {one: shop.lot(one) for one in before} == before
    assert before["26-003"].place == "line 2"
    assert before["26-003"].vessel == "blue tub"
    assert before["26-003"].grams == 520.0


def test_notes_and_readings_of_every_lot_stay_with_the_cloth(shop, pair):
    shop.mark(pair[0], "now", Act.NOTE, note="first foam", readings={"pH": 6.5})
    code = join(shop, *pair)
    notes = [entry for entry in shop.entries(code) if entry.act is Act.NOTE]
    assert [(entry.note, dict(entry.readings)) for entry in notes] == [("first foam", {"pH": 6.5})]
    assert notes[0].data["from"] == f"{pair[0]}#3"


@pytest.mark.parametrize("which", [0, 1])
def test_it_does_not_matter_which_lot_is_named_first(shop, pair, which):
    codes = pair if which == 0 else pair[::-1]
    lot = shop.lot(join(shop, *codes))
    assert lot.step(1).start == NINE + 5 * MINUTE
    assert lot.parents == codes


def test_halves_of_a_split_come_together_again_with_their_own_numbers(shop):
    code = shop.new(pieces=(*LINEN, Piece(3, "cotton", given_grams=100.0)))
    half = shop.do(SplitLot(code, (1, 3), "half")).code
    lot = shop.lot(join(shop, half, code))
    assert [(piece.number, piece.grams) for piece in lot.pieces] == [
        (1, 150.0),
        (2, 250.0),
        (3, 100.0),
    ]
    assert shop.lot(code).children == (half, lot.code)
    assert shop.studio.ask(q.LotSheetFor(code)).lineage == (
        f"split into {half}; joined into {lot.code}"
    )


# -- what cannot meet ----------------------------------------------------------------------


def test_lots_of_different_methods_are_refused_with_a_way_on(shop):
    first, second = shop.new(), shop.new(method=SCOUR)
    with pytest.raises(Refusal, match=r"Nothing was joined\. Let both go on to the same method"):
        join(shop, first, second)
    assert shop.lot(first).joined_into == ""


def test_lots_at_different_steps_are_refused_by_the_names_of_the_steps(shop, pair):
    shop.clock.move(hours=12)
    shop.mark(pair[0], "bean-soak", Act.END)
    with pytest.raises(Refusal, match=r"26-001 has Blend ahead; 26-002 is in Bean soak") as told:
        join(shop, *pair)
    assert not isinstance(told.value, Question)
    with pytest.raises(Refusal, match="Bring both to the same step"):
        join(shop, *pair, sure=True)


@pytest.mark.parametrize(
    ("codes", "words"),
    [
        (("26-001",), "two different lots"),
        (("26-001", "26-1"), "two different lots"),
        ((), "two different lots"),
        (("26-001", "26-777"), "There is no lot 26-777"),
        (("26-001", "M26-001"), "There is no lot"),
    ],
)
def test_a_join_needs_lots_that_are_there(shop, pair, codes, words):
    before = shop.everything()
    with pytest.raises(Refusal, match=words):
        join(shop, *codes)
    assert shop.everything() == before
    assert pair


def test_a_stopped_a_void_and_a_joined_lot_are_refused(shop, pair):
    code = join(shop, *pair)
    fresh = shop.new()
    shop.mark(fresh, "bean-soak", Act.START)
    with pytest.raises(Refusal, match=f"{pair[0]} was joined into {code} already"):
        join(shop, pair[0], fresh)
    shop.mark(fresh, "now", Act.STOP)
    with pytest.raises(Refusal, match=f"{fresh} was stopped"):
        join(shop, code, fresh)
    void = shop.new()
    shop.do(Undo(void))
    with pytest.raises(Refusal, match=f"{void} was taken back"):
        join(shop, void, code)


def test_a_joined_lot_has_a_name_and_no_more_pieces_than_a_lot_may(shop, pair):
    with pytest.raises(Refusal, match="needs a name"):
        join(shop, *pair, name="  ")
    many = tuple(Piece(1, "linen", given_grams=10.0) for _ in range(500))
    big = shop.new(pieces=many)
    shop.mark(big, "bean-soak", Act.START)
    with pytest.raises(Refusal, match="may have 500 pieces; these have 502"):
        join(shop, pair[0], big)


# -- what is asked -------------------------------------------------------------------------


def doubt(shop, *codes):
    before = shop.everything()
    with pytest.raises(Question) as asked:
        join(shop, *codes)
    assert shop.everything() == before
    return str(asked.value)


def test_a_soak_begun_long_before_is_asked_about(shop):
    first, second = shop.new(), shop.new()
    shop.mark(first, "bean-soak", Act.START)
    shop.clock.move(minutes=90)
    shop.mark(second, "bean-soak", Act.START)
    said = doubt(shop, first, second)
    assert f"Bean soak of {first} began 90 min before that of {second}." in said
    assert "Join them all the same?" in said
    code = join(shop, first, second, sure=True)
    assert shop.lot(code).step(1).start == NINE + 90 * MINUTE


def test_cures_of_different_days_count_from_the_later_and_are_asked_about(shop):
    """A cure counts from the last piece that was dry (product rule of time 5)."""
    first = shop.new()
    shop.walk_to(first, "cure")
    shop.clock.move(days=3)
    second = shop.new()
    shop.walk_to(second, "cure")
    shop.do(SetLot(second, cure_days=30))
    dry = cure_of(shop.lot(second)).fully_dry
    said = doubt(shop, first, second)
    assert f"{first} was fully dry" in said
    assert "the longer is taken" in said
    lot = shop.lot(join(shop, first, second, sure=True))
    cure = cure_of(lot)
    assert cure.fully_dry == dry
    assert cure.days == 90
    assert lot.state(shop.clock.at) is LotState.CURING


def test_coats_weighings_and_figures_that_differ_are_asked_about(shop):
    first = shop.new(pieces=LINEN, grams=400.0, weighed="before")
    second = shop.new(pieces=COTTON, grams=100.0, weighed="after")
    for code in (first, second):
        shop.do(SetLot(code, amounts={"beans": 20.0 if code == first else 30.0}))
    said = doubt(shop, first, second)
    assert "before scouring" in said
    assert "after scouring" in said
    assert "figures that you changed differ" in said
    lot = shop.lot(join(shop, first, second, sure=True))
    assert (lot.grams, lot.weighed) == (500.0, None)


def test_a_coat_that_only_one_has_had_is_asked_about(shop):
    two, three = shop.new(), shop.new()
    shop.walk_to(two, "dip-3")
    shop.mark(two, "dip-3", Act.SKIP, note="two coats do")
    shop.walk_to(three, "cure")
    assert f"{three} has had 3 coats, {two} 2 coats." in doubt(shop, two, three)


def test_a_past_method_that_only_one_went_through_is_asked_about(shop):
    scoured = shop.new(method=SCOUR)
    shop.do(GoOn(scoured, "soy-immersion-long"))
    for step in shop.lot(scoured).steps:
        if step.join == 0:
            shop.mark(scoured, str(step.number), Act.SKIP, note="bought scoured", sure=True)
    plain = shop.new()
    said = doubt(shop, scoured, plain)
    assert "went through" in said
    lot = shop.lot(join(shop, scoured, plain, sure=True))
    assert len(lot.pieces) == 4


# -- milk ----------------------------------------------------------------------------------


def test_the_milk_of_the_lots_serves_the_joined_one(shop):
    first, second = shop.new(pieces=LINEN), shop.new(pieces=COTTON)
    for code in (first, second):
        shop.mark(code, "bean-soak", Act.SKIP, note="milk is there", sure=True)
    milk = shop.do(NewMilk(lots=(first,), litres=2.0)).code
    code = join(shop, first, second)
    assert shop.studio.ask(q.MilksFor())[0].lots == (first, code)
    assert milk in shop.studio.ask(q.LotSheetFor(code)).milk_words
    shop.do(Undo(code))
    assert shop.studio.ask(q.MilksFor())[0].lots == (first,)


# -- taken back ----------------------------------------------------------------------------


@pytest.mark.parametrize("whose", [0, 1, 2])
def test_a_join_is_taken_back_from_any_of_its_lots(shop, pair, whose):
    before = [shop.lot(one) for one in pair]
    code = join(shop, *pair)
    outcome = shop.do(Undo((*pair, code)[whose]))
    assert {*pair, code} <= outcome.lots
    assert [shop.lot(one) for one in pair] == before
    assert shop.lot(code).voided
    for one in (*pair, code):
        with pytest.raises(Refusal, match="A join that was taken back is made again"):
            shop.do(Redo(one))
    assert join(shop, *pair) == "26-004"


def test_a_join_that_was_built_on_is_taken_back_after_what_stands_on_it(shop, pair):
    code = join(shop, *pair)
    shop.do(NoteTagsPrinted((code,)))
    shop.mark(code, "now", Act.NOTE, note="one bucket")
    before = shop.everything()
    with pytest.raises(Refusal, match=rf"{code} has been worked on .* \(note\)"):
        shop.do(Undo(pair[0]))
    assert shop.everything() == before
    shop.do(Undo(code))
    shop.do(Undo(pair[0]))
    assert shop.lot(code).voided


def test_what_the_joined_lot_has_taken_over_is_changed_after_the_join_is_taken_back(shop, pair):
    code = join(shop, *pair)
    with pytest.raises(Refusal, match="Take the join back first"):
        shop.do(Undo(pair[0], 2))
    with pytest.raises(Refusal, match="Take the join back first"):
        shop.do(Correct(pair[0], 2, at=NINE))
    with pytest.raises(Refusal, match="When a lot was joined is not corrected"):
        shop.do(Correct(pair[0], 3, at=NINE))
    with pytest.raises(Refusal, match="past"):
        shop.do(Undo(code, 2))


def test_a_joined_lot_is_split_and_joined_further(shop, pair):
    code = join(shop, *pair)
    half = shop.do(SplitLot(code, (3,), "cotton again")).code
    assert shop.lot(half).parents == (code,)
    again = join(shop, code, half)
    assert shop.lot(again).parents == (code, half)
    assert [piece.number for piece in shop.lot(again).pieces] == [1, 2, 3]
    assert shop.studio.check() == []


# -- seen beforehand -----------------------------------------------------------------------


def test_what_will_become_of_them_is_told_and_nothing_is_written(shop, pair):
    before = shop.everything()
    seen = shop.studio.ask(JoinFor(pair))
    assert seen.refusal == ""
    assert seen.doubts == ()
    told = " ".join(seen.becomes)
    assert "3 pieces, 500 g" in told
    assert f"carries on from {pair[1]}" in told
    assert f"{pair[0]} and {pair[1]} end in it" in told
    assert shop.everything() == before
    lot = shop.lot(join(shop, *pair))
    doing = shop.studio.ask(q.LotSheetFor(lot.code)).doing
    assert f"{doing}." in seen.becomes


def test_what_cannot_meet_is_told_beforehand_in_the_same_words(shop, pair):
    other = shop.new(method=SCOUR)
    seen = shop.studio.ask(JoinFor((pair[0], other)))
    assert "Let both go on to the same method" in seen.refusal
    assert "There is no lot" in shop.studio.ask(JoinFor((pair[0], "26-900"))).refusal


def test_a_lot_that_has_ended_is_offered_none(shop, pair):
    code = join(shop, *pair)
    with pytest.raises(Refusal, match=f"{pair[0]} was joined into {code} already"):
        shop.studio.ask(JoinOfferFor(pair[0]))


def test_a_join_says_that_the_tags_on_the_cloth_are_no_longer_true(shop, pair):
    outcome = shop.do(JoinLots(pair, "together"))
    assert outcome.advice == (
        f"The tags of {pair[0]} and {pair[1]} still hang on the cloth. Print one for 26-003.",
    )


def test_only_lots_that_can_meet_are_offered_nearest_first(shop, pair):
    ahead = shop.new()
    assert shop.new(method=SCOUR)
    twins = [shop.new() for _ in range(2)]
    for code in twins:
        shop.mark(code, "bean-soak", Act.START)
    offer = shop.studio.ask(JoinOfferFor(pair[1]))
    assert [code for code, _, _ in offer.lots] == [pair[0], *twins]
    assert ahead not in {code for code, _, _ in offer.lots}
