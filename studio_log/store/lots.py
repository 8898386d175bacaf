"""What lists need of lots: a projection of their journals."""

from collections.abc import Iterable
from dataclasses import asdict, fields
from typing import Any

from sqlalchemy import ColumnElement, and_, delete, false, func, or_, select, true
from sqlmodel import Session

from studio_log.store.rows import rows, upsert, values_of
from studio_log.store.search import LotWords, holds, ordinal
from studio_log.store.tables import LOT
from studio_log.store.values import LotLine, LotPage, LotQuery

COLUMNS = tuple(LOT.c[field.name] for field in fields(LotLine))
CURING = "curing"
READY = "ready"
CODE_ORDER = (LOT.c.ordinal, LOT.c.code)
"""26-999 before 26-1000."""
ORDERS: dict[str, tuple[ColumnElement[Any], ...]] = {
    "newest": tuple(part.desc() for part in CODE_ORDER),
    "code": CODE_ORDER,
    "name": (func.lower(LOT.c.name), *CODE_ORDER),
}


class Lots:
    """The lines of the lot list."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, line: LotLine) -> None:
        """Write a line, in place of the one of the same code; its steps stay."""
        self.put_all([line])

    def put_all(self, lines: Iterable[LotLine]) -> None:
        """Write several lines."""
        lines = list(lines)
        values = [
            asdict(line)
            | {"search_text": line.search_text.casefold(), "ordinal": ordinal(line.code)}
            for line in lines
        ]
        upsert(self._session, LOT, values)
        LotWords(self._session).put_all(lines)

    def get(self, code: str) -> LotLine | None:
        """Give the line of a lot, None where there is none."""
        found = self._lines(LOT.c.code == code)
        return found[0] if found else None

    def page(self, query: LotQuery) -> LotPage:
        """Give the part of the list that is asked for, and how long the whole is."""
        wanted = _wanted(query)
        total = self._session.execute(select(func.count()).select_from(LOT).where(wanted)).scalar()
        statement = select(*COLUMNS).where(wanted).order_by(*ORDERS[query.order])
        found = rows(self._session, statement.limit(query.limit).offset(query.offset))
        return LotPage(tuple(LotLine(**values_of(row)) for row in found), total or 0)

    def codes(self, *states: str) -> tuple[str, ...]:
        """Give the codes of lots last put with one of these states, of all where none is named."""
        return self._codes(LOT.c.state_hint.in_(states) if states else true())

    def live_codes(self) -> tuple[str, ...]:
        """Give the codes of lots that are neither used, stopped nor void."""
        return self._codes(LOT.c.ended == false())

    def remove(self, code: str) -> None:
        """Take a line and its steps away (for a rebuild); the journal is not touched."""
        self._session.execute(delete(LOT).where(LOT.c.code == code))
        LotWords(self._session).remove(code)

    def _codes(self, wanted: ColumnElement[bool]) -> tuple[str, ...]:
        found = rows(self._session, select(LOT.c.code).where(wanted).order_by(*CODE_ORDER))
        return tuple(row.code for row in found)

    def _lines(self, wanted: ColumnElement[bool]) -> list[LotLine]:
        return [
            LotLine(**values_of(row)) for row in rows(self._session, select(*COLUMNS).where(wanted))
        ]


def _wanted(query: LotQuery) -> ColumnElement[bool]:
    parts: list[ColumnElement[bool]] = [true()]
    if query.states:
        parts.append(or_(*(_in_state(state, query) for state in query.states)))
    if query.live_only:
        parts.append(LOT.c.ended == false())
    found = holds(query.find)
    if found is not None:
        parts.append(found)
    return and_(*parts)


def _in_state(state: str, query: LotQuery) -> ColumnElement[bool]:
    put_so: ColumnElement[bool] = LOT.c.state_hint == state
    if query.now is None or state not in (CURING, READY):
        return put_so
    if state == CURING:
        return and_(put_so, or_(LOT.c.ready_at.is_(None), LOT.c.ready_at > query.now))
    return or_(put_so, and_(LOT.c.state_hint == CURING, LOT.c.ready_at <= query.now))
