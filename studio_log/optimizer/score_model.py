"""The parts of the score as expressions of a model, in the order in which they count.

Lateness comes first. Then sessions and fine minutes, one after the other or, where a session is
worth so many minutes, summed; moved visits count with the sessions where an old plan is kept to.
"""

from collections.abc import Callable
from math import gcd
from typing import TYPE_CHECKING

from studio_log.optimizer.model import Line, StudioModel

if TYPE_CHECKING:
    from ortools.sat.python import cp_model


class ScoreModel:
    """Adds the parts of the score to a model, each when it is asked for first."""

    def __init__(self, own: StudioModel) -> None:
        self.own, self.model = own, own.model
        self.problem = own.frame.problem
        self.studio = own.frame.studio
        self._most = 20 * self.problem.horizon + sum(one.cured for one in self.problem.goals)

    def parts(self) -> dict[str, Callable[[], tuple[Line, int]]]:
        """Give the parts by name, in order: each makes its expression, and the unit it counts in.

        "late", "sessions", "fine"; or "late", "price".
        """
        if self.own.frame.fine_apart:
            return {"late": self.late, "sessions": self.sessions, "fine": self.fine}
        return {"late": self.late, "price": self.price}

    def price(self) -> tuple[Line, int]:
        """Give sessions, moved visits and fine minutes at their prices, summed."""
        prices = self.studio.prices
        fine, unit = self.fine(gcd(prices.session, prices.moved))
        sessions = prices.session // unit * self._visited()
        return sessions + prices.moved // unit * self._moved() + fine, unit

    def sessions(self) -> tuple[Line, int]:
        """Give the sessions, those of the lots that stay with them, and what moved visits cost."""
        prices = self.studio.prices
        if not self.studio.old:
            return self._visited(), 1
        unit = gcd(prices.session, prices.moved)
        sessions = prices.session // unit * self._visited()
        return sessions + prices.moved // unit * self._moved(), unit

    def _visited(self) -> Line:
        return sum(self.own.sessions.values()) + len(self.own.visited)

    def _moved(self) -> Line:
        """Give how many visits of free lots are not where the old plan had them."""
        found: list[Line] = []
        for name in self.own.part.free:
            if name not in self.studio.old:
                continue
            for number, was in enumerate(self.studio.old[name].slots):
                start = self.own.starts[name][number]
                if was is None or not self.studio.chains[name].visits[number].length:
                    continue
                moved = self.model.new_bool_var("")
                self.model.add(start == was).only_enforce_if(~moved)
                found.append(moved)
        return sum(found)

    def _end(self, name: str) -> Line:
        """Give the minute at which a lot is taken down."""
        starts = self.own.starts.get(name)
        if starts is not None:
            last = self.studio.chains[name].visits[-1].length
            return self.problem.grid * (starts[-1] + last)
        placed = self.own.part.fixed.get(name)
        return self.studio.ended[name] if placed is None else placed.end

    def late(self) -> tuple[Line, int]:
        """Give the minutes late of all goals, and of all lots to be planned with a date."""
        parts: list[Line] = self._goals()
        lateness = self.studio.lateness
        for name, (due, weight) in lateness.dues.items():
            if name in self.studio.chains and weight:
                late = self.model.new_int_var(0, self._most, "")
                self.model.add(late >= self._end(name) + lateness.cure[name] - due)
                parts.append(weight * late)
        return sum(parts), 1

    def _goals(self) -> list[Line]:
        """Let each goal take its pieces, each piece serve one goal; give how late they are."""
        serving: dict[str, list[cp_model.IntVar]] = {}
        parts: list[Line] = []
        pieces = self.studio.lateness.pieces
        self.served: dict[tuple[str, str], cp_model.IntVar] = {}
        for goal in self.problem.goals:
            late = self.model.new_int_var(0, self._most, f"late {goal.name}")
            own = []
            for name in dict.fromkeys(goal.lots):
                if not pieces[name]:
                    continue
                taken = self.model.new_int_var(0, min(goal.pieces, pieces[name]), "")
                any_ = self.model.new_bool_var("")
                self.model.add(taken == 0).only_enforce_if(~any_)
                behind = self._end(name) + goal.cured - goal.at
                self.model.add(late >= behind).only_enforce_if(any_)
                self.served[goal.name, name] = taken
                own.append(taken)
                serving.setdefault(name, []).append(taken)
            self.model.add(sum(own) == goal.pieces)
            parts.append(late)
        for name, some in serving.items():
            self.model.add(sum(some) <= pieces[name])
        return parts

    def fine(self, beside: int = 0) -> tuple[Line, int]:
        """Give the fine minutes of the free lots, in units that divide another number too."""
        grid, off = self.problem.grid, list[tuple[Line, int]]()
        for name in self.own.part.free:
            chain = self.studio.chains[name]
            opening = chain.opening
            if opening is not None and opening.target is not None:
                off.append((self.own.starts[name][0], chain.since + opening.target))
            for number, between in enumerate(chain.betweens):
                if between.target is not None:
                    off.append((self.own.gaps[name, number], between.target))
        unit = gcd(grid, beside, *(target for _, target in off))
        parts: list[Line] = []
        for slots, target in off:
            minutes = self.model.new_int_var(0, self._most // unit, "")
            apart = grid // unit * slots - target // unit
            self.model.add(minutes >= apart)
            self.model.add(minutes >= -apart)
            parts.append(minutes)
        for name in self.own.part.free:
            last = self.studio.chains[name].visits[-1].length
            parts.append(grid // unit * (self.own.starts[name][-1] + last))
        return sum(parts), unit
