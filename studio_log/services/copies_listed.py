"""The copies that lie in a folder, as they are shown."""

from collections.abc import Iterator, Mapping
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.services.copies import CopySeen
from studio_log.store.backup import DAY_NAME, ELSEWHERE

KINDS: Final[Mapping[str, str]] = {
    "day": tr_later("of the day"),
    "before": tr_later("before a new version"),
    "replaced": tr_later("what a copy replaced"),
    "damaged": tr_later("damaged, as it was found"),
}


def listed_elsewhere(chosen: Path) -> list[CopySeen]:
    """List the copies in the chosen place; called where waiting harms nobody."""
    try:
        folders = sorted(chosen.glob(f"{ELSEWHERE}*"))
    except OSError:
        return []
    return [one for folder in folders for one in listed(folder, str(chosen))]


def listed(folder: Path, where: str) -> Iterator[CopySeen]:
    """List the copies in a folder; `where` is said of them, "" for those of this disk."""
    try:
        paths = sorted(folder.glob("*.sqlite3"))
        sizes = {path: path.stat() for path in paths}
    except OSError:
        return
    for path, stat in sizes.items():
        kind = KINDS.get(path.name.partition("-")[0], "")
        if not kind:
            continue
        match = DAY_NAME.match(path.name)
        day = _date(match[1]) if match else datetime.fromtimestamp(stat.st_mtime, UTC).date()
        words = tr(kind)
        if where:
            words = tr("{what}, in {folder}", what=words, folder=where)
        yield CopySeen(path, day, words, stat.st_size)


def _date(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
