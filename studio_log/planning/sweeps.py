"""The sweeps of exact placing: all ways from one visit to the next, each looked at once."""

from collections.abc import Sequence
from typing import Final

from studio_log.planning.chain import Between

FAR: Final = 1 << 60
"""The price of what cannot be."""

Arrivals = tuple[list[int], list[int]]
"""By destination: the price of the best way there without its own, and where it comes from."""


def minima(
    keys: Sequence[int],
    sources: Sequence[int],
    targets: Sequence[int],
    floor: Sequence[int],
    reach: tuple[int, int],
) -> list[int]:
    """Give for each target which source in reach has the least key; -1 where none is.

    In reach lie sources so many slots before the target, least and most, and not before its
    floor. All three lists rise: so each source is taken up once and dropped once.
    """
    least, most = reach
    if least > most:
        return [-1] * len(targets)
    ahead = [*sources, FAR]
    found: list[int] = []
    queue: list[int] = []
    head = fed = 0
    for at, low in zip(targets, floor, strict=True):
        top = at - least
        while ahead[fed] <= top:
            key = keys[fed]
            while len(queue) > head and keys[queue[-1]] >= key:
                queue.pop()
            queue.append(fed)
            fed += 1
        bottom = at - most
        if low > bottom:  # noqa: PLR1730 - a call of max is felt in the innermost loop
            bottom = low
        while head < len(queue) and ahead[queue[head]] < bottom:
            head += 1
        found.append(queue[head] if head < len(queue) else -1)
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
        best = minima(prices, sources, targets, floor, (between.least, between.most))
        return [FAR if one < 0 else prices[one] for one in best], best
    aim = -(-between.target // grid)
    late = [price - at * grid for at, price in zip(sources, prices, strict=True)]
    soon = [price + at * grid for at, price in zip(sources, prices, strict=True)]
    long, short = (
        (max(between.least, aim), between.most),
        (between.least, min(between.most, aim - 1)),
    )
    after = minima(late, sources, targets, floor, long)
    before = minima(soon, sources, targets, floor, short)
    costs, places = [], []
    for at, one, other in zip(targets, after, before, strict=True):
        minutes = at * grid - between.target
        long_cost = FAR if one < 0 else late[one] + minutes
        short_cost = FAR if other < 0 else soon[other] - minutes
        good = long_cost <= short_cost
        costs.append(long_cost if good else short_cost)
        places.append(one if good else other)
    return costs, places
