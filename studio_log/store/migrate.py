"""Bring a studio file to the newest revision, one revision and one transaction at a time.

Foreign keys are off meanwhile: with them on, Alembic's batch operations, which rebuild a
table, would delete the children of its rows. They are checked before each commit.
"""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from studio_log.store import faults, files, plain
from studio_log.store.engine import WRITING, engine_of

SCRIPTS = Path(__file__).parent / "migrations"


def config_of(scripts: Path = SCRIPTS) -> Config:
    """Give Alembic's settings; no file of settings is read."""
    config = Config()
    config.set_main_option("script_location", str(scripts).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    return config


def revisions(scripts: Path = SCRIPTS) -> list[str]:
    """Give all revisions, the first one first."""
    directory = ScriptDirectory.from_config(config_of(scripts))
    return [script.revision for script in directory.walk_revisions()][::-1]


def upgrade(
    path: Path, copies: Path | None, now: datetime | None = None, scripts: Path = SCRIPTS
) -> None:
    """Bring the file to the newest revision; a copy goes to `copies` before each one.

    A new studio needs none. Where a step fails, the file is as it was before that step.
    Another process doing the same is waited for, and what it did is not done again.
    """
    for revision in revisions(scripts):
        with faults.told_with_disk(path.parent), closing(plain.connect(path, "rw")) as line:
            line.execute("PRAGMA foreign_keys = OFF")
            line.execute("PRAGMA synchronous = FULL")
            if _step(path, line, revision, copies, now, scripts):
                copies = None  # it is being made: there is nothing to copy yet


def shape_of(revision: str, question: str, scripts: Path = SCRIPTS) -> list[tuple[object, ...]]:
    """Give what `question` answers of an empty studio of one revision."""
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as line:
        config = config_of(scripts)
        with engine_of(line, WRITING).begin() as connection:
            config.attributes["connection"] = connection
            command.upgrade(config, revision)
        return line.execute(question).fetchall()


def _step(
    path: Path,
    line: sqlite3.Connection,
    revision: str,
    copies: Path | None,
    now: datetime | None,
    scripts: Path,
) -> bool:
    """Bring the file to one revision; say whether it held nothing before."""
    config = config_of(scripts)
    with engine_of(line, WRITING).begin() as connection:
        current = _current(connection)
        if current is not None and current >= revision:
            return False
        if current is not None and copies is not None:
            stamp = files.stamp(now or files.last_change(path))
            plain.copy(path, files.free_path(copies, f"before-{revision}-{stamp}"))
        config.attributes["connection"] = connection
        command.upgrade(config, revision)
        if connection.exec_driver_sql("PRAGMA foreign_key_check").first() is not None:
            raise faults.refusal(faults.DAMAGED, path.parent)
    return current is None


def _current(connection: Connection) -> str | None:
    names = connection.exec_driver_sql("SELECT name FROM sqlite_master").scalars().all()
    if "alembic_version" not in names:
        return None
    found = connection.exec_driver_sql("SELECT version_num FROM alembic_version").scalar()
    return None if found is None else str(found)
