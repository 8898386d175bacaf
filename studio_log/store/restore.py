"""Put a copy back in the place of a studio. The copy is hostile until it was checked."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime
from functools import partial
from pathlib import Path

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, photo_files, plain
from studio_log.store.link import read_link
from studio_log.store.photos import FOLDER

LARGEST = 2 * 1024**3
"""Bytes; a studio of twenty years stays below a tenth of this."""
PAGE_SIZE = 4096

ON_SERVER = (
    "This studio lies on a server, and other laptops work on it. Nothing was changed. Take it back "
    "to this laptop first (Several laptops; or studio-log server leave), put the copy in its "
    "place, and move it to an empty database again."
)
NOT_A_COPY = (
    "{where} is not a whole copy of a studio ({detail}). The studio was left as it is. "
    "Choose another copy."
)
SCHEMA = "SELECT type, name, tbl_name, sql FROM sqlite_master WHERE name NOT LIKE 'sqlite~_%' "
SCHEMA += "ESCAPE '~' ORDER BY type, name"


def restore(folder: Path, source: Path, now: datetime) -> Path | None:
    """Replace the studio in a folder by a copy; give where the replaced one is kept.

    The copy is checked first, and brought up to date where it is of an older version; the
    studio that was there is kept as `copies/replaced-<stamp>.sqlite3`. Programs that have
    the studio open see the change as one made by another. BadStudio where anything
    fails: the studio is as it was then. None where there was no studio.
    """
    if read_link(folder) is not None:
        raise BadStudio(ON_SERVER)
    path = folder / files.FILE_NAME
    with fetched(folder, source, "restored") as part:
        kept = _put(part, path, files.stamp(now))
    # Photos that are missing are no reason to leave the log out: the copy is in its place.
    with suppress(BadStudio):
        names = photo_files.named_in(path)
        photo_files.carry(names, photo_files.folders_of(source), folder / FOLDER)
    return kept


@contextmanager
def fetched(folder: Path, source: Path, what: str) -> Iterator[Path]:
    """Give a copy fetched beside the studio, checked and brought up to date; gone afterwards."""
    _look_at(source, folder / files.FILE_NAME)
    part = folder / f".{files.FILE_NAME}.{what}"
    with faults.told_with_disk(folder):
        folder.mkdir(parents=True, exist_ok=True)
        try:
            files.remove(part)
            _fetch(source, part)
            _accept(part, source)
            yield part
        finally:
            files.remove(part)


def _look_at(source: Path, path: Path) -> None:
    try:
        if not source.is_file():
            raise _refused(source, "it is no file, or cannot be reached")
        if path.exists() and source.samefile(path):
            raise _refused(source, "it is the studio itself")
        if source.stat().st_size > LARGEST:
            raise _refused(source, "it is larger than 2 GB")
        with source.open("rb") as file:
            if file.read(len(plain.MAGIC)) != plain.MAGIC:
                raise _refused(source, "it is another kind of file")
    except OSError as error:
        raise _refused(source, "it cannot be read") from error


def _refused(source: Path, detail: str) -> BadStudio:
    return faults.refusal(NOT_A_COPY, source, detail)


def _fetch(source: Path, part: Path) -> None:
    """Copy the source here; one that is in use is copied with what its log holds."""
    log = source.with_name(source.name + "-wal")
    if log.exists() and log.stat().st_size > 0:
        plain.fill(source, part)
    else:
        shutil.copyfile(source, part)


def _accept(part: Path, source: Path) -> None:
    """Check the fetched copy and bring it up to date; BadStudio names the source."""
    try:
        with faults.told_with_disk(part.parent):
            revision = plain.examine(part)
            if revision is None:
                raise _refused(source, "it is empty")
            # Late: Alembic takes half a second, and few starts put a copy back.
            from studio_log.store import migrate  # noqa: PLC0415

            with closing(plain.connect(part, "rw")) as line:
                _check_shape(line, revision, source)
                _smooth(line)
            migrate.upgrade(part, None)
    except faults.Newer as error:
        raise _refused(source, "a newer version of Studio Log wrote it") from error
    except faults.Foreign as error:
        raise _refused(source, "it holds something else") from error
    except faults.Damaged as error:
        raise _refused(source, "it is damaged") from error


def _smooth(line: sqlite3.Connection) -> None:
    """Have the copy be one file with pages of our size, or it could not be poured."""
    line.execute("PRAGMA journal_mode = DELETE")
    if line.execute("PRAGMA page_size").fetchone()[0] != PAGE_SIZE:
        line.execute(f"PRAGMA page_size = {PAGE_SIZE}")
        line.execute("VACUUM")


def _check_shape(line: sqlite3.Connection, revision: str, source: Path) -> None:
    line.execute("PRAGMA trusted_schema = OFF")
    if line.execute("PRAGMA encoding").fetchone() != ("UTF-8",):
        raise _refused(source, "its text is stored in another way")
    if line.execute("PRAGMA foreign_key_check").fetchone() is not None:
        raise _refused(source, "steps in it belong to no lot")
    from studio_log.store import migrate  # noqa: PLC0415 - as above

    ours = set(migrate.shape_of(revision, SCHEMA))
    theirs = set(line.execute(SCHEMA).fetchall())
    if ours != theirs:
        names = sorted({str(row[1]) for row in ours ^ theirs})
        raise _refused(source, f"its inner form differs: {', '.join(names[:3])[:80]}")


def _put(part: Path, path: Path, stamp: str) -> Path | None:
    copies = path.parent / files.COPIES
    try:
        present = plain.examine(path)
    except (faults.Damaged, faults.Foreign):
        present = None
    if present is None:
        return swap(part, path, copies, f"replaced-{stamp}")
    kept = files.free_path(copies, f"replaced-{stamp}")
    plain.pour(part, path, partial(plain.copy, path, kept))
    return kept


def swap(part: Path, path: Path, copies: Path, stem: str) -> Path | None:
    """Put a file in the place of one that SQLite cannot read; that one is kept with its log.

    The old log goes before the new file comes: SQLite would write it over the new file.
    """
    kept = files.free_path(copies, stem) if path.exists() else None
    if kept is not None:
        for suffix in ("", *files.COMPANIONS):
            beside = path.with_name(path.name + suffix)
            if beside.exists():
                shutil.copyfile(beside, kept.with_name(kept.name + suffix))
        files.settle(kept)
    for suffix in files.COMPANIONS:
        path.with_name(path.name + suffix).unlink(missing_ok=True)
    part.replace(path)
    files.settle(path)
    return kept
