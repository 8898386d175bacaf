"""Quiet hours and the best moment inside a window.

Quiet hours follow the local wall clock; everything here takes and gives aware UTC instants,
so that durations stay true elapsed time across clock changes.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

ONE_DAY = timedelta(days=1)
LEAST_HANDS_ON = timedelta(minutes=1)


@dataclass(frozen=True)
class Night:
    """One stretch of quiet hours, from `start` up to but not including `end`."""

    start: datetime
    end: datetime


@dataclass(frozen=True)
class QuietHours:
    """When nothing rings: local wall-clock times in an IANA zone; equal times mean never."""

    start: time = time(22, 0)
    end: time = time(7, 0)
    zone: str = "UTC"

    @property
    def words(self) -> str:
        """The hours as a person writes them: "22:00–07:00"."""
        return f"{self.start:%H:%M}–{self.end:%H:%M}"

    def night_of(self, day: date) -> Night | None:
        """Give the quiet stretch that begins on a local day, or None where there is none."""
        if self.start == self.end:
            return None
        zone = ZoneInfo(self.zone)
        last = day if self.end > self.start else day + ONE_DAY
        start = datetime.combine(day, self.start, zone).astimezone(UTC)
        end = datetime.combine(last, self.end, zone).astimezone(UTC)
        return Night(start, end) if end > start else None

    def nights(self, since: datetime, until: datetime) -> Iterator[Night]:
        """Give every quiet stretch that touches the span, in order."""
        day = since.astimezone(ZoneInfo(self.zone)).date() - ONE_DAY
        while True:
            night = self.night_of(day)
            if night is None and self.start == self.end:
                return
            if night is not None and night.start >= until:
                return
            if night is not None and night.end > since:
                yield night
            day += ONE_DAY

    def around(self, at: datetime, hands_on: timedelta = timedelta(0)) -> Night | None:
        """Give the quiet stretch that holds the moment.

        The stretch is widened at its front by `hands_on`, since work begun a minute
        before bedtime does not end by then.
        """
        day = at.astimezone(ZoneInfo(self.zone)).date()
        for begun in (day - ONE_DAY, day, day + ONE_DAY):
            night = self.night_of(begun)
            if night is not None and night.start - hands_on <= at < night.end:
                return night
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
    night = quiet.around(window.aim, margin)
    if night is None:
        return Best(window.aim)
    evening, morning = night.start - margin, night.end
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
