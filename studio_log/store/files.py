"""The studio's folder: names in it, whether it can be used, whether something syncs it."""

import os
import re
from datetime import UTC, datetime
from pathlib import Path

from studio_log.store import faults

FILE_NAME = "studio.sqlite3"
COPIES = "copies"
COMPANIONS = ("-wal", "-shm")
"""What SQLite keeps beside a file that is open."""

SYNC_FOLDERS = (
    "dropbox",
    "onedrive",
    "nextcloud",
    "owncloud",
    "google drive",
    "googledrive",
    "my drive",
    "icloud",
    "com~apple~clouddocs",
    "syncthing",
    "seafile",
    "pcloud",
)
"""How the folders of syncing programs begin, in lower case."""
SYNC_MARKS = (".stfolder", ".dropbox", ".dropbox.cache", ".nextcloudsync.log", ".owncloudsync.log")
"""Files and folders that syncing programs leave at the top of what they sync."""
CONFLICT = re.compile(r"^studio\b.*conflict", re.IGNORECASE)

SYNCED = (
    "Another program syncs this folder ({sign}). It may copy the studio's file while it is "
    "being written, and spoil it. Keep the studio in a folder that is not synced, and let the "
    "program sync a backup instead (studio-log backup --to FILE)."
)
CONFLICTED = (
    "A syncing program has left a second copy of the studio here ({sign}). The log uses "
    "studio.sqlite3 only; what the other copy holds is not in it. Keep both until you know "
    "which one is whole, and move the studio to a folder that is not synced."
)


def sync_warnings(folder: Path) -> tuple[str, ...]:
    """Say in sentences what speaks for another program syncing the folder."""
    warnings = []
    sign = _sync_sign(folder.absolute())
    if sign:
        warnings.append(SYNCED.format(sign=sign))
    conflicts = sorted(path.name for path in folder.iterdir() if CONFLICT.match(path.name))
    if conflicts:
        warnings.append(CONFLICTED.format(sign=", ".join(conflicts[:3])))
    return tuple(warnings)


def _sync_sign(folder: Path) -> str:
    for part in folder.parts:
        if part.casefold().startswith(SYNC_FOLDERS):
            return part
    for place in (folder, *folder.parents):
        for mark in SYNC_MARKS:
            if _is_there(place / mark):
                return str(place / mark)
    return ""


def _is_there(path: Path) -> bool:
    try:
        return path.exists()
    except OSError:  # a parent that may not be looked into
        return False


def prepare(folder: Path, *, create: bool) -> Path:
    """Give the path of the studio's file in a usable folder; BadStudio where it is not one."""
    path = folder / FILE_NAME
    with faults.told_with_disk(folder):
        if not folder.exists() and create:
            folder.mkdir(parents=True, exist_ok=True)
        if not folder.is_dir():
            raise faults.refusal(faults.UNREACHABLE, folder)
        size = path.stat().st_size if path.exists() else 0
        if size == 0 and _had_a_studio(path):
            raise faults.refusal(faults.DAMAGED, folder)
        if size == 0 and not create:
            raise faults.refusal(faults.NO_STUDIO, folder)
        if not os.access(folder, os.W_OK) or (path.exists() and not os.access(path, os.W_OK)):
            raise faults.refusal(faults.READ_ONLY, folder)
    return path


def _had_a_studio(path: Path) -> bool:
    """Say whether an empty or absent file once held something: SQLite would discard the log."""
    log = path.with_name(path.name + "-wal")
    return (log.exists() and log.stat().st_size > 0) or (
        path.exists() and any((path.parent / COPIES).glob("*.sqlite3"))
    )


def stamp(moment: datetime) -> str:
    """Give an aware moment for use in a file name: 20260609T130800Z."""
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def last_change(path: Path) -> datetime:
    """Give the moment at which a file was last changed."""
    return datetime.fromtimestamp(path.stat().st_mtime, UTC)


def free_path(folder: Path, stem: str) -> Path:
    """Give a path in the folder that is not taken, making the folder where it is missing."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{stem}.sqlite3"
    count = 1
    while path.exists():
        count += 1
        path = folder / f"{stem}-{count}.sqlite3"
    return path


def settle(path: Path) -> None:
    """Have the disk hold a file and its name before going on."""
    for place, flags in ((path, os.O_RDWR), (path.parent, os.O_RDONLY)):
        try:
            handle = os.open(place, flags)
        except PermissionError:  # Windows opens no folders
            continue
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def remove(path: Path) -> None:
    """Remove a file and what SQLite kept beside it; nothing is said where there is none."""
    for suffix in ("", *COMPANIONS, "-journal"):
        path.with_name(path.name + suffix).unlink(missing_ok=True)
