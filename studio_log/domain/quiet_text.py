"""Quiet hours per weekday in words: read, written, and refused where they make no sense.

A night is named by the weekday of its evening. A start before noon means the small hours
after that evening: "sat 00:30-09:00" begins on Sunday at half past midnight.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import time
from functools import lru_cache
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.language.calendar_words import DAYS, WEEKDAY_WORDS

HOW: Final = "Write it as “fri,sat 23:30-09:00; sun off”."
LONGEST_MINUTES: Final = 20 * 60
"""No night is longer; common sense, no source: four hours to work in are left."""
LEAST_AWAKE_MINUTES: Final = 60
"""Between two nights at least so long is awake, or they are one."""
_DAY, _WEEK, _NOON = 24 * 60, 7 * 24 * 60, 12 * 60
_ENTRY = re.compile(
    r"(?P<days>[a-z][a-z ,&]*?)\s+"
    r"(?:(?P<off>off|none)|(?P<start>[0-9]{1,2}:[0-9]{2})\s*[-–—]\s*(?P<end>[0-9]{1,2}:[0-9]{2}))"
)
_MOST_LETTERS = 400


@dataclass(frozen=True)
class Hours:
    """From `start` up to `end` by the wall clock; not past the next day's `start`."""

    start: time
    end: time

    @property
    def minutes(self) -> int:
        """Their length on the wall clock; 0 for equal times."""
        return (_minute(self.end) - _minute(self.start)) % _DAY

    @property
    def after_midnight(self) -> bool:
        """Whether they begin in the small hours after the evening they are named by."""
        return _minute(self.start) < _NOON

    @property
    def words(self) -> str:
        """The hours as a person writes them: "22:00–07:00"."""
        return f"{self.start:%H:%M}–{self.end:%H:%M}"


Days = tuple[tuple[int, Hours | None], ...]
"""Weekdays that differ, 0 for Monday, in order; None for no quiet hours that night."""


@lru_cache(maxsize=64)
def read_days(text: str) -> Days:
    """Read "fri,sat 23:30-09:00; sun off"; a Refusal says what is not understood."""
    if len(text) > _MOST_LETTERS:
        raise Refusal(f"Nights that differ take up to {_MOST_LETTERS} letters. {HOW}")
    found: dict[int, Hours | None] = {}
    for entry in filter(None, (part.strip() for part in text.split(";"))):
        weekdays, hours = _read_entry(entry)
        for weekday in weekdays:
            if weekday in found:
                raise Refusal(f"{DAYS[weekday]} is named twice among the nights that differ.")
            found[weekday] = hours
    return tuple(sorted(found.items(), key=lambda pair: pair[0]))


def write_days(days: Days) -> str:
    """Write the nights that differ as they are kept: "fri 23:30-09:00; sun off"."""
    return "; ".join(
        f"{DAYS[weekday].lower()} " + (f"{hours.start:%H:%M}-{hours.end:%H:%M}" if hours else "off")
        for weekday, hours in days
    )


def week_words(every: Hours, days: Days) -> str:
    """Give "22:00–07:00, Fri and Sat 23:30–09:00, Sun none"; "none" where nothing is quiet."""
    usual = every if every.minutes else None
    groups: dict[Hours | None, list[str]] = {}
    for weekday, hours in days:
        if hours != usual:
            groups.setdefault(hours, []).append(DAYS[weekday])
    told = [
        f"{listed(names)} {hours.words if hours else 'none'}" for hours, names in groups.items()
    ]
    if usual:
        return ", ".join([usual.words, *told])
    return f"{', '.join(told)} only" if told else "none"


def listed(names: Sequence[str]) -> str:
    """Give "Fri", "Fri and Sat" or "Fri, Sat and Sun"."""
    *before, last = names
    return f"{', '.join(before)} and {last}" if before else last


def check_hours(hours: Hours, whose: str) -> None:
    """Refuse a night longer than 20 hours by the wall clock; `whose` begins the sentence."""
    if hours.minutes > LONGEST_MINUTES:
        length = f"{hours.minutes // 60} h {hours.minutes % 60:02d}".removesuffix(" 00")
        raise Refusal(
            f"{whose} from {hours.start:%H:%M} to {hours.end:%H:%M} would be {length} of quiet. "
            "A night may have 20 h. Choose another end."
        )


def check_week(every: Hours, days: Days) -> None:
    """Refuse a week that makes no sense: too long a night, or no waking hour between two."""
    check_hours(every, "Every night")
    for weekday, hours in days:
        if hours is not None:
            check_hours(hours, f"{DAYS[weekday]} night")
    nights = sorted(_week_nights(every, days))
    if not nights:
        return
    # The week is a ring: after its last night comes the first once more. It cannot be quiet
    # all round: seven nights of 20 hours are 140 of its 168.
    reached = nights[0][1]
    for start, end, name in [*nights[1:], (nights[0][0] + _WEEK, 0, nights[0][2])]:
        gap = start - reached
        if 0 < gap < LEAST_AWAKE_MINUTES:
            raise Refusal(
                f"Before {name} night only {gap} min are awake. Leave an hour or more between "
                "two nights, or let them touch."
            )
        reached = max(reached, end)


def _week_nights(every: Hours, days: Days) -> Iterable[tuple[int, int, str]]:
    """Give begin and end in minutes of the week, and the weekday's name."""
    differing = dict(days)
    for weekday, name in enumerate(DAYS):
        hours = differing.get(weekday, every)
        if hours is not None and hours.minutes:
            day = weekday + 1 if hours.after_midnight else weekday
            start = day * _DAY + _minute(hours.start)
            yield start, start + hours.minutes, name


def _read_entry(entry: str) -> tuple[list[int], Hours | None]:
    found = _ENTRY.fullmatch(entry.casefold())
    if found is None:
        raise Refusal(f"{entry[:40]!r} names no night that differs. {HOW}")
    names = [name for name in re.split(r"[ ,&]+", found["days"]) if name not in {"", "and"}]
    unknown = next((name for name in names if name not in WEEKDAY_WORDS), None)
    if unknown is not None or not names:
        raise Refusal(f"{(unknown or entry)[:40]!r} is no day of the week. {HOW}")
    weekdays = [WEEKDAY_WORDS[name] for name in names]
    if found["off"]:
        return weekdays, None
    hours = Hours(_read_time(found["start"]), _read_time(found["end"]))
    if not hours.minutes:
        name = DAYS[weekdays[0]]
        raise Refusal(
            f"{name} night would begin and end at {hours.start:%H:%M}. For a night without quiet "
            f"hours write “{name.lower()} off”."
        )
    return weekdays, hours


def _read_time(text: str) -> time:
    hour, minute = (int(part) for part in text.split(":"))
    if hour > 23 or minute > 59:
        raise Refusal(f"{text} is no time of the day. {HOW}")
    return time(hour, minute)


def _minute(at: time) -> int:
    return at.hour * 60 + at.minute
