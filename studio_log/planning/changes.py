"""Makes another problem of a problem and a change; the first stays as it is.

What cannot be made, such as taking away a vessel that is not there, is a `BadProblemError` with a
sentence. A limit that is a rule is never made longer.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import date, datetime, time
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    AddVessel,
    Change,
    CloseDay,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LaterRelease,
    LeaveOut,
    LongerLink,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreDays,
    MoreHands,
    MoreLine,
    RemoveVessel,
)
from studio_log.planning.pieces import shortage
from studio_log.planning.plain_words import DAY, long_day
from studio_log.planning.problem import (
    MOST_DAYS,
    MOST_SLOTS,
    THOUSANDTHS,
    BadProblemError,
    Goal,
    Link,
    Lot,
    Problem,
    Step,
    Vessel,
)
from studio_log.planning.vessel_words import store_words

MOST_GOALS: Final = 8
MOST_VESSELS: Final = 60
MOST_HANDS: Final = 20
Hours = tuple[tuple[int, int], ...]


def apply_change(problem: Problem, change: Change) -> Problem:
    """Give the problem as the change makes it; BadProblemError where it cannot be made."""
    return _APPLY[type(change)](problem, change)


def apply_changes(problem: Problem, changes: tuple[Change, ...]) -> Problem:
    """Give the problem as several changes make it, one after the other."""
    for one in changes:
        problem = apply_change(problem, one)
    return problem


def changed_if_can(problem: Problem, changes: tuple[Change, ...]) -> Problem | None:
    """Give the problem as changes make it; None where they cannot be made."""
    try:
        return apply_changes(problem, changes)
    except BadProblemError:
        return None


def without_lots(problem: Problem, names: Iterable[str]) -> Problem:
    """Give the problem without some lots, each perhaps named more than once."""
    return apply_changes(problem, tuple(LeaveOut(name) for name in dict.fromkeys(names)))


# -- things ------------------------------------------------------------------------------


def _add_vessel(problem: Problem, change: AddVessel) -> Problem:
    if change.kind in problem.stores:
        raise _refused(tr_later("{kind} is no kind of vessel."), kind=store_words(change.kind))
    if len(problem.vessels) >= MOST_VESSELS:
        raise _refused(
            tr_later("There are {n} vessels already; no more are planned with."), n=MOST_VESSELS
        )
    taken = {one.name for one in problem.vessels}
    free = (f"{change.kind} +{n}" for n in range(1, len(taken) + 2))
    name = next(one for one in free if one not in taken)
    return replace(problem, vessels=(*problem.vessels, Vessel(name, change.kind, change.size)))


def _remove_vessel(problem: Problem, change: RemoveVessel) -> Problem:
    kept = tuple(one for one in problem.vessels if one.name != change.vessel)
    if len(kept) == len(problem.vessels):
        raise _refused(tr_later("There is no vessel {vessel}."), vessel=change.vessel)
    return replace(problem, vessels=kept)


def _more_of(problem: Problem, store: str, much: int) -> Problem:
    held = problem.stores.get(store, 0) + much
    if held < 0:
        raise _refused(
            tr_later("There is not so much of {store} that could go."), store=store_words(store)
        )
    return replace(problem, stores={**problem.stores, store: held})


def _more_line(problem: Problem, change: MoreLine) -> Problem:
    return _more_of(problem, "line", change.metres)


def _more_burners(problem: Problem, change: MoreBurners) -> Problem:
    return _more_of(problem, "burner", change.burners * THOUSANDTHS)


def _more_hands(problem: Problem, change: MoreHands) -> Problem:
    pairs = problem.stores.get("hands", THOUSANDTHS) // THOUSANDTHS + change.hands
    if not 1 <= pairs <= MOST_HANDS:
        raise _refused(tr_later("A plan is for 1 to {n} pairs of hands."), n=MOST_HANDS)
    return _more_of(problem, "hands", change.hands * THOUSANDTHS)


# -- hours -------------------------------------------------------------------------------


def with_stretch(hours: Hours, begins: int, ends: int) -> Hours:
    """Give hours with one more stretch; those it meets become one with it."""
    met = [one for one in hours if one[0] <= ends and begins <= one[1]]
    whole = (min((begins, *(one[0] for one in met))), max((ends, *(one[1] for one in met))))
    return tuple(sorted((*(one for one in hours if one not in met), whole)))


def _on_day(problem: Problem, day: date, hours: Hours) -> Problem:
    minute = problem.clock.minute(datetime.combine(day, time()))
    if minute + DAY < 0 or minute >= problem.horizon:
        raise _refused(
            tr_later("{day} {year} is no day of the time that is planned."),
            day=long_day(day),
            year=day.year,
        )
    calendar = problem.calendar
    exceptions = {**calendar.exceptions, day: hours}
    return replace(problem, calendar=replace(calendar, exceptions=exceptions))


def _add_session(problem: Problem, change: AddSession) -> Problem:
    hours = with_stretch(problem.calendar.on(change.day), change.begins, change.ends)
    return _on_day(problem, change.day, hours)


def _close_day(problem: Problem, change: CloseDay) -> Problem:
    return _on_day(problem, change.day, ())


def _add_hours(problem: Problem, change: AddHours) -> Problem:
    calendar = problem.calendar
    working = tuple(
        with_stretch(hours, change.begins, change.ends) if day in change.weekdays else hours
        for day, hours in enumerate(calendar.working)
    )
    return replace(problem, calendar=replace(calendar, working=working))


def _more_days(problem: Problem, change: MoreDays) -> Problem:
    horizon = problem.horizon + change.days * DAY
    if horizon > MOST_DAYS * DAY or horizon // problem.grid > MOST_SLOTS:
        raise _refused(
            tr_later("A plan cannot reach so far ahead; take a coarser grid or fewer days.")
        )
    return replace(problem, horizon=horizon)


# -- limits ------------------------------------------------------------------------------


def _longer_step(problem: Problem, change: LongerStep) -> Problem:
    lot, step = _step_of(problem, change.lot, change.step)
    if step.most is None:
        raise _refused(
            tr_later("{step} of {lot} has no longest time."), step=step.name, lot=lot.name
        )
    if step.limit == "rule":
        raise _refused(
            tr_later("The longest time of {step} of {lot} is a rule."), step=step.name, lot=lot.name
        )
    return _with_step(problem, lot, replace(step, most=step.most + change.minutes))


def _longer_pause(problem: Problem, change: LongerPause) -> Problem:
    lot, step = _step_of(problem, change.lot, change.step)
    if step.pause_rule:
        raise _refused(
            tr_later("How soon something follows {step} of {lot} is a rule."),
            step=step.name,
            lot=lot.name,
        )
    return _with_step(problem, lot, replace(step, then_within=step.then_within + change.minutes))


def _longer_link(problem: Problem, change: LongerLink) -> Problem:
    lot = lot_of(problem, change.lot)
    meant = [one for one in lot.links if link_ends(one) == (change.first, change.second)]
    if not meant:
        raise _refused(
            tr_later("{lot} has no limit from {first} to {second}."),
            lot=lot.name,
            first=change.first,
            second=change.second,
        )
    if any(one.limit == "rule" for one in meant):
        raise _refused(
            tr_later("The limit of {lot} from {first} to {second} is a rule."),
            lot=lot.name,
            first=change.first,
            second=change.second,
        )
    links = tuple(
        replace(one, most=one.most + change.minutes) if one in meant else one for one in lot.links
    )
    return _with_lot(problem, replace(lot, links=links))


def link_ends(link: Link) -> tuple[str, str]:
    """Give the two moments of a link as the file names them: "dip 2.end"."""
    return (
        f"{link.first}.{'end' if link.first_end else 'start'}",
        f"{link.second}.{'end' if link.second_end else 'start'}",
    )


# -- goals and lots ----------------------------------------------------------------------


def _later_goal(problem: Problem, change: LaterGoal) -> Problem:
    goal = goal_of(problem, change.goal)
    return _with_goal(problem, goal, replace(goal, at=goal.at + change.minutes))


def _goal_pieces(problem: Problem, change: GoalPieces) -> Problem:
    goal = goal_of(problem, change.goal)
    changed = [replace(goal, pieces=change.pieces)] if change.pieces else []
    made = _with_goal(problem, goal, *changed)
    if shortage(made.goals, {one.name: one.pieces for one in made.lots}) is not None:
        raise _refused(
            tr_later("The lots hold fewer than {n} pieces for {goal}."),
            n=change.pieces,
            goal=goal.name,
        )
    return made


def _goal_cured(problem: Problem, change: GoalCured) -> Problem:
    goal = goal_of(problem, change.goal)
    if change.pieces > goal.pieces:
        raise _refused(
            tr_later("{goal} wants {n} pieces, not {more} or more."),
            goal=goal.name,
            n=goal.pieces,
            more=change.pieces,
        )
    if change.pieces == goal.pieces:
        return _with_goal(problem, goal, replace(goal, cured=change.days * DAY))
    if len(problem.goals) >= MOST_GOALS:
        raise _refused(
            tr_later("There are {n} goals already; no more are planned with."), n=MOST_GOALS
        )
    name = tr("{goal}, {n} days cured", goal=goal.name, n=change.days)
    if any(one.name == name for one in problem.goals):
        raise _refused(tr_later("{goal} is a goal already."), goal=name)
    other = replace(goal, name=name, pieces=change.pieces, cured=change.days * DAY)
    rest = replace(goal, pieces=goal.pieces - change.pieces)
    return _with_goal(problem, goal, rest, other)


def _leave_out(problem: Problem, change: LeaveOut) -> Problem:
    lot_of(problem, change.lot)
    lots = tuple(one for one in problem.lots if one.name != change.lot)
    goals = tuple(
        replace(one, lots=tuple(name for name in one.lots if name != change.lot))
        for one in problem.goals
    )
    goals = _affordable(goals, lots)
    return replace(problem, lots=lots, goals=goals)


def _affordable(goals: tuple[Goal, ...], lots: tuple[Lot, ...]) -> tuple[Goal, ...]:
    """Let goals want no more than there is; the latest gives way first, and one of none goes."""
    pieces = {one.name: one.pieces for one in lots}
    while (found := shortage(goals, pieces)) is not None:
        some, missing = found
        latest = max(some, key=lambda one: one.at)
        fewer = replace(latest, pieces=max(0, latest.pieces - missing))
        changed = tuple(fewer if one is latest else one for one in goals)
        goals = tuple(one for one in changed if one.pieces)
    return goals


def _later_release(problem: Problem, change: LaterRelease) -> Problem:
    lot = lot_of(problem, change.lot)
    return _with_lot(problem, replace(lot, release=lot.release + change.minutes))


def _later_due(problem: Problem, change: LaterDue) -> Problem:
    lot = lot_of(problem, change.lot)
    if lot.due is None:
        raise _refused(tr_later("{lot} has no date of its own."), lot=lot.name)
    return _with_lot(problem, replace(lot, due=lot.due + change.minutes))


# -- finding -----------------------------------------------------------------------------


def _refused(text: str, /, **values: object) -> BadProblemError:
    return BadProblemError((tr(text, **values) if values else tr(text),))


def lot_of(problem: Problem, name: str) -> Lot:
    """Give a lot by its name; BadProblemError if there is none."""
    found = next((one for one in problem.lots if one.name == name), None)
    if found is None:
        raise _refused(tr_later("There is no lot {lot}."), lot=name)
    return found


def goal_of(problem: Problem, name: str) -> Goal:
    """Give a goal by its name; BadProblemError if there is none."""
    found = next((one for one in problem.goals if one.name == name), None)
    if found is None:
        raise _refused(tr_later("There is no goal {goal}."), goal=name)
    return found


def _step_of(problem: Problem, name: str, step: str) -> tuple[Lot, Step]:
    lot = lot_of(problem, name)
    found = next((one for one in lot.steps if one.name == step), None)
    if found is None:
        raise _refused(tr_later("{lot} has no step {step}."), lot=name, step=step)
    return lot, found


def _with_lot(problem: Problem, lot: Lot) -> Problem:
    lots = tuple(lot if one.name == lot.name else one for one in problem.lots)
    return replace(problem, lots=lots)


def _with_step(problem: Problem, lot: Lot, step: Step) -> Problem:
    steps = tuple(step if one.name == step.name else one for one in lot.steps)
    return _with_lot(problem, replace(lot, steps=steps))


def _with_goal(problem: Problem, goal: Goal, *instead: Goal) -> Problem:
    at = problem.goals.index(goal)
    return replace(problem, goals=(*problem.goals[:at], *instead, *problem.goals[at + 1 :]))


_APPLY: Final[dict[type, Callable[..., Problem]]] = {
    AddVessel: _add_vessel, RemoveVessel: _remove_vessel, MoreLine: _more_line,
    MoreBurners: _more_burners, AddSession: _add_session, CloseDay: _close_day,
    AddHours: _add_hours, LongerStep: _longer_step, LongerPause: _longer_pause,
    LongerLink: _longer_link, LaterGoal: _later_goal, GoalPieces: _goal_pieces,
    GoalCured: _goal_cured, LeaveOut: _leave_out, LaterRelease: _later_release,
    LaterDue: _later_due, MoreDays: _more_days, MoreHands: _more_hands,
}  # fmt: skip
