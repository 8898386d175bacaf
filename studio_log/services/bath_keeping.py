"""Baths at the desk: reading them from the journal, and bringing their reminders into line."""

from contextlib import suppress
from typing import Final

from studio_log.domain.bath_due import bath_reminders
from studio_log.domain.bath_text import whole_bath_code
from studio_log.domain.baths import Bath, bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.reminders import Cause, Reminder, reconcile
from studio_log.language.words import tr
from studio_log.services.desk import Desk
from studio_log.services.records import record_from

BATHS: Final = "B"
"""What the code of every bath begins with."""


def is_bath(code: str) -> bool:
    """Say whether a code is that of a bath."""
    return code[:1] == BATHS


def bath_entries(desk: Desk, text: str) -> tuple[Entry, ...]:
    """Give the journal of a bath; Refusal for an unknown code."""
    code = whole_bath_code(text)
    entries = desk.entries(code)
    if not entries:
        raise Refusal(
            tr("There is no bath {code}. Nothing was changed; `bath list` shows them.", code=code)
        )
    return entries


def bath_of(desk: Desk, code: str) -> Bath:
    """Give a bath as it stands; Refusal for an unknown code."""
    return bath_from(bath_entries(desk, code))


def baths(desk: Desk) -> list[Bath]:
    """Give every bath that was not taken back, in the order of their codes.

    One whose journal does not read is left out; `check` names it.
    """
    journals = desk.work.journal.of_many(desk.work.journal.subjects(BATHS))
    found = []
    for code in sorted(journals):
        with suppress(Refusal):
            found.append(bath_from(journals[code]))
    return [bath for bath in found if not bath.voided]


def settle_bath(desk: Desk, bath: Bath, cause: Cause) -> list[Reminder]:
    """Bring a bath's reminders into line with its journal; gives those worked out."""
    worked_out = bath_reminders(bath, desk.now, desk.quiet)
    kept = [record_from(one) for one in desk.work.reminders.of(bath.code)]
    desk.put_records(reconcile(worked_out, kept, desk.now, cause))
    return worked_out
