"""The door of the store: open a studio's folder, work in transactions, see others' work.

Writers begin at once (BEGIN IMMEDIATE), so that two never both add one to the same
number; readers begin late and never wait for a writer. A commit is on the disk when
`work` ends (write-ahead log, synchronous FULL).
"""

import sqlite3
import threading
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path
from types import TracebackType
from typing import Self

from sqlalchemy import Engine
from sqlmodel import Session

from studio_log.store import faults, files, plain
from studio_log.store.engine import WRITING, engine_of
from studio_log.store.work import Work

PRAGMAS = (
    "PRAGMA foreign_keys = ON",
    "PRAGMA synchronous = FULL",
    "PRAGMA trusted_schema = OFF",
)


class Store:
    """An open studio file. One thread at a time; other processes may have it open too."""

    def __init__(self, path: Path, line: sqlite3.Connection, warnings: tuple[str, ...]) -> None:
        self.path = path
        self.folder = path.parent
        self.warnings = warnings
        """Sentences about the folder that the person should read; the studio works."""
        self._line = line
        self._lock = threading.RLock()
        self._busy = False
        self._engine = engine_of(line)
        self._writers = self._engine.execution_options(studio_begin=WRITING)

    @contextmanager
    def work(self) -> Iterator[Work]:
        """Begin one writing transaction: all of it is written, or after an error none."""
        with self._turn(self._writers) as session:
            yield Work(session)
            session.commit()

    @contextmanager
    def reading(self) -> Iterator[Work]:
        """Look at one and the same state of the file; anything written is refused."""
        with self._turn(self._engine, query_only=True) as session:
            yield Work(session)

    def data_version(self) -> int:
        """Give a number that changes when another program or process has written."""
        with self._lock, faults.told(self.folder):
            return int(self._line.execute("PRAGMA data_version").fetchone()[0])

    def close(self) -> None:
        """Let go of the file; what is committed stays."""
        with self._lock:
            self._engine.dispose()
            self._line.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    @contextmanager
    def _turn(self, engine: Engine, *, query_only: bool = False) -> Iterator[Session]:
        with self._lock:
            if self._busy:
                raise RuntimeError("One transaction at a time: pass the work on instead.")
            self._busy = True
            try:
                with (
                    faults.told(self.folder),
                    self._only_reading(on=query_only),
                    Session(engine, expire_on_commit=False, close_resets_only=False) as session,
                ):
                    session.connection()  # begins here, so that a writer waits here
                    yield session
            finally:
                self._busy = False

    @contextmanager
    def _only_reading(self, *, on: bool) -> Iterator[None]:
        if not on:
            yield
            return
        self._line.execute("PRAGMA query_only = ON")
        try:
            yield
        finally:
            self._line.execute("PRAGMA query_only = OFF")


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
