"""What of a material went into the steps of lots: a projection of their journals."""

from collections.abc import Iterable
from dataclasses import asdict, fields
from datetime import datetime

from sqlalchemy import delete, insert, select
from sqlmodel import Session

from studio_log.domain.lot_amounts import Use
from studio_log.store.rows import rows, values_of
from studio_log.store.tables import USE

COLUMNS = tuple(USE.c[field.name] for field in fields(Use))


class Uses:
    """The uses of all lots, in order of time."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def replace(self, lot: str, uses: Iterable[Use]) -> None:
        """Write the uses of a lot in place of all it had; its lot line must be there."""
        self._session.execute(delete(USE).where(USE.c.lot == lot))
        values = [asdict(one) for one in uses]
        if values:
            self._session.execute(insert(USE), values)

    def of(self, lot: str) -> tuple[Use, ...]:
        """Give the uses of a lot, by step and material."""
        ordered = select(*COLUMNS).where(USE.c.lot == lot).order_by(USE.c.step, USE.c.material)
        return tuple(Use(**values_of(row)) for row in rows(self._session, ordered))

    def since(self, at: datetime, material: str | None = None) -> tuple[Use, ...]:
        """Give the uses from a moment on, of one material or of all."""
        wanted = select(*COLUMNS).where(USE.c.at >= at)
        if material is not None:
            wanted = wanted.where(USE.c.material == material)
        ordered = wanted.order_by(USE.c.at, USE.c.lot, USE.c.step, USE.c.material)
        return tuple(Use(**values_of(row)) for row in rows(self._session, ordered))
