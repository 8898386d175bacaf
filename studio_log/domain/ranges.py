"""A range of figures from a written file: from so much to so much, or so much and more."""

from dataclasses import dataclass

from studio_log.domain.method_faults import Faults
from studio_log.domain.method_fields import Table
from studio_log.domain.number_text import plain

_FIX = "write [from, to], or [from] for so much and more"


@dataclass(frozen=True)
class Range:
    """From `low` to `high`, both included; `high` None means so much and more."""

    low: float
    high: float | None

    def words(self, unit: str) -> str:
        """Say it: "3 to 8 %", "20 %", "100 % and more"."""
        low = plain(self.low, 2)
        if self.high is None:
            return f"{low} {unit} and more"
        return (
            f"{low} {unit}" if self.high == self.low else f"{low} to {plain(self.high, 2)} {unit}"
        )


def range_of(table: Table, key: str, faults: Faults, *, most: float) -> Range | None:
    """Give the range written as [from, to] or [from]; None where it is not written or amiss."""
    figures = table.numbers(key, most=most)
    if not figures:
        return None
    path = (*table.path, key)
    if not faults.clear(path):
        return None
    if figures[0] <= 0 or figures[-1] < figures[0]:
        faults.add(path, "these do not run from less to more, above nought", _FIX)
        return None
    return Range(figures[0], figures[1] if len(figures) > 1 else None)
