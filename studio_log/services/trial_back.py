"""Taking back, restoring, correcting and answering what a trial's journal says."""

from functools import partial
from typing import Final

from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import Cause, Record
from studio_log.domain.trials import trial_from
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import AnswerReminder, Correct, Outcome
from studio_log.services.correcting import Reader
from studio_log.services.desk import Desk
from studio_log.services.journal_back import (
    Entries,
    Noun,
    correct_of,
    redo_of,
    refuse_readings,
    undo_of,
)
from studio_log.services.own_journals import PUT_OFF, put_off, seen
from studio_log.services.trial_acts import do_arm, due_groups, trial_readings, written_on
from studio_log.services.trial_keeping import trial_entries
from studio_log.services.trials import DoArm

UNVEILED: Final = tr_later(
    "{code} was unveiled: what was seen cannot be unseen. Nothing was changed; earlier entries are "
    "taken back by their numbers."
)


def _reader(entries: Entries, target: Entry, command: Correct) -> Reader:
    unknown = set(command.readings) - set(target.readings) - {"two_u"}
    refuse_readings(target, unknown if target.act is Act.TRIAL_READ else set(command.readings))
    return partial(trial_readings, trial_from(entries))


def _fixed(entry: Entry, code: str) -> str:
    return tr(UNVEILED, code=code) if entry.act is Act.TRIAL_UNVEIL else ""


TRIAL: Final = Noun(
    trial_entries,
    written_on,
    Act.TRIAL_NEW,
    tr_later("More of {code} stands on its plan. Take that back first. Nothing was changed."),
    _reader,
    _fixed,
)
undo_trial = partial(undo_of, TRIAL)
redo_trial = partial(redo_of, TRIAL)
correct_trial = partial(correct_of, TRIAL)


def answer_trial(desk: Desk, record: Record, command: AnswerReminder) -> Outcome:
    """Answer a reminder of a trial: the arm is done, or it is seen, or put off."""
    one = record.reminder
    tail = one.key.partition("/")[2]
    if command.answer == PUT_OFF:
        said = put_off(desk, record, command)
        return Outcome(said, trials=frozenset({one.subject}), reminders=True)
    entries = trial_entries(desk, one.subject)
    group = due_groups(desk, trial_from(entries)).get(tail)
    if command.answer == "done" and group is not None:
        what, arm, _day, blocks = group
        return do_arm(
            desk,
            DoArm(one.subject, what, (arm,) if arm else (), blocks, command.note, command.at,
                  sure=command.sure),
        )  # fmt: skip
    note = seen(desk, one, command)
    return written_on(desk, entries, note.entry, note.said, Cause(None, note.answer, key=one.key))
