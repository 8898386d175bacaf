"""Baths at the desk: reading them from the journal, and bringing their reminders into line."""

from typing import Final

from studio_log.domain.bath_due import bath_reminders
from studio_log.domain.bath_text import whole_bath_code
from studio_log.domain.baths import Bath, bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry
from studio_log.domain.reminders import Cause, Reminder
from studio_log.language.words import tr
from studio_log.services.desk import Desk
from studio_log.services.own_journals import align, every

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
    """Give every bath that was not taken back, in the order of their codes."""
    return every(desk, BATHS, bath_from)


def settle_bath(desk: Desk, bath: Bath, cause: Cause) -> list[Reminder]:
    """Bring a bath's reminders into line with its journal; gives those worked out."""
    return align(desk, bath.code, bath_reminders(bath, desk.now, desk.quiet), cause)
