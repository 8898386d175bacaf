"""Milks that several lots use, while lots are placed: when each may be made and used.

A milk is made between the last moment that is not too soon for its uses, and the first use. As
long as a lot has no place, its own limits stand for it. The vessel is kept for all of the milk's
life, since its last use is not known while lots are placed.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from studio_log.planning.board import Board, Placement
from studio_log.planning.chain import NEVER, Chain, moment_of
from studio_log.planning.problem import Milk, Problem

Limits = list[tuple[int, int]]
Moment = tuple[int, int]
"""Visit, and slots from its beginning."""


@dataclass(frozen=True, slots=True)
class _Use:
    lot: str
    step: str
    begins: Moment | None
    """None where it has begun."""
    ends: Moment


@dataclass(frozen=True, slots=True)
class _Ready:
    """A milk with its moments in the chains; `made` is its slot where that is known."""

    milk: Milk
    life: int
    made: int | None
    maker: tuple[str, Moment] | None
    uses: tuple[_Use, ...]


@dataclass(frozen=True, slots=True)
class Followed:
    """A lot that another's milk serves: from its visit `first` on as the other's from `behind`."""

    chain: Chain
    first: int
    behind: int


class MilkLimits:
    """All milks of a problem."""

    def __init__(self, problem: Problem, chains: Mapping[str, Chain]) -> None:
        self.problem = problem
        self.ready = [
            one for milk in problem.milks if (one := _ready(problem, chains, milk)) is not None
        ]
        self.vessels = {
            one.milk.name: vessel
            for one in self.ready
            if one.made is not None and (vessel := _vessel(problem, one.milk)) is not None
        }
        """What milks stand in that are made already."""

    def occupy(self, board: Board) -> None:
        """Let the milks that are made already take what they stand in."""
        for one in self.ready:
            vessel = self.vessels.get(one.milk.name)
            if vessel is not None and one.made is not None:
                end = one.made + one.life
                board.occupy(f"milk {one.milk.name}", vessel, max(0, one.made), end, one.milk.much)

    def lost(self, lot: str, static: Mapping[str, Limits], board: Board) -> bool:
        """Say whether a lot cannot use or make its milks in time, wherever the others are."""
        return self.cut(lot, static[lot], board, static) is None

    def makers(self, lot: str) -> list[str]:
        """Give the lots that make what a lot uses."""
        return [
            one.maker[0]
            for one in self.ready
            if one.maker is not None and one.maker[0] != lot
            and any(use.lot == lot for use in one.uses)
        ]  # fmt: skip

    def followed(
        self, lot: str, placed: Mapping[str, Placement], chains: Mapping[str, Chain]
    ) -> list[Followed]:
        """Give the lots without a place that the milk of a lot serves."""
        found: dict[str, Followed] = {}
        for one in self.ready:
            if one.maker is None or one.maker[0] != lot:
                continue
            for use in one.uses:
                if use.lot != lot and use.lot not in placed and use.begins is not None:
                    known = found.get(use.lot)
                    first = min(use.begins[0], known.first if known else use.begins[0])
                    found[use.lot] = Followed(chains[use.lot], first, one.maker[1][0] + 1)
        return list(found.values())

    def family(self, lots: list[str]) -> list[str]:
        """Give the lots that share a milk with some lots, makers first, those lots among them."""
        found: dict[str, None] = {}
        for one in self.ready:
            own = [*([one.maker[0]] if one.maker else []), *(use.lot for use in one.uses)]
            if set(own) & set(lots):
                found.update(dict.fromkeys(own))
        return list(found)

    def cut(
        self, lot: str, limits: Limits, board: Board, static: Mapping[str, Limits]
    ) -> Limits | None:
        """Give a lot's limits as its milks leave them, all others as they are; None for none."""
        found = list(limits)
        for one in self.ready:
            low, high = self._made(one, lot, board.placed, static)
            if one.maker is not None and one.maker[0] == lot:
                _limit(found, one.maker[1], low, high)
            for use in one.uses:
                if use.lot == lot and (one.maker is None or one.maker[0] != lot):
                    if use.begins is not None:
                        _limit(found, use.begins, low, NEVER)
                    _limit(found, use.ends, -NEVER, high + one.life)
        return None if any(low > high for low, high in found) else found

    def _made(
        self, one: _Ready, lot: str, placed: Mapping[str, Placement], static: Mapping[str, Limits]
    ) -> tuple[int, int]:
        """Give the first and last slot at which a milk can be made, as all lots but one have it."""
        if one.made is not None:
            return one.made, one.made
        low, high = 0, NEVER
        if one.maker is not None and one.maker[0] != lot:
            name, moment = one.maker
            if name in placed:
                at = _slot(placed[name].starts, moment)
                return at, at
            low = max(low, _earliest(static, name, moment))
        for use in one.uses:
            if use.lot in placed and use.lot != lot:
                starts = placed[use.lot].starts
                low = max(low, _slot(starts, use.ends) - one.life)
                if use.begins is not None:
                    high = min(high, _slot(starts, use.begins))
            elif use.lot != lot:
                low = max(low, _earliest(static, use.lot, use.ends) - one.life)
        return low, high


def _earliest(static: Mapping[str, Limits], lot: str, moment: Moment) -> int:
    """Give the earliest slot of a moment; of a lot whose limits contradict each other, 0."""
    return static[lot][moment[0]][0] + moment[1] if lot in static else 0


def _slot(starts: tuple[int, ...], moment: Moment) -> int:
    return starts[moment[0]] + moment[1]


def _limit(limits: Limits, moment: Moment, low: int, high: int) -> None:
    """Cut the limits of the visit of a moment, so that the moment lies between two slots."""
    visit, at = moment
    one, other = limits[visit]
    limits[visit] = (max(one, low - at), min(other, high - at))


def _ready(problem: Problem, chains: Mapping[str, Chain], milk: Milk) -> _Ready | None:
    """Make a milk ready; None where its maker is no lot of the problem or nothing uses it."""
    made = made_at(problem, milk)
    maker = None
    if made is None:
        lot, step = milk.maker or ("", "")
        moment = moment_of(chains[lot], step, end=True) if lot in chains else None
        if moment is None:
            return None
        maker = (lot, moment)
    uses = []
    for lot, step in milk.uses:
        chain = chains.get(lot)
        ends = None if chain is None else moment_of(chain, step, end=True)
        if chain is None or ends is None:
            continue
        begins = moment_of(chain, step, end=False)
        uses.append(_Use(lot, step, begins if begins and begins[0] >= 0 else None, ends))
    if made is not None and not uses:
        return None
    slot = None if made is None else -(-made // problem.grid)
    life = milk.life // problem.grid
    if made is not None and slot is not None:
        life = (made + milk.life) // problem.grid - slot
    return _Ready(milk, life, slot, maker, tuple(uses))


def made_at(problem: Problem, milk: Milk) -> int | None:
    """Give the minute at which a milk is known to be made; None where that is still to come."""
    if milk.maker is None:
        return milk.at
    name, step = milk.maker
    lot = next((one for one in problem.lots if one.name == name), None)
    fact = None if lot is None else lot.facts.get(step)
    return None if fact is None else fact.end


def _vessel(problem: Problem, milk: Milk) -> str | None:
    """Give what a milk stands in that is made already: as named, or the smallest that fits."""
    if milk.kind is None:
        return None
    if milk.vessel is not None:
        return milk.vessel
    fitting = [one for one in problem.vessels if one.kind == milk.kind and one.size >= milk.much]
    return min(fitting, key=lambda one: one.size).name if fitting else None
