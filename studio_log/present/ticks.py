"""Days and hours along the top of the timeline, stepped by the calendar of a zone.

Steps follow the wall clock, so a day of 23 or 25 hours is as wide as it is long, and an
hour that does not occur has no tick.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from functools import lru_cache
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.language.calendar_words import date_words, month_name, weekday_name
from studio_log.present.time_scale import TimeScale, flat_parts

Measure = Callable[[str], float]
"""Width of a text in pixels."""

MINUTE_STEPS: Final = (1, 2, 5, 15, 30, 60, 120, 180, 360, 720)
"""Minutes of wall clock between ticks; each divides a day."""
DAY_STEPS: Final = (1, 7, 31)
"""Days between day ticks: every day, every Monday, every first of a month."""
_LABEL_GAP: Final = 10.0
_SLIVER: Final = 1.0


@dataclass(frozen=True, slots=True)
class Tick:
    """A line down the sheet, with its label or "" where there is no room."""

    at: datetime
    x: float
    label: str


@dataclass(frozen=True, slots=True)
class DayLabel:
    """The name of a day over the part of it that is seen."""

    day: date
    x: float
    width: float
    """Of the text, in pixels."""
    label: str
    today: bool


@dataclass(frozen=True, slots=True)
class TickRows:
    """Everything the header draws for one window of the sheet."""

    midnights: tuple[Tick, ...]
    hours: tuple[Tick, ...]
    days: tuple[DayLabel, ...]


def tick_rows(
    scale: TimeScale,
    zone: ZoneInfo,
    window: tuple[float, float],
    *,
    now: datetime,
    measure: Measure,
    measure_day: Measure | None = None,
) -> TickRows:
    """Lay out the ticks whose x lies in the window, none of them inside a pleat.

    `measure` gives the width of an hour's label, `measure_day` that of a day's.
    """
    parts = flat_parts(scale, *window)
    measure_day = measure_day or measure
    step = _day_step(scale, measure_day)
    today = now.astimezone(zone).date()
    rooms = [room for part in parts for room in _day_rooms(scale, zone, part, step)]
    return TickRows(
        midnights=tuple(t for part in parts for t in _midnights(scale, zone, part, step)),
        hours=tuple(t for part in parts for t in _hours(scale, zone, part, measure)),
        days=tuple(_day_labels(rooms, step, today, measure_day)),
    )


@lru_cache(maxsize=4096)
def day_start(day: date, zone: ZoneInfo) -> datetime:
    """Give the first instant of a local day, in UTC; where midnight is skipped, the jump.

    Python's zoneinfo reads a missing time with the offset before the gap, as RFC 5545,
    section 3.3.5 asks; for a gap that begins at midnight that is the jump itself.
    """
    return datetime(day.year, day.month, day.day, tzinfo=zone).astimezone(UTC)


@lru_cache(maxsize=256)
def wall_moments(day: date, zone: ZoneInfo, step: int) -> tuple[datetime, ...]:
    """Give the instants of a local day, `step` minutes of wall clock apart, in order.

    A wall time that does not occur is left out, one that occurs twice comes twice.
    """
    found = set()
    for minutes in range(0, 24 * 60, step):
        for fold in (0, 1):
            hour, minute = divmod(minutes, 60)
            wall = datetime(day.year, day.month, day.day, hour, minute, tzinfo=zone, fold=fold)
            moment = wall.astimezone(UTC)
            if moment.astimezone(zone).replace(tzinfo=None) == wall.replace(tzinfo=None):
                found.add(moment)
    return tuple(sorted(found))


def minute_step(zoom: float, label_width: float) -> int | None:
    """Give the finest step in minutes whose labels fit, or None where only days do."""
    wide = label_width + _LABEL_GAP
    return next((step for step in MINUTE_STEPS if step / 60 * zoom >= wide), None)


def _local_days(
    scale: TimeScale, zone: ZoneInfo, part: tuple[float, float]
) -> Iterator[tuple[date, float, float]]:
    """Yield each local day that meets the part, with its left and right, uncut."""
    day = scale.moment(part[0]).astimezone(zone).date()
    left = scale.x(day_start(day, zone))
    while left < part[1]:
        following = day + timedelta(days=1)
        right = scale.x(day_start(following, zone))
        yield day, left, right
        day, left = following, right


def _day_step(scale: TimeScale, measure: Measure) -> int:
    """Give the days between lines, so that the shortest label fits."""
    wide = measure("00") + _LABEL_GAP
    return next((days for days in DAY_STEPS if days * 24 * scale.zoom >= wide), DAY_STEPS[-1])


def _on_step(day: date, step: int) -> bool:
    return step == 1 or (step == 7 and day.weekday() == 0) or (step == 31 and day.day == 1)


def _midnights(
    scale: TimeScale, zone: ZoneInfo, part: tuple[float, float], step: int
) -> Iterator[Tick]:
    for day, left, _ in _local_days(scale, zone, part):
        if _on_step(day, step) and part[0] + _SLIVER < left < part[1] - _SLIVER:
            yield Tick(day_start(day, zone), left, "")


def _hours(
    scale: TimeScale, zone: ZoneInfo, part: tuple[float, float], measure: Measure
) -> Iterator[Tick]:
    step = minute_step(scale.zoom, measure("00"))
    if step is not None and step < 60:
        step = minute_step(scale.zoom, measure("00:00"))
    if step is None:
        return
    used = part[0]
    for day, _, right in _local_days(scale, zone, part):
        if right < part[0]:
            continue
        for moment in wall_moments(day, zone, step):
            x = scale.x(moment)
            if not part[0] + _SLIVER < x < part[1] - _SLIVER or moment == day_start(day, zone):
                continue
            label = _hour_label(moment.astimezone(zone))
            half = measure(label) / 2
            if x - half < used or x + half > part[1]:
                label = ""
            else:
                used = x + half + _LABEL_GAP / 2
            yield Tick(moment, x, label)


def _hour_label(local: datetime) -> str:
    return f"{local.hour}" if local.minute == 0 else f"{local.hour}:{local.minute:02d}"


def _day_rooms(
    scale: TimeScale, zone: ZoneInfo, part: tuple[float, float], step: int
) -> list[tuple[date, float, float]]:
    """List the days to be named in a part, each with the room up to the next."""
    days = [
        (day, max(left, part[0]))
        for day, left, right in _local_days(scale, zone, part)
        if _on_step(day, step) and right > part[0]
    ]
    ends = [*(left for _, left in days[1:]), part[1]]
    return [(day, left, end) for (day, left), end in zip(days, ends, strict=False)]


def _day_labels(
    rooms: list[tuple[date, float, float]], step: int, today: date, measure: Measure
) -> Iterator[DayLabel]:
    """Yield the longest name of each day that its room holds."""
    for day, left, right in rooms:
        for label in _day_forms(day, step):
            width = measure(label)
            if width + _LABEL_GAP <= right - left:
                yield DayLabel(day, left, width, label, day == today)
                break


def _day_forms(day: date, step: int) -> tuple[str, ...]:
    """Names of a day, the fullest first."""
    month = month_name(day.month)
    if step == 31:
        return (f"{month[:3]} {day.year}", month[:3])
    weekday = weekday_name(day.weekday())
    return (
        f"{weekday} {date_words(day)}",
        f"{weekday} {date_words(day, short=True)}",
        f"{weekday} {day.day}",
        date_words(day, short=True),
        f"{day.day}",
    )
