"""One transaction at a time over one connection, whichever database it leads to."""

import threading
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from types import TracebackType
from typing import Protocol, Self

from sqlalchemy import Engine
from sqlmodel import Session

from studio_log.store.work import Work


class Line(Protocol):
    """A connection to a database, opened when it is needed."""

    writers: Engine
    """Begins transactions that write; of two, one waits until the other is over."""
    readers: Engine
    """Begins transactions that see one and the same state, and may write nothing."""

    def only_reading(self) -> AbstractContextManager[None]:
        """Refuse whatever is written meanwhile."""
        ...

    def told(self) -> AbstractContextManager[None]:
        """Turn the database's errors inside into sentences."""
        ...

    def data_version(self) -> int:
        """Give a number that changes when another program or process has written."""
        ...

    def commit(self, session: Session) -> None:
        """End a writing transaction: it is on the disk afterwards."""
        ...

    def close(self) -> None:
        """Let go of the database."""
        ...


class Turns:
    """Transactions of a studio in a folder. One thread at a time."""

    def __init__(self, folder: Path, line: Line) -> None:
        self.folder = folder
        self._line = line
        self._lock = threading.RLock()
        self._busy = False

    @contextmanager
    def work(self) -> Iterator[Work]:
        """Begin one writing transaction: all of it is written, or after an error none."""
        with self.writing() as session:
            yield Work(session)

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """Begin as `work` does; for those of this room who write rows and no nouns."""
        with self._turn(self._line.writers) as session:
            yield session
            self._line.commit(session)

    @contextmanager
    def reading(self) -> Iterator[Work]:
        """Look at one and the same state of the studio; anything written is refused."""
        with self._turn(self._line.readers, query_only=True) as session:
            yield Work(session)

    def data_version(self) -> int:
        """Give a number that changes when another program or process has written."""
        with self._lock, self._line.told():
            return self._line.data_version()

    def close(self) -> None:
        """Let go of the database; what is committed stays."""
        with self._lock:
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
                with self._line.told(), self._session(engine, query_only=query_only) as session:
                    session.connection()  # begins here, so that a writer waits here
                    yield session
            finally:
                self._busy = False

    @contextmanager
    def _session(self, engine: Engine, *, query_only: bool) -> Iterator[Session]:
        # The folder is told: photos lie in it, whichever database speaks of them.
        session = Session(
            engine, expire_on_commit=False, close_resets_only=False, info={"folder": self.folder}
        )
        if not query_only:
            with session:
                yield session
            return
        with self._line.only_reading(), session:
            yield session
