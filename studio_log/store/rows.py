"""Small helpers over rows: one way to read, one to replace, one to write JSON."""

import json
from collections.abc import Mapping, Sequence
from typing import Any

from sqlalchemy import Executable, Row, Table, and_, bindparam, insert, select, tuple_, update
from sqlmodel import Session

from studio_log.domain.errors import BadStudio

UNREADABLE = (
    "A line of the studio's file cannot be read ({what}): the file is damaged. It was left as "
    "it is. Run studio-log check, or put a copy back with Restore."
)
CHUNK = 300
"""Keys asked for at once; SQLite's oldest limit is 999 values a statement."""


def rows(session: Session, statement: Executable) -> Sequence[Row[Any]]:
    """Give all rows; BadStudio where a value in the file cannot be what it should be."""
    try:
        return session.execute(statement).all()
    except (ValueError, TypeError, OverflowError) as error:
        raise BadStudio(UNREADABLE.format(what=error)) from error


def values_of(row: Row[Any]) -> dict[str, Any]:
    """Give a row as names and values."""
    return dict(row._mapping)  # noqa: SLF001 - SQLAlchemy's documented name


def upsert(session: Session, table: Table, values: Sequence[Mapping[str, Any]]) -> None:
    """Write rows by their primary key, in place where they are there already.

    Never by delete and insert: that would take with it what hangs on the row.
    """
    keys = [column.name for column in table.primary_key]
    there = _there(session, table, keys, values)
    old = [value for value in values if tuple(value[key] for key in keys) in there]
    new = [value for value in values if tuple(value[key] for key in keys) not in there]
    if new:
        session.execute(insert(table), [dict(value) for value in new])
    if not old:
        return
    same = and_(*(table.c[key] == bindparam(f"key_{key}") for key in keys))
    names = [column.name for column in table.columns if column.name not in keys]
    change = update(table).where(same).values({name: bindparam(f"to_{name}") for name in names})
    session.connection().execute(
        change,
        [
            {f"key_{key}": value[key] for key in keys}
            | {f"to_{name}": value[name] for name in names}
            for value in old
        ],
    )


def _there(
    session: Session, table: Table, keys: Sequence[str], values: Sequence[Mapping[str, Any]]
) -> set[tuple[Any, ...]]:
    columns = [table.c[key] for key in keys]
    found: set[tuple[Any, ...]] = set()
    for start in range(0, len(values), CHUNK):
        wanted = [tuple(value[key] for key in keys) for value in values[start : start + CHUNK]]
        found |= {
            tuple(row)
            for row in rows(session, select(*columns).where(tuple_(*columns).in_(wanted)))
        }
    return found


def to_json(value: object) -> str:
    """Write a plain value as JSON, the same value always the same way."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, allow_nan=False)


def from_json(text: str, what: str) -> Any:
    """Read JSON out of the file; BadStudio, naming `what`, where it is none."""
    try:
        return json.loads(text)
    except (ValueError, TypeError, RecursionError) as error:
        raise BadStudio(UNREADABLE.format(what=what)) from error
