"""Where the bars, stitches, drops, marks and words of a lane lie, and what is under the pointer."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.methods import StepKind
from studio_log.present.lanes import Bar, Drop, Lane, Mark, Night, Stitch
from studio_log.present.pleats import Pleat
from studio_log.present.text_room import fitted, free_parts, text_in
from studio_log.present.time_scale import time_scale
from studio_log.present.timeline_hits import hit_lane
from studio_log.present.timeline_layout import (
    MOST_KEPT,
    LaneLayout,
    RowSizes,
    Sheet,
    kinds_of,
    lay_out_lane,
    night_bands,
)

NOW = datetime(2026, 6, 9, 12, tzinfo=UTC)
HOUR, DAY, MINUTE = timedelta(hours=1), timedelta(days=1), timedelta(minutes=1)
SIZES = RowSizes()
BAR_Y = SIZES.bar_top + SIZES.bar / 2


def measure(text: str) -> float:
    return 6.0 * len(text)


def sheet(
    zoom: float = 20.0,
    window: tuple[float, float] = (0.0, 1000.0),
    pleats: tuple[Pleat, ...] = (),
) -> Sheet:
    # x = 0 is noon of the 8th, so that now lies at 24 hours.
    scale = time_scale(NOW - DAY, NOW + 40 * DAY, zoom, pleats)
    return Sheet(scale, window, NOW, SIZES, measure, measure)


def a_soak(**changes: object) -> Bar:
    soak = Bar(
        step=3,
        kind=StepKind.SOAK,
        title="First soak",
        start=NOW - 4 * HOUR,
        end=NOW + 10 * HOUR,
        state="running",
        soft_from=NOW + 6 * HOUR,
        soft_until=NOW + 14 * HOUR,
        story="First soak of 26-031 since 08:00.",
    )
    return replace(soak, **changes)  # type: ignore[arg-type]


def laid(*bars: Bar, on: Sheet | None = None, **more: object) -> LaneLayout:
    lane = Lane("26-031", "Linen runners", bars=bars, **more)  # type: ignore[arg-type]
    return lay_out_lane(lane, on or sheet())


def test_a_running_soak_is_dyed_up_to_now_and_hatched_from_earliest_to_latest() -> None:
    (shape,) = laid(a_soak()).bars
    # 20 px an hour: start at 20 h, now 24 h, earliest 30 h, aim 34 h, latest 38 h.
    assert (shape.left, shape.right) == pytest.approx((400, 600))
    assert shape.dyed_to == pytest.approx(480)
    assert shape.soft == pytest.approx((600, 760))
    assert shape.aim == pytest.approx(680)
    assert shape.reach == pytest.approx((400, 760))


def test_a_soak_past_its_earliest_end_grows_into_its_soft_end() -> None:
    (shape,) = laid(a_soak(soft_from=NOW - HOUR)).bars
    assert shape.right == pytest.approx(480)
    assert shape.soft == pytest.approx((480, 760))


def test_a_soak_past_its_latest_end_has_no_soft_end_left() -> None:
    (shape,) = laid(a_soak(state="broken", end=NOW, soft_from=NOW - 3 * HOUR, soft_until=NOW)).bars
    assert shape.soft is None
    assert shape.right == shape.dyed_to == pytest.approx(480)


def test_done_is_dyed_whole_and_ahead_not_at_all() -> None:
    done, ahead = laid(
        a_soak(state="done", start=NOW - 9 * HOUR, end=NOW - HOUR, soft_from=None),
        a_soak(state="ahead", start=NOW + HOUR, soft_from=None),
    ).bars
    assert done.dyed_to == done.right
    assert ahead.dyed_to == ahead.left


def test_the_planned_line_shows_only_where_it_differs() -> None:
    as_planned = (NOW - 4 * HOUR, NOW + 10 * HOUR)
    late = (NOW - 6 * HOUR, NOW + 8 * HOUR)
    assert laid(a_soak(planned=as_planned)).bars[0].planned is None
    assert laid(a_soak(planned=late)).bars[0].planned == pytest.approx((360, 640))


def test_bars_outside_the_window_are_left_out() -> None:
    bars = [
        a_soak(step=n, start=NOW + n * DAY, end=NOW + n * DAY + 9 * HOUR, soft_from=None)
        for n in range(30)
    ]
    on = sheet(window=(24 * 20 * 10.0, 24 * 20 * 12.0))
    # Day 9 begins 10 days after x = 0; day 11 begins exactly at the window's right edge.
    assert [shape.bar.step for shape in laid(*bars, on=on).bars] == [9, 10, 11]


def test_a_long_cure_is_seen_though_both_its_ends_lie_outside() -> None:
    cure = a_soak(
        kind=StepKind.CURE, title="Cure", start=NOW - DAY, end=NOW + 30 * DAY, soft_from=None
    )
    early = a_soak(step=2, start=NOW - 12 * HOUR, end=NOW, soft_until=None)
    (shape,) = laid(cure, early, on=sheet(window=(4000, 5000))).bars
    assert shape.bar is cure
    assert shape.cut_left
    assert shape.label is not None
    assert 4000 <= shape.label.x <= 4050


def test_bars_too_narrow_to_tell_apart_are_merged_and_say_so() -> None:
    spins = [
        a_soak(
            step=n,
            title=f"Spin {n}",
            kind=StepKind.SPIN,
            state="done",
            start=NOW + n * 3 * MINUTE,
            end=NOW + (n * 3 + 2) * MINUTE,
            soft_from=None,
        )
        for n in range(3)
    ]
    (shape,) = laid(*spins, on=sheet(zoom=5.0)).bars
    assert len(shape.merged) == 3
    assert shape.story.startswith("3 short steps: Spin 0, Spin 1, Spin 2.")
    assert shape.right - shape.left >= 2
    assert len(laid(*spins, on=sheet(zoom=600.0, window=(14000, 15000))).bars) == 3


def test_words_keep_clear_of_the_now_line_drops_and_pleats() -> None:
    fold = Pleat(NOW + 30 * HOUR, NOW + 300 * HOUR)
    on = sheet(pleats=(fold,))
    cure = a_soak(
        kind=StepKind.CURE,
        title="Curing, day 12 of 90",
        start=NOW - 4 * HOUR,
        end=NOW + 20 * DAY,
        soft_from=None,
        soft_until=None,
    )
    layout = laid(cure, on=on, drops=(Drop(NOW + HOUR, False, 4),))
    (shape,) = layout.bars
    assert shape.label is not None
    assert shape.label.text == "Curing, day 12 of 90"
    words = (shape.label.x, shape.label.x + shape.label.width)
    for one, other in (*on.folds, on.now_band, (494.0, 506.0)):
        assert words[1] <= one or words[0] >= other


def test_where_the_title_does_not_fit_the_small_shape_alone_is_left() -> None:
    short = a_soak(start=NOW + HOUR, end=NOW + 2 * HOUR, state="ahead", soft_from=None)
    tiny = a_soak(start=NOW + HOUR, end=NOW + 1.2 * HOUR, state="ahead", soft_from=None)
    (shape,) = laid(short).bars
    assert shape.label is None
    assert shape.glyph_at is not None
    assert 500 <= shape.glyph_at <= 520 - SIZES.glyph
    assert laid(tiny).bars[0].glyph_at is None


def test_stitches_that_would_lie_on_one_another_are_left_out() -> None:
    stirs = tuple(Stitch(NOW + n * 10 * MINUTE, done=n < 3) for n in range(60))
    shown = laid(stitches=stirs).stitches
    assert 10 < len(shown) < 60
    for one, other in pairwise(shown):
        assert other.x - one.x >= SIZES.stitch


def test_the_words_of_a_mark_end_before_the_next_mark() -> None:
    marks = (
        Mark(NOW + 2 * HOUR, "best for painting until 11 June", "paint"),
        Mark(NOW + 9 * HOUR, "ready", "ready"),
    )
    first, second = laid(marks=marks).marks
    assert first.label is not None
    assert first.label.text.endswith("…")
    assert first.label.x + first.label.width < second.x - SIZES.mark / 2
    assert second.label is not None
    assert second.label.text == "ready"


def test_the_words_of_a_mark_stand_left_of_it_where_only_there_is_room() -> None:
    mark = Mark(NOW + 20 * HOUR, "resists paint from here", "resists")
    (shape,) = laid(marks=(mark,), on=sheet(window=(500, 950))).marks
    assert shape.label is not None
    assert shape.label.text == "resists paint from here"
    assert shape.label.x + shape.label.width < shape.x


def test_a_title_too_long_beside_now_crosses_it_whole() -> None:
    (shape,) = laid(a_soak(title="First soak 10–18 h, cool")).bars
    # 144 px of text and 17 of shape; the body is 80 px dyed and 120 px pale.
    assert shape.label is not None
    assert shape.label.text == "First soak 10–18 h, cool"
    assert shape.label.x < shape.dyed_to < shape.label.x + shape.label.width


def test_the_pointer_finds_drop_before_bar_and_stitch_below_it() -> None:
    on = sheet()
    layout = laid(
        a_soak(),
        on=on,
        drops=(Drop(NOW + 2 * HOUR, False, 7, "Second dip, tomorrow 14:00."),),
        stitches=(Stitch(NOW, True, "Stirred at 12:00."),),
        marks=(Mark(NOW + 20 * HOUR, "ready", "ready", "Ready for immersion."),),
    )
    drop = hit_lane(layout, on, 521, BAR_Y)
    assert (drop.code, drop.part, drop.step) == ("26-031", "drop", 7)
    assert drop.story == "Second dip, tomorrow 14:00."
    bar = hit_lane(layout, on, 420, BAR_Y)
    assert (bar.part, bar.step, bar.story) == ("bar", 3, "First soak of 26-031 since 08:00.")
    assert hit_lane(layout, on, 700, BAR_Y).part == "bar"  # its soft end
    strip = SIZES.strip_top + SIZES.strip / 2
    assert hit_lane(layout, on, 481, strip).story == "Stirred at 12:00."
    assert hit_lane(layout, on, 881, strip).story == "Ready for immersion."
    lane = hit_lane(layout, on, 100, BAR_Y)
    assert (lane.part, lane.step) == ("lane", None)
    assert lane.story == "26-031 Linen runners. Now: First soak."


def test_nights_are_cut_to_the_window_and_hidden_in_pleats() -> None:
    nights = [Night(NOW + n * DAY + 10 * HOUR, NOW + n * DAY + 19 * HOUR) for n in range(-5, 40)]
    fold = Pleat(NOW + 12 * HOUR, NOW + 20 * DAY)
    scale = time_scale(NOW - DAY, NOW + 40 * DAY, 20.0, (fold,))
    # The 8th: 10 h to 19 h after x = 0; the 9th: from 34 h, folded from 36 h on.
    assert night_bands(nights, scale, (250, 740)) == [(250, 380), (680, 720)]


def test_the_legend_lists_the_kinds_that_occur() -> None:
    lane = Lane("26-031", "x", bars=(a_soak(kind=StepKind.DRY), a_soak(kind=StepKind.BEANS)))
    dipped = replace(lane, drops=(Drop(NOW, False, 5),))
    assert kinds_of([lane]) == (StepKind.BEANS, StepKind.DRY)
    assert kinds_of([dipped]) == (StepKind.BEANS, StepKind.DRY, StepKind.DIP)


@given(st.text(max_size=40), st.floats(0, 300))
def test_a_fitted_text_fits_and_begins_as_the_whole(text: str, room: float) -> None:
    cut = fitted(text, room, measure)
    assert cut == "" or measure(cut) <= room
    assert cut == text or text.startswith(cut.removesuffix("…"))


spans = st.tuples(st.floats(0, 500), st.floats(0, 500)).map(lambda p: (min(p), max(p)))


@given(spans, st.lists(spans, max_size=8))
def test_free_parts_lie_inside_and_touch_nothing_taken(
    span: tuple[float, float], taken: list[tuple[float, float]]
) -> None:
    parts = free_parts(span, taken)
    for left, right in parts:
        assert span[0] <= left < right <= span[1]
        assert not any(one < right and other > left for one, other in taken if other > one)
    if not taken and span[1] > span[0]:
        assert parts == [span]


def test_a_text_takes_the_first_free_part_that_holds_it_whole() -> None:
    placed = text_in("first soak", (0, 300), [(40, 60), (180, 190)], measure, 5)
    assert placed is not None
    assert (placed.x, placed.width, placed.text) == (65, 60, "first soak")


when = st.integers(-40 * 24, 60 * 24).map(lambda h: NOW + h * HOUR)


@given(
    st.lists(st.tuples(when, st.integers(0, 2000), st.integers(0, 90)), max_size=12),
    st.floats(0.02, 400),
    st.integers(0, 5000),
)
def test_no_words_ever_leave_their_bar(
    steps: list[tuple[datetime, int, int]], zoom: float, left: int
) -> None:
    bars = [
        a_soak(
            step=n,
            start=start,
            end=start + length * HOUR,
            title="First soak 10–18 h",
            soft_from=start + length * HOUR,
            soft_until=start + (length + soft) * HOUR,
        )
        for n, (start, length, soft) in enumerate(sorted(steps))
    ]
    on = sheet(zoom=zoom, window=(left, left + 800))
    for shape in laid(*bars, on=on).bars:
        assert shape.left <= shape.dyed_to <= shape.right
        if shape.label is not None:
            assert max(shape.left, left) <= shape.label.x
            assert shape.label.x + shape.label.width <= shape.right


def test_only_so_many_lanes_are_kept_laid_out_and_the_oldest_goes_first() -> None:
    on = sheet()
    lanes = [Lane(f"26-{n:03d}", "Lot", bars=(a_soak(),)) for n in range(MOST_KEPT + 5)]
    first = lay_out_lane(lanes[0], on)
    for lane in lanes[1:]:
        lay_out_lane(lane, on)
    assert len(on.kept) == MOST_KEPT
    assert id(lanes[4]) not in on.kept
    assert id(lanes[5]) in on.kept
    assert lay_out_lane(lanes[0], on) == first
