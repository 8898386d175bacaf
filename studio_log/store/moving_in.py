"""A studio carried from a file to a server, whole or not at all, and counted on both sides."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Connection, Table, delete, func, insert, select, text
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store import photo_files
from studio_log.store.database import Store
from studio_log.store.photos import FOLDER, put_on_server
from studio_log.store.search import LotWords
from studio_log.store.server import Server
from studio_log.store.tables import ENTRY, METADATA
from studio_log.store.values import LotQuery

AT_ONCE: Final = 500
NUMBERED: Final = ("entry", "delivery")
"""Tables whose numbers the database gives."""

NOT_EMPTY: Final = (
    "There is a studio on {where} already. Nothing was changed. Open that one, or name an empty "
    "database for this one."
)
NOT_ALIKE: Final = (
    "What arrived on {where} is not what was sent ({what}). Nothing was kept there, and the "
    "studio on this laptop is as it was. Try it again."
)
Progress = Callable[[int, int], None]
"""Told how many lines of how many were carried."""


@dataclass(frozen=True)
class Carried:
    """What was carried, as it was counted where it arrived."""

    lots: int
    entries: int
    photos: int


def move_in(local: Store, server: Server, progress: Progress) -> Carried:
    """Carry a studio from its file to an empty server, in one transaction there.

    Counted and compared, entry by entry, before it is committed. BadStudio where the server
    holds a studio already, or another thing arrived than was sent.
    """
    where = server.address.text
    with local.reading() as look, server.writing() as there:
        source, target = look.session.connection(), there.connection()
        if target.execute(select(ENTRY.c.id).limit(1)).first() is not None:
            raise BadStudio(NOT_EMPTY.format(where=where))
        total = sum(_count(source, table) for table in METADATA.sorted_tables)
        done = 0
        for table in METADATA.sorted_tables:
            if table is not ENTRY:  # of which there is none, and which lets nothing be deleted
                target.execute(delete(table))
            for part in source.execute(select(table).order_by(*_order(table))).partitions(AT_ONCE):
                target.execute(insert(table), [dict(row._mapping) for row in part])  # noqa: SLF001
                done += len(part)
                progress(done, total)
        _go_on_counting(target)
        _write_words(there, look.lots.page(LotQuery(limit=2**31 - 1)).lines)
        photos = _carry_photos(local, there)
        _compare(source, target, where)
        return Carried(_count(target, METADATA.tables["lot"]), _count(target, ENTRY), photos)


def holds_work(server: Server) -> bool:
    """Say whether a server's studio has a single entry."""
    with server.looking() as line:
        return line.execute(select(ENTRY.c.id).limit(1)).first() is not None


def compare(local: Store, server: Server) -> None:
    """See that file and server hold the same, entry by entry; BadStudio where they do not."""
    with local.reading() as look, server.looking() as there:
        _compare(there, look.session.connection(), str(local.folder))


def _order(table: Table) -> list[Any]:
    return list(table.primary_key.columns)


def _count(line: Connection, table: Table) -> int:
    return int(line.execute(select(func.count()).select_from(table)).scalar_one())


def _go_on_counting(target: Connection) -> None:
    """Have the server's own numbers go on after the last one that was carried."""
    for name in NUMBERED:
        target.execute(
            text(
                f"SELECT setval(pg_get_serial_sequence('{name}', 'id'), "  # noqa: S608 - ours
                f"coalesce((SELECT max(id) FROM {name}), 0) + 1, false)"
            )
        )


def _write_words(there: Session, lines: Any) -> None:
    words = LotWords(there)
    for start in range(0, len(lines), AT_ONCE):
        words.put_all(lines[start : start + AT_ONCE])


def _carry_photos(local: Store, there: Session) -> int:
    """Send each picture that is whole; one that was lost before stays lost."""
    count = 0
    for name in photo_files.named_in(local.path):
        content = photo_files.sound(Path(local.folder) / FOLDER / name)
        if content is not None:
            put_on_server(there, name[:64], content)
            count += 1
    return count


def _compare(source: Connection, target: Connection, where: str) -> None:
    """See that every table has as many lines, and every entry its own seal."""
    for table in METADATA.sorted_tables:
        here, there = _count(source, table), _count(target, table)
        if here != there:
            raise BadStudio(
                NOT_ALIKE.format(where=where, what=f"{there} of {here} lines of {table.name}")
            )
    seals = select(ENTRY.c.id, ENTRY.c.subject, ENTRY.c.number, ENTRY.c.seal).order_by(ENTRY.c.id)
    for one, other in zip(source.execute(seals), target.execute(seals), strict=True):
        if tuple(one) != tuple(other):
            raise BadStudio(
                NOT_ALIKE.format(where=where, what=f"entry {one.number} of {one.subject}")
            )
