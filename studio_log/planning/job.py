"""Planning with our own engine in a process of its own: `python -m studio_log.planning.job`.

What is asked and answered is told in `talking`; who asks is `apart`.
"""

import sys
from collections.abc import Callable
from typing import Any, Final

from studio_log.planning.answer import Answered, answer, invalid, mended, so_far
from studio_log.planning.effort import Effort
from studio_log.planning.move_act import move
from studio_log.planning.problem import BadProblemError, Plan, Problem
from studio_log.planning.project import Project
from studio_log.planning.ready import Ready, differences_to, ready, without_those_beside
from studio_log.planning.talking import Act, Asked, Talk, run
from studio_log.planning.why_left import why_left

FOR_ALL: Final = 0.4
"""Of the seconds, for a first plan of all lots of the log together."""
Answering = Callable[[Problem | Project, Effort, Plan | None], Answered]


def plan_with(answering: Answering) -> Act:
    """Give the act that plans with an engine, or mends the plan to keep to.

    A problem that makes no sense is an answer too. Of the log, where no plan is found for all lots
    together, those are left out that find no place beside the others.
    """

    def plan(asked: Asked, talk: Talk) -> dict[str, Any]:
        try:
            found = ready(asked, Effort(talk.over))
        except BadProblemError as bad:
            return invalid(bad.faults)
        share = FOR_ALL if asked.more.get("what_fits") else 1.0
        answered = _attempt(answering, asked, talk, found, share * asked.seconds)
        if asked.more.get("what_fits") and answered.plan is None:
            less = without_those_beside(asked, found, Effort(talk.over))
            if less is not None:
                found = less
                answered = _attempt(answering, asked, talk, found, asked.seconds)
        more = differences_to(asked, found.problem, answered.plan)
        return {**answered.fields, **found.fields, **more}

    return plan


def _attempt(
    answering: Answering, asked: Asked, talk: Talk, found: Ready, until: float
) -> Answered:
    """Plan until the end; until some seconds only where there is no plan by then."""
    some: list[Any] = []

    def on_better(plan: Any) -> None:
        some[:] = [plan]
        talk.better({**so_far(found.problem, plan), **found.fields})

    def over() -> bool:
        return talk.over() or (not some and talk.passed() >= until)

    go_on = asked.more.get("go_on") is True
    effort = Effort(over, asked.tries, asked.seed, on_better, go_on)
    if asked.do == "repair" and found.keep is not None and isinstance(found.problem, Problem):
        return mended(found.problem, effort, found.keep)
    return answering(found.problem, effort, found.keep)


PLAN: Final = plan_with(answer)
ACTS: Final[dict[str, Act]] = {"plan": PLAN, "repair": PLAN, "why": why_left, "move": move}

if __name__ == "__main__":
    sys.exit(run(ACTS))
