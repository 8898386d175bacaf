"""The third layer: a date that a plan misses, by how much, and through which lots."""

from typing import Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.lates import LateGoal, late_dues, late_goals
from studio_log.planning.plain_words import PIECES, about_words, counted, moment_words
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
        words = tr(
            "{lot} misses its date, {due}, by {late}: it is over on {end}.",
            lot=capital(lot.name),
            due=moment_words(problem.clock, due),
            late=about_words(end - due),
            end=moment_words(problem.clock, end),
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
    words = tr(
        _CURED if goal.cured else _READY,
        goal=capital(goal.name),
        date=moment_words(clock, goal.at),
        late=about_words(one.last - goal.at),
        pieces=counted(one.pieces, PIECES),
        lots=listed(order),
        last=moment_words(clock, one.last),
        rest=counted(one.in_time, PIECES),
    )
    hopeless = [name for name in order if alone.get(name, 0) + goal.cured > goal.at]
    if hopeless:
        words += f" {_even_alone(hopeless)}"
    others = [name for name in order if name not in hopeless]
    words += _beside(problem, plan, others, goal.at - goal.cured, stop)
    return Reason("late", tuple(order), (), words)


_CURED: Final = tr_later(
    "{goal} on {date} is out of reach by {late}: {pieces} of {lots} would be cured by {last}, "
    "{rest} in time."
)
_READY: Final = tr_later(
    "{goal} on {date} is out of reach by {late}: {pieces} of {lots} would be ready by {last}, "
    "{rest} in time."
)


def _beside(problem: Problem, plan: Plan, names: list[str], by: int, stop: Stop) -> str:
    """Say what the first of some lots lacks to be taken down by a minute; "" where not known."""
    for name in names[:MOST_LOOKED]:
        found = beside(problem, plan, name, by, stop)
        if found is not None:
            return f" {beside_words(problem, found)}"
    return ""


def _even_alone(names: list[str]) -> str:
    said = capital(listed(names))
    return tr("{lots} would be late even if everything else were free.", lots=said)
