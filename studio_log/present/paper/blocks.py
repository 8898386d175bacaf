"""What a paper says, block by block, in words already chosen; where it stands is settled later."""

from dataclasses import dataclass, field
from typing import Final, Literal

Size = Literal["body", "small", "large"]
PageName = Literal["a4", "letter"]
PAGES: Final[dict[PageName, tuple[float, float]]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Width and height of a page in mm (ISO 216 A4; Letter, 8 1/2 by 11 in)."""


@dataclass(frozen=True)
class Said:
    """A paragraph inside a cell."""

    text: str
    bold: bool = False
    size: Size = "body"


@dataclass(frozen=True)
class Frames:
    """Frames to write into by hand: day and month, hour and minute, or hour and minute alone."""

    day: bool = True


@dataclass(frozen=True)
class Tick:
    """A box to tick."""


Cell = tuple[Said, ...] | Frames | Tick


def cell(text: str, *, bold: bool = False, size: Size = "body") -> Cell:
    """Give a cell of one paragraph, an empty one for no text."""
    return (Said(text, bold, size),) if text else ()


@dataclass(frozen=True)
class Column:
    """A column: its head, and its width as a share of what the fixed ones leave, or in mm."""

    head: str
    share: float = 0.0
    mm: float = 0.0


@dataclass(frozen=True)
class Table:
    """Rows under heads that are repeated on every page; a row never breaks over a page."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    least: float = 0.0
    """Least height of a row in mm, for what a hand is to write."""
    heads: bool = True
    ruled: bool = True


@dataclass(frozen=True)
class Heading:
    """A heading; it is never left alone at the foot of a page."""

    text: str


@dataclass(frozen=True)
class Words:
    """A paragraph over the whole width."""

    text: str
    bold: bool = False
    size: Size = "body"


@dataclass(frozen=True)
class Picture:
    """A picture that is named by a key, with its width over its height and what is said of it."""

    key: str
    ratio: float
    said: str = ""


@dataclass(frozen=True)
class Pictures:
    """Pictures side by side, none higher than `high` mm nor wider than a `share` of the page."""

    pictures: tuple[Picture, ...]
    high: float
    across: int = 1


@dataclass(frozen=True)
class Lines:
    """Empty lines to write on."""

    count: int


Block = Heading | Words | Table | Pictures | Lines


@dataclass(frozen=True)
class Document:
    """One paper. `code` is drawn as a QR code beside the title, "" for none."""

    title: str
    code: str
    under: tuple[str, ...]
    """Lines below the title."""
    head: str
    """What every page after the first says at its top, on the left."""
    studio: str
    """And on the right."""
    printed: str
    """What every foot says beside the page's number."""
    blocks: tuple[Block, ...] = field(default=())
