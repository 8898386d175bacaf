"""Why a lot dies even alone, in words: the step, when it would have to end, the nearest hours."""

from collections.abc import Iterable
from typing import Final

from studio_log.planning.calendar_sweep import Death, Miss
from studio_log.planning.chain import NEVER, Chain, links_of
from studio_log.planning.hours import windows_of
from studio_log.planning.plain_words import about_words, counted, exact_words, listed, moment_words
from studio_log.planning.problem import Problem
from studio_log.planning.why_alone import Dead
from studio_log.planning.why_reasons import Reason, capital

MOST_NAMED: Final = 8
CANNOT: Final = "cannot be done in these hours"


def alone_reasons(problem: Problem, dead: Iterable[Dead]) -> tuple[Reason, ...]:
    """Give why lots have no place even if everything else were free; alike ones as one."""
    alike: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for one in dead:
        alike.setdefault((_steps(one), _because(problem, one)), []).append(one.lot.name)
    return tuple(
        Reason(
            "alone", tuple(names), steps, f"{_named(names)} cannot be done in these hours: {why}"
        )
        for (steps, why), names in alike.items()
    )


def _named(names: list[str]) -> str:
    """Give the lots of a reason, the first of many."""
    rest = len(names) - MOST_NAMED
    if rest < 2:
        return capital(listed(names))
    return capital(listed([*names[:MOST_NAMED], counted(rest, "other lot")]))


def _steps(dead: Dead) -> tuple[str, ...]:
    """Give the step that ends too late, and what was to follow it."""
    if dead.death is None:
        return tuple(
            dict.fromkeys(name for one in dead.lot.links for name in (one.first, one.second))
        )
    before = _between_name(dead.chain, dead.death)
    after = [name for name, _ in dead.chain.visits[dead.death.visit].steps[:1]]
    return tuple(one for one in (before, *after) if one)


def _between_name(chain: Chain, death: Death) -> str | None:
    """Give the step whose longest time is too short: a wait, or hands with a pause behind."""
    if death.between is None:
        return None
    if death.between.step is not None:
        return death.between.step
    if death.visit:
        steps = chain.visits[death.visit - 1].steps
        return steps[-1][0] if steps else None
    facts = [one.name for one in chain.lot.steps if one.name in chain.lot.facts]
    return facts[-1] if facts else None


def _because(problem: Problem, dead: Dead) -> str:
    death = dead.death
    if death is None:
        return _links(dead)
    if death.between is None:
        return _never_begun(problem, death)
    if not death.due:
        return _no_time(problem, death)
    if death.best is None:
        return _no_hours_behind(problem, dead, death)
    return _too_late(problem, dead, death, death.best)


def _never_begun(problem: Problem, death: Death) -> str:
    steps = death.chain.visits[death.visit].steps
    what = listed([name for name, _ in steps]) or "its first step"
    since = moment_words(problem.clock, death.chain.since)
    if not windows_of(problem):
        return f"no working hours at all are set, so {what} has no time."
    return f"from {since} on there are no hours left in which {what} could be done."


def _no_time(problem: Problem, death: Death) -> str:
    """Say that shortest times leave no moment: the horizon, the weather, a recorded limit."""
    between, name = death.between, _between_name(death.chain, death)
    least = _least(problem, death)
    if between is not None and between.most < NEVER and least > _most(problem, death):
        on_grid = _off_the_grid(problem, death)
        if on_grid:
            return on_grid
        weather = " in this weather" if between.drying and problem.drying else ""
        return (
            f"{name} takes {exact_words(least)} at least{weather} and may last "
            f"{exact_words(_most(problem, death))} at most."
        )
    if any(first < 0 and second == death.visit for first, second, _ in
           links_of(death.chain, problem)):  # fmt: skip
        return f"what is recorded leaves no time any more for what follows {name}."
    end = moment_words(problem.clock, problem.horizon)
    return f"the plan reaches to {end}, and {name} would not be over by then."


def _off_the_grid(problem: Problem, death: Death) -> str:
    """Say that a step could last between its limits, but for no whole number of slots."""
    name = _between_name(death.chain, death)
    step = next((one for one in death.chain.lot.steps if one.name == name), None)
    if step is None or death.between is None or death.between.step is None or step.most is None:
        return ""
    least, most = exact_words(step.least), exact_words(step.most)
    weather = max(problem.drying.values(), default=0) if step.drying else 0
    if max(step.least, weather) > step.most:
        return ""
    grid = exact_words(problem.grid)
    return f"{name} lasts {least} to {most}, and on a grid of {grid} no moment lies between."


def _least(problem: Problem, death: Death) -> int:
    """Give the shortest time of what passes before, in minutes; of drying, in the worst weather."""
    between = death.between
    if between is None:
        return 0
    weather = max(problem.drying.values(), default=0) if between.drying and death.visit else 0
    return max(between.least * (problem.grid if death.visit else 1), weather)


def _most(problem: Problem, death: Death) -> int:
    between = death.between
    return 0 if between is None else between.most * (problem.grid if death.visit else 1)


def _no_hours_behind(problem: Problem, dead: Dead, death: Death) -> str:
    name, after = _between_name(dead.chain, death), _after(dead.chain, death)
    end = moment_words(problem.clock, problem.horizon)
    return f"after {name} there are no hours for {after} until {end}, where the plan ends."


def _after(chain: Chain, death: Death) -> str:
    steps = chain.visits[death.visit].steps
    return steps[0][0] if steps else "what follows"


def _too_late(problem: Problem, dead: Dead, death: Death, best: Miss) -> str:
    clock, name, after = problem.clock, _between_name(dead.chain, death), _after(dead.chain, death)
    by, at, late = moment_words(clock, best.by), moment_words(clock, best.at), about_words(
        best.at - best.by)  # fmt: skip
    nearest = f"The next hours are on {at}, {late} too late."
    waits = death.between is not None and death.between.step is None
    if death.visit == 0:
        since = moment_words(clock, best.source)
        if waits:
            return f"{after} has to follow {name}, over since {since}, by {by}. {nearest}"
        may = _from(problem, death)
        return f"{name} has been going since {since} and should end by {by}. {nearest}{may}"
    begun = moment_words(clock, best.source)
    most = exact_words(_most(problem, death))
    if waits:
        return (
            f"{after} has to follow {name} within {most}, and nobody is there in time. At best "
            f"{name} is over on {begun} and {after} due by {by}. {nearest}"
        )
    return (
        f"{name} may last {most} at most, and nobody is there at its end. At best it begins on "
        f"{begun} and should end by {by}. {nearest}"
    )


def _from(problem: Problem, death: Death) -> str:
    """Say from when on what is running may end, where that is still to come."""
    between = death.between
    soonest = 0 if between is None else death.chain.since + between.least
    if soonest <= 0:
        return " It may end at any time now."
    return f" It may end from {moment_words(problem.clock, soonest)} on."


def _links(dead: Dead) -> str:
    said = [
        f"from the {'end' if one.first_end else 'start'} of {one.first} to the "
        f"{'end' if one.second_end else 'start'} of {one.second} no more than "
        f"{exact_words(one.most)} may pass"
        for one in dead.lot.links
    ]
    return f"{listed(said)}, which these hours and shortest times do not allow."
