"""Which lots of a conflict want the same thing, and on which day: proved, or not said.

One lot after the other is left out; those without which all could be kept are the lots of the
conflict. Each of them alone, with its dates and the hours, must hold the thing between the latest
moment at which it can take it and the earliest at which it can give it back, in every plan that
keeps its dates. Where several must at one moment, and there is not enough for them, that is the
day.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Any, Final

from studio_log.optimizer.model import StudioModel
from studio_log.optimizer.solving import Measure, solve
from studio_log.planning.change_kinds import LeaveOut
from studio_log.planning.changes import apply_change
from studio_log.planning.problem import BadProblemError, Problem

if TYPE_CHECKING:
    from studio_log.optimizer.limits import Limit
    from studio_log.optimizer.shape import Stretch
    from studio_log.optimizer.solving import Found

MOST_LOTS: Final = 24
"""More are not left out one by one: each takes a proof."""
FEW_LOTS: Final = 6
"""More are no sentence."""
Modelled = Callable[[Problem, "Sequence[Limit]"], "StudioModel | Found"]
Holds = Callable[[Problem, "Sequence[Limit]"], "Found"]


@dataclass(frozen=True, slots=True)
class Must:
    """A lot must hold so much of the thing from one slot to another."""

    lot: str
    begin: int
    end: int
    much: int


@dataclass(frozen=True, slots=True)
class Clash:
    """Looks for the lots and the day of a conflict in which one thing is short."""

    problem: Problem
    kept: "Sequence[Limit]"
    thing: "Limit"
    modelled: Modelled
    holds: Holds
    measure: Measure
    stop: Callable[[], bool]

    def found(self) -> dict[str, Any]:
        """Give the lots, and the day where there is one, as JSON has them; {} where not known."""
        lots = self._lots()
        if not 1 < len(lots) <= FEW_LOTS:
            return {}
        musts = [one for name in lots for one in self._musts(name)]
        at = self._short(musts)
        if at is None:
            return {"lots": lots}
        there = list(dict.fromkeys(one.lot for one in musts if one.begin <= at < one.end))
        return {"lots": there, "day": self._day(at).isoformat()}

    def _lots(self) -> list[str]:
        """Give lots that cannot all keep the limits, while all but any one of them can."""
        left, needed = self.problem, list[str]()
        if len(left.lots) > MOST_LOTS:
            return []
        for name in [one.name for one in left.lots]:
            try:
                without = apply_change(left, LeaveOut(name))
            except BadProblemError:
                return []
            found = self.holds(without, self.kept) if without.lots else "feasible"
            if found == "infeasible":
                left = without
            elif found == "unknown":
                return []
            else:
                needed.append(name)
        return needed

    def _musts(self, name: str) -> Iterator[Must]:
        """Give when a lot must hold the thing, were all but its dates and the hours free."""
        alone = self._alone(name)
        rest = [one for one in self.kept if one != self.thing]
        for number, stretch in enumerate(self._stretches(alone, rest, name)):
            end = self._best(alone, rest, name, number, earliest_end=True)
            begin = self._best(alone, rest, name, number, earliest_end=False)
            if begin is not None and end is not None and begin < end:
                much = stretch.much if self.thing.part == "store" else 1
                yield Must(name, begin, end, much)

    def _alone(self, name: str) -> Problem:
        problem = self.problem
        for one in self.problem.lots:
            if one.name != name:
                problem = apply_change(problem, LeaveOut(one.name))
        return problem

    def _stretches(self, alone: Problem, rest: "Sequence[Limit]", name: str) -> "list[Stretch]":
        model = self.modelled(alone, rest)
        if not isinstance(model, StudioModel) or name not in model.starts:
            return []
        return [one for one in model.frame.stretches[name] if self._is_it(model, name, one)]

    def _is_it(self, model: StudioModel, name: str, stretch: "Stretch") -> bool:
        if self.thing.part == "store":
            return stretch.run < 0 and stretch.store == self.thing.name
        run = model.frame.studio.chains[name].runs
        return stretch.run >= 0 and run[stretch.run].kind == self.thing.name

    def _best(
        self, alone: Problem, rest: "Sequence[Limit]", name: str, number: int, *, earliest_end: bool
    ) -> int | None:
        """Give the earliest end or the latest beginning of a stretch; None where not proved."""
        model = self.modelled(alone, rest)
        if not isinstance(model, StudioModel):
            return None
        own = [one for one in model.frame.stretches[name] if self._is_it(model, name, one)]
        visit, after = own[number].end if earliest_end else own[number].begin
        if visit < 0:
            return after
        moment = model.starts[name][visit] + after
        if earliest_end:
            model.model.minimize(moment)
        else:
            model.model.maximize(moment)
        solved = solve(model.model, self.measure, self.stop)
        return round(solved.objective) if solved.found == "optimal" else None

    def _short(self, musts: Sequence[Must]) -> int | None:
        """Give the first slot at which more must be held than there is."""
        room = self._room()
        for at in sorted({one.begin for one in musts}):
            there = [one for one in musts if one.begin <= at < one.end]
            if sum(one.much for one in there) > room and len({one.lot for one in there}) > 1:
                return at
        return None

    def _room(self) -> int:
        if self.thing.part == "store":
            return self.problem.stores[self.thing.name]
        return sum(one.kind == self.thing.name for one in self.problem.vessels)

    def _day(self, slot: int) -> date:
        return self.problem.clock.local(slot * self.problem.grid).date()
