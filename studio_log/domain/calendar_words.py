"""Names of days and months in English, whatever the machine's language."""

from collections.abc import Mapping
from datetime import date
from typing import Final

DAYS: Final = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
LONG_DAYS: Final = (
    "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday",
)  # fmt: skip
MONTHS: Final = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
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


def day_words(day: date) -> str:
    """Write a day without its year: "Tue 9 June"."""
    return f"{DAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"
