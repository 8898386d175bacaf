"""Copies of a studio: one where the person says, one a day here, and one a day elsewhere."""

import re
import uuid
from collections.abc import Iterable
from contextlib import closing
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Final

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, photo_files, plain
from studio_log.store.database import Store
from studio_log.store.photo_files import PhotosCopied
from studio_log.store.photos import FOLDER

KEPT_DAYS: Final = 7
KEPT_WEEKS: Final = 4
KEPT_MONTHS: Final = 12
DAY_NAME: Final = re.compile(r"^day-(\d{4}-\d{2}-\d{2})\.sqlite3$")
ELSEWHERE: Final = "studio-log-copies-"
"""How the folder of a studio's copies on a stick begins; its own sign follows."""
SIGNS: Final = uuid.UUID("0b0c8a56-3a0e-4c77-8a4e-7d3f35a1c9d4")
"""The namespace of studios' signs (RFC 9562, name-based): made for this program."""


@dataclass(frozen=True)
class CopyMade:
    """A copy that was written and read back."""

    path: Path
    photos: PhotosCopied


def backup(store: Store, to: Path) -> CopyMade:
    """Write all that is committed to one file, which is whole and read back, or not there.

    A file that is already there is replaced only where it is a studio's copy itself. The
    photos go to a folder beside it, those that are not there yet.
    """
    if to.is_dir():
        raise BadStudio(f"{to} is a folder. Nothing was written. Name a file for the backup.")
    if _same(to, store.path):
        raise BadStudio(f"{to} is the studio itself. Nothing was written. Name another file.")
    if not to.parent.is_dir():
        raise faults.refusal(faults.UNREACHABLE, to.parent)
    if to.exists() and not _is_copy(to):
        raise BadStudio(
            f"{to} is there already and is no backup of a studio. It was left as it is. "
            "Name another file."
        )
    return _written(store.path, to)


def _written(path: Path, to: Path) -> CopyMade:
    """Copy a studio's file and its photos, and open the copy once more."""
    plain.copy(path, to)
    if plain.examine(to) is None:
        raise faults.refusal(faults.DISK, to.parent)
    names = photo_files.named_in(to)
    photos = photo_files.carry(names, [path.parent / FOLDER], to.parent / photo_files.BESIDE)
    return CopyMade(to, photos)


def _same(one: Path, other: Path) -> bool:
    return one.exists() and other.exists() and one.samefile(other)


def _is_copy(path: Path) -> bool:
    try:
        return plain.examine(path) is not None
    except BadStudio:
        return False


def daily_copy(store: Store, now: datetime, *, anew: bool = False) -> Path | None:
    """Take today's copy if there is none yet; give its path, None where there was one.

    The day is that of `now` in the zone it carries; `anew` puts a fresh copy in the place of
    today's. Copies that `days_to_keep` does not name are removed afterwards. The photos lie
    beside the studio already.
    """
    today = now.date()
    copies = store.folder / files.COPIES
    path = copies / f"day-{today.isoformat()}.sqlite3"
    with faults.told_with_disk(copies):
        if path.exists() and not anew:
            return None
        copies.mkdir(exist_ok=True)
        plain.copy(store.path, path)
        _remove_old(copies, today)
    return path


def copy_elsewhere(
    path: Path, chosen: Path, now: datetime, *, anew: bool = False
) -> CopyMade | None:
    """Take today's copy of a studio's file, with its photos, to a folder on another disk.

    Gives None where today's is there already, or nothing was ever written that would be
    worth one. Safe on any thread: the studio's own connection is not used. BadStudio where
    the folder is gone, full or read-only, with the system's own error as its cause.
    """
    sign = sign_of(path)
    if not sign:
        return None
    folder = chosen / f"{ELSEWHERE}{sign}"
    today = now.date()
    to = folder / f"day-{today.isoformat()}.sqlite3"
    with faults.told_with_disk(chosen):
        if not chosen.is_dir():
            raise faults.refusal(faults.UNREACHABLE, chosen)
        if to.exists() and not anew:
            return None
        folder.mkdir(exist_ok=True)
        made = _written(path, to)
        _remove_old(folder, today)
    return made


def sign_of(path: Path) -> str:
    """Give eight letters that tell a studio from any other; "" before its first entry."""
    with faults.told_with_disk(path.parent), closing(plain.connect(path, "ro")) as line:
        line.execute("PRAGMA trusted_schema = OFF")
        first = line.execute("SELECT subject, written, seal FROM entry ORDER BY id LIMIT 1")
        row = first.fetchone()
    return uuid.uuid5(SIGNS, repr(row)).hex[:8] if row is not None else ""


def days_kept(store: Store) -> dict[date, Path]:
    """Give the daily copies that are there, the oldest first."""
    return days_in(store.folder / files.COPIES)


def days_in(copies: Path) -> dict[date, Path]:
    """Give the daily copies in a folder, the oldest first; {} where it cannot be read."""
    found: dict[date, Path] = {}
    try:
        paths = sorted(copies.glob("day-*.sqlite3"))
    except OSError:
        return found
    for path in paths:
        match = DAY_NAME.match(path.name)
        if match:
            try:
                found[date.fromisoformat(match[1])] = path
            except ValueError:  # named so by hand; not ours to remove
                continue
    return found


def days_to_keep(days: Iterable[date], today: date) -> set[date]:
    """Give the days whose copies are kept: of 7 days, then the last of 4 weeks and 12 months.

    A week is that of ISO 8601, from Monday. The newest is always kept, and so is what a clock
    that was wrong dated ahead.
    """
    known = sorted(days)
    kept = {day for day in known if today - day < timedelta(days=KEPT_DAYS)} | set(known[-1:])
    weeks = {day.isocalendar()[:2]: day for day in known}
    months = {(day.year, day.month): day for day in known}
    for newest, count in ((weeks, KEPT_WEEKS), (months, KEPT_MONTHS)):
        kept.update(newest[place] for place in sorted(newest)[-count:])
    return kept


def _remove_old(copies: Path, today: date) -> None:
    there = days_in(copies)
    kept = days_to_keep(there, today)
    for day, path in there.items():
        if day not in kept:
            files.remove(path)
