"""Planning with the solver in a process of its own: `python -m studio_log.optimizer`."""

import sys
from typing import Final

from studio_log.optimizer.plan_optimal import answer
from studio_log.optimizer.why_proved import why_proved
from studio_log.planning.job import ACTS as OWN
from studio_log.planning.job import plan_with
from studio_log.planning.talking import Act, run

ACTS: Final[dict[str, Act]] = {**OWN, "plan": plan_with(answer), "why": why_proved}

if __name__ == "__main__":
    sys.exit(run(ACTS))
