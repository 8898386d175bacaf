"""Placing a lot whose links bind visits far apart: the way is split until they hold.

A longest time between two visits that are no neighbours is no part of a path. So the lot is
placed without it; where that breaks a link, the range of its first visit is cut in two, and
each half says how late the second may be. The cheapest half goes first: so the first place
that keeps all links is the best.
"""

from collections.abc import Sequence
from dataclasses import replace
from heapq import heappop, heappush
from itertools import count
from typing import Final

from studio_log.planning.board import Board, Placement
from studio_log.planning.chain import Chain, links_of
from studio_log.planning.placing import place
from studio_log.planning.problem import Problem
from studio_log.planning.wish import Wish

MOST_CUTS: Final = 200
Limits = Sequence[tuple[int, int]]


def place_lot(
    chain: Chain, problem: Problem, board: Board, wish: Wish
) -> tuple[int, Placement] | None:
    """Give the cheapest place that keeps all limits, and its price; None where none was found."""
    links = [one for one in links_of(chain, problem) if one[0] >= 0]
    if not links:
        return place(chain, problem, board, wish)
    number = count()
    heap: list[tuple[int, int, Limits, Placement]] = []

    def look(limits: Limits) -> None:
        found = place(chain, problem, board, replace(wish, limits=limits))
        if found is not None:
            heappush(heap, (found[0], next(number), limits, found[1]))

    look(wish.limits)
    for _ in range(MOST_CUTS):
        if not heap or wish.stop():
            return None
        cost, _, limits, placement = heappop(heap)
        broken = next((one for one in links if _breaks(one, placement)), None)
        if broken is None:
            return cost, placement
        for half in _halves(limits, broken, placement.starts[broken[0]]):
            look(half)
    return None


def _breaks(link: tuple[int, int, int], placement: Placement) -> bool:
    first, second, most = link
    return placement.starts[second] - placement.starts[first] > most


def _halves(limits: Limits, link: tuple[int, int, int], at: int) -> list[Limits]:
    """Cut the range of the link's first visit behind where it was, and bound the second."""
    first, second, most = link
    low, high = limits[first]
    found: list[Limits] = []
    for start, end in ((low, at), (at + 1, high)):
        if start <= end:
            half = list(limits)
            half[first] = (start, end)
            half[second] = (limits[second][0], min(limits[second][1], end + most))
            found.append(half)
    return found
