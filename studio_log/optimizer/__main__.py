"""Planning with the solver in a process of its own: `python -m studio_log.optimizer`."""

import sys
from collections.abc import Iterator
from typing import Any, Final

from studio_log.optimizer.cheapest import Cheapest
from studio_log.optimizer.conflict import Conflicts
from studio_log.optimizer.plan_optimal import answer, workers_of
from studio_log.optimizer.solving import Measure
from studio_log.planning.effort import Effort
from studio_log.planning.job import ACTS as OWN
from studio_log.planning.job import plan_with
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.solver import Cheap, Solver
from studio_log.planning.talking import Act, Asked, Talk, run
from studio_log.planning.why_left import why_left

FOR_CONFLICTS: Final = 0.3
"""Of the seconds, at most; the others are for ways out."""
FOR_ALL: Final = 0.6
"""Of those, for what is cheapest of all together."""
FOR_PRICES: Final = 0.8
"""Of those that are left then, at most, for the cheapest ways out."""


def why(asked: Asked, talk: Talk) -> dict[str, Any]:
    """Say why not, and what is proved to fail only together."""
    effort = Effort(tries=asked.tries)
    measure = Measure(workers=workers_of(effort), seed=asked.seed, repeatable=bool(asked.tries))

    def joint(problem: Problem, plan: Plan | None) -> Any:
        until = talk.passed() + FOR_CONFLICTS * (asked.seconds - talk.passed())
        looks = Conflicts(problem, lambda: talk.over() or talk.passed() >= until, measure)
        return looks.found(plan)

    def cheapest(problem: Problem, plan: Plan | None) -> Iterator[Cheap]:
        begun = talk.passed()
        own = FOR_PRICES * (asked.seconds - begun)

        def over(share: float = 1.0) -> bool:
            return talk.over() or talk.passed() >= begun + share * own

        return Cheapest(problem, over, lambda: over(FOR_ALL), measure).found(plan)

    return why_left(asked, talk, Solver(joint, cheapest))


ACTS: Final[dict[str, Act]] = {**OWN, "plan": plan_with(answer), "why": why}

if __name__ == "__main__":
    sys.exit(run(ACTS))
