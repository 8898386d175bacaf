"""Exact placing of one lot among the others.

A lot is a path: so the best place of all its visits is found from visit to visit, each start
looked at once. Where a vessel is to be chosen, each choice is a way of its own.
"""

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product
from math import prod
from typing import Final

from studio_log.planning.board import Board, Placement, Taking
from studio_log.planning.chain import Between, Chain, least_after
from studio_log.planning.problem import Problem
from studio_log.planning.sweeps import FAR, Arrivals, floors, free_starts, sweep
from studio_log.planning.takings import on_the_way, taken_between, taken_by
from studio_log.planning.wish import Wish

MOST_CHOICES: Final = 64
Choice = dict[int, str]
"""By run, the name of the vessel."""


@dataclass(slots=True)
class _Stage:
    """All starts of one visit under one choice of vessels."""

    choice: Choice
    starts: list[int]
    costs: list[int] = field(default_factory=list)
    back: list[tuple[int, int]] = field(default_factory=list)
    """Stage of the visit before, and its start there."""


def place(chain: Chain, problem: Problem, board: Board, wish: Wish) -> tuple[int, Placement] | None:
    """Give the cheapest place of a lot among those on the board, and its price.

    None where there is none, or where it was told to stop. Exact up to 64 choices of vessels
    at a time, which a studio does not reach.
    """
    try:
        return _Placer(chain, problem, board, wish).best()
    except _ToldToStopError:
        return None


class _ToldToStopError(Exception):
    """Planning was told to stop while a lot was being placed."""


class _Placer:
    def __init__(self, chain: Chain, problem: Problem, board: Board, wish: Wish) -> None:
        self.chain, self.problem, self.board, self.wish = chain, problem, board, wish
        self.grid = problem.grid
        self._window: dict[int, int] = {}
        self._vessels: dict[int, list[str]] = {}

    def best(self) -> tuple[int, Placement] | None:
        """Go from visit to visit and back along the cheapest way."""
        all_stages = [self._first()]
        for number in range(1, len(self.chain.visits)):
            if not any(one.starts for one in all_stages[-1]):
                return None
            all_stages.append(self._next(number, all_stages[-1]))
        ends = [
            (cost + end, place, at)
            for place, stage in enumerate(all_stages[-1])
            for at, (cost, end) in enumerate(
                zip(stage.costs, self._at_ends(stage.starts), strict=True)
            )
        ]
        if not ends:
            return None
        cost, place_, at = min(ends)
        return cost, self._traced(all_stages, place_, at)

    def _at_ends(self, starts: list[int]) -> list[int]:
        """Give the price of the minutes to each end, and of its lateness."""
        ends = [(at + self.chain.visits[-1].length) * self.grid for at in starts]
        late = rising(self.wish.late, ends)
        return [end + more for end, more in zip(ends, late, strict=True)]

    # -- starts of one visit -------------------------------------------------------------

    def _starts(self, number: int) -> list[int]:
        """Give the slots in which a visit may begin as far as hours and hands go."""
        low, high = self.wish.limits[number]
        visit = self.chain.visits[number]
        stride = self.wish.stride
        if not visit.length:
            return list(range(low, high + 1, stride))
        blocked = self.board.blocked("hands", 1000)
        found: list[int] = []
        windows = self.board.windows
        first = max(0, bisect_right(windows, low, key=lambda one: one.start) - 1)
        for place in range(first, len(windows)):
            window = windows[place]
            if window.start > high:
                break
            last = min(high, window.end - visit.length)
            starts: Sequence[int] = range(max(low, window.start), last + 1)
            if stride > 1:
                starts = self._some(starts, visit.length, blocked)
            found += starts
            for one in starts:
                self._window[one] = place
        if not blocked:
            return found
        free = free_starts(found, blocked, 0, visit.length)
        return [one for one, is_free in zip(found, free, strict=True) if is_free]

    def _some(
        self, starts: Sequence[int], length: int, blocked: Sequence[tuple[int, int]]
    ) -> Sequence[int]:
        """Give some starts of a window: at even distances, its last, and next to other work."""
        if len(starts) < 2:
            return starts
        low, high = starts[0], starts[-1]
        found = {*starts[:: self.wish.stride], high}
        place = bisect_left(blocked, low, key=lambda one: one[1])
        while place < len(blocked) and blocked[place][0] <= high + length:
            found |= {blocked[place][0] - length, blocked[place][1]}
            place += 1
        return sorted(one for one in found if low <= one <= high)

    def _choices(self, number: int) -> list[Choice]:
        """Give the ways to choose vessels for a visit and what follows it."""
        runs = {run for run, _ in self.chain.visits[number].runs}
        if number < len(self.chain.betweens):
            runs |= set(self.chain.betweens[number].runs)
        if number == 0 and self.chain.opening is not None:
            runs |= set(self.chain.opening.runs)
        order = sorted(runs)
        fitting = [self._fitting(run) for run in order]
        ways = [dict(zip(order, names, strict=True)) for names in product(*fitting)]
        return ways[:MOST_CHOICES]

    def _fitting(self, run: int) -> list[str]:
        """Give the vessels that a run may lie in; of those blocked alike, the first stands for all.

        Two runs of one lot are never in two vessels of a kind at once, so nothing is lost.
        """
        wanted = self.chain.runs[run]
        if run not in self._vessels:
            old = self.wish.old
            liked, fixed = old.vessels.get(run), run in old.fixed
            alike: dict[tuple[tuple[int, int], ...], str] = {}
            for one in sorted(self.problem.vessels, key=lambda one: one.name != liked):
                if fixed and one.name != liked:
                    continue
                if one.kind == wanted.kind and one.size >= wanted.much:
                    alike.setdefault(tuple(self.board.blocked(one.name, wanted.much)), one.name)
            self._vessels[run] = list(alike.values())
        return self._vessels[run]

    def _stage(self, number: int, choice: Choice, arrivals: Arrivals, starts: list[int],
               source: Sequence[tuple[int, int]]) -> _Stage:  # fmt: skip
        """Keep the starts that can be reached and whose holds are free; price those moved."""
        visit = self.chain.visits[number]
        kept = [n for n, cost in enumerate(arrivals[0]) if cost < FAR]
        for store, much, hold in [
            *((one.store, one.much, one) for one in visit.holds),
            *((choice[run], one.much, one) for run, one in visit.runs),
        ]:
            blocked = self.board.blocked(store, much)
            if blocked:
                free = free_starts([starts[n] for n in kept], blocked, hold.start, hold.length)
                kept = [n for n, is_free in zip(kept, free, strict=True) if is_free]
        stage = _Stage(choice, [starts[n] for n in kept])
        stage.costs = [arrivals[0][n] for n in kept]
        if self.wish.moved and visit.length and number < len(self.wish.old.slots):
            was, price = self.wish.old.slots[number], self.wish.moved
            if was is not None:
                pairs = zip(stage.costs, stage.starts, strict=True)
                stage.costs = [cost + (price if at != was else 0) for cost, at in pairs]
        stage.back = [source[n] for n in kept]
        return stage

    def _price(self, start: int) -> int:
        place = self._window.get(start)
        return 0 if place is None else self.wish.session[place]

    # -- from visit to visit -------------------------------------------------------------

    def _first(self) -> list[_Stage]:
        starts = self._starts(0)
        visit = self.chain.visits[0]
        needs_hands = visit.length > 0
        found = []
        for choice in self._choices(0):
            costs = self._opened(starts, choice)
            if needs_hands:
                costs = [cost + self._price(at) for cost, at in zip(costs, starts, strict=True)]
            nowhere = [(-1, -1)] * len(starts)
            found.append(self._stage(0, choice, (costs, []), starts, nowhere))
        return found

    def _opened(self, starts: list[int], choice: Choice) -> list[int]:
        """Give the price of what passes before the first visit, FAR where it cannot."""
        opening, since = self.chain.opening, self.chain.since
        if opening is None:
            return [0 if at * self.grid >= since else FAR for at in starts]
        clear = floors(starts, on_the_way(self.chain, self.board, opening, choice))
        found = []
        for at, floor in zip(starts, clear, strict=True):
            minutes = at * self.grid - since
            good = opening.least <= minutes <= opening.most and floor == 0
            off = 0 if opening.target is None else abs(minutes - opening.target)
            found.append(off if good else FAR)
        return found

    def _next(self, number: int, before: list[_Stage]) -> list[_Stage]:
        visit = self.chain.visits[number]
        starts = self._within_reach(number, before)
        prices = [self._price(at) for at in starts] if visit.length else []
        ways = [self._arrivals(number, stage, starts, prices) for stage in before]
        found = []
        for choice in self._choices(number):
            if self.wish.stop():
                raise _ToldToStopError
            fitting = [n for n, stage in enumerate(before) if _agree(choice, stage.choice)]
            costs, source = [FAR] * len(starts), [(-1, -1)] * len(starts)
            for n in fitting:
                for at, (cost, origin) in enumerate(zip(*ways[n], strict=True)):
                    if cost < costs[at]:
                        costs[at], source[at] = cost, (n, origin)
            found.append(self._stage(number, choice, (costs, []), starts, source))
        return found

    def _within_reach(self, number: int, before: list[_Stage]) -> list[int]:
        """Give the starts of a visit that lie not too near and not too far behind the last."""
        between, length = self.chain.betweens[number - 1], self.chain.visits[number - 1].length
        first = min(stage.starts[0] for stage in before if stage.starts) + length
        last = max(stage.starts[-1] for stage in before if stage.starts) + length
        starts = self._starts(number)
        start = bisect_left(starts, first + between.least)
        return starts[start : bisect_right(starts, last + between.most)]

    def _arrivals(
        self, number: int, stage: _Stage, starts: list[int], prices: list[int]
    ) -> Arrivals:
        """Give the cheapest way from one stage to each start, the price of its session in it."""
        if self.wish.stop():
            raise _ToldToStopError
        between, length = self.chain.betweens[number - 1], self.chain.visits[number - 1].length
        sources = [at + length for at in stage.starts]
        clear = floors(starts, on_the_way(self.chain, self.board, between, stage.choice))
        any_way = self._by_weather(sources, stage.costs, starts, between, clear)
        own = self.chain.visits[number].length
        if not own:
            return any_way
        costs = [cost + price for cost, price in zip(any_way[0], prices, strict=True)]
        places = any_way[1]
        if length and length + between.least + own <= self.board.longest:
            self._same_session(sources, stage.costs, starts, between, (clear, costs, places))
        return costs, places

    def _same_session(
        self,
        sources: list[int],
        prices: list[int],
        starts: list[int],
        between: Between,
        found: tuple[list[int], list[int], list[int]],
    ) -> None:
        """Let the next visit be in the session of this one, which is then paid once."""
        clear, costs, places = found
        windows, inside = self.board.windows, []
        for at, floor in zip(starts, clear, strict=True):
            inside.append(max(floor, windows[self._window[at]].start + 1))
        again = self._by_weather(sources, prices, starts, between, inside)
        for at, (cost, origin) in enumerate(zip(*again, strict=True)):
            if cost < costs[at]:
                costs[at], places[at] = cost, origin

    def _by_weather(
        self,
        sources: list[int],
        prices: list[int],
        starts: list[int],
        between: Between,
        clear: list[int],
    ) -> Arrivals:
        """Sweep once for each shortest drying that the days of the sources have."""
        if not between.drying or not self.problem.drying:
            return sweep(sources, prices, starts, between, self.grid, clear)
        classes: dict[int, list[int]] = {}
        for place_, at in enumerate(sources):
            least = least_after(self.problem, between, at)
            classes.setdefault(least, []).append(place_)
        costs, places = [FAR] * len(starts), [-1] * len(starts)
        for least, some in classes.items():
            own = Between(between.step, least, between.most, between.target)
            way = sweep([sources[n] for n in some], [prices[n] for n in some], starts, own,
                        self.grid, clear)  # fmt: skip
            for at, (cost, origin) in enumerate(zip(*way, strict=True)):
                if cost < costs[at]:
                    costs[at], places[at] = cost, some[origin]
        return costs, places

    # -- the way back --------------------------------------------------------------------

    def _traced(self, stages: list[list[_Stage]], place_: int, at: int) -> Placement:
        starts: list[int] = []
        vessels: dict[int, str] = {}
        for some in reversed(stages):
            stage = some[place_]
            starts.append(stage.starts[at])
            vessels |= stage.choice
            place_, at = stage.back[at]
        return placement_of(
            self.chain, self.problem, tuple(reversed(starts)), vessels, self._window
        )


def rising(price: Callable[[int], int], ends: Sequence[int]) -> list[int]:
    """Give the price of each end, in order; where two are alike, all between them are too."""
    found = [0] * len(ends)
    left = [(0, len(ends) - 1)] if ends else []
    known: dict[int, int] = {}
    while left:
        low, high = left.pop()
        for at in (low, high):
            if at not in known:
                known[at] = price(ends[at])
                found[at] = known[at]
        if known[low] == known[high]:
            found[low : high + 1] = [known[low]] * (high + 1 - low)
        elif high - low > 1:
            middle = (low + high) // 2
            left += [(low, middle), (middle, high)]
    return found


def _agree(one: Mapping[int, str], other: Mapping[int, str]) -> bool:
    return all(other.get(run, vessel) == vessel for run, vessel in one.items())


def choices_fit(chain: Chain, problem: Problem) -> bool:
    """Say whether every choice of vessels is looked at, so that what is not found is not there."""
    kinds = Counter(one.kind for one in problem.vessels)
    for number, visit in enumerate(chain.visits):
        runs = {run for run, _ in visit.runs}
        for between in chain.betweens[number : number + 1]:
            runs |= set(between.runs)
        if prod(kinds[chain.runs[run].kind] for run in runs) > MOST_CHOICES:
            return False
    return True


def placement_of(
    chain: Chain,
    problem: Problem,
    starts: tuple[int, ...],
    vessels: Mapping[int, str],
    window: Mapping[int, int],
) -> Placement:
    """Give all that follows from the starts of a lot's visits."""
    grid, takings, off = problem.grid, list[Taking](), 0
    for start, visit in zip(starts, chain.visits, strict=True):
        takings += taken_by(visit, start, vessels)
    ways = [] if chain.opening is None else [(chain.opening, 0, starts[0])]
    for number, between in enumerate(chain.betweens):
        ways.append((between, starts[number] + chain.visits[number].length, starts[number + 1]))
    for between, begin, end in ways:
        takings += taken_between(chain, between, begin, end, vessels)
        if between.target is not None:
            since = chain.since if between is chain.opening else begin * grid
            off += abs(end * grid - since - between.target)
    last = (starts[-1] + chain.visits[-1].length) * grid
    sessions = tuple(
        window[at] for at, visit in zip(starts, chain.visits, strict=True) if visit.length
    )
    return Placement(starts, dict(vessels), tuple(takings), sessions, last, off + last)
