"""What lists need of batches of milk: a projection of their journals."""

from collections.abc import Iterable
from dataclasses import asdict, fields
from typing import Any

from sqlalchemy import ColumnElement, Row, false, select, true
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store.rows import UNREADABLE, from_json, rows, to_json, upsert, values_of
from studio_log.store.tables import MILK
from studio_log.store.values import MilkLine

COLUMNS = tuple(MILK.c[field.name] for field in fields(MilkLine))


class Milks:
    """All batches of milk, in order of their codes."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, line: MilkLine) -> None:
        """Write a line, in place of the one of the same code."""
        self.put_all([line])

    def put_all(self, lines: Iterable[MilkLine]) -> None:
        """Write several lines."""
        values = [asdict(line) | {"lots": to_json(line.lots)} for line in lines]
        upsert(self._session, MILK, values)

    def get(self, code: str) -> MilkLine | None:
        """Give the line of a batch, None where there is none."""
        found = self._lines(MILK.c.code == code)
        return found[0] if found else None

    def all(self) -> tuple[MilkLine, ...]:
        """Give every batch."""
        return self._lines(true())

    def unfinished(self) -> tuple[MilkLine, ...]:
        """Give the batches of which there is still some."""
        return self._lines(MILK.c.finished == false())

    def _lines(self, wanted: ColumnElement[bool]) -> tuple[MilkLine, ...]:
        found = rows(self._session, select(*COLUMNS).where(wanted).order_by(MILK.c.code))
        return tuple(_line(row) for row in found)


def _line(row: Row[Any]) -> MilkLine:
    values = values_of(row)
    what = f"milk {row.code}"
    lots = from_json(row.lots, what)
    if not isinstance(lots, list):
        raise BadStudio(UNREADABLE.format(what=what))
    values["lots"] = tuple(lots)
    return MilkLine(**values)
