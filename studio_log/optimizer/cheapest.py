"""The cheapest changes that let all dates be kept, or that let a plan be at all.

First of everything that may be asked for together, then of one kind of things alone. What comes
out is enough by the model's own solution, which becomes a plan of the changed problem.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from studio_log.optimizer.frame import Frame
from studio_log.optimizer.levels import Levels
from studio_log.optimizer.model import Part
from studio_log.optimizer.options import KINDS, OF_DATES, fits, options_of
from studio_log.optimizer.priced import PricedModel
from studio_log.optimizer.priced_dates import PricedDates
from studio_log.optimizer.solving import Measure, solve
from studio_log.planning.change_kinds import Change
from studio_log.planning.effort import WrongPlanError
from studio_log.planning.engine import Studio
from studio_log.planning.late_ways import last_needed
from studio_log.planning.plan_studio import plan_of
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.solver import Cheap

WORK: Final = 12.0
"""Measure of work for all kinds together, and"""
KIND_WORK: Final = 3.0
"""for one kind alone."""
PLACED_WORK: Final = 2.0
"""For the vessels of a plan whose times are known."""


@dataclass(frozen=True, slots=True)
class Cheapest:
    """Looks for the cheapest ways out of one problem."""

    problem: Problem
    stop: Callable[[], bool]
    measure: Measure

    def found(self, plan: Plan | None) -> Iterator[Cheap]:
        """Give them as they are found; `plan` is a late one, None where there is no plan at all."""
        if any(one.kind for one in self.problem.milks):
            return  # what a milk stands in is not modelled so that proofs hold
        kinds = KINDS if plan is not None else tuple(it for it in KINDS if it not in OF_DATES)
        for some, work in [(kinds, WORK), *(((one,), KIND_WORK) for one in kinds)]:
            if self.stop():
                return
            one = self._cheapest(some, plan, work)
            if one is not None:
                yield one

    def _cheapest(self, kinds: tuple[str, ...], plan: Plan | None, work: float) -> Cheap | None:
        own = self._model(kinds, plan)
        if own is None:
            return None
        own.model.minimize(own.cost)
        solved = solve(own.model, replace(self.measure, work=work), self.stop)
        values = solved.values
        if values is None:
            return None
        said = [one(lambda variable: values[variable.index]) for one in own.said]
        changes = tuple(one for one in said if one is not None)
        starts = {name: tuple(values[one.index] for one in some)
                  for name, some in own.starts.items()}  # fmt: skip
        made = self._plan(changes, starts) if changes else None
        whole = len(kinds) > 1 and solved.found == "optimal"
        return None if made is None else Cheap(changes, made, least=whole)

    def _model(self, kinds: tuple[str, ...], plan: Plan | None) -> PricedModel | None:
        """Give the model of a problem in which some kinds may be asked for; None without hope."""
        options = options_of(self.problem, kinds, last_needed(self.problem, plan))
        studio = Studio(options.wide(self.problem), self.stop)
        if studio.impossible:
            return None
        frame = Frame(studio)
        if frame.impossible():
            return None
        own = PricedModel(frame, Part(tuple(studio.chains), frame.sets), self.problem, options)
        if plan is not None:
            PricedDates(own)
        return own

    def _plan(self, changes: tuple[Change, ...], starts: dict[str, tuple[int, ...]]) -> Plan | None:
        """Give the plan that a solution stands for, of the problem with its changes."""
        changed = fits(self.problem, changes)
        if changed is None:
            return None
        studio = Studio(changed, self.stop)
        frame = Frame(studio)
        sets = {name: [[(at, at)] for at in own] for name, own in starts.items()}
        part = Part(tuple(studio.chains), sets)
        found = Levels(frame, part, self.stop).run(replace(self.measure, work=PLACED_WORK), {})
        try:
            return None if found.places is None else plan_of(studio, found.places)
        except WrongPlanError:
            return None
