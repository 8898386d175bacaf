"""An old notebook taken in: what can be asked and done, in words that screens share."""

from dataclasses import dataclass
from pathlib import Path

from studio_log.services.notebook_file import Sheet


@dataclass(frozen=True)
class NotebookFor:
    """Look at a table: what it says, and what its columns seem to be."""

    path: Path


@dataclass(frozen=True)
class Notebook:
    """A table with the guess of its columns."""

    path: Path
    sheet: Sheet
    columns: tuple[str, ...]
    """One of `domain.notebook.FIELDS` for each column, "" for none."""
    month_first: bool


@dataclass(frozen=True)
class Choices:
    """What the person chose: the columns, and the method of rows that name none."""

    columns: tuple[str, ...]
    method: str = "soy-immersion-long"
    month_first: bool = False
    leave_out: bool = False
    """Take the others in where a row cannot be read; else none at all."""


@dataclass(frozen=True)
class RowSaid:
    """What becomes of a row, in words; `good` is false where it cannot be taken in."""

    number: int
    good: bool
    words: str


@dataclass(frozen=True)
class NotebookReport:
    """Every row, and how many would be taken in."""

    rows: tuple[RowSaid, ...]

    @property
    def good(self) -> int:
        """How many rows can be taken in."""
        return sum(row.good for row in self.rows)


@dataclass(frozen=True)
class TryNotebook:
    """Say what would become of each row; nothing is changed."""

    sheet: Sheet
    choices: Choices


@dataclass(frozen=True)
class TakeNotebook:
    """Make a lot of each row, all or none."""

    sheet: Sheet
    choices: Choices
    name: str = ""
    """Of the file, for the journal."""


@dataclass(frozen=True)
class TakeBackLots:
    """Take back all that one import made: those lots stay as voided codes."""

    codes: tuple[str, ...]
