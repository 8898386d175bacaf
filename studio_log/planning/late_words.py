"""Says which date a plan misses, by how much, and through which lot."""

from collections.abc import Iterator
from dataclasses import dataclass

from studio_log.planning.problem import Goal, Plan, Problem


@dataclass(frozen=True, slots=True)
class Late:
    """A goal, or a lot with a date of its own, that is late in a plan."""

    what: str
    minutes: int
    lots: tuple[str, ...]
    """The lots that make it late; a lot with a date is its own."""
    at: int = 0
    """The minute when all of it is there."""


def late_words(problem: Problem, plan: Plan) -> tuple[str, ...]:
    """Give a sentence for each goal and each lot's own date that is late in a plan."""
    goals = {one.name for one in problem.goals}
    said = []
    for one in lates(problem, plan):
        last = _moment(problem, one.at)
        if one.what in goals and one.lots != (one.what,):
            said.append(
                f"{one.what} is {span_words(one.minutes)} late: of its pieces those of "
                f"{', '.join(one.lots)} are not cured in time, the last on {last}."
            )
        else:
            said.append(f"{one.what} is {span_words(one.minutes)} late: it is over on {last}.")
    return tuple(said)


def lates(problem: Problem, plan: Plan) -> tuple[Late, ...]:
    """Give what is late in a plan: goals first, then lots with a date of their own."""
    found = [one for goal in problem.goals for one in _goal_late(problem, plan, goal)]
    for lot in problem.lots:
        spans = plan.spans.get(lot.name)
        if lot.due is not None and spans:
            end = max(span.end for span in spans.values())
            if end > lot.due:
                found.append(Late(lot.name, end - lot.due, (lot.name,), end))
    return tuple(found)


def _goal_late(problem: Problem, plan: Plan, goal: Goal) -> Iterator[Late]:
    known = {lot.name for lot in problem.lots}
    ready = {}
    for name in plan.serves.get(goal.name, {}):
        end = _end_before_cure(problem, plan, name) if name in known else None
        if end is not None:
            ready[name] = end + goal.cured
    last = max(ready.values(), default=goal.at)
    if last > goal.at:
        lots = tuple(name for name, at in ready.items() if at > goal.at)
        yield Late(goal.name, last - goal.at, lots, last)


def _end_before_cure(problem: Problem, plan: Plan, name: str) -> int | None:
    spans = plan.spans.get(name, {})
    lot = next(one for one in problem.lots if one.name == name)
    ends = [
        spans[step.name].end if step.name in spans else lot.facts[step.name].end
        for step in lot.steps
        if not step.cure and (step.name in spans or step.name in lot.facts)
    ]
    return ends[-1] if ends else None


def _moment(problem: Problem, minute: int) -> str:
    return problem.clock.local(minute).strftime("%Y-%m-%d at %H:%M")


def span_words(minutes: int) -> str:
    """Give a length as a person says it: minutes, hours up to two days, else days."""
    if minutes < 120:
        return f"{minutes} min"
    return f"{minutes / 60:.1f} h" if minutes < 2880 else f"{minutes / 1440:.1f} days"
