"""What a dyer types for a time, and clock changes by RFC 5545 section 3.3.5."""

import csv
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.moment_text import MomentReading, read_moment

REFERENCE = Path(__file__).parent.parent / "reference"
LONDON = "Europe/London"
NOW = datetime(2026, 6, 9, 8, 0, tzinfo=UTC)
"""Tuesday 9 June 2026, 09:00 in London."""


def read(text: str, **changed: object) -> MomentReading:
    return read_moment(text, **{"now": NOW, "zone": LONDON, **changed})  # type: ignore[arg-type]


def local(reading: MomentReading) -> str:
    return reading.at.astimezone(ZoneInfo(reading.zone)).strftime("%Y-%m-%d %H:%M")


PLAIN = [
    ("2026-06-09T13:08", "2026-06-09 13:08"),
    ("2026-06-09T13:08Z", "2026-06-09 14:08"),
    ("2026-06-09T13:08+02:00", "2026-06-09 12:08"),
    ("2026-06-09T13:08:00-0500", "2026-06-09 19:08"),
    ("2026-06-09 13:08", "2026-06-09 13:08"),
    ("now", "2026-06-09 09:00"),
    ("13:08", "2026-06-08 13:08"),
    ("13.08", "2026-06-08 13:08"),
    ("8.30", "2026-06-09 08:30"),
    ("9:02", "2026-06-09 09:02"),
    ("9:03", "2026-06-08 09:03"),
    ("1:08 pm", "2026-06-08 13:08"),
    ("8pm", "2026-06-08 20:00"),
    ("8 p.m.", "2026-06-08 20:00"),
    ("8 am", "2026-06-09 08:00"),
    ("12 am", "2026-06-09 00:00"),
    ("12:30 pm", "2026-06-08 12:30"),
    ("noon", "2026-06-08 12:00"),
    ("midnight", "2026-06-09 00:00"),
    ("at 20", "2026-06-08 20:00"),
    ("-3h", "2026-06-09 06:00"),
    ("−3 h", "2026-06-09 06:00"),
    ("-10m", "2026-06-09 08:50"),
    ("-1h30m", "2026-06-09 07:30"),
    ("-1h30", "2026-06-09 07:30"),
    ("-1.5h", "2026-06-09 07:30"),
    ("-2w", "2026-05-26 09:00"),
    ("-90d", "2026-03-11 08:00"),  # true elapsed time: the clocks went forward on 29 March
    ("3 h ago", "2026-06-09 06:00"),
    ("20 minutes ago", "2026-06-09 08:40"),
    ("half an hour ago", "2026-06-09 08:30"),
    ("an hour and a half ago", "2026-06-09 07:30"),
    ("lifted it two hours ago", "2026-06-09 07:00"),
    ("in 20 minutes", "2026-06-09 09:20"),
    ("at eight last night", "2026-06-08 20:00"),
    ("about eight last night", "2026-06-08 20:00"),
    ("one last night", "2026-06-09 01:00"),
    ("midnight last night", "2026-06-09 00:00"),
    ("20:15 last night", "2026-06-08 20:15"),
    ("eight this morning", "2026-06-09 08:00"),
    ("half past eight", "2026-06-09 08:30"),
    ("ten to nine", "2026-06-09 08:50"),
    ("twenty-five past eight", "2026-06-09 08:25"),
    ("quarter to one", "2026-06-09 00:45"),
    ("eight thirty", "2026-06-09 08:30"),
    ("eight o'clock", "2026-06-09 08:00"),
    ("at 8", "2026-06-09 08:00"),
    ("took it out at eight", "2026-06-09 08:00"),
    ("at nine", "2026-06-09 09:00"),
    ("at ten", "2026-06-08 22:00"),
    ("quarter to nine yesterday evening", "2026-06-08 20:45"),
    ("at eight in the evening", "2026-06-08 20:00"),
    ("yesterday 20:00", "2026-06-08 20:00"),
    ("yesterday noon", "2026-06-08 12:00"),
    ("the day before yesterday 7:30", "2026-06-07 07:30"),
    ("today at eight", "2026-06-09 08:00"),
    ("today 9:00", "2026-06-09 09:00"),
    ("Mon 14:00", "2026-06-08 14:00"),
    ("monday at 8pm", "2026-06-08 20:00"),
    ("Tuesday 8:00", "2026-06-09 08:00"),
    ("Tuesday 14:00", "2026-06-02 14:00"),
    ("last Tuesday 8:00", "2026-06-02 08:00"),
    ("8 June 13:08", "2026-06-08 13:08"),
    ("June 8th at 8 pm", "2026-06-08 20:00"),
    ("9 June 13:08", "2026-06-09 13:08"),  # lies ahead, yet no year back is meant
    ("Mon 8 June 13:08", "2026-06-08 13:08"),
    ("25 December 2025 10:00", "2025-12-25 10:00"),
    ("2026-06-08 8pm", "2026-06-08 20:00"),
    ("0:30 last night", "2026-06-09 00:30"),
    ("Wed 3 June 13:08", "2026-06-03 13:08"),
]


@pytest.mark.parametrize(("text", "expected"), PLAIN, ids=[text for text, _ in PLAIN])
def test_a_time_is_read_without_doubt(text: str, expected: str) -> None:
    reading = read(text)
    assert (local(reading), reading.doubt) == (expected, None)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("13:08", "2026-06-09 13:08"),
        ("8:00", "2026-06-10 08:00"),
        ("at eight", "2026-06-09 20:00"),
        ("tomorrow 7:00", "2026-06-10 07:00"),
        ("Mon 14:00", "2026-06-15 14:00"),
        ("next Tuesday 14:00", "2026-06-16 14:00"),
        ("tonight at eight", "2026-06-09 20:00"),
        ("1 May 9:00", "2027-05-01 09:00"),
        ("+3h", "2026-06-09 12:00"),
    ],
)
def test_the_next_such_time_is_read_where_it_is_wanted(text: str, expected: str) -> None:
    assert local(read(text, prefer="next")) == expected


@pytest.mark.parametrize(
    ("text", "expected", "question"),
    [
        ("yesterday at eight", "2026-06-08 20:00", "08:00 on Mon 8 June or 20:00 on Mon 8 June"),
        ("yesterday at three", "2026-06-08 15:00", "03:00 on Mon 8 June or 15:00 on Mon 8 June"),
        ("monday at eight", "2026-06-08 20:00", "08:00 on Mon 8 June or 20:00"),
        ("two days ago at eight", "2026-06-07 20:00", "08:00 on Sun 7 June or 20:00"),
        ("yesterday midnight", "2026-06-09 00:00", "00:00 on Mon 8 June or 00:00 on Tue 9 June"),
        ("29 February 10:00", "2024-02-29 10:00", "29 February 2024 meant"),
        ("1 December 10:00", "2025-12-01 10:00", "1 December 2025 meant"),
    ],
)
def test_a_doubtful_time_is_taken_and_asked_about(text: str, expected: str, question: str) -> None:
    reading = read(text)
    assert local(reading) == expected
    assert reading.doubt is not None
    assert question in reading.doubt


def test_eight_last_night_from_the_small_hours_is_the_evening_before() -> None:
    assert local(read("eight last night", now=NOW - timedelta(hours=7))) == "2026-06-08 20:00"


@pytest.mark.parametrize(
    ("text", "understood"),
    [
        ("at eight last night", "yesterday, Mon 8 June 2026, 20:00 (13 h ago)"),
        ("8:40", "today, Tue 9 June 2026, 08:40 (20 min ago)"),
        ("-90d", "Wed 11 March 2026, 08:00 (90 d ago)"),
        ("tomorrow 7:00", "tomorrow, Wed 10 June 2026, 07:00 (in 22 h)"),
        ("now", "today, Tue 9 June 2026, 09:00 (now)"),
    ],
)
def test_what_was_understood_is_said_in_full(text: str, understood: str) -> None:
    assert read(text).understood == understood


@pytest.mark.parametrize(
    "text",
    [
        "", " ", "nonsense", "-", "+", "-h", "-3", "8h", "25:00", "13:61", "24:00", "13 pm",
        "0 am", "-99999999d", "-999999999w", "-0h", "6/9 8:00", "9.6.2026 8:00", "8 or 9",
        "8:00 9:00", "not at eight", "yesterday", "this morning", "at night", "9 June",
        "1999-12-31 23:00", "2101-01-02 10:00", "0001-01-01T00:00", "9999-12-31T23:59-12:00",
        "2026-02-30 10:00", "2026-13-01T10:00", "31 June 10:00", "Mon 9 June 2026 13:08",
        "20:00 this morning", "noon last night", "1308", "2026", "half eight", "eight nine",
        "13:08\n", "13:08\x00", "٨:٠٠", "13:08 <b>", "'; drop table entries", "e" * 200,
        "Wed 8 June 13:08", "2026-02-30 8pm", "yesterday night in the morning at 8",
        "-1e5h", "nan h ago", "-inf h", "now now", "eight last night yesterday",
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(Refusal, match="Nothing was changed"):
        read(text)


def test_what_cannot_be_read_is_answered_with_examples() -> None:
    with pytest.raises(Refusal, match="13:08, yesterday 20:00, -3h or 2026-06-09T13:08"):
        read("nonsense")


@pytest.mark.parametrize("zone", ["Nowhere/Land", "", "../etc/passwd", "\x00"])
def test_an_unknown_zone_is_refused(zone: str) -> None:
    with pytest.raises(Refusal, match="time zone"):
        read("now", zone=zone)


def test_a_naive_now_is_a_fault_of_the_program() -> None:
    with pytest.raises(ValueError, match="aware"):
        read("now", now=datetime(2026, 6, 9, 8, 0))  # noqa: DTZ001


def table() -> list[dict[str, str]]:
    with (REFERENCE / "dst_local_times.csv").open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("row", table(), ids=lambda row: f"{row['zone']} {row['local']}")
def test_a_clock_change_is_read_by_the_rule(row: dict[str, str]) -> None:
    """RFC 5545 section 3.3.5, worked out in dst_local_times.csv for tzdata 2026.6.

    Casablanca 2027 hangs on the version of the table (column also_2025b).
    """
    reading = read(row["local"], zone=row["zone"])
    if row["also_2025b"] == "yes" or tzdata_is_new():
        assert reading.at == datetime.fromisoformat(row["utc_expected"])
    assert (reading.doubt is None) == (row["kind"] == "normal")


def tzdata_is_new() -> bool:
    """Say whether the zone table knows that Morocco gave up its changes (2026f)."""
    return datetime(2027, 10, 25, 2, 30, tzinfo=ZoneInfo("Africa/Casablanca")).utcoffset() == (
        timedelta(0)
    )


@given(st.text(max_size=140))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(Refusal):  # anything else that is raised fails the test
        assert read(text).at.utcoffset() == timedelta(0)


PARTS = (
    "at eight 8 20:00 8:30 last night this morning evening yesterday tomorrow today monday 9 June "
    "noon midnight half past quarter to ten -3h ago 2 h days in an hour now am pm 2026-06-09 May "
    "1 and a the next on 29 Feb Feb 31 0 o'clock twelve week"
)


@given(
    st.lists(st.sampled_from(PARTS.split()), min_size=1, max_size=6).map(" ".join),
    st.datetimes(datetime(2000, 1, 5), datetime(2100, 12, 25), timezones=st.just(UTC)),  # noqa: DTZ001
    st.sampled_from(["Europe/London", "America/New_York", "Pacific/Kiritimati", "UTC"]),
    st.sampled_from(["past", "next"]),
)
def test_any_words_of_time_are_read_or_refused(
    text: str, now: datetime, zone: str, prefer: str
) -> None:
    with suppress(Refusal):  # anything else that is raised fails the test
        reading = read(text, now=now, zone=zone, prefer=prefer)
        assert reading.at.utcoffset() == timedelta(0)
        assert reading.understood


@given(
    st.datetimes(datetime(2001, 1, 1), datetime(2099, 12, 25), timezones=st.just(UTC)),  # noqa: DTZ001
    st.integers(0, 23),
    st.integers(0, 59),
    st.sampled_from(["Europe/London", "America/New_York", "Australia/Lord_Howe"]),
)
def test_a_bare_time_is_the_last_or_next_such_time(
    now: datetime, hour: int, minute: int, zone: str
) -> None:
    text = f"{hour}:{minute:02}"
    past = read(text, now=now, zone=zone).at
    ahead = read(text, now=now, zone=zone, prefer="next").at
    longest = timedelta(hours=25, minutes=2)
    assert now - longest <= past <= now + timedelta(minutes=2)
    assert now <= ahead <= now + longest


@given(st.datetimes(datetime(2001, 1, 1), datetime(2099, 1, 1), timezones=st.just(UTC)))  # noqa: DTZ001
def test_what_is_written_out_in_utc_is_read_as_it_is(at: datetime) -> None:
    at = at.replace(microsecond=0)
    assert read(at.strftime("%Y-%m-%dT%H:%M:%SZ")).at == at
