"""What lists need of lots: a projection of their journals."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import asdict, fields, replace
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Select, and_, delete, false, func, select, text, true
from sqlmodel import Session

from studio_log.store.lot_filters import NEEDED_FIRST, needs, state_at, wanted
from studio_log.store.rows import CHUNK, rows, upsert, values_of
from studio_log.store.search import LotWords, ordinal
from studio_log.store.tables import LOT, STEP
from studio_log.store.values import LotLine, LotPage, LotQuery, LotsThere

COLUMNS = tuple(LOT.c[field.name] for field in fields(LotLine))
CODE_ORDER = (LOT.c.ordinal, LOT.c.code)
"""26-999 before 26-1000."""
DIPPED_OF_STEP = (
    "step.kind = 'dip' AND step.coat IS NOT NULL AND step.start IS NOT NULL "
    "AND step.state <> 'skipped'"
)
"""`tables.DIPPED` where another table has columns of these names."""
COATS = select(func.count()).where(STEP.c.lot == LOT.c.code, text(DIPPED_OF_STEP)).scalar_subquery()
ORDERS: dict[str, tuple[ColumnElement[Any], bool]] = {
    "newest": (LOT.c.ordinal, True),
    "code": (LOT.c.ordinal, False),
    "name": (func.lower(LOT.c.name), False),
    "weight": (LOT.c.grams, True),
    "begun": (LOT.c.begun_at, True),
    "ready": (LOT.c.ready_at, False),
    "age": (LOT.c.fully_dry_at, False),
    "fibre": (func.nullif(LOT.c.fibre, ""), False),
    "shelf": (func.nullif(func.lower(LOT.c.place), ""), False),
    "coats": (func.nullif(COATS, 0), True),
}
"""By what, and whether what is greatest comes first; lots without it come last either way."""


def order_of(query: LotQuery) -> tuple[ColumnElement[Any], ...]:
    """Give the order of a query; lots that are alike in it stand by their codes."""
    by, falling = ORDERS[query.order]
    way = by.desc() if falling != query.backwards else by.asc()
    return (way.nulls_last(), *CODE_ORDER)


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
        these = wanted(query)
        total = self._session.execute(select(func.count()).select_from(LOT).where(these)).scalar()
        statement = select(*COLUMNS).where(these).order_by(*order_of(query))
        found = rows(self._session, statement.limit(query.limit).offset(query.offset))
        return LotPage(tuple(LotLine(**values_of(row)) for row in found), total or 0)

    def found(self, query: LotQuery) -> LotsThere:
        """Give the codes of the whole list that is asked for, in order; `limit` is not heeded.

        And how many of each state there are, whatever states the query names: both of one
        reading, since the index of words is the dear part of it.
        """
        if query.order == "need":
            return self._found_by_need(query)
        both = (LOT.c.code + " " + state_at(query.now)).label("both")
        asked = select(both).where(wanted(replace(query, states=()))).order_by(*order_of(query))
        pairs = [line.split(" ") for line in self._lines_of_text(asked)]
        counts = Counter(state for _code, state in pairs)
        shown = (code for code, state in pairs if not query.states or state in query.states)
        return LotsThere(tuple(shown), dict(counts))

    def _found_by_need(self, query: LotQuery) -> LotsThere:
        """Find as `found` does. All codes of a state come as one text: rows are dear."""
        state, codes = state_at(query.now), func.aggregate_strings(LOT.c.code, " ")
        asked = select(state, codes).where(wanted(replace(query, states=())))
        there = {name: text.split() for name, text in self._session.execute(asked.group_by(state))}
        counts = {name: len(found) for name, found in there.items()}
        shown = [
            sorted(there[name], key=ordinal)
            for name in dict.fromkeys((*NEEDED_FIRST, *there))
            if name in there and (not query.states or name in query.states)
        ]
        found = self._by_need(shown, query.now) if shown else []
        return LotsThere(tuple(reversed(found) if query.backwards else found), counts)

    def _lines_of_text(self, asked: Select[Any]) -> list[str]:
        """Give the column `both` of each row, all as one text from the database: rows are dear.

        SQLite keeps the order of a subquery in what it puts together.
        """
        text_of = select(func.aggregate_strings(asked.subquery().c.both, "\n"))
        there = self._session.execute(text_of).scalar() or ""
        return str(there).splitlines()

    def _by_need(self, groups: Iterable[list[str]], now: datetime | None) -> list[str]:
        """Put each group of codes by what presses, then by when it rings."""
        pressing: dict[str, tuple[int, int]] = {}
        for place, line in enumerate(self._lines_of_text(needs(now))):
            code, _, rank = line.partition(" ")
            most, first = pressing.get(code, (0, place))
            pressing[code] = (min(most, -int(rank)), first)
        found: list[str] = []
        for codes in groups:
            found += sorted((code for code in codes if code in pressing), key=pressing.__getitem__)
            found += [code for code in codes if code not in pressing]
        return found

    def of(self, codes: Sequence[str]) -> dict[str, LotLine]:
        """Give the lines of these lots by code; one that is not there is left out."""
        found: dict[str, LotLine] = {}
        for start in range(0, len(codes), CHUNK):
            part = self._lines(LOT.c.code.in_(codes[start : start + CHUNK]))
            found.update((line.code, line) for line in part)
        return found

    def codes(self, *states: str) -> tuple[str, ...]:
        """Give the codes of lots last put with one of these states, of all where none is named."""
        return self._codes(LOT.c.state_hint.in_(states) if states else true())

    def live_codes(self) -> tuple[str, ...]:
        """Give the codes of lots that are neither used, stopped nor void."""
        return self._codes(LOT.c.ended == false())

    def walking(self, slug: str, version: int) -> tuple[str, ...]:
        """Give the codes of live lots that walk this version of a method."""
        same = and_(LOT.c.method_slug == slug, LOT.c.method_version == version)
        return self._codes(and_(LOT.c.ended == false(), same))

    def unlike_words(self) -> list[str]:
        """Give the codes of lots whose words in the index are not those of line and journal."""
        lines = self._lines(true())
        return LotWords(self._session).unlike(lines)

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
