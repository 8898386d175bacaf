"""The map of moments to pixels: one x for each moment, and back."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.present.pleats import Pleat, pleats, toggled
from studio_log.present.time_scale import (
    LEAST_ZOOM,
    MOST_ZOOM,
    TimeScale,
    flat_parts,
    time_scale,
    zoomed_about,
)

START = datetime(2026, 6, 1, tzinfo=UTC)
HOUR, DAY = timedelta(hours=1), timedelta(days=1)
MONTH = 30 * 24 * 60


@st.composite
def scales(draw: st.DrawFn) -> TimeScale:
    hands = draw(st.lists(st.integers(0, MONTH), max_size=12))
    now = START + timedelta(minutes=draw(st.integers(0, MONTH)))
    found = pleats([START + timedelta(minutes=m) for m in hands], now)
    opened = frozenset(p.key for p in found if draw(st.booleans()))
    found = pleats([START + timedelta(minutes=m) for m in hands], now, opened)
    zoom = draw(st.floats(LEAST_ZOOM, MOST_ZOOM))
    width = draw(st.floats(20, 200))
    return time_scale(START - DAY, START + 32 * DAY, zoom, found, pleat_width=width)


instants = st.integers(-3 * 24 * 60, MONTH + 4 * 24 * 60).map(
    lambda m: START + timedelta(minutes=m)
)


def two_pleats() -> TimeScale:
    folded = (Pleat(START + DAY, START + 18 * DAY), Pleat(START + 19 * DAY, START + 29 * DAY))
    return time_scale(START, START + 30 * DAY, 10.0, folded, pleat_width=50.0)


def test_days_without_hands_take_the_width_of_their_pleats_only() -> None:
    scale = two_pleats()
    # Flat: 1 + 1 + 1 days at 240 px; folded: twice 50 px.
    assert scale.width == pytest.approx(3 * 240 + 2 * 50)
    assert [(f.left, f.right) for f in scale.folds] == [(240, 290), (530, 580)]
    assert scale.x(START + DAY + timedelta(days=8.5)) == pytest.approx(240 + 25)


def test_an_opened_pleat_lies_flat() -> None:
    folded = pleats([START, START + 10 * DAY], START - 2 * DAY)
    opened = pleats([START, START + 10 * DAY], START - 2 * DAY, toggled(frozenset(), folded[-1]))
    scale = time_scale(START - 3 * DAY, START + 11 * DAY, 10.0, opened)
    assert scale.x(START + 9 * DAY) - scale.x(START + DAY) == pytest.approx(8 * 240)


def test_a_pleat_is_never_wider_than_the_stretch_it_folds() -> None:
    folded = (Pleat(START + DAY, START + 3 * DAY),)
    scale = time_scale(START, START + 4 * DAY, 0.5, folded, pleat_width=50.0)
    assert scale.folds == ()
    assert scale.width == pytest.approx(4 * 24 * 0.5)


@given(scales(), instants, instants)
def test_later_is_always_further_right(scale: TimeScale, one: datetime, other: datetime) -> None:
    early, late = sorted((one, other))
    if early == late:
        assert scale.x(early) == scale.x(late)
    else:
        assert scale.x(early) < scale.x(late)


@given(scales(), instants)
def test_there_and_back_is_the_same_moment(scale: TimeScale, moment: datetime) -> None:
    assert abs(scale.moment(scale.x(moment)) - moment) <= timedelta(milliseconds=1)


@given(scales(), st.floats(-500, 50_000))
def test_back_and_there_is_the_same_pixel(scale: TimeScale, x: float) -> None:
    assert scale.x(scale.moment(x)) == pytest.approx(x, abs=0.01)


@given(scales(), st.floats(0, 20_000), st.floats(0.2, 5))
def test_zoom_keeps_the_moment_under_the_pointer(scale: TimeScale, x: float, factor: float) -> None:
    under = scale.moment(x)
    nearer, there = zoomed_about(scale, factor, x)
    assert abs(nearer.moment(there) - under) <= timedelta(milliseconds=1)
    assert LEAST_ZOOM <= nearer.zoom <= MOST_ZOOM


def test_flat_parts_leave_out_the_folds() -> None:
    assert flat_parts(two_pleats(), 200, 600) == [(200, 240), (290, 530), (580, 600)]
    assert flat_parts(two_pleats(), 250, 280) == []
    assert flat_parts(two_pleats(), 250, 300) == [(290, 300)]


def test_the_fold_under_the_pointer_is_found() -> None:
    scale = two_pleats()
    assert scale.fold_at(239) is None
    found = scale.fold_at(265)
    assert found is not None
    assert found.pleat.days == 17
