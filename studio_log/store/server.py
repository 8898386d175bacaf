"""A studio on a PostgreSQL server: the same work as in a file, seen by several laptops.

One writer at a time, for the whole studio: an advisory lock is taken before anything is
read, so that no two laptops add one to the same number, and what is written is numbered in
the order of its commits (`changes`). Readers take no lock and see one state.
"""

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext, suppress
from pathlib import Path
from time import monotonic
from typing import Any, Final

import psycopg
from sqlalchemy import Connection, Engine, create_engine, event, text
from sqlalchemy.exc import DisconnectionError
from sqlalchemy.pool import QueuePool
from sqlmodel import Session

from studio_log.domain.server_address import ServerAddress
from studio_log.store import faults, plain, server_faults, server_side
from studio_log.store.turns import Turns

LOCK: Final = 0x53744C67
"""Of writers: the same number that tells a studio's file from others."""
CHANNEL: Final = "studio_log"
"""On which commits are told (LISTEN, NOTIFY)."""
CONNECT_SECONDS: Final = 4
WAIT_MS: Final = 5_000
"""How long a laptop waits for another to finish writing, and for a network that is gone."""
TRUSTED_S: Final = 5.0
"""A connection used this short a time ago is not looked over before it is used again."""
OPTIONS: Final = " ".join(
    (
        "-c TimeZone=UTC",
        f"-c lock_timeout={WAIT_MS}",
        "-c statement_timeout=60000",
        "-c idle_in_transaction_session_timeout=60000",
        "-c max_parallel_workers_per_gather=0",
    )
)
"""Of each session. Nothing runs in parallel: the rows of what changed come in their order."""
BEGIN: Final = text(
    "SELECT pg_advisory_xact_lock(:lock), "
    "(SELECT version_num FROM alembic_version), nextval('studio_change')"
)
END: Final = text("SELECT last_value FROM studio_change")

Password = Callable[[], str]
"""Gives the password when it is needed; "" for none. It is never kept here."""


def connect(address: ServerAddress, password: Password, **more: Any) -> psycopg.Connection[Any]:
    """Open a connection that notices within seconds that the network is gone."""
    asked: dict[str, Any] = {"sslrootcert": address.root_cert} if address.root_cert else {}
    return psycopg.connect(
        host=address.host,
        port=address.port,
        dbname=address.database,
        user=address.user,
        password=password() or None,
        sslmode=address.tls,
        connect_timeout=CONNECT_SECONDS,
        tcp_user_timeout=WAIT_MS,
        keepalives_idle=10,
        keepalives_interval=3,
        keepalives_count=3,
        application_name="studio-log",
        client_encoding="UTF8",
        options=OPTIONS,
        **asked,
        **more,
    )


class ServerLine:
    """The connection to a server; it is opened anew where it broke."""

    def __init__(self, address: ServerAddress, password: Password) -> None:
        self.where = address.text
        self.span = (0, 0)
        """Numbers of the changes of the last work: after the first, up to the second."""
        engine: Engine = create_engine(
            "postgresql+psycopg://",
            creator=lambda: connect(address, password),
            poolclass=QueuePool,
            pool_size=1,
            max_overflow=0,
            hide_parameters=True,
        )
        self._used_at = monotonic()
        event.listen(engine, "checkout", self._look_over)
        self.engine = engine
        self.writers: Engine = engine.execution_options(studio_writes=True)
        self.readers: Engine = engine.execution_options(
            isolation_level="REPEATABLE READ", postgresql_readonly=True
        )
        event.listen(self.writers, "begin", self._begin)

    def _look_over(self, line: Any, _record: object, _proxy: object) -> None:
        """Have the pool open another connection where one that rested is dead."""
        idle, self._used_at = monotonic() - self._used_at, monotonic()
        if idle < TRUSTED_S:
            return
        try:
            line.execute("")
            line.rollback()
        except psycopg.Error as error:
            raise DisconnectionError from error

    def _begin(self, connection: Connection) -> None:
        """Wait for the turn, and see that the studio still has the form that is known here."""
        with self.told():
            _, revision, number = connection.execute(BEGIN, {"lock": LOCK}).one()
        if revision != plain.HEAD:
            raise server_faults.refusal(server_faults.NEWER, self.where)
        self.span = (number, number)

    def only_reading(self) -> AbstractContextManager[None]:
        """Do nothing: the server itself refuses writing in a transaction that reads."""
        return nullcontext()

    @contextmanager
    def told(self) -> Iterator[None]:
        """Turn psycopg's errors inside into sentences."""
        with server_faults.told(self.where):
            yield

    def data_version(self) -> int:
        """Give the number of the last change."""
        with self.engine.connect() as connection:
            return int(connection.execute(END).scalar_one())

    def commit(self, session: Session) -> None:
        """Have the server hold it, taking note of where its changes end.

        ServerUnsure where the line breaks while nobody can say whether it was written.
        """
        session.flush()
        self.span = (self.span[0], int(session.execute(END).scalar_one()))
        try:
            with self.told():
                session.commit()
        except faults.ServerGone as gone:
            raise server_faults.refusal(server_faults.UNSURE, self.where) from gone

    def close(self) -> None:
        """Close the connection."""
        self.engine.dispose()


class Server(Turns):
    """An open studio on a server; `folder` is where this laptop keeps the pictures."""

    def __init__(self, address: ServerAddress, password: Password, folder: Path) -> None:
        self.line = ServerLine(address, password)
        self.address = address
        super().__init__(folder, self.line)

    @contextmanager
    def looking(self) -> Iterator[Connection]:
        """Look at one and the same state, for those of this room who read rows."""
        with self._turn(self.line.readers, query_only=True) as session:
            yield session.connection()

    @contextmanager
    def rewriting(self) -> Iterator[Connection]:
        """Begin a transaction in which nobody else writes, whatever form the database has."""
        with self._lock, self.line.told(), self.line.engine.begin() as connection:
            connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": LOCK})
            yield connection


def open_server(
    address: ServerAddress, password: Password, folder: Path, *, create: bool = False
) -> Server:
    """Open the studio at an address, bringing its tables to the form of this version.

    An empty database is made a studio only with `create`. BadStudio where the server cannot
    be reached, lets nobody in, or holds something else.
    """
    server = Server(address, password, folder)
    try:
        _prepare(server, create=create)
    except BaseException:
        server.close()
        raise
    return server


def _prepare(server: Server, *, create: bool) -> None:
    """See that a studio is there, in the form of this version."""
    where = server.address.text
    with server.line.told(), server.line.engine.connect() as connection:
        revision = server_side.revision(connection, where)
    if revision is None and not create:
        raise server_faults.refusal(server_faults.EMPTY, where)
    if revision != plain.HEAD:
        with server.rewriting() as connection:
            server_side.upgrade(connection)


def drop_studio(server: Server) -> None:
    """Take every table of the studio away again, after a move that failed."""
    with suppress(Exception), server.rewriting() as connection:
        server_side.drop(connection)
