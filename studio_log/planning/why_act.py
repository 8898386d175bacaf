"""Why not, asked of a process of its own: `do` is "why"; each way out is told of as it is found.

`keep` holds the fields of the plan that is late; without it one is made first. `more` may hold
"changes", a list as `change_json` has them: the problem is then what they make of it. Asks to plan
take the same.
"""

from typing import Any, Final

from studio_log.planning.answer import answer, invalid
from studio_log.planning.change_json import read_change
from studio_log.planning.changes import apply_change
from studio_log.planning.check_plan import violations
from studio_log.planning.effort import Effort
from studio_log.planning.explained import explained
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.project import Project
from studio_log.planning.read import read_problem
from studio_log.planning.read_plan import read_plan
from studio_log.planning.solver import NO_SOLVER, Solver
from studio_log.planning.talking import Asked, Talk

MOST_CHANGES: Final = 20
FOR_PLANNING: Final = 0.5
"""Of the seconds, where there is no plan yet."""


def changed_problem(asked: Asked) -> Problem | Project:
    """Give the problem of an ask with its changes; BadProblemError says what is amiss."""
    problem = read_problem(asked.problem)
    changes = asked.more.get("changes", [])
    if not isinstance(changes, list) or len(changes) > MOST_CHANGES:
        raise BadProblemError((f"The changes are no list of up to {MOST_CHANGES}.",))
    for number, value in enumerate(changes, 1):
        if not isinstance(problem, Problem):
            raise BadProblemError(("Changes are for a studio, and this is a project.",))
        problem = apply_change(problem, read_change(value, f"Change {number}"))
    return problem


def why(asked: Asked, talk: Talk, solver: Solver = NO_SOLVER) -> dict[str, Any]:
    """Give the fields of a plan with why it is late or missing, and the ways out."""
    plan: Plan | None = None
    try:
        problem = changed_problem(asked)
        if isinstance(problem, Problem) and asked.keep is not None and asked.keep.get("starts"):
            plan = read_plan(problem, asked.keep)
    except BadProblemError as bad:
        return invalid(bad.faults)
    if not isinstance(problem, Problem):
        return invalid(("Reasons are for a studio, and this is a project.",))
    fields = {**(asked.keep or {}), "why": []}
    if plan is None or violations(problem, plan):
        made = answer(problem, Effort(lambda: _half_over(asked, talk), asked.tries, asked.seed))
        fields, plan = made.fields, made.plan
    effort = Effort(talk.over, asked.tries, asked.seed)
    return explained(problem, fields, plan, effort, talk.better, solver)


def _half_over(asked: Asked, talk: Talk) -> bool:
    return talk.over() or talk.passed() >= FOR_PLANNING * asked.seconds
