"""Reading a moment as a dyer types it: "13:08", "-3h", "at eight last night", "Mon 14:00"."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.clock_text import ClockReading, take_clock
from studio_log.domain.day_text import DayReading, Prefer, take_day
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import clean, plain, quoted
from studio_log.domain.span_text import checked_span, parse_span
from studio_log.domain.wall_clock import Kind, WallTime, from_wall, known_zone
from studio_log.language.calendar_words import day_words

LONGEST: Final = 120
YEARS: Final = range(2000, 2101)
AHEAD: Final = timedelta(minutes=2)
"""A clock on the wall may run this much fast: "13:08" typed at 13:07 is now, not yesterday."""
WAKING: Final = (time(7), time(22))
"""Where both halves of a past day are open, work was likelier done between these."""

NEAR: Final = timedelta(days=31)
HALF_A_YEAR: Final = timedelta(days=183)

_ONE_DAY: Final = timedelta(days=1)
_PART: Final = r"\b(?:(?:in the|at|by) )?(morning|afternoon|evening|night)\b"
_EXAMPLES: Final = "Write it as 13:08, yesterday 20:00, -3h or 2026-06-09T13:08."
_FILLER: Final = frozenset({
    "a", "about", "and", "around", "approximately", "at", "bath", "beans", "by", "ca", "circa",
    "cloth", "did", "done", "dipped", "dried", "ended", "finished", "from", "had", "hanging",
    "hung", "i", "in", "into", "it", "just", "left", "lifted", "made", "milk", "my", "on",
    "out", "piece", "pieces", "pot", "put", "rinsed", "roughly", "say", "scoured", "set",
    "since", "soaked", "spun", "started", "stirred", "strained", "taken", "the", "them", "they",
    "this", "took", "turned", "up", "was", "washed", "we", "went", "were"
})  # fmt: skip
"""Words that may stand around a time without changing it."""
_ISO: Final = (
    r"(?P<date>[0-9]{4}-[0-9]{2}-[0-9]{2})[t ](?P<time>[0-9]{2}:[0-9]{2}(?::[0-9]{2})?)"
    r"(?:\.[0-9]{1,9})? ?(?P<offset>z|[+-][0-9]{2}:?[0-9]{2})?"
)


@dataclass(frozen=True)
class MomentReading:
    """An aware UTC instant and the IANA zone it was meant in.

    `understood` says it back in words; `doubt` is a question where another moment may as
    well be meant, else None.
    """

    at: datetime
    zone: str
    understood: str
    doubt: str | None = None


@dataclass(frozen=True)
class _Found:
    """A moment before it is said back."""

    wall: WallTime
    doubt: str | None = None


def read_moment(text: str, *, now: datetime, zone: str, prefer: Prefer = "past") -> MomentReading:
    """Give the moment that a text means, seen from `now` (aware) in the studio's zone.

    A bare time of day is the last such time, or the next with `prefer="next"`. What cannot
    be read is a Refusal with examples; nothing is guessed without saying so.
    """
    if now.tzinfo is None:
        raise ValueError("now has to be aware")
    tz = known_zone(zone)
    said = clean(text, "the time", longest=LONGEST).casefold()
    try:
        found = _Reader(text, now.astimezone(UTC), tz, prefer).read(said)
    except (OverflowError, ValueError):
        raise _unreadable(text) from None
    if found.wall.at.year not in YEARS:
        raise Refusal(
            f"{quoted(text)} lies outside the years 2000 to 2100. Nothing was changed. {_EXAMPLES}"
        )
    return MomentReading(
        at=found.wall.at,
        zone=zone,
        understood=moment_words(found.wall.at, now, tz),
        doubt=_with_clock_change(found, tz),
    )


def _unreadable(text: str) -> Refusal:
    return Refusal(f"{quoted(text)} cannot be read as a time. Nothing was changed. {_EXAMPLES}")


class _Reader:
    """One text against one `now`."""

    def __init__(self, text: str, now: datetime, tz: ZoneInfo, prefer: Prefer) -> None:
        self._text = text
        self._now = now
        self._tz = tz
        self._prefer = prefer
        self._today = now.astimezone(tz).date()

    def read(self, said: str) -> _Found:
        if said in {"now", "just now", "right now"}:
            return _Found(WallTime(self._now))
        return self._written_out(said) or self._elapsed(said) or self._spoken(said)

    def _written_out(self, said: str) -> _Found | None:
        """Read a full date and time; an offset beats the studio's zone."""
        found = re.fullmatch(_ISO, said)
        if found is None:
            return None
        local = datetime.fromisoformat(f"{found['date']}T{found['time']}")
        if not found["offset"]:
            return _Found(from_wall(local, self._tz))
        offset = found["offset"].replace("z", "+00:00")
        return _Found(
            WallTime(datetime.fromisoformat(f"{local.isoformat()}{offset}").astimezone(UTC))
        )

    def _elapsed(self, said: str) -> _Found | None:
        """Read a true elapsed time before or after now."""
        way = re.fullmatch(r"(?:-(?P<minus>.+)|\+(?P<plus>.+)|(?P<ago>.+) ago|in (?P<in>.+))", said)
        if way is None:
            return None
        spoken = next(words for words in way.groups() if words)
        span = parse_span(self._without_filler(spoken))
        if span is None:
            if way["minus"] or way["plus"]:
                raise _unreadable(self._text)
            return None
        checked_span(span, self._text)
        return _Found(WallTime(self._now + (span if way["plus"] or way["in"] else -span)))

    @staticmethod
    def _without_filler(spoken: str) -> str:
        """Drop what may stand before an elapsed time: "lifted it about 3 h"."""
        words = spoken.split()
        while words and words[0] in _FILLER - {"a"}:
            words.pop(0)
        return " ".join(words)

    def _spoken(self, said: str) -> _Found:
        rest = re.sub(r"\b([ap])\.m\b\.?", r"\1m", said).replace("o'clock", "oclock")
        taken_day = take_day(rest, self._today)
        day, rest = taken_day or (None, rest)
        part = re.search(_PART, rest)
        if part is not None:
            rest = f"{rest[: part.start()]} {rest[part.end() :]}"
        taken = take_clock(rest)
        if taken is None:
            raise self._without_clock(day, rest)
        clock, rest = taken
        if not set(re.findall(r"[^\s,;.]+", rest)) <= _FILLER:
            raise _unreadable(self._text)
        named = part[1] if part else ""
        if day is not None and day.part:
            if named not in {"", day.part}:
                raise _unreadable(self._text)
            named = day.part
        hours = clock.in_part(named) if named else clock.hours
        if not hours:
            raise self._contradiction(named)
        return self._on(day, clock, hours) if day else self._nearest(clock, hours)

    def _without_clock(self, day: DayReading | None, rest: str) -> Refusal:
        if day is not None and set(rest.split()) <= _FILLER:
            return Refusal(
                f"{quoted(self._text)} says the day but not the time. Nothing was changed. "
                "Add the time, as in “yesterday 20:00”."
            )
        return _unreadable(self._text)

    def _contradiction(self, part: str) -> Refusal:
        return Refusal(
            f"{quoted(self._text)}: that time does not lie in the {part}. Nothing was changed. "
            f"{_EXAMPLES}"
        )

    def _nearest(self, clock: ClockReading, hours: Sequence[int]) -> _Found:
        """Choose the last such time, or the next, whatever the day."""
        around = [self._today + timedelta(days=days) for days in range(-3, 4)]
        walls = [wall for day in around for wall in self._walls(day, clock, hours)]
        fitting = [wall for wall in walls if self._fits(wall)]
        return _Found(self._closest(fitting))

    def _on(self, day: DayReading, clock: ClockReading, hours: Sequence[int]) -> _Found:
        """Choose among the times of a named day, moving on where it may be another one."""
        walls = list(self._walls(day.day, clock, hours))
        fitting = [wall for wall in walls if self._fits(wall)]
        if day.yearly and not fitting and self._soon(walls):
            fitting = walls  # said as it stands; that it lies ahead is for others to refuse
        other = day.moved(prefer=self._prefer)
        if not fitting and other is not None:
            return self._on(day.at(other), clock, hours)
        if len(fitting or walls) > 1:
            return self._doubtful(fitting or walls)
        chosen = (fitting or walls)[0]
        return _Found(chosen, None if day.fixed else self._which_year(chosen))

    def _soon(self, walls: Sequence[WallTime]) -> bool:
        """Say whether a date without its year is about now, so that no year is moved."""
        return any(abs(wall.at - self._now) <= NEAR for wall in walls)

    def _which_year(self, wall: WallTime) -> str | None:
        """Ask about a date without its year that lies far off."""
        if abs(wall.at - self._now) <= HALF_A_YEAR:
            return None
        local = self._local(wall)
        return f"Is {day_words(local.date())} {local.year} meant? No year was given."

    def _doubtful(self, walls: Sequence[WallTime]) -> _Found:
        awake = [wall for wall in walls if WAKING[0] <= self._local(wall).time() <= WAKING[1]]
        chosen = self._closest(awake or walls)
        choices = " or ".join(self._said(wall) for wall in walls)
        return _Found(chosen, f"Is {choices} meant? {self._said(chosen)} was taken.")

    def _walls(self, day: date, clock: ClockReading, hours: Sequence[int]) -> Iterator[WallTime]:
        for hour in hours:
            on = day + _ONE_DAY * (hour // 24)
            at = time(hour % 24, clock.minute, clock.second)
            yield from_wall(datetime.combine(on, at), self._tz)

    def _fits(self, wall: WallTime) -> bool:
        if self._prefer == "next":
            return wall.at >= self._now
        return wall.at <= self._now + AHEAD

    def _closest(self, walls: Sequence[WallTime]) -> WallTime:
        return min(walls, key=lambda wall: abs(wall.at - self._now))

    def _said(self, wall: WallTime) -> str:
        local = self._local(wall)
        return f"{local:%H:%M} on {day_words(local.date())}"

    def _local(self, wall: WallTime) -> datetime:
        return wall.at.astimezone(self._tz)


def _with_clock_change(found: _Found, tz: ZoneInfo) -> str | None:
    """Add the question that a time in a clock change raises."""
    wall = found.wall
    local = wall.at.astimezone(tz)
    if wall.kind is Kind.GAP:
        change = (
            f"The clocks went forward over that time on {day_words(local.date())}; "
            f"{local:%H:%M} was taken. Is that right?"
        )
    elif wall.kind is Kind.FOLD:
        change = (
            f"The clocks went back on {day_words(local.date())}, so {local:%H:%M} came twice; "
            "the first was taken. Is that right?"
        )
    else:
        return found.doubt
    return f"{found.doubt} {change}" if found.doubt else change


def moment_words(at: datetime, now: datetime, tz: ZoneInfo) -> str:
    """Say a moment in full, so that a slip shows: "Mon 8 June 2026, 20:00 (37 h ago)"."""
    local, today = at.astimezone(tz), now.astimezone(tz).date()
    near = {-1: "yesterday, ", 0: "today, ", 1: "tomorrow, "}.get((local.date() - today).days, "")
    clock = f"{local:%H:%M:%S}" if local.second else f"{local:%H:%M}"
    return f"{near}{day_words(local.date())} {local.year}, {clock} ({_distance(at - now)})"


def _distance(ahead: timedelta) -> str:
    seconds = abs(ahead.total_seconds())
    if seconds < 60:
        return "now"
    if seconds < 3600:
        figure = f"{plain(seconds / 60, 0)} min"
    elif seconds < 48 * 3600:
        figure = f"{plain(seconds / 3600, 1 if seconds < 36_000 else 0)} h"
    else:
        figure = f"{plain(seconds / 86_400, 0)} d"
    return f"in {figure}" if ahead > timedelta(0) else f"{figure} ago"
