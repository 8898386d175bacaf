"""Says which date a plan misses, by how much, and through which lot."""

from studio_log.planning.lates import lates
from studio_log.planning.problem import Plan, Problem


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


def _moment(problem: Problem, minute: int) -> str:
    return problem.clock.local(minute).strftime("%Y-%m-%d at %H:%M")


def span_words(minutes: int) -> str:
    """Give a length as a person says it: minutes, hours up to two days, else days."""
    if minutes < 120:
        return f"{minutes} min"
    return f"{minutes / 60:.1f} h" if minutes < 2880 else f"{minutes / 1440:.1f} days"
