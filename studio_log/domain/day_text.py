"""Reading the day in what a dyer types: "yesterday", "last night", "Mon", "9 June"."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final, Literal

from studio_log.domain.clock_text import NIGHT
from studio_log.domain.errors import Refusal
from studio_log.domain.number_text import NUMBER_WORDS
from studio_log.language.calendar_words import LONG_DAYS, MONTH_WORDS, MONTHS, WEEKDAY_WORDS

Prefer = Literal["past", "next"]


@dataclass(frozen=True)
class DayReading:
    """A day in local terms; `back` and `on` say where to look when its time is not right.

    "Monday 14:00" on a Monday morning is the Monday before: `back` is seven days then.
    `part` is the part of the day that goes with it ("last night"), or empty.
    """

    day: date
    part: str = ""
    back: timedelta | None = None
    on: timedelta | None = None
    yearly: bool = False
    """True for a date without its year: a year back or on is meant where it does not fit."""
    fixed: bool = True
    """False where no year was given."""

    def at(self, day: date) -> "DayReading":
        """Give the reading moved to another day, from where it is not moved again."""
        return replace(self, day=day, back=None, on=None, yearly=False)

    def moved(self, *, prefer: Prefer) -> date | None:
        """Give the next day to look at, further back or on; None where the day is fixed."""
        step = self.back if prefer == "past" else self.on
        if step is not None:
            return self.day + step
        if not self.yearly:
            return None
        return _same_day(self.day, self.day.year + (-1 if prefer == "past" else 1))


_WEEK: Final = timedelta(days=7)
_ONE: Final = timedelta(days=1)
_MONTH: Final = "(?P<month>" + "|".join(sorted(MONTH_WORDS, key=len, reverse=True)) + r")\b\.?"
_WEEKDAY: Final = (
    "(?P<weekday>" + "|".join(sorted(WEEKDAY_WORDS, key=len, reverse=True)) + r")\b\.?"
)
_DATE_DAY: Final = r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
_YEAR: Final = r"(?:,? (?P<year>[0-9]{4})(?![0-9:.]))?"
_BEFORE: Final = rf"(?:{_WEEKDAY},? )?"


def take_day(plain: str, today: date) -> tuple[DayReading, str] | None:
    """Give the first day named in a clean lower-case text and the text without it."""
    for pattern, read in _PATTERNS:
        found = re.search(rf"(?<![\w:.,/+-]){pattern}(?![\w/+-])", plain)
        if found is not None:
            return read(found, today), f"{plain[: found.start()]} {plain[found.end() :]}"
    return None


def _iso(found: re.Match[str], _today: date) -> DayReading:
    return DayReading(_date(int(found["year"]), int(found["month"]), int(found["day"])))


def _dated(found: re.Match[str], today: date) -> DayReading:
    month, number = MONTH_WORDS[found["month"].rstrip(".")], int(found["day"])
    weekday = WEEKDAY_WORDS[found["weekday"]] if found["weekday"] else None
    if found["year"]:
        day = _date(int(found["year"]), month, number)
        if weekday not in {None, day.weekday()}:
            raise Refusal(
                f"{number} {MONTHS[month - 1]} {day.year} is a {LONG_DAYS[day.weekday()]}. "
                "Nothing was changed. Leave the day of the week out, or mend the date."
            )
        return DayReading(day)
    day = _date(today.year, month, number, yearly=True)
    if weekday is None:
        return DayReading(day, yearly=True, fixed=False)
    near = (day, _same_day(day, today.year - 1), _same_day(day, today.year + 1))
    for one in near:
        if one.weekday() == weekday:
            return DayReading(one)
    raise Refusal(
        f"{number} {MONTHS[month - 1]} is a {LONG_DAYS[day.weekday()]} this year. "
        "Nothing was changed. Leave the day of the week out, or mend the date."
    )


def _weekday(found: re.Match[str], today: date) -> DayReading:
    ahead = timedelta(days=(WEEKDAY_WORDS[found["weekday"]] - today.weekday()) % 7)
    match found["which"]:
        case "last":
            return DayReading(today + ahead - _WEEK)
        case "next":
            return DayReading(today + (ahead or _WEEK))
        case _:
            return DayReading(today + ahead, back=-_WEEK, on=_WEEK)


def _days_ago(found: re.Match[str], today: date) -> DayReading:
    count = NUMBER_WORDS.get(found["count"]) or int(found["count"])
    return DayReading(today - timedelta(days=count))


def _relative(days: int, part: str = "") -> Callable[[re.Match[str], date], DayReading]:
    return lambda _found, today: DayReading(today + timedelta(days=days), part)


def _last_night(_found: re.Match[str], today: date) -> DayReading:
    return DayReading(today - _ONE, NIGHT, back=-_ONE)


def _date(year: int, month: int, day: int, *, yearly: bool = False) -> date:
    try:
        return date(year, month, day)
    except ValueError:
        if yearly and (month, day) == (2, 29):
            return _same_day(date(2000, 2, 29), year - 1)
        raise Refusal(
            f"There is no day {day} in month {month} of {year}. Nothing was changed."
        ) from None


def _same_day(day: date, year: int) -> date:
    """Give the same day of another year; 29 February goes to the leap year before."""
    if (day.month, day.day) == (2, 29):
        while year % 4 or (year % 100 == 0 and year % 400):
            year -= 1
    return day.replace(year=year)


_PATTERNS: Final[tuple[tuple[str, Callable[[re.Match[str], date], DayReading]], ...]] = (
    (r"(?P<year>[0-9]{4})-(?P<month>[0-9]{2})-(?P<day>[0-9]{2})", _iso),
    (rf"{_BEFORE}(?:the )?{_DATE_DAY}(?: of)? {_MONTH}{_YEAR}", _dated),
    (rf"{_BEFORE}{_MONTH} (?:the )?{_DATE_DAY}(?![:.h][0-9]){_YEAR}", _dated),
    (r"the day before yesterday", _relative(-2)),
    (rf"(?P<count>{'|'.join(NUMBER_WORDS)}|[0-9]{{1,4}}) days ago", _days_ago),
    (r"(?:last night|yesterday night)", _last_night),
    (r"yesterday", _relative(-1)),
    (r"tonight", _relative(0, NIGHT)),
    (r"(?:today|this(?= (?:morning|afternoon|evening)))", _relative(0)),
    (r"tomorrow", _relative(1)),
    (rf"(?:(?P<which>last|next|this|on) )?{_WEEKDAY}", _weekday),
)
