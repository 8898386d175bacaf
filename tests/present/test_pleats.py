"""What needs nobody folds up; what is near a hand or near now lies flat."""

from datetime import UTC, datetime, timedelta
from itertools import pairwise

from hypothesis import example, given
from hypothesis import strategies as st

from studio_log.present.pleats import (
    FOLD_OVER,
    HEM,
    KEEP_AROUND_NOW,
    Pleat,
    days_in_words,
    pleats,
    toggled,
)

NOW = datetime(2026, 6, 9, 11, 8, tzinfo=UTC)
HOUR, DAY = timedelta(hours=1), timedelta(days=1)

minutes = st.integers(min_value=-200 * 24 * 60, max_value=200 * 24 * 60)
moments = st.lists(minutes.map(lambda m: NOW + timedelta(minutes=m)), max_size=30)


def test_a_cure_of_ninety_days_folds_between_now_and_its_end() -> None:
    ready = NOW + 90 * DAY
    (pleat,) = pleats([NOW + HOUR, ready], NOW)
    assert pleat.start == NOW + KEEP_AROUND_NOW
    assert pleat.end == ready - HEM
    assert pleat.label == "89 d"
    assert days_in_words(pleat).startswith("89 days in which nobody is needed.")


def test_a_rest_of_exactly_a_day_and_a_half_is_not_folded() -> None:
    first = NOW + 2 * DAY
    assert timedelta(hours=36) == FOLD_OVER
    flat = [p for p in pleats([first, first + FOLD_OVER], NOW) if p.start > first]
    folded = [
        p for p in pleats([first, first + FOLD_OVER + timedelta(minutes=1)], NOW) if p.start > first
    ]
    assert flat == []
    assert len(folded) == 1


def test_now_in_the_middle_of_a_cure_parts_it_into_two_pleats() -> None:
    before, after = pleats([NOW - 61 * DAY, NOW + 29 * DAY], NOW)
    assert (before.end, after.start) == (NOW - KEEP_AROUND_NOW, NOW + KEEP_AROUND_NOW)
    assert (before.days, after.days) == (60, 28)


def test_without_any_hand_nothing_folds() -> None:
    assert pleats([], NOW) == ()
    assert pleats([NOW], NOW) == ()


def test_an_opened_pleat_stays_open_when_its_ends_move() -> None:
    ready = NOW + 20 * DAY
    (pleat,) = pleats([ready], NOW)
    opened = toggled(frozenset(), pleat)
    (moved,) = pleats([ready + 3 * HOUR], NOW + HOUR, opened)
    assert moved.opened
    assert toggled(opened, moved) == frozenset()
    assert "fold it" in days_in_words(moved)


def test_opening_one_pleat_leaves_the_other_folded() -> None:
    before, after = pleats([NOW - 61 * DAY, NOW + 29 * DAY], NOW)
    again = pleats([NOW - 61 * DAY, NOW + 29 * DAY], NOW, toggled(frozenset(), after))
    assert [p.opened for p in again] == [False, True]
    assert again[0] == before


@example([NOW + timedelta(minutes=720), NOW + timedelta(minutes=2881)])
@given(moments)
def test_pleats_are_ordered_apart_and_hold_no_hand_nor_the_hours_around_now(
    hands: list[datetime],
) -> None:
    found = pleats(hands, NOW)
    for one, next_one in pairwise(found):
        assert one.end < next_one.start
    for pleat in found:
        assert pleat.start < pleat.end
        assert not any(pleat.holds(hand) for hand in hands)
        assert pleat.end <= NOW - KEEP_AROUND_NOW or pleat.start >= NOW + KEEP_AROUND_NOW


@given(moments)
def test_every_long_rest_between_hands_away_from_now_is_folded(hands: list[datetime]) -> None:
    found = pleats(hands, NOW)
    ordered = sorted(hands)
    for one, other in pairwise(ordered):
        far = other <= NOW - KEEP_AROUND_NOW or one >= NOW + KEEP_AROUND_NOW
        if far and other - one > FOLD_OVER:
            middle = one + (other - one) / 2
            assert any(pleat.holds(middle) for pleat in found)


def test_a_pleat_never_counts_less_than_one_day() -> None:
    assert Pleat(NOW, NOW + 2 * HOUR).label == "1 d"
