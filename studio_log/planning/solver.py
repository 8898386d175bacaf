"""What a solver adds to reasons, where there is one: proofs, and cheapest ways out.

Reasons and ways out know nothing of how it is done; what a solver says is read strictly, and its
plans go through the checker like all others.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from studio_log.planning.change_kinds import Change
from studio_log.planning.problem import Plan, Problem


@dataclass(frozen=True, slots=True)
class Cheap:
    """Changes that are enough, with a plan of the problem as they make it."""

    changes: tuple[Change, ...]
    plan: Plan
    least: bool = False
    """Whether it is proved that nothing cheaper is enough, of all that was weighed up."""


Joints = Callable[[Problem, Plan | None], Any]
"""Gives the JSON of a conflict that is proved, or None; see `why_joint`."""
Cheapests = Callable[[Problem, Plan | None], Iterator[Cheap]]
"""Gives the cheapest changes that let all dates be kept, or a plan be; then those of one kind."""


def nothing_proved(_problem: Problem, _plan: Plan | None) -> None:
    """Stand in for the optimizer where there is none."""


def nothing_priced(_problem: Problem, _plan: Plan | None) -> Iterator[Cheap]:
    """Stand in for the optimizer where there is none."""
    return iter(())


@dataclass(frozen=True, slots=True)
class Solver:
    """What is asked of a solver."""

    joint: Joints = nothing_proved
    cheapest: Cheapests = nothing_priced


NO_SOLVER = Solver()
