"""Stretches of one day in minutes of its wall clock: read as they are typed, written, joined.

"9-12:30, 13:30-17" and "09:00-12:30 and 13:30-17:00" are the same two stretches.
"""

import re
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Final

from studio_log.domain.errors import Refusal

Stretch = tuple[int, int]
"""From a minute up to another one of the same day; the end up to 1440."""
MINUTES_OF_DAY: Final = 1440
WHOLE_DAY: Final[tuple[Stretch, ...]] = ((0, MINUTES_OF_DAY),)
MOST_STRETCHES: Final = 12
"""More stretches in one day nobody keeps; common sense, no source."""
HOW: Final = "Write it as “9-12:30, 13:30-17”."
_MOST_LETTERS: Final = 200
_TIME: Final = r"(?P<{0}>[0-9]{{1,2}}(?:[:.][0-9]{{2}})?)"
_ONE: Final = re.compile(rf"{_TIME.format('start')}\s*(?:[-–—]|to|bis)\s*{_TIME.format('end')}")
_BETWEEN: Final = re.compile(r"\s*(?:,|;|&|\+|\band\b|\bund\b)\s*")


def read_stretches(text: str) -> tuple[Stretch, ...]:
    """Read "9-12:30, 13:30-17", in order of the day; none for empty text.

    A Refusal says what is not understood, which ends before it begins, and which two overlap.
    Stretches that touch are one.
    """
    if len(text) > _MOST_LETTERS:
        raise Refusal(f"The hours of a day take up to {_MOST_LETTERS} letters. {HOW}")
    found = sorted(_read_one(part) for part in _BETWEEN.split(text.strip().casefold()) if part)
    for one, other in pairwise(found):
        if other[0] < one[1]:
            raise Refusal(
                f"{write_stretches([one])} and {write_stretches([other])} overlap. "
                "Let one end before the next begins."
            )
    if len(found) > MOST_STRETCHES:
        raise Refusal(f"A day has up to {MOST_STRETCHES} stretches, not {len(found)}. {HOW}")
    return joined(found)


def write_stretches(stretches: Iterable[Stretch]) -> str:
    """Write stretches as they are kept: "09:00-12:30, 13:30-17:00"."""
    return ", ".join(f"{clock(start)}-{clock(end)}" for start, end in stretches)


def stretch_words(stretches: Iterable[Stretch]) -> str:
    """Give stretches as a person reads them: "09:00–12:30, 13:30–17:00"."""
    return ", ".join(f"{clock(start)}–{clock(end)}" for start, end in stretches)


def clock(minute: int) -> str:
    """Give a minute of the day as a clock shows it: "09:05"; "24:00" for its end."""
    return f"{minute // 60:02d}:{minute % 60:02d}"


def joined(stretches: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """Give stretches in order, those that touch or overlap as one."""
    found: list[Stretch] = []
    for start, end in sorted(stretches):
        if found and start <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((start, end))
    return tuple(found)


def without(stretches: Iterable[Stretch], taken: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """Give what is left of stretches when others are taken out of them."""
    return tuple(_left(joined(stretches), joined(taken)))


def _left(stretches: tuple[Stretch, ...], taken: tuple[Stretch, ...]) -> Iterator[Stretch]:
    for start, end in stretches:
        at = start
        for first, last in taken:
            if last <= at or first >= end:
                continue
            if first > at:
                yield at, first
            at = last
        if at < end:
            yield at, end


def _read_one(part: str) -> Stretch:
    found = _ONE.fullmatch(part)
    if found is None:
        raise Refusal(f"{part[:40]!r} is no stretch of a day. {HOW}")
    start, end = minute_of(found["start"]), minute_of(found["end"])
    if end <= start:
        raise Refusal(
            f"{part[:40]!r} ends before it begins. A stretch lies within one day; "
            "write what comes after midnight on the day after."
        )
    return start, end


def minute_of(text: str) -> int:
    """Read "9", "9:30", "9.30" or "24:00" as a minute of the day, 0 to 1440."""
    hour, _, minute = text.replace(".", ":").partition(":")
    whole = int(hour) * 60 + int(minute or 0)
    if int(minute or 0) > 59 or whole > MINUTES_OF_DAY:
        raise Refusal(f"{text} is no time of the day. {HOW}")
    return whole
