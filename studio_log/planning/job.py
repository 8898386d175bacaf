"""Planning with our own engine in a process of its own: `python -m studio_log.planning.job`.

What is asked and answered is told in `talking`; who asks is `apart`.
"""

import sys
from typing import Any, Final

from studio_log.planning.answer import answer, invalid, mended, so_far
from studio_log.planning.effort import Effort
from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.read_plan import read_plan
from studio_log.planning.talking import Act, Asked, Talk, run
from studio_log.planning.what_fits import what_fits
from studio_log.planning.why_act import changed_problem, why


def plan(asked: Asked, talk: Talk) -> dict[str, Any]:
    """Plan the problem, or mend the plan to keep to; what makes no sense is an answer too."""
    keep = None
    try:
        problem = changed_problem(asked)
        if asked.keep is not None and isinstance(problem, Problem):
            keep = read_plan(problem, asked.keep)
    except BadProblemError as bad:
        return invalid(bad.faults)
    effort = Effort(
        talk.over, asked.tries, asked.seed, lambda found: talk.better(so_far(problem, found))
    )
    if asked.do == "repair" and keep is not None and isinstance(problem, Problem):
        return mended(problem, effort, keep).fields
    fits = asked.more.get("what_fits")
    problem, left = what_fits(problem, effort) if fits else (problem, ())
    fields = answer(problem, effort, keep).fields
    return {**fields, "left_out": [{"lot": one.lot, "why": one.words} for one in left]}


ACTS: Final[dict[str, Act]] = {"plan": plan, "repair": plan, "why": why}

if __name__ == "__main__":
    sys.exit(run(ACTS))
