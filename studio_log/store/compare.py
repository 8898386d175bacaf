"""What a copy holds against what is here: seen before a copy is put back."""

import sqlite3
from collections.abc import Mapping
from contextlib import closing
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, photo_files, plain
from studio_log.store.photos import FOLDER
from studio_log.store.restore import fetched

Seals = tuple[int, ...]


@dataclass(frozen=True)
class Holding:
    """What one studio's file holds: the seals of its journals by code, in order."""

    journals: Mapping[str, Seals] = field(default_factory=dict)
    last_written: datetime | None = None
    readable: bool = True

    @property
    def entries(self) -> int:
        """How many entries there are."""
        return sum(map(len, self.journals.values()))

    @property
    def lots(self) -> int:
        """How many lots there are; their codes begin with a figure."""
        return sum(code[:1].isdigit() for code in self.journals)


@dataclass(frozen=True)
class Difference:
    """What putting a copy back would change, by code. Each code stands in one group at most."""

    here: Holding
    there: Holding
    newer: tuple[str, ...] = ()
    """The copy has further entries of these."""
    older: tuple[str, ...] = ()
    """The studio has further entries of these, which would be gone."""
    parted: tuple[str, ...] = ()
    """Both went on by themselves from some entry on."""
    missing: tuple[str, ...] = ()
    """Not in the copy: they would be gone."""
    back: tuple[str, ...] = ()
    """In the copy alone: they would come back."""
    photos_lost: int = 0
    """Photos that the copy speaks of and that lie neither here nor beside it."""


def compare(folder: Path, source: Path) -> Difference:
    """Look at a copy as `restore` would take it; nothing is changed. BadStudio as there."""
    with fetched(folder, source, "compared") as part:
        there = _holding(part)
        names = photo_files.named_in(part)
    here = _here(folder / files.FILE_NAME)
    places = (folder / FOLDER, *photo_files.folders_of(source))
    lost = sum(not any(photo_files.size_of(place / name) for place in places) for name in names)
    return _difference(here, there, lost)


def _here(path: Path) -> Holding:
    """Give what is here; a studio that cannot be read is said to be so."""
    try:
        if plain.examine(path) is None:
            return Holding()
        return _holding(path)
    except BadStudio:
        return Holding(readable=False)


def _holding(path: Path) -> Holding:
    with faults.told_with_disk(path.parent), closing(plain.connect(path, "ro")) as line:
        line.execute("PRAGMA trusted_schema = OFF")
        journals: dict[str, list[int]] = {}
        for subject, seal in line.execute(
            "SELECT subject, seal FROM entry ORDER BY subject, number"
        ):
            journals.setdefault(str(subject), []).append(int(seal))
        return Holding(
            {code: tuple(seals) for code, seals in journals.items()}, _last_written(line)
        )


def _last_written(line: sqlite3.Connection) -> datetime | None:
    row = line.execute("SELECT written FROM entry ORDER BY id DESC LIMIT 1").fetchone()
    try:
        return datetime.fromisoformat(str(row[0])).replace(tzinfo=UTC) if row else None
    except ValueError:
        return None


def _difference(here: Holding, there: Holding, photos_lost: int) -> Difference:
    groups: dict[str, list[str]] = {}
    for code in sorted(here.journals.keys() | there.journals.keys()):
        group = _group(here.journals.get(code, ()), there.journals.get(code, ()))
        if group:
            groups.setdefault(group, []).append(code)
    return Difference(
        here, there, photos_lost=photos_lost,
        **{name: tuple(codes) for name, codes in groups.items()},
    )  # fmt: skip


def _group(here: Seals, there: Seals) -> str:
    if here == there:
        return ""
    if not here or not there:
        return "missing" if here else "back"
    both = min(len(here), len(there))
    if here[:both] != there[:both]:
        return "parted"
    return "older" if len(here) > len(there) else "newer"
