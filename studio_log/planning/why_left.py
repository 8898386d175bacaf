"""Why lots of the log are left out of its plan: each looked at among the lots that have a place.

With `what_fits` in `more` an ask "why" is about every lot that was left out, one after the other:
then a way out is about one lot, not about all of them together. The answer's `groups` hold for
each lot its sentences and its ways out.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from studio_log.planning.answer import invalid
from studio_log.planning.changes import without_lots
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Impossible
from studio_log.planning.explained import explained
from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.ready import Ready, ready
from studio_log.planning.solver import NO_SOLVER, Solver
from studio_log.planning.talking import Asked, Talk
from studio_log.planning.why_act import changed_problem, why

MOST_LOTS: Final = 6
"""Lots of which it is told why; the others have their sentence only."""
MOST_WAYS: Final = 3
"""Ways out of one lot."""


def why_left(asked: Asked, talk: Talk, solver: Solver = NO_SOLVER) -> dict[str, Any]:
    """Give the fields of a plan with why lots are left out of it, or why it is late."""
    try:
        found = ready(asked, Effort(talk.over))
        whole = changed_problem(asked)
    except BadProblemError as bad:
        return {"groups": [], **invalid(bad.faults)}
    if not isinstance(whole, Problem):
        return why(asked, talk, solver)
    found = replace(found, left_out=(*found.left_out, *_beside(asked, found, whole)))
    if not found.left_out:
        return why(asked, talk, solver)
    names = list(dict.fromkeys(one.lot for one in found.left_out))
    groups: list[dict[str, Any]] = []
    for number, name in enumerate(names[:MOST_LOTS]):
        until = asked.seconds * (number + 1) / min(len(names), MOST_LOTS)
        groups.append(_group(whole, found, name, _stopped(talk, until), solver))
        talk.better(_fields(asked, groups))
    return _fields(asked, groups)


def _stopped(talk: Talk, until: float) -> Callable[[], bool]:
    return lambda: talk.over() or talk.passed() >= until


def _beside(asked: Asked, found: Ready, whole: Problem) -> list[Impossible]:
    """Give the lots that the plan in hand left out, since all together had none."""
    known = {one.lot for one in found.left_out}
    rows = (asked.keep or {}).get("left_out", ())
    told = {
        one["lot"]: one["why"]
        for one in rows
        if isinstance(one, dict) and {"lot", "why"} <= set(one)
    }
    return [Impossible(one.name, str(told[one.name])) for one in whole.lots
            if one.name in told and one.name not in known]  # fmt: skip


def _group(
    whole: Problem, found: Ready, name: str, stop: Callable[[], bool], solver: Solver
) -> dict[str, Any]:
    """Look at one lot among those that have a place."""
    problem = without_lots(whole, (one.lot for one in found.left_out if one.lot != name))
    words = [one.words for one in found.left_out if one.lot == name]
    told = explained(
        problem, {"starts": {}, "why": words}, None, Effort(stop, seed=1), solver=solver
    )
    notes = set(problem.notes)
    sentences = [one for one in told["why"] if one not in notes]
    return {"lot": name, "why": sentences or words, "ways_out": told["ways_out"][:MOST_WAYS]}


def _fields(asked: Asked, groups: list[dict[str, Any]]) -> dict[str, Any]:
    return {
        **(asked.keep or {}),
        "groups": groups,
        "why": [sentence for one in groups for sentence in one["why"]],
        "ways_out": [way for one in groups for way in one["ways_out"]],
    }
