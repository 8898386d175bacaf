"""Why not, with proofs: what stands together against the dates, found by the solver."""

from collections.abc import Callable
from typing import Any, Final

from studio_log.optimizer.plan_optimal import workers_of
from studio_log.optimizer.search import Search
from studio_log.planning.conflict import find_conflict
from studio_log.planning.effort import Effort
from studio_log.planning.ends import least_late
from studio_log.planning.engine import Studio
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.talking import Asked, Talk
from studio_log.planning.why_left import why_left
from studio_log.planning.why_sizes import misfits

SHARE: Final = 0.4
"""Of the seconds that are left, for the conflict; the others are for ways out."""


def why_proved(asked: Asked, talk: Talk) -> dict[str, Any]:
    """Give what `why_left` does, the conflict with it where one is proved in time."""

    def joint(problem: Problem, plan: Plan | None) -> dict[str, Any] | None:
        until = talk.passed() + SHARE * (asked.seconds - talk.passed())
        return conflict_of(problem, plan, lambda: talk.over() or talk.passed() >= until)

    return why_left(asked, talk, joint)


def conflict_of(
    problem: Problem, plan: Plan | None, stop: Callable[[], bool]
) -> dict[str, Any] | None:
    """Give the JSON of what is proved to fail together; None where nothing is, in this time."""
    return find_conflict(problem, plan, lambda one: fails(one, stop), stop)


def fails(problem: Problem, stop: Callable[[], bool]) -> bool | None:
    """Say whether it is proved that no plan keeps all dates; None where that is not known."""
    if misfits(problem) or least_late(problem):
        return True
    found: list[Search] = []

    def known() -> bool | None:
        one = found[0] if found else None
        if one is None:
            return None
        if one.best is not None and not one.best.plan.score.late:
            return False
        return True if one.infeasible or one.bounds["late"] > 0 else None

    effort = Effort(stop=lambda: stop() or known() is not None)
    found.append(Search(Studio(problem, effort.stop), effort, workers_of(effort)))
    found[0].run()
    return known()
