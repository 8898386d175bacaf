"""What fails only together: limits that cannot all be kept, while all but any one of them can.

One limit after the other is left out. Where the rest is still proved to fail, it stays out; where
a plan is found without it, it is part of the conflict. What is undecided makes the whole undecided:
then nothing is said. Shortest and longest times of lots always hold.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any, Final

from studio_log.optimizer.clash import Clash
from studio_log.optimizer.frame import Frame
from studio_log.optimizer.limits import Limit, limits_of, only
from studio_log.optimizer.model import Part, StudioModel
from studio_log.optimizer.score_model import ScoreModel
from studio_log.optimizer.solving import Found, Measure, Solved, solve
from studio_log.planning.engine import Studio
from studio_log.planning.problem import Goal, Plan, Problem

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

WORK: Final = 6.0
"""Measure of work for each question; what is not decided in it stays undecided."""
Stop = Callable[[], bool]


class Conflicts:
    """Looks for a conflict in one problem."""

    def __init__(self, problem: Problem, stop: Stop, measure: Measure) -> None:
        self.problem, self.stop = problem, stop
        self.measure = replace(measure, work=WORK)

    def found(self, plan: Plan | None) -> dict[str, Any] | None:
        """Give a conflict as JSON has it, None where none is proved; `plan` is a late one."""
        left = limits_of(self.problem, late=plan is not None)
        if any(one.kind for one in self.problem.milks) or self._holds(left) != "infeasible":
            return None
        kept: list[Limit] = []
        for limit in list(left):
            rest = [one for one in left if one != limit]
            found = self._holds(rest)
            if found == "infeasible":
                left = rest
            elif found == "unknown":
                return None
            else:
                kept.append(limit)
        told: dict[str, Any] = {"parts": [one.to_json() for one in reversed(kept)]}
        return (told | self._possible(kept) | self._clash(kept)) if kept else None

    def _clash(self, kept: Sequence[Limit]) -> dict[str, Any]:
        """Give which lots want the thing that is short, and when."""
        things = [one for one in kept if one.part in {"store", "vessel"}]
        if not things:
            return {}
        return Clash(
            self.problem, kept, things[-1], self._in_time, self._held, self.measure, self.stop
        ).found()

    def _holds(self, limits: Sequence[Limit]) -> Found:
        """Say whether some limits can be kept together, all others left out."""
        return self._held(self.problem, limits)

    def _held(self, problem: Problem, limits: Sequence[Limit]) -> Found:
        """Say the same of another problem, one with fewer lots."""
        model = self._in_time(problem, limits)
        if isinstance(model, StudioModel):
            found = solve(model.model, self.measure, self.stop).found
            return "feasible" if found == "optimal" else found
        return model

    def _in_time(self, problem: Problem, limits: Sequence[Limit]) -> "StudioModel | Found":
        """Give the model of some limits in which no date is missed."""
        model = self._model(problem, limits)
        if isinstance(model, StudioModel):
            late, _ = ScoreModel(model).late()
            model.model.add(late <= 0)
        return model

    def _model(self, whole: Problem, limits: Sequence[Limit]) -> "StudioModel | Found":
        """Give the model of some limits; or at once that there is no plan."""
        problem = only(whole, limits)
        studio = Studio(problem, self.stop)
        if studio.impossible:
            return "infeasible"
        frame = Frame(studio, hours=Limit("hours") in limits)
        if frame.impossible():
            return "infeasible"
        return StudioModel(frame, Part(tuple(studio.chains), frame.sets))

    def _possible(self, kept: Sequence[Limit]) -> dict[str, Any]:
        """Give the goal of a conflict, and how many of its pieces can be ready in time at most."""
        goals = [one.name for one in kept if one.part == "goal"]
        if len(goals) != 1:
            return {}
        goal = next(one for one in self.problem.goals if one.name == goals[0])
        others = [one for one in limits_of(self.problem, late=True)
                  if one.part not in {"goal", "due"}]  # fmt: skip
        model = self._model(self.problem, others)
        if not isinstance(model, StudioModel):
            return {"goal": goal.name}
        most = self._most(model, goal)
        return {"goal": goal.name} | ({} if most is None else {"possible": most})

    def _most(self, own: StudioModel, goal: Goal) -> int | None:
        """Give how many pieces can be ready by the date of a goal; None where it is not proved."""
        ready: list[cp_model.LinearExpr | int] = []
        done, studio = 0, own.frame.studio
        for name in dict.fromkeys(goal.lots):
            pieces = studio.lateness.pieces[name]
            if name not in own.starts:
                done += pieces if studio.ended[name] + goal.cured <= goal.at else 0
                continue
            last = studio.chains[name].visits[-1].length
            end = own.frame.problem.grid * (own.starts[name][-1] + last)
            in_time = own.model.new_bool_var("")
            own.model.add(end <= goal.at - goal.cured).only_enforce_if(in_time)
            ready.append(pieces * in_time)
        own.model.maximize(sum(ready))
        found: Solved = solve(own.model, self.measure, self.stop)
        return done + round(found.objective) if found.found == "optimal" else None
