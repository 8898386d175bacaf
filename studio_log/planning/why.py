"""Why not: the reasons for a late plan, or for none, and ways out that are plans in hand.

Layers, the cheapest first; the first that speaks is the answer: sizes, one lot against the
calendar, the date that is late, and what fails only together. The last is proved by the
optimizer, where there is one (`joint`); without it what is not known is not claimed.
"""

from collections.abc import Callable, Iterable, Sequence
from itertools import product
from typing import Any, Final

from studio_log.planning.alone_words import alone_reason
from studio_log.planning.change_kinds import LeaveOut
from studio_log.planning.effort import NOT_FOUND, Effort
from studio_log.planning.ends import alone_ends
from studio_log.planning.late_ways import in_hand, searched
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.trying import TRIES, Trial
from studio_log.planning.why_alone import Mend, dead_lots, mends_of
from studio_log.planning.why_joint import joint_reason, read_joint
from studio_log.planning.why_late import late_reasons
from studio_log.planning.why_reasons import Reason, Reasons, Told, in_order
from studio_log.planning.why_sizes import misfits

FEW_LOTS: Final = 3
"""Up to so many failing lots, each of their mends is joined with each of the others'."""
MOST_TOGETHER: Final = 12
"""Combinations of mends that are planned, where several lots want one each."""
FEW_TRIES: Final = 3
"""To better the plan of a loosening at first; those that did not help then get more."""
MOST_EACH: Final = 5
"""Mends of one lot that are planned."""
Joints = Callable[[Problem, Plan | None], Any]
"""Gives the JSON of a conflict that is proved, or None; see `why_joint`."""


def nothing_proved(_problem: Problem, _plan: Plan | None) -> None:
    """Stand in for the optimizer where there is none."""


def explain(
    problem: Problem,
    plan: Plan | None,
    effort: Effort,
    told: Told = lambda _: None,
    joint: Joints = nothing_proved,
) -> Reasons:
    """Give why the plan is late, or why there is none, and the ways out found until told to stop.

    A plan that is not late has no reasons. Each way out is told of as it is found.
    """
    trial = Trial(problem, plan, effort.stop, effort.tries or TRIES, effort.seed, told)
    too_small = misfits(problem)
    if too_small:
        _mend(trial, [(one.lot, one.mends) for one in too_small])
        return Reasons(tuple(one.reason for one in too_small), in_order(trial.found))
    dead = dead_lots(problem, effort.stop) if plan is None else ()
    if dead:
        _mend(
            trial,
            [(one.lot.name, mends_of(problem, one, effort.stop, lots=len(dead))) for one in dead],
        )
        reasons = tuple(alone_reason(problem, one) for one in dead)
        return Reasons(reasons, in_order(trial.found))
    if plan is not None and not plan.score.late:
        return Reasons()
    return _late_or_open(trial, joint)


def _mend(trial: Trial, some: Sequence[tuple[str, Iterable[Mend]]]) -> None:
    """Try what mends the lots that fail: one mend for all of them, or one for each.

    A lot may also be left out; but some lot has to be left to plan.
    """
    problem = trial.problem
    mends = [_cheapest(problem, one) for _, one in some]
    tried = dict.fromkeys(one for own in mends for one in own)
    names = [name for name, _ in some]
    outs: list[Mend] = [(LeaveOut(name),) for name in names]
    if len(names) <= FEW_LOTS:
        ways = list(product(*([*own, out] for own, out in zip(mends, outs, strict=True))))
    else:
        ways = [tuple(own[0] if own else out for own, out in zip(mends, outs, strict=True))]
        ways.append(tuple(outs))
    together = {_joined(one): None for one in ways}
    order = sorted(together, key=lambda one: price_of(problem, one)[0])
    tried |= dict.fromkeys(order[:MOST_TOGETHER])
    tried |= dict.fromkeys([_joined(outs)])
    for mend in tried:
        if trial.stop():
            return
        if sum(isinstance(one, LeaveOut) for one in mend) < len(problem.lots):
            trial.offer(mend)


def _joined(mends: Iterable[Mend]) -> Mend:
    """Join mends into one; what stands in several of them is done once."""
    return tuple(dict.fromkeys(one for mend in mends for one in mend))


def _cheapest(problem: Problem, mends: Iterable[Mend]) -> list[Mend]:
    """Give the mends that cost least of those that are enough for one lot."""
    found = sorted(dict.fromkeys(mends), key=lambda one: price_of(problem, one)[0])
    return found[:MOST_EACH]


def _late_or_open(trial: Trial, joint: Joints) -> Reasons:
    problem, plan = trial.problem, trial.plan
    proved = _joint(problem, plan, joint)
    if plan is None:
        reasons = proved or (Reason("open", (), (), NOT_FOUND),)
    else:
        reasons = (*proved, *late_reasons(problem, plan, alone_ends(problem)))
        for mend in in_hand(problem, plan):
            trial.offer(mend)
    left = trial.likely(searched(problem, plan))
    for tries in (FEW_TRIES, trial.tries):
        left = [one for one in left if not trial.stop() and trial.offer(one, tries) is None]
    return Reasons(reasons, in_order(trial.found))


def _joint(problem: Problem, plan: Plan | None, joint: Joints) -> tuple[Reason, ...]:
    found = joint(problem, plan)
    try:
        return () if found is None else (joint_reason(problem, read_joint(problem, found)),)
    except BadProblemError:
        return ()  # what another process says and makes no sense here is not said on
