"""Times as they are written into the frames of a step card: day and month, hour and minute."""

import re
from datetime import date, datetime, timedelta
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.wall_clock import known_zone

_WHOLE: Final = re.compile(
    r"(\d{1,2})\s*[/.-]\s*(\d{1,2})\.?(?:\s*[/.-]\s*(\d{4}))?[\s,]+(\d{1,2})\s*[:.h]\s*(\d{2})"
)
_TIME: Final = re.compile(r"(\d{1,2})\s*[:.h]\s*(\d{2})")
_FIGURES: Final = re.compile(r"(\d{2})(\d{2})(\d{2})(\d{2})")
_HOURS, _MINUTES = 24, 60


def card_words(
    text: str, *, now: datetime, zone: str, after: datetime | None, month_first: bool = False
) -> str:
    """Give what stands in the frames as a moment that can be read; other words as they are.

    "9/6 20:15" and the bare figures "09062015" are the latest such day that is not ahead; a time
    alone is the first one after the moment written above it. Refusal for what is no time.
    """
    said = text.strip()
    if found := _FIGURES.fullmatch(said):
        day, month, hour, minute = found.groups()
        return _moment((day, month, None, hour, minute), now, zone, month_first=month_first)
    if found := _WHOLE.fullmatch(said):
        return _moment(found.groups(), now, zone, month_first=month_first)
    found = _TIME.fullmatch(said)
    if found is None or after is None:
        return text
    return _following(_clock(found[1], found[2]), after, zone)


def _clock(hour: str, minute: str) -> tuple[int, int]:
    if int(hour) >= _HOURS or int(minute) >= _MINUTES:
        raise Refusal(f"{hour}:{minute} is no time on a clock. Nothing was changed.")
    return int(hour), int(minute)


def _moment(parts: tuple[str | None, ...], now: datetime, zone: str, *, month_first: bool) -> str:
    one, other, year, hour, minute = parts
    day, month = (
        (int(str(other)), int(str(one))) if month_first else (int(str(one)), int(str(other)))
    )
    at = _clock(str(hour), str(minute))
    today = now.astimezone(known_zone(zone)).date()
    years = [int(year)] if year else [today.year, today.year - 1]
    for each in years:
        try:
            found = date(each, month, day)
        except ValueError as error:
            raise Refusal(
                f"{one}/{other} is no day of the calendar. Nothing was changed."
            ) from error
        if found <= today or year:
            return f"{found.isoformat()} {at[0]:02}:{at[1]:02}"
    return f"{date(years[-1], month, day).isoformat()} {at[0]:02}:{at[1]:02}"


def _following(at: tuple[int, int], after: datetime, zone: str) -> str:
    """Give the first such time at or after a moment, by the wall clock."""
    local = after.astimezone(known_zone(zone))
    day = local.date() + timedelta(days=(local.hour, local.minute) > at)
    return f"{day.isoformat()} {at[0]:02}:{at[1]:02}"
