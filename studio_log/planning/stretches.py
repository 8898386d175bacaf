"""Sets of slots as stretches: (first, last), both in it, apart and in order."""

from collections.abc import Iterable, Sequence

from studio_log.planning.hours import Window

Stretch = tuple[int, int]
Ranges = list[Stretch]


def joined(some: Iterable[Stretch]) -> Ranges:
    """Give stretches in order, those that meet as one; empty ones go."""
    found: Ranges = []
    for low, high in sorted(some):
        if high < low:
            continue
        if found and low <= found[-1][1] + 1:
            found[-1] = (found[-1][0], max(high, found[-1][1]))
        else:
            found.append((low, high))
    return found


def cut(some: Iterable[Stretch], low: int, high: int) -> Ranges:
    """Give what lies from low to high."""
    ends = [(max(one, low), min(other, high)) for one, other in some]
    return [(one, other) for one, other in ends if one <= other]


def moved(some: Iterable[Stretch], least: int, most: int) -> Ranges:
    """Give all that lies least to most behind a slot of the set; either may be negative."""
    return joined((low + least, high + most) for low, high in some) if least <= most else []


def met(some: Sequence[Stretch], others: Sequence[Stretch]) -> Ranges:
    """Give what lies in both."""
    found: Ranges = []
    first = second = 0
    while first < len(some) and second < len(others):
        low = max(some[first][0], others[second][0])
        high = min(some[first][1], others[second][1])
        if low <= high:
            found.append((low, high))
        if some[first][1] < others[second][1]:
            first += 1
        else:
            second += 1
    return found


def in_hours(some: Sequence[Stretch], windows: Iterable[Window], length: int) -> Ranges:
    """Give the starts that lie in hours with all of a visit; one without hands needs none."""
    if not length:
        return list(some)
    return met(some, joined((one.start, one.end - length) for one in windows))
