"""Quiet hours per weekday: their text, their nights, and the laws they keep.

Nights are held against the definition itself, minute by minute, in a zone without clock
changes; clock changes against tests/reference/dst_transitions.csv (IANA database 2026f).
"""

from datetime import UTC, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.methods import StepKind, Tending
from studio_log.domain.quiet import Night, QuietHours, Window, best_moment
from studio_log.domain.quiet_text import Hours, check_week, read_days, write_days
from studio_log.domain.tending import coming_tendings
from studio_log.domain.windows import windows_of
from tests.domain.test_quiet import CHANGES, NAMES, at
from tests.domain.test_windows import BEGUN, ZONES, methods, not_earlier
from tests.support.builders import DAY, HOUR, MINUTE, NINE, Story, a_method, a_step, spread

TEN, SEVEN = time(22), time(7)
USUAL = Hours(TEN, SEVEN)
LATE = Hours(time(23, 30), time(9))
SMALL = Hours(time(0, 30), time(9))


def hours(text: str, zone: str = "Europe/London", every: Hours = USUAL) -> QuietHours:
    return QuietHours(every.start, every.end, zone, read_days(text))


# -- the text ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("", ""),
        (" ; ", ""),
        ("fri 23:30-09:00; sat 23:30-09:00; sun off", "=",),
        ("fri,sat 23:30-09:00", "fri 23:30-09:00; sat 23:30-09:00"),
        ("Sat and Fri 23:30–9:00", "fri 23:30-09:00; sat 23:30-09:00"),
        ("SUNDAY none;Mon, tues 21:00 - 06:00;", "mon 21:00-06:00; tue 21:00-06:00; sun off"),
        ("sat 0:30-09:00", "sat 00:30-09:00"),
    ],
)  # fmt: skip
def test_nights_that_differ_are_read_in_any_hand_and_kept_in_one(text, kept):
    written = write_days(read_days(text))
    assert written == (text if kept == "=" else kept)
    assert read_days(written) == read_days(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("fri", "'fri' names no night"),
        ("fri 23:30", "names no night"),
        ("fri 23:30-09:00 sat off", "names no night"),
        ("funday 23:30-09:00", "'funday' is no day of the week"),
        ("fri 24:00-09:00", "24:00 is no time"),
        ("fri 23:60-09:00", "23:60 is no time"),
        ("fri off; fri,sat 23:30-09:00", "Fri is named twice"),
        ("sat sat off", "Sat is named twice"),
        ("fri 22:00-22:00", "write “fri off”"),
        ("and off", "'and off' is no day"),
        ("fri off;" * 100, "up to 400 letters"),
        ("\N{ARABIC-INDIC DIGIT TWO}", "names no night"),
    ],
)
def test_what_is_no_night_is_refused_in_words(text, says):
    with pytest.raises(Refusal, match=says):
        read_days(text)


@pytest.mark.parametrize(
    ("text", "every", "words"),
    [
        ("", USUAL, "22:00–07:00"),
        ("fri,sat 23:30-09:00; sun off", USUAL, "22:00–07:00, Fri and Sat 23:30–09:00, Sun none"),
        ("mon,tue,wed off", USUAL, "22:00–07:00, Mon, Tue and Wed none"),
        ("fri 22:00-07:00", USUAL, "22:00–07:00"),
        ("", Hours(TEN, TEN), "none"),
        ("fri,sat 23:30-09:00; sun off", Hours(TEN, TEN), "Fri and Sat 23:30–09:00 only"),
    ],
)
def test_the_words_name_the_nights_that_differ(text, every, words):
    assert hours(text, every=every).words == words


@pytest.mark.parametrize(
    ("every", "text", "says"),
    [
        (Hours(time(7), time(3, 1)), "", "Every night from 07:00 to 03:01 would be 20 h 01"),
        (USUAL, "sat 12:00-10:00", "Sat night from 12:00 to 10:00 would be 22 h of quiet"),
        (USUAL, "mon 21:00-07:00; sun 01:00-20:30", "Before Mon night only 30 min are awake"),
        (USUAL, "sat 14:00-09:30; fri 21:00-13:59", "Before Sat night only 1 min are awake"),
        (USUAL, "sat 00:30-21:10", "Sat night from 00:30 to 21:10 would be 20 h 40"),
        (USUAL, "tue 01:00-21:00", None),
        (USUAL, "tue 02:00-21:01; wed 22:00-18:00", "Before Wed night only 59 min are awake"),
        (USUAL, "tue 02:00-21:00; wed 22:00-18:00", None),
        (USUAL, "tue 02:00-22:00; wed 22:00-18:00", None),
    ],
)  # fmt: skip
def test_a_week_needs_hours_to_work_in(every, text, says):
    if says is None:
        assert check_week(every, read_days(text)) is None
        return
    with pytest.raises(Refusal, match=says):
        check_week(every, read_days(text))


# -- the nights ----------------------------------------------------------------------------

MINUTES = st.integers(0, 1439)
WALL = st.builds(time, st.integers(0, 23), st.sampled_from([0, 20, 30, 45]))
NIGHT = st.builds(Hours, WALL, WALL)


@st.composite
def weeks(draw, zones=ZONES):
    """Quiet hours with nights that differ, as they pass the check."""
    every = draw(NIGHT | st.just(USUAL))
    named = draw(st.dictionaries(st.integers(0, 6), st.none() | NIGHT, max_size=7))
    days = tuple(sorted(named.items(), key=lambda pair: pair[0]))
    assume(all(one is None or one.minutes for _, one in days))
    try:
        check_week(every, days)
    except Refusal:
        assume(False)
    return QuietHours(every.start, every.end, draw(st.sampled_from(zones)), days)


def quiet_by_definition(quiet: QuietHours, moment: datetime) -> bool:
    """Ask of every evening about the moment whether its night holds it; UTC only."""
    for shift in range(-3, 3):
        evening = moment.date() + shift * DAY
        differing = dict(quiet.days)
        mine = differing.get(evening.weekday(), Hours(quiet.start, quiet.end))
        if mine is None or mine.start == mine.end:
            continue
        begun = evening + DAY if mine.start < time(12) else evening
        start = datetime.combine(begun, mine.start, UTC)
        end = datetime.combine(begun, mine.end, UTC)
        if end <= start:
            end += DAY
        if start <= moment < end:
            return True
    return False


@given(weeks(zones=("UTC",)))
def test_each_minute_is_quiet_as_the_weeks_words_say(quiet):
    """Tried every ten minutes of a week and at the minute about every end."""
    edges = [
        one for night in quiet.nights(NINE, NINE + 7 * DAY) for one in (night.start, night.end)
    ]
    tried = [NINE + step * 10 * MINUTE for step in range(7 * 144)]
    tried += [edge + shift * MINUTE for edge in edges for shift in (-1, 0, 1)]
    for moment in tried:
        assert quiet.is_quiet(moment) is quiet_by_definition(quiet, moment), moment


@given(weeks(), BEGUN)
def test_nights_come_in_order_apart_and_agree_with_what_holds_a_moment(quiet, since):
    until = since + 15 * DAY
    nights = list(quiet.nights(since, until))
    for night in nights:
        assert night.start < night.end
        assert night.end > since
        assert night.start < until
        for moment in (night.start, night.start + (night.end - night.start) / 2):
            assert quiet.around(moment) == night
            assert quiet.waking(moment) == night.end
        assert not quiet.is_quiet(night.end)
        assert not quiet.is_quiet(night.start - timedelta(seconds=1))
    for one, after in pairwise(nights):
        assert one.end < after.start


def test_a_start_before_noon_belongs_to_the_evening_before():
    """9 June 2026 is a Tuesday; Saturday is the 13th."""
    quiet = hours("sat 00:30-09:00; fri off; sun off")
    nights = list(quiet.nights(at("2026-06-12 12:00"), at("2026-06-15 12:00")))
    assert nights == [Night(at("2026-06-14 00:30"), at("2026-06-14 09:00"))]


def test_nights_that_overlap_or_touch_are_one_stretch():
    quiet = hours("fri 22:00-14:00; sat 14:00-10:00; sun 02:00-08:00")
    assert quiet.around(at("2026-06-13 13:00")) == Night(
        at("2026-06-12 22:00"), at("2026-06-14 10:00")
    )
    overlap = hours("fri 22:00-15:00; sat 14:00-08:00")
    assert overlap.around(at("2026-06-14 07:59")) == Night(
        at("2026-06-12 22:00"), at("2026-06-14 08:00")
    )
    # The small hours named by Saturday, and the Sunday evening, begin on one day.
    twice = hours("sat 00:30-09:00; sun 13:00-23:00", every=Hours(TEN, TEN))
    begun = list(twice.nights(at("2026-06-13 12:00"), at("2026-06-15 12:00")))
    assert [(night.start, night.end) for night in begun] == [
        (at("2026-06-14 00:30"), at("2026-06-14 09:00")),
        (at("2026-06-14 13:00"), at("2026-06-14 23:00")),
    ]


@pytest.mark.parametrize("row", CHANGES, ids=NAMES)
def test_a_night_that_differs_keeps_its_wall_times_across_a_clock_change(row):
    """The night that holds the change is 22:30 to 08:15; all others are as ever."""
    zone, changed = ZoneInfo(row["zone"]), datetime.fromisoformat(row["utc"])
    before = changed - timedelta(seconds=1)
    local = before.astimezone(zone)
    evening = (local - timedelta(hours=12)).date()
    mine = ((evening.weekday(), Hours(time(22, 30), time(8, 15))),)
    quiet = QuietHours(TEN, SEVEN, row["zone"], mine)
    night = quiet.around(before)
    assert night is not None
    assert night.start.astimezone(zone).time() == time(22, 30)
    assert night.end.astimezone(zone).time() == time(8, 15)
    assert night.end - night.start == timedelta(hours=9, minutes=45 - int(row["shift_min"]))
    following = next(quiet.nights(night.end, night.end + 2 * DAY))
    assert following.start.astimezone(zone).time() == TEN


def test_the_hours_are_a_value():
    one, same = hours("sun off"), hours("Sun none")
    assert one == same
    assert hash(one) == hash(same)
    assert one != hours("sat off")
    assert QuietHours(TEN, SEVEN, "UTC").days == ()


@given(weeks(zones=("UTC",)))
def test_every_week_that_passes_has_a_waking_hour(quiet):
    """Seven nights of 20 hours leave 28 of the 168; the check leaves them in whole hours."""
    nights = list(quiet.nights(NINE, NINE + 15 * DAY))
    gaps = [after.start - one.end for one, after in pairwise(nights)]
    assert not nights or max(gaps) >= HOUR
    assert all(gap >= HOUR for gap in gaps)


# -- the best moment -----------------------------------------------------------------------

SPANS = st.integers(0, 3000).map(lambda minutes: minutes * MINUTE)
HANDS_ON = (st.integers(0, 60) | st.integers(0, 1600)).map(lambda minutes: minutes * MINUTE)


@given(weeks(), BEGUN, st.tuples(SPANS, SPANS, SPANS, SPANS, SPANS), HANDS_ON, st.booleans())
@example(
    # Two 20-hour nights, with work that fits nowhere between.
    QuietHours(time(13), time(9), "UTC"), NINE, (HOUR, 30 * HOUR, 4 * HOUR, HOUR, HOUR),
    5 * HOUR, False,
)  # fmt: skip
def test_a_later_window_never_has_an_earlier_best_moment(quiet, begun, spans, hands_on, endless):
    before, after, later, more, longer = spans
    aim = begun + before
    asked = Window(begun, aim, None if endless else aim + after)
    moved = Window(
        asked.earliest + later,
        asked.aim + later + more,
        None if asked.latest is None else asked.latest + later + more + longer,
    )
    first, second = (best_moment(one, quiet, hands_on) for one in (asked, moved))
    assert second.at >= first.at
    assert asked.holds(first.at)


@given(weeks(), st.integers(0, 10_080), st.integers(0, 600), st.integers(0, 600),
       st.integers(1, 60))  # fmt: skip
def test_the_best_moment_is_awake_to_its_end_and_nearest_or_clashes(
    quiet, shift, before, after, hands_on
):
    """Against every minute of the window, tried one by one."""
    aim, margin = NINE + shift * MINUTE, hands_on * MINUTE
    asked = Window(aim - before * MINUTE, aim, aim + after * MINUTE)

    def awake(moment: datetime) -> bool:
        last = moment + margin - timedelta(seconds=1)
        return not quiet.is_quiet(moment) and not quiet.is_quiet(last)

    found = best_moment(asked, quiet, margin)
    allowed = [
        abs(moment - aim) for step in range(-before, after + 1)
        if awake(moment := aim + step * MINUTE)
    ]  # fmt: skip
    assert (found.clash is None) == bool(allowed)
    if allowed:
        assert awake(found.at)
        assert abs(found.at - aim) == min(allowed)
    else:
        assert found.at == aim


def test_between_two_nights_too_near_for_the_work_nothing_begins():
    """Two hours are awake on Saturday, 10:00 to 12:00; three hours of work do not fit."""
    quiet = hours("fri 22:00-10:00; sat 12:00-08:00")
    wide = Window(at("2026-06-12 12:00"), at("2026-06-13 09:00"), at("2026-06-15 12:00"))
    assert best_moment(wide, quiet, 2 * HOUR).at == at("2026-06-13 10:00")
    assert best_moment(wide, quiet, 3 * HOUR).at == at("2026-06-12 19:00")


def test_in_a_week_with_no_room_for_the_work_it_begins_at_waking():
    quiet = QuietHours(time(13), time(9), "Europe/London")
    wide = Window(at("2026-06-08 12:00"), at("2026-06-10 06:00"), at("2026-06-14 12:00"))
    found = best_moment(wide, quiet, 5 * HOUR)
    assert found.at == at("2026-06-10 09:00")
    assert found.night == Night(at("2026-06-09 13:00"), at("2026-06-10 09:00"))


@given(methods(), BEGUN, weeks(), st.integers(0, 6000), st.integers(0, 6000))
def test_time_passing_makes_nothing_ahead_earlier(method, begun, quiet, waited, more):
    lot = Story(method, at=begun).lot
    now = begun + waited * MINUTE
    before, after = (windows_of(lot, one, quiet) for one in (now, now + more * MINUTE))
    not_earlier(after, before)


@given(weeks(), BEGUN, st.integers(10, 900), st.integers(1, 3))
def test_no_tending_falls_in_a_night(quiet, begun, every, days):
    tending = Tending("Stir", "Stirred", (), every * MINUTE)
    method = a_method(a_step("soak", StepKind.SOAK, lasts=spread(24, 48, 72), tending=tending))
    story = Story(method, at=begun)
    story.mark(Act.START, 1)
    moments = coming_tendings(story.lot.step(1), quiet, begun + days * DAY)
    assert list(moments) == sorted(set(moments))
    assert not [one for one in moments if quiet.is_quiet(one)]
