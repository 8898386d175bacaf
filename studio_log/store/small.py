"""Settings, counters and deliveries: small tables with little to say."""

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from sqlalchemy import ColumnElement, func, select, update
from sqlmodel import Session

from studio_log.store.rows import from_json, rows, to_json, upsert, values_of
from studio_log.store.tables import COUNTER, DELIVERY, SETTING, CounterRow, DeliveryRow
from studio_log.store.values import DeliveryRecord

DELIVERED = tuple(DELIVERY.c[field.name] for field in fields(DeliveryRecord))


class SettingsKept:
    """The studio's settings: names to plain JSON values."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def get(self, name: str, default: Any = None) -> Any:
        """Give the value of a setting, `default` where it was never set."""
        return self.all().get(name, default)

    def put(self, name: str, value: Any) -> None:
        """Set one."""
        self.put_all({name: value})

    def put_all(self, values: Mapping[str, Any]) -> None:
        """Set several."""
        lines = [{"name": name, "value": to_json(value)} for name, value in values.items()]
        upsert(self._session, SETTING, lines)

    def all(self) -> dict[str, Any]:
        """Give all that were ever set."""
        found = rows(self._session, select(SETTING.c.name, SETTING.c.value))
        return {row.name: from_json(row.value, f"setting {row.name}") for row in found}


class Counters:
    """Numbers that are given out once and never again."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def next(self, kind: str, year: int) -> int:
        """Give the next number of a kind of code in a year, from 1."""
        name = f"{kind}/{year % 100:02d}"
        change = update(COUNTER).where(COUNTER.c.name == name).values(value=COUNTER.c.value + 1)
        given = self._session.execute(change.returning(COUNTER.c.value)).scalar()
        if given is None:
            given = 1
            self._session.add(CounterRow(name=name, value=given))
            self._session.flush()
        return given


class Deliveries:
    """Every attempt to show a reminder, and what became of it."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, record: DeliveryRecord) -> DeliveryRecord:
        """Write an attempt; give it with its id."""
        row = DeliveryRow(
            reminder_key=record.reminder_key,
            at=record.at,
            channel=record.channel,
            ok=record.ok,
            words=record.words,
        )
        self._session.add(row)
        self._session.flush()
        return replace(record, id=row.id or 0)

    def of(self, reminder_key: str) -> tuple[DeliveryRecord, ...]:
        """Give the attempts for one reminder as they were made."""
        return self._records(DELIVERY.c.reminder_key == reminder_key)

    def last(self) -> int:
        """Give the id of the attempt written last, 0 where there is none."""
        return self._session.execute(select(func.max(DELIVERY.c.id))).scalar() or 0

    def after(self, last: int) -> tuple[DeliveryRecord, ...]:
        """Give the attempts written after that one, as they were made."""
        return self._records(DELIVERY.c.id > last)

    def _records(self, wanted: ColumnElement[bool]) -> tuple[DeliveryRecord, ...]:
        found = rows(self._session, select(*DELIVERED).where(wanted).order_by(DELIVERY.c.id))
        return tuple(DeliveryRecord(**values_of(row)) for row in found)
