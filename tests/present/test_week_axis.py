"""The week under a hand: what is held, what it makes of it; bars never overlap or leave the day."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.present.week_axis import (
    STEP,
    Axis,
    Bars,
    Grip,
    drawn,
    pulled,
    room_for_one,
    snapped,
)

AXIS = Axis(20, 1440)
DAY: Bars = ((540, 750), (810, 1020))


def test_places_and_minutes_are_one_another_and_stay_in_the_day() -> None:
    assert AXIS.x(540) == 560
    assert AXIS.minute(560) == 540
    assert (AXIS.minute(-50), AXIS.minute(9999)) == (0, 1440)
    assert [snapped(minute) for minute in (7, 8, 1439)] == [0, 15, 1440]


@pytest.mark.parametrize(
    ("x", "held"),
    [
        (555, (0, Grip.START)),
        (566, (0, Grip.START)),
        (600, (0, Grip.WHOLE)),
        (772, (0, Grip.END)),
        (830, (1, Grip.START)),
        (800, None),
        (30, None),
    ],
)
def test_a_hand_holds_ends_and_bars(x: float, held: object) -> None:
    assert AXIS.held(DAY, x, 7) == held


def test_the_middle_of_a_bar_shorter_than_a_finger_moves_it() -> None:
    assert AXIS.held(((600, 615),), 627.5, 20) == (0, Grip.WHOLE)


def test_a_bar_stops_at_its_neighbour_and_at_the_days_ends() -> None:
    assert pulled(DAY, 0, Grip.END, 300) == ((540, 810), (810, 1020))
    assert pulled(DAY, 1, Grip.WHOLE, -300) == ((540, 750), (750, 960))
    assert pulled(DAY, 0, Grip.WHOLE, -9999) == ((0, 210), (810, 1020))
    assert pulled(DAY, 1, Grip.START, 9999) == ((540, 750), (1005, 1020))


def test_a_new_bar_is_cut_to_the_room_there_is() -> None:
    assert drawn(DAY, 780, 600) == ((540, 750), (750, 780), (810, 1020))
    assert drawn((), 1020, 540) == ((540, 1020),)
    assert drawn((), 540, 540) == ()
    assert drawn(DAY, 600, 700) == DAY


def test_a_bar_made_by_a_key_lies_where_it_usually_does_or_where_there_is_room() -> None:
    assert room_for_one((), (540, 720)) == (540, 720)
    assert room_for_one(((480, 600),), (540, 720)) == (930, 1110)
    assert room_for_one(((0, 1440),), (540, 720)) is None


BARS = st.lists(st.integers(0, 96), min_size=0, max_size=8, unique=True).map(
    lambda ends: tuple(
        (a * STEP, b * STEP) for a, b in zip(sorted(ends)[::2], sorted(ends)[1::2], strict=False)
    )
)


@given(BARS, st.integers(0, 3), st.sampled_from(Grip), st.integers(-2000, 2000))
def test_whatever_a_hand_does_bars_keep_apart(bars: Bars, place: int, grip: Grip, by: int) -> None:
    made = pulled(bars, place, grip, by) if place < len(bars) else drawn(bars, place, by)
    assert len(made) in {len(bars), len(bars) + 1}
    for start, end in made:
        assert 0 <= start < end <= 1440
    for one, other in pairwise(made):
        assert one[1] <= other[0]
