"""The sweeps of exact placing: all ways from one visit to the next, each looked at once."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import Final

from studio_log.planning.chain import Between

FAR: Final = 1 << 60
"""The price of what cannot be."""

Arrivals = tuple[list[int], list[int]]
"""By destination: the price of the best way there without its own, and where it comes from."""


def minima(keys: Sequence[int], firsts: Sequence[int], lasts: Sequence[int]) -> list[int]:
    """Give for each stretch keys[first:last] the place of its least key, -1 for an empty one.

    Both bounds may only grow from stretch to stretch: so each key is looked at once.
    """
    found = []
    queue = [0] * len(keys)
    head = tail = fed = 0
    for first, last in zip(firsts, lasts, strict=True):
        fed = max(fed, first)
        while fed < last:
            key = keys[fed]
            while tail > head and keys[queue[tail - 1]] >= key:
                tail -= 1
            queue[tail] = fed
            tail += 1
            fed += 1
        while head < tail and queue[head] < first:
            head += 1
        found.append(queue[head] if head < tail and queue[head] < last else -1)
    return found


def floors(targets: Sequence[int], blocked: Sequence[tuple[int, int]]) -> list[int]:
    """Give for each target the first slot from which nothing is blocked up to it."""
    if not blocked:
        return [0] * len(targets)
    found, floor, place = [], 0, 0
    for at in targets:
        while place < len(blocked) and blocked[place][0] < at:
            floor = blocked[place][1]
            place += 1
        found.append(floor)
    return found


def free_starts(
    starts: Sequence[int], blocked: Sequence[tuple[int, int]], offset: int, length: int
) -> list[bool]:
    """Give for each start whether [start + offset, + length) meets nothing blocked."""
    found, place = [], 0
    for start in starts:
        at = start + offset
        while place < len(blocked) and blocked[place][1] <= at:
            place += 1
        found.append(place == len(blocked) or blocked[place][0] >= at + length)
    return found


def sweep(
    sources: Sequence[int],
    prices: Sequence[int],
    targets: Sequence[int],
    between: Between,
    grid: int,
    floor: Sequence[int],
) -> Arrivals:
    """Give the best way from sources to each target.

    Sources are the slots at which a visit ends; `floor` is the first slot from which the way
    is free. Off target a minute costs 1.
    """
    if between.target is None:
        firsts, lasts = _bounds(sources, targets, floor, between.least, between.most)
        best = minima(prices, firsts, lasts)
        return [FAR if one < 0 else prices[one] for one in best], best
    aim = -(-between.target // grid)
    late = [price - at * grid for at, price in zip(sources, prices, strict=True)]
    soon = [price + at * grid for at, price in zip(sources, prices, strict=True)]
    long = _bounds(sources, targets, floor, max(between.least, aim), between.most)
    short = _bounds(sources, targets, floor, between.least, min(between.most, aim - 1))
    after, before = minima(late, *long), minima(soon, *short)
    costs, places = [], []
    for at, one, other in zip(targets, after, before, strict=True):
        minutes = at * grid - between.target
        long_cost = FAR if one < 0 else late[one] + minutes
        short_cost = FAR if other < 0 else soon[other] - minutes
        costs.append(min(long_cost, short_cost))
        places.append(one if long_cost <= short_cost else other)
    return costs, places


def _bounds(
    sources: Sequence[int], targets: Sequence[int], floor: Sequence[int], least: int, most: int
) -> tuple[list[int], list[int]]:
    """Give for each target which sources lie `least` to `most` before it, on a free way."""
    firsts = [
        bisect_left(sources, max(at - most, low)) for at, low in zip(targets, floor, strict=True)
    ]
    lasts = [bisect_right(sources, at - least) for at in targets]
    return firsts, lasts
