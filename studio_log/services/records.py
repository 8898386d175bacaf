"""Reminder records as the store keeps them, there and back."""

from datetime import datetime

from studio_log.domain.reminders import Fate, Kind, Record, Reminder, Urgency, rings_next
from studio_log.store.values import ReminderRecord


def record_to_store(record: Record, now: datetime) -> ReminderRecord:
    """Give the record to keep; `rings_at` is when it rings next."""
    one = record.reminder
    return ReminderRecord(
        key=one.key,
        subject=one.subject,
        kind=one.kind.value,
        urgency=one.urgency.value,
        due=one.due,
        rings_at=rings_next(record),
        title=one.title,
        updated_at=now,
        step=one.step,
        why=one.why,
        if_late=one.if_late,
        status=record.fate.value,
        raised_at=record.raised_at,
        raise_count=record.times,
        last_rung_at=record.rung_at,
        answered_at=record.answered_at,
        answer=record.answer,
        void_at=record.void_at,
        void_why=record.void_why,
        channels=record.channels,
    )


def record_from(kept: ReminderRecord) -> Record:
    """Give the record back."""
    return Record(
        reminder=Reminder(
            key=kept.key,
            subject=kept.subject,
            step=kept.step,
            kind=Kind(kept.kind),
            urgency=Urgency(kept.urgency),
            due=kept.due,
            rings_at=kept.rings_at,
            title=kept.title,
            why=kept.why,
            if_late=kept.if_late,
        ),
        fate=Fate(kept.status),
        raised_at=kept.raised_at,
        times=kept.raise_count,
        rung_at=kept.last_rung_at,
        answered_at=kept.answered_at,
        answer=kept.answer,
        void_at=kept.void_at,
        void_why=kept.void_why,
        channels=tuple(kept.channels),
    )
