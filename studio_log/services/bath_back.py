"""Taking back, restoring and correcting what a bath's journal says, by later entries."""

from dataclasses import replace
from functools import partial
from typing import Final

from studio_log.domain.baths import bath_from
from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import Cause
from studio_log.language.words import tr_later
from studio_log.services.bath_acts import bath_readings
from studio_log.services.bath_keeping import bath_entries, settle_bath
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.journal_back import Entries, Noun, correct_of, redo_of, undo_of


def _written(desk: Desk, entries: Entries, entry: Entry, said: str, cause: Cause) -> Outcome:
    bath = bath_from((*entries, replace(entry, number=len(entries) + 1)))
    desk.work.journal.append(entry)
    settle_bath(desk, bath, cause)
    return Outcome(said, baths=frozenset({bath.code}), subject=bath.code, reminders=True)


BATH: Final = Noun(
    bath_entries,
    _written,
    Act.BATH_NEW,
    tr_later("More of {code} stands on its making. Take that back first. Nothing was changed."),
    lambda _entries, _target, _command: bath_readings,
)
undo_bath = partial(undo_of, BATH)
redo_bath = partial(redo_of, BATH)
correct_bath = partial(correct_of, BATH)
