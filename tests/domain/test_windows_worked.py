"""Windows worked through: common practice, no source, where it speaks of beans and cloth."""

from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.journal import Act
from studio_log.domain.methods import Spread
from studio_log.domain.quiet import QuietHours
from studio_log.domain.windows import SHORT, start_advice, windows_of
from tests.support.builders import (
    DAY,
    HOUR,
    LONDON,
    MINUTE,
    Story,
    a_method,
    a_step,
    spread,
)


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo("Europe/London")).astimezone(UTC)


def beans_from(text: str) -> Story:
    story = Story(at=at(text))
    story.mark(Act.START, "bean-soak")
    return story


def test_beans_in_at_three_are_best_at_seven():
    """Common practice, no source: 15:00 with an aim of 12 h is 03:00; best is 07:00."""
    story = beans_from("2026-06-09 15:00")
    found = windows_of(story.lot, story.at, LONDON)[1]
    assert found.end.earliest == at("2026-06-09 23:00")
    assert found.end.aim == at("2026-06-10 03:00")
    assert found.end.latest == at("2026-06-10 09:00")
    assert found.best_end == at("2026-06-10 07:00")
    assert found.moved.clash is None
    assert found.moved.night is not None


def test_beans_in_at_eight_in_the_evening_stay_at_their_aim():
    story = beans_from("2026-06-09 20:00")
    found = windows_of(story.lot, story.at, LONDON)[1]
    assert found.best_end == found.end.aim == at("2026-06-10 08:00")
    assert found.moved.night is None


def test_beans_whose_aim_is_just_after_bedtime_are_best_before_it():
    story = beans_from("2026-06-09 11:00")
    found = windows_of(story.lot, story.at, LONDON)[1]
    assert found.end.aim == at("2026-06-09 23:00")
    assert found.best_end == at("2026-06-09 21:50")


@pytest.mark.parametrize(
    ("zone", "night_before", "shown"),
    [
        # London: 25 October 2026 has 25 hours, 29 March 23.
        ("Europe/London", "2026-10-24 20:00", "2026-10-25 07:00"),
        ("Europe/London", "2026-03-28 20:00", "2026-03-29 09:00"),
        ("America/Santiago", "2027-04-03 20:00", "2027-04-04 07:00"),
        ("America/Santiago", "2027-09-04 20:00", "2027-09-05 09:00"),
    ],
)
def test_a_soak_over_a_clock_change_lasts_twelve_true_hours(zone, night_before, shown):
    begun = datetime.fromisoformat(night_before).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)
    story = Story(at=begun)
    story.mark(Act.START, "bean-soak")
    found = windows_of(story.lot, begun, QuietHours(time(22), time(6), zone))[1]
    assert found.end.aim - begun == 12 * HOUR
    assert found.best_end == found.end.aim
    there = found.end.aim.astimezone(ZoneInfo(zone))
    assert there.strftime("%Y-%m-%d %H:%M") == shown


def test_a_step_ended_late_moves_all_that_follows():
    story = beans_from("2026-06-09 06:00")
    story.after(hours=12)
    before = windows_of(story.lot, story.at, LONDON)
    story.after(hours=2).mark(Act.END, "bean-soak")
    after = windows_of(story.lot, story.at, LONDON)
    soak = story.number("first-soak")
    assert after[soak].start.aim - before[soak].start.aim == 2 * HOUR
    assert after[soak].best_end > before[soak].best_end


def test_a_passed_limit_is_named_with_how_far():
    story = beans_from("2026-06-09 06:00")
    late = windows_of(story.lot, story.at + 18 * HOUR + 25 * MINUTE, LONDON)[1]
    assert late.broken is not None
    assert (late.broken.step, late.broken.by) == (1, 25 * MINUTE)
    assert late.broken.limit == "Bean soak: no longer than 18 h"
    assert windows_of(story.lot, story.at + 18 * HOUR, LONDON)[1].broken is None


def test_a_passed_gap_is_named_with_how_far():
    story = beans_from("2026-06-09 06:00")
    story.after(hours=12).mark(Act.END, "bean-soak")
    found = windows_of(story.lot, story.at + 3 * HOUR, LONDON)
    blend = found[story.number("blend")].broken
    assert blend is not None
    assert blend.limit == "Blend: within 2 h of draining"
    assert blend.by == HOUR
    others = [one.broken for number, one in found.items() if number != 2]
    assert others == [None] * len(others)


def test_only_one_limit_is_broken_by_a_late_soak():
    story = beans_from("2026-06-09 06:00")
    found = windows_of(story.lot, story.at + 23 * HOUR, LONDON)
    assert [number for number, one in found.items() if one.broken] == [1]


def test_a_moment_the_dyer_set_wins_until_it_is_past():
    story = beans_from("2026-06-09 06:00")
    planned = at("2026-06-09 16:30")
    story.mark(Act.PLAN, "bean-soak", data={"planned": planned.isoformat()})
    assert windows_of(story.lot, story.at, LONDON)[1].best_end == planned
    late = windows_of(story.lot, planned + MINUTE, LONDON)[1]
    assert late.best_end == at("2026-06-09 18:00")


def test_what_happens_overrules_what_was_set():
    story = beans_from("2026-06-09 06:00")
    dip = story.number("dip-2")
    story.mark(Act.PLAN, dip, data={"planned": at("2026-06-12 10:00").isoformat()})
    story.up_to("dip-2").mark(Act.START, dip)
    assert story.lot.step(dip).plan is None


def test_an_optional_coat_nobody_began_holds_nothing_up():
    story = Story().up_to("dip-4")
    found = windows_of(story.lot, story.at, LONDON)
    cure = story.number("cure")
    assert found[cure].best_start == story.at
    assert found[cure].best_end == story.at + 90 * DAY
    assert story.number("dip-4") in found


def test_a_short_step_is_not_moved_out_of_the_night():
    """A spin that runs is watched through, whatever the hour."""
    story = Story(at=at("2026-06-09 06:00")).up_to("spin-1")
    begun = at("2026-06-10 23:30")
    soak = story.number("spin-1")
    story.mark(Act.END, soak, at=story.at)
    dip = story.number("dip-2")
    story.mark(Act.DRY, "dry-1", at=at("2026-06-10 20:00"))
    story.mark(Act.START, dip, at=begun)
    found = windows_of(story.lot, begun, LONDON)[dip]
    assert found.end.aim - begun < SHORT
    assert found.best_end == found.end.aim


def test_the_dyers_own_view_of_the_cure_sets_its_length():
    story = Story(cure_days=30).up_to("dip-4")
    found = windows_of(story.lot, story.at, LONDON)[story.number("cure")]
    assert found.best_end - found.best_start == 30 * DAY
    assert found.end.latest is None


@st.composite
def spreads(draw, most=3 * 1440):
    ends = sorted(draw(st.lists(st.integers(1, most), min_size=3, max_size=3)))
    return Spread(*(one * MINUTE for one in ends))


@given(
    st.integers(0, 1439), spreads(most=1440), st.integers(0, 45),
    st.sampled_from([LONDON, QuietHours(time(23, 30), time(6, 15), "America/New_York")]),
)  # fmt: skip
def test_advice_is_right_to_the_minute(minute, lengths, hands_on, quiet):
    """Every start in the gap ends asleep, the two advised end awake; tried one by one."""
    start = datetime(2026, 6, 9, tzinfo=UTC) + minute * MINUTE
    step = a_step(lasts=lengths, hands_on=hands_on * MINUTE)
    margin = max(step.hands_on, MINUTE)
    lot = Story(a_method(step), at=start).mark(Act.START, "soak")

    def ends_awake(begun: datetime) -> bool:
        ends = range(int(lengths.earliest / MINUTE), int(lengths.latest / MINUTE) + 1)
        return any(
            not quiet.is_quiet(end) and not quiet.is_quiet(end + margin - timedelta(seconds=1))
            for end in (begun + one * MINUTE for one in ends)
        )

    advice = start_advice(lot.steps[0], lengths, start, quiet)
    if lengths.aim < SHORT:
        assert advice is None
        return
    assert (advice is None) == ends_awake(start)
    if advice is not None:
        before, after = advice
        assert before < start < after
        assert ends_awake(before)
        assert ends_awake(after)
        assert not ends_awake(before + MINUTE)
        assert not ends_awake(after - MINUTE)


def test_a_soak_that_must_end_at_night_is_said_with_two_better_starts():
    """Ten to eleven hours from 16:00 end at two or three in the morning."""
    step = a_step(lasts=spread(10, 10.5, 11))
    start = at("2026-06-09 16:00")
    lot = Story(a_method(step), at=start).mark(Act.START, "soak")
    found = windows_of(lot, start, LONDON)[1]
    assert found.moved.clash == 4 * HOUR
    assert found.best_end == at("2026-06-10 02:30")
    advice = start_advice(lot.steps[0], spread(10, 10.5, 11), start, LONDON)
    assert advice == (at("2026-06-09 11:50"), at("2026-06-09 20:00"))
