"""Reminders on disk: what became of each one."""

from collections.abc import Iterable
from dataclasses import asdict, fields
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, Row, func, select, text
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store.rows import UNREADABLE, from_json, rows, to_json, upsert, values_of
from studio_log.store.tables import REMINDER, STILL_OPEN
from studio_log.store.values import RAISED, ReminderRecord

COLUMNS = tuple(REMINDER.c[field.name] for field in fields(ReminderRecord))


class Reminders:
    """All reminders that ever were; none is taken away."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def put(self, record: ReminderRecord) -> None:
        """Write a reminder, in place of the one of the same key."""
        self.put_all([record])

    def put_all(self, records: Iterable[ReminderRecord]) -> None:
        """Write several reminders, each in place of the one of the same key."""
        values = [asdict(record) | {"channels": to_json(record.channels)} for record in records]
        upsert(self._session, REMINDER, values)

    def get(self, key: str) -> ReminderRecord | None:
        """Give the reminder of a key, None where there is none."""
        found = self._records(REMINDER.c.key == key)
        return found[0] if found else None

    def of(self, subject: str) -> tuple[ReminderRecord, ...]:
        """Give all reminders of a lot or milk, in order of their due moment."""
        return self._records(REMINDER.c.subject == subject)

    def due(self, now: datetime) -> tuple[ReminderRecord, ...]:
        """Give those that should be ringing at a moment, the one to ring first first."""
        statement = select(*COLUMNS).where(text(STILL_OPEN), REMINDER.c.rings_at <= now)
        ordered = statement.order_by(REMINDER.c.rings_at, REMINDER.c.key)
        return tuple(_record(row) for row in rows(self._session, ordered))

    def next_at(self) -> datetime | None:
        """Give the earliest moment at which an open reminder rings, None where none is open."""
        earliest = func.min(REMINDER.c.rings_at).label("rings_at")
        found = rows(self._session, select(earliest).where(text(STILL_OPEN)))
        moment: datetime | None = found[0].rings_at
        return moment

    def open(self) -> tuple[ReminderRecord, ...]:
        """Give those waiting or raised: neither answered nor void, in order of their due."""
        return self._records(text(STILL_OPEN))

    def raised(self) -> tuple[ReminderRecord, ...]:
        """Give those that have rung and wait for an answer, in order of their due moment."""
        return self._records(REMINDER.c.status == RAISED)

    def since(self, moment: datetime) -> tuple[ReminderRecord, ...]:
        """Give those last changed at or after a moment, the latest change first."""
        statement = select(*COLUMNS).where(REMINDER.c.updated_at >= moment)
        ordered = statement.order_by(REMINDER.c.updated_at.desc(), REMINDER.c.key)
        return tuple(_record(row) for row in rows(self._session, ordered))

    def _records(self, wanted: ColumnElement[bool] | Any) -> tuple[ReminderRecord, ...]:
        statement = select(*COLUMNS).where(wanted).order_by(REMINDER.c.due, REMINDER.c.key)
        return tuple(_record(row) for row in rows(self._session, statement))


def _record(row: Row[Any]) -> ReminderRecord:
    values = values_of(row)
    what = f"reminder {row.key}"
    channels = from_json(row.channels, what)
    if not isinstance(channels, list):
        raise BadStudio(UNREADABLE.format(what=what))
    values["channels"] = tuple(channels)
    return ReminderRecord(**values)
