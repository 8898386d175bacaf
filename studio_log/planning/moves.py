"""Where one visit can be dragged to, so that nothing else moves and every rule holds.

A visit is a run of hands-on steps, or the moment between two that go by themselves. What lies
before and behind it becomes longer or shorter; its vessels stay. This is exact: all slots between
its neighbours are looked at.
"""

from bisect import bisect_left
from dataclasses import dataclass
from itertools import pairwise

from studio_log.planning.board import Placement, joined
from studio_log.planning.chain import Between, Chain, links_of, moment_of
from studio_log.planning.engine import Studio
from studio_log.planning.old_plan import old_of, placement_from
from studio_log.planning.plan_studio import checked, plan_of
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.sweeps import floors, free_starts

Ranges = tuple[tuple[int, int], ...]
"""First and last start of each range in minutes, apart and in order; starts are on the grid."""


class BadMoveError(Exception):
    """A visit cannot be moved so; the words say why."""


@dataclass(frozen=True, slots=True)
class _Grip:
    """A plan made ready for a move: all other lots on the board, this one beside it."""

    studio: Studio
    chain: Chain
    placement: Placement
    visit: int
    offset: int
    """Slots from the beginning of the visit to the step."""


def windows(problem: Problem, plan: Plan, lot: str, step: str) -> Ranges:
    """Give the starts to which a step can be moved with its visit, all else staying as it is.

    Empty for what runs already, for a cure, and for a plan that does not fit the problem.
    """
    try:
        grip = _gripped(problem, plan, lot, step)
    except BadMoveError:
        return ()
    grid = problem.grid
    return tuple(
        ((first + grip.offset) * grid, (last + grip.offset) * grid)
        for first, last in _ranges(_free(grip))
    )


def moved(problem: Problem, plan: Plan, lot: str, step: str, start: int) -> Plan:
    """Give the plan with a step moved to a start with its visit; BadMoveError where it cannot."""
    grip = _gripped(problem, plan, lot, step)
    slot, odd = divmod(start, problem.grid)
    slot -= grip.offset
    free = _free(grip)
    if odd or slot not in free:
        raise BadMoveError(
            f"{step} of {lot} cannot begin at {problem.clock.local(start):%Y-%m-%d %H:%M} while "
            "everything else stays. Nothing was moved."
        )
    starts = grip.placement.starts
    starts = (*starts[: grip.visit], slot, *starts[grip.visit + 1 :])
    vessels = grip.placement.vessels
    placement = placement_from(grip.chain, problem, grip.studio.board, starts, vessels)
    if placement is None:
        raise BadMoveError(f"{step} of {lot} cannot begin outside the hours. Nothing was moved.")
    grip.studio.board.put(lot, placement)
    return checked(problem, plan_of(grip.studio, grip.studio.board.placed))


def _gripped(problem: Problem, plan: Plan, lot: str, step: str) -> _Grip:
    studio = Studio(problem, lambda: False)
    chain = studio.chains.get(lot)
    at = None if chain is None else moment_of(chain, step, end=False)
    if chain is None or at is None or at[0] < 0:
        raise BadMoveError(f"{step} of {lot} cannot be moved: it is not still to come.")
    take_over(studio, plan)
    return _Grip(studio, chain, studio.board.take(lot), *at)


def take_over(studio: Studio, plan: Plan) -> None:
    """Put all lots on the board just where a plan has them; BadMoveError where it does not fit."""
    for name, chain in studio.chains.items():
        old = old_of(chain, studio.problem, plan)
        starts = tuple(one for one in old.slots if one is not None)
        placement = None
        if len(starts) == len(old.slots) and len(old.vessels) == len(chain.runs):
            placement = placement_from(chain, studio.problem, studio.board, starts, old.vessels)
        if placement is None:
            raise BadMoveError(
                f"The plan does not fit the studio as it is now: {name} has no place."
            )
        studio.board.put(name, placement)


# -- which slots are free ----------------------------------------------------------------


def _free(grip: _Grip) -> list[int]:
    """Give the slots in which the visit can begin, in order."""
    found = _in_hours(grip, *_reach(grip))
    found = _before(grip, _behind(grip, found))
    return _room(grip, found)


def _reach(grip: _Grip) -> tuple[int, int]:
    """Give the first and last slot that its neighbours, links and the horizon leave."""
    chain, number, grid = grip.chain, grip.visit, grip.studio.problem.grid
    starts, length = grip.placement.starts, chain.visits[number].length
    low, high = 0, grip.studio.problem.horizon // grid - length
    if number:
        ended = starts[number - 1] + chain.visits[number - 1].length
        between = chain.betweens[number - 1]
        low, high = ended + _least(grip, between, ended), min(high, ended + between.most)
    elif chain.opening is None:
        low = -(-chain.since // grid)
    else:
        low = max(0, -(-(chain.since + chain.opening.least) // grid))
        high = min(high, (chain.since + chain.opening.most) // grid)
    if number < len(chain.betweens):
        between = chain.betweens[number]
        low = max(low, starts[number + 1] - between.most - length)
        high = min(high, starts[number + 1] - between.least - length)
    for first, second, most in links_of(chain, grip.studio.problem):
        if first == number != second:
            low = max(low, starts[second] - most)
        elif second == number != first:
            high = min(high, most if first < 0 else starts[first] + most)
    return low, high


def _least(grip: _Grip, between: Between, begun: int) -> int:
    """Give the least slots of what lies between two visits; drying goes by its day's weather."""
    problem = grip.studio.problem
    if not between.drying:
        return between.least
    day = problem.clock.local(begun * problem.grid).date()
    return max(between.least, -(-problem.drying.get(day, 0) // problem.grid))


def _in_hours(grip: _Grip, low: int, high: int) -> list[int]:
    length = grip.chain.visits[grip.visit].length
    if not length:
        return list(range(low, high + 1))
    found: list[int] = []
    for window in grip.studio.board.windows:
        found += range(max(low, window.start), min(high, window.end - length) + 1)
    return found


def _before(grip: _Grip, slots: list[int]) -> list[int]:
    """Keep the slots up to which what lies before the visit is free."""
    chain, number = grip.chain, grip.visit
    between = chain.betweens[number - 1] if number else chain.opening
    if between is None:
        return slots
    since = grip.placement.starts[number - 1] + chain.visits[number - 1].length if number else 0
    floor = floors(slots, _on_the_way(grip, between))
    return [at for at, first in zip(slots, floor, strict=True) if first <= since]


def _behind(grip: _Grip, slots: list[int]) -> list[int]:
    """Keep the slots from which what lies behind the visit is free, and long enough to dry."""
    chain, number = grip.chain, grip.visit
    if number == len(chain.betweens):
        return slots
    between, length = chain.betweens[number], chain.visits[number].length
    then = grip.placement.starts[number + 1]
    (first,) = floors([then], _on_the_way(grip, between))
    slots = slots[bisect_left(slots, first - length) :]
    if not between.drying:
        return slots
    return [at for at in slots if then - at - length >= _least(grip, between, at + length)]


def _on_the_way(grip: _Grip, between: Between) -> list[tuple[int, int]]:
    board, runs, vessels = grip.studio.board, grip.chain.runs, grip.placement.vessels
    lists = [board.blocked(store, much) for store, much in between.holds]
    lists += [board.blocked(vessels[run], runs[run].much) for run in between.runs]
    return joined(lists)


def _room(grip: _Grip, slots: list[int]) -> list[int]:
    """Keep the slots in which hands and all that the visit takes are free."""
    visit, board, vessels = grip.chain.visits[grip.visit], grip.studio.board, grip.placement.vessels
    takings = [("hands", 1000, 0, visit.length)] if visit.length else []
    takings += [(one.store, one.much, one.start, one.length) for one in visit.holds]
    takings += [(vessels[run], one.much, one.start, one.length) for run, one in visit.runs]
    for store, much, start, length in takings:
        blocked = board.blocked(store, much)
        if blocked and length:
            free = free_starts(slots, blocked, start, length)
            slots = [at for at, is_free in zip(slots, free, strict=True) if is_free]
    return slots


def _ranges(slots: list[int]) -> list[tuple[int, int]]:
    """Join neighbouring slots."""
    if not slots:
        return []
    ends = [n + 1 for n, (one, other) in enumerate(pairwise(slots)) if other > one + 1]
    return [(slots[first], slots[last - 1]) for first, last in pairwise([0, *ends, len(slots)])]
