"""Says which date a plan misses, by how much, and through which lot."""

from studio_log.language.words import tr
from studio_log.planning.lates import lates
from studio_log.planning.plain_words import local
from studio_log.planning.problem import Plan, Problem


def late_words(problem: Problem, plan: Plan) -> tuple[str, ...]:
    """Give a sentence for each goal and each lot's own date that is late in a plan."""
    goals = {one.name for one in problem.goals}
    said = []
    for one in lates(problem, plan):
        last = problem.clock.local(one.at)
        told = {
            "what": one.what,
            "span": span_words(one.minutes),
            "day": f"{last:%Y-%m-%d}",
            "hour": f"{last:%H:%M}",
        }
        if one.what in goals and one.lots != (one.what,):
            text = tr(
                "{what} is {span} late: of its pieces those of {lots} are not cured in time, the "
                "last on {day} at {hour}.",
                lots=", ".join(one.lots),
                **told,
            )
        else:
            text = tr("{what} is {span} late: it is over on {day} at {hour}.", **told)
        said.append(text)
    return tuple(said)


def span_words(minutes: int) -> str:
    """Give a length as a person says it: minutes, hours up to two days, else days."""
    if minutes < 120:
        return f"{minutes} min"
    if minutes < 2880:
        return f"{_tenths(minutes / 60)} h"
    return tr("{n} days", n=_tenths(minutes / 1440))


def _tenths(value: float) -> str:
    """Give a figure with one place, a nought too: "2.0"."""
    return local(f"{value:.1f}")
