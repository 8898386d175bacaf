"""The score of a plan while it is made: goals take the pieces that are ready first."""

from collections.abc import Iterable, Mapping
from itertools import permutations
from typing import Final

from studio_log.planning.problem import Goal, Lot, Problem, Span

MOST_ORDERS: Final = 3
"""Goals of which every order is tried; more are taken by date."""


def _to_the_end(lot: Lot) -> int:
    """Give the minutes from the last step before the cure to the end of the lot."""
    if not lot.steps[-1].cure:
        return 0
    return sum(one.then_after for one in lot.steps[-2:-1]) + lot.steps[-1].least


def end_of(lot: Lot, spans: Mapping[str, Span]) -> int:
    """Give the end of the last step before the cure, planned or recorded; 0 where there is none."""
    for step in reversed(lot.steps):
        fact = lot.facts.get(step.name)
        if step.name in spans and not step.cure:
            return spans[step.name].end
        if fact is not None and fact.end is not None and not step.cure:
            return fact.end
    return 0


def dues_late(lots: Iterable[Lot], spans: Mapping[str, Mapping[str, Span]]) -> int:
    """Give the weighted minutes that lots with a date of their own are late in a plan."""
    return sum(
        lot.weight * max(0, max(one.end for one in own.values()) - lot.due)
        for lot in lots
        if lot.due is not None and (own := spans.get(lot.name))
    )


class Lateness:
    """Minutes late of a whole plan, from the ends of its lots."""

    def __init__(self, problem: Problem) -> None:
        self.pieces = {one.name: one.pieces for one in problem.lots}
        self.cure = {one.name: _to_the_end(one) for one in problem.lots}
        self.dues = {one.name: (one.due, one.weight) for one in problem.lots if one.due is not None}
        goals = sorted(problem.goals, key=lambda goal: goal.at - goal.cured)
        few = len(goals) <= MOST_ORDERS
        self.orders = list(permutations(goals)) if few else [tuple(goals)]
        self.wanted = {name for goal in goals for name in goal.lots}
        self.never = 10 * problem.horizon

    def of_due(self, lot: str, end: int) -> int:
        """Give the weighted minutes that a lot with a date of its own is late."""
        if lot not in self.dues:
            return 0
        due, weight = self.dues[lot]
        return weight * max(0, end + self.cure[lot] - due)

    def of_goals(self, ends: Mapping[str, int]) -> int:
        """Give the minutes that all goals are late together."""
        return min(self._in_order(order, ends)[0] for order in self.orders)

    def serves(self, ends: Mapping[str, int]) -> dict[str, dict[str, int]]:
        """Give for each goal so many pieces of which lots."""
        return min((self._in_order(one, ends) for one in self.orders), key=lambda it: it[0])[1]

    def _in_order(
        self, order: tuple[Goal, ...], ends: Mapping[str, int]
    ) -> tuple[int, dict[str, dict[str, int]]]:
        left = dict(self.pieces)
        late, serves = 0, {}
        for goal in order:
            wanted, last = goal.pieces, 0
            own: dict[str, int] = {}
            for name in sorted(goal.lots, key=lambda one: (ends.get(one, self.never), one)):
                taken = min(wanted, left[name])
                if taken:
                    own[name] = taken
                    left[name] -= taken
                    wanted -= taken
                    last = ends.get(name, self.never)
                if not wanted:
                    break
            late += max(0, last + goal.cured - goal.at) + wanted * self.never
            serves[goal.name] = own
        return late, serves
