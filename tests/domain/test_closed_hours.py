"""The stretches in which the workshop is closed, through clock changes, holidays and single days.

Clock changes of Europe/London in 2026 (29 March, 25 October): IANA time zone database 2026f.
"""

from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.closed_hours import REACH, closed_stretches
from studio_log.domain.open_hours import Opening, read_open
from studio_log.domain.single_days import read_single_days
from studio_log.domain.studio_hours import StudioHours

LONDON = "Europe/London"
HOUR = timedelta(hours=1)
CHRISTMAS = {date(2026, 12, 25): "Christmas Day", date(2026, 12, 28): "Boxing Day (observed)"}


def stretches(text: str, first: datetime, last: datetime) -> list[tuple[datetime, datetime]]:
    hours = StudioHours(read_open(text))
    return [(one.start, one.end) for one in closed_stretches(hours, LONDON, first, last)]


def test_always_open_is_never_closed() -> None:
    assert stretches("", datetime(2026, 6, 1, tzinfo=UTC), datetime(2026, 7, 1, tzinfo=UTC)) == []


def test_a_week_end_is_one_stretch() -> None:
    # Friday 5 June 2026, noon, to Monday noon; London is an hour ahead of UTC.
    first, last = datetime(2026, 6, 5, 11, tzinfo=UTC), datetime(2026, 6, 8, 11, tzinfo=UTC)
    assert stretches("mon-fri 09:00-17:00", first, last) == [
        (datetime(2026, 6, 5, 16, tzinfo=UTC), datetime(2026, 6, 8, 8, tzinfo=UTC))
    ]


@pytest.mark.parametrize(("day", "hours"), [((2026, 3, 28), 15), ((2026, 10, 24), 17)])
def test_over_a_clock_change_the_night_is_an_hour_shorter_or_longer(
    day: tuple[int, int, int], hours: int
) -> None:
    noon = datetime(*day, 12, tzinfo=UTC)
    ((start, end),) = stretches("mon-sun 09:00-17:00", noon, noon + 24 * HOUR)
    assert end - start == hours * HOUR


def test_open_round_midnight_is_not_closed_between() -> None:
    noon = datetime(2026, 6, 5, 11, tzinfo=UTC)
    found = stretches("fri 18:00-24:00; sat 00:00-02:00", noon, noon + 10 * HOUR)
    assert [end.astimezone(ZoneInfo(LONDON)).hour for _, end in found] == [18]


@given(
    st.lists(st.tuples(st.integers(0, 6), st.integers(0, 1438), st.integers(1, 1440)), max_size=6),
    st.integers(0, 300 * 24),
)
def test_a_minute_is_closed_or_open_as_its_weekday_and_clock_say(
    rows: list[tuple[int, int, int]], hour: int
) -> None:
    openings = tuple(sorted({Opening(day, a, b) for day, a, b in rows if a < b}))
    at = datetime(2026, 1, 1, tzinfo=UTC) + hour * HOUR
    minute = at.hour * 60 + at.minute
    is_open = not openings or any(
        one.weekday == at.weekday() and one.start <= minute < one.end for one in openings
    )
    found = [
        (one.start, one.end)
        for one in closed_stretches(StudioHours(openings), "UTC", at, at + HOUR)
    ]
    assert any(start <= at < end for start, end in found) is not is_open
    for one, other in pairwise(found):
        assert one[0] < one[1] < other[0]


def test_a_holiday_closes_and_says_its_name() -> None:
    hours = StudioHours(read_open("mon-fri 09:00-17:00"), holidays=CHRISTMAS)
    noon = datetime(2026, 12, 24, 12, tzinfo=UTC)
    (found,) = closed_stretches(hours, LONDON, noon, noon + 4 * 24 * HOUR)
    assert found.start == datetime(2026, 12, 24, 17, tzinfo=UTC)
    assert found.end == datetime(2026, 12, 29, 9, tzinfo=UTC)
    assert [words for _, words in found.days] == ["Christmas Day", "Boxing Day (observed)"]


def test_a_single_day_goes_before_the_holiday_and_is_told_on_both_sides() -> None:
    singles = read_single_days("2026-12-28 10:00-12:00: stocktaking")
    hours = StudioHours(read_open("mon-fri 09:00-17:00"), singles, CHRISTMAS)
    noon = datetime(2026, 12, 27, 12, tzinfo=UTC)
    before, after = closed_stretches(hours, LONDON, noon, noon + 24 * HOUR + HOUR)
    assert (before.end.hour, after.start.hour) == (10, 12)
    told = (date(2026, 12, 28), "open 10:00–12:00: stocktaking")
    assert before.days == ((date(2026, 12, 25), "Christmas Day"), told)
    assert after.days == (told,)


def test_always_open_is_closed_on_a_holiday_all_the_same() -> None:
    noon = datetime(2026, 12, 24, 12, tzinfo=UTC)
    (found,) = closed_stretches(StudioHours(holidays=CHRISTMAS), LONDON, noon, noon + 48 * HOUR)
    assert found.end - found.start == 24 * HOUR


def test_a_day_closed_on_which_the_clocks_change_lasts_as_long_as_it_does() -> None:
    for text, length in (("2026-03-29 closed", 23), ("2026-10-25 closed", 25)):
        singles = read_single_days(text)
        at = datetime.combine(singles[0].first, datetime.min.time(), UTC) + 12 * HOUR
        (found,) = closed_stretches(StudioHours((), singles), LONDON, at, at + HOUR)
        assert found.end - found.start == length * HOUR


def test_a_closing_longer_than_what_is_looked_at_ends_where_looking_ends() -> None:
    singles = read_single_days("2026-06-01 to 2026-08-31 closed: away")
    at = datetime(2026, 7, 10, 12, tzinfo=UTC)
    (found,) = closed_stretches(StudioHours((), singles), "UTC", at, at + HOUR)
    assert found.start == datetime(2026, 7, 10, tzinfo=UTC) - REACH
    assert found.end == datetime(2026, 7, 11, tzinfo=UTC) + REACH
    assert (date(2026, 7, 10), "closed: away") in found.days


def test_hours_in_the_gap_of_a_clock_change_never_overlap_others() -> None:
    """On 29 March 2026 the clock goes from 01:00 to 02:00 GMT+1; 01:15 is read as 01:15 GMT."""
    midnight = datetime(2026, 3, 29, tzinfo=UTC)
    for text, opens in (
        ("sun 01:15-01:45; sun 02:00-02:10; sun 06:00-07:00", (75, 105)),
        ("sun 01:30-02:10; sun 06:00-07:00", None),
    ):
        hours = StudioHours(read_open(text))
        found = list(closed_stretches(hours, LONDON, midnight, midnight + 12 * HOUR))
        gaps = [(one.end, other.start) for one, other in pairwise(found)]
        wanted = [] if opens is None else [opens]
        assert gaps == [
            (midnight + timedelta(minutes=start), midnight + timedelta(minutes=end))
            for start, end in [*wanted, (300, 360)]
        ]


def test_a_day_that_is_open_from_midnight_on_is_not_told_before_it() -> None:
    singles = read_single_days("2026-06-07 0-24: open house")
    noon = datetime(2026, 6, 6, 12, tzinfo=UTC)
    hours = StudioHours(read_open("mon-fri 09:00-17:00"), singles)
    (found,) = closed_stretches(hours, "UTC", noon, noon + HOUR)
    assert found.end == datetime(2026, 6, 7, tzinfo=UTC)
    assert found.days == ()


ZONES = ("Europe/London", "America/New_York", "Australia/Lord_Howe", "Pacific/Kiritimati")


def near_a_clock_change(at: datetime, zone: ZoneInfo) -> bool:
    offsets = {(at + hours * HOUR).astimezone(zone).utcoffset() for hours in (-4, 4)}
    return len(offsets) > 1


@given(st.sampled_from(ZONES), st.integers(0, 2 * 366 * 24 * 4))
def test_an_instant_is_closed_as_the_clock_on_the_wall_says(zone: str, quarter: int) -> None:
    """Two years, but for the hours about a clock change, in which a time comes twice or never."""
    at = datetime(2026, 1, 1, tzinfo=UTC) + quarter * HOUR / 4
    place = ZoneInfo(zone)
    singles = read_single_days("2026-06-01 to 2026-06-20 22:00-24:00; 2026-12-28 usual")
    hours = StudioHours(read_open("mon-fri 00:00-09:00; wed-sun 13:30-24:00"), singles, CHRISTMAS)
    local = at.astimezone(place)
    minute = local.hour * 60 + local.minute
    is_open = any(start <= minute < end for start, end in hours.on(local.date()).working)
    found = list(closed_stretches(hours, zone, at, at + HOUR / 60))
    if not near_a_clock_change(at, place):
        assert any(one.start <= at < one.end for one in found) is not is_open
