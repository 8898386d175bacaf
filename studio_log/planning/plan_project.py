"""Plans a project with lags: searches in ever longer runs, until one is whole or time is over."""

from collections.abc import Mapping
from dataclasses import dataclass
from random import Random
from typing import Final

from studio_log.planning.check_project import project_violations
from studio_log.planning.effort import Effort, Status, WrongPlanError, not_found
from studio_log.planning.lag_matrix import matrix_of
from studio_log.planning.project import Project
from studio_log.planning.project_search import Search
from studio_log.planning.stn import LoopError, Network

FIRST_RUN: Final = 60
"""States of the first run; each later one is longer by a fifth."""
GROWTH: Final = 1.2
CHANCES: Final = (0.0, 0.02, 0.06, 0.15)
"""How much branches are shuffled, in turn; in parts of the makespan."""


@dataclass(frozen=True, slots=True)
class ProjectOutcome:
    """The best starts found, and what is proved of them."""

    status: Status
    starts: Mapping[str, int] | None
    makespan: int | None
    bound: int | None
    why: tuple[str, ...]
    tries: int


def plan_project(project: Project, effort: Effort) -> ProjectOutcome:
    """Give the shortest plan found; infeasible and optimal are said only where proved."""
    loop = lags_loop(project)
    if loop is not None:
        return ProjectOutcome("infeasible", None, None, None, (loop,), 0)
    matrix = matrix_of(project, effort.stop)
    if matrix is None:
        return ProjectOutcome("unknown", None, None, None, (not_found(),), 0)
    search = Search(project, matrix, Random(effort.seed), effort.stop)  # noqa: S311 - no secret
    if not search.fits_alone():
        words = "A task asks for more of a resource than there is. Nothing was planned."
        return ProjectOutcome("infeasible", None, None, None, (words,), 0)
    bound = max(search.tail[n] + at for n, at in enumerate(matrix[0]))
    ended, tries, limit = "limit", 0, float(FIRST_RUN)
    while ended == "limit" and (effort.tries is None or tries < effort.tries):
        ended = search.run(int(limit), CHANCES[tries % len(CHANCES)], effort.on_better)
        tries += 1
        limit *= GROWTH
        if search.bound == bound:
            ended = "whole"
    return _outcome(project, search, tries, bound, whole=ended == "whole")


def _outcome(
    project: Project, search: Search, tries: int, bound: int, *, whole: bool
) -> ProjectOutcome:
    if search.best is None:
        if not whole:
            return ProjectOutcome("unknown", None, None, bound, (not_found(),), tries)
        words = "No order of the tasks keeps both the lags and the resources; all were looked at."
        return ProjectOutcome("infeasible", None, None, None, (words,), tries)
    starts = {task.name: at for task, at in zip(project.tasks, search.best[1:], strict=True)}
    found = project_violations(project, starts, search.bound)
    if found:
        raise WrongPlanError(" ".join(found))
    status: Status = "optimal" if whole else "feasible"
    return ProjectOutcome(status, starts, search.bound, search.bound if whole else bound, (), tries)


def lags_loop(project: Project) -> str | None:
    """Give a sentence that names the lags which contradict each other; None where none do."""
    network: Network[str] = Network()
    for task in project.tasks:
        network.limit("", task.name, task.release, None)
    for lag in project.lags:
        network.limit(lag.first, lag.second, lag.least, None)
    try:
        network.check()
    except LoopError as loop:
        names = " → ".join(str(one) for one in loop.points)
        return (
            f"The lags contradict each other by {loop.excess}: {names}. Loosen one of these "
            "limits. Nothing was planned."
        )
    return None
