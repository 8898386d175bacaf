"""Distances in logical pixels; those that hold text grow with the font."""

from dataclasses import dataclass
from typing import Final

ANSWER_HEIGHT: Final = 72
"""Least height of the button that answers a reminder, for wet hands."""


@dataclass(frozen=True)
class Metrics:
    """Spacing, radii and heights at one size of text."""

    line: float
    """Height of a line of text."""
    s: int = 4
    m: int = 8
    l: int = 12  # noqa: E741 - one of the four steps
    xl: int = 16
    radius: int = 7
    radius_small: int = 4
    focus: int = 2
    """Width of the ring around what has the keyboard."""

    @property
    def row(self) -> int:
        """Height of a one-line row in a list."""
        return round(self.line + 2 * self.m)

    @property
    def field(self) -> int:
        """Height of text fields and buttons, without their edge."""
        return round(self.line + self.m + self.s)

    @property
    def answer(self) -> int:
        """Height of the big answer button."""
        return max(ANSWER_HEIGHT, round(self.line * 2.4 + self.xl))

    @property
    def icon(self) -> int:
        """Side of an icon beside text."""
        return round(self.line * 1.15)

    @property
    def scale(self) -> float:
        """How much larger than text of 17 px a line is."""
        return self.line / 17
