"""A plan against an older one, in words for the dyer: what matters most comes first.

Both plans have their minutes from the start of the same problem, the one of today.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.engine import Studio
from studio_log.planning.grip import BadMoveError, Grip, take_over
from studio_log.planning.late_words import span_words
from studio_log.planning.lates import Late, lates
from studio_log.planning.old_plan import old_of
from studio_log.planning.plain_words import number_words
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.reasons import moment_said, reason
from studio_log.planning.sessions import sessions_of
from studio_log.planning.vessel_words import vessel_words

Kind = Literal["late", "gone", "new", "moved", "sessions", "vessel", "stays"]
MOST_OF_A_LOT: Final = 3
"""Visits of one lot that are told one by one; of more, the first is told."""
MOST_MOVED: Final = 8
"""Sentences about moved visits; what is left is counted."""


@dataclass(frozen=True, slots=True)
class Difference:
    """One sentence; `lots` are those it speaks of."""

    kind: Kind
    words: str
    lots: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Moved:
    """A visit that the new plan has at another time; minutes of its first step in both plans."""

    lot: str
    steps: tuple[str, ...]
    old: int
    new: int
    why: str


def differences(problem: Problem, old: Plan, new: Plan) -> tuple[Difference, ...]:
    """Give what is otherwise in a new plan, most important first; it is never empty."""
    moves = moved_visits(problem, old, new)
    found = [*_late(problem, old, new), *_lots(problem, old, new), *_sessions(problem, old, new)]
    found += [*_moved(problem, moves), *_vessels(problem, old, new)]
    if not found:
        return (Difference("stays", tr("Everything stays as it was planned.")),)
    if any(one.kind in {"moved", "vessel", "gone", "new"} for one in found):
        rest = tr("Everything else stays.") if _anything_stays(problem, old, new) else ""
        return (*found, Difference("stays", rest)) if rest else tuple(found)
    return tuple(found)


# -- dates and lots ----------------------------------------------------------------------


def _late(problem: Problem, old: Plan, new: Plan) -> Iterator[Difference]:
    """Tell which dates are late, more or less so, or no more."""
    before = {one.what: one for one in lates(problem, old)}
    after = {one.what: one for one in lates(problem, new)}
    changed = [
        (name, before.get(name), after.get(name))
        for name in dict.fromkeys([*after, *before])
        if _minutes(before.get(name)) != _minutes(after.get(name))
    ]
    for name, was, now in sorted(changed, key=lambda row: _minutes(row[1]) - _minutes(row[2])):
        lots = (now or was or Late(name, 0, ())).lots
        yield Difference("late", _late_words(name, was, now), lots)


def _late_words(name: str, was: Late | None, now: Late | None) -> str:
    before = span_words(_minutes(was))
    if now is None:
        return tr("{what} is no longer late; it was {before} late.", what=name, before=before)
    through = now.lots != (name,)
    text = _LATE[through, was is None]
    span, lots = span_words(now.minutes), listed(now.lots)
    return tr(text, what=name, span=span, lots=lots, before=before)


_LATE: Final = {
    (False, True): tr_later("{what} is {span} late; it was in time."),
    (False, False): tr_later("{what} is {span} late; it was {before} late."),
    (True, True): tr_later("{what} is {span} late through {lots}; it was in time."),
    (True, False): tr_later("{what} is {span} late through {lots}; it was {before} late."),
}
"""By whether lots are told of, and whether it was in time."""


def _minutes(late: Late | None) -> int:
    return 0 if late is None else late.minutes


def _lots(problem: Problem, old: Plan, new: Plan) -> Iterator[Difference]:
    """Tell which lots are planned for the first time, and which no more.

    A lot whose last step runs, as cloth that cures, has nothing that could be planned.
    """
    gone = tuple(name for name in old.spans if name not in {lot.name for lot in problem.lots})
    fresh = tuple(
        name
        for name, own in new.spans.items()
        if name not in old.spans and any(span.start >= 0 for span in own.values())
    )
    if gone:
        several = tr_later("{lots} are no longer planned.")
        text = tr_later("{lots} is no longer planned.") if len(gone) == 1 else several
        yield Difference("gone", tr(text, lots=listed(gone)), gone)
    if fresh:
        several = tr_later("{lots} are planned for the first time.")
        text = tr_later("{lots} is planned for the first time.") if len(fresh) == 1 else several
        yield Difference("new", tr(text, lots=listed(fresh)), fresh)


# -- visits ------------------------------------------------------------------------------


def moved_visits(problem: Problem, old: Plan, new: Plan) -> list[Moved]:
    """Give the visits by hand that are at another time, by their new times, and why.

    The reason is what stands in the way at the old time, everything else being as in the new
    plan; "" where nothing does.
    """
    studio = Studio(problem, lambda: False)
    try:
        take_over(studio, new)
    except BadMoveError:
        return []
    found: list[Moved] = []
    for name, chain in studio.chains.items():
        placement = studio.board.take(name)
        was = old_of(chain, problem, old, past=True).slots
        for number, visit in enumerate(chain.visits):
            slot, at = was[number], placement.starts[number]
            if visit.length and slot is not None and slot != at:
                why = reason(Grip(studio, chain, placement, number, 0), slot)
                steps = tuple(step for step, _ in visit.steps)
                grid = problem.grid
                found.append(Moved(name, steps, slot * grid, at * grid, why))
        studio.board.put(name, placement)
    return sorted(found, key=lambda one: (one.new, one.lot))


def _moved(problem: Problem, moves: list[Moved]) -> Iterator[Difference]:
    by_lot: dict[str, list[Moved]] = {}
    for one in moves:
        by_lot.setdefault(one.lot, []).append(one)
    said = []
    for one in moves:
        own = by_lot[one.lot]
        if len(own) <= MOST_OF_A_LOT:
            text = tr_later("Moved: {lot}'s {steps} from {old} to {new}, because {why}.")
            plain = tr_later("Moved: {lot}'s {steps} from {old} to {new}.")
            said.append(_move(problem, one, text if one.why else plain, listed(one.steps)))
        elif one is own[0]:
            text = tr_later(
                "Moved: {n} visits of {lot}, the first from {old} to {new}, because {why}."
            )
            plain = tr_later("Moved: {n} visits of {lot}, the first from {old} to {new}.")
            many = number_words(len(own))
            said.append(_move(problem, one, text if one.why else plain, n=many))
    yield from said[:MOST_MOVED]
    rest = said[MOST_MOVED:]
    if rest:
        lots = tuple(dict.fromkeys(lot for one in rest for lot in one.lots))
        yield Difference("moved", tr("Moved besides: visits of {lots}.", lots=listed(lots)), lots)


def _move(problem: Problem, one: Moved, text: str, steps: str = "", n: str = "") -> Difference:
    old, new = moment_said(problem, one.old), moment_said(problem, one.new)
    words = tr(text, lot=one.lot, steps=steps, n=n, old=old, new=new, why=one.why)
    return Difference("moved", words, (one.lot,))


def _anything_stays(problem: Problem, old: Plan, new: Plan) -> bool:
    """Say whether a step by hand is in both plans at the same time."""
    return any(
        step.hands and old.spans.get(lot.name, {}).get(step.name) == span
        for lot in problem.lots
        for step in lot.steps
        if (span := new.spans.get(lot.name, {}).get(step.name)) is not None
    )


def _sessions(problem: Problem, old: Plan, new: Plan) -> Iterator[Difference]:
    """Tell how often somebody has to come; of the old plan, what is still to come counts."""
    lots = {lot.name for lot in problem.lots}
    spans = {
        name: {step: span for step, span in own.items() if span.start >= 0}
        for name, own in old.spans.items()
        if name in lots
    }
    was = len(sessions_of(problem, Plan(spans, {}, {}, old.score)))
    now = new.score.sessions
    if was != now:
        words = tr("You come in {times} instead of {was}.", times=times(now), was=was)
        yield Difference("sessions", words)


def times(number: int) -> str:
    """Give "once", "twice", "14 times"."""
    text = {1: tr_later("once"), 2: tr_later("twice")}.get(number, tr_later("{n} times"))
    return tr(text, n=number)


def _vessels(problem: Problem, old: Plan, new: Plan) -> Iterator[Difference]:
    """Tell which steps by hand are in another vessel, those of a lot together."""
    for lot in problem.lots:
        other: dict[tuple[str, str], list[str]] = {}
        for step in lot.steps:
            was = old.vessels.get(lot.name, {}).get(step.name, {})
            now = new.vessels.get(lot.name, {}).get(step.name, {})
            for kind in now:
                if step.hands is not None and was.get(kind, now[kind]) != now[kind]:
                    other.setdefault((was[kind], now[kind]), []).append(step.name)
        for (left, taken), steps in other.items():
            several = tr_later("{lot}'s {steps} are in {taken} instead of {left}.")
            one = tr_later("{lot}'s {steps} is in {taken} instead of {left}.")
            words = tr(
                one if len(steps) == 1 else several,
                lot=lot.name,
                steps=listed(steps),
                taken=vessel_words(taken),
                left=vessel_words(left),
            )
            yield Difference("vessel", words, (lot.name,))
