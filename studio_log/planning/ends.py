"""When lots end: in a plan, and at the earliest that any plan could end them."""

from studio_log.planning.calendar_sweep import earliest_end
from studio_log.planning.chain import chain_of
from studio_log.planning.engine import recorded_end
from studio_log.planning.hours import windows_of
from studio_log.planning.problem import Lot, Plan, Problem
from studio_log.planning.score import Lateness


def end_of(lot: Lot, plan: Plan) -> int:
    """Give the end of the last step before the cure, planned or recorded."""
    spans = plan.spans.get(lot.name, {})
    for step in reversed(lot.steps):
        fact = lot.facts.get(step.name)
        if step.name in spans and not step.cure:
            return spans[step.name].end
        if fact is not None and fact.end is not None and not step.cure:
            return fact.end
    return 0


def least_late(problem: Problem) -> int:
    """Give the minutes that no plan is less late than: each lot as if the studio were its own."""
    ends = alone_ends(problem)
    lateness = Lateness(problem)
    late = sum(lateness.of_due(name, end) for name, end in ends.items())
    recorded = {one.name: recorded_end(one) for one in problem.lots if one.name not in ends}
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
