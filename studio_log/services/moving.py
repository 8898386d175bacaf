"""A studio moved out and in: what can be asked for, in words that screens share."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from studio_log.domain.errors import Refusal

Progress = Callable[[int, int], bool]
"""Told how much of all is done, in no unit; False stops the work."""


@dataclass(frozen=True)
class ExportFor:
    """Everything as a folder, or as one archive, at a place where nothing is yet."""

    to: Path
    zipped: bool = False


@dataclass(frozen=True)
class LongWork:
    """Work that takes a while and may be done in any thread, beside the studio."""

    run: Callable[[Progress], str]
    """Gives words for the person; Refusal where it failed or was stopped."""


@dataclass(frozen=True)
class TakeFolder:
    """Read an exported folder or archive back into an empty studio; `only_look` keeps nothing."""

    path: Path
    only_look: bool = False


class Looked(Refusal):
    """What a look says that keeps nothing: raised, so that all it did is rolled back."""
