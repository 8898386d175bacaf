"""Photo files on their way: into a copy beside the log's, and back again.

They are named by their content, so that a copy is checked by its name, and what is there
already need not be copied again.
"""

import hashlib
import re
import sqlite3
from collections.abc import Iterable
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from studio_log.store import faults, plain
from studio_log.store.photos import FOLDER, keep

BESIDE: Final = "studio-log-photos"
"""Where a copy's photos lie, beside the copy: several copies share them."""
NAME: Final = re.compile(r"[0-9a-f]{64}\.(?:jpg|png|webp)")
LARGEST: Final = 200_000_000
"""Bytes; a photo is refused above 60 MB when it is kept."""


@dataclass(frozen=True)
class PhotosCopied:
    """How many were copied and how many were there; the names of those that could not be."""

    copied: int = 0
    there: int = 0
    lost: tuple[str, ...] = ()


def named_in(path: Path) -> tuple[str, ...]:
    """Give the names of the photo files that a studio's file speaks of, in order."""
    with faults.told_with_disk(path.parent), closing(plain.connect(path, "ro")) as line:
        line.execute("PRAGMA trusted_schema = OFF")
        try:
            found = line.execute("SELECT DISTINCT hash, kind FROM photo").fetchall()
        except sqlite3.OperationalError as error:
            if "no such table" in str(error):  # of a version before the photos
                return ()
            raise
    names = {f"{hash_}.{kind}" for hash_, kind in found}
    return tuple(sorted(name for name in names if NAME.fullmatch(name)))


def folders_of(copy: Path) -> tuple[Path, ...]:
    """Give where the photos of a copy may lie: beside it, or beside the studio it is a copy of."""
    return (copy.parent / BESIDE, copy.parent / FOLDER, copy.parent.parent / FOLDER)


def carry(names: Iterable[str], sources: Iterable[Path], target: Path) -> PhotosCopied:
    """Copy those that are not in `target` yet, each checked by its name.

    BadStudio where the target refuses; a source that is missing or spoilt is named.
    """
    places = tuple(sources)
    copied, there, lost = 0, 0, []
    for name in names:
        if _is_there(target / name, places):
            there += 1
            continue
        content = _first_sound(name, places)
        if content is None:
            lost.append(name)
            continue
        with faults.told_with_disk(target):
            target.mkdir(exist_ok=True)
        keep(target / name, content, name[:64])
        copied += 1
    return PhotosCopied(copied, there, tuple(lost))


def _is_there(path: Path, sources: tuple[Path, ...]) -> bool:
    """Say whether a file is there and as long as that of a source; content is read on repair."""
    try:
        size = path.stat().st_size
    except OSError:
        return False
    sizes = [size_of(source / path.name) for source in sources]
    return size > 0 and (size in sizes or not any(sizes))


def size_of(path: Path) -> int:
    """Give the size of a file, 0 where there is none."""
    try:
        return path.stat().st_size if path.is_file() else 0
    except OSError:
        return 0


def _first_sound(name: str, sources: tuple[Path, ...]) -> bytes | None:
    for source in sources:
        content = sound(source / name)
        if content is not None:
            return content
    return None


def sound(path: Path) -> bytes | None:
    """Give a photo's content; None where it is missing or is not what its name says."""
    if not 0 < size_of(path) <= LARGEST:
        return None
    try:
        content = path.read_bytes()
    except OSError:
        return None
    return content if hashlib.sha256(content).hexdigest() == path.name[:64] else None
