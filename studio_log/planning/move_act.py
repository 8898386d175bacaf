"""Moving one step of a plan, asked of a process of its own: `do` is "move".

`keep` holds the fields of the plan; `more` the `lot`, the `step` and the instant `at` to which it
is drawn. It comes to lie at the nearest moment at which nothing else moves. What is otherwise is
told against the plan `before`, where `more` has one, so that earlier moves are told on.
"""

from datetime import datetime
from typing import Any, Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.answer import invalid, of_studio, told
from studio_log.planning.differences import differences
from studio_log.planning.effort import Effort
from studio_log.planning.grip import BadMoveError
from studio_log.planning.late_words import late_words
from studio_log.planning.moves import Ranges, moved, windows
from studio_log.planning.plan_studio import Outcome
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.ready import differences_to, ready
from studio_log.planning.talking import Asked, Talk

NOWHERE: Final = tr_later(
    "{step} of {lot} cannot be moved while everything else stays. Nothing was moved."
)


def move(asked: Asked, talk: Talk) -> dict[str, Any]:
    """Give the fields of the plan with the step moved; why not, where it cannot be."""
    try:
        found = ready(asked, Effort(talk.over))
        at = datetime.fromisoformat(str(asked.more.get("at")))
    except (BadProblemError, ValueError) as bad:
        return invalid(getattr(bad, "faults", (str(bad),)))
    lot, step = str(asked.more.get("lot")), str(asked.more.get("step"))
    if not isinstance(found.problem, Problem) or found.keep is None:
        return invalid((tr("There is no plan in which something could be moved."),))
    ranges = windows(found.problem, found.keep, lot, step)
    if not ranges:
        return invalid((tr(NOWHERE, step=step, lot=lot),))
    try:
        start = nearest(ranges, _minute(found.problem, at), found.problem.grid)
        plan = moved(found.problem, found.keep, lot, step, start)
    except (BadMoveError, TypeError) as bad:
        return invalid((str(bad),))
    own = {"differences": told(differences(found.problem, found.keep, plan))}
    more = own | differences_to(asked, found.problem, plan)
    return {**_fields(found.problem, plan), **found.fields, **more}


def _minute(problem: Problem, at: datetime) -> int:
    begun = problem.clock.utc(0)
    return round((at - begun).total_seconds() / 60)


def _fields(problem: Problem, plan: Plan) -> dict[str, Any]:
    why = (*problem.notes, *late_words(problem, plan))
    return of_studio(problem, Outcome("feasible", plan, None, why, 0))


def nearest(ranges: Ranges, wanted: int, grid: int) -> int:
    """Give the start in the ranges, on the grid, that is nearest to a minute."""
    snapped = round(wanted / grid) * grid
    held = [min(max(snapped, first), last) for first, last in ranges]
    return min(held, key=lambda start: abs(start - wanted))
