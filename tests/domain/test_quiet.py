"""Quiet hours by the wall clock, and the best moment beside them.

Clock changes: tests/reference/dst_transitions.csv and dst_daily_reminder.csv (IANA time zone
database 2026f; RFC 5545 section 3.3.5), by the zone data of this system; every row of the tables
is checked in test_clock_changes.py.
"""

import csv
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.due import evening_before
from studio_log.domain.quiet import Best, QuietHours, Window, best_moment
from tests.support.builders import DAY, HOUR, LONDON, MINUTE, NINE, NO_QUIET

REFERENCE = Path(__file__).parents[1] / "reference"


def table(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


CHANGES = [
    row for row in table("dst_transitions.csv")
    if row["kind"] in {"gap", "fold"} and row["also_2025b"] == "yes"
]  # fmt: skip
NAMES = [f"{row['zone']} {row['utc'][:10]}" for row in CHANGES]


def at(text: str, zone: str = "Europe/London") -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)


@pytest.mark.parametrize("row", CHANGES, ids=NAMES)
def test_a_night_across_a_clock_change_keeps_its_wall_times(row):
    """10 pm to 7 am is nine hours of wall clock: longer or shorter by what the clock jumps."""
    quiet = QuietHours(time(22), time(7), row["zone"])
    changed = datetime.fromisoformat(row["utc"])
    night = next(n for n in quiet.nights(changed - HOUR, changed + HOUR) if n.start <= changed)
    zone = ZoneInfo(row["zone"])
    assert night.start <= changed < night.end
    assert night.start.astimezone(zone).time() == time(22)
    assert night.end.astimezone(zone).time() == time(7)
    assert night.end - night.start == 9 * HOUR - int(row["shift_min"]) * MINUTE
    assert quiet.is_quiet(changed)
    assert not quiet.is_quiet(night.end)
    assert not quiet.is_quiet(night.start - MINUTE)
    assert quiet.waking(night.start) == night.end


@pytest.mark.parametrize("row", CHANGES, ids=NAMES)
def test_evening_and_morning_beside_a_clock_change_are_wall_times(row):
    quiet = QuietHours(time(22), time(7), row["zone"])
    changed = datetime.fromisoformat(row["utc"])
    zone = ZoneInfo(row["zone"])
    night = quiet.around(changed)
    assert night is not None
    wide = Window(changed - DAY, changed, changed + DAY)
    narrow = Window(changed, changed, changed + DAY)
    early = Window(changed - DAY, changed, changed)
    hands_on = 20 * MINUTE
    morning = best_moment(narrow, quiet, hands_on)
    evening = best_moment(early, quiet, hands_on)
    assert morning.at.astimezone(zone).time() == time(7)
    assert evening.at.astimezone(zone).time() == time(21, 40)
    nearest = min((morning.at, evening.at), key=lambda one: abs(one - changed))
    assert best_moment(wide, quiet, hands_on).at == nearest


def test_every_morning_follows_the_wall_clock():
    rows = [row for row in table("dst_daily_reminder.csv") if row["zone"] == "Europe/London"]
    quiet = QuietHours(time(22), time(1, 30), "Europe/London")
    expected = [datetime.fromisoformat(row["utc_expected"]) for row in rows]
    days = [datetime.fromisoformat(row["local"]).date() - DAY for row in rows]
    nights = [quiet.night_of(day) for day in days]
    assert [night.end for night in nights if night] == expected


@pytest.mark.parametrize(
    ("quiet", "moment", "is_quiet"),
    [
        (LONDON, "2026-06-09 21:59", False),
        (LONDON, "2026-06-09 22:00", True),
        (LONDON, "2026-06-10 06:59", True),
        (LONDON, "2026-06-10 07:00", False),
        (NO_QUIET, "2026-06-09 03:00", False),
        (QuietHours(time(1), time(6), "Europe/London"), "2026-06-09 00:59", False),
        (QuietHours(time(1), time(6), "Europe/London"), "2026-06-09 01:00", True),
        (QuietHours(time(1), time(6), "Europe/London"), "2026-06-09 06:00", False),
    ],
)
def test_quiet_hours_hold_their_start_and_not_their_end(quiet, moment, is_quiet):
    assert quiet.is_quiet(at(moment)) is is_quiet


def test_quiet_hours_go_along_on_a_journey():
    """The same instant is night in London and day in Auckland."""
    moment = at("2026-06-09 23:00")
    assert LONDON.is_quiet(moment)
    assert not QuietHours(time(22), time(7), "Pacific/Auckland").is_quiet(moment)


def window(earliest: str, aim: str, latest: str | None) -> Window:
    return Window(at(earliest), at(aim), at(latest) if latest else None)


@pytest.mark.parametrize(
    ("asked", "best", "clash"),
    [
        # An aim in the day stays where it is.
        (("2026-06-09 08:00", "2026-06-09 15:00", "2026-06-09 18:00"), "2026-06-09 15:00", None),
        # Evening, where it is nearer.
        (("2026-06-09 20:00", "2026-06-09 23:00", "2026-06-10 09:00"), "2026-06-09 21:50", None),
        # Morning, where the evening is out of the window.
        (("2026-06-09 22:30", "2026-06-09 23:00", "2026-06-10 09:00"), "2026-06-10 07:00", None),
        # 02:25 lies as far from 21:50 as from 07:00: the morning.
        (("2026-06-09 20:00", "2026-06-10 02:25", "2026-06-10 09:00"), "2026-06-10 07:00", None),
        (("2026-06-09 20:00", "2026-06-10 02:24", "2026-06-10 09:00"), "2026-06-09 21:50", None),
        # Both ends just allowed.
        (("2026-06-09 21:50", "2026-06-09 23:00", "2026-06-10 06:59"), "2026-06-09 21:50", None),
        (("2026-06-09 21:51", "2026-06-09 23:00", "2026-06-10 07:00"), "2026-06-10 07:00", None),
        # Neither: the aim stays, and how far the nearer waking moment is out is said.
        (("2026-06-09 23:00", "2026-06-10 03:00", "2026-06-10 05:00"), "2026-06-10 03:00", 70),
        (("2026-06-09 23:30", "2026-06-10 03:00", "2026-06-10 06:00"), "2026-06-10 03:00", 60),
        # Ten minutes of work begun at 21:55 end after bedtime.
        (("2026-06-09 20:00", "2026-06-09 21:55", "2026-06-10 09:00"), "2026-06-09 21:50", None),
        # Without a latest moment the morning is always allowed.
        (("2026-06-09 22:30", "2026-06-10 01:00", None), "2026-06-10 07:00", None),
    ],
)
def test_the_best_moment_is_the_nearest_waking_one_the_window_allows(asked, best, clash):
    found = best_moment(window(*asked), LONDON, timedelta(minutes=10))
    assert found.at == at(best)
    assert found.clash == (None if clash is None else clash * MINUTE)


def test_without_quiet_hours_no_moment_moves():
    asked = window("2026-06-09 20:00", "2026-06-10 03:00", "2026-06-10 09:00")
    assert best_moment(asked, NO_QUIET, HOUR) == Best(asked.aim)


@given(
    st.integers(0, 3 * 1440), st.integers(0, 600), st.integers(0, 600), st.integers(0, 60),
    st.sampled_from([LONDON, NO_QUIET, QuietHours(time(1), time(6), "America/Santiago")]),
)  # fmt: skip
def test_the_best_moment_is_awake_and_nearest_or_clashes(shift, before, after, hands_on, quiet):
    """Against every minute of the window, tried one by one."""
    aim = NINE + shift * MINUTE
    asked = Window(aim - before * MINUTE, aim, aim + after * MINUTE)
    margin = max(hands_on * MINUTE, MINUTE)

    def awake(moment: datetime) -> bool:
        last = moment + margin - timedelta(seconds=1)
        return not quiet.is_quiet(moment) and not quiet.is_quiet(last)

    found = best_moment(asked, quiet, margin)
    allowed = [
        moment for step in range(-before, after + 1)
        if awake(moment := aim + step * MINUTE)
    ]  # fmt: skip
    assert asked.holds(found.at)
    assert (found.clash is None) == bool(allowed)
    if allowed:
        assert awake(found.at)
        assert abs(found.at - aim) == min(abs(one - aim) for one in allowed)
    else:
        assert found.at == aim


@pytest.mark.parametrize(
    ("quiet", "moment", "evening"),
    [
        (LONDON, "2026-06-10 09:00", "2026-06-09 20:00"),
        (NO_QUIET, "2026-06-10 09:00", "2026-06-09 20:00"),
        # On the days whose clock jumps an hour, too: 25 October has 25 hours, 29 March 23.
        (NO_QUIET, "2026-10-26 09:00", "2026-10-25 20:00"),
        (NO_QUIET, "2026-03-30 09:00", "2026-03-29 20:00"),
        (LONDON, "2026-10-26 09:00", "2026-10-25 20:00"),
        # Bed at one: the evening is the one before the day, not the one before that.
        (QuietHours(time(1), time(7), "Europe/London"), "2026-06-10 09:00", "2026-06-09 23:00"),
    ],
)
def test_the_evening_before_is_a_wall_time(quiet, moment, evening):
    assert evening_before(at(moment), quiet) == at(evening)


def test_equal_times_mean_no_quiet_hours_at_all():
    assert NO_QUIET.night_of(date(2026, 6, 9)) is None
    assert list(NO_QUIET.nights(NINE, NINE + 400 * DAY)) == []
    assert NO_QUIET.waking(NINE) == NINE
