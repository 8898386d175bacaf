"""The third layer: a date that a plan misses, by how much, and through which lots."""

from typing import Final

from studio_log.planning.lates import LateGoal, late_dues, late_goals
from studio_log.planning.plain_words import (
    about_words,
    counted,
    listed,
    moment_words,
)
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.why_beside import Stop, beside, beside_words
from studio_log.planning.why_reasons import Reason, capital

MOST_LOOKED: Final = 3
"""Late lots of a date of which it is looked what they lack: each takes a placing for each thing."""


def late_reasons(
    problem: Problem, plan: Plan, alone: dict[str, int], stop: Stop = lambda: False
) -> tuple[Reason, ...]:
    """Give a reason for each date missed; `alone` has the ends of lots with the studio to itself.

    What no plan could do, since a lot is late even alone, is said as what it is.
    """
    found = [_goal_reason(problem, plan, one, alone, stop) for one in late_goals(problem, plan)]
    for lot, end in late_dues(problem, plan):
        due = lot.due or 0
        words = (
            f"{capital(lot.name)} misses its date, {moment_words(problem.clock, due)}, by "
            f"{about_words(end - due)}: it is over on {moment_words(problem.clock, end)}."
        )
        cure = lot.steps[-1].least if lot.steps[-1].cure else 0
        if alone.get(lot.name, 0) + cure > due:
            words += f" {_even_alone([lot.name])}"
        else:
            words += _beside(problem, plan, [lot.name], due - cure, stop)
        found.append(Reason("late", (lot.name,), (), words))
    return tuple(found)


def _goal_reason(
    problem: Problem, plan: Plan, one: LateGoal, alone: dict[str, int], stop: Stop
) -> Reason:
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
    others = [name for name in order if name not in hopeless]
    words += _beside(problem, plan, others, goal.at - goal.cured, stop)
    return Reason("late", tuple(order), (), words)


def _beside(problem: Problem, plan: Plan, names: list[str], by: int, stop: Stop) -> str:
    """Say what the first of some lots lacks to be taken down by a minute; "" where not known."""
    for name in names[:MOST_LOOKED]:
        found = beside(problem, plan, name, by, stop)
        if found is not None:
            return f" {beside_words(problem, found)}"
    return ""


def _even_alone(names: list[str]) -> str:
    return f"{capital(listed(names))} would be late even if everything else were free."
