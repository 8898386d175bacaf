"""A studio on the PostgreSQL server that the test command started."""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final
from uuid import uuid4

import psycopg
import pytest
from psycopg import sql

from studio_log.domain.server_address import TypedAddress, read_address
from studio_log.store import server_side
from studio_log.store.server import Server, open_server

VARIABLE: Final = "STUDIO_LOG_TEST_POSTGRES"
ADDRESS: Final = os.environ.get(VARIABLE, "")
"""Read before each test is given surroundings of its own."""
ABSENT: Final = f"no PostgreSQL server was started for the tests ({VARIABLE} is not set)"


def asked_server() -> str:
    """Give the address of the server for tests; the test is skipped where there is none."""
    if not ADDRESS:
        pytest.skip(ABSENT)
    return ADDRESS


class Databases:
    """Databases of a run of tests; what was made goes at its end."""

    def __init__(self) -> None:
        self._made: list[str] = []
        self._common: str | None = None

    def new(self) -> str:
        """Make an empty database; give its address with the password."""
        name = f"studio_{uuid4().hex[:12]}"
        with psycopg.connect(asked_server(), autocommit=True) as line:
            line.execute(sql.SQL("CREATE DATABASE {}").format(sql.Identifier(name)))
        self._made.append(name)
        return f"{asked_server().rpartition('/')[0]}/{name}"

    def emptied(self, folder: Path) -> Server:
        """Open a studio without a line in it, in a database that tests share one by one."""
        if self._common is None:
            self._common = self.new()
        server = opened(self._common, folder, create=True)
        with server.rewriting() as connection:
            server_side.empty(connection)
        return server

    @property
    def common(self) -> str:
        """The address of that database."""
        assert self._common is not None
        return self._common

    def close(self) -> None:
        """Drop what was made."""
        if not self._made:
            return
        with psycopg.connect(asked_server(), autocommit=True) as line:
            for name in self._made:
                gone = sql.SQL("DROP DATABASE IF EXISTS {} WITH (FORCE)")
                line.execute(gone.format(sql.Identifier(name)))


@dataclass
class Known:
    """Knows one password."""

    password: str

    def __call__(self) -> str:
        """Give it."""
        return self.password

    def learn(self, _address: str, password: str) -> str:
        """Know another one."""
        self.password = password
        return ""


def typed(address: str) -> TypedAddress:
    """Read an address with its password."""
    return read_address(address)


def opened(address: str, folder: Path, *, create: bool = False) -> Server:
    """Open the studio at an address that holds its password."""
    found = typed(address)
    return open_server(found.address, lambda: found.password, folder, create=create)


@pytest.fixture(scope="session")
def databases() -> Iterator[Databases]:
    """Give databases on the server, which go at the end of the run."""
    made = Databases()
    yield made
    made.close()
