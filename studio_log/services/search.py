"""Looking for lots: the whole of what is found by code, and rows as they come into sight."""

from dataclasses import dataclass
from typing import Final

COLUMNS: Final = (
    "code", "name", "state", "next", "when", "fibre", "weight", "coats", "age", "vessel", "shelf",
)  # fmt: skip
"""What the columns of the list as a table are called where they are kept."""


@dataclass(frozen=True)
class FindLots:
    """What was typed, the state chosen, the order; and how many rows to give at once.

    The orders are domain.search_text.SORTS, `backwards` the other way; one that was typed goes
    before.
    """

    find: str = ""
    state: str = "live"
    sort: str = "need"
    rows: int = 10
    backwards: bool = False


@dataclass(frozen=True)
class LotRowsFor:
    """The rows of these lots, for the part of a list that is in sight."""

    codes: tuple[str, ...]
