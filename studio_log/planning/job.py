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
from studio_log.planning.ready import differences_to, ready
from studio_log.planning.talking import Act, Asked, Talk, run
from studio_log.planning.why_left import why_left

Answering = Callable[[Problem | Project, Effort, Plan | None], Answered]


def plan_with(answering: Answering) -> Act:
    """Give the act that plans with an engine, or mends the plan to keep to.

    A problem that makes no sense is an answer too.
    """

    def plan(asked: Asked, talk: Talk) -> dict[str, Any]:
        try:
            found = ready(asked, Effort(talk.over))
        except BadProblemError as bad:
            return invalid(bad.faults)

        def on_better(plan: Any) -> None:
            talk.better({**so_far(found.problem, plan), **found.fields})

        go_on = asked.more.get("go_on") is True
        effort = Effort(talk.over, asked.tries, asked.seed, on_better, go_on)
        problem, keep = found.problem, found.keep
        if asked.do == "repair" and keep is not None and isinstance(problem, Problem):
            answered = mended(problem, effort, keep)
        else:
            answered = answering(problem, effort, keep)
        more = differences_to(asked, problem, answered.plan)
        return {**answered.fields, **found.fields, **more}

    return plan


PLAN: Final = plan_with(answer)
ACTS: Final[dict[str, Act]] = {"plan": PLAN, "repair": PLAN, "why": why_left, "move": move}

if __name__ == "__main__":
    sys.exit(run(ACTS))
