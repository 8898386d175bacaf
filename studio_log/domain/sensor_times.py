"""The moments in a sensor's file: one way of writing dates for the whole of it."""

import re
from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.wall_clock import from_wall, known_zone

_HOURS: Final = r"(?P<h>\d{1,2}):(?P<min>\d{2})(?::(?P<s>\d{2})(?:[.,]\d{1,9})?)?"
_CLOCK: Final = rf"(?:[T ,]+{_HOURS} ?(?P<half>[AaPp]\.?[Mm]\.?)?)?"
_OFFSET: Final = r"(?P<off>Z|z|[+-]\d{2}:?\d{2})?"
_YEAR_FIRST: Final = re.compile(
    rf"(?P<y>\d{{4}})[-/.](?P<a>\d{{1,2}})[-/.](?P<b>\d{{1,2}}){_CLOCK} ?{_OFFSET}"
)
_YEAR_LAST: Final = re.compile(
    rf"(?P<a>\d{{1,2}})(?P<mark>[-/.])(?P<b>\d{{1,2}})(?P=mark)(?P<y>\d{{4}}|\d{{2}}){_CLOCK}"
)
_EPOCH: Final = re.compile(r"\d{10}(?:\d{3})?(?:\.\d{1,6})?")
_YEARS: Final = (2000, 2100)

Reader = Callable[[str], datetime | None]


def reader_of(texts: Sequence[str], zone: str, *, day_first: bool | None = None) -> Reader:
    """Give what reads the moments of a file as UTC instants, None for one it cannot read.

    Times without an offset are on the wall in the zone (RFC 5545: the first of two, the offset
    before a gap). Where day and month could change places throughout, a Question, which
    `day_first` answers.
    """
    order = day_first if day_first is not None else _order(texts)
    place = known_zone(zone)

    def read(text: str) -> datetime | None:
        try:
            return _read(_bare(text), day_first=order, zone=place)
        except (ValueError, OverflowError):
            return None

    return read


def _bare(text: str) -> str:
    return text.strip().strip("\"'").strip()


def _order(texts: Sequence[str]) -> bool:
    """Say whether the day comes first where the year is last."""
    found = [
        one for one in (_YEAR_LAST.fullmatch(text.strip().strip("\"'")) for text in texts) if one
    ]
    slashed = [one for one in found if one["mark"] != "."]  # with points the day is first
    if not slashed:
        return True
    if any(int(one["a"]) > 12 for one in slashed):
        return True
    if any(int(one["b"]) > 12 for one in slashed):
        return False
    if all(one["a"] == one["b"] for one in slashed):
        return True
    first = slashed[0][0].split()[0]
    raise Question(
        f"Is {first} in the file the day or the month first? Say which, and read it again. "
        "Nothing was kept."
    )


def _read(text: str, *, day_first: bool, zone: ZoneInfo) -> datetime | None:
    if _EPOCH.fullmatch(text):
        seconds = float(text)
        return _likely(datetime.fromtimestamp(seconds / (1000 if seconds > 1e12 else 1), UTC))
    found = _YEAR_FIRST.fullmatch(text)
    if found is not None:
        month, day = int(found["a"]), int(found["b"])
    else:
        found = _YEAR_LAST.fullmatch(text)
        if found is None:
            return None
        first, second = int(found["a"]), int(found["b"])
        by_day = day_first or found["mark"] == "."
        day, month = (first, second) if by_day else (second, first)
    year = int(found["y"])
    local = datetime(year + 2000 if year < 100 else year, month, day, *_clock(found))  # noqa: DTZ001
    offset = found.groupdict().get("off")
    if offset:
        return _likely(
            datetime.fromisoformat(f"{local.isoformat()}{offset.upper()}").astimezone(UTC)
        )
    return _likely(from_wall(local, zone).at)


def _clock(found: re.Match[str]) -> tuple[int, int, int]:
    hour, half = int(found["h"] or 0), (found["half"] or "").casefold()
    if half:
        if not 1 <= hour <= 12:
            raise ValueError("no such hour")
        hour = hour % 12 + (12 if half.startswith("p") else 0)
    return hour, int(found["min"] or 0), int(found["s"] or 0)


def _likely(at: datetime) -> datetime | None:
    return at if _YEARS[0] <= at.year < _YEARS[1] else None


def refuse_times(name: str) -> Refusal:
    """Give the refusal of a file whose moments cannot be read."""
    return Refusal(
        f"The times in {name} cannot be read. Nothing was kept. Write them as 2026-06-09 13:08."
    )
