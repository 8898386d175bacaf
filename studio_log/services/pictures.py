"""Photos: what is asked and told about a picture, in words that screens share."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path


@dataclass(frozen=True)
class PictureFor:
    """Look a picture over before it is kept: a file, or what was pasted."""

    path: Path | None = None
    content: bytes = b""
    name: str = ""


@dataclass(frozen=True)
class Picture:
    """A picture that can be kept."""

    name: str
    words: str
    """"4000 × 3000, 3.1 MB"."""
    taken_at: datetime | None = None
    """What its camera says, where that is not ahead of now."""
    taken_words: str = ""


@dataclass(frozen=True)
class AddPhoto:
    """Keep a picture with a lot or one of its steps, as a note entry; `at` None means now."""

    code: str
    path: Path | None = None
    content: bytes = b""
    name: str = ""
    step: int | None = None
    at: datetime | None = None
    note: str = ""
    sure: bool = False
