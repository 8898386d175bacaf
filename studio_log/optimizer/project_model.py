"""The model of a project with lags and scarce resources, and its search to a proof."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from ortools.sat.python import cp_model

from studio_log.optimizer.solving import Measure, Solved, solve
from studio_log.planning.check_project import project_violations
from studio_log.planning.effort import Effort, Status, WrongPlanError, not_found
from studio_log.planning.plan_project import ProjectOutcome, lags_loop
from studio_log.planning.project import Project

WORK: Final = 20.0
"""Measure of work of a first run; each later one has twice as much."""


def plan_with_solver(project: Project, effort: Effort, workers: int) -> ProjectOutcome:
    """Give the shortest plan; optimal and infeasible are said where the solver proved them."""
    loop = lags_loop(project)
    if loop is not None:
        return ProjectOutcome("infeasible", None, None, None, (loop,), 0)
    return _Shortest(project, effort, workers).run()


class _Shortest:
    def __init__(self, project: Project, effort: Effort, workers: int) -> None:
        self.project, self.effort = project, effort
        self.measure = Measure(workers=workers, repeatable=effort.tries is not None)
        self.model = cp_model.CpModel()
        self.starts: list[cp_model.IntVar] = []
        self.best: tuple[int, list[int]] | None = None
        self._build()

    def _build(self) -> None:
        """Add every rule. A shortest plan starts each task at once or right behind another.

        So none starts after the durations and as many of the longest lags as there are tasks.
        """
        project, model = self.project, self.model
        lags = sorted((max(0, one.least) for one in project.lags), reverse=True)
        most = sum(one.duration for one in project.tasks) + sum(lags[: len(project.tasks)])
        most += max((one.release for one in project.tasks), default=0)
        longest = max((max(one.duration, one.tail) for one in project.tasks), default=0)
        index = {one.name: n for n, one in enumerate(project.tasks)}
        makespan = model.new_int_var(0, most + longest, "makespan")
        intervals = []
        for task in project.tasks:
            start = model.new_int_var(task.release, most, task.name)
            self.starts.append(start)
            model.add(makespan >= start + max(task.duration, task.tail))
            intervals.append(model.new_fixed_size_interval_var(start, task.duration, ""))
        for lag in project.lags:
            first, second = self.starts[index[lag.first]], self.starts[index[lag.second]]
            model.add(second - first >= lag.least)
        for name, room in project.capacity.items():
            asked = [task.demand.get(name, 0) for task in project.tasks]
            model.add_cumulative(intervals, asked, room)
        model.minimize(makespan)

    def run(self) -> ProjectOutcome:
        """Run longer and longer, until it is proved or time to end."""
        tries, work = 0, WORK
        solved = Solved("unknown", None, 0, 0)
        while solved.found in {"unknown", "feasible"} and not self.effort.stop():
            if self.effort.tries is not None and tries >= self.effort.tries:
                break
            tries += 1
            measure = replace(self.measure, work=work, seed=self.effort.seed + tries)
            solved = solve(self.model, measure, self.effort.stop, self._hear)
            work *= 2
        return self._outcome(solved, tries)

    def _hear(self, values: Sequence[int]) -> None:
        """Take a solution if it is shorter; every one goes through the checker."""
        starts = [values[one.index] for one in self.starts]
        makespan = max(
            at + max(one.duration, one.tail)
            for at, one in zip(starts, self.project.tasks, strict=True)
        )
        if self.best is not None and makespan >= self.best[0]:
            return
        named = {one.name: at for one, at in zip(self.project.tasks, starts, strict=True)}
        found = project_violations(self.project, named, makespan)
        if found:
            raise WrongPlanError(" ".join(found))
        self.best = (makespan, starts)
        self.model.clear_hints()  # type: ignore[no-untyped-call]
        for variable, at in zip(self.starts, starts, strict=True):
            self.model.add_hint(variable, at)
        self.effort.on_better([0, *starts])

    def _outcome(self, solved: Solved, tries: int) -> ProjectOutcome:
        if self.best is None:
            if solved.found != "infeasible":
                return ProjectOutcome("unknown", None, None, None, (not_found(),), tries)
            words = "No order of the tasks keeps both the lags and the resources; that is proved."
            return ProjectOutcome("infeasible", None, None, None, (words,), tries)
        makespan, starts = self.best
        bound = makespan if solved.found == "optimal" else max(0, round(solved.bound))
        status: Status = "optimal" if solved.found == "optimal" else "feasible"
        named = {one.name: at for one, at in zip(self.project.tasks, starts, strict=True)}
        return ProjectOutcome(status, named, makespan, bound, (), tries)
