"""One visit of a plan taken in hand: all other lots lie on the board, it can be tried elsewhere.

A visit is a run of hands-on steps, or the moment between two that go by themselves. What lies
before and behind it becomes longer or shorter; its vessels stay.
"""

from bisect import bisect_left
from dataclasses import dataclass
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.board import Placement, Taking
from studio_log.planning.chain import NEVER, Between, Chain, least_after, links_of, moment_of
from studio_log.planning.engine import Studio
from studio_log.planning.old_plan import old_of, placement_from
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.sweeps import floors, free_starts
from studio_log.planning.takings import on_the_way, taken_between, taken_by

NO_ROOM: Final = tr_later("The plan does not fit the studio as it is now: {lot} has no place.")


class BadMoveError(Exception):
    """A visit cannot be moved so; the words say why."""


@dataclass(frozen=True, slots=True)
class Grip:
    """A plan made ready for a move: all other lots on the board, this one beside it."""

    studio: Studio
    chain: Chain
    placement: Placement
    visit: int
    offset: int
    """Slots from the beginning of the visit to the step."""


def gripped(problem: Problem, plan: Plan, lot: str, step: str) -> Grip:
    """Take the visit of a step in hand; BadMoveError where it is not still to come."""
    studio = Studio(problem, lambda: False)
    chain = studio.chains.get(lot)
    at = None if chain is None else moment_of(chain, step, end=False)
    if chain is None or at is None or at[0] < 0:
        text = tr("{step} of {lot} cannot be moved: it is not still to come.", step=step, lot=lot)
        raise BadMoveError(text)
    take_over(studio, plan)
    return Grip(studio, chain, studio.board.take(lot), *at)


def take_over(studio: Studio, plan: Plan) -> None:
    """Put all lots on the board just where a plan has them; BadMoveError where it does not fit."""
    for name, chain in studio.chains.items():
        old = old_of(chain, studio.problem, plan)
        starts = tuple(one for one in old.slots if one is not None)
        placement = None
        if len(starts) == len(old.slots) and len(old.vessels) == len(chain.runs):
            placement = placement_from(chain, studio.problem, studio.board, starts, old.vessels)
        if placement is None:
            text = tr(
                "The plan does not fit the studio as it is now: {lot} has no place.", lot=name
            )
            raise BadMoveError(text)
        studio.board.put(name, placement)


def free(grip: Grip) -> list[int]:
    """Give the slots in which the visit can begin, in order."""
    found = _in_hours(grip, *reach(grip))
    found = _before(grip, _behind(grip, found))
    return _room(grip, found)


def reach(grip: Grip, *, behind: bool = True) -> tuple[int, int]:
    """Give the first and last slot that its neighbours, links and the horizon leave.

    Without `behind`, what lies behind it is taken to give way.
    """
    chain, number, grid = grip.chain, grip.visit, grip.studio.problem.grid
    starts, length = grip.placement.starts, chain.visits[number].length
    low, high = 0, grip.studio.problem.horizon // grid - length
    if number:
        ended = starts[number - 1] + chain.visits[number - 1].length
        between = chain.betweens[number - 1]
        low, high = (
            ended + least_after(grip.studio.problem, between, ended),
            min(high, ended + between.most),
        )
    elif chain.opening is None:
        low = -(-chain.since // grid)
    else:
        low = max(0, -(-(chain.since + chain.opening.least) // grid))
        high = min(high, (chain.since + chain.opening.most) // grid)
    if behind and number < len(chain.betweens):
        between = chain.betweens[number]
        low = max(low, starts[number + 1] - between.most - length)
        high = min(high, starts[number + 1] - between.least - length)
    if behind and grip.studio.milks.ready:
        free_ends = [(-NEVER, NEVER)] * len(chain.visits)
        name, studio = chain.lot.name, grip.studio
        cut = studio.milks.cut(name, free_ends, studio.board, studio.whole)
        milk_low, milk_high = (0, -1) if cut is None else cut[number]
        low, high = max(low, milk_low), min(high, milk_high)
    for first, second, most in links_of(chain, grip.studio.problem):
        if first == number != second and behind:
            low = max(low, starts[second] - most)
        elif second == number != first:
            high = min(high, most if first < 0 else starts[first] + most)
    return low, high


def _in_hours(grip: Grip, low: int, high: int) -> list[int]:
    length = grip.chain.visits[grip.visit].length
    if not length:
        return list(range(low, high + 1))
    found: list[int] = []
    for window in grip.studio.board.windows:
        found += range(max(low, window.start), min(high, window.end - length) + 1)
    return found


def _before(grip: Grip, slots: list[int]) -> list[int]:
    """Keep the slots up to which what lies before the visit is free."""
    chain, number = grip.chain, grip.visit
    between = chain.betweens[number - 1] if number else chain.opening
    if between is None:
        return slots
    since = grip.placement.starts[number - 1] + chain.visits[number - 1].length if number else 0
    floor = floors(slots, _blocked(grip, between))
    return [at for at, first in zip(slots, floor, strict=True) if first <= since]


def _behind(grip: Grip, slots: list[int]) -> list[int]:
    """Keep the slots from which what lies behind the visit is free, and long enough to dry."""
    chain, number = grip.chain, grip.visit
    if number == len(chain.betweens):
        return slots
    between, length = chain.betweens[number], chain.visits[number].length
    then = grip.placement.starts[number + 1]
    (first,) = floors([then], _blocked(grip, between))
    slots = slots[bisect_left(slots, first - length) :]
    if not between.drying:
        return slots
    problem = grip.studio.problem
    return [at for at in slots if then - at - length >= least_after(problem, between, at + length)]


def _blocked(grip: Grip, between: Between) -> list[tuple[int, int]]:
    return on_the_way(grip.chain, grip.studio.board, between, grip.placement.vessels)


def _room(grip: Grip, slots: list[int]) -> list[int]:
    """Keep the slots in which hands and all that the visit takes are free."""
    visit, board = grip.chain.visits[grip.visit], grip.studio.board
    for store, start, end, much in taken_by(visit, 0, grip.placement.vessels):
        blocked = board.blocked(store, much)
        if blocked and start < end:
            free = free_starts(slots, blocked, start, end - start)
            slots = [at for at, is_free in zip(slots, free, strict=True) if is_free]
    return slots


def takings(grip: Grip, slot: int) -> list[Taking]:
    """Give all that the visit would take if it began at a slot, and what lies around it."""
    chain, number, starts = grip.chain, grip.visit, grip.placement.starts
    visit, vessels = chain.visits[number], grip.placement.vessels
    ways = [(chain.opening, 0, slot)] if not number else []
    if number:
        ended = starts[number - 1] + chain.visits[number - 1].length
        ways.append((chain.betweens[number - 1], ended, slot))
    if number < len(chain.betweens):
        ways.append((chain.betweens[number], slot + visit.length, starts[number + 1]))
    found = taken_by(visit, slot, vessels)
    for between, begin, end in ways:
        if between is not None and begin < end:
            found += taken_between(chain, between, begin, end, vessels)
    return found
