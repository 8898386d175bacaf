"""A reminder: a moment at which the dyer is needed, and what became of it.

Reminders are worked out (see `due`), never the truth. What is kept is a record of each:
raised when and how, answered, made void and why. `reconcile` brings the records into line
with what was worked out; it never forgets one and never rings an answered one again.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from enum import StrEnum


class Kind(StrEnum):
    """What sort of moment it is."""

    START = "start"
    TEND = "tend"
    MAY_END = "may_end"
    READY = "ready"
    LAST_CALL = "last_call"
    PAST = "past"
    IS_DRY = "is_dry"
    USE_BY = "use_by"
    CURE_MARK = "cure_mark"
    TRIAL_ARM = "trial_arm"
    LOOK_OVER = "look_over"
    LIGHT_READING = "light_reading"
    MAKE_READY = "make_ready"
    REFRESH = "refresh"
    LOOK_AHEAD = "look_ahead"
    EVENING_LOOK = "evening_look"
    COPY_OLD = "copy_old"


class Urgency(StrEnum):
    """How much harm waiting does, least first."""

    CALM = "calm"
    SOON = "soon"
    NOW = "now"
    SPOILING = "spoiling"

    @property
    def rank(self) -> int:
        """Greater is more urgent."""
        return list(Urgency).index(self)


@dataclass(frozen=True)
class Reminder:
    """One moment worked out. `due` is when it falls due, `rings_at` when it may ring.

    They differ where quiet hours or a putting-off come between. `key` is the same each
    time it is worked out. `quietly` marks those that the program itself counts down.
    """

    key: str
    subject: str
    step: int | None
    kind: Kind
    urgency: Urgency
    due: datetime
    rings_at: datetime
    title: str
    why: str
    if_late: str
    earliest: datetime | None = None
    latest: datetime | None = None
    quietly: bool = False


class Fate(StrEnum):
    """What became of a reminder."""

    WAITING = "waiting"
    RAISED = "raised"
    ANSWERED = "answered"
    VOID = "void"


@dataclass(frozen=True)
class Record:
    """A reminder and what became of it."""

    reminder: Reminder
    fate: Fate = Fate.WAITING
    raised_at: datetime | None = None
    times: int = 0
    rung_at: datetime | None = None
    answered_at: datetime | None = None
    answer: str = ""
    void_at: datetime | None = None
    void_why: str = ""
    channels: tuple[str, ...] = ()

    @property
    def open(self) -> bool:
        """Neither answered nor void."""
        return self.fate in {Fate.WAITING, Fate.RAISED}


WITHOUT_ACT = frozenset(
    {Kind.CURE_MARK, Kind.USE_BY, Kind.MAKE_READY, Kind.REFRESH, Kind.TRIAL_ARM,
     Kind.LIGHT_READING}
)  # fmt: skip
"""Answered by no act of a step: by an entry of their own, and put off on their own record."""
SEEN = "seen"
"""Begins the answer to one of these; a note may follow."""

AGAIN: Mapping[Urgency, tuple[timedelta, ...]] = {
    Urgency.SPOILING: tuple(timedelta(minutes=m) for m in (5, 10, 20, 30)),
    Urgency.NOW: tuple(timedelta(minutes=m) for m in (10, 20, 40, 60)),
    Urgency.SOON: tuple(timedelta(minutes=m) for m in (30, 60, 120, 240)),
    Urgency.CALM: tuple(timedelta(hours=h) for h in (4, 12, 24)),
}
"""Gaps after the first, second … ring without an answer; the last one goes on."""


MARK_AGAIN = (timedelta(days=1), timedelta(days=7))
"""Cloth at rest can wait: a mark of the cure rings again next day, then weekly."""


def rings_next(record: Record) -> datetime:
    """Give when an open reminder rings next: its moment, or again after a growing gap."""
    rings_at = record.reminder.rings_at
    if record.fate is Fate.WAITING or record.rung_at is None:
        return rings_at
    return max(rings_at, record.rung_at + _gap(record))


def _gap(record: Record) -> timedelta:
    gaps = MARK_AGAIN if record.reminder.kind is Kind.CURE_MARK else AGAIN[record.reminder.urgency]
    return gaps[min(record.times, len(gaps)) - 1] if record.times else timedelta(0)


@dataclass(frozen=True)
class Cause:
    """Why records are brought into line: an answer to a step, an undoing, or a look."""

    step: int | None = None
    answer: str = ""
    key: str = ""
    """The one reminder that was answered, where not every one of the step was."""
    undoing: bool = False
    why: str = "no longer needed"


def reconcile(
    worked_out: Iterable[Reminder], kept: Iterable[Record], now: datetime, cause: Cause
) -> list[Record]:
    """Give the records that are new or changed; those not named stay as they are."""
    old = {record.reminder.key: record for record in kept}
    new = {reminder.key: reminder for reminder in worked_out}
    changed = [
        after
        for key, reminder in new.items()
        if (after := _kept_up(reminder, old.get(key), now, cause)) != old.get(key)
    ]
    gone = [record for key, record in old.items() if key not in new and record.open]
    return changed + [_closed(record, now, cause) for record in gone]


def _kept_up(reminder: Reminder, record: Record | None, now: datetime, cause: Cause) -> Record:
    if record is None:
        return Record(reminder)
    ahead = reminder.rings_at > now
    if record.open:
        fate, rung = _fate_of_open(record, now, ahead=ahead)
        return replace(record, reminder=_put_off(reminder, record), fate=fate, rung_at=rung)
    if record.fate is Fate.ANSWERED and not cause.undoing:
        return record
    # It came back by an undo: it rings only if its moment is still ahead; otherwise it is on
    # the bench, silent. One that never rang and came back by itself is not lost.
    if ahead or (record.times == 0 and not cause.undoing):
        return Record(reminder)
    return replace(
        record,
        reminder=reminder,
        fate=Fate.RAISED,
        raised_at=record.raised_at or now,
        rung_at=now,
        times=max(record.times, 1),
        answered_at=None,
        answer="",
        void_at=None,
        void_why="",
    )


def _fate_of_open(record: Record, now: datetime, *, ahead: bool) -> tuple[Fate, datetime | None]:
    """Give whether an open one waits or has rung, and when it rang last.

    One that rang in what is now the future was rung by a clock that was wrong then, or is
    wrong now. A step back within its gap changes nothing, so that it does not ring twice.
    After a greater one its moment counts anew; when it rang is kept for the day on which
    the clock comes right again.
    """
    rung = record.rung_at
    if rung is not None and rung > now:
        if rung - now <= _gap(record):
            return record.fate, rung
        waits = ahead or record.fate is Fate.WAITING
        return (Fate.WAITING, rung) if waits else (Fate.RAISED, now)
    if ahead:
        return Fate.WAITING, None  # put off or planned anew: it rings at its new moment
    return (record.fate if rung is None else Fate.RAISED), rung


def _put_off(reminder: Reminder, record: Record) -> Reminder:
    """Keep the moment to which a reminder without an act was put off: no journal has it."""
    kept = record.reminder
    if reminder.kind not in WITHOUT_ACT or record.fate is not Fate.WAITING:
        return reminder
    if kept.due != reminder.due or kept.rings_at <= reminder.rings_at:
        return reminder
    return replace(reminder, rings_at=kept.rings_at)


def _closed(record: Record, now: datetime, cause: Cause) -> Record:
    """Close a record whose reminder is worked out no more: answered, else void and why."""
    answered = cause.key in {"", record.reminder.key} and cause.step == record.reminder.step
    if cause.answer and not cause.undoing and answered:
        return replace(record, fate=Fate.ANSWERED, answered_at=now, answer=cause.answer)
    return replace(record, fate=Fate.VOID, void_at=now, void_why=cause.why)


Place = tuple[str, int | str]


def place_of(reminder: Reminder) -> Place:
    """Give what a reminder is about: a step, or without one its subject's own matter."""
    if reminder.kind is Kind.TRIAL_ARM:
        return reminder.subject, reminder.key  # each arm is a matter of its own
    return reminder.subject, reminder.kind if reminder.step is None else reminder.step


def told_together(records: Iterable[Record]) -> list[Record]:
    """Order reminders for one notice: oldest danger first, one line a step.

    Of several for one step only the most urgent is told; the rest are raised with it.
    """
    told: dict[tuple[Place, bool], Record] = {}
    for record in records:
        one = record.reminder
        place = (place_of(one), one.kind is Kind.TEND)
        before = told.get(place)
        if before is None or _weight(record) > _weight(before):
            told[place] = record
    return sorted(told.values(), key=lambda one: (-one.reminder.urgency.rank, one.reminder.due))


def _weight(record: Record) -> tuple[int, datetime]:
    return (record.reminder.urgency.rank, record.reminder.due)
