"""The stretches in which the studio is closed, as instants, and why single days differ in them."""

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.stretch_text import MINUTES_OF_DAY
from studio_log.domain.studio_hours import Cause, DayHours, StudioHours
from studio_log.domain.wall_clock import from_wall

REACH: Final = timedelta(days=8)
"""So far beyond a span its edges are looked for; a stretch that is longer ends there."""
_DAY: Final = timedelta(days=1)


@dataclass(frozen=True)
class ClosedStretch:
    """From one instant up to another, UTC, and the days in it that differ from their weekday."""

    start: datetime
    end: datetime
    days: tuple[tuple[date, str], ...] = ()


def closed_stretches(
    hours: StudioHours, zone: str, since: datetime, until: datetime
) -> Iterator[ClosedStretch]:
    """Give each stretch between two openings that touches the span, in order.

    Wall-clock times in an IANA zone: a day of 23 or 25 hours is closed an hour less or more.
    """
    if hours.always:
        return
    place = ZoneInfo(zone)
    first, last = (at.astimezone(place).date() for at in (since, until))
    days = list(hours.between(first - REACH, last + REACH))
    named = [(one.day, one.words) for one in days if one.cause is not Cause.WEEKDAY]
    shut = _instant(first - REACH, 0, place)
    for start, end in openings_of(days, place):
        if max(shut, since) < min(start, until):
            yield ClosedStretch(shut, start, _within(named, shut, start, place))
        shut = max(end, shut)
    end = _instant(last + REACH, MINUTES_OF_DAY, place)
    if max(shut, since) < min(end, until):
        yield ClosedStretch(shut, end, _within(named, shut, end, place))


def openings_of(days: Iterable[DayHours], place: ZoneInfo) -> Iterator[tuple[datetime, datetime]]:
    """Give the working stretches of some days as instants in UTC, in order."""
    for one in days:
        for begins, ends in one.working:
            start, end = _instant(one.day, begins, place), _instant(one.day, ends, place)
            if start < end:  # a stretch in the hour that a clock change leaves out has no length
                yield start, end


def _within(
    named: list[tuple[date, str]], start: datetime, end: datetime, place: ZoneInfo
) -> tuple[tuple[date, str], ...]:
    """Give the days that the stretch touches, of all that differ."""
    if not named:
        return ()
    first = start.astimezone(place).date()
    last = (end - timedelta(microseconds=1)).astimezone(place).date()
    return tuple(named[bisect_left(named, (first, "")) : bisect_left(named, (last + _DAY, ""))])


@lru_cache(maxsize=4096)
def _instant(day: date, minute: int, zone: ZoneInfo) -> datetime:
    if minute == MINUTES_OF_DAY:
        day, minute = day + _DAY, 0
    local = datetime.combine(day, time(minute // 60, minute % 60))
    return from_wall(local, zone).at.astimezone(UTC)
