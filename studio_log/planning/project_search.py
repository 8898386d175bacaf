"""Searches the shortest project: conflicts over a resource are settled pair by pair.

All tasks start as early as lags allow. Where some that are under way together ask for too much,
one of them has to end before another begins: each such pair is a branch. A branch that
contradicts the lags, or cannot beat the best so far, is cut. What is searched to its end is
proved. Branching on minimal sets in conflict is known since the 1990s (from memory).
"""

from collections.abc import Callable, Iterator
from itertools import combinations, permutations
from random import Random
from typing import Final, Literal

from studio_log.planning.lag_matrix import NONE, Matrix, limited
from studio_log.planning.project import Project

MOST_PEAKS: Final = 4
"""Conflicts of which the one with the fewest branches is taken."""
Pair = tuple[int, int]
Ended = Literal["whole", "limit", "stopped"]


class Search:
    """The state of a search that is begun again and again, with a bound that only falls."""

    def __init__(
        self, project: Project, matrix: Matrix, random: Random, stop: Callable[[], bool]
    ) -> None:
        self.matrix, self.random, self.stop = matrix, random, stop
        self.names = ["", *(task.name for task in project.tasks)]
        self.length = [0, *(task.duration for task in project.tasks)]
        self.tail = [0, *(max(task.duration, task.tail) for task in project.tasks)]
        self.room = list(project.capacity.values())
        order = list(project.capacity)
        self.asks = [
            [0] * len(order),
            *([task.demand.get(name, 0) for name in order] for task in project.tasks),
        ]
        self.apart = self._apart()
        self.bound = 1 << 60
        """The makespan of the best so far; a new one has to be less."""
        self.best: list[int] | None = None
        self.chance = 0.0

    def _apart(self) -> list[Pair]:
        """Give the pairs of tasks that never fit together."""
        pairs = combinations(range(1, len(self.asks)), 2)
        return [pair for pair in pairs if self._too_much(pair)]

    def _too_much(self, some: tuple[int, ...]) -> bool:
        return any(
            sum(self.asks[one][n] for one in some) > room for n, room in enumerate(self.room)
        )

    def fits_alone(self) -> bool:
        """Say whether each task fits on the resources by itself."""
        return not any(self._too_much((one,)) for one in range(1, len(self.asks)))

    def run(self, limit: int, chance: float, on_better: Callable[[list[int]], None]) -> Ended:
        """Search depth first, up to so many states; `chance` shuffles the branches."""
        self.chance = chance
        left = [iter([self.matrix])]
        seen = 0
        while left:
            if self.stop():
                return "stopped"
            if seen >= limit:
                return "limit"
            state = next(left[-1], None)
            if state is None:
                left.pop()
                continue
            seen += 1
            branches = self._branches(state, on_better)
            if branches is not None:
                left.append(branches)
        return "whole"

    def _branches(
        self, matrix: Matrix, on_better: Callable[[list[int]], None]
    ) -> Iterator[Matrix] | None:
        """Settle what is forced, then give the branches of a conflict; None at a leaf."""
        forced = self._forced(matrix)
        if forced is None:
            return None
        pairs = self._conflict(forced)
        if pairs is None:
            starts = forced[0]
            self.bound = max(at + tail for at, tail in zip(starts, self.tail, strict=True))
            self.best = starts
            on_better(starts)
            return None
        return self._settled(forced, pairs)

    def _settled(self, matrix: Matrix, pairs: list[Pair]) -> Iterator[Matrix]:
        for first, second in pairs:
            if self._open(matrix, self._reach(matrix), first, second):
                yield limited(matrix, first, second, self.length[first])

    def _reach(self, matrix: Matrix) -> list[int]:
        """Give for each task the least time from its start to the project's end."""
        tail = self.tail
        return [max(map(int.__add__, row, tail)) for row in matrix]

    def _open(self, matrix: Matrix, reach: list[int], first: int, second: int) -> bool:
        """Say whether the first may still end before the second begins."""
        lasts = self.length[first]
        loops = matrix[second][first] + lasts > 0
        return not loops and matrix[0][first] + lasts + reach[second] < self.bound

    def _forced(self, matrix: Matrix) -> Matrix | None:
        """Order all pairs that leave no choice; None where one cannot be ordered at all."""
        changed = True
        while changed:
            changed = False
            reach = self._reach(matrix)
            if reach[0] >= self.bound:
                return None
            for one, other in self.apart:
                if self._ordered(matrix, one, other) or self._ordered(matrix, other, one):
                    continue
                forth = self._open(matrix, reach, one, other)
                back = self._open(matrix, reach, other, one)
                if not forth and not back:
                    return None
                if forth != back:
                    pair = (one, other) if forth else (other, one)
                    matrix = limited(matrix, *pair, self.length[pair[0]])
                    changed = True
        return matrix

    def _ordered(self, matrix: Matrix, first: int, second: int) -> bool:
        return matrix[first][second] >= self.length[first]

    # -- conflicts -----------------------------------------------------------------------

    def _conflict(self, matrix: Matrix) -> list[Pair] | None:
        """Give the orders that settle a conflict, best first; None where there is none."""
        starts, reach = matrix[0], self._reach(matrix)
        found: list[Pair] | None = None
        for peaks, some in enumerate(self._overloads(starts), 1):
            pairs = [pair for pair in permutations(some, 2) if self._open(matrix, reach, *pair)]
            if found is None or len(pairs) < len(found):
                found = pairs
            if peaks >= MOST_PEAKS or len(found) < 2:
                break
        if found is None:
            return None
        spread = self.chance * self.bound if self.bound < 1 << 59 else self.chance * max(reach)

        def price(pair: Pair) -> float:
            first, second = pair
            delay = max(0, starts[first] + self.length[first] - starts[second])
            ends = starts[first] + self.length[first] + reach[second]
            slack = 0 if matrix[second][first] <= NONE else 1
            return ends + 0.5 * delay + slack + spread * self.random.random()

        return sorted(found, key=price)

    def _overloads(self, starts: list[int]) -> Iterator[tuple[int, ...]]:
        """Give small sets of tasks that ask for too much together, in order of time."""
        tasks = sorted(range(1, len(starts)), key=lambda one: starts[one])
        running: list[int] = []
        for task in tasks:
            at = starts[task]
            running = [one for one in running if starts[one] + self.length[one] > at]
            running.append(task)
            for n, room in enumerate(self.room):
                asked = [one for one in running if self.asks[one][n]]
                if sum(self.asks[one][n] for one in asked) > room:
                    yield self._least_set(asked, n, room)

    def _least_set(self, some: list[int], resource: int, room: int) -> tuple[int, ...]:
        """Give tasks that together ask for too much, and no longer if any one is left out."""
        found: list[int] = []
        asked = 0
        for one in sorted(some, key=lambda task: -self.asks[task][resource]):
            found.append(one)
            asked += self.asks[one][resource]
            if asked > room:
                break
        for one in found[::-1]:
            if asked - self.asks[one][resource] > room:
                found.remove(one)
                asked -= self.asks[one][resource]
        return tuple(found)
