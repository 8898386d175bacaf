"""Both clock-change nights in zones of both hemispheres, and the leap day.

Every row of tests/reference/dst_local_times.csv, dst_transitions.csv and dst_daily_reminder.csv
(IANA time zone database 2026f; RFC 5545 section 3.3.5). Systems with older data cannot know
every row, so the zones are read from the package tzdata here, and no row is passed over.
"""

import csv
import zoneinfo
from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from importlib.resources import files
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from studio_log.domain.due import evening_before
from studio_log.domain.journal import Act
from studio_log.domain.moment_text import read_moment
from studio_log.domain.quiet import QuietHours
from studio_log.domain.wall_clock import Kind, from_wall
from studio_log.domain.windows import windows_of
from studio_log.language.calendar_words import day_words
from tests.support.builders import DAY, HOUR, LONDON, MINUTE, Story

REFERENCE = Path(__file__).parents[1] / "reference"
SECOND = timedelta(seconds=1)


@pytest.fixture(autouse=True)
def _zones_of_the_package() -> Iterator[None]:
    zoneinfo.reset_tzpath(to=[])
    ZoneInfo.clear_cache()
    yield
    zoneinfo.reset_tzpath()
    ZoneInfo.clear_cache()


def table(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


LOCAL_TIMES = table("dst_local_times.csv")
TRANSITIONS = table("dst_transitions.csv")
CHANGES = [row for row in TRANSITIONS if row["utc"] != "none"]
STEADY = [row for row in TRANSITIONS if row["utc"] == "none"]
DAILY = table("dst_daily_reminder.csv")


def name(row: dict[str, str]) -> str:
    return " ".join((row["zone"], row.get("local") or row["utc"], row.get("year", "")))


def at(text: str, zone: str) -> datetime:
    """Give the instant of a wall time that occurs once."""
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


def offset(text: str) -> timedelta:
    sign = -1 if text.startswith("-") else 1
    hours, minutes = text[1:].split(":")
    return sign * timedelta(hours=int(hours), minutes=int(minutes))


def test_the_zones_are_those_that_the_tables_were_made_with() -> None:
    """The tables say IANA 2026f; the package says its edition in the first line of tzdata.zi.

    A later edition may change a rule: then a row that fails is a question first.
    """
    first = files("tzdata").joinpath("zoneinfo", "tzdata.zi").read_text("ascii").splitlines()[0]
    assert first.removeprefix("# version ") >= "2026f"
    assert ZoneInfo("Africa/Casablanca").utcoffset(datetime(2027, 10, 25, 2, 30)) == 0 * HOUR  # noqa: DTZ001


# -- the tables, row by row --------------------------------------------------------------------


@pytest.mark.parametrize("row", LOCAL_TIMES, ids=name)
def test_a_time_on_the_wall_is_the_instant_of_the_table(row: dict[str, str]) -> None:
    found = from_wall(datetime.fromisoformat(row["local"]), ZoneInfo(row["zone"]))
    assert found.at == datetime.fromisoformat(row["utc_expected"])
    assert found.kind is Kind(row["kind"])
    second = row["utc_second"]
    assert found.second == (datetime.fromisoformat(second) if second else None)
    shown = found.at.astimezone(ZoneInfo(row["zone"])).replace(tzinfo=None)
    assert shown == datetime.fromisoformat(row["local_shown"])


@pytest.mark.parametrize("row", LOCAL_TIMES, ids=name)
def test_quiet_hours_begin_at_the_instant_of_the_table(row: dict[str, str]) -> None:
    local = datetime.fromisoformat(row["local"])
    night = QuietHours(local.time(), (local + 8 * HOUR).time(), row["zone"]).night_of(local.date())
    assert night is not None
    assert night.start == datetime.fromisoformat(row["utc_expected"])


@pytest.mark.parametrize("row", LOCAL_TIMES, ids=name)
def test_what_is_typed_is_the_instant_of_the_table(row: dict[str, str]) -> None:
    now = datetime.fromisoformat(row["utc_expected"]) - 30 * DAY
    reading = read_moment(row["local"], now=now, zone=row["zone"])
    assert reading.at == datetime.fromisoformat(row["utc_expected"])
    assert (reading.doubt is None) == (row["kind"] == "normal")


@pytest.mark.parametrize("row", CHANGES, ids=name)
def test_the_clock_jumps_where_the_table_says(row: dict[str, str]) -> None:
    zone, changed = ZoneInfo(row["zone"]), datetime.fromisoformat(row["utc"])
    before, after = (changed - SECOND).astimezone(zone), changed.astimezone(zone)
    assert (before.utcoffset(), after.utcoffset()) == (
        offset(row["offset_before"]),
        offset(row["offset_after"]),
    )
    assert after.replace(tzinfo=None) == datetime.fromisoformat(row["local_after"])
    jumped_at = from_wall(datetime.fromisoformat(row["local_before"]), zone)
    # A gap begins at the jump; a fold ends there: that time is the first after the second hour.
    assert jumped_at.kind is (Kind.GAP if row["kind"] == "gap" else Kind.NORMAL)
    fold = abs(int(row["shift_min"])) * MINUTE if row["kind"] == "fold" else 0 * HOUR
    assert jumped_at.at == changed + fold


@pytest.mark.parametrize("row", CHANGES, ids=name)
def test_quiet_hours_from_ten_to_seven_take_in_the_change(row: dict[str, str]) -> None:
    quiet, zone = QuietHours(time(22), time(7), row["zone"]), ZoneInfo(row["zone"])
    changed = datetime.fromisoformat(row["utc"])
    night = quiet.around(changed)
    assert night is not None
    assert night.end - night.start == 9 * HOUR - int(row["shift_min"]) * MINUTE
    for moment in (night.start, changed - SECOND, changed, changed + HOUR, night.end - SECOND):
        assert quiet.waking(moment) == night.end
        assert quiet.waking(moment).astimezone(zone).time() == time(7)
    assert quiet.waking(night.start - SECOND) == night.start - SECOND
    assert quiet.waking(night.end) == night.end


@pytest.mark.parametrize("row", STEADY, ids=name)
def test_where_the_clock_never_jumps_every_night_is_nine_hours(row: dict[str, str]) -> None:
    """Kiritimati at +14:00, Kolkata at +05:30, Casablanca after it gave up its changes."""
    quiet, year = QuietHours(time(22), time(7), row["zone"]), int(row["year"])
    begun = datetime(year, 1, 1, tzinfo=UTC)
    nights = list(quiet.nights(begun, begun + 365 * DAY))
    assert len(nights) >= 365
    assert {night.end - night.start for night in nights} == {9 * HOUR}
    ten = offset(row["offset_before"])
    assert {(night.start + ten).time() for night in nights} == {time(22)}


@pytest.mark.parametrize("row", DAILY, ids=name)
def test_what_comes_daily_at_one_wall_time_comes_at_the_instants_of_the_table(
    row: dict[str, str],
) -> None:
    """Quiet hours that begin, and others that end, at that time."""
    local, expected = (datetime.fromisoformat(row[one]) for one in ("local", "utc_expected"))
    found = from_wall(local, ZoneInfo(row["zone"]))
    assert (found.at, found.kind) == (expected, Kind(row["kind"]))
    ends = QuietHours(time(22), local.time(), row["zone"]).night_of(local.date() - DAY)
    begins = QuietHours(local.time(), time(12), row["zone"]).night_of(local.date())
    assert ends is not None
    assert begins is not None
    assert ends.end == begins.start == expected


# -- worked out by hand ------------------------------------------------------------------------

# Night 22:00 to 07:00 is nine hours on the wall. Where the clock goes forward an hour in it, eight
# hours pass; where it goes back, ten. On Lord Howe the clock jumps by half an hour only. In
# Santiago it jumps at midnight (24:00 on the Saturday), in Chatham at 02:45 and 03:45.
# The days are those of dst_transitions.csv; the hours are counted here.
NIGHTS = [
    ("Europe/London", "2027-03-27", 8.0), ("Europe/London", "2027-10-30", 10.0),
    ("America/New_York", "2027-03-13", 8.0), ("America/New_York", "2027-11-06", 10.0),
    ("America/Santiago", "2027-09-04", 8.0), ("America/Santiago", "2027-04-03", 10.0),
    ("Australia/Lord_Howe", "2027-10-02", 8.5), ("Australia/Lord_Howe", "2027-04-03", 9.5),
    ("Pacific/Chatham", "2027-09-25", 8.0), ("Pacific/Chatham", "2027-04-03", 10.0),
    ("Africa/Casablanca", "2025-04-05", 8.0), ("Africa/Casablanca", "2025-02-22", 10.0),
    ("Asia/Kolkata", "2027-03-27", 9.0), ("Pacific/Kiritimati", "2027-10-30", 9.0),
]  # fmt: skip


@pytest.mark.parametrize(("zone", "evening", "hours"), NIGHTS)
def test_a_night_is_as_long_as_the_clock_makes_it(zone: str, evening: str, hours: float) -> None:
    quiet, day = QuietHours(time(22), time(7), zone), date.fromisoformat(evening)
    lengths = [quiet.night_of(day + shift * DAY) for shift in (-1, 0, 1)]
    assert [night and (night.end - night.start) / HOUR for night in lengths] == [9.0, hours, 9.0]


@pytest.mark.parametrize(
    ("zone", "asleep", "morning"),
    [
        # London: 00:30 GMT is before the change of 28 March, 07:00 BST after it is 06:00 UTC.
        ("Europe/London", "2027-03-28T00:30Z", "2027-03-28T06:00Z"),
        # 01:30 came twice on 31 October: at 00:30 and at 01:30 UTC; 07:00 GMT is 07:00 UTC.
        ("Europe/London", "2027-10-31T00:30Z", "2027-10-31T07:00Z"),
        ("Europe/London", "2027-10-31T01:30Z", "2027-10-31T07:00Z"),
        # Santiago: 07:00 is 11:00 UTC in winter (-04:00), 10:00 UTC in summer (-03:00).
        ("America/Santiago", "2027-04-04T03:30Z", "2027-04-04T11:00Z"),
        ("America/Santiago", "2027-09-05T03:30Z", "2027-09-05T10:00Z"),
        # Lord Howe: 07:00 at +10:30 is 20:30 UTC of the day before, at +11:00 it is 20:00.
        ("Australia/Lord_Howe", "2027-04-03T15:10Z", "2027-04-03T20:30Z"),
        ("Australia/Lord_Howe", "2027-10-02T15:00Z", "2027-10-02T20:00Z"),
        # Chatham: 07:00 at +12:45 is 18:15 UTC of the day before, at +13:45 it is 17:15.
        ("Pacific/Chatham", "2027-04-03T14:30Z", "2027-04-03T18:15Z"),
        ("Pacific/Chatham", "2027-09-25T13:30Z", "2027-09-25T17:15Z"),
    ],
)
def test_the_next_morning_is_seven_on_the_wall(zone: str, asleep: str, morning: str) -> None:
    quiet = QuietHours(time(22), time(7), zone)
    moment = datetime.fromisoformat(asleep)
    assert quiet.waking(moment) == datetime.fromisoformat(morning)
    assert next(quiet.nights(moment, moment + 2 * DAY)).end == datetime.fromisoformat(morning)


@pytest.mark.parametrize(
    ("zone", "noon", "evening"),
    [
        # Two hours before ten: 20:00 on the wall of the evening before, by that day's offset.
        ("Europe/London", "2027-03-29T12:00", "2027-03-28T19:00Z"),
        ("Europe/London", "2027-03-28T12:00", "2027-03-27T20:00Z"),
        ("Europe/London", "2027-10-31T12:00", "2027-10-30T19:00Z"),
        ("Europe/London", "2027-11-01T12:00", "2027-10-31T20:00Z"),
        ("Australia/Lord_Howe", "2027-10-03T12:00", "2027-10-02T09:30Z"),
        ("Australia/Lord_Howe", "2027-10-04T12:00", "2027-10-03T09:00Z"),
    ],
)
def test_the_evening_before_is_eight_on_the_wall(zone: str, noon: str, evening: str) -> None:
    quiet = QuietHours(time(22), time(7), zone)
    assert evening_before(at(noon, zone), quiet) == datetime.fromisoformat(evening)


def test_a_length_is_true_time_through_the_change() -> None:
    """Twelve hours from 20:00 end at 09:00 in spring and at 07:00 in autumn: counted by hand."""
    zone = ZoneInfo("Europe/London")
    for evening, ends in [("2027-03-27T20:00", time(9)), ("2027-10-30T20:00", time(7))]:
        assert (at(evening, "Europe/London") + 12 * HOUR).astimezone(zone).time() == ends


@pytest.mark.parametrize(
    ("begun", "aim", "best"),
    [
        # Twelve hours, as shipped. 20:00 GMT to 09:00 BST, 20:00 BST to 07:00 GMT.
        ("2027-03-27T20:00", "2027-03-28T08:00Z", "2027-03-28T08:00Z"),
        ("2027-10-30T20:00", "2027-10-31T07:00Z", "2027-10-31T07:00Z"),
        # 15:00 GMT to 04:00 BST; best at 07:00 BST. 16:00 BST to 03:00 GMT; best at 07:00 GMT.
        ("2027-03-27T15:00", "2027-03-28T03:00Z", "2027-03-28T06:00Z"),
        ("2027-10-30T16:00", "2027-10-31T03:00Z", "2027-10-31T07:00Z"),
        # Through the night to the leap day: from 20:00 to 08:00, from 15:00 to 03:00.
        ("2028-02-28T20:00", "2028-02-29T08:00Z", "2028-02-29T08:00Z"),
        ("2028-02-28T15:00", "2028-02-29T03:00Z", "2028-02-29T07:00Z"),
        ("2028-02-29T20:00", "2028-03-01T08:00Z", "2028-03-01T08:00Z"),
    ],
)
def test_beans_in_the_evening_before_are_out_when_twelve_true_hours_have_passed(
    begun: str, aim: str, best: str
) -> None:
    story = Story(at=at(begun, "Europe/London"))
    story.mark(Act.START, "bean-soak")
    found = windows_of(story.lot, story.at, LONDON)[1]
    assert found.end.aim == datetime.fromisoformat(aim)
    assert found.best_end == datetime.fromisoformat(best)


# -- the leap day ------------------------------------------------------------------------------


def test_the_day_after_28_february_2028_is_the_29th() -> None:
    """2028 is divisible by four and no century: the Gregorian rule. 29 February is a Tuesday:
    1 January 2028 is a Saturday (from memory), and 59 days are eight weeks and three days."""
    now = at("2028-02-28T20:00", "Europe/London")
    tomorrow = read_moment("tomorrow 7:00", now=now, zone="Europe/London", prefer="next")
    assert tomorrow.at == datetime(2028, 2, 29, 7, tzinfo=UTC)
    assert day_words(tomorrow.at.date()) == "Tue 29 February"
    assert read_moment("29 Feb 9:00", now=now, zone="Europe/London", prefer="next").at == (
        datetime(2028, 2, 29, 9, tzinfo=UTC)
    )
    assert QuietHours(time(22), time(7), "Europe/London").waking(now + 3 * HOUR) == (
        datetime(2028, 2, 29, 7, tzinfo=UTC)
    )
    assert day_words((now + 2 * DAY).date()) == "Wed 1 March"
    assert day_words((at("2027-02-28T20:00", "Europe/London") + DAY).date()) == "Mon 1 March"


def test_every_night_around_the_leap_day_is_there_once() -> None:
    quiet = QuietHours(time(22), time(7), "Pacific/Auckland")
    begun = at("2028-02-27T12:00", "Pacific/Auckland")
    ends = [night.end for night in quiet.nights(begun, begun + 4 * DAY)]
    local = [end.astimezone(ZoneInfo("Pacific/Auckland")).date() for end in ends]
    assert local == [date(2028, 2, 28), date(2028, 2, 29), date(2028, 3, 1), date(2028, 3, 2)]
