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

from sqlalchemy import Column, Connection, DateTime, Table, delete, insert, text
from sqlalchemy.dialects.sqlite import insert as sqlite_insert
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store.folder_shape import kind_of
from studio_log.store.photos import FOLDER, keep
from studio_log.store.rows import UNREADABLE
from studio_log.store.search import LotWords
from studio_log.store.server_side import CHILDREN, FOLLOWED
from studio_log.store.tables import LOT, METADATA, PHOTO
from studio_log.store.values import LotLine

GONE: Final = "studio_gone"
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
QUESTION: Final = text(
    " UNION ALL ".join(
        (
            HEAD,
            *(CHANGED.format(name=name) for name in (GONE, *FOLLOWED)),
            *(OF_CHANGED_LOTS.format(name=name) for name in CHILDREN),
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
    stream = server.execution_options(stream_results=True, max_row_buffer=AT_ONCE)
    with stream.execute(QUESTION, {"since": since}) as result:
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
    found.numbers += [number for number, _ in group if number]
    found.mark = max(found.mark, *(number for number, _ in group))
    if name == GONE:
        for _, row in group:
            _forget(session, METADATA.tables[row["name"]], row["gone"])
        return
    table = METADATA.tables[name]
    values = [_values(table, row) for _, row in group]
    if table is PHOTO:
        found.photos += values
    if table is LOT:
        _take_lots(session, values)
    elif name in ADDED_ONLY or name in CHILDREN:
        session.execute(insert(table), values)
    else:
        _replace(session, table, values)


def _take_lots(session: Session, values: list[dict[str, Any]]) -> None:
    """Write lots in place of what is there; their children come after them, all anew."""
    _replace(session, LOT, values)
    codes = [value["code"] for value in values]
    for name in CHILDREN:
        table = METADATA.tables[name]
        session.execute(delete(table).where(table.c.lot.in_(codes)))
    names = LotLine.__dataclass_fields__
    lines = [LotLine(**{name: value[name] for name in names}) for value in values]
    LotWords(session).put_all(lines)


def _replace(session: Session, table: Table, values: list[dict[str, Any]]) -> None:
    keys = [column.name for column in table.primary_key]
    write = sqlite_insert(table)
    rest = {one.name: write.excluded[one.name] for one in table.columns if one.name not in keys}
    session.execute(write.on_conflict_do_update(index_elements=keys, set_=rest), values)


def _forget(session: Session, table: Table, gone: Mapping[str, Any]) -> None:
    values = _values(table, gone)
    same = [column == values[column.name] for column in table.primary_key]
    session.execute(delete(table).where(*same))
    if table is LOT:
        LotWords(session).remove(str(gone["code"]))


def _values(table: Table, row: Mapping[str, Any]) -> dict[str, Any]:
    """Give the values of a row that came as JSON; BadStudio where it is not one of ours."""
    try:
        return {one.name: _value(one, row[one.name]) for one in table.columns}
    except (KeyError, TypeError, ValueError) as error:
        raise BadStudio(UNREADABLE.format(what=f"a line of {table.name}")) from error


def _value(column: Column[Any], value: Any) -> Any:
    if value is not None and isinstance(kind_of(column), DateTime):
        return datetime.fromisoformat(value)
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
