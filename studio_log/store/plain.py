"""Plain SQLite connections: for looking at a file before it is trusted, and for copying."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files

APPLICATION_ID = 0x53744C67
"""Written in the head of every studio file ("StLg"), so that a foreign file is known."""
FIRST = "0001"
HEAD = "0005"
"""The newest revision of migrations/versions; a test holds the two together."""
MAGIC = b"SQLite format 3\x00"
WAIT_SECONDS = 5.0
"""How long a program waits for another to finish writing."""


def connect(path: Path, mode: str) -> sqlite3.Connection:
    """Open a file ("ro", "rw", "rwc") in which transactions are begun by hand."""
    return sqlite3.connect(
        f"{path.absolute().as_uri()}?mode={mode}",
        uri=True,
        timeout=WAIT_SECONDS,
        isolation_level=None,
        check_same_thread=False,
    )


def examine(path: Path) -> str | None:
    """Give the revision of a studio file, None where it is empty; the file is not changed.

    BadStudio where it is damaged, is something else, or comes from a newer version.
    """
    with faults.told_with_disk(path.parent):
        if not path.exists() or path.stat().st_size == 0:
            return None
        with path.open("rb") as file:
            if file.read(len(MAGIC)) != MAGIC:
                raise faults.refusal(faults.DAMAGED, path.parent)
        try:
            return _revision(path, "ro")
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_READONLY:
                raise
            # Power was lost while the studio was being made: only a writer may take back
            # what was half done then.
            return _revision(path, "rw")


def _revision(path: Path, mode: str) -> str | None:
    with closing(connect(path, mode)) as line:
        line.execute("PRAGMA trusted_schema = OFF")
        line.execute("PRAGMA cell_size_check = ON")
        return _asked(line, path)


def _asked(line: sqlite3.Connection, path: Path) -> str | None:
    line.execute("BEGIN")  # one and the same state for all that is asked here
    if line.execute("PRAGMA quick_check(1)").fetchall() != [("ok",)]:
        raise faults.refusal(faults.DAMAGED, path.parent)
    tables = {name for (name,) in line.execute("SELECT name FROM sqlite_master")}
    if not tables:
        return None
    if line.execute("PRAGMA application_id").fetchone() != (APPLICATION_ID,):
        raise faults.refusal(faults.FOREIGN, path)
    revisions = line.execute("SELECT version_num FROM alembic_version").fetchall()
    return known_revision(revisions, path.parent)


def known_revision(rows: list[tuple[str]], where: Path) -> str:
    """Give the one revision these rows hold; BadStudio where it is none of ours."""
    if len(rows) != 1 or not isinstance(rows[0][0], str):
        raise faults.refusal(faults.DAMAGED, where)
    revision = rows[0][0]
    if len(revision) != len(HEAD) or not revision.isdecimal() or revision < FIRST:
        raise faults.refusal(faults.DAMAGED, where)
    if revision > HEAD:
        raise faults.refusal(faults.NEWER, where)
    return revision


def copy(source: Path, target: Path) -> None:
    """Copy what is committed in an open or closed studio file into a new, whole file.

    The copy is one file without companions, was read back and is on the disk when this
    returns; where anything fails, nothing is left at `target`.
    """
    part = target.with_name(f".{target.name}.part")
    with faults.told_with_disk(target.parent):
        try:
            files.remove(part)
            fill(source, part)
            files.settle(part)
            part.replace(target)
            files.settle(target)
        finally:
            files.remove(part)


def fill(source: Path, target: Path) -> None:
    """Copy a studio file page by page into a plain one, and read the copy back."""
    with closing(connect(source, "ro")) as origin, closing(connect(target, "rwc")) as line:
        origin.backup(line)
        line.execute("PRAGMA journal_mode = DELETE")
        if line.execute("PRAGMA quick_check(1)").fetchall() != [("ok",)]:
            raise faults.refusal(faults.DAMAGED, source.parent)


def pour(source: Path, target: Path, before: Callable[[], None]) -> None:
    """Replace all that a studio file holds, in one transaction, while others have it open.

    `before` is called when nobody else can write any more and nothing is replaced yet; an
    error from it leaves the file as it was.
    """
    state = {"begun": False, "waits": 0}

    def watch(status: int, left: int, total: int) -> None:
        del left, total
        if status in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
            state["waits"] += 1
            if state["waits"] > 2:  # each has already waited WAIT_SECONDS
                raise faults.refusal(faults.LOCKED, target.parent)
        elif not state["begun"]:
            state["begun"] = True
            before()

    with closing(connect(source, "ro")) as origin, closing(connect(target, "rw")) as line:
        line.execute("PRAGMA synchronous = FULL")
        origin.backup(line, pages=1, progress=watch, sleep=0.1)
        if not state["begun"]:
            raise BadStudio(f"{source} holds nothing. Nothing was changed.")
