"""Rules that follow from the others, told to the solver so that it sees how few sessions can do.

By themselves they forbid no plan. Without them a lot can be spread thinly over many sessions in
the solver's relaxed view, and a bound of one session is all that it proves.
"""

from collections.abc import Iterator
from typing import NamedTuple

from ortools.sat.python import cp_model

from studio_log.optimizer.model import Line, StudioModel
from studio_log.planning.chain import NEVER
from studio_log.planning.gap_bound import far_apart


def add_cuts(own: StudioModel) -> None:
    """Add all of them to a model."""
    for name in own.part.free:
        _apart(own, name)
        _steps_on(own, name)
    _room(own)
    _hands(own)


def _apart(own: StudioModel, name: str) -> None:
    """Visits of a lot too far from each other for one session: at most one of them is in it."""
    inside = own.inside[name]
    chain = own.frame.studio.chains[name]
    visits = [number for number, some in enumerate(inside) if len(some) > 1]
    for number, session in own.sessions.items():
        window = own.frame.windows[number]
        here = [visit for visit in visits if number in inside[visit]]
        told: set[tuple[int, ...]] = set()
        for first in range(min(2, len(here))):
            some = tuple(far_apart(chain, here[first:], window.end - window.start))
            if len(some) > 1 and some not in told:
                told.add(some)
                literals = [inside[visit][number] for visit in some]
                own.model.add_at_most_one([*literals, ~session])
                own.model.add(sum(literals) <= session)


def _steps_on(own: StudioModel, name: str) -> None:
    """Where one visit is in a session, the next is in one that can be reached from there."""
    chain, windows = own.frame.studio.chains[name], own.frame.windows
    for number, between in enumerate(chain.betweens):
        here, there = own.inside[name][number], own.inside[name][number + 1]
        if between.most >= NEVER or len(here) < 2 or len(there) < 2:
            continue
        length, after = chain.visits[number].length, chain.visits[number + 1].length
        low, high = length + between.least, length + between.most
        for at, literal in here.items():
            window = windows[at]
            reached = [
                there[to]
                for to in there
                if windows[to].end - after >= window.start + low
                and windows[to].start <= window.end - length + high
            ]
            own.model.add_bool_or([*reached, ~literal])
            own.model.add(literal <= sum(reached))


def _room(own: StudioModel) -> None:
    """Let all that hangs or lies somewhere right after a session, or right before it, fit."""
    for after in (False, True):
        for number, session in own.sessions.items():
            loads: dict[str, list[Line]] = {}
            sums: dict[str, int] = {}
            for name in own.part.free:
                for store, much, literal in _held(own, name, number, after=after):
                    loads.setdefault(store, []).append(much * literal)
                    sums[store] = sums.get(store, 0) + much
            for store, parts in loads.items():
                room = _size(own, store)
                if sums[store] > room:
                    own.model.add(sum(parts) <= room * session)


def _size(own: StudioModel, store: str) -> int:
    """Give what there is of a store, or of all vessels of a kind together."""
    stores = own.frame.problem.stores
    if store in stores:
        return stores[store]
    return sum(one.size for one in own.frame.problem.vessels if one.kind == store)


def _held(
    own: StudioModel, name: str, number: int, *, after: bool
) -> Iterator[tuple[str, int, Line]]:
    """Give what a lot surely takes at the end of a window, or before it, by visit in it.

    Sure it is where the wait behind the visit, or before it, is longer than the window.
    """
    chain, window = own.frame.studio.chains[name], own.frame.windows[number]
    for visit, some in enumerate(own.inside[name]):
        place = visit if after else visit - 1
        if number not in some or not 0 <= place < len(chain.betweens):
            continue
        between = chain.betweens[place]
        if chain.visits[visit].length + between.least <= window.end - window.start:
            continue
        for store, much in between.holds:
            yield store, much, some[number]
        for run in between.runs:
            yield chain.runs[run].kind, chain.runs[run].much, some[number]


def _hands(own: StudioModel) -> None:
    """Visits that can only begin in a narrow part of a window come one after the other there.

    So many of a least length begin between two slots as fit behind each other, and one more.
    """
    options: dict[int, list[_Option]] = {}
    for name in own.part.free:
        for visit, some in enumerate(own.inside[name]):
            length = own.frame.studio.chains[name].visits[visit].length
            for number, literal in some.items():
                ranges = own.ranges[name][visit][number]
                options.setdefault(number, []).append(
                    _Option(ranges[0][0], ranges[-1][1], length, literal)
                )
    pairs = own.frame.problem.stores["hands"] // 1000
    for number, session in own.sessions.items():
        told: set[frozenset[int]] = set()
        here = options.get(number, [])
        for low, high, length in sorted({(one.low, one.high, one.length) for one in here}):
            inside = [one.literal for one in here
                      if low <= one.low and one.high <= high and one.length >= length]  # fmt: skip
            most = pairs * ((high - low) // length + 1)
            key = frozenset(one.index for one in inside)
            if len(inside) > most and key not in told:
                told.add(key)
                own.model.add(sum(inside) <= most * session)


class _Option(NamedTuple):
    """A visit that may be in a window: first and last slot to begin there, its length."""

    low: int
    high: int
    length: int
    literal: cp_model.IntVar
