"""Papers: what can be asked for, and what is handed to whoever draws it."""

from dataclasses import dataclass
from datetime import datetime

from studio_log.present.lanes import Lane, Night
from studio_log.present.paper.blocks import Document


@dataclass(frozen=True)
class CardFor:
    """The step card of a lot, for the wall."""

    code: str


@dataclass(frozen=True)
class RecordFor:
    """The whole record of a lot."""

    code: str


@dataclass(frozen=True)
class DaySheetFor:
    """What is due today and tonight, to tick off."""


DRAWING = "drawing"
"""The key of the drawing of a lot's steps over time."""


@dataclass(frozen=True)
class Drawn:
    """What the drawing of steps over time is made of."""

    lanes: tuple[Lane, ...]
    nights: tuple[Night, ...]
    now: datetime
    zone: str


@dataclass(frozen=True)
class Paper:
    """A document with what its pictures are made of."""

    name: str
    """How a file of it is called: "card-26-031"."""
    document: Document
    drawn: Drawn | None = None
    photos: tuple[tuple[str, str], ...] = ()
    """Keys of pictures, and the files they are in."""
