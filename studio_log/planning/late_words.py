"""Says which date a plan misses, by how much, and through which lot."""

from studio_log.planning.problem import Goal, Plan, Problem


def late_words(problem: Problem, plan: Plan) -> tuple[str, ...]:
    """Give a sentence for each goal and each lot's own date that is late in a plan."""
    said = [_goal_words(problem, plan, goal) for goal in problem.goals]
    for lot in problem.lots:
        spans = plan.spans.get(lot.name)
        if lot.due is not None and spans:
            end = max(span.end for span in spans.values())
            if end > lot.due:
                said.append(
                    f"{lot.name} is {span_words(end - lot.due)} late: it is over on "
                    f"{_moment(problem, end)}."
                )
    return tuple(one for one in said if one)


def _goal_words(problem: Problem, plan: Plan, goal: Goal) -> str:
    ready = {}
    for name in plan.serves.get(goal.name, {}):
        end = _end_before_cure(problem, plan, name)
        if end is not None:
            ready[name] = end + goal.cured
    last = max(ready.values(), default=goal.at)
    if last <= goal.at:
        return ""
    names = ", ".join(name for name, at in ready.items() if at > goal.at)
    return (
        f"{goal.name} is {span_words(last - goal.at)} late: of its pieces those of {names} are "
        f"not cured in time, the last on {_moment(problem, last)}."
    )


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
