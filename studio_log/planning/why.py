"""Why not: the reasons for a late plan, or for none, and ways out that are plans in hand.

Layers, the cheapest first; the first that speaks is the answer: sizes, one lot against the
calendar, the date that is late, and what fails only together. The last is proved by the
optimizer, where there is one (`solver`), and so are the cheapest ways out; without it what is not
known is not claimed.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from studio_log.language.words import listed, tr_later
from studio_log.planning.alone_words import alone_reasons
from studio_log.planning.change_kinds import AddHours, GoalPieces, MoreLine
from studio_log.planning.effort import Effort, not_found
from studio_log.planning.ends import alone_ends
from studio_log.planning.late_ways import in_hand, pieces_of, searched
from studio_log.planning.lates import late_goals
from studio_log.planning.mending import mend
from studio_log.planning.plain_words import counted
from studio_log.planning.problem import THOUSANDTHS, BadProblemError, Plan, Problem
from studio_log.planning.solver import NO_SOLVER, Cheap, Solver
from studio_log.planning.trying import TRIES, Trial, same_places
from studio_log.planning.why_alone import Mend, dead_lots, mends_of
from studio_log.planning.why_joint import joint_reason, read_joint
from studio_log.planning.why_late import late_reasons
from studio_log.planning.why_reasons import Reason, Reasons, Told, capital
from studio_log.planning.why_sizes import misfits

SHORTER: Final = 30
"""Minutes by which longer hours grow until they are enough."""
FEW_TRIES: Final = 3
"""To better the plan of a loosening at first; those that did not help then get more."""
MOST_REASONS: Final = 8


def explain(
    problem: Problem,
    plan: Plan | None,
    effort: Effort,
    told: Told = lambda _: None,
    solver: Solver = NO_SOLVER,
) -> Reasons:
    """Give why the plan is late, or why there is none, and the ways out found until told to stop.

    A plan that is not late has no reasons. What is found is told of as it is: the reasons first.
    """
    trial = Trial(problem, plan, effort.stop, effort.tries or TRIES, effort.seed, told)
    too_small = misfits(problem)
    if too_small:
        trial.say(few(one.reason for one in too_small))
        mend(trial, [(one.lot, one.mends) for one in too_small])
        return trial.so_far
    dead = dead_lots(problem, effort.stop) if plan is None else ()
    if dead:
        trial.say(few(alone_reasons(problem, dead)))
        ways = (mends_of(problem, one, effort.stop, lots=len(dead)) for one in dead)
        mend(trial, [(one.lot.name, own) for one, own in zip(dead, ways, strict=True)])
    elif plan is None or plan.score.late:
        _late_or_open(trial, solver)
    return trial.so_far


def few(reasons: Iterable[Reason]) -> tuple[Reason, ...]:
    """Give the first reasons, and in one how many more there are."""
    every = tuple(reasons)
    first, rest = every[:MOST_REASONS], every[MOST_REASONS:]
    if not rest:
        return first
    lots = tuple(dict.fromkeys(name for one in rest for name in one.lots))
    more = capital(counted(len(rest), _MORE, lots=listed(lots[:20])))
    return (*first, Reason(rest[0].kind, lots, (), more))


_MORE: Final = (
    tr_later("no more reasons of this kind: {lots}."),
    tr_later("one more reason of this kind: {lots}."),
    tr_later("{n} more reasons of this kind: {lots}."),
)


def _late_or_open(trial: Trial, solver: Solver) -> None:
    """Look for what puts dates right: at once, as a solver proves it, by a few tries each, by more.

    What is proved stands before what a plan only shows.
    """
    problem, plan = trial.problem, trial.plan
    if plan is None:
        trial.say((Reason("open", (), (), not_found()),))
    else:
        trial.say(few(late_reasons(problem, plan, alone_ends(problem), trial.stop)))
        for one in in_hand(problem, plan):
            trial.offer(one)
    proved = _joint(trial, solver)
    if proved:
        trial.say((*proved, *(one for one in trial.reasons if one.kind != "open")))
    for cheap in solver.cheapest(problem, plan):
        trial.offer(cheap.changes, FEW_TRIES, cheap)
    _most_pieces(trial)
    left = _offered(trial, trial.likely(searched(problem, plan)), FEW_TRIES)
    _narrow(trial)
    _less_line(trial)
    _where_they_are(trial)
    _offered(trial, left, trial.tries)


def _offered(trial: Trial, some: Iterable[Mend], tries: int) -> list[Mend]:
    """Offer loosenings; gives those that did not help."""
    return [one for one in some if not trial.stop() and trial.offer(one, tries) is None]


def _most_pieces(trial: Trial) -> None:
    """Offer the most pieces of a late goal that a plan has ready, found by halving.

    The plan in hand may have fewer in time than could be: it wanted all of them early.
    """
    late = () if trial.plan is None else late_goals(trial.problem, trial.plan)
    if len(late) != 1:
        return
    goal, low = late[0].goal, late[0].in_time
    left = [count for count in pieces_of(trial.problem, goal) if low < count < goal.pieces]
    while left and not trial.stop():
        half = len(left) // 2
        fewer = (GoalPieces(goal.name, left[half]),)
        found = trial.likely([fewer]) and trial.offer(fewer, whole=True)
        left = left[half + 1 :] if found else left[:half]


def _where_they_are(trial: Trial) -> None:
    """Offer what puts dates right with every step where a way out has it."""
    for way in list(trial.found):
        there = None if trial.stop() else same_places(trial.problem, way.plan)
        if there is not None:
            for changes in in_hand(trial.problem, there):
                trial.offer(changes, FEW_TRIES, Cheap(changes, there), whole=True)


def _less_line(trial: Trial) -> None:
    """Offer fewer metres of line than those that put all dates right, found by halving."""
    lines = [change.metres for way in trial.found for change in way.changes
             if isinstance(change, MoreLine) and len(way.changes) == 1
             and not way.plan.score.late]  # fmt: skip
    low, high = 0, min(lines, default=0) // THOUSANDTHS
    while high - low > 1 and not trial.stop():
        half = (low + high) // 2
        found = trial.offer((MoreLine(half * THOUSANDTHS),), whole=True)
        low, high = (low, half) if found else (half, high)


def _narrow(trial: Trial) -> None:
    """Try shorter hours than those that put all dates right."""
    for way in list(trial.found):
        for change in way.changes:
            if not isinstance(change, AddHours) or len(way.changes) > 1 or way.plan.score.late:
                continue
            for ends in range(change.begins + SHORTER, change.ends, SHORTER):
                shorter = replace(change, ends=ends)
                found = None if trial.stop() else trial.offer((shorter,), FEW_TRIES)
                if found is not None and not found.plan.score.late:
                    break


def _joint(trial: Trial, solver: Solver) -> tuple[Reason, ...]:
    """Give what is proved to fail only together; so many pieces as can be ready are a way out."""
    problem, found = trial.problem, solver.joint(trial.problem, trial.plan)
    try:
        joint = None if found is None else read_joint(problem, found)
        if joint is None:
            return ()
        if joint.goal is not None and joint.possible:
            trial.offer((GoalPieces(joint.goal, joint.possible),))
        return (joint_reason(problem, joint),)
    except BadProblemError:
        return ()  # what another process says and makes no sense here is not said on
