"""When lots end at the earliest that any plan could end them."""

from studio_log.planning.calendar_sweep import earliest_end
from studio_log.planning.chain import chain_of
from studio_log.planning.hours import windows_of
from studio_log.planning.problem import Problem
from studio_log.planning.score import Lateness, end_of


def least_late(problem: Problem) -> int:
    """Give the minutes that no plan is less late than: each lot as if the studio were its own."""
    ends = alone_ends(problem)
    lateness = Lateness(problem)
    late = sum(lateness.of_due(name, end) for name, end in ends.items())
    recorded = {one.name: end_of(one, {}) for one in problem.lots if one.name not in ends}
    return late + lateness.of_goals(recorded | ends)


def alone_ends(problem: Problem) -> dict[str, int]:
    """Give by lot the minute before which no plan ends it, its cure aside; not of lots over."""
    windows = windows_of(problem)
    chains = {lot.name: chain_of(problem, lot) for lot in problem.lots}
    ends = {
        name: earliest_end(chain, problem, windows)
        for name, chain in chains.items()
        if chain is not None
    }
    return {name: 0 if end is None else end for name, end in ends.items()}
