"""Why a lot dies even alone, in words: the step, when it would have to end, the nearest hours."""

from collections.abc import Iterable
from typing import Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.calendar_sweep import Death, Miss
from studio_log.planning.chain import NEVER, Chain, links_of
from studio_log.planning.change_words import MOMENTS
from studio_log.planning.hours import windows_of
from studio_log.planning.plain_words import about_words, counted, exact_words, moment_words
from studio_log.planning.problem import Problem
from studio_log.planning.why_alone import Dead
from studio_log.planning.why_reasons import Reason, capital

MOST_NAMED: Final = 8
_OTHER_LOTS: Final = (
    tr_later("no other lots"), tr_later("one other lot"), tr_later("{n} other lots"),
)  # fmt: skip


def alone_reasons(problem: Problem, dead: Iterable[Dead]) -> tuple[Reason, ...]:
    """Give why lots have no place even if everything else were free; alike ones as one."""
    alike: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for one in dead:
        alike.setdefault((_steps(one), _because(problem, one)), []).append(one.lot.name)
    return tuple(
        Reason(
            "alone",
            tuple(names),
            steps,
            tr("{lots} cannot be done in these hours: {why}", lots=_named(names), why=why),
        )
        for (steps, why), names in alike.items()
    )


def _named(names: list[str]) -> str:
    """Give the lots of a reason, the first of many."""
    rest = len(names) - MOST_NAMED
    if rest < 2:
        return capital(listed(names))
    return capital(listed([*names[:MOST_NAMED], counted(rest, _OTHER_LOTS)]))


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
    what = listed([name for name, _ in steps]) or tr("its first step")
    since = moment_words(problem.clock, death.chain.since)
    if not windows_of(problem):
        return tr("no working hours at all are set, so {step} has no time.", step=what)
    text = tr_later("from {moment} on there are no hours left in which {step} could be done.")
    return tr(text, moment=since, step=what)


def _no_time(problem: Problem, death: Death) -> str:
    """Say that shortest times leave no moment: the horizon, the weather, a recorded limit."""
    between, name = death.between, _between_name(death.chain, death)
    least = _least(problem, death)
    if between is not None and between.most < NEVER and least > _most(problem, death):
        on_grid = _off_the_grid(problem, death)
        if on_grid:
            return on_grid
        plain = tr_later("{step} takes {least} at least and may last {most} at most.")
        weather = tr_later(
            "{step} takes {least} at least in this weather and may last {most} at most."
        )
        text = weather if between.drying and problem.drying else plain
        most = exact_words(_most(problem, death))
        return tr(text, step=name, least=exact_words(least), most=most)
    if any(first < 0 and second == death.visit for first, second, _ in
           links_of(death.chain, problem)):  # fmt: skip
        return tr("what is recorded leaves no time any more for what follows {step}.", step=name)
    end = moment_words(problem.clock, problem.horizon)
    text = tr_later("the plan reaches to {moment}, and {step} would not be over by then.")
    return tr(text, moment=end, step=name)


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
    text = tr_later(
        "{step} lasts {least} to {most}, and on a grid of {grid} no moment lies between."
    )
    return tr(text, step=name, least=least, most=most, grid=grid)


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
    text = tr_later(
        "after {step} there are no hours for {after} until {moment}, where the plan ends."
    )
    return tr(text, step=name, after=after, moment=end)


def _after(chain: Chain, death: Death) -> str:
    steps = chain.visits[death.visit].steps
    return steps[0][0] if steps else tr("what follows")


def _too_late(problem: Problem, dead: Dead, death: Death, best: Miss) -> str:
    clock = problem.clock
    waits = death.between is not None and death.between.step is None
    opening = death.visit == 0
    said = tr(
        _TOO_LATE[opening, waits],
        step=_between_name(dead.chain, death),
        after=_after(dead.chain, death),
        begun=moment_words(clock, best.source),
        by=moment_words(clock, best.by),
        most=exact_words(_most(problem, death)),
    )
    nearest = tr(
        "The next hours are on {moment}, {late} too late.",
        moment=moment_words(clock, best.at),
        late=about_words(best.at - best.by),
    )
    may = _from(problem, death) if opening and not waits else ""
    return " ".join(one for one in (said, nearest, may) if one)


_TOO_LATE: Final = {
    (True, True): tr_later("{after} has to follow {step}, over since {begun}, by {by}."),
    (True, False): tr_later("{step} has been going since {begun} and should end by {by}."),
    (False, True): tr_later(
        "{after} has to follow {step} within {most}, and nobody is there in time. At best {step} "
        "is over on {begun} and {after} due by {by}."
    ),
    (False, False): tr_later(
        "{step} may last {most} at most, and nobody is there at its end. At best it begins on "
        "{begun} and should end by {by}."
    ),
}
"""By whether the step is recorded already, and whether it is a wait."""


def _from(problem: Problem, death: Death) -> str:
    """Say from when on what is running may end, where that is still to come."""
    between = death.between
    soonest = 0 if between is None else death.chain.since + between.least
    if soonest <= 0:
        return tr("It may end at any time now.")
    return tr("It may end from {moment} on.", moment=moment_words(problem.clock, soonest))


def _links(dead: Dead) -> str:
    said = [
        tr(
            "from {first} to {second} no more than {most} may pass",
            first=_moment(one.first, end=one.first_end),
            second=_moment(one.second, end=one.second_end),
            most=exact_words(one.most),
        )
        for one in dead.lot.links
    ]
    text = tr_later("{limits}, which these hours and shortest times do not allow.")
    return tr(text, limits=listed(said))


def _moment(step: str, *, end: bool) -> str:
    return tr(MOMENTS["end" if end else "start"], step=step)
