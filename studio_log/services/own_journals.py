"""What baths, swatches and trials share at the desk: a journal and reminders of their own."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final, Protocol, TypeVar

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import SEEN, Cause, Fate, Record, Reminder, reconcile
from studio_log.language.words import tr
from studio_log.services.commands import AnswerReminder
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.marking import put_off_until
from studio_log.services.records import record_from

PUT_OFF: Final = "putoff"
"""The answer that moves a reminder."""


class Thing(Protocol):
    """Something with a journal of its own."""

    @property
    def voided(self) -> bool:
        """Whether it was taken back whole."""
        ...


Kept = TypeVar("Kept", bound=Thing)


def every(desk: Desk, letter: str, read: Callable[[tuple[Entry, ...]], Kept]) -> list[Kept]:
    """Give every thing of a letter that was not taken back, in the order of their codes.

    One whose journal does not read is left out; `check` names it.
    """
    journals = desk.work.journal.of_many(desk.work.journal.subjects(letter))
    found = []
    for code in sorted(journals):
        with suppress(Refusal):
            found.append(read(journals[code]))
    return [thing for thing in found if not thing.voided]


def align(desk: Desk, code: str, worked_out: list[Reminder], cause: Cause) -> list[Reminder]:
    """Bring the reminder records of a thing into line with those worked out; gives these."""
    kept = [record_from(one) for one in desk.work.reminders.of(code)]
    desk.put_records(reconcile(worked_out, kept, desk.now, cause))
    return worked_out


def put_off(desk: Desk, record: Record, command: AnswerReminder) -> str:
    """Put a reminder off on its record, and say so."""
    moved = replace(record.reminder, rings_at=put_off_until(desk, command))
    desk.put_records([replace(record, reminder=moved, fate=Fate.WAITING, rung_at=None)])
    return tr("{title} is put off.", title=moved.title)


@dataclass(frozen=True)
class SeenNote:
    """That a reminder was seen: the entry, what is said, and what is made of the reminder."""

    entry: Entry
    said: str
    answer: str


def seen(
    desk: Desk, one: Reminder, command: AnswerReminder, at: datetime | None = None
) -> SeenNote:
    """Give the note that answers a reminder as seen; Refusal of an answer that fits none of these.

    Its moment is that of the answer, unless `at` names another.
    """
    if command.answer == "damp":
        raise Refusal(tr("A reminder is not answered by {answer!r}.", answer=command.answer))
    note = clean(command.note, tr("The note"))
    said = f"{one.title}: {SEEN}"
    entry = desk.entry(
        one.subject, Act.NOTE, at, note=f"{said}. {note}" if note else said,
        data={"seen": one.key.partition("/")[2]},
    )  # fmt: skip
    return SeenNote(entry, f"{said}.", f"{SEEN}: {note}" if note else SEEN)
