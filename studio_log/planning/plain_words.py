"""Days, moments, lengths and numbers as a sentence of the planner says them, in English."""

from collections.abc import Sequence
from datetime import date
from typing import Final

from studio_log.planning.problem import THOUSANDTHS, Clock

DAY: Final = 1440
WEEKDAYS: Final = (
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday",
)  # fmt: skip
MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
NUMBERS: Final = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
)  # fmt: skip
VOWELS: Final = frozenset("aeiou")
ORDINALS: Final = (
    "", "", "a second", "a third", "a fourth", "a fifth", "a sixth", "a seventh", "an eighth",
    "a ninth", "a tenth",
)  # fmt: skip


def number_words(number: int) -> str:
    """Give a number as a word up to twelve, else in figures."""
    return NUMBERS[number] if 0 <= number < len(NUMBERS) else f"{number:,}"


def counted(number: int, one: str, many: str = "") -> str:
    """Give a number with its noun: "one piece", "nine pieces"."""
    return f"{number_words(number)} {one if number == 1 else many or one + 's'}"


def with_article(noun: str) -> str:
    """Give "a tub", "an urn"."""
    return f"an {noun}" if noun[:1].lower() in VOWELS else f"a {noun}"


def amount_words(much: int) -> str:
    """Give thousandths as a plain figure: 2500 is "2.5"."""
    return f"{much / THOUSANDTHS:.10g}"


def listed(some: Sequence[str], joiner: str = "and") -> str:
    """Join names as a sentence does: "A, B and C"."""
    return f" {joiner} ".join(one for one in (", ".join(some[:-1]), *some[-1:]) if one)


def short_day(day: date) -> str:
    """Give "Sat 6 March"."""
    return f"{WEEKDAYS[day.weekday()][:3]} {day.day} {MONTHS[day.month - 1]}"


def long_day(day: date) -> str:
    """Give "Saturday 6 March"."""
    return f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"


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
    parts = [counted(days, "day")] if days else []
    parts += [f"{hours} h"] if hours else []
    parts += [f"{left} min"] if left or not (days or hours) else []
    return " ".join(parts)


def later_words(minutes: int) -> str:
    """Give by how much a date moves: whole days as days, else to the minute."""
    return exact_words(minutes) if minutes % DAY else counted(minutes // DAY, "day")


def about_words(minutes: int) -> str:
    """Give a length as it is spoken of: "50 minutes", "31 hours", "2.5 days"."""
    if minutes < 120:
        return counted(minutes, "minute") if minutes < 13 else f"{minutes} minutes"
    if minutes < 2 * DAY:
        return f"{round(minutes / 60)} hours"
    return f"{round(minutes / DAY, 1):g} days"
