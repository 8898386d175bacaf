"""What lists and the search by colour need of swatches: a projection of their journals."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, fields
from typing import Any, Final, NamedTuple

from sqlalchemy import ColumnElement, String, and_, cast, delete, false, func, select, true
from sqlmodel import Session

from studio_log.store.rows import CHUNK, rows, upsert, values_of
from studio_log.store.search import ordinal
from studio_log.store.tables import SWATCH
from studio_log.store.values import ColourBound, SwatchLine, SwatchLines, SwatchQuery

COLUMNS: Final = tuple(SWATCH.c[field.name] for field in fields(SwatchLine))
ORDERS: Final[dict[str, tuple[ColumnElement[Any], ...]]] = {
    "newest": (SWATCH.c.ordinal.desc(), SWATCH.c.code.desc()),
    "code": (SWATCH.c.ordinal, SWATCH.c.code),
    "lot": (SWATCH.c.lot.desc(), SWATCH.c.ordinal),
    "cut": (SWATCH.c.cut_at.desc(), SWATCH.c.ordinal),
    "light": (SWATCH.c.lightness.desc().nulls_last(), SWATCH.c.ordinal),
    "dark": (SWATCH.c.lightness.asc().nulls_last(), SWATCH.c.ordinal),
}


class Coloured(NamedTuple):
    """Swatches with a colour: their codes, and L*, a*, b* of each in turn."""

    codes: list[str]
    figures: list[float]


class Swatches:
    """All swatches that were not taken back."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, line: SwatchLine) -> None:
        """Write a line, in place of the one of the same code."""
        self.put_all([line])

    def put_all(self, lines: Iterable[SwatchLine]) -> None:
        """Write several lines."""
        values = [
            asdict(line)
            | {"search_text": line.search_text.casefold(), "ordinal": ordinal(line.code[1:])}
            for line in lines
        ]
        upsert(self._session, SWATCH, values)

    def remove(self, code: str) -> None:
        """Take a line away: its swatch was taken back."""
        self._session.execute(delete(SWATCH).where(SWATCH.c.code == code))

    def page(self, query: SwatchQuery) -> SwatchLines:
        """Give the part of the list that is asked for, and how long the whole is."""
        these = _wanted(query)
        counting = select(func.count()).select_from(SWATCH).where(these)
        total = self._session.execute(counting).scalar() or 0
        asked = select(*COLUMNS).where(these).order_by(*ORDERS[query.order])
        found = rows(self._session, asked.limit(query.limit).offset(query.offset))
        return SwatchLines(tuple(SwatchLine(**values_of(row)) for row in found), total)

    def of(self, codes: Sequence[str]) -> dict[str, SwatchLine]:
        """Give the lines of these swatches by code; one that is not there is left out."""
        found: dict[str, SwatchLine] = {}
        for start in range(0, len(codes), CHUNK):
            asked = select(*COLUMNS).where(SWATCH.c.code.in_(codes[start : start + CHUNK]))
            lines = (SwatchLine(**values_of(row)) for row in rows(self._session, asked))
            found.update((line.code, line) for line in lines)
        return found

    def codes_of_lot(self, lot: str) -> tuple[str, ...]:
        """Give the codes of the swatches cut from a lot, in order."""
        asked = select(SWATCH.c.code).where(SWATCH.c.lot == lot).order_by(SWATCH.c.ordinal)
        return tuple(row.code for row in rows(self._session, asked))

    def within(self, bound: ColourBound, most: int | None = None) -> Coloured:
        """Give those whose colour lies within a bound; at most so many.

        All come as one text: there may be thousands, and rows are dear.
        """
        offs = [
            column - middle
            for column, middle in zip(
                (SWATCH.c.lightness, SWATCH.c.a, SWATCH.c.b), bound.centre, strict=True
            )
        ]
        light, a, b = offs
        # The index finds the lightness; the rest is worked out where it lies, for rows are dear.
        middle = bound.centre[0]
        figures = (SWATCH.c.lightness, SWATCH.c.a, SWATCH.c.b)
        told: ColumnElement[str] = SWATCH.c.code
        for one in figures:
            told = told + " " + cast(one, String)
        asked = select(told.label("told")).where(
            SWATCH.c.lightness.between(middle - bound.light, middle + bound.light),
            light * light / bound.light**2 + (a * a + b * b) / bound.across**2 <= 1,
        )
        if not bound.ended:
            asked = asked.where(SWATCH.c.ended == false())
        if most is not None:
            asked = asked.limit(most)
        text = self._session.execute(
            select(func.aggregate_strings(asked.subquery().c.told, " "))
        ).scalar()
        parts = str(text or "").split()
        plain = [float(part) for at, part in enumerate(parts) if at % 4]
        return Coloured(parts[::4], plain)


def _wanted(query: SwatchQuery) -> ColumnElement[bool]:
    words = [SWATCH.c.search_text.contains(word, autoescape=True) for word in query.words]
    kept = true() if query.ended else SWATCH.c.ended == false()
    lots = SWATCH.c.lot.in_(query.lots) if query.lots else true()
    read = SWATCH.c.lightness.is_not(None) if query.read_only else true()
    return and_(kept, lots, read, *words)
