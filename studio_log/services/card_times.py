"""Times that were written on a card by hand: what can be asked and done, in shared words."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal


@dataclass(frozen=True)
class CardRow:
    """When a step was begun and ended, by its number; None where nothing is written."""

    step: int
    begun: datetime | None = None
    ended: datetime | None = None


@dataclass(frozen=True)
class CardSaid:
    """What is to be said of a row: nothing, a doubt that may be overruled, or a fault."""

    step: int
    kind: Literal["good", "doubt", "fault"]
    words: str = ""


@dataclass(frozen=True)
class TryCard:
    """Say of each row whether it makes sense; nothing is changed."""

    code: str
    rows: tuple[CardRow, ...]


@dataclass(frozen=True)
class TakeCard:
    """Write all rows down, or none."""

    code: str
    rows: tuple[CardRow, ...]
    sure: bool = False
