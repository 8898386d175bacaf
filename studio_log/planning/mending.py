"""Tries what mends lots that have no place: one mend for all of them, or one for each."""

from collections.abc import Iterable, Sequence
from itertools import product
from typing import Final

from studio_log.planning.change_kinds import Change, LeaveOut
from studio_log.planning.pricing import price_of
from studio_log.planning.problem import Problem
from studio_log.planning.trying import Trial

Mend = tuple[Change, ...]
FEW_LOTS: Final = 3
"""Up to so many failing lots, each of their mends is joined with each of the others'."""
MANY_LOTS: Final = 8
"""With more of them only what mends all at once is looked for."""
MOST_TOGETHER: Final = 12
"""Joined mends that are planned."""
MOST_EACH: Final = 5
"""Mends of one lot that are planned."""


def mend(trial: Trial, some: Sequence[tuple[str, Iterable[Mend]]]) -> None:
    """Offer mends of lots that fail, by name; or leave lots out, if some are left to plan then."""
    problem = trial.problem
    looked = some if len(some) <= MANY_LOTS else some[:FEW_LOTS]
    mends = [_cheapest(problem, one) for _, one in looked]
    tried = dict.fromkeys(one for own in mends for one in own)
    outs: list[Mend] = [(LeaveOut(name),) for name in dict.fromkeys(name for name, _ in some)]
    if len(looked) == len(some):
        tried |= dict.fromkeys(_together(problem, mends, [(LeaveOut(one),) for one, _ in some]))
    tried[_joined(outs)] = None
    for one in tried:
        if trial.stop():
            return
        if sum(isinstance(change, LeaveOut) for change in one) < len(problem.lots):
            trial.offer(one)


def _together(problem: Problem, mends: list[list[Mend]], outs: list[Mend]) -> list[Mend]:
    """Join mends, one of each lot or the lot left out; those that cost least."""
    if len(mends) <= FEW_LOTS:
        ways = product(*([*own, out] for own, out in zip(mends, outs, strict=True)))
        joined = [_joined(one) for one in ways]
    else:
        joined = [_joined(own[0] if own else out for own, out in zip(mends, outs, strict=True))]
    return sorted(joined, key=lambda one: price_of(problem, one)[0])[:MOST_TOGETHER]


def _joined(mends: Iterable[Mend]) -> Mend:
    """Join mends into one; what stands in several of them is done once."""
    return tuple(dict.fromkeys(one for own in mends for one in own))


def _cheapest(problem: Problem, mends: Iterable[Mend]) -> list[Mend]:
    """Give the mends that cost least of those that are enough for one lot."""
    found = sorted(dict.fromkeys(mends), key=lambda one: price_of(problem, one)[0])
    return found[:MOST_EACH]
