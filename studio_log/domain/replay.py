"""The lot as its journal tells it: entries in, lot out.

Each act has one function that checks whether it makes sense and gives the lot after it.
What cannot be is a Refusal; what is odd is a Question, which an entry whose data say
"sure" has already answered. So taking back or correcting an entry is: leave it out or
change it, replay the rest, and see who refuses.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from studio_log.domain import parting
from studio_log.domain.errors import Question, Refusal
from studio_log.domain.following import follow
from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lots import Lot, LotStep, StepState, Use, cure_of, fully_dry, last_cure
from studio_log.domain.methods import StepKind
from studio_log.domain.repeating import repeated
from studio_log.domain.starting import MethodBook, begin, method_named, steps_of

TWICE = timedelta(minutes=1)
"""Two equal acts closer than this are taken for a double click."""


class StandsOn(Refusal):
    """A later entry no longer reads once an earlier one is changed."""

    def __init__(self, entry: Entry, refusal: Refusal) -> None:
        """Name the entry that stands in the way, and why."""
        super().__init__(
            f"Entry {entry.number} ({entry.act.words}) stands on it: "
            f"{refusal} Take that one back first. Nothing was changed."
        )
        self.entry = entry
        self.refusal = refusal


def replay(entries: Iterable[Entry], book: MethodBook) -> Lot:
    """Give the lot that the standing entries make; raises StandsOn where one does not read."""
    lot: Lot | None = None
    for entry in standing(entries):
        try:
            lot = begin(entry, book) if lot is None else apply(lot, entry, book)
        except Refusal as refusal:
            raise StandsOn(entry, refusal) from None
    if lot is None:
        raise Refusal("There is no such lot. `lot list --state all` shows every code.")
    return lot


def apply(lot: Lot, entry: Entry, book: MethodBook) -> Lot:
    """Give the lot after one more entry; Refusal or Question where it makes no sense."""
    act = _ACTS.get(entry.act)
    if act is None and entry.act is not Act.GO_ON:
        raise Refusal(f"A lot's journal has no act {entry.act.value!r}.")
    if lot.voided:
        raise Refusal(f"{lot.code} was voided; nothing more can be marked on it.")
    if lot.stopped is not None and entry.act not in {Act.NOTE, Act.SET, Act.VOID, Act.PRINTED}:
        raise Refusal(_ended_words(lot))
    after = _settled(act(lot, entry) if act is not None else _go_on(lot, entry, book))
    return _with_readings(after, entry)


def _with_readings(lot: Lot, entry: Entry) -> Lot:
    """Keep what was read with the step it was read in, the latest of a name."""
    if not entry.readings or entry.step is None:
        return lot
    step = lot.step(entry.step)
    return _with(lot, step, read={**step.read, **entry.readings})


def _ended_words(lot: Lot) -> str:
    if lot.joined_into:
        return f"{lot.code} was joined into {lot.joined_into}: mark it there. Nothing was changed."
    return f"{lot.code} was stopped. Undo the stop first; nothing was changed."


def _ask(entry: Entry, words: str) -> None:
    """Put a plain question, unless the dyer has answered it."""
    if not entry.data.get("sure"):
        raise Question(words)


def _with(lot: Lot, step: LotStep, **changes: Any) -> Lot:
    changed = replace(step, **changes)
    return replace(
        lot, steps=tuple(changed if one.number == step.number else one for one in lot.steps)
    )


def _step(lot: Lot, entry: Entry) -> LotStep:
    if entry.step is None:
        raise Refusal("Say which step: its number, its name, or `now`. Nothing was changed.")
    return lot.step(entry.step)


def _still_open(lot: Lot, entry: Entry) -> LotStep:
    step = _step(lot, entry)
    if step.closed:
        done = "skipped" if step.skipped is not None else "done"
        raise Refusal(
            f"{lot.code} step {step.number} ({step.title}) is {done} already. Undo that first, "
            "or repeat the step; nothing was changed."
        )
    return step


def _before_use(lot: Lot, step: LotStep) -> None:
    """Refuse a further coat once the cure behind it has ended: its age is frozen."""
    cure = next((one for one in lot.steps if one.join == step.join and _ended_cure(one)), None)
    if cure is not None and step.coat is not None:
        raise Refusal(
            f"The cure of {lot.code} has ended; {step.title} can no longer be taken. "
            "Nothing was changed; take back the end of the cure first."
        )


def _ended_cure(step: LotStep) -> bool:
    return step.spec.kind is StepKind.CURE and step.end is not None


def _close_between(lot: Lot, step: LotStep, entry: Entry) -> Lot:
    """Close the steps before this one that were never marked, if the dyer says so."""
    left = [
        one
        for one in lot.before(step)
        if (not one.closed and one.spec.kind is not StepKind.CURE and lot.taken(one))
        or (one.optional and one.coat == step.coat and not one.closed)
    ]
    if not left:
        return lot
    names = ", ".join(one.title for one in reversed(left))
    _ask(entry, f"Before {step.title} these are not marked: {names}. Mark them as done too?")
    for one in left:
        lot = _with(lot, one, end=max(entry.at, one.start or entry.at), **_used(lot, one))
    return lot


def _in_order(lot: Lot, step: LotStep, entry: Entry) -> None:
    """Ask about a start that lies before the end of the step before."""
    earlier = next((one for one in lot.before(step) if one.end is not None), None)
    if earlier is not None and earlier.end is not None and entry.at < earlier.end:
        _ask(
            entry,
            f"{step.title} would begin before {earlier.title} ended. Is that right?",
        )


def _start(lot: Lot, entry: Entry) -> Lot:
    step = _still_open(lot, entry)
    if step.spec.kind is StepKind.CURE:
        raise Refusal("A cure begins by itself when the last coat is dry. Nothing was changed.")
    if step.start is not None:
        raise Refusal(f"{step.title} of {lot.code} runs already. Nothing was changed.")
    _before_use(lot, step)
    lot = _close_between(lot, step, entry)
    _in_order(lot, step, entry)
    lot = _begin_step(lot, step.number, entry.at)
    milk = entry.data.get("milk")
    return _with(lot, lot.step(step.number), milk=str(milk)) if milk else lot


def _begin_step(lot: Lot, number: int, at: datetime) -> Lot:
    """Begin a step; a cure of an earlier method that still runs ends with it, its age frozen."""
    step = lot.step(number)
    was = {"put_off": None, "plan": None, "meant_start": step.plan}
    lot = _with(lot, step, start=at, **was, **_used(lot, step))
    return _end_cures_before(lot, number, at)


def _used(lot: Lot, step: LotStep) -> dict[str, Any]:
    """Keep what a step's amounts are worked out from, from the moment it is begun or done."""
    if step.grams_used is not None:
        return {}
    return {"grams_used": lot.grams, "amounts_used": dict(lot.amounts_changed)}


def _end_cures_before(lot: Lot, number: int, at: datetime) -> Lot:
    step = lot.step(number)
    for other in lot.steps[: lot.place_of(number)]:
        if other.spec.kind is StepKind.CURE and other.running and other.join < step.join:
            lot = _with(lot, other, end=at)
    return lot


def _end(lot: Lot, entry: Entry) -> Lot:
    step = _still_open(lot, entry)
    if step.spec.kind is StepKind.CURE and step.start is None:
        raise Refusal("The cure has not begun: the last coat is not dry yet. Nothing was changed.")
    if step.start is None:
        _before_use(lot, step)
        lot = _close_between(lot, step, entry)
        _in_order(lot, step, entry)
    elif entry.at < step.start:
        raise Refusal(
            f"{step.title} of {lot.code} cannot end before it began. Nothing was changed; "
            "give a later time, or correct the start."
        )
    else:
        _sensible_length(step, entry)
    meant, ends = ("meant_start", None) if step.start is None else ("meant_end", step.plan_end)
    was = {"put_off": None, "plan": None, "plan_end": None, meant: step.plan or ends}
    lot = _with(lot, step, end=entry.at, **was, **_used(lot, step))
    lot = _end_cures_before(lot, step.number, entry.at)
    return _follow_at_once(lot, step.number, entry.at)


def _sensible_length(step: LotStep, entry: Entry) -> None:
    """Ask about a long step that ended long before its earliest end."""
    lasts = step.spec.lasts
    if lasts is None or step.start is None or lasts.earliest < timedelta(hours=1):
        return
    if step.spec.kind is not StepKind.DRY and entry.at - step.start < lasts.earliest / 2:
        _ask(entry, f"{step.title} has run far shorter than its earliest end. End it all the same?")


def _follow_at_once(lot: Lot, number: int, at: datetime) -> Lot:
    """Begin the next step where its gap says "at once"."""
    for one in lot.steps[lot.place_of(number) + 1 :]:
        if one.closed or (one.optional and not lot.taken(one)):
            continue
        ready = one.spec.gap.at_once and one.start is None and one.spec.kind is not StepKind.CURE
        return _begin_step(lot, one.number, at) if ready else lot
    return lot


def _tend(lot: Lot, entry: Entry) -> Lot:
    step = _still_open(lot, entry)
    if step.start is None:
        raise Refusal(f"{step.title} of {lot.code} has not begun: start it first. Nothing changed.")
    if entry.at < step.start:
        raise Refusal(f"That is before {step.title} began. Nothing was changed.")
    if any(abs(entry.at - before) < TWICE for before in step.tended):
        _ask(entry, f"{step.title} was tended within the same minute. Once more?")
    return _with(lot, step, tended=tuple(sorted((*step.tended, entry.at))), put_off=None)


def _drying(lot: Lot, entry: Entry) -> LotStep:
    step = _still_open(lot, entry)
    if step.spec.kind is not StepKind.DRY:
        raise Refusal(f"{step.title} is not a drying step; `end` ends it. Nothing was changed.")
    return step


def _dry(lot: Lot, entry: Entry) -> Lot:
    _drying(lot, entry)
    return _end(lot, entry)


def _damp(lot: Lot, entry: Entry) -> Lot:
    step = _drying(lot, entry)
    if step.start is None or entry.at < step.start:
        raise Refusal(f"{step.title} of {lot.code} has not begun by then. Nothing was changed.")
    if any(abs(entry.at - before) < TWICE for before in step.damp):
        _ask(entry, f"{step.title} was said to be damp within the same minute. Once more?")
    return _with(lot, step, damp=tuple(sorted((*step.damp, entry.at))), put_off=None)


def _skip(lot: Lot, entry: Entry) -> Lot:
    step = _still_open(lot, entry)
    if step.spec.kind is StepKind.CURE:
        raise Refusal("A cure is not skipped: record the use, or go on to the next method.")
    # Without its dip a coat has nothing to spin or dry.
    firsts = [one for one in lot.steps if one.coat == step.coat and one.join == step.join]
    whole = step.coat is not None and firsts[0].number == step.number
    if step.spec.kind is StepKind.DRY and not whole and _cures_after(lot, step):
        raise Refusal("A cure counts from dry, so drying is not skipped: mark it dry when it is.")
    reached = lot.state_of(step) is not StepState.AHEAD
    for one in firsts if whole else [step]:
        if not one.closed:
            lot = _with(lot, one, skipped=entry.note)
    return _follow_at_once(lot, step.number, entry.at) if reached and not whole else lot


def _cures_after(lot: Lot, step: LotStep) -> bool:
    return any(one.spec.kind is StepKind.CURE and one.join == step.join for one in lot.steps)


def _repeat(lot: Lot, entry: Entry) -> Lot:
    return repeated(lot, _step(lot, entry))


def _note(lot: Lot, entry: Entry) -> Lot:
    if entry.step is not None:
        lot.step(entry.step)
    seen = entry.data.get("seen")
    return replace(lot, seen=lot.seen | {str(seen)}) if seen else lot


def _put_off(lot: Lot, entry: Entry) -> Lot:
    step = _still_open(lot, entry)
    return _with(lot, step, put_off=datetime.fromisoformat(entry.data["until"]))


def _plan(lot: Lot, entry: Entry) -> Lot:
    at = datetime.fromisoformat(entry.data["planned"])
    return _with(lot, _still_open(lot, entry), plan=at, plan_end=None)


def _use(lot: Lot, entry: Entry) -> Lot:
    if lot.use is not None:
        raise Refusal(f"The use of {lot.code} is recorded already. Undo that first.")
    cure = cure_of(lot)
    if cure is None or not cure.running:
        _ask(entry, f"{lot.code} has no cure running. Record the use all the same?")
        return replace(lot, use=Use(entry.at, entry.note))
    if entry.at < cure.fully_dry:
        raise Refusal(f"{lot.code} was not dry by then. Nothing was changed; give a later time.")
    lot = _with(lot, cure.step, end=entry.at)
    for one in lot.steps:
        if not one.closed and one.optional:
            lot = _with(lot, one, skipped="used before this coat")
    return replace(lot, use=Use(entry.at, entry.note))


def _stop(lot: Lot, entry: Entry) -> Lot:
    return replace(lot, stopped=(entry.at, entry.note))


def _set(lot: Lot, entry: Entry) -> Lot:
    data = {name: value for name, value in entry.data.items() if name not in {"sure", "from"}}
    amounts = data.pop("amounts", None)
    if "grams" in data:
        data["given_grams"] = data.pop("grams")
    if amounts:
        data["amounts_changed"] = {**lot.amounts_changed, **amounts}
    if "cure_days" in data:
        data["cure_join"] = last_cure(lot.methods)
    return replace(lot, **data)


def _milk(lot: Lot, entry: Entry) -> Lot:
    return _with(lot, _step(lot, entry), milk=str(entry.data["milk"]))


def _void(lot: Lot, entry: Entry) -> Lot:  # noqa: ARG001 - every act has the same shape
    return replace(lot, voided=True)


def _go_on(lot: Lot, entry: Entry, book: MethodBook) -> Lot:
    method = method_named(entry.data["method"], book)
    spoils = {bad for old in lot.methods for bad in old.spoiled_by} & set(method.brings)
    if spoils:
        _ask(
            entry,
            f"{method.title} brings {', '.join(sorted(spoils))}, which undoes what "
            f"{lot.method.title} has done. Go on all the same?",
        )
    first = max(step.number for step in lot.steps) + 1
    steps = steps_of(method, join=len(lot.methods), first=first)
    methods = (*lot.methods, method)
    # A view chosen before any method had a cure is meant for the first that has one.
    meant = lot.cure_join if lot.methods[lot.cure_join].cure is not None else last_cure(methods)
    return replace(lot, methods=methods, steps=(*lot.steps, *steps), cure_join=meant)


def _settled(lot: Lot) -> Lot:
    """Let every cure run exactly while its coats are dry and nothing has ended it."""
    for step in lot.steps:
        if step.spec.kind is StepKind.CURE and step.end is None and step.skipped is None:
            dry = fully_dry(lot, step)
            if dry != step.start:
                lot = _with(lot, step, start=dry)
    return lot


_ACTS: Mapping[Act, Callable[[Lot, Entry], Lot]] = {
    Act.START: _start,
    Act.END: _end,
    Act.TEND: _tend,
    Act.DRY: _dry,
    Act.DAMP: _damp,
    Act.SKIP: _skip,
    Act.REPEAT: _repeat,
    Act.NOTE: _note,
    Act.PUTOFF: _put_off,
    Act.USE: _use,
    Act.STOP: _stop,
    Act.PLAN: _plan,
    Act.FOLLOW: follow,
    Act.SET: _set,
    Act.MILK: _milk,
    Act.SPLIT_OFF: parting.split_off,
    Act.SPLIT_FROM: parting.split_from,
    Act.JOIN_INTO: parting.join_into,
    Act.JOIN_FROM: parting.join_from,
    Act.VOID: _void,
    Act.PRINTED: lambda lot, _entry: lot,
}
