"""Looking for lots: the whole of what is found by code, and rows as they come into sight."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

SORTS: Final[Mapping[str, str]] = {
    "need": "What needs hands first",
    "newest": "Latest code first",
    "code": "Earliest code first",
    "name": "By name",
    "weight": "Heaviest first",
    "begun": "Begun last first",
    "ready": "Ready first",
}
"""The orders of the list and their words."""


@dataclass(frozen=True)
class FindLots:
    """What was typed, the state chosen, the order; and how many rows to give at once."""

    find: str = ""
    state: str = "live"
    sort: str = "need"
    rows: int = 10


@dataclass(frozen=True)
class LotRowsFor:
    """The rows of these lots, for the part of a list that is in sight."""

    codes: tuple[str, ...]
