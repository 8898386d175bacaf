"""Undo, redo and correct: by later entries, and only where the rest still reads in order."""

from collections.abc import Callable, Mapping

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing, taken_back
from studio_log.domain.lots import Lot
from studio_log.domain.methods import MethodStep
from studio_log.domain.reminders import Cause
from studio_log.language.words import tr, tr_later
from studio_log.services.bath_back import correct_bath, redo_bath, undo_bath
from studio_log.services.bath_keeping import BATHS, is_bath
from studio_log.services.commands import Correct, Outcome, Redo, Undo
from studio_log.services.correcting import correction
from studio_log.services.desk import Desk, whole_code
from studio_log.services.joining import undo_join
from studio_log.services.lot_acts import own_entries
from studio_log.services.marking import checked_readings
from studio_log.services.milk_acts import redo_milk, undo_milk
from studio_log.services.plan_back import PLANS, redo_plan, undo_plan
from studio_log.services.stock_acts import redo_material, stock_code, undo_material
from studio_log.services.swatch_back import correct_swatch, redo_swatch, undo_swatch
from studio_log.services.swatch_keeping import SWATCHES, is_swatch
from studio_log.services.trial_back import correct_trial, redo_trial, undo_trial
from studio_log.services.trial_keeping import TRIALS

JOINS = frozenset({Act.JOIN_FROM, Act.JOIN_INTO})
FIXED = frozenset({Act.PRINTED, Act.SPLIT_FROM})
"""What happened outside the log, or parts a lot from its parent, is not taken back."""


NOT_REDONE: Mapping[Act, str] = {
    Act.SPLIT_OFF: tr_later("A split that was taken back is made again, not restored."),
    Act.JOIN_INTO: tr_later("A join that was taken back is made again, not restored."),
}
"""What redo cannot restore, for the code of the other lot is not given twice."""


def last_undoable(entries: tuple[Entry, ...]) -> Entry | None:
    """Give the entry that undo would take back, or None."""
    own = [entry for entry in own_entries(entries) if entry.act not in FIXED]
    return own[-1] if own and own[-1].act is not Act.VOID else None


_UNDO_OF: Mapping[str, Callable[[Desk, str, int | None], Outcome]] = {
    PLANS: lambda desk, _code, _entry: undo_plan(desk, _undo_one),
    "M": undo_milk,
    "S": lambda desk, code, _entry: undo_material(desk, stock_code(code)),
    BATHS: undo_bath,
    SWATCHES: undo_swatch,
    TRIALS: undo_trial,
}
_REDO_OF: Mapping[str, Callable[[Desk, str], Outcome]] = {
    PLANS: lambda desk, _code: redo_plan(desk, _redo_one),
    "M": redo_milk,
    "S": lambda desk, code: redo_material(desk, stock_code(code)),
    BATHS: redo_bath,
    SWATCHES: redo_swatch,
    TRIALS: redo_trial,
}
"""By the letter with which the codes of a milk, a material, a bath, a swatch or a trial begin."""


def _undo_one(desk: Desk, code: str, entry: int) -> None:
    undo(desk, Undo(code, entry))


def _redo_one(desk: Desk, code: str, _entry: int) -> None:
    redo(desk, Redo(code))


def undo(desk: Desk, command: Undo) -> Outcome:
    """Take back the latest entry still standing, or a named earlier one."""
    code = whole_code(command.code)
    other = _UNDO_OF.get(code[:1].upper())
    if other is not None:
        return other(desk, code.upper(), command.entry)
    desk.lot(code)
    entries = desk.entries(code)
    named = command.entry is not None
    target = _named(entries, command.entry or 0) if named else last_undoable(entries)
    if target is None:
        raise Refusal(tr("Nothing of {code} is left to take back.", code=code))
    if target.act is Act.NEW:
        _nothing_stands_on(code, entries)
        lot = desk.write(desk.lot(code), desk.entry(code, Act.VOID))
        desk.settle(lot, Cause(undoing=True, why=tr_later("the lot was taken back")))
        return _outcome(code, tr("{code} is taken back; its code is not used again.", code=code))
    if target.act in JOINS:
        return undo_join(desk, str(target.data.get("child", code)))
    _not_joined(desk.lot(code), target)
    touched = {code}
    if target.act is Act.SPLIT_OFF:
        touched.add(_void_child(desk, target))
    lot = desk.rewrite(code, desk.entry(code, Act.UNDO, target=target.number))
    desk.settle(lot, Cause(undoing=True, why=tr_later("its entry was taken back")))
    return _outcome(
        code,
        tr("{code}: {entry_words} is taken back.", code=code, entry_words=entry_words(target, lot)),
        *touched,
    )


def _not_joined(lot: Lot, target: Entry) -> None:
    """Refuse to change what the lot that this one went into has taken over."""
    if lot.joined_into and target.act is not Act.NOTE:
        raise Refusal(
            tr(
                "{code} was joined into {child}, which has entry {number} too. Take the join back "
                "first. Nothing was changed.",
                code=lot.code,
                child=lot.joined_into,
                number=target.number,
            )
        )


def _nothing_stands_on(code: str, entries: tuple[Entry, ...]) -> None:
    """Refuse to take a lot back while anything else of its journal stands."""
    later = [entry for entry in own_entries(entries) if entry.act not in {Act.NEW, *FIXED}]
    if later:
        raise Refusal(
            tr(
                "Entry {number} ({words}) of {code} stands on it. Take that one "
                "back first. Nothing was changed.",
                number=later[-1].number,
                words=later[-1].act.words,
                code=code,
            )
        )


def _void_child(desk: Desk, split: Entry) -> str:
    """Void the lot that a split made, if nothing was marked on it since."""
    code = str(split.data["child"])
    since = [entry for entry in own_entries(desk.entries(code)) if entry.act not in FIXED]
    if since:
        raise Refusal(
            tr(
                "{code} has been worked on since the split: {count} entries stand "
                "on it. Take those back first. Nothing was changed.",
                code=code,
                count=len(since),
            )
        )
    child = desk.write(desk.lot(code), desk.entry(code, Act.VOID))
    desk.settle(child, Cause(undoing=True, why=tr_later("the split was taken back")))
    return code


def _named(entries: tuple[Entry, ...], number: int) -> Entry:
    for entry in standing(entries):
        if entry.number != number:
            continue
        if entry.act in FIXED or "from" in entry.data:
            raise Refusal(
                tr(
                    "Entry {number} belongs to the lot's past and cannot be changed here.",
                    number=number,
                )
            )
        return entry
    raise Refusal(tr("There is no entry {number} that stands. Nothing was changed.", number=number))


def redo(desk: Desk, command: Redo) -> Outcome:
    """Restore what was taken back last."""
    code = whole_code(command.code)
    other = _REDO_OF.get(code[:1].upper())
    if other is not None:
        return other(desk, code.upper())
    lot = desk.lot(code)
    entries = desk.entries(code)
    if lot.voided and lot.parents:
        raise Refusal(tr(NOT_REDONE[Act.JOIN_INTO if lot.joined else Act.SPLIT_OFF]))
    if lot.voided:
        void = next(entry for entry in reversed(standing(entries)) if entry.act is Act.VOID)
        back = desk.entry(code, Act.UNDO, target=void.number)
        words = tr("{code} is restored.", code=code)
    else:
        gone = taken_back(entries)
        if not gone:
            raise Refusal(tr("Nothing of {code} was taken back. Nothing was changed.", code=code))
        if gone[-1].act in NOT_REDONE:
            raise Refusal(tr(NOT_REDONE[gone[-1].act]))
        back = desk.entry(code, Act.REDO, target=gone[-1].number)
        words = tr(
            "{code}: {entry_words} stands again.", code=code, entry_words=entry_words(gone[-1], lot)
        )
    lot = desk.rewrite(code, back)
    desk.settle(lot, Cause(undoing=True, why=tr_later("its entry was restored")))
    return _outcome(code, words)


def correct(desk: Desk, command: Correct) -> Outcome:
    """Correct time, note or readings of an earlier entry."""
    code = whole_code(command.code)
    if is_bath(code.upper()):
        return correct_bath(desk, command)
    if is_swatch(code):
        return correct_swatch(desk, command)
    if code[:1].upper() == TRIALS:
        return correct_trial(desk, command)
    desk.lot(code)
    target = _named(desk.entries(code), command.entry)
    if target.act is Act.NEW and command.at is not None:
        raise Refusal(tr("When a lot was made is not corrected. Nothing was changed."))
    if target.act in JOINS and command.at is not None:
        raise Refusal(tr("When a lot was joined is not corrected. Nothing was changed."))
    _not_joined(desk.lot(code), target)
    lot = desk.rewrite(code, correction(desk, command, target, checked_readings, keep_sure=True))
    desk.settle(lot, Cause(undoing=True, why=tr_later("an entry was corrected")))
    return _outcome(
        code, tr("{code}: entry {number} is corrected.", code=code, number=target.number)
    )


def entry_words(entry: Entry, lot: Lot) -> str:
    """Say what an entry did: "First soak: begun", "First soak: stirred"."""
    if entry.step is None or entry.step > len(lot.steps):
        return entry.act.words
    step = lot.step(entry.step)
    return f"{step.title}: {_done_words(entry.act, step.spec)}"


def _done_words(act: Act, step: MethodStep) -> str:
    """Say an act as the method's own button does: "lifted", "stirred"."""
    said = {
        Act.START: "begun",
        Act.END: step.end_done,
        Act.TEND: step.tending.done if step.tending else "",
        Act.DRY: tr("felt dry"),
    }.get(act, "")
    return said[:1].lower() + said[1:] or act.words


def _outcome(code: str, words: str, *touched: str) -> Outcome:
    return Outcome(words, lots=frozenset({code, *touched}), subject=code, reminders=True)
