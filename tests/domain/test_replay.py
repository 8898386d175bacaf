"""Every act of a lot's journal: what it does, and when it is refused or asked about."""

from datetime import timedelta

import pytest

from studio_log.domain.errors import Question
from studio_log.domain.journal import Act
from studio_log.domain.lots import LotState, StepState, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.pieces import Piece
from tests.support.builders import (
    HOUR,
    MINUTE,
    NINE,
    Story,
    a_method,
    a_step,
    spread,
)


def drying() -> Story:
    """A lot whose first coat hangs since a moment."""
    story = Story().up_to("spin-1")
    story.after(minutes=5).mark(Act.END, "spin-1")
    return story


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
    story = Story()
    story.mark(Act.START, 1)
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
