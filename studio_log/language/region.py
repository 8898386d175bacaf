"""How a place writes figures and dates: the decimal sign, the first weekday.

It follows the system, not the language: an English window in Vienna writes "1,5 L". Commands keep
the plain point, for scripts.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True)
class Region:
    """What a place does its own way."""

    decimal: str = "."
    """"." or ",": what parts a figure from its tenths."""
    first_day: int = 0
    """The weekday a week begins with, 0 for Monday."""
    month_first: bool = False
    """Whether a date is said month first: "June 9"."""


PLAIN: Final = Region()

_in_force: Region = PLAIN


def live_in(region: Region) -> None:
    """Write as a place does from now on, in every thread."""
    global _in_force  # noqa: PLW0603 - a laptop stands in one place
    _in_force = region


def region() -> Region:
    """Give the region in force."""
    return _in_force


def week() -> tuple[int, ...]:
    """Give the weekdays in the order of the place's week, 0 for Monday."""
    first = _in_force.first_day
    return tuple((first + day) % 7 for day in range(7))
