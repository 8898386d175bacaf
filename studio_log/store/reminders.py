"""Reminders on disk: what became of each one."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict, fields
from datetime import datetime
from typing import Any, NamedTuple

from sqlalchemy import ColumnElement, Row, String, and_, func, or_, select, text, true, type_coerce
from sqlmodel import Session

from studio_log.domain.errors import BadStudio
from studio_log.store.rows import UNREADABLE, from_json, rows, to_json, upsert, values_of
from studio_log.store.tables import DELIVERY, LOT, REMINDER, STEP, STILL_OPEN
from studio_log.store.values import RAISED, ReminderRecord

COLUMNS = tuple(REMINDER.c[field.name] for field in fields(ReminderRecord))


class RangLine(NamedTuple):
    """What is kept of one reminder that rang or fell due; see `ReminderRecord`."""

    key: str
    due: datetime
    rings_at: datetime
    raised_at: datetime | None
    last_rung_at: datetime | None
    answered_at: datetime | None
    void_at: datetime | None
    channels: tuple[str, ...]
    raise_count: int
    subject: str
    kind: str
    urgency: str
    title: str
    status: str
    answer: str
    void_why: str
    name: str
    """The lot's name, "" where the reminder is about no lot."""
    step: str
    """The step's title, "" where there is none."""


TryLine = tuple[str, datetime, str, bool, str]
"""One attempt to show a reminder: its key, when, the channel, whether it took it, its words."""

MOMENTS = ("due", "raised_at", "last_rung_at", "answered_at", "void_at")
"""What puts a reminder into a span."""
RANG_INSTANTS = RangLine._fields[1:7]
# Thousands are read at once: instants come as text and are read here, in a third of the time.
RANG_COLUMNS = (
    REMINDER.c.key,
    *(type_coerce(REMINDER.c[name], String) for name in RANG_INSTANTS),
    *(REMINDER.c[name] for name in RangLine._fields[7:-2]),
    func.coalesce(LOT.c.name, ""),
    func.coalesce(STEP.c.title, ""),
)
TRY_COLUMNS = (
    DELIVERY.c.reminder_key,
    type_coerce(DELIVERY.c.at, String),
    DELIVERY.c.channel,
    DELIVERY.c.ok,
    DELIVERY.c.words,
)


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

    def rung_after(self, moment: datetime) -> tuple[ReminderRecord, ...]:
        """Give the open ones that rang later than a moment: the clock has been set back."""
        return self._records(and_(text(STILL_OPEN), REMINDER.c.last_rung_at > moment))

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

    def last_change(self) -> datetime | None:
        """Give when any of them was last changed, None where there is none."""
        latest = func.max(REMINDER.c.updated_at).label("latest")
        moment: datetime | None = rows(self._session, select(latest))[0].latest
        return moment

    def every(self) -> tuple[ReminderRecord, ...]:
        """Give all there are, in order of their due moment."""
        return self._records(true())

    def since(self, moment: datetime) -> tuple[ReminderRecord, ...]:
        """Give those last changed at or after a moment, the latest change first."""
        statement = select(*COLUMNS).where(REMINDER.c.updated_at >= moment)
        ordered = statement.order_by(REMINDER.c.updated_at.desc(), REMINDER.c.key)
        return tuple(_record(row) for row in rows(self._session, ordered))

    def that_rang(
        self, since: datetime, until: datetime, by: datetime
    ) -> tuple[list[RangLine], list[TryLine]]:
        """Give those with a due, ring, answer or void in the span, and all attempts to show them.

        The latest due comes first; attempts as they were made. Left out are those that never
        rang and fall due later than `by`. No index helps: the table is looked through once.
        """
        told = DELIVERY.c.ok & DELIVERY.c.at.between(since, until)
        in_span = [REMINDER.c[name].between(since, until) for name in MOMENTS]
        wanted = and_(
            or_(REMINDER.c.raise_count > 0, REMINDER.c.due <= by),
            or_(*in_span, REMINDER.c.key.in_(select(DELIVERY.c.reminder_key).where(told))),
        )
        its_step = and_(STEP.c.lot == REMINDER.c.subject, STEP.c.number == REMINDER.c.step)
        lines = (
            select(*RANG_COLUMNS)
            .select_from(
                REMINDER.outerjoin(LOT, LOT.c.code == REMINDER.c.subject).outerjoin(STEP, its_step)
            )
            .where(wanted)
            .order_by(REMINDER.c.due.desc(), REMINDER.c.key)
        )
        keys = select(REMINDER.c.key).where(wanted)
        tries = select(*TRY_COLUMNS).where(DELIVERY.c.reminder_key.in_(keys))
        found, tried = (rows(self._session, one) for one in (lines, tries.order_by(DELIVERY.c.id)))
        try:
            return list(map(_rang_line, found)), list(map(_try_line, tried))
        except ValueError as error:
            raise BadStudio(UNREADABLE.format(what=error)) from error

    def _records(self, wanted: ColumnElement[bool] | Any) -> tuple[ReminderRecord, ...]:
        statement = select(*COLUMNS).where(wanted).order_by(REMINDER.c.due, REMINDER.c.key)
        return tuple(_record(row) for row in rows(self._session, statement))


def _record(row: Row[Any]) -> ReminderRecord:
    values = values_of(row)
    values["channels"] = _channels(row.channels, row.key)
    return ReminderRecord(**values)


def _channels(kept: str, key: str) -> tuple[str, ...]:
    what = f"reminder {key}"
    channels = from_json(kept, what)
    if not isinstance(channels, list):
        raise BadStudio(UNREADABLE.format(what=what))
    return tuple(channels)


def _rang_line(row: Sequence[Any]) -> RangLine:
    instants = map(_instant, row[1:7])
    return RangLine._make((row[0], *instants, _channels(row[7], row[0]), *row[8:]))


def _try_line(row: Sequence[Any]) -> TryLine:
    key, at, channel, ok, words = row
    return key, _instant(at), channel, ok, words


def _instant(kept: Any) -> Any:
    """Read an instant as SQLite keeps it: UTC, without saying so."""
    return datetime.fromisoformat(f"{kept}+00:00") if isinstance(kept, str) else kept
