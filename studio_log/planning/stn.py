"""Simple temporal networks: points, least and longest times between them, and what follows.

After Dechter, Meiri and Pearl, Temporal constraint networks, Artificial Intelligence 49 (1991),
61-95: the network has times that keep to it if and only if its distance graph has no cycle of
negative length, and the shortest paths are the tightest limits that follow.
"""

from collections.abc import Hashable
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Generic, TypeVar

Point = TypeVar("Point", bound=Hashable)


class LoopError(Exception):
    """Limits that contradict each other; `points` is the cycle, its first point again at its end.

    `excess` is by how much they miss each other, above 0.
    """

    def __init__(self, points: tuple[Hashable, ...], excess: int) -> None:
        super().__init__(" → ".join(map(str, points)))
        self.points, self.excess = points, excess


@dataclass
class Network(Generic[Point]):
    """Limits between points, as edges: time[b] - time[a] <= length."""

    points: dict[Point, None] = field(default_factory=dict)
    edges: dict[tuple[Point, Point], int] = field(default_factory=dict)

    def limit(self, first: Point, second: Point, least: int | None, most: int | None) -> None:
        """Let second come `least` to `most` after first; None is no limit."""
        self.points.setdefault(first)
        self.points.setdefault(second)
        if most is not None:
            self._edge(first, second, most)
        if least is not None:
            self._edge(second, first, -least)

    def _edge(self, first: Point, second: Point, length: int) -> None:
        key = (first, second)
        self.edges[key] = min(length, self.edges.get(key, length))

    def windows(self, origin: Point) -> dict[Point, tuple[int | None, int | None]]:
        """Give earliest and latest time of every point from an origin; LoopError if none is.

        None where no limit reaches. Two passes of Bellman and Ford: points times edges.
        """
        self.check()
        latest = self._paths(origin, list(self.edges.items()))
        turned = [((second, first), length) for (first, second), length in self.edges.items()]
        earliest = self._paths(origin, turned)
        return {
            one: (None if earliest[one] is None else -earliest[one], latest[one])  # type: ignore[operator]
            for one in self.points
        }

    def check(self) -> None:
        """Raise LoopError if limits contradict each other anywhere."""
        self._sound(list(self.edges.items()))

    def _paths(
        self, origin: Point, edges: list[tuple[tuple[Point, Point], int]]
    ) -> dict[Point, int | None]:
        """Give the shortest path from the origin to each point; there is no negative cycle."""
        far: dict[Point, int | None] = dict.fromkeys(self.points)
        far[origin] = 0
        changed = True
        while changed:
            changed = False
            for (first, second), length in edges:
                start, end = far[first], far[second]
                if start is not None and (end is None or start + length < end):
                    far[second] = start + length
                    changed = True
        return far

    def _sound(self, edges: list[tuple[tuple[Point, Point], int]]) -> None:
        """Raise LoopError if a cycle is negative, wherever it lies."""
        far = dict.fromkeys(self.points, 0)
        before: dict[Point, Point] = {}
        moved: Point | None = None
        for _ in range(len(self.points) + 1):
            moved = None
            for (first, second), length in edges:
                if far[first] + length < far[second]:
                    far[second] = far[first] + length
                    before[second] = first
                    moved = second
            if moved is None:
                return
        if moved is not None:
            raise self._loop(moved, before, dict(edges))

    def _loop(
        self, point: Point, before: dict[Point, Point], lengths: dict[tuple[Point, Point], int]
    ) -> LoopError:
        for _ in self.points:
            point = before[point]  # so many steps back lie within the cycle
        cycle = [point]
        while len(cycle) == 1 or cycle[-1] != point:
            cycle.append(before[cycle[-1]])
        cycle.reverse()
        return LoopError(tuple(cycle), -sum(lengths[pair] for pair in pairwise(cycle)))
