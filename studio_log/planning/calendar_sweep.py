"""One lot against the calendar alone: from visit to visit over stretches of starts.

The studio is empty but for this lot, so only hours, limits and weather count. A lot is a path,
so the sweep is exact: a visit has a place if and only if its stretches are not empty. Longest
times between visits far apart are looked at in `calendar_links`. Times are slots of the grid.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.planning.chain import (
    NEVER,
    Between,
    Chain,
    links_of,
)
from studio_log.planning.hours import Window, windows_of
from studio_log.planning.problem import Problem
from studio_log.planning.stretches import Stretch, cut, in_hours, joined

FOREVER: Final = 10**8


@dataclass(frozen=True, slots=True)
class Death:
    """Where a lot's way ends: no start of `visit` can be reached from `sources`."""

    chain: Chain
    visit: int
    between: Between | None
    """What passes before it; None where the lot was to begin with it."""
    sources: tuple[Stretch, ...]
    """When that may begin: ends of the visit before, or the recorded moment."""
    due: tuple[Stretch, ...]
    """In which starts the visit would have to lie, hours aside."""
    best: "Miss | None"
    """The nearest that hours come to it; None where there are none behind it."""


@dataclass(frozen=True, slots=True)
class Miss:
    """A start in the hours that comes too late: begun at `source`, due by `by`, there at `at`.

    In minutes.
    """

    source: int
    by: int
    at: int


def death_of(
    chain: Chain, problem: Problem, windows: Sequence[Window] | None = None
) -> Death | None:
    """Give where a lot dies in the calendar alone, None if it goes through."""
    found = _swept(chain, problem, windows_of(problem) if windows is None else windows)
    return found if isinstance(found, Death) else None


def earliest_end(chain: Chain, problem: Problem, windows: Sequence[Window]) -> int | None:
    """Give the minute before which no plan ends a lot, its cure aside; None if it dies."""
    found = _swept(chain, problem, windows)
    return None if isinstance(found, Death) else found[0][0] * problem.grid


def _swept(chain: Chain, problem: Problem, windows: Sequence[Window]) -> Death | list[Stretch]:
    """Give when the last visit may end, or where the way ends."""
    limits = last_moments(chain, problem)
    sources: list[Stretch] | None = None
    for number, visit in enumerate(chain.visits):
        between = chain.betweens[number - 1] if number else chain.opening
        if sources is None:
            begun, due = opened(chain, problem)
        else:
            begun, due = sources, reached(sources, between, problem)
        due = cut(due, 0, limits[number])
        starts = in_hours(due, windows, visit.length)
        if not starts:
            best = _nearest(begun, chain, number, problem, windows)
            return Death(chain, number, between, tuple(begun), tuple(due), best)
        sources = [(low + visit.length, high + visit.length) for low, high in starts]
    return sources or []


def last_moments(chain: Chain, problem: Problem) -> list[int]:
    """Give the last slot of each visit: by the horizon, and by links to what is recorded."""
    last = [problem.horizon // problem.grid - visit.length for visit in chain.visits]
    for first, second, most in links_of(chain, problem):
        if first < 0:
            last[second] = min(last[second], most)
    return last


def opened(chain: Chain, problem: Problem) -> tuple[list[Stretch], list[Stretch]]:
    """Give from when the first visit is reached, and its starts, hours aside."""
    grid, opening, since = problem.grid, chain.opening, chain.since
    if opening is None:
        first = -(-since // grid)
        return [(first, first)], [(first, FOREVER)]
    low = max(0, -(-(since + opening.least) // grid))
    high = FOREVER if opening.most >= NEVER else (since + opening.most) // grid
    return [(since // grid, since // grid)], [(low, high)] if low <= high else []


def reached(sources: Sequence[Stretch], between: Between | None, problem: Problem) -> list[Stretch]:
    """Give the starts that can be reached from ends of the visit before, hours aside."""
    if between is None:
        return list(sources)
    most = FOREVER if between.most >= NEVER else between.most
    found = []
    for low, high, least in by_weather(sources, between, problem):
        if least <= most:
            found.append((low + least, high + most))
    return joined(found)


def by_weather(
    sources: Sequence[Stretch], between: Between, problem: Problem
) -> Iterable[tuple[int, int, int]]:
    """Give stretches with the least slots that follow; drying goes by the day it begins on."""
    if not between.drying or not problem.drying:
        for low, high in sources:
            yield low, high, between.least
        return
    for low, high in sources:
        at, since, before = low, low, -1
        while at <= high:
            local = problem.clock.local(at * problem.grid)
            midnight = local.replace(hour=0, minute=0) + timedelta(days=1)
            dry = -(-problem.drying.get(local.date(), 0) // problem.grid)
            least = max(between.least, dry)
            if before not in {-1, least}:
                yield since, at - 1, before
                since = at
            before = least
            at = max(at + 1, -(-problem.clock.minute(midnight) // problem.grid))
        yield since, high, before


def _nearest(
    begun: Sequence[Stretch],
    chain: Chain,
    number: int,
    problem: Problem,
    windows: Sequence[Window],
) -> Miss | None:
    """Give the start in the hours that comes least too late, in minutes."""
    grid, length = problem.grid, chain.visits[number].length
    between = chain.betweens[number - 1] if number else chain.opening
    if between is None or between.most >= NEVER:
        return None
    if not number:
        at = _first_in(windows, -(-(chain.since + between.least) // grid), length)
        by = chain.since + between.most
        return None if at is None else Miss(chain.since, by, at * grid)
    found = []
    for low, high, least in by_weather(begun, between, problem):
        at = _first_in(windows, low + least, length)
        if at is not None:
            source = min(high, at - least)
            found.append(Miss(source * grid, (source + between.most) * grid, at * grid))
    return min(found, key=lambda one: one.at - one.by, default=None)


def _first_in(windows: Sequence[Window], since: int, length: int) -> int | None:
    """Give the first start in the hours from a slot on."""
    fitting = (one for one in windows if max(one.start, since) + length <= one.end)
    return next((max(one.start, since) for one in fitting), None)
