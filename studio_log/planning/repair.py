"""Mends a plan after something slipped: as little moves as can be, and what moves is told."""

from dataclasses import dataclass

from studio_log.planning.differences import Difference, differences
from studio_log.planning.effort import Effort
from studio_log.planning.engine import Studio
from studio_log.planning.keeping import keep_most
from studio_log.planning.plan_studio import Outcome, improved, is_for, plan_studio, too_small
from studio_log.planning.problem import Plan, Problem


@dataclass(frozen=True, slots=True)
class Repair:
    """What came of mending a plan, and what the new one does otherwise; () where there is none."""

    outcome: Outcome
    differences: tuple[Difference, ...]


def repair(problem: Problem, old: Plan, effort: Effort) -> Repair:
    """Give a plan that holds with the facts of today and keeps to an old one.

    First no date becomes later than it was in the old plan, if that can be; then as few visits as
    can be are moved; then the score counts. Every plan that leaves here has passed the checker.
    """
    small = too_small(problem)
    if small is not None:
        outcome = small
    elif is_for(problem, old):
        outcome = plan_studio(problem, effort, keep=old)
    else:
        studio = Studio(problem, effort.stop)
        outcome = improved(studio, effort, placed=keep_most(studio, old))
    told = () if outcome.plan is None else differences(problem, old, outcome.plan)
    return Repair(outcome, told)
