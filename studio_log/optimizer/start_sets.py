"""The calendar's sweep: at which slots each visit of a lot may begin, were it alone.

Forward from visit to visit and back again, over sets of ranges. What is left out can be part of
no plan; so nights, closed days and the cure never come into the model.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from studio_log.planning.board import Board
from studio_log.planning.chain import Between, Chain
from studio_log.planning.problem import Problem
from studio_log.planning.stretches import Ranges, in_hours, joined, met, moved


@dataclass(frozen=True, slots=True)
class Weather:
    """Slots at whose cloth takes at least so many slots to dry."""

    least: int
    slots: Ranges


def weathers(problem: Problem, between: Between, reach: int) -> list[Weather]:
    """Give the classes of days by the shortest drying of cloth hung then; all of them in one list.

    `reach` is a slot behind all others.
    """
    if not between.drying or not problem.drying:
        return [Weather(between.least, [(0, reach)])]
    days: dict[int, list[tuple[int, int]]] = {}
    rest, at = [(0, reach)], 0
    for day in sorted(problem.drying):
        midnight = datetime(day.year, day.month, day.day)  # noqa: DTZ001 - the file's own time
        low, high = (
            -(-problem.clock.minute(one) // problem.grid)
            for one in (midnight, midnight + timedelta(days=1))
        )
        least = max(between.least, -(-problem.drying[day] // problem.grid))
        days.setdefault(least, []).append((low, high - 1))
        rest = [*rest[:-1], (at, low - 1), (high, reach)]
        at = max(at, high)
    days.setdefault(between.least, []).extend(rest)
    return [Weather(least, met(joined(some), [(0, reach)])) for least, some in days.items()]


def swept(
    chain: Chain, problem: Problem, board: Board | None, limits: Sequence[tuple[int, int]]
) -> list[Ranges]:
    """Give for each visit the slots at which it may begin; an empty set where no plan is.

    Without a board there are no hours: any slot will do for them.
    """
    visits = chain.visits
    sets = [joined([limit]) for limit in limits]
    if board is not None:
        pairs = zip(sets, visits, strict=True)
        sets = [in_hours(own, board.windows, visit.length) for own, visit in pairs]
    reach = 2 * problem.horizon
    kinds = [weathers(problem, one, reach) for one in chain.betweens]
    for number, between in enumerate(chain.betweens):
        length, ways = visits[number].length, []
        for kind in kinds[number]:
            own = met(moved(sets[number], length, length), kind.slots)
            ways += moved(own, kind.least, between.most)
        sets[number + 1] = met(sets[number + 1], joined(ways))
    for number in range(len(chain.betweens) - 1, -1, -1):
        length, ways = visits[number].length, []
        for kind in kinds[number]:
            before = moved(sets[number + 1], -chain.betweens[number].most, -kind.least)
            ways += met(before, kind.slots)
        sets[number] = met(sets[number], moved(joined(ways), -length, -length))
    return sets
