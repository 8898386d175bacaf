"""SQLAlchemy over one open SQLite connection, with transactions that begin as we say."""

import sqlite3

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.pool import StaticPool

WRITING = "BEGIN IMMEDIATE"
READING = "BEGIN"


def engine_of(line: sqlite3.Connection, begin: str = READING) -> Engine:
    """Give an engine over a connection in which nothing begins a transaction by itself.

    Its transactions begin with `begin`; options `studio_begin` overrule that.
    """
    # What is written is nobody else's: it stands in no words of an error.
    engine = create_engine(
        "sqlite://", creator=lambda: line, poolclass=StaticPool, hide_parameters=True
    )

    @event.listens_for(engine, "begin")
    def begun(connection: Connection) -> None:
        connection.exec_driver_sql(connection.get_execution_options().get("studio_begin", begin))

    return engine
