"""Reading a length of time as it is typed: "10m", "1h30", "2 days", "half an hour"."""

import re
from collections.abc import Mapping
from datetime import timedelta
from itertools import pairwise
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER, NUMBER_WORDS, clean, quoted, read_number

LONGEST: Final = 60
MOST: Final = timedelta(days=36_600)
"""A hundred years; longer is a slip of the hand."""

_SECONDS: Final[Mapping[str, int]] = {
    "s": 1, "sec": 1, "secs": 1, "second": 1, "seconds": 1,
    "m": 60, "min": 60, "mins": 60, "minute": 60, "minutes": 60,
    "h": 3600, "hr": 3600, "hrs": 3600, "hour": 3600, "hours": 3600,
    "d": 86_400, "day": 86_400, "days": 86_400,
    "w": 604_800, "wk": 604_800, "wks": 604_800, "week": 604_800, "weeks": 604_800,
}  # fmt: skip

COUNTS: Final[Mapping[str, int]] = {
    **NUMBER_WORDS,
    "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "ninety": 90,
}  # fmt: skip

_SAYINGS: Final = (
    (r"\b(?:an hour and a half|one and a half hours)\b", "90 min"),
    (r"\b(?:half an hour|a half hour|half hour)\b", "30 min"),
    (r"\b(?:a )?quarter of an hour\b", "15 min"),
    (r"\bthree quarters of an hour\b", "45 min"),
    (r"\band a half hours\b", "hours 30 min"),
    (r"\ban? (?=hour|minute|day|week)", "1 "),
    (r"\b(twenty|thirty|forty|fifty)[ -](five)\b", r"\1\2"),
)
"""How people say some of them -> the same in figures, in this order."""

_WORDS: Final[Mapping[str, int]] = {
    **COUNTS,
    **{f"{tens}five": COUNTS[tens] + 5 for tens in ("twenty", "thirty", "forty", "fifty")},
}
_PART: Final = rf"(?P<number>{NUMBER}) ?(?P<unit>[a-z]+)"
_TAIL: Final = r"(?<=h)(?P<minutes>[0-5]?[0-9])$"
"""The bare minutes of "1h30"."""
_EXAMPLES: Final = "Write it as 10 min, 1h30, 8 h, 2 days or 3 w."


def read_span(text: str) -> timedelta:
    """Give a length of time above nought and up to a hundred years; true elapsed time."""
    plain = clean(text, "the length of time", longest=LONGEST).casefold()
    span = parse_span(plain)
    if span is None:
        raise Refusal(
            f"{quoted(text)} cannot be read as a length of time. Nothing was changed. {_EXAMPLES}"
        )
    return checked_span(span, text)


def checked_span(span: timedelta, text: str) -> timedelta:
    """Give the span back; refuses nought and what is longer than a hundred years."""
    if not timedelta(0) < span <= MOST:
        raise Refusal(
            f"{quoted(text)} is no length of time that can be meant: it has to be above nought "
            f"and at most a hundred years. Nothing was changed. {_EXAMPLES}"
        )
    return span


def parse_span(plain: str) -> timedelta | None:
    """Give the length of time that a clean lower-case text says, or None where it says none.

    May be nought; OverflowError cannot happen, since figures have nine digits at most.
    """
    figures = _in_figures(plain)
    tail = re.search(_TAIL, figures)
    body = figures[: tail.start()] if tail else figures
    parts = list(re.finditer(_PART, body))
    rest = re.sub(r"[\s,]|\band\b", "", re.sub(_PART, " ", body))
    if not parts or rest or any(part["unit"] not in _SECONDS for part in parts):
        return None
    sizes = [_SECONDS[part["unit"]] for part in parts]
    if any(later >= earlier for earlier, later in pairwise(sizes)):
        return None
    seconds = sum(
        read_number(part["number"]) * size for part, size in zip(parts, sizes, strict=True)
    )
    if tail:
        seconds += int(tail["minutes"]) * 60
    return timedelta(seconds=min(seconds, 2 * MOST.total_seconds()))


def _in_figures(plain: str) -> str:
    for saying, figures in _SAYINGS:
        plain = re.sub(saying, figures, plain)
    return re.sub(r"[a-z]+", lambda word: str(_WORDS.get(word[0], word[0])), plain)
