"""Quiet hours and the best moment inside a window.

Quiet hours follow the local wall clock; everything here takes and gives aware UTC instants,
so that durations stay true elapsed time across clock changes.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

from studio_log.domain.quiet_text import Days, Hours, week_words

ONE_DAY = timedelta(days=1)
LEAST_HANDS_ON = timedelta(minutes=1)
NOTHING = timedelta(0)
REACH = 12
"""So many days to either side are looked at: a stretch that ends at all lasts under a week."""


@dataclass(frozen=True)
class Night:
    """One stretch of quiet hours, from `start` up to but not including `end`."""

    start: datetime
    end: datetime


@dataclass(frozen=True)
class QuietHours:
    """When nothing rings: local wall-clock times in an IANA zone; equal times mean never.

    `days` names nights that differ by the weekday of their evening, 0 for Monday. A start
    before noon means the small hours after that evening. Nights that overlap or touch are
    one stretch.
    """

    start: time = time(22, 0)
    end: time = time(7, 0)
    zone: str = "UTC"
    days: Days = ()

    @property
    def words(self) -> str:
        """The hours as a person writes them: "22:00–07:00, Fri and Sat 23:30–09:00"."""
        return week_words(Hours(self.start, self.end), self.days)

    def night_of(self, day: date) -> Night | None:
        """Give the first night that begins on a local day, or None where there is none."""
        return next(iter(_begun_on(self, day)), None)

    def nights(self, since: datetime, until: datetime) -> Iterator[Night]:
        """Give every quiet stretch that touches the span, in order."""
        day, last = _utc(since).date(), _utc(until).date()
        seen = since
        while day <= last:
            for _, night in _stretches(self, day, NOTHING):
                if night.start >= until:
                    return
                if night.end > seen:
                    seen = night.end
                    yield night
            day += ONE_DAY

    def around(self, at: datetime, hands_on: timedelta = NOTHING) -> Night | None:
        """Give the quiet stretch that holds the moment.

        The stretch is widened at its front by `hands_on`, since work begun a minute
        before bedtime does not end by then.
        """
        found = self.widened(at, hands_on)
        return None if found is None else found[1]

    def widened(self, at: datetime, hands_on: timedelta) -> tuple[datetime, Night] | None:
        """Give the stretch widened by `hands_on` that holds the moment, and its front.

        Two nights with less than `hands_on` between them are one: no work fits between. In
        a week with no room for it at all they stay apart, and the front of each lies at
        the end of the one before.
        """
        for found in _stretches(self, _utc(at).date(), hands_on):
            if found[0] <= at < found[1].end:
                return found
        return None

    def is_quiet(self, at: datetime) -> bool:
        """Say whether the moment lies in quiet hours."""
        return self.around(at) is not None

    def waking(self, at: datetime) -> datetime:
        """Give the moment itself, or the end of the quiet hours that hold it."""
        night = self.around(at)
        return at if night is None else night.end


@dataclass(frozen=True)
class Window:
    """Earliest, aim and latest moment; `latest` None means without limit."""

    earliest: datetime
    aim: datetime
    latest: datetime | None

    def holds(self, at: datetime) -> bool:
        """Say whether the moment lies in the window, ends included."""
        return self.earliest <= at and (self.latest is None or at <= self.latest)


@dataclass(frozen=True)
class Best:
    """The best moment in a window: `night` is what it was moved out of, if it was.

    `clash` is how far the nearest waking moment lies outside the window, where no waking
    moment fits; the best moment is then the aim, asleep or not.
    """

    at: datetime
    night: Night | None = None
    clash: timedelta | None = None


def best_moment(window: Window, quiet: QuietHours, hands_on: timedelta) -> Best:
    """Move the aim out of quiet hours to the nearest waking moment the window allows.

    On a tie the morning wins. Later windows never give earlier moments: the evening
    candidate is the same for every aim in the (widened) night.
    """
    margin = max(hands_on, LEAST_HANDS_ON)
    found = quiet.widened(window.aim, margin)
    if found is None:
        return Best(window.aim)
    evening, night = found
    morning = night.end
    allowed = [at for at in (morning, evening) if window.holds(at)]
    if not allowed:
        return Best(window.aim, night, _shortfall(window, evening, morning))
    return Best(min(allowed, key=lambda at: abs(at - window.aim)), night)


def _shortfall(window: Window, evening: datetime, morning: datetime) -> timedelta:
    """How far the nearer of the two waking moments lies outside the window."""
    too_early = window.earliest - evening
    if window.latest is None:
        return too_early
    return min(too_early, morning - window.latest)


# --- the stretches of a day, worked out once ------------------------------------------------
# A drawing of the lanes asks for them thousands of times, and always for the same few days.


@lru_cache(maxsize=4096)
def _stretches(
    quiet: QuietHours, day: date, hands_on: timedelta
) -> tuple[tuple[datetime, Night], ...]:
    """Give front and stretch, in order, of all that touch a day of UTC."""
    begin = datetime.combine(day, time(0), UTC)
    nights = _apart(quiet, day)
    if hands_on:
        nights = _joined(nights, hands_on, begin)
    ends = [begin - (REACH + 2) * ONE_DAY, *(night.end for night in nights[:-1])]
    fronts = [max(one.start - hands_on, end) for one, end in zip(nights, ends, strict=False)]
    return tuple(
        (front, night)
        for front, night in zip(fronts, nights, strict=True)
        if front < begin + ONE_DAY and night.end > begin
    )


def _joined(nights: tuple[Night, ...], hands_on: timedelta, about: datetime) -> tuple[Night, ...]:
    """Join nights with too little room between, unless that would never end."""
    runs: list[list[Night]] = []
    for night in nights:
        if runs and night.start - runs[-1][-1].end < hands_on:
            runs[-1].append(night)
        else:
            runs.append([night])
    endless = (REACH - 2) * ONE_DAY
    found: list[Night] = []
    for run in runs:
        start, end = run[0].start, run[-1].end
        bounded = start > about - endless and end < about + endless
        found.extend([Night(start, end)] if bounded else run)
    return tuple(found)


@lru_cache(maxsize=1024)
def _apart(quiet: QuietHours, day: date) -> tuple[Night, ...]:
    """Give the quiet stretches about a day; nights that overlap or touch are one."""
    about = (day + shift * ONE_DAY for shift in range(-REACH, REACH + 1))
    nights = sorted(
        (night for one in about for night in _begun_on(quiet, one)), key=lambda one: one.start
    )
    found: list[Night] = []
    for night in nights:
        if found and night.start <= found[-1].end:
            found[-1] = Night(found[-1].start, max(found[-1].end, night.end))
        else:
            found.append(night)
    return tuple(found)


@lru_cache(maxsize=4096)
def _begun_on(quiet: QuietHours, day: date) -> tuple[Night, ...]:
    """Give the nights that begin on a local day, the small hours of the day before first."""
    differing = dict(quiet.days)
    every = Hours(quiet.start, quiet.end)
    found: list[Night] = []
    for small_hours, weekday in ((True, (day.weekday() - 1) % 7), (False, day.weekday())):
        hours = differing.get(weekday, every)
        if hours is None or not hours.minutes or hours.after_midnight is not small_hours:
            continue
        night = _between(day, hours, ZoneInfo(quiet.zone))
        if night.end > night.start:
            found.append(night)
    return tuple(found)


def _between(day: date, hours: Hours, zone: ZoneInfo) -> Night:
    last = day if hours.end > hours.start else day + ONE_DAY
    return Night(
        datetime.combine(day, hours.start, zone).astimezone(UTC),
        datetime.combine(last, hours.end, zone).astimezone(UTC),
    )


def _utc(at: datetime) -> datetime:
    return at if at.tzinfo is UTC else at.astimezone(UTC)
