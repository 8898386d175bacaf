"""The studio's hours: what counts before what, and when somebody is awake."""

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.open_hours import read_open
from studio_log.domain.quiet_text import Hours, read_days
from studio_log.domain.single_days import read_single_days
from studio_log.domain.stretch_text import joined, read_stretches, without, write_stretches
from studio_log.domain.studio_hours import StudioHours, quiet_week, waking_week

NIGHT = Hours(time(22), time(7))
HOLIDAYS = {date(2026, 12, 25): "Christmas Day", date(2026, 12, 26): "Boxing Day"}
WEEK = "mon-fri 09:00-12:30; mon-fri 13:30-17:00"


@pytest.mark.parametrize(
    ("singles", "day", "working", "words"),
    [
        ("", date(2026, 12, 24), "09:00-12:30, 13:30-17:00", ""),
        ("", date(2026, 12, 25), "", "Christmas Day"),
        ("", date(2026, 12, 27), "", ""),
        ("2026-12-25 usual", date(2026, 12, 25), "09:00-12:30, 13:30-17:00",
         "open 09:00–12:30, 13:30–17:00: Christmas Day"),
        ("2026-12-25 10-12", date(2026, 12, 25), "10:00-12:00", "open 10:00–12:00: Christmas Day"),
        ("2026-12-25 closed: fair", date(2026, 12, 25), "", "closed: fair"),
        ("2026-12-21 to 2026-12-24 closed", date(2026, 12, 24), "", "closed"),
        ("2026-12-21 to 2026-12-24 closed", date(2026, 12, 20), "", ""),
        ("2026-12-27 usual", date(2026, 12, 27), "", "closed"),
    ],
)  # fmt: skip
def test_a_single_day_counts_before_a_holiday_and_both_before_the_weekday(
    singles: str, day: date, working: str, words: str
) -> None:
    hours = StudioHours(read_open(WEEK), read_single_days(singles), HOLIDAYS)
    found = hours.on(day)
    assert (write_stretches(found.working), found.words) == (working, words)


def test_where_nothing_was_said_every_day_is_whole() -> None:
    hours = StudioHours()
    assert hours.always
    assert [one.working for one in hours.between(date(2026, 3, 28), date(2026, 3, 30))] == [
        ((0, 1440),)
    ] * 3


def test_all_but_the_quiet_hours_are_waking() -> None:
    week = waking_week((), NIGHT, read_days("fri 23:30-09:00; sun off"))
    assert [write_stretches(one) for one in week] == [
        "00:00-22:00", *["07:00-22:00"] * 3, "07:00-23:30", "09:00-22:00", "07:00-24:00"
    ]  # fmt: skip


def test_waking_hours_that_were_said_give_way_to_the_quiet_ones() -> None:
    week = waking_week(read_open("mon-sun 06:00-23:00"), NIGHT, ())
    assert {write_stretches(one) for one in week} == {"07:00-22:00"}
    assert waking_week(read_open("mon 08:00-20:00"), NIGHT, ())[1] == ()


def test_a_night_of_the_small_hours_lies_on_the_day_after() -> None:
    week = quiet_week(Hours(time(0), time(0)), read_days("sat 00:30-09:00; sun 23:00-06:00"))
    assert week == (((0, 360),), (), (), (), (), (), ((30, 540), (1380, 1440)))


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("", ""),
        ("9-12:30, 13:30-17", "09:00-12:30, 13:30-17:00"),
        ("13.30–17 und 9 bis 12.30", "09:00-12:30, 13:30-17:00"),
        ("9-12, 12-13", "09:00-13:00"),
        ("0-24", "00:00-24:00"),
    ],
)
def test_stretches_are_read_as_they_are_typed(text: str, kept: str) -> None:
    assert write_stretches(read_stretches(text)) == kept


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("nine to five", "is no stretch"),
        ("9", "is no stretch"),
        ("17-9", "ends before it begins"),
        ("9-9", "ends before it begins"),
        ("9-24:01", "24:01 is no time"),
        ("9:75-12", "9:75 is no time"),
        ("9-12, 11-13", "09:00-12:00 and 11:00-13:00 overlap"),
        ("9-12\x00", "is no stretch"),
        ("٩-١٢", "is no stretch"),
        (",".join(f"{hour}-{hour}:30" for hour in range(13)), "up to 12 stretches"),
        ("9-12," * 99, "200 letters"),
    ],
)
def test_stretches_that_make_no_sense_are_refused(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        read_stretches(text)


SPANS = st.lists(
    st.tuples(st.integers(0, 1439), st.integers(1, 1440)).filter(lambda one: one[0] < one[1]),
    max_size=6,
)


@given(SPANS, SPANS, st.integers(0, 1439))
def test_a_minute_is_left_where_it_is_in_the_one_and_not_in_the_other(
    some: list[tuple[int, int]], taken: list[tuple[int, int]], minute: int
) -> None:
    def holds(spans: object) -> bool:
        return any(start <= minute < end for start, end in spans)  # type: ignore[attr-defined]

    assert holds(without(some, taken)) is (holds(some) and not holds(taken))
    assert holds(joined(some)) is holds(some)
