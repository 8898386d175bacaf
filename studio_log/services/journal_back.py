"""Taking back, restoring and correcting what a journal of its own says, by later entries.

Baths, swatches and trials share it: what differs between them is a `Noun`.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing, taken_back
from studio_log.domain.reminders import Cause
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Correct, Outcome
from studio_log.services.correcting import Reader, correction
from studio_log.services.desk import Desk

Entries = tuple[Entry, ...]
TAKEN: Final = tr_later("its entry was taken back")
RESTORED: Final = tr_later("its entry was restored")
CORRECTED: Final = tr_later("an entry was corrected")


@dataclass(frozen=True)
class Noun:
    """A thing with a journal of its own, for all that is done to its entries."""

    entries: Callable[[Desk, str], Entries]
    write: Callable[[Desk, Entries, Entry, str, Cause], Outcome]
    """Append an entry about another one, if the whole journal still reads with it; say so."""
    made: Act
    """The first act of its journal."""
    stands_on: str
    """What is said where more stands on its making."""
    reader: Callable[[Entries, Entry, Correct], Reader]
    """Gives what reads the corrected readings of an entry; Refusal where it has no such."""
    fixed: Callable[[Entry, str], str] = lambda _entry, _code: ""
    """Says why an entry is not taken back as the latest; "" where it is."""


def last_of(entries: Entries) -> Entry | None:
    """Give the entry that undo would take back, or None."""
    stand = standing(entries)
    return stand[-1] if stand and stand[-1].act is not Act.VOID else None


def next_redo(entries: Entries) -> Entry | None:
    """Give the entry that redo would restore; for a thing taken back whole its first; or None."""
    void = _void(entries)
    gone = taken_back(entries)
    return entries[0] if void is not None else gone[-1] if gone else None


def undo_of(noun: Noun, desk: Desk, code: str, number: int | None = None) -> Outcome:
    """Take back the latest entry, or the one numbered; at last the thing itself."""
    entries = noun.entries(desk, code)
    code = entries[0].subject
    target = last_of(entries) if number is None else _named(entries, number)
    if target is None:
        raise Refusal(tr("Nothing of {code} is left to take back.", code=code))
    if refused := noun.fixed(target, code):
        raise Refusal(refused)
    if target.act is noun.made:
        if len(standing(entries)) > 1:
            raise Refusal(tr(noun.stands_on, code=code))
        entry = desk.entry(code, Act.VOID)
        said = tr("{code} is taken back; its code is not used again.", code=code)
    else:
        entry = desk.entry(code, Act.UNDO, target=target.number)
        said = tr("{code}: {act} is taken back.", code=code, act=target.act.words)
    return noun.write(desk, entries, entry, said, Cause(undoing=True, why=TAKEN))


def redo_of(noun: Noun, desk: Desk, code: str) -> Outcome:
    """Restore what was taken back last."""
    entries = noun.entries(desk, code)
    code = entries[0].subject
    gone = next_redo(entries)
    if gone is None:
        raise Refusal(tr("Nothing of {code} was taken back. Nothing was changed.", code=code))
    void = _void(entries)
    if void is not None:
        entry = desk.entry(code, Act.UNDO, target=void.number)
        said = tr("{code} is restored.", code=code)
    else:
        entry = desk.entry(code, Act.REDO, target=gone.number)
        said = tr("{code}: {act} stands again.", code=code, act=gone.act.words)
    return noun.write(desk, entries, entry, said, Cause(undoing=True, why=RESTORED))


def correct_of(noun: Noun, desk: Desk, command: Correct) -> Outcome:
    """Correct moment, note or readings of an earlier entry."""
    entries = noun.entries(desk, command.code)
    target = _named(entries, command.entry)
    reader = noun.reader(entries, target, command)
    entry = correction(desk, command, target, reader, keep_sure=False)
    code = entries[0].subject
    said = tr("{code}: entry {number} is corrected.", code=code, number=target.number)
    return noun.write(desk, entries, entry, said, Cause(undoing=True, why=CORRECTED))


def refuse_readings(target: Entry, names: set[str]) -> None:
    """Refuse to correct readings that an entry has not; none is fine."""
    if names:
        raise Refusal(
            tr("Entry {number} has no reading {names}. Nothing was changed.",
               number=target.number, names=", ".join(sorted(names)))
        )  # fmt: skip


def _void(entries: Entries) -> Entry | None:
    return next((one for one in standing(entries) if one.act is Act.VOID), None)


def _named(entries: Entries, number: int) -> Entry:
    for entry in standing(entries):
        if entry.number == number and entry.act not in META and entry.act is not Act.VOID:
            return entry
    raise Refusal(tr("There is no entry {number} that stands. Nothing was changed.", number=number))
