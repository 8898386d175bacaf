"""The cheapest changes that let all dates be kept, or that let a plan be at all.

First of everything that may be asked for together, then of each kind of things alone. What comes
out is enough by the model's own solution, which becomes a plan of the changed problem.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from studio_log.optimizer.frame import Frame
from studio_log.optimizer.levels import Levels
from studio_log.optimizer.model import Part
from studio_log.optimizer.options import KINDS, OF_DATES, options_of
from studio_log.optimizer.priced import PricedModel
from studio_log.optimizer.priced_dates import PricedDates
from studio_log.optimizer.solving import Measure, solve
from studio_log.planning.change_kinds import Change
from studio_log.planning.changes import changed_if_can
from studio_log.planning.effort import WrongPlanError
from studio_log.planning.engine import Studio
from studio_log.planning.late_ways import last_needed
from studio_log.planning.plan_studio import plan_of
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.solver import Cheap

WORK: Final = 12.0
"""Measure of work for all kinds together, and"""
KIND_WORK: Final = 2.0
"""for one kind alone."""
PLACED_WORK: Final = 2.0
"""For the vessels of a plan whose times are known."""


@dataclass(frozen=True, slots=True)
class Cheapest:
    """Looks for the cheapest ways out of one problem."""

    problem: Problem
    stop: Callable[[], bool]
    """Whether it is time to end, and"""
    enough: Callable[[], bool]
    """whether it is time to leave the search for what is cheapest of all together."""
    measure: Measure

    def found(self, plan: Plan | None) -> Iterator[Cheap]:
        """Give them as they are found; `plan` is a late one, None where there is no plan at all."""
        if any(one.kind for one in self.problem.milks):
            return  # what a milk stands in is not modelled so that proofs hold
        kinds = KINDS if plan is not None else tuple(it for it in KINDS if it not in OF_DATES)
        for some, work, stop in [(kinds, WORK, self.enough)] + [
            ((one,), KIND_WORK, self.stop) for one in kinds
        ]:
            one = None if self.stop() else self._cheapest(some, plan, work, stop)
            if one is not None:
                yield one

    def _cheapest(
        self, kinds: tuple[str, ...], plan: Plan | None, work: float, stop: Callable[[], bool]
    ) -> Cheap | None:
        """Give the cheapest of some kinds, None where nothing is enough or nothing was found."""
        own = self._model(kinds, plan)
        if own is None:
            return None
        if plan is not None:
            PricedDates(own)
        own.model.minimize(own.cost)
        if plan is not None:
            self._begin_at(own, plan)
        solved = solve(own.model, replace(self.measure, work=work), stop)
        values = solved.values
        if values is None:
            return None
        said = [one(lambda variable: values[variable.index]) for one in own.said]
        changes = tuple(one for one in said if one is not None)
        starts = {name: tuple(values[one.index] for one in some)
                  for name, some in own.starts.items()}  # fmt: skip
        made = self._plan(changes, starts) if changes else None
        least = len(kinds) > 1 and solved.found == "optimal"
        return None if made is None else Cheap(changes, made, least)

    def _model(self, kinds: tuple[str, ...], plan: Plan | None) -> PricedModel | None:
        """Give the model of a problem in which some kinds may be asked for; None without hope."""
        options = options_of(self.problem, kinds, last_needed(self.problem, plan))
        studio = Studio(options.wide(self.problem), self.stop)
        if studio.impossible:
            return None
        frame = Frame(studio)
        if frame.impossible():
            return None
        return PricedModel(frame, Part(tuple(studio.chains), frame.sets), self.problem, options)

    def _plan(self, changes: tuple[Change, ...], starts: dict[str, tuple[int, ...]]) -> Plan | None:
        """Give the plan that a solution stands for, of the problem with its changes."""
        changed = changed_if_can(self.problem, changes)
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

    def _begin_at(self, own: PricedModel, plan: Plan) -> None:
        """Let the solver begin where a plan is: it breaks no rule, and misses dates only."""
        for name, chain in own.frame.studio.chains.items():
            spans, grid = plan.spans.get(name, {}), self.problem.grid
            for number, start in enumerate(own.starts[name]):
                steps = chain.visits[number].steps
                before = chain.betweens[number - 1].step if number else None
                if steps and steps[0][0] in spans:
                    own.model.add_hint(start, spans[steps[0][0]].start // grid)
                elif before is not None and before in spans:
                    own.model.add_hint(start, spans[before].end // grid)
        measure = replace(self.measure, work=PLACED_WORK, held=True)
        values = solve(own.model, measure, self.stop).values
        if values is not None:
            own.model.clear_hints()  # type: ignore[no-untyped-call]
            for index, value in enumerate(values):
                own.model.add_hint(own.model.get_int_var_from_proto_index(index), value)
