"""Every act of a lot's journal: what it does, and when it is refused or asked about."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import LotState, StepState, cure_of
from studio_log.domain.methods import Gap, StepKind
from studio_log.domain.pieces import Piece
from studio_log.domain.replay import StandsOn, apply, replay
from tests.support.builders import (
    DAY,
    HOUR,
    LONG,
    MINUTE,
    NINE,
    SCOUR,
    Story,
    a_cure,
    a_method,
    a_step,
    coat,
    shipped,
    spread,
)

PAINTED = a_method(
    a_step("bath", StepKind.SCOUR, gap=Gap()), a_step("rinse", StepKind.RINSE), slug="dye"
)


def drying() -> Story:
    """A lot whose first coat hangs since a moment."""
    story = Story().up_to("spin-1")
    story.after(minutes=5).mark(Act.END, "spin-1")
    return story


def cured() -> Story:
    """A lot whose third coat is dry; the fourth, optional, is open."""
    return Story().up_to("dip-4")


# -- allowed -------------------------------------------------------------------------------


def test_a_start_is_kept_with_its_moment_and_the_weight_used():
    lot = Story().mark(Act.START, "bean-soak")
    step = lot.step(1)
    assert (step.start, step.end, step.running) == (NINE, None, True)
    assert step.grams_used == 350.0
    assert lot.state(NINE) is LotState.IN_WORK


def test_ending_a_step_starts_the_next_where_the_gap_says_at_once():
    story = Story().up_to("spin-1")
    assert story.lot.step(story.number("spin-1")).start == story.at
    lot = story.after(minutes=5).mark(Act.END, "spin-1")
    dry = lot.step(story.number("dry-1"))
    assert dry.start == story.at
    assert dry.grams_used == 350.0


def test_ending_a_step_starts_nothing_where_the_gap_does_not_say_so():
    story = Story()
    story.mark(Act.START, "bean-soak")
    lot = story.after(hours=12).mark(Act.END, "bean-soak")
    assert lot.step(2).start is None
    assert lot.state_of(lot.step(2)) is StepState.OPEN
    assert lot.state_of(lot.step(3)) is StepState.AHEAD


def test_an_end_without_a_start_is_taken_with_the_start_unknown():
    lot = Story().mark(Act.END, "bean-soak")
    assert (lot.step(1).start, lot.step(1).end) == (None, NINE)
    assert lot.state_of(lot.step(1)) is StepState.DONE


def test_marking_a_later_step_asks_once_to_mark_those_between():
    story = Story()
    story.mark(Act.START, "bean-soak")
    story.after(hours=13)
    asked = story.refusal(Act.START, "first-soak")
    assert isinstance(asked, Question)
    for title in ("Bean soak", "Blend", "Strain"):
        assert title in str(asked)
    lot = story.mark(Act.START, "first-soak", sure=True)
    assert [step.end for step in lot.steps[:3]] == [story.at] * 3
    assert lot.step(1).start == NINE
    assert lot.step(2).start is None
    assert lot.step(4).running


def test_a_start_before_the_end_of_the_step_before_is_asked_about():
    story = Story()
    story.mark(Act.START, "bean-soak")
    story.after(hours=12).mark(Act.END, "bean-soak")
    asked = story.refusal(Act.START, "blend", at=NINE + 11 * HOUR)
    assert isinstance(asked, Question)
    assert "before Bean soak ended" in str(asked)
    lot = story.mark(Act.START, "blend", at=NINE + 11 * HOUR, sure=True)
    assert lot.step(2).start == NINE + 11 * HOUR


def test_a_long_step_ended_far_too_early_is_asked_about():
    story = Story()
    story.mark(Act.START, "bean-soak")
    asked = story.refusal(Act.END, "bean-soak", at=NINE + 4 * HOUR - MINUTE)
    assert isinstance(asked, Question)
    assert story.mark(Act.END, "bean-soak", at=NINE + 4 * HOUR).step(1).end == NINE + 4 * HOUR


def test_dry_ends_a_drying_step_and_damp_does_not():
    story = drying()
    hung = story.at
    number = story.number("dry-1")
    lot = story.mark(Act.DAMP, number, at=hung + 6 * HOUR)
    assert lot.step(number).damp == (hung + 6 * HOUR,)
    assert lot.step(number).running
    lot = story.mark(Act.DRY, number, at=hung + 12 * HOUR)
    assert lot.step(number).end == hung + 12 * HOUR


def test_ending_a_drying_step_is_the_same_as_dry():
    ended, dried = (
        drying().after(hours=8).mark(act, "dry-1") for act in (Act.END, Act.DRY)
    )  # fmt: skip
    assert ended == dried


def test_damp_moments_are_kept_in_order_of_time():
    story = drying()
    hung = story.at
    story.mark(Act.DAMP, "dry-1", at=hung + 9 * HOUR)
    lot = story.mark(Act.DAMP, "dry-1", at=hung + 6 * HOUR)
    assert lot.step(story.number("dry-1")).damp == (hung + 6 * HOUR, hung + 9 * HOUR)


@pytest.mark.parametrize(("act", "slug"), [(Act.TEND, "first-soak"), (Act.DAMP, "dry-1")])
def test_a_double_click_within_a_minute_is_asked_about(act, slug):
    story = drying() if slug == "dry-1" else Story().up_to("first-soak")
    if slug == "first-soak":
        story.mark(Act.START, slug)
    begun = story.at
    story.mark(act, slug, at=begun + HOUR)
    for seconds in (0, 59, -59):
        moment = begun + HOUR + timedelta(seconds=seconds)
        assert isinstance(story.refusal(act, slug, at=moment), Question)
    story.mark(act, slug, at=begun + HOUR + MINUTE)
    story.mark(act, slug, at=begun + HOUR, sure=True)


def test_tendings_are_kept_in_order_of_time():
    story = Story().up_to("first-soak")
    story.mark(Act.START, "first-soak")
    begun = story.at
    story.mark(Act.TEND, "first-soak", at=begun + 2 * HOUR)
    lot = story.mark(Act.TEND, "first-soak", at=begun + HOUR)
    assert lot.step(4).tended == (begun + HOUR, begun + 2 * HOUR)


def test_putting_off_and_planning_are_kept_until_the_step_goes_on():
    story = Story()
    story.mark(Act.START, "bean-soak")
    until = NINE + 3 * HOUR
    lot = story.mark(Act.PUTOFF, "bean-soak", data={"until": until.isoformat()})
    assert lot.step(1).put_off == until
    lot = story.mark(Act.PLAN, "bean-soak", data={"planned": (NINE + 9 * HOUR).isoformat()})
    assert lot.step(1).plan == NINE + 9 * HOUR
    lot = story.after(hours=12).mark(Act.END, "bean-soak")
    assert (lot.step(1).put_off, lot.step(1).plan) == (None, None)


def test_stop_says_when_and_why():
    story = Story()
    story.mark(Act.START, 1)
    lot = story.after(hours=1).mark(Act.STOP, note="soured")
    assert lot.stopped == (NINE + HOUR, "soured")
    assert lot.state(story.at) is LotState.STOPPED
    assert story.mark(Act.NOTE, note="a pity").stopped is not None


def test_skipping_a_step_lets_the_next_one_begin():
    story = Story()
    lot = story.mark(Act.SKIP, "bean-soak", note="ready-made milk")
    assert lot.step(1).skipped == "ready-made milk"
    assert lot.state_of(lot.step(1)) is StepState.SKIPPED
    assert lot.state_of(lot.step(2)) is StepState.OPEN


def test_skipping_a_step_that_is_next_starts_one_that_follows_at_once():
    story = Story().up_to("spin-1")
    lot = story.mark(Act.SKIP, "spin-1", note="wrung")
    assert lot.step(story.number("dry-1")).start == story.at


def test_skipping_a_step_far_ahead_starts_nothing():
    story = Story()
    story.mark(Act.START, "bean-soak")
    lot = story.mark(Act.SKIP, "spin-2", note="wrung by hand")
    assert [step.number for step in lot.open_steps()] == [1]
    lot = story.up_to("dip-2").mark(Act.START, "dip-2")
    assert lot.step(story.number("dip-2")).running


def test_skipping_a_dip_skips_its_whole_coat():
    story = Story().up_to("dip-3")
    assert story.lot.coats(0) == 3
    lot = story.mark(Act.SKIP, "dip-3", note="stiff enough")
    numbers = [story.number(slug) for slug in ("dip-3", "spin-3", "dry-3")]
    assert [lot.step(number).skipped for number in numbers] == ["stiff enough"] * 3
    assert lot.coats(0) == 2
    cure = cure_of(lot)
    assert cure is not None
    assert cure.fully_dry == lot.step(story.number("dry-2")).end


def test_a_drying_that_a_cure_counts_from_is_not_skipped():
    """Else the cure would count from the coat before, with wet cloth on the line."""
    story = Story().up_to("dry-3")
    refused = story.refusal(Act.SKIP, "dry-3")
    assert "mark it dry" in str(refused)
    assert cure_of(story.lot) is None


def test_drying_may_be_skipped_where_no_cure_follows():
    story = Story(a_method(a_step("wash"), a_step("dry", StepKind.DRY), a_step("dye")))
    story.mark(Act.START, "wash")
    story.after(hours=2).mark(Act.END, "wash")
    lot = story.mark(Act.SKIP, "dry", note="dyed wet")
    assert lot.state_of(lot.step(3)) is StepState.OPEN


# -- refused, in one table -----------------------------------------------------------------


def beans() -> Story:
    story = Story()
    story.mark(Act.START, 1)
    return story


def used() -> Story:
    story = cured()
    story.after(days=10).mark(Act.USE, note="painted")
    return story


def stopped() -> Story:
    story = beans()
    story.mark(Act.STOP)
    return story


def voided() -> Story:
    story = Story()
    story.mark(Act.VOID)
    return story


def going_on() -> Story:
    story = cured()
    story.after(days=90).go_on(PAINTED)
    story.mark(Act.START, "bath")
    return story


REFUSED = [
    (beans, Act.START, 1, {}, "runs already"),
    (beans, Act.START, None, {}, "which step"),
    (beans, Act.END, 99, {}, "no step 99"),
    (beans, Act.END, 0, {}, "no step 0"),
    (beans, Act.END, 1, {"at": NINE - MINUTE}, "before it began"),
    (beans, Act.TEND, 1, {"at": NINE - MINUTE}, "before Bean soak began"),
    (beans, Act.TEND, 2, {}, "has not begun"),
    (beans, Act.DRY, 1, {}, "not a drying step"),
    (beans, Act.DAMP, 1, {}, "not a drying step"),
    (beans, Act.DAMP, "dry-1", {}, "has not begun"),
    (beans, Act.START, "cure", {}, "begins by itself"),
    (beans, Act.END, "cure", {}, "not dry yet"),
    (beans, Act.SKIP, "cure", {}, "not skipped"),
    (beans, Act.REPEAT, "cure", {}, "not repeated"),
    (beans, Act.REPEAT, None, {}, "which step"),
    (beans, Act.USE, None, {}, "no cure running"),
    (beans, Act.NOTE, 99, {}, "no step 99"),
    (beans, Act.NEW, None, {}, "no act"),
    (beans, Act.MILK_NEW, None, {}, "no act"),
    (drying, Act.DAMP, "dry-1", {"at": NINE}, "not begun by then"),
    (drying, Act.DRY, "dry-1", {"at": NINE}, "before it began"),
    (drying, Act.START, 1, {}, "done already"),
    (drying, Act.END, 1, {}, "done already"),
    (drying, Act.TEND, 1, {}, "done already"),
    (drying, Act.SKIP, 1, {}, "done already"),
    (drying, Act.PUTOFF, 1, {"data": {"until": NINE.isoformat()}}, "done already"),
    (drying, Act.PLAN, 1, {"data": {"planned": NINE.isoformat()}}, "done already"),
    (cured, Act.USE, None, {"at": NINE}, "not dry by then"),
    (used, Act.USE, None, {}, "recorded already"),
    (used, Act.START, "dip-4", {}, "skipped already"),
    (used, Act.REPEAT, "dip-3", {}, "cure of 26-001 has ended"),
    (stopped, Act.START, 2, {}, "was stopped"),
    (stopped, Act.END, 1, {}, "was stopped"),
    (stopped, Act.TEND, 1, {}, "was stopped"),
    (stopped, Act.SKIP, 1, {}, "was stopped"),
    (stopped, Act.REPEAT, 1, {}, "was stopped"),
    (stopped, Act.USE, None, {}, "was stopped"),
    (stopped, Act.STOP, None, {}, "was stopped"),
    (stopped, Act.GO_ON, None, {"data": {"method": [SCOUR, 1]}}, "was stopped"),
    (voided, Act.START, 1, {}, "was voided"),
    (voided, Act.NOTE, None, {}, "was voided"),
    (voided, Act.SET, None, {"data": {"name": "x"}}, "was voided"),
    (voided, Act.GO_ON, None, {"data": {"method": [SCOUR, 1]}}, "was voided"),
    (going_on, Act.REPEAT, "dip-3", {}, "can no longer be repeated"),
    (going_on, Act.START, "dip-4", {}, "cure of 26-001 has ended"),
    (going_on, Act.END, "dip-4", {}, "cure of 26-001 has ended"),
    (beans, Act.GO_ON, None, {"data": {"method": ["no-such", 1]}}, "no method 'no-such'"),
    (beans, Act.GO_ON, None, {"data": {"method": [LONG, 7]}}, "version 7"),
    (beans, Act.SPLIT_OFF, None, {"data": {"pieces": []}}, "not none and not all"),
    (beans, Act.SPLIT_OFF, None, {"data": {"pieces": [1, 2]}}, "not none and not all"),
]


@pytest.mark.parametrize(
    ("told", "act", "step", "rest", "words"),
    REFUSED,
    ids=[f"{row[0].__name__}-{row[1].value}-{row[2]}-{row[4][:12]}" for row in REFUSED],
)
def test_what_makes_no_sense_is_refused_in_a_sentence(told, act, step, rest, words):
    story = told()
    refused = story.refusal(act, step, **rest)
    assert words in str(refused)
    assert str(refused).endswith((".", "?"))


def test_only_a_first_entry_makes_a_lot():
    with pytest.raises(Refusal, match="no such lot"):
        replay([], shipped())
    lot = Story().lot
    note = Entry("26-001", Act.MILK_SET, NINE, NINE, "UTC", 2)
    with pytest.raises(Refusal, match="no act"):
        apply(lot, note, shipped())


def test_the_entry_that_stands_in_the_way_is_named():
    story = beans()
    story.after(hours=12).mark(Act.END, 1)
    entries = [replace(entry, at=NINE + 13 * HOUR) if entry.number == 2 else entry
               for entry in story.entries]  # fmt: skip
    with pytest.raises(StandsOn, match=r"Entry 3 \(end\) stands on it") as raised:
        replay(entries, story.book)
    assert raised.value.entry.number == 3


# -- cure, coats, use ----------------------------------------------------------------------


def test_the_cure_begins_after_the_third_coat_though_the_fourth_is_open():
    story = cured()
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.running
    assert cure.fully_dry == story.at == story.lot.step(story.number("dry-3")).end
    assert story.lot.state_of(story.lot.step(story.number("dip-4"))) is StepState.OPEN
    assert story.lot.state(story.at) is LotState.CURING
    assert story.lot.coats(0) == 3


def test_the_marks_of_a_cure_count_days_of_24_hours_from_fully_dry():
    """Common practice, no source: painting to day 14, an immersion bath from day 90."""
    story = cured()
    cure = cure_of(story.lot)
    assert cure is not None
    dry = cure.fully_dry
    found = {mark.kind: mark.at - dry for mark in cure.marks}
    assert found == {"paint": 14 * DAY, "resists": 14 * DAY, "ready": 90 * DAY}
    assert story.lot.state(dry + 90 * DAY - MINUTE) is LotState.CURING
    assert story.lot.state(dry + 90 * DAY) is LotState.READY


def test_taking_the_fourth_coat_voids_the_marks_and_starts_them_again():
    story = cured()
    first = cure_of(story.lot)
    assert first is not None
    lot = story.after(days=1).mark(Act.START, "dip-4")
    assert cure_of(lot) is None
    assert lot.step(story.number("cure")).start is None
    assert lot.state(story.at) is LotState.IN_WORK
    assert lot.coats(0) == 4
    story.after(minutes=1).mark(Act.END, "dip-4")
    story.after(minutes=5).mark(Act.END, "spin-4")
    lot = story.after(hours=9).mark(Act.DRY, "dry-4")
    again = cure_of(lot)
    assert again is not None
    assert again.fully_dry == story.at > first.fully_dry
    assert lot.step(story.number("cure")).start == story.at


def test_a_repeated_coat_gets_the_next_free_numbers_and_stands_before_the_cure():
    story = cured()
    numbers = [step.number for step in story.lot.steps]
    lot = story.mark(Act.REPEAT, "dip-3")
    new = [step for step in lot.steps if step.number not in numbers]
    top = max(numbers)
    assert [step.number for step in new] == [top + 1, top + 2, top + 3]
    assert [step.slug for step in new] == ["dip-5", "spin-5", "dry-5"]
    assert {step.coat for step in new} == {5}
    assert not any(step.optional for step in new)
    slugs = [step.slug for step in lot.steps]
    assert len(set(slugs)) == len(slugs)
    places = [lot.place_of(step.number) for step in new]
    assert places == [lot.place_of(story.number("dry-4")) + 1 + index for index in range(3)]
    assert lot.place_of(story.number("cure")) == places[-1] + 1
    assert [step.number for step in lot.steps if step.number in numbers] == numbers
    assert cure_of(lot) is None
    assert lot.state_of(new[0]) is StepState.OPEN


def test_a_coat_may_be_repeated_twice_and_by_any_of_its_steps():
    story = cured()
    story.mark(Act.REPEAT, "spin-3")
    lot = story.mark(Act.REPEAT, "dry-5")
    slugs = [step.slug for step in lot.steps]
    assert slugs[-4:] == ["dip-6", "spin-6", "dry-6", "cure"]
    assert len(set(slugs)) == len(slugs)


def test_steps_of_one_kind_in_a_coat_keep_names_of_their_own():
    twice = a_method(
        *(a_step(slug, StepKind.HAND, coat=1) for slug in ("left", "right")),
        a_step("dry-1", StepKind.DRY, coat=1),
    )
    story = Story(twice)
    lot = story.mark(Act.REPEAT, "left")
    slugs = [step.slug for step in lot.steps]
    assert len(slugs) == 6
    assert len(set(slugs)) == 6


def test_a_repeated_step_that_is_no_coat_stands_right_behind_itself():
    story = Story().up_to("first-soak")
    lot = story.mark(Act.REPEAT, "blend")
    again = lot.steps[lot.place_of(2) + 1]
    assert (again.slug, again.number) == ("blend-again-2", max(s.number for s in lot.steps))
    lot = story.mark(Act.REPEAT, "blend")
    assert len({step.slug for step in lot.steps}) == len(lot.steps)


def test_use_freezes_the_age_and_ends_the_cure():
    story = cured()
    dry = story.at
    lot = story.after(days=10).mark(Act.USE, note="painted")
    cure = cure_of(lot)
    assert cure is not None
    assert not cure.running
    assert cure.age(dry + 200 * DAY) == 10 * DAY
    assert lot.use is not None
    assert (lot.use.at, lot.use.note) == (dry + 10 * DAY, "painted")
    assert lot.step(story.number("dip-4")).skipped is not None
    assert lot.state(dry + 200 * DAY) is LotState.USED


@pytest.mark.parametrize("act", [Act.START, Act.END])
def test_going_on_to_a_later_method_ends_the_cure_with_its_age_frozen(act):
    story = cured()
    dry = story.at
    lot = story.after(days=91).go_on(PAINTED)
    cure = cure_of(lot)
    assert cure is not None
    assert cure.running, "joining alone ends nothing"
    assert lot.state(story.at) is LotState.READY
    lot = story.after(days=1).mark(act, "bath")
    cure = cure_of(lot)
    assert cure is not None
    assert cure.ended == dry + 92 * DAY
    assert cure.age(dry + 500 * DAY) == 92 * DAY


def test_step_numbers_run_on_over_methods_and_versions_are_kept():
    story = Story(SCOUR)
    first = len(story.lot.steps)
    lot = story.go_on(LONG)
    assert [step.number for step in lot.steps] == list(range(1, len(lot.steps) + 1))
    assert [method.key for method in lot.methods] == [(SCOUR, 1), (LONG, 1)]
    assert {step.join for step in lot.steps[first:]} == {1}


def test_alkali_after_soy_is_asked_about():
    """Common practice, no source: alkali undoes the binder."""
    alkali = a_method(a_step("wash"), slug="alkaline-wash", brings=("alkali",))
    story = cured()
    story.book[alkali.key] = alkali
    asked = story.refusal(Act.GO_ON, data={"method": list(alkali.key)})
    assert len(story.lot.methods) == 1
    assert isinstance(asked, Question)
    assert "alkali" in str(asked)
    assert len(story.go_on(alkali, sure=True).methods) == 2


def test_the_age_of_a_cure_across_clock_changes_is_days_of_24_hours():
    """From 20 October to 20 November London's clock falls back; ten days are 240 hours."""
    begun = datetime(2026, 10, 20, 8, tzinfo=UTC)
    one = a_method(*coat(1), a_step("cure", StepKind.CURE), cure=a_cure(default_days=10))
    story = Story(one, at=begun).up_to("cure")
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.ready_at - cure.fully_dry == 240 * HOUR
    assert cure.age(cure.fully_dry + 30 * DAY) == timedelta(hours=720)


def test_correcting_when_the_cloth_was_dry_moves_the_cure():
    story = cured()
    last = max(entry.number for entry in story.entries if entry.act is Act.DRY)
    earlier = story.at - 2 * HOUR
    story._add(Entry("26-001", Act.CORRECT, earlier, story.at, "Europe/London",
                     data={"at": True}, target=last))  # fmt: skip
    cure = cure_of(story.lot)
    assert cure is not None
    assert cure.fully_dry == earlier
    assert story.lot.step(story.number("cure")).start == earlier


# -- splitting and changing ----------------------------------------------------------------


def test_a_split_shares_a_weight_off_the_scale_by_the_pieces_own():
    story = Story(grams=700.0)
    lot = story.mark(Act.SPLIT_OFF, data={"pieces": [2], "child": "26-002"})
    assert [piece.number for piece in lot.pieces] == [1]
    assert lot.grams == pytest.approx(700.0 * 150 / 350)
    assert lot.children == ("26-002",)


def test_a_weight_worked_out_from_the_pieces_follows_them():
    lot = Story().mark(Act.SPLIT_OFF, data={"pieces": [1], "child": "26-002"})
    assert lot.grams == 200.0
    assert lot.given_grams is None


def test_pieces_of_unknown_weight_share_alike():
    story = Story(pieces=[Piece(1, "linen"), Piece(2, "linen"), Piece(3, "linen")], grams=300.0)
    lot = story.mark(Act.SPLIT_OFF, data={"pieces": [1]})
    assert lot.grams == pytest.approx(200.0)


def test_the_amounts_of_steps_already_begun_stay_and_the_others_follow():
    story = beans()
    lot = story.mark(Act.SET, data={"grams": 400.0})
    assert lot.step(1).grams_used == 350.0
    assert lot.grams == 400.0
    story.up_to("first-soak")
    assert story.mark(Act.START, "first-soak").step(4).grams_used == 400.0


def test_changed_amounts_leave_those_already_used():
    story = Story(amounts={"beans": 25.0})
    story.mark(Act.START, 1)
    lot = story.mark(Act.SET, data={"amounts": {"beans": 20.0}})
    assert lot.step(1).amounts_used == {"beans": 25.0}
    assert lot.amounts_changed == {"beans": 20.0}


def test_a_step_marked_as_done_without_a_start_has_used_its_amounts_too():
    story = Story()
    story.mark(Act.START, "first-soak", sure=True)
    lot = story.mark(Act.SET, data={"grams": 400.0})
    assert [step.grams_used for step in lot.steps[:4]] == [350.0] * 4
    assert lot.steps[4].grams_used is None


def test_a_change_of_amounts_keeps_the_others():
    story = Story(amounts={"beans": 25.0})
    lot = story.mark(Act.SET, data={"amounts": {"milk": 80.0}})
    assert lot.amounts_changed == {"beans": 25.0, "milk": 80.0}


def test_a_lot_without_a_cure_is_ready_once_all_is_done():
    story = Story(a_method(a_step("wash", lasts=spread(1, 2, 3)), slug="wash"))
    story.mark(Act.START, 1)
    assert story.after(hours=2).mark(Act.END, 1).state(story.at) is LotState.READY
