"""Checks the score that a plan claims: lateness with the pieces it names, sessions, fine part."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import timedelta

from studio_log.planning.problem import Goal, Lot, Plan, Problem


def score_faults(problem: Problem, plan: Plan) -> Iterator[str]:
    """Give a sentence for every part of the score, and every goal, that is not as it says."""
    yield from _served_faults(problem, plan)
    late = sum(_goal_late(problem, plan, goal) for goal in problem.goals)
    late += sum(_due_late(plan, lot) for lot in problem.lots)
    parts = (late, _sessions(problem, plan), _fine(problem, plan))
    for name, true, said in zip(
        ("lateness", "sessions", "fine part"), parts, plan.score.parts(), strict=True
    ):
        if true != said:
            yield f"The {name} is {true}; the plan says {said}."


def _served_faults(problem: Problem, plan: Plan) -> Iterator[str]:
    used: dict[str, int] = defaultdict(int)
    for goal in problem.goals:
        served = plan.serves.get(goal.name, {})
        if sum(served.values()) != goal.pieces or min(served.values(), default=0) < 0:
            yield f"{goal.name} is served {sum(served.values())} pieces, not {goal.pieces}."
        for name, pieces in served.items():
            if name not in goal.lots:
                yield f"{goal.name} is served by {name}, which is none of its lots."
            used[name] += pieces
    for lot in problem.lots:
        if used[lot.name] > lot.pieces:
            yield f"{lot.name} serves {used[lot.name]} pieces and has {lot.pieces}."


def _end_before_cure(plan: Plan, lot: Lot) -> int | None:
    """Give the end of the last step that is no cure, planned or recorded."""
    for step in reversed(lot.steps):
        if step.cure:
            continue
        span = plan.spans.get(lot.name, {}).get(step.name)
        fact = lot.facts.get(step.name)
        if span is not None:
            return span.end
        return None if fact is None else fact.end
    return None


def _goal_late(problem: Problem, plan: Plan, goal: Goal) -> int:
    ends = [
        _end_before_cure(plan, lot) or 0
        for lot in problem.lots
        if plan.serves.get(goal.name, {}).get(lot.name)
    ]
    return max(0, max(ends, default=goal.at - goal.cured) + goal.cured - goal.at)


def _due_late(plan: Plan, lot: Lot) -> int:
    spans = plan.spans.get(lot.name, {})
    if lot.due is None or not spans:
        return 0
    return lot.weight * max(0, max(span.end for span in spans.values()) - lot.due)


def _sessions(problem: Problem, plan: Plan) -> int:
    """Count the working hours of a day, by their opening, in which something is done by hand."""
    found = set()
    for lot in problem.lots:
        for step in lot.steps:
            span = plan.spans.get(lot.name, {}).get(step.name)
            if span is None or step.hands is None or span.end == span.start:
                continue
            if step.name in lot.facts:  # somebody is there already
                continue
            local = problem.clock.local(span.start)
            midnight = local.replace(hour=0, minute=0)
            for begins, ends in problem.calendar.on(local.date()):
                opens = problem.clock.minute(midnight + timedelta(minutes=begins))
                if opens <= span.start < problem.clock.minute(midnight + timedelta(minutes=ends)):
                    found.add(opens)
    return len(found)


def _fine(problem: Problem, plan: Plan) -> int:
    fine = 0
    for lot in problem.lots:
        spans = plan.spans.get(lot.name, {})
        for step in lot.steps:
            if step.name in spans and step.target is not None and step.hands is None:
                lasts = spans[step.name].end - spans[step.name].start
                fine += abs(lasts - step.target)
        if any(step.name in spans and not step.cure for step in lot.steps):
            fine += _end_before_cure(plan, lot) or 0
    return fine
