"""Days, moments, lengths and numbers as a sentence of the planner says them, in its language.

Lengths and counted things are said so that they can be the subject or the object of a sentence.
"""

from datetime import date
from typing import Final

from studio_log.language.calendar_words import date_words, day_words, long_weekday_name
from studio_log.language.region import region
from studio_log.language.words import tr, tr_later
from studio_log.planning.problem import THOUSANDTHS, Clock

DAY: Final = 1440
WEEK: Final = 7
"""Days."""
NUMBERS: Final = (
    tr_later("no"), tr_later("one"), tr_later("two"), tr_later("three"), tr_later("four"),
    tr_later("five"), tr_later("six"), tr_later("seven"), tr_later("eight"), tr_later("nine"),
    tr_later("ten"), tr_later("eleven"), tr_later("twelve"),
)  # fmt: skip
Noun = tuple[str, str, str]
"""None of a thing, one, and {n}: texts of the catalogue, since a language bends its nouns."""
PIECES: Final = (tr_later("no pieces"), tr_later("one piece"), tr_later("{n} pieces"))
DAYS: Final = (tr_later("no days"), tr_later("one day"), tr_later("{n} days"))
MINUTES: Final = (tr_later("no minutes"), tr_later("one minute"), tr_later("{n} minutes"))
BURNERS: Final = (tr_later("no burners"), tr_later("one burner"), tr_later("{n} burners"))
HANDS: Final = (
    tr_later("no pairs of hands"), tr_later("one pair of hands"), tr_later("{n} pairs of hands"),
)  # fmt: skip


def number_words(number: int) -> str:
    """Give a number as a word up to twelve, else in figures."""
    return tr(NUMBERS[number]) if 0 <= number < len(NUMBERS) else f"{number:,}"


def counted(number: int, noun: Noun, /, **values: object) -> str:
    """Give a number with its noun: "one piece", "nine pieces"; `values` are other places."""
    text = noun[number if number in (0, 1) else 2]
    return tr(text, n=number_words(number), **values)


def local(figure: str) -> str:
    """Give a figure with the decimal sign of the place."""
    return figure.replace(".", region().decimal)


def amount_words(much: int) -> str:
    """Give thousandths as a plain figure: 2500 is "2.5"."""
    return local(f"{much / THOUSANDTHS:.10g}")


def short_day(day: date) -> str:
    """Give "Sat 6 March"."""
    return day_words(day)


def long_day(day: date) -> str:
    """Give "Saturday 6 March"."""
    return tr("{weekday} {date}", weekday=long_weekday_name(day.weekday()), date=date_words(day))


def moment_words(clock: Clock, minute: int) -> str:
    """Give "Sat 6 March, 18:00" of a minute of the problem."""
    at = clock.local(minute)
    return f"{short_day(at.date())}, {at:%H:%M}"


def hour_words(minutes: int) -> str:
    """Give minutes of the wall clock as "18:00"; the end of the day is "24:00"."""
    return f"{minutes // 60:02}:{minutes % 60:02}"


def exact_words(minutes: int) -> str:
    """Give a length to the minute: "50 min", "8 h 20 min", "49 h", "five days 4 h"."""
    days, rest = divmod(minutes, DAY)
    if minutes < 4 * DAY:
        days, rest = 0, minutes
    hours, left = divmod(rest, 60)
    parts = [counted(days, DAYS)] if days else []
    parts += [f"{hours} h"] if hours else []
    parts += [f"{left} min"] if left or not (days or hours) else []
    return " ".join(parts)


def later_words(minutes: int) -> str:
    """Give by how much a date moves: whole days as days, else to the minute."""
    return exact_words(minutes) if minutes % DAY else counted(minutes // DAY, DAYS)


def about_words(minutes: int) -> str:
    """Give a length as it is spoken of: "50 minutes", "31 hours", "2.5 days"."""
    if minutes < 13:
        return counted(minutes, MINUTES)
    if minutes < 120:
        return tr("{n} minutes", n=minutes)
    if minutes < 2 * DAY:
        return tr("{n} hours", n=round(minutes / 60))
    return tr("{n} days", n=local(f"{round(minutes / DAY, 1):g}"))
