"""Open hours: their text, what is refused, and the stretches in which the workshop is closed.

Clock changes of Europe/London in 2026 (29 March, 25 October): IANA time zone database 2026f.
"""

from datetime import UTC, datetime, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import (
    Opening,
    closed_stretches,
    open_words,
    read_open,
    write_open,
)

LONDON = "Europe/London"
HOUR = timedelta(hours=1)


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("", ""),
        (" ; ", ""),
        ("mon-fri 09:00-17:00; sat 10:00-14:00", "="),
        ("Mon – Fri 9:00 – 17:00;SATURDAY 10:00-14:00", "mon-fri 09:00-17:00; sat 10:00-14:00"),
        ("tue, thu & sat 10:00-24:00", "tue,thu,sat 10:00-24:00"),
        ("sat and sun 10:00-16:00", "sat,sun 10:00-16:00"),
        ("fri-mon 10:00-16:00", "mon,fri-sun 10:00-16:00"),
        ("mon 13:00-17:00; mon 9:00-12:00", "mon 09:00-12:00; mon 13:00-17:00"),
    ],
)
def test_open_hours_are_read_in_any_hand_and_kept_in_one(text: str, kept: str) -> None:
    written = write_open(read_open(text))
    assert written == (text if kept == "=" else kept)
    assert read_open(written) == read_open(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("mon", "names no open hours"),
        ("09:00-17:00", "names no open hours"),
        ("funday 09:00-17:00", "'funday' is no day of the week"),
        ("mon-tue-wed 09:00-17:00", "not days from one to another"),
        ("mon 17:00-09:00", "ends before it begins"),
        ("mon 09:00-09:00", "ends before it begins"),
        ("mon 09:00-24:01", "24:01 is no time"),
        ("mon 09:60-12:00", "09:60 is no time"),
        ("mon 99:00-99:30", "is no time"),
        ("mon,mon 09:00-12:00", "Mon is named twice"),
        ("mon 09:00-12:00; mon 11:00-13:00", "Mon is open twice at 11:00"),
        ("mon 09:00-12:00; mon 12:00-13:00", "Mon is open twice at 12:00"),
        ("mon 09:00-17:00\x00", "names no open hours"),
        ("mon ٠٩:00-17:00", "names no open hours"),
        ("mon 09:00-10:00;" * 60, "up to 400 letters"),
        ("- 09:00-17:00", "names no open hours"),
        ("mon- 09:00-17:00", "is no day of the week"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        read_open(text)


def test_the_words_name_the_days() -> None:
    assert open_words(read_open("")) == "always"
    told = open_words(read_open("mon,tue 09:00-17:00; sat 10:00-14:00"))
    assert told == "Mon and Tue 09:00–17:00, Sat 10:00–14:00"


def stretches(text: str, first: datetime, last: datetime) -> list[tuple[datetime, datetime]]:
    return list(closed_stretches(read_open(text), LONDON, first, last))


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
    found = list(closed_stretches(openings, "UTC", at, at + HOUR))
    assert any(start <= at < end for start, end in found) is not is_open
    for one, other in pairwise(found):
        assert one[0] < one[1] < other[0]
