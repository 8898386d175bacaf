"""What an ask to plan comes to: its problem, the plan to keep to, and the lots that are left out.

`more` of an ask may hold `changes`, which are tried on the problem, and `what_fits`, which leaves
out lots that have no place; `before` are the fields of the plan that the new one is compared with.
"""

from dataclasses import dataclass
from typing import Any

from studio_log.planning.answer import told
from studio_log.planning.differences import differences
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Impossible
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.project import Project
from studio_log.planning.read_plan import read_plan
from studio_log.planning.talking import Asked
from studio_log.planning.what_fits import beside, what_fits
from studio_log.planning.why_act import changed_problem


@dataclass(frozen=True, slots=True)
class Ready:
    """A problem ready to be planned."""

    problem: Problem | Project
    keep: Plan | None = None
    left_out: tuple[Impossible, ...] = ()

    @property
    def fields(self) -> dict[str, list[dict[str, str]]]:
        """Give what an answer has to add of it."""
        return {"left_out": [{"lot": one.lot, "why": one.words} for one in self.left_out]}


def ready(asked: Asked, effort: Effort) -> Ready:
    """Read what is asked; BadProblemError says all that makes no sense."""
    problem = changed_problem(asked)
    if isinstance(problem, Project):
        return Ready(problem)
    left: tuple[Impossible, ...] = ()
    if asked.more.get("what_fits"):
        problem, left = what_fits(problem, effort)
    keep = None if asked.keep is None else read_plan(problem, asked.keep)
    return Ready(problem, keep, left)


def without_those_beside(asked: Asked, found: Ready, effort: Effort) -> Ready | None:
    """Give what is left to be planned where all lots together have no plan; None for no less."""
    if not isinstance(found.problem, Problem):
        return None
    problem, more = beside(found.problem, effort)
    keep = None if asked.keep is None else read_plan(problem, asked.keep)
    return Ready(problem, keep, (*found.left_out, *more)) if more else None


def differences_to(asked: Asked, problem: Problem | Project, plan: Plan | None) -> dict[str, Any]:
    """Give what a plan does otherwise than the one that `more` calls `before`, if any."""
    before = asked.more.get("before")
    if not isinstance(before, dict) or not isinstance(problem, Problem) or plan is None:
        return {}
    try:
        return {"differences": told(differences(problem, read_plan(problem, before), plan))}
    except BadProblemError:
        return {}
