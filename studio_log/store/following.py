"""What changed on a server since a number, and putting it into this laptop's file.

One question brings all of it as JSON, so that following costs one journey to the server
however many tables there are. The file remembers the last number in SQLite's own
`user_version`, which a rolled-back transaction leaves as it was.
"""

import hashlib
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Column, Connection, DateTime, Table, text
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store.folder_shape import kind_of
from studio_log.store.photos import FOLDER, keep
from studio_log.store.rows import UNREADABLE
from studio_log.store.server_side import CHILDREN, FOLLOWED
from studio_log.store.tables import LOT, METADATA, PHOTO
from studio_log.store.word_index import FullText

GONE: Final = "studio_gone"
WORDS: Final = "lot_words"
ADDED_ONLY: Final = frozenset({"entry", "delivery"})
"""Never changed once they are there."""
AT_ONCE: Final = 500


HEAD: Final = "SELECT 'studio_sign', 0::bigint, to_jsonb(t) FROM studio_sign t"
CHANGED: Final = (
    "(SELECT '{name}', t.changed, to_jsonb(t) FROM \"{name}\" t "
    "WHERE t.changed > :since ORDER BY t.changed)"
)
OF_CHANGED_LOTS: Final = (
    "SELECT '{name}', 0::bigint, to_jsonb(t) FROM \"{name}\" t "
    "WHERE t.lot IN (SELECT code FROM lot WHERE changed > :since)"
)
WORDS_OF_THEM: Final = (
    "SELECT 'lot_words', 0::bigint, jsonb_build_object('ordinal', ordinal, 'words', words) "
    "FROM lot_words WHERE ordinal IN (SELECT ordinal FROM lot WHERE changed > :since)"
)
QUESTION: Final = text(
    " UNION ALL ".join(
        (
            HEAD,
            *(CHANGED.format(name=name) for name in (GONE, *FOLLOWED)),
            *(OF_CHANGED_LOTS.format(name=name) for name in CHILDREN),
            WORDS_OF_THEM,
        )
    )
)
"""The one question: parents first, and each journal in the order of its entries."""


@dataclass
class Followed:
    """What one look at the server brought."""

    mark: int = 0
    """The number of the last change that is known now."""
    numbers: list[int] = field(default_factory=list)
    photos: list[dict[str, Any]] = field(default_factory=list)

    def others(self, span: tuple[int, int]) -> bool:
        """Say whether anything came that is not of one's own last work."""
        first, last = span
        return any(not first < number <= last for number in self.numbers)


@contextmanager
def changes(
    server: Connection, since: int
) -> Iterator[tuple[str, Iterator[tuple[str, int, dict[str, Any]]]]]:
    """Give the sign of the studio there, and each row that changed after `since`.

    A row is its table, the number of its change, its values.
    """
    if not since:  # a whole studio, which need not fit into memory
        server = server.execution_options(stream_results=True, max_row_buffer=AT_ONCE)
    with server.execute(QUESTION, {"since": since}) as result:
        rows = iter(result)
        _, _, head = next(rows)
        yield str(head["sign"]), ((name, number, row) for name, number, row in rows)


def mark_of(session: Session) -> int:
    """Give the number of the last change that a file knows."""
    return int(session.connection().exec_driver_sql("PRAGMA user_version").scalar() or 0)


def take_in(session: Session, rows: Iterable[tuple[str, int, dict[str, Any]]]) -> Followed:
    """Write what came into a file, inside its transaction; the mark goes with it."""
    found = Followed(mark=mark_of(session))
    line = session.connection()
    line.exec_driver_sql("PRAGMA defer_foreign_keys = ON")
    for name, group in _grouped(rows):
        _take_group(session, found, name, group)
    line.exec_driver_sql(f"PRAGMA user_version = {found.mark}")
    return found


def _grouped(
    rows: Iterable[tuple[str, int, dict[str, Any]]],
) -> Iterator[tuple[str, list[tuple[int, dict[str, Any]]]]]:
    """Give runs of rows of one table, in order and not too long."""
    name, group = "", list[tuple[int, dict[str, Any]]]()
    for table, number, row in rows:
        if group and (table != name or len(group) == AT_ONCE):
            yield name, group
            group = []
        name = table
        group.append((number, row))
    if group:
        yield name, group


def _take_group(
    session: Session, found: Followed, name: str, group: list[tuple[int, dict[str, Any]]]
) -> None:
    if name == WORDS:
        FullText(session).put({int(row["ordinal"]): str(row["words"]) for _, row in group})
        return
    found.numbers += [number for number, _ in group if number]
    found.mark = max(found.mark, *(number for number, _ in group))
    line = session.connection()
    if name == GONE:
        for _, row in group:
            _forget(session, METADATA.tables[row["name"]], row["gone"])
        return
    table = METADATA.tables[name]
    rows = [row for _, row in group]
    if table is PHOTO:
        found.photos += rows
    line.exec_driver_sql(WRITTEN[name], [_values(table, row) for row in rows])
    if table is LOT:  # whose children come after, all anew
        for child in CHILDREN:
            statement = f'DELETE FROM "{child}" WHERE lot = ?'  # noqa: S608 - our names
            line.exec_driver_sql(statement, [(row["code"],) for row in rows])


def _statement(table: Table) -> str:
    """Give what writes a row: in place of the one of the same key, where rows are changed."""
    names = [column.name for column in table.columns]
    columns, places = ", ".join(f'"{one}"' for one in names), ", ".join("?" * len(names))
    added = f'INSERT INTO "{table.name}" ({columns}) VALUES ({places})'  # noqa: S608 - our names
    if table.name in ADDED_ONLY or table.name in CHILDREN:
        return added
    keys = [column.name for column in table.primary_key]
    rest = ", ".join(f'"{one}" = excluded."{one}"' for one in names if one not in keys)
    return f"{added} ON CONFLICT ({', '.join(keys)}) DO UPDATE SET {rest}"


WRITTEN: Final = {table.name: _statement(table) for table in METADATA.sorted_tables}
"""Written by the driver itself: rows may be many, and each laptop takes in those of all."""


def _forget(session: Session, table: Table, gone: Mapping[str, Any]) -> None:
    keys = list(table.primary_key)
    same = " AND ".join(f'"{key.name}" = ?' for key in keys)
    statement = f'DELETE FROM "{table.name}" WHERE {same}'  # noqa: S608 - our names
    session.connection().exec_driver_sql(statement, tuple(_value(key, gone) for key in keys))
    if table is LOT:
        FullText(session).remove([int(gone["ordinal"])])


def _values(table: Table, row: Mapping[str, Any]) -> tuple[Any, ...]:
    """Give the values of a row that came as JSON; BadStudio where it is not one of ours."""
    try:
        return tuple(_value(column, row) for column in table.columns)
    except (KeyError, TypeError, ValueError) as error:
        raise BadStudio(UNREADABLE.format(what=f"a line of {table.name}")) from error


MOMENTS: Final = frozenset(
    column
    for table in METADATA.sorted_tables
    for column in table.columns
    if isinstance(kind_of(column), DateTime)
)


def _value(column: Column[Any], row: Mapping[str, Any]) -> Any:
    value = row[column.name]
    if value is not None and column in MOMENTS:
        return f"{datetime.fromisoformat(value):%Y-%m-%d %H:%M:%S.%f}"  # as SQLAlchemy keeps it
    return value


def fetch_photos(server: Connection, folder: Path, photos: Iterable[Mapping[str, Any]]) -> None:
    """Bring the pictures that are not on this laptop yet; each is checked by its name."""
    asked = text("SELECT content FROM studio_picture WHERE hash = :hash")
    for photo in photos:
        path = folder / FOLDER / f"{photo['hash']}.{photo['kind']}"
        if path.exists():
            continue
        content = server.execute(asked, {"hash": photo["hash"]}).scalar()
        if content is not None and hashlib.sha256(content).hexdigest() == photo["hash"]:
            keep(path, bytes(content), str(photo["hash"]))
