"""Taking back, restoring and correcting what a bath's journal says, by later entries."""

from dataclasses import replace

from studio_log.domain.baths import bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing, taken_back
from studio_log.domain.reminders import Cause
from studio_log.language.words import tr, tr_later
from studio_log.services.bath_acts import bath_readings
from studio_log.services.bath_keeping import bath_entries, settle_bath
from studio_log.services.commands import Correct, Outcome
from studio_log.services.correcting import correction
from studio_log.services.desk import Desk


def last_of(entries: tuple[Entry, ...]) -> Entry | None:
    """Give the entry that undo would take back, or None."""
    stand = standing(entries)
    return stand[-1] if stand and stand[-1].act is not Act.VOID else None


def next_redo(entries: tuple[Entry, ...]) -> Entry | None:
    """Give the entry that redo would restore; for a bath taken back whole its first; or None."""
    void = next((one for one in standing(entries) if one.act is Act.VOID), None)
    gone = taken_back(entries)
    return entries[0] if void is not None else gone[-1] if gone else None


def undo_bath(desk: Desk, code: str, number: int | None = None) -> Outcome:
    """Take back the latest entry of a bath, or the one numbered; before any, the bath itself."""
    entries = bath_entries(desk, code)
    code = entries[0].subject
    target = last_of(entries) if number is None else _named(entries, number)
    if target is None:
        raise Refusal(tr("Nothing of {code} is left to take back.", code=code))
    if target.act is Act.BATH_NEW:
        if len(standing(entries)) > 1:
            raise Refusal(
                tr("More of {code} stands on its making. Take that back first. Nothing was "
                   "changed.", code=code)
            )  # fmt: skip
        entry = desk.entry(code, Act.VOID)
        said = tr("{code} is taken back; its code is not used again.", code=code)
    else:
        entry = desk.entry(code, Act.UNDO, target=target.number)
        said = tr("{code}: {act} is taken back.", code=code, act=target.act.words)
    return _rewritten(desk, entries, entry, said, tr_later("its entry was taken back"))


def redo_bath(desk: Desk, code: str) -> Outcome:
    """Restore what was taken back last."""
    entries = bath_entries(desk, code)
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


def correct_bath(desk: Desk, command: Correct) -> Outcome:
    """Correct moment, note or readings of an earlier entry of a bath."""
    entries = bath_entries(desk, command.code)
    code = entries[0].subject
    target = _named(entries, command.entry)
    entry = correction(desk, command, target, bath_readings, keep_sure=False)
    said = tr("{code}: entry {number} is corrected.", code=code, number=target.number)
    return _rewritten(desk, entries, entry, said, tr_later("an entry was corrected"))


def _named(entries: tuple[Entry, ...], number: int) -> Entry:
    for entry in standing(entries):
        if entry.number == number and entry.act not in META and entry.act is not Act.VOID:
            return entry
    raise Refusal(tr("There is no entry {number} that stands. Nothing was changed.", number=number))


def _rewritten(
    desk: Desk, entries: tuple[Entry, ...], entry: Entry, said: str, why: str
) -> Outcome:
    """Append an entry about another one, if the whole journal still reads with it."""
    bath = bath_from((*entries, replace(entry, number=len(entries) + 1)))
    desk.work.journal.append(entry)
    settle_bath(desk, bath, Cause(undoing=True, why=why))
    codes = frozenset({bath.code})
    return Outcome(said, baths=codes, subject=bath.code, reminders=True)
