"""The studio's hours: when it works on any date, and why so; when somebody is awake.

What counts, in this order: a single day, a holiday (closed), the weekday. Who knows holidays hands
them in. All in minutes of the wall clock; `domain.closed_hours` turns them into instants.
"""

from bisect import bisect_right
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, time, timedelta
from enum import StrEnum
from functools import cached_property, lru_cache
from typing import Final

from studio_log.domain.open_hours import Opening
from studio_log.domain.quiet_text import Days, Hours
from studio_log.domain.single_days import SingleDay
from studio_log.domain.stretch_text import (
    MINUTES_OF_DAY,
    WHOLE_DAY,
    Stretch,
    joined,
    stretch_words,
    without,
)
from studio_log.language.words import tr

Week = tuple[tuple[Stretch, ...], ...]
"""Stretches of each weekday, Monday first."""
_DAY: Final = timedelta(days=1)


class Cause(StrEnum):
    """What a day's hours follow from."""

    WEEKDAY = "weekday"
    HOLIDAY = "holiday"
    SINGLE = "single"


@dataclass(frozen=True)
class DayHours:
    """The working stretches of one day, and why they are so.

    `why` is a holiday's name, or what was said of the single day; on a holiday that is worked
    its name, where nothing was said.
    """

    day: date
    working: tuple[Stretch, ...]
    cause: Cause = Cause.WEEKDAY
    why: str = ""

    @property
    def words(self) -> str:
        """Why the day differs, ready to show: "Boxing Day", "closed: fair"; "" for a weekday."""
        if self.cause is Cause.WEEKDAY:
            return ""
        if self.cause is Cause.HOLIDAY:
            return self.why
        hours = tr("open {hours}", hours=stretch_words(self.working))
        told = hours if self.working else tr("closed")
        return tr("{hours}: {why}", hours=told, why=self.why) if self.why else told


@dataclass(frozen=True)
class StudioHours:
    """All that working hours follow from; no openings means every weekday, day and night.

    `singles` are in order and do not overlap; `holidays` are the names by date of whatever
    span was asked for.
    """

    openings: tuple[Opening, ...] = ()
    singles: tuple[SingleDay, ...] = ()
    holidays: Mapping[date, str] = field(default_factory=dict, hash=False)

    def on(self, day: date) -> DayHours:
        """Give one day's working stretches and why they are so."""
        holiday = self.holidays.get(day, "")
        single = self._single(day)
        if single is not None:
            working = self.week[day.weekday()] if single.working is None else single.working
            return DayHours(day, working, Cause.SINGLE, single.why or holiday)
        if holiday:
            return DayHours(day, (), Cause.HOLIDAY, holiday)
        return DayHours(day, self.week[day.weekday()])

    def between(self, first: date, last: date) -> Iterator[DayHours]:
        """Give each day of a span, both ends with it."""
        for count in range((last - first).days + 1):
            yield self.on(first + count * _DAY)

    @property
    def always(self) -> bool:
        """Whether nothing was said at all: then the studio is never closed."""
        return not (self.openings or self.singles or self.holidays)

    @cached_property
    def week(self) -> Week:
        """Working stretches of each weekday, as they usually are."""
        return week_of(self.openings)

    @cached_property
    def _firsts(self) -> list[date]:
        return [one.first for one in self.singles]

    def _single(self, day: date) -> SingleDay | None:
        place = bisect_right(self._firsts, day) - 1
        if place < 0 or self.singles[place].last < day:
            return None
        return self.singles[place]


@lru_cache(maxsize=64)
def week_of(openings: tuple[Opening, ...]) -> Week:
    """Give the stretches of each weekday; whole days where nothing was said."""
    if not openings:
        return (WHOLE_DAY,) * 7
    return tuple(
        joined((one.start, one.end) for one in openings if one.weekday == weekday)
        for weekday in range(7)
    )


@lru_cache(maxsize=64)
def quiet_week(every: Hours, days: Days) -> Week:
    """Give the quiet stretches of each weekday; a night that runs over midnight lies on two."""
    found: list[list[Stretch]] = [[] for _ in range(7)]
    differing = dict(days)
    for evening in range(7):
        hours = differing.get(evening, every)
        if hours is None or not hours.minutes:
            continue
        day = (evening + hours.after_midnight) % 7
        start = _minute(hours.start)
        end = start + hours.minutes
        found[day].append((start, min(end, MINUTES_OF_DAY)))
        if end > MINUTES_OF_DAY:
            found[(day + 1) % 7].append((0, end - MINUTES_OF_DAY))
    return tuple(joined(stretches) for stretches in found)


@lru_cache(maxsize=64)
def waking_week(waking: tuple[Opening, ...], every: Hours, days: Days) -> Week:
    """Give the waking stretches of each weekday: what was said, else all; never the quiet ones."""
    said, quiet = week_of(waking), quiet_week(every, days)
    return tuple(without(said[weekday], quiet[weekday]) for weekday in range(7))


def _minute(at: time) -> int:
    return at.hour * 60 + at.minute
