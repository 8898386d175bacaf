"""The third layer: a date that a plan misses, by how much, and through which lots."""

from dataclasses import dataclass

from studio_log.planning.ends import end_of
from studio_log.planning.plain_words import (
    about_words,
    counted,
    listed,
    moment_words,
)
from studio_log.planning.problem import Goal, Lot, Plan, Problem
from studio_log.planning.why_reasons import Reason, capital


@dataclass(frozen=True, slots=True)
class LateGoal:
    """A goal that a plan misses: when each of its lots is cured, those in time left out."""

    goal: Goal
    in_time: int
    """Pieces cured by the date."""
    late: dict[str, int]
    """By lot: the minute at which its pieces are cured."""
    pieces: int
    """Of those lots."""

    @property
    def last(self) -> int:
        """Give the minute at which the last of its pieces is cured."""
        return max(self.late.values())


def late_goals(problem: Problem, plan: Plan) -> tuple[LateGoal, ...]:
    """Give the goals that a plan misses."""
    found = []
    for goal in problem.goals:
        served = plan.serves.get(goal.name, {})
        cured = {
            lot.name: end_of(lot, plan) + goal.cured for lot in problem.lots if served.get(lot.name)
        }
        late = {name: at for name, at in cured.items() if at > goal.at}
        if late:
            missed = sum(served[name] for name in late)
            found.append(LateGoal(goal, goal.pieces - missed, late, missed))
    return tuple(found)


def late_dues(problem: Problem, plan: Plan) -> tuple[tuple[Lot, int], ...]:
    """Give the lots that miss their own date, and the minute at which they are over."""
    ends = {name: max(one.end for one in own.values()) for name, own in plan.spans.items() if own}
    return tuple(
        (lot, ends[lot.name])
        for lot in problem.lots
        if lot.due is not None and ends.get(lot.name, lot.due) > lot.due
    )


def minutes_late(problem: Problem, plan: Plan) -> int:
    """Give by how much all dates are missed together, no lot weighing more than another."""
    goals = sum(one.last - one.goal.at for one in late_goals(problem, plan))
    return goals + sum(end - (lot.due or 0) for lot, end in late_dues(problem, plan))


def late_reasons(problem: Problem, plan: Plan, alone: dict[str, int]) -> tuple[Reason, ...]:
    """Give a reason for each date missed; `alone` has the ends of lots with the studio to itself.

    What no plan could do, since a lot is late even alone, is said as what it is.
    """
    found = [_goal_reason(problem, one, alone) for one in late_goals(problem, plan)]
    for lot, end in late_dues(problem, plan):
        due = lot.due or 0
        words = (
            f"{capital(lot.name)} misses its date, {moment_words(problem.clock, due)}, by "
            f"{about_words(end - due)}: it is over on {moment_words(problem.clock, end)}."
        )
        cure = lot.steps[-1].least if lot.steps[-1].cure else 0
        if alone.get(lot.name, 0) + cure > due:
            words += f" {_even_alone([lot.name])}"
        found.append(Reason("late", (lot.name,), (), words))
    return tuple(found)


def _goal_reason(problem: Problem, one: LateGoal, alone: dict[str, int]) -> Reason:
    goal, clock = one.goal, problem.clock
    order = sorted(one.late, key=lambda name: one.late[name])
    pieces = counted(one.pieces, "piece")
    ready = "cured" if goal.cured else "ready"
    words = (
        f"{capital(goal.name)} on {moment_words(clock, goal.at)} is out of reach by "
        f"{about_words(one.last - goal.at)}: {pieces} of {listed(order)} would be {ready} by "
        f"{moment_words(clock, one.last)}, {counted(one.in_time, 'piece')} in time."
    )
    hopeless = [name for name in order if alone.get(name, 0) + goal.cured > goal.at]
    if hopeless:
        words += f" {_even_alone(hopeless)}"
    return Reason("late", tuple(order), (), words)


def _even_alone(names: list[str]) -> str:
    return f"{capital(listed(names))} would be late even if everything else were free."


def late_names(problem: Problem, plan: Plan) -> set[str]:
    """Give the lots through which any date is late."""
    late = {name for one in late_goals(problem, plan) for name in one.late}
    return late | {lot.name for lot, _ in late_dues(problem, plan)}
