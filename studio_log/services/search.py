"""Looking for lots: the whole of what is found by code, and rows as they come into sight."""

from dataclasses import dataclass


@dataclass(frozen=True)
class FindLots:
    """What was typed, the state chosen, the order; and how many rows to give at once.

    The orders are domain.search_text.SORTS; one that was typed goes before.
    """

    find: str = ""
    state: str = "live"
    sort: str = "need"
    rows: int = 10


@dataclass(frozen=True)
class LotRowsFor:
    """The rows of these lots, for the part of a list that is in sight."""

    codes: tuple[str, ...]
