"""How long to plan, and how what came of it is called."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Final, Literal

from studio_log.language.words import tr

Status = Literal["optimal", "feasible", "infeasible", "unknown"]
"""Optimal and infeasible are proved; unknown is: no plan found, and none proved impossible."""
MOST_SECONDS: Final = 3600.0
ENGINES: Final = ("own", "optimizer", "auto")
"""Ours, the optional one, or the optional one where it is installed."""


def not_found() -> str:
    """Say that there is no plan yet, and what to do."""
    return tr(
        "No plan was found in this time, and it is not proved that there is none. Give it more "
        "seconds, more days, or longer hours."
    )


def none_together() -> str:
    """Say that lots fail only together."""
    return tr(
        "The lots cannot all be done in these days, hours and vessels; that is proved. Each of "
        "them alone could. Nothing was planned."
    )


@dataclass(frozen=True, slots=True)
class Effort:
    """How long to plan: until `stop` says so, or for so many tries; `seed` decides chance."""

    stop: Callable[[], bool] = lambda: False
    """Asked often enough that planning ends within 0.2 s."""
    tries: int | None = None
    seed: int = 1
    on_better: Callable[[Any], None] = lambda _: None
    """Handed each better plan at once."""
    go_on: bool = False
    """Look for a better plan from an old one on: what is not near may move for any gain."""


class WrongPlanError(Exception):
    """The checker refused a plan of our own; the words are its sentences."""
