"""Taking back, restoring and correcting what a swatch's journal says, by later entries."""

from dataclasses import replace

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing
from studio_log.domain.reminders import Cause
from studio_log.domain.swatches import swatch_from
from studio_log.language.words import tr, tr_later
from studio_log.services.bath_back import last_of, next_redo
from studio_log.services.commands import Correct, Outcome
from studio_log.services.correcting import correction
from studio_log.services.desk import Desk
from studio_log.services.swatch_acts import swatch_readings
from studio_log.services.swatch_keeping import settle_swatch, swatch_entries


def undo_swatch(desk: Desk, code: str, number: int | None = None) -> Outcome:
    """Take back the latest entry of a swatch, or the one numbered; at last the swatch itself."""
    entries = swatch_entries(desk, code)
    code = entries[0].subject
    target = last_of(entries) if number is None else _named(entries, number)
    if target is None:
        raise Refusal(tr("Nothing of {code} is left to take back.", code=code))
    if target.act is Act.SWATCH_NEW:
        if len(standing(entries)) > 1:
            raise Refusal(
                tr("More of {code} stands on its cutting. Take that back first. Nothing was "
                   "changed.", code=code)
            )  # fmt: skip
        entry = desk.entry(code, Act.VOID)
        said = tr("{code} is taken back; its code is not used again.", code=code)
    else:
        entry = desk.entry(code, Act.UNDO, target=target.number)
        said = tr("{code}: {act} is taken back.", code=code, act=target.act.words)
    return _rewritten(desk, entries, entry, said)


def redo_swatch(desk: Desk, code: str) -> Outcome:
    """Restore what was taken back last."""
    entries = swatch_entries(desk, code)
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
    return _rewritten(desk, entries, entry, said)


def correct_swatch(desk: Desk, command: Correct) -> Outcome:
    """Correct moment, note, colour or grade of an earlier entry of a swatch."""
    entries = swatch_entries(desk, command.code)
    code = entries[0].subject
    target = _named(entries, command.entry)
    unknown = set(command.readings) - set(target.readings) - {"two_u"}
    if unknown and command.readings:
        raise Refusal(
            tr("Entry {number} has no reading {names}. Nothing was changed.",
               number=target.number, names=", ".join(sorted(unknown)))
        )  # fmt: skip
    entry = correction(desk, command, target, swatch_readings, keep_sure=False)
    said = tr("{code}: entry {number} is corrected.", code=code, number=target.number)
    return _rewritten(desk, entries, entry, said)


def _named(entries: tuple[Entry, ...], number: int) -> Entry:
    for entry in standing(entries):
        if entry.number == number and entry.act not in META and entry.act is not Act.VOID:
            return entry
    raise Refusal(tr("There is no entry {number} that stands. Nothing was changed.", number=number))


def _rewritten(desk: Desk, entries: tuple[Entry, ...], entry: Entry, said: str) -> Outcome:
    """Append an entry about another one, if the whole journal still reads with it."""
    number = len(entries) + 1
    swatch = swatch_from((*entries, replace(entry, number=number)))
    desk.work.journal.append(entry)
    why = tr_later("its journal was changed")
    settle_swatch(desk, swatch, number, Cause(undoing=True, why=why))
    return Outcome(
        said,
        lots=frozenset({swatch.lot}),
        swatches=frozenset({swatch.code}),
        subject=swatch.code,
        reminders=True,
    )
