"""Copies of a studio: one where the person says, and one a day for seven days."""

import re
from datetime import date, datetime, timedelta
from pathlib import Path

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, plain
from studio_log.store.database import Store

KEPT_DAYS = 7
DAY_NAME = re.compile(r"^day-(\d{4}-\d{2}-\d{2})\.sqlite3$")


def backup(store: Store, to: Path) -> None:
    """Write all that is committed to one file, which is whole and read back, or not there.

    A file that is already there is replaced only where it is a studio's copy itself.
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
    plain.copy(store.path, to)


def _same(one: Path, other: Path) -> bool:
    return one.exists() and other.exists() and one.samefile(other)


def _is_copy(path: Path) -> bool:
    try:
        return plain.examine(path) is not None
    except BadStudio:
        return False


def daily_copy(store: Store, now: datetime) -> Path | None:
    """Take today's copy if there is none yet; give its path, None where there was one.

    The day is that of `now` in the zone it carries. Copies of a day seven or more days
    ago are removed afterwards, never the newest.
    """
    today = now.date()
    copies = store.folder / files.COPIES
    path = copies / f"day-{today.isoformat()}.sqlite3"
    with faults.told_with_disk(copies):
        if path.exists():
            return None
        copies.mkdir(exist_ok=True)
        plain.copy(store.path, path)
        _remove_old(copies, today)
    return path


def days_kept(store: Store) -> dict[date, Path]:
    """Give the daily copies that are there, the oldest first."""
    return _days(store.folder / files.COPIES)


def _days(copies: Path) -> dict[date, Path]:
    found: dict[date, Path] = {}
    for path in sorted(copies.glob("day-*.sqlite3")):
        match = DAY_NAME.match(path.name)
        if match:
            try:
                found[date.fromisoformat(match[1])] = path
            except ValueError:  # named so by hand; not ours to remove
                continue
    return found


def _remove_old(copies: Path, today: date) -> None:
    kept = _days(copies)
    newest = max(kept)
    for day, path in kept.items():
        if day != newest and today - day >= timedelta(days=KEPT_DAYS):
            files.remove(path)
