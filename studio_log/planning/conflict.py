"""Finds what stands together against the dates, with somebody who can prove that a problem fails.

By deletion: each limit of the studio is taken away in turn; if it fails without it too, it stays
away. What is left fails together, and where all was proved, not without any one of it.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any, Final

from studio_log.planning.check_plan import open_steps
from studio_log.planning.problem import THOUSANDTHS, Calendar, Goal, Plan, Problem, Vessel
from studio_log.planning.why_late import late_goals
from studio_log.planning.why_sizes import DAYLIGHT

Fails = Callable[[Problem], bool | None]
"""True where it is proved that no plan keeps all dates, False where one does; None: not known."""
Freed = Callable[[Problem], Problem]
PLENTY: Final = 1000
"""So many lots at once can take of what is taken away."""


def find_conflict(
    problem: Problem, plan: Plan | None, fails: Fails, stop: Callable[[], bool]
) -> dict[str, Any] | None:
    """Give the JSON of a `why_joint.Joint`; None where nothing is proved."""
    if fails(problem) is not True:
        return None
    parts, whole = [], problem
    for part, freed in _limits(problem):
        if stop():
            return None
        tried = freed(problem)
        if fails(tried) is True:
            problem = tried
        else:
            parts.append(part)
    if not parts:
        return None  # then a lot is late even alone, which is told without
    return {"parts": parts, **_possible(whole, plan, fails)}


def _limits(problem: Problem) -> Iterator[tuple[dict[str, str], Freed]]:
    """Give each limit that open steps meet, and what takes it away; hours come last."""
    used = {kind for lot in problem.lots for step in open_steps(lot) for kind in step.uses}
    for store in ("hands", "burner", "line"):
        if store in used or store == "hands":
            yield {"part": "store", "name": store}, _much_of(store)
    for kind in sorted(used - set(problem.stores)):
        yield {"part": "vessel", "name": kind}, _many(kind)
    yield {"part": "hours"}, _all_day


def _much_of(store: str) -> Freed:
    def freed(problem: Problem) -> Problem:
        most = max(problem.stores.get(store, 0), THOUSANDTHS) * len(problem.lots)
        return replace(problem, stores={**problem.stores, store: most})

    return freed


def _many(kind: str) -> Freed:
    def freed(problem: Problem) -> Problem:
        own = [one for one in problem.vessels if one.kind == kind]
        size = max(one.size for one in own) * PLENTY
        others = tuple(one for one in problem.vessels if one.kind != kind)
        # One that lots share, so that there is nothing to choose.
        return replace(problem, vessels=(*others, Vessel(own[0].name, kind, size, one_lot=False)))

    return freed


def _all_day(problem: Problem) -> Problem:
    """Let somebody work while anybody is awake, every day."""
    waking = tuple(hours or DAYLIGHT for hours in problem.calendar.waking)
    return replace(problem, calendar=Calendar(waking, problem.calendar.waking))


# -- how many pieces -----------------------------------------------------------------------


def _possible(problem: Problem, plan: Plan | None, fails: Fails) -> dict[str, Any]:
    """Give how many pieces of the only late goal can be ready by its date, where that is proved."""
    late = () if plan is None else late_goals(problem, plan)
    if len(late) != 1:
        return {}
    goal, low, high = late[0].goal, late[0].in_time, late[0].goal.pieces
    while high - low > 1:
        middle = (low + high) // 2
        known = fails(_only(problem, replace(goal, pieces=middle)))
        if known is None:
            return {}
        low, high = (low, middle) if known else (middle, high)
    if fails(_only(problem, replace(goal, pieces=high))) is not True:
        return {}
    return {"goal": goal.name, "possible": low}


def _only(problem: Problem, goal: Goal) -> Problem:
    """Give the problem with one goal and no other date."""
    lots = tuple(replace(one, due=None) for one in problem.lots)
    return replace(problem, lots=lots, goals=(goal,))
