"""Single days on which the studio works otherwise than its weekday: read and written.

One a line, or parted by semicolons: "2026-12-24 closed: fair", "2026-12-27 10:00-12:00",
"2026-08-03 to 2026-08-14 closed", "2026-12-28 usual" (as its weekday has it, holiday or not).
"""

import re
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from itertools import pairwise
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.stretch_text import Stretch, read_stretches, write_stretches

HOW: Final = "Write it as “2026-12-24 closed: fair” or “2026-12-27 10:00-12:00”."
MOST_LETTERS: Final = 20_000
MOST_DAYS: Final = 400
"""So many entries are kept, and so many days one may span: a year and a month."""
LONGEST_WHY: Final = 80
_DATE: Final = r"([0-9]{4}-[0-9]{2}-[0-9]{2})"
_ENTRY: Final = re.compile(
    rf"{_DATE}(?:\s*(?:to|\.\.|–|—)\s*{_DATE})?\s+"
    r"(?P<hours>closed|usual|[0-9][^a-z]*?)(?:\s*:\s+(?P<why>.*))?",
    re.IGNORECASE,
)


@dataclass(frozen=True, order=True)
class SingleDay:
    """A day, or a run of days, with hours of its own.

    `working` are minutes of the wall clock, () for closed and None for as the weekday has it.
    """

    first: date
    last: date
    working: tuple[Stretch, ...] | None = ()
    why: str = ""


@lru_cache(maxsize=16)
def read_single_days(text: str) -> tuple[SingleDay, ...]:
    """Read single days, in order; a Refusal names the entry that is not understood."""
    if len(text) > MOST_LETTERS:
        raise Refusal(f"Single days take up to {MOST_LETTERS:,} letters. Forget those long past.")
    entries = [entry for part in re.split(r"[;\n]", text) if (entry := part.strip())]
    if len(entries) > MOST_DAYS:
        raise Refusal(f"Up to {MOST_DAYS} single days are kept. Forget those long past.")
    found = sorted((_read_entry(entry) for entry in entries), key=lambda one: one.first)
    for one, other in pairwise(found):
        if other.first <= one.last:
            raise Refusal(f"{other.first} is named twice among the single days. Leave one of them.")
    return tuple(found)


def write_single_days(days: tuple[SingleDay, ...]) -> str:
    """Write single days as they are kept, one a line."""
    return "\n".join(_write(one) for one in days)


def with_day(days: tuple[SingleDay, ...], new: SingleDay) -> tuple[SingleDay, ...]:
    """Give the days with one more; what it covers of others gives way to it."""
    kept = [piece for one in days for piece in _around(one, new.first, new.last)]
    return tuple(sorted((*kept, new), key=lambda one: one.first))


def without_day(days: tuple[SingleDay, ...], day: date) -> tuple[SingleDay, ...]:
    """Give the days without one; a run of days is left before and after it."""
    return tuple(piece for one in days for piece in _around(one, day, day))


def _around(one: SingleDay, first: date, last: date) -> list[SingleDay]:
    if one.last < first or one.first > last:
        return [one]
    left: list[SingleDay] = []
    if one.first < first:
        left.append(SingleDay(one.first, first - timedelta(days=1), one.working, one.why))
    if one.last > last:
        left.append(SingleDay(last + timedelta(days=1), one.last, one.working, one.why))
    return left


def _read_entry(entry: str) -> SingleDay:
    found = _ENTRY.fullmatch(entry)
    if found is None:
        raise Refusal(f"{entry[:60]!r} is no single day. {HOW}")
    first = _date(found[1])
    last = _date(found[2]) if found[2] else first
    if not 0 <= (last - first).days < MOST_DAYS:
        raise Refusal(
            f"{entry[:60]!r} spans no days that can be kept: from 1 to {MOST_DAYS}, in order."
        )
    why = " ".join((found["why"] or "").split())
    if len(why) > LONGEST_WHY or not why.isprintable():
        raise Refusal(
            f"Why {first} differs takes up to {LONGEST_WHY} letters, plain text. Shorten it."
        )
    hours = found["hours"].casefold()
    if hours == "usual":
        return SingleDay(first, last, None, why)
    return SingleDay(first, last, () if hours == "closed" else read_stretches(hours), why)


def _write(one: SingleDay) -> str:
    span = f"{one.first}" if one.first == one.last else f"{one.first} to {one.last}"
    hours = "usual" if one.working is None else write_stretches(one.working) or "closed"
    return f"{span} {hours}: {one.why}" if one.why else f"{span} {hours}"


def _date(text: str) -> date:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise Refusal(f"There is no day {text}. {HOW}") from None
    if not 1900 <= day.year <= 2200:
        raise Refusal(f"The year of {text} cannot be meant. {HOW}")
    return day
