"""Single days: their text, what is refused, and what one more does to the others."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.single_days import (
    SingleDay,
    read_single_days,
    with_day,
    without_day,
    write_single_days,
)

DAY = timedelta(days=1)


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("", ""),
        (" ;\n; ", ""),
        ("2026-12-24 closed; 2026-12-27 10:00-12:00", "2026-12-24 closed\n2026-12-27 10:00-12:00"),
        ("2026-12-24 CLOSED:  the  fair", "2026-12-24 closed: the fair"),
        ("2026-12-24 9-12:30, 13.30-17: late: shop", "="),
        ("2026-12-24 9–12", "2026-12-24 09:00-12:00"),
        ("2026-08-03..2026-08-14 closed", "2026-08-03 to 2026-08-14 closed"),
        ("2026-12-28 usual", "2026-12-28 usual"),
        ("2027-01-01 closed\n2026-12-31 closed", "2026-12-31 closed\n2027-01-01 closed"),
    ],
)
def test_days_are_read_in_any_hand_and_kept_in_one(text: str, kept: str) -> None:
    written = write_single_days(read_single_days(text))
    assert written == ("2026-12-24 09:00-12:30, 13:30-17:00: late: shop" if kept == "=" else kept)
    assert read_single_days(written) == read_single_days(text)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("christmas closed", "is no single day"),
        ("2026-12-24", "is no single day"),
        ("2026-12-24 open", "is no single day"),
        ("2026-12-24 closed fair", "is no single day"),
        ("2026-02-30 closed", "There is no day 2026-02-30"),
        ("0001-01-01 closed", "cannot be meant"),
        ("9999-12-31 closed", "cannot be meant"),
        ("٢٠٢٦-12-24 closed", "is no single day"),
        ("2026-12-24 17:00-09:00", "ends before it begins"),
        ("2026-12-24 09:00-25:00", "25:00 is no time"),
        ("2026-12-24 9-12, 11-13", "overlap"),
        ("2026-12-24 closed; 2026-12-24 10-12", "2026-12-24 is named twice"),
        ("2026-12-20 to 2026-12-26 closed; 2026-12-24 10-12", "2026-12-24 is named twice"),
        ("2026-12-24 to 2026-12-20 closed", "spans no days"),
        ("2026-01-01 to 2028-01-01 closed", "spans no days"),
        ("2026-12-24 closed: \x1b[2J", "plain text"),
        ("2026-12-24 closed: " + "x" * 81, "80 letters"),
        ("x" * 50_000, "20,000 letters"),
        ("2026-12-24 closed;" * 500, "Up to 400 single days"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(text: str, says: str) -> None:
    with pytest.raises(Refusal, match=says):
        read_single_days(text)


RUNS = st.builds(
    lambda start, length, why: SingleDay(
        date(2026, 1, 1) + start * DAY, date(2026, 1, 1) + (start + length) * DAY, (), why
    ),
    st.integers(0, 60),
    st.integers(0, 9),
    st.sampled_from(("", "fair", "a: b")),
)


@given(st.lists(RUNS, max_size=8), st.integers(0, 70))
def test_what_came_last_counts_and_no_two_overlap(runs: list[SingleDay], gone: int) -> None:
    days: tuple[SingleDay, ...] = ()
    told: dict[date, str] = {}
    for run in runs:
        days = with_day(days, run)
        told |= {run.first + n * DAY: run.why for n in range((run.last - run.first).days + 1)}
    day = date(2026, 1, 1) + gone * DAY
    days = without_day(days, day)
    told.pop(day, None)
    assert read_single_days(write_single_days(days)) == days
    assert told == {
        one.first + n * DAY: one.why for one in days for n in range((one.last - one.first).days + 1)
    }
