"""Sets of slots as stretches: (first, last), both in it, apart and in order."""

from collections.abc import Iterable, Sequence

from studio_log.planning.hours import Window

Stretch = tuple[int, int]


def joined(some: Iterable[Stretch]) -> list[Stretch]:
    """Give stretches in order, those that meet as one; empty ones go."""
    found: list[Stretch] = []
    for low, high in sorted(some):
        if high < low:
            continue
        if found and low <= found[-1][1] + 1:
            found[-1] = (found[-1][0], max(high, found[-1][1]))
        else:
            found.append((low, high))
    return found


def cut(some: Iterable[Stretch], low: int, high: int) -> list[Stretch]:
    """Give what lies from low to high."""
    ends = [(max(one, low), min(other, high)) for one, other in some]
    return [(one, other) for one, other in ends if one <= other]


def moved(some: Iterable[Stretch], first: int, last: int) -> list[Stretch]:
    """Move the ends of each stretch."""
    return joined((low + first, high + last) for low, high in some)


def met(some: Sequence[Stretch], others: Iterable[Stretch]) -> list[Stretch]:
    """Give what lies in both, each in order."""
    found: list[Stretch] = []
    place = 0
    for low, high in others:
        while place < len(some) and some[place][1] < low:
            place += 1
        at = place
        while at < len(some) and some[at][0] <= high:
            found.append((max(some[at][0], low), min(some[at][1], high)))
            at += 1
    return joined(found)


def in_hours(some: Sequence[Stretch], windows: Iterable[Window], length: int) -> list[Stretch]:
    """Give the starts that lie in hours with all of a visit; one without hands needs none."""
    return met(some, ((one.start, one.end - length) for one in windows)) if length else list(some)
