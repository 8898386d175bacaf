"""What a plan misses: goals and lots' own dates, by how much, and through which lots."""

from dataclasses import dataclass

from studio_log.planning.problem import Goal, Lot, Plan, Problem
from studio_log.planning.score import end_of


@dataclass(frozen=True, slots=True)
class LateGoal:
    """A goal that a plan misses: when each of its lots is cured, those in time left out."""

    goal: Goal
    in_time: int
    """Pieces cured by the date."""
    late: dict[str, int]
    """By lot: the minute at which its pieces are cured."""
    pieces: int
    """Of those lots."""

    @property
    def last(self) -> int:
        """Give the minute at which the last of its pieces is cured."""
        return max(self.late.values())


@dataclass(frozen=True, slots=True)
class Late:
    """A goal, or a lot with a date of its own, that is late in a plan."""

    what: str
    minutes: int
    lots: tuple[str, ...]
    """The lots that make it late; a lot with a date is its own."""
    at: int = 0
    """The minute when all of it is there."""


def late_goals(problem: Problem, plan: Plan) -> tuple[LateGoal, ...]:
    """Give the goals that a plan misses."""
    found = []
    for goal in problem.goals:
        served = plan.serves.get(goal.name, {})
        cured = {
            lot.name: end_of(lot, plan.spans.get(lot.name, {})) + goal.cured
            for lot in problem.lots
            if served.get(lot.name)
        }
        late = {name: at for name, at in cured.items() if at > goal.at}
        if late:
            missed = sum(served[name] for name in late)
            found.append(LateGoal(goal, goal.pieces - missed, late, missed))
    return tuple(found)


def late_dues(problem: Problem, plan: Plan) -> tuple[tuple[Lot, int], ...]:
    """Give the lots that miss their own date, and the minute at which they are over."""
    ends = {name: max(one.end for one in own.values()) for name, own in plan.spans.items() if own}
    return tuple(
        (lot, ends[lot.name])
        for lot in problem.lots
        if lot.due is not None and ends.get(lot.name, lot.due) > lot.due
    )


def lates(problem: Problem, plan: Plan) -> tuple[Late, ...]:
    """Give what is late in a plan: goals first, then lots with a date of their own."""
    found = []
    for one in late_goals(problem, plan):
        lots = tuple(name for name in plan.serves[one.goal.name] if name in one.late)
        found.append(Late(one.goal.name, one.last - one.goal.at, lots, one.last))
    for lot, end in late_dues(problem, plan):
        found.append(Late(lot.name, end - (lot.due or 0), (lot.name,), end))
    return tuple(found)


def minutes_late(problem: Problem, plan: Plan) -> int:
    """Give by how much all dates are missed together, no lot weighing more than another."""
    return sum(one.minutes for one in lates(problem, plan))


def late_names(problem: Problem, plan: Plan) -> set[str]:
    """Give the lots through which any date is late."""
    return {name for one in lates(problem, plan) for name in one.lots}
