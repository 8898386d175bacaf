"""The door of the store: open a studio's folder, work in transactions, see others' work.

Writers begin at once (BEGIN IMMEDIATE), so that two never both add one to the same
number; readers begin late and never wait for a writer. A commit is on the disk when
`work` ends (write-ahead log, synchronous FULL).
"""

import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, closing, contextmanager
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store import faults, files, plain
from studio_log.store.engine import WRITING, engine_of
from studio_log.store.turns import Turns

if TYPE_CHECKING:
    from sqlalchemy import Engine

    from studio_log.store.unsent import Send

PRAGMAS = (
    "PRAGMA foreign_keys = ON",
    "PRAGMA synchronous = FULL",
    "PRAGMA trusted_schema = OFF",
)


class FileLine:
    """The one connection to a studio's file."""

    def __init__(self, folder: Path, line: sqlite3.Connection) -> None:
        self._folder = folder
        self._line = line
        self.readers: Engine = engine_of(line)
        self.writers: Engine = self.readers.execution_options(studio_begin=WRITING)

    @contextmanager
    def only_reading(self) -> Iterator[None]:
        """Refuse whatever is written meanwhile."""
        self._line.execute("PRAGMA query_only = ON")
        try:
            yield
        finally:
            self._line.execute("PRAGMA query_only = OFF")

    def told(self) -> AbstractContextManager[None]:
        """Turn SQLite's errors inside into sentences."""
        return faults.told(self._folder)

    def data_version(self) -> int:
        """Give a number that changes when another program or process has written."""
        return int(self._line.execute("PRAGMA data_version").fetchone()[0])

    def commit(self, session: Session) -> None:
        """Have the disk hold it."""
        session.commit()

    def close(self) -> None:
        """Close the file."""
        self.readers.dispose()
        self._line.close()


class Store(Turns):
    """An open studio file. One thread at a time; other processes may have it open too."""

    def __init__(self, path: Path, line: sqlite3.Connection, warnings: tuple[str, ...]) -> None:
        super().__init__(path.parent, FileLine(path.parent, line))
        self.path = path
        self.sqlite = line
        self.warnings = warnings
        """Sentences about the folder that the person should read; the studio works."""

    address = ""
    """Of the server on which the studio lies; "" for one of this laptop alone."""
    away_words = ""
    """Why that server is out of reach; "" while it answers."""
    refused: BadStudio | None = None
    """The same as an error; WrongPassword where it lets nobody in by that password."""

    @property
    def away(self) -> bool:
        """Whether acts are done here and wait to be sent to a server."""
        return False

    rings = True
    """Whether reminders ring on this laptop."""

    def sent_mark(self) -> int | None:
        """Give the mark of the journal up to which a server has it; None where it has all."""
        return None

    def catch_up(self) -> None:
        """Bring what changed on a server, whether it was heard of or not."""

    def reach(self, send: "Send") -> bool:
        """Try a server again that was out of reach; say whether all is as it should be."""
        del send
        return True

    def listen(self, heard: Callable[[], None]) -> None:
        """Have a call made, in some thread, when a server tells of a change."""


def open_store(folder: Path, *, create: bool = True, now: datetime | None = None) -> Store:
    """Open the studio in a folder, making one where there is none unless `create` is off.

    A studio of an older version is brought up to date, with a copy taken before each
    step. `now` stamps those copies; without it the file's last change does.
    BadStudio where the folder or the file cannot be used; nothing is changed then.
    """
    path = files.prepare(folder, create=create)
    revision = plain.examine(path)
    if revision is None and not create:
        raise faults.refusal(faults.NO_STUDIO, folder)
    with faults.told_with_disk(folder):
        _start_log(path)
        if revision != plain.HEAD:
            # Late: Alembic takes half a second, and most starts have nothing to migrate.
            from studio_log.store.migrate import upgrade  # noqa: PLC0415

            upgrade(path, folder / files.COPIES, now)
        line = _open_line(path)
        return Store(path, line, files.sync_warnings(folder))


def _start_log(path: Path) -> None:
    """Have the file use a write-ahead log, which it remembers; making the file if need be."""
    for _ in range(50):
        with closing(plain.connect(path, "rwc")) as line:
            try:
                mode = line.execute("PRAGMA journal_mode = WAL").fetchone()[0]
            except sqlite3.OperationalError as error:
                # Turning it on does not wait for another program doing the same.
                if error.sqlite_errorcode != sqlite3.SQLITE_BUSY:
                    raise
            else:
                if mode == "wal":
                    return
                raise faults.refusal(faults.NETWORK, path.parent)
        time.sleep(0.1)
    raise faults.refusal(faults.LOCKED, path.parent)


def _open_line(path: Path) -> sqlite3.Connection:
    line = plain.connect(path, "rw")
    try:
        for pragma in PRAGMAS:
            line.execute(pragma)
    except sqlite3.Error:
        line.close()
        raise
    return line
