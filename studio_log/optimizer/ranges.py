"""Sets of whole numbers as ranges: closed, apart and in order."""

from collections.abc import Iterable, Sequence

Ranges = list[tuple[int, int]]


def together(some: Iterable[tuple[int, int]]) -> Ranges:
    """Give what lies in any of some ranges; those that touch become one."""
    found: Ranges = []
    for low, high in sorted(some):
        if low > high:
            continue
        if found and low <= found[-1][1] + 1:
            found[-1] = (found[-1][0], max(high, found[-1][1]))
        else:
            found.append((low, high))
    return found


def common(one: Sequence[tuple[int, int]], other: Sequence[tuple[int, int]]) -> Ranges:
    """Give what lies in both."""
    found: Ranges = []
    first = second = 0
    while first < len(one) and second < len(other):
        low = max(one[first][0], other[second][0])
        high = min(one[first][1], other[second][1])
        if low <= high:
            found.append((low, high))
        if one[first][1] < other[second][1]:
            first += 1
        else:
            second += 1
    return found


def moved(some: Iterable[tuple[int, int]], least: int, most: int) -> Ranges:
    """Give all that lies least to most behind a member."""
    return together((low + least, high + most) for low, high in some) if least <= most else []


def flat(some: Iterable[tuple[int, int]]) -> list[int]:
    """Give the ends of all ranges in one list."""
    return [end for one in some for end in one]
