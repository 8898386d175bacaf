"""Taking back, restoring, correcting and answering what a trial's journal says."""

from dataclasses import replace

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing
from studio_log.domain.reminders import SEEN, Cause, Fate, Record
from studio_log.domain.trials import trial_from
from studio_log.language.words import tr, tr_later
from studio_log.services.bath_back import last_of, next_redo
from studio_log.services.commands import AnswerReminder, Correct, Outcome
from studio_log.services.correcting import correction
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.marking import put_off_until
from studio_log.services.trial_acts import do_arm, due_groups, trial_readings, written_on
from studio_log.services.trial_keeping import trial_entries
from studio_log.services.trials import DoArm


def undo_trial(desk: Desk, code: str, number: int | None = None) -> Outcome:
    """Take back the latest entry of a trial, or the one numbered; at last the trial itself."""
    entries = trial_entries(desk, code)
    code = entries[0].subject
    target = last_of(entries) if number is None else _named(entries, number)
    if target is None:
        raise Refusal(tr("Nothing of {code} is left to take back.", code=code))
    if target.act is Act.TRIAL_UNVEIL:
        raise Refusal(
            tr("{code} was unveiled: what was seen cannot be unseen. Nothing was changed; earlier "
               "entries are taken back by their numbers.", code=code)
        )  # fmt: skip
    if target.act is Act.TRIAL_NEW:
        if len(standing(entries)) > 1:
            raise Refusal(
                tr("More of {code} stands on its plan. Take that back first. Nothing was changed.",
                   code=code)
            )  # fmt: skip
        entry = desk.entry(code, Act.VOID)
        said = tr("{code} is taken back; its code is not used again.", code=code)
    else:
        entry = desk.entry(code, Act.UNDO, target=target.number)
        said = tr("{code}: {act} is taken back.", code=code, act=target.act.words)
    return _rewritten(desk, entries, entry, said, tr_later("its entry was taken back"))


def redo_trial(desk: Desk, code: str) -> Outcome:
    """Restore what was taken back last."""
    entries = trial_entries(desk, code)
    code = entries[0].subject
    gone = next_redo(entries)
    if gone is None:
        raise Refusal(tr("Nothing of {code} was taken back. Nothing was changed.", code=code))
    void = next((one for one in standing(entries) if one.act is Act.VOID), None)
    if void is not None:
        entry = desk.entry(code, Act.UNDO, target=void.number)
        said = tr("{code} is restored.", code=code)
    else:
        entry = desk.entry(code, Act.REDO, target=gone.number)
        said = tr("{code}: {act} stands again.", code=code, act=gone.act.words)
    return _rewritten(desk, entries, entry, said, tr_later("its entry was restored"))


def correct_trial(desk: Desk, command: Correct) -> Outcome:
    """Correct moment, note or reading of an earlier entry of a trial."""
    entries = trial_entries(desk, command.code)
    code = entries[0].subject
    target = _named(entries, command.entry)
    unknown = set(command.readings) - set(target.readings) - {"two_u"}
    if command.readings and (unknown or target.act is not Act.TRIAL_READ):
        raise Refusal(
            tr("Entry {number} has no reading {names}. Nothing was changed.",
               number=target.number, names=", ".join(sorted(command.readings)))
        )  # fmt: skip
    trial = trial_from(entries)
    entry = correction(
        desk, command, target, lambda given: trial_readings(trial, given), keep_sure=False
    )
    said = tr("{code}: entry {number} is corrected.", code=code, number=target.number)
    return _rewritten(desk, entries, entry, said, tr_later("an entry was corrected"))


def answer_trial(desk: Desk, record: Record, command: AnswerReminder) -> Outcome:
    """Answer a reminder of a trial: the arm is done, or it is seen, or put off."""
    one = record.reminder
    tail = one.key.partition("/")[2]
    if command.answer == "putoff":
        moved = replace(one, rings_at=put_off_until(desk, command))
        desk.put_records([replace(record, reminder=moved, fate=Fate.WAITING, rung_at=None)])
        said = tr("{title} is put off.", title=one.title)
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
    if command.answer == "damp":
        raise Refusal(tr("A reminder is not answered by {answer!r}.", answer=command.answer))
    note = clean(command.note, tr("The note"))
    said = f"{one.title}: {SEEN}"
    entry = desk.entry(
        one.subject, Act.NOTE, note=f"{said}. {note}" if note else said, data={"seen": tail}
    )
    cause = Cause(None, f"{SEEN}: {note}" if note else SEEN, key=one.key)
    return written_on(desk, entries, entry, f"{said}.", cause)


def _named(entries: tuple[Entry, ...], number: int) -> Entry:
    for entry in standing(entries):
        if entry.number == number and entry.act not in META and entry.act is not Act.VOID:
            return entry
    raise Refusal(tr("There is no entry {number} that stands. Nothing was changed.", number=number))


def _rewritten(
    desk: Desk, entries: tuple[Entry, ...], entry: Entry, said: str, why: str
) -> Outcome:
    return written_on(desk, entries, entry, said, Cause(undoing=True, why=why))
