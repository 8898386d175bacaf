"""Plans a problem of either form with the solver; what is proved is said, and only that."""

import os
from typing import Final

from studio_log.optimizer.project_model import plan_with_solver
from studio_log.optimizer.search import Search
from studio_log.planning.answer import PARTS, Answered, of_project, of_studio, told
from studio_log.planning.differences import differences
from studio_log.planning.effort import Effort, Status, none_together, not_found
from studio_log.planning.engine import Studio, alone_words
from studio_log.planning.late_words import late_words
from studio_log.planning.plan_studio import Outcome, is_for, plan_studio, too_small
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.project import Project

MOST_WORKERS: Final = 8


def workers_of(effort: Effort) -> int:
    """Give how many workers to have; where tries are counted one, so that all machines agree."""
    if effort.tries is not None:
        return 1
    return min(MOST_WORKERS, os.cpu_count() or 1)


def answer(problem: Problem | Project, effort: Effort, keep: Plan | None = None) -> Answered:
    """Plan a problem of either form."""
    if isinstance(problem, Project):
        return Answered(of_project(problem, plan_with_solver(problem, effort, workers_of(effort))))
    found = plan_optimal(problem, effort, keep)
    fields = of_studio(problem, found)
    if keep is not None and found.plan is not None:
        fields["differences"] = told(differences(problem, keep, found.plan))
    return Answered(fields, found.plan)


def plan_optimal(problem: Problem, effort: Effort, keep: Plan | None = None) -> Outcome:
    """Give the best plan found; every plan that leaves here has passed the checker.

    An old plan to `keep` to is kept as `plan_studio` does.
    """
    if keep is not None and not effort.go_on and is_for(problem, keep):
        return plan_studio(problem, effort, keep)
    small = too_small(problem)
    if small is not None:
        return small
    search = Search(Studio(problem, effort.stop), effort, workers_of(effort))
    search.run(keep)
    if search.best is None:
        if not search.infeasible:
            return Outcome("unknown", None, None, (*problem.notes, not_found()), search.tries)
        return Outcome("infeasible", None, None, (*problem.notes, *_why(search)), search.tries)
    plan = search.best.plan
    proved = tuple(name in search.proved for name in PARTS)
    status: Status = "optimal" if all(proved) else "feasible"
    why = (*problem.notes, *late_words(problem, plan))
    return Outcome(status, plan, search.bound(), why, search.tries, proved)


def _why(search: Search) -> tuple[str, ...]:
    """Give the lots that have no place even alone; else that they have none together."""
    studio = search.studio
    alone = [one.words for one in studio.impossible]
    if not alone:
        alone = [alone_words(studio.chains[name]) for name in search.frame.impossible()]
    return tuple(alone) or (none_together(),)
