"""Days and hours along the timeline follow the wall clock, across clock changes too.

Clock changes: tests/reference/dst_transitions.csv (IANA time zone database, 2026f).
"""

import csv
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.present.pleats import Pleat
from studio_log.present.ticks import (
    MINUTE_STEPS,
    TickRows,
    day_start,
    minute_step,
    tick_rows,
    wall_moments,
)
from studio_log.present.time_scale import TimeScale, time_scale

REFERENCE = Path(__file__).parents[1] / "reference" / "dst_transitions.csv"
PARIS = ZoneInfo("Europe/Paris")
NOW = datetime(2026, 6, 9, 11, 8, tzinfo=UTC)
HOUR, DAY = timedelta(hours=1), timedelta(days=1)


def seven_px_a_letter(text: str) -> float:
    return 7.0 * len(text)


def changes() -> list[dict[str, str]]:
    with REFERENCE.open(encoding="utf-8") as lines:
        rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    # The older data of some operating systems lack the rows marked "no".
    return [row for row in rows if row["also_2025b"] == "yes" and row["utc"] != "none"]


def rows_of(scale: TimeScale, zone: ZoneInfo = PARIS, width: float = 2000) -> TickRows:
    return tick_rows(scale, zone, (0, width), now=NOW, measure=seven_px_a_letter)


@pytest.mark.parametrize("row", changes(), ids=lambda row: f"{row['zone']} {row['utc']}")
def test_a_day_has_as_many_half_hours_as_the_clock_change_leaves(row: dict[str, str]) -> None:
    zone = ZoneInfo(row["zone"])
    day = datetime.fromisoformat(row["local_after"]).date()
    moments = list(wall_moments(day, zone, 30))
    assert len(moments) == 48 - int(row["shift_min"]) // 30
    local = [moment.astimezone(zone) for moment in moments]
    assert all(at.date() == day and at.minute % 30 == 0 for at in local)
    # True time between neighbours is half an hour: nothing is left out but what did not occur.
    assert {other - one for one, other in pairwise(moments)} == {timedelta(minutes=30)}


@pytest.mark.parametrize("row", changes(), ids=lambda row: f"{row['zone']} {row['utc']}")
def test_a_day_starts_at_its_very_first_instant(row: dict[str, str]) -> None:
    zone = ZoneInfo(row["zone"])
    change = datetime.fromisoformat(row["utc"])
    for offset in (-1, 0, 1):
        day = (change + offset * DAY).astimezone(zone).date()
        first = day_start(day, zone)
        assert first.astimezone(zone).date() == day
        assert (first - timedelta(microseconds=1)).astimezone(zone).date() < day


def test_the_spring_day_in_paris_is_an_hour_narrower() -> None:
    # 29 March 2026, 02:00 becomes 03:00 (IANA time zone database; Directive 2000/84/EC:
    # last Sunday in March at 01:00 UTC).
    start = day_start(date(2026, 3, 28), PARIS)
    scale = time_scale(start, start + 4 * DAY, 20.0)
    lines = [tick.x for tick in rows_of(scale).midnights]
    widths = [other - one for one, other in pairwise([0.0, *lines])]
    assert widths[:3] == pytest.approx([480, 460, 480])
    # 24 px a tick: two hours; 02:00 does not occur on the 29th, and midnight is the day's own.
    hours = [t.at.astimezone(PARIS) for t in rows_of(scale).hours]
    assert [at.hour for at in hours if at.day == 28] == list(range(2, 24, 2))
    assert [at.hour for at in hours if at.day == 29] == list(range(4, 24, 2))


def test_hours_are_stepped_by_what_their_labels_leave_room_for() -> None:
    # A label of 14 px and 10 px of air: 24 px between ticks at the least.
    assert minute_step(24.0, 14) == 60
    assert minute_step(10.0, 14) == 180
    assert minute_step(4.0, 14) == 360
    assert minute_step(1.0, 14) is None
    assert all(24 * 60 % step == 0 for step in MINUTE_STEPS)


def test_no_tick_stands_inside_a_pleat() -> None:
    folded = (Pleat(NOW + DAY, NOW + 18 * DAY),)
    scale = time_scale(NOW - DAY, NOW + 20 * DAY, 15.0, folded)
    rows = rows_of(scale)
    fold = scale.folds[0]
    for tick in (*rows.hours, *rows.midnights):
        assert not fold.left <= tick.x <= fold.right
    for day in rows.days:
        assert day.x + day.width <= fold.left or day.x >= fold.right
    assert len(rows.hours) > 10


def test_today_is_known_by_the_wall_clock_of_the_zone() -> None:
    late = datetime(2026, 6, 9, 22, 30, tzinfo=UTC)  # already the 10th in Paris
    scale = time_scale(late - DAY, late + 2 * DAY, 20.0)
    rows = tick_rows(scale, PARIS, (0, 2000), now=late, measure=seven_px_a_letter)
    assert [day.label for day in rows.days if day.today] == ["Wed 10 June"]


def test_a_day_cut_off_at_the_left_keeps_its_name_in_sight() -> None:
    scale = time_scale(NOW - 2 * DAY, NOW + 2 * DAY, 20.0)
    midday = scale.x(day_start(date(2026, 6, 8), PARIS)) + 240
    rows = tick_rows(scale, PARIS, (midday, 3000), now=NOW, measure=seven_px_a_letter)
    assert (rows.days[0].label, rows.days[0].x) == ("Mon 8 June", midday)


def test_far_out_only_weeks_and_then_months_are_named() -> None:
    weeks = rows_of(time_scale(NOW, NOW + 100 * DAY, 0.4))
    assert weeks.hours == ()
    assert all(day.day.weekday() == 0 for day in weeks.days)
    months = rows_of(time_scale(NOW, NOW + 700 * DAY, 0.1))
    assert {day.day.day for day in months.days} == {1}
    assert months.days[0].label in {"Jul 2026", "Jul"}


@given(
    st.floats(0.02, 3000),
    st.integers(0, 200_000),
    st.sampled_from(["Europe/Paris", "Australia/Lord_Howe", "America/Santiago", "Asia/Kolkata"]),
)
def test_labels_never_touch_and_never_leave_the_window(zoom: float, left: int, name: str) -> None:
    start = datetime(2026, 1, 1, tzinfo=UTC)
    folded = [Pleat(start + n * 9 * DAY, start + n * 9 * DAY + 8.6 * DAY) for n in range(1, 30)]
    scale = time_scale(start, datetime(2026, 12, 31, tzinfo=UTC), zoom, folded)
    window = (float(left % max(1, int(scale.width))), 0.0)
    window = (window[0], window[0] + 900)
    rows = tick_rows(scale, ZoneInfo(name), window, now=NOW, measure=seven_px_a_letter)
    hours = [(t.x - 3.5 * len(t.label), t.x + 3.5 * len(t.label)) for t in rows.hours if t.label]
    days = [(d.x, d.x + d.width) for d in rows.days]
    for places in (hours, days):
        assert all(window[0] <= one and other <= window[1] for one, other in places)
        assert all(one[1] < other[0] for one, other in pairwise(places))
    assert len(rows.hours) < 200
    assert len(rows.midnights) < 200


def test_minutes_are_written_in_full_when_the_sheet_is_near() -> None:
    scale = time_scale(NOW, NOW + 2 * HOUR, 600.0)
    labels = [tick.label for tick in rows_of(scale, width=1200).hours]
    # A label of 35 px and 10 px of air at 10 px a minute: five minutes.
    assert labels[:3] == ["13:10", "13:15", "13:20"]
