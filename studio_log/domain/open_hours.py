"""When the workshop is open, by weekday: read, written, and refused where it makes no sense.

"mon-fri 09:00-17:00; sat 10:00-14:00". A day that is not named is closed; a day may be named
twice, for a pause at noon. Empty text means always open. No reminder goes by it: it is for the
eye, and people in the room are not the same as nobody asleep.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.quiet_text import listed
from studio_log.language.calendar_words import DAYS, WEEKDAY_WORDS

HOW: Final = "Write it as “mon-fri 09:00-17:00; sat 10:00-14:00”."
_MOST_LETTERS: Final = 400
_MIDNIGHT: Final = 24 * 60
_ENTRY: Final = re.compile(
    r"(?P<days>[a-z][a-z ,&–—-]*?)\s+"
    r"(?P<start>[0-9]{1,2}:[0-9]{2})\s*[-–—]\s*(?P<end>[0-9]{1,2}:[0-9]{2})"
)


@dataclass(frozen=True, order=True, slots=True)
class Opening:
    """One stretch of one weekday (0 for Monday), in minutes of its wall clock; end up to 1440."""

    weekday: int
    start: int
    end: int


@lru_cache(maxsize=64)
def read_open(text: str) -> tuple[Opening, ...]:
    """Read "mon-fri 09:00-17:00; sat 10:00-14:00"; a Refusal says what is not understood."""
    if len(text) > _MOST_LETTERS:
        raise Refusal(f"Open hours take up to {_MOST_LETTERS} letters. {HOW}")
    found: list[Opening] = []
    for entry in filter(None, (part.strip() for part in text.split(";"))):
        found += _read_entry(entry)
    found.sort()
    for one, other in pairwise(found):
        if one.weekday == other.weekday and other.start <= one.end:
            raise Refusal(
                f"{DAYS[one.weekday]} is open twice at {_clock(other.start)}. "
                "Let one stretch end before the next begins."
            )
    return tuple(found)


def write_open(openings: tuple[Opening, ...]) -> str:
    """Write open hours as they are kept, days in order: "mon-fri 09:00-17:00; sat 10:00-14:00"."""
    groups: dict[tuple[int, int], list[int]] = {}
    for one in openings:
        groups.setdefault((one.start, one.end), []).append(one.weekday)
    return "; ".join(
        f"{','.join(_ranges(days))} {_clock(start)}-{_clock(end)}"
        for (start, end), days in groups.items()
    )


def open_words(openings: tuple[Opening, ...]) -> str:
    """Give "Mon, Tue and Wed 09:00–17:00, Sat 10:00–14:00"; "always" for none."""
    groups: dict[tuple[int, int], list[str]] = {}
    for one in openings:
        groups.setdefault((one.start, one.end), []).append(DAYS[one.weekday])
    told = [
        f"{listed(names)} {_clock(start)}–{_clock(end)}" for (start, end), names in groups.items()
    ]
    return ", ".join(told) or "always"


def _read_entry(entry: str) -> list[Opening]:
    found = _ENTRY.fullmatch(entry.casefold())
    if found is None:
        raise Refusal(f"{entry[:40]!r} names no open hours. {HOW}")
    start, end = _minute(found["start"]), _minute(found["end"])
    if end <= start:
        raise Refusal(
            f"{entry[:40]!r} ends before it begins. Open hours lie within one day; "
            "write those after midnight on the day after."
        )
    return [Opening(day, start, end) for day in _weekdays(found["days"])]


def _weekdays(text: str) -> list[int]:
    """Read "mon-fri", "tue,thu" or "sat and sun"; each day once."""
    found: list[int] = []
    for part in filter(None, re.split(r"[,&]|\s+and\s+", text)):
        ends = [_weekday(name) for name in re.split(r"[-–—]", part.strip())]
        if len(ends) > 2:
            raise Refusal(f"{part.strip()[:40]!r} are not days from one to another. {HOW}")
        first, last = ends[0], ends[-1]
        found += [(first + n) % 7 for n in range((last - first) % 7 + 1)]
    if not found:
        raise Refusal(f"{text.strip()[:40]!r} is no day of the week. {HOW}")
    twice = next((day for day in found if found.count(day) > 1), None)
    if twice is not None:
        raise Refusal(f"{DAYS[twice]} is named twice. {HOW}")
    return found


def _weekday(name: str) -> int:
    day = WEEKDAY_WORDS.get(name.strip())
    if day is None:
        raise Refusal(f"{name.strip()[:40]!r} is no day of the week. {HOW}")
    return day


def _minute(text: str) -> int:
    hour, minute = (int(part) for part in text.split(":"))
    whole = hour * 60 + minute
    if minute > 59 or whole > _MIDNIGHT:
        raise Refusal(f"{text} is no time of the day. {HOW}")
    return whole


def _clock(minute: int) -> str:
    return f"{minute // 60:02d}:{minute % 60:02d}"


def _ranges(days: list[int]) -> Iterator[str]:
    """Name days in order, three or more in a row as one: "mon-fri"."""
    runs: list[list[int]] = []
    for day in days:
        if runs and runs[-1][-1] == day - 1:
            runs[-1].append(day)
        else:
            runs.append([day])
    for run in runs:
        if len(run) > 2:
            yield f"{DAYS[run[0]]}-{DAYS[run[-1]]}".lower()
        else:
            yield from (DAYS[day].lower() for day in run)
