"""Copies of the studio: what can be done with them and asked about them, as values."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path


@dataclass(frozen=True)
class TakeCopy:
    """Take today's copy anew, here and in the place that was chosen."""


@dataclass(frozen=True)
class BackupTo:
    """Write a copy to a file, its photos beside it."""

    to: Path


@dataclass(frozen=True)
class RestoreCopy:
    """Put a copy in the studio's place. Without `sure` a Question tells what it would change."""

    source: Path
    sure: bool = False


@dataclass(frozen=True)
class CompareCopy:
    """Ask what putting a copy back would change; answered by sentences."""

    source: Path


@dataclass(frozen=True)
class CopiesFor:
    """Ask for the copies there are."""


@dataclass(frozen=True)
class CopySeen:
    """One copy: where it lies, the day it is of, what it is in words, its size in bytes."""

    path: Path
    day: date | None
    words: str
    size: int


@dataclass(frozen=True)
class CopiesSeen:
    """The copies, newest first, and how the place on another disk fares."""

    copies: tuple[CopySeen, ...]
    elsewhere: str
    """The folder that was chosen; "" for none."""
    elsewhere_words: str
    fault: str
    today: date
