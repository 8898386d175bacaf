"""What lists need of the steps of lots: a projection of their journals."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import asdict, fields

from sqlalchemy import delete, insert, select
from sqlmodel import Session

from studio_log.store.rows import CHUNK, rows, values_of
from studio_log.store.tables import STEP
from studio_log.store.values import StepLine

COLUMNS = tuple(STEP.c[field.name] for field in fields(StepLine))


class Steps:
    """The steps of all lots, each lot's in order of walking."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def replace(self, lot: str, lines: Iterable[StepLine]) -> None:
        """Write the steps of a lot in place of all it had; its lot line must be there."""
        lines = tuple(lines)
        if lines == self.of(lot):  # as after a note or a tending: most entries change no step
            return
        self._session.execute(delete(STEP).where(STEP.c.lot == lot))
        values = [asdict(line) | {"lot": lot} for line in lines]
        if values:
            self._session.execute(insert(STEP), values)

    def of(self, lot: str) -> tuple[StepLine, ...]:
        """Give the steps of a lot in order of walking."""
        return self.of_many([lot]).get(lot, ())

    def of_many(self, lots: Iterable[str]) -> dict[str, tuple[StepLine, ...]]:
        """Give the steps of several lots; a lot without steps is left out."""
        wanted = sorted(set(lots))
        found: dict[str, list[StepLine]] = defaultdict(list)
        for start in range(0, len(wanted), CHUNK):
            part = wanted[start : start + CHUNK]
            statement = select(*COLUMNS).where(STEP.c.lot.in_(part))
            ordered = statement.order_by(STEP.c.lot, STEP.c.order, STEP.c.number)
            for row in rows(self._session, ordered):
                found[row.lot].append(StepLine(**values_of(row)))
        return {lot: tuple(lines) for lot, lines in found.items()}
