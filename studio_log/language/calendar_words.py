"""Names of days and months: in English as they are typed and kept, in the language as shown."""

from collections.abc import Mapping
from datetime import date
from typing import Final

from studio_log.language.region import region
from studio_log.language.words import tr, tr_later

DAYS: Final = (
    tr_later("Mon"), tr_later("Tue"), tr_later("Wed"), tr_later("Thu"), tr_later("Fri"),
    tr_later("Sat"), tr_later("Sun"),
)  # fmt: skip
LONG_DAYS: Final = (
    tr_later("Monday"), tr_later("Tuesday"), tr_later("Wednesday"), tr_later("Thursday"),
    tr_later("Friday"), tr_later("Saturday"), tr_later("Sunday"),
)  # fmt: skip
MONTHS: Final = (
    tr_later("January"), tr_later("February"), tr_later("March"), tr_later("April"),
    tr_later("May"), tr_later("June"), tr_later("July"), tr_later("August"),
    tr_later("September"), tr_later("October"), tr_later("November"), tr_later("December"),
)  # fmt: skip

WEEKDAY_WORDS: Final[Mapping[str, int]] = {
    **{name.casefold(): number for number, name in enumerate(LONG_DAYS)},
    **{name.casefold(): number for number, name in enumerate(DAYS)},
    "tues": 1, "weds": 2, "thur": 3, "thurs": 3,
}  # fmt: skip
"""What people type for a day of the week -> 0 for Monday."""

MONTH_WORDS: Final[Mapping[str, int]] = {
    **{name.casefold(): number for number, name in enumerate(MONTHS, start=1)},
    **{name.casefold()[:3]: number for number, name in enumerate(MONTHS, start=1)},
    "sept": 9,
}
"""What people type for a month -> 1 for January."""


def weekday_name(weekday: int) -> str:
    """Name a weekday in short, 0 for Monday: "Mon"."""
    return tr(DAYS[weekday])


def long_weekday_name(weekday: int) -> str:
    """Name a weekday, 0 for Monday: "Monday"."""
    return tr(LONG_DAYS[weekday])


def month_name(month: int) -> str:
    """Name a month, 1 for January: "January"."""
    return tr(MONTHS[month - 1])


def date_words(day: date, *, short: bool = False, year: bool = False) -> str:
    """Write a date: "9 June", "9 Jun 2026"; "June 9" where the place puts the month first."""
    month = month_name(day.month)
    order = tr_later("{month} {day}") if region().month_first else tr_later("{day} {month}")
    words = tr(order, day=day.day, month=month[:3] if short else month)
    return f"{words} {day.year}" if year else words


def day_words(day: date) -> str:
    """Write a day without its year: "Tue 9 June"."""
    return f"{weekday_name(day.weekday())} {date_words(day)}"
