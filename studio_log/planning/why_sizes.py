"""The first layer: what is too small for a lot, whatever the hours; nothing is searched.

A lot that fits no vessel, that is longer than the line, or a run of hands-on steps that is longer
than any stretch of working hours.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.chain import chain_of
from studio_log.planning.change_kinds import (
    AddHours,
    AddVessel,
    Change,
    MoreBurners,
    MoreLine,
)
from studio_log.planning.check_plan import open_steps
from studio_log.planning.hours import windows_of
from studio_log.planning.plain_words import BURNERS, DAY, amount_words, counted, exact_words
from studio_log.planning.problem import THOUSANDTHS, Lot, Problem
from studio_log.planning.vessel_words import kind_words
from studio_log.planning.why_reasons import Reason, capital

LINE: Final = "line"
BURNER: Final = "burner"
DAYLIGHT: Final = ((7 * 60, 22 * 60),)
"""Waking hours of a day that has none in the file."""


@dataclass(frozen=True, slots=True)
class Misfit:
    """One thing that is too small for one lot, and changes that each mend it."""

    lot: str
    steps: tuple[str, ...]
    sentence: str
    mends: tuple[tuple[Change, ...], ...]

    @property
    def reason(self) -> Reason:
        """Give it as a reason."""
        return Reason("sizes", (self.lot,), self.steps, self.sentence)


def misfits(problem: Problem) -> tuple[Misfit, ...]:
    """Give what does not fit, lot by lot; what is over is not looked at."""
    longest = max((one.end - one.start for one in windows_of(problem)), default=0)
    found: list[Misfit] = []
    for lot in problem.lots:
        found += _things(problem, lot)
        found += _blocks(problem, lot, longest)
    return tuple(found)


# -- things ------------------------------------------------------------------------------


def _things(problem: Problem, lot: Lot) -> Iterator[Misfit]:
    most: dict[str, int] = {}
    steps: dict[str, list[str]] = {}
    for step in open_steps(lot):
        for kind, much in step.uses.items():
            if much > _largest(problem, kind):
                most[kind] = max(much, most.get(kind, 0))
                steps.setdefault(kind, []).append(step.name)
    for kind, much in most.items():
        yield _too_big(problem, lot, kind, much, tuple(steps[kind]))


def _largest(problem: Problem, kind: str) -> int:
    """Give the most that one lot can take of a kind of vessel, or of line or burners."""
    if kind in problem.stores:
        return problem.stores[kind]
    return max((one.size for one in problem.vessels if one.kind == kind), default=0)


def _too_big(problem: Problem, lot: Lot, kind: str, much: int, steps: tuple[str, ...]) -> Misfit:
    there = _largest(problem, kind)
    told = {
        "lot": lot.name,
        "steps": listed(steps),
        "much": amount_words(much),
        "there": amount_words(there),
    }
    if kind == LINE:
        more = _up(much - there)
        words = tr(_LINE[there > 0], **told)
        return Misfit(lot.name, steps, words, ((MoreLine(more),),))
    if kind == BURNER:
        told["wanted"] = counted(-(-much // THOUSANDTHS), BURNERS)
        told["has"] = counted(there // THOUSANDTHS, BURNERS)
        words = tr("{lot} needs {wanted} for {steps}; the studio has {has}.", **told)
        return Misfit(lot.name, steps, words, ((MoreBurners(-(-(much - there) // THOUSANDTHS)),),))
    words = tr(_VESSEL[there > 0], kind=kind_words(kind), **told)
    return Misfit(lot.name, steps, words, ((AddVessel(kind, _up(much)),),))


_LINE: Final = {
    True: tr_later(
        "{lot} does not fit on the line: {steps} takes {much} m, and there are {there} m."
    ),
    False: tr_later("{lot} does not fit on the line: {steps} takes {much} m, and there is none."),
}
_VESSEL: Final = {
    True: tr_later(
        "{lot} fits no {kind}: {steps} takes {much} L, and the largest holds {there} L."
    ),
    False: tr_later("{lot} fits no {kind}: {steps} takes {much} L, and there is none."),
}
"""By whether there is any."""


def _up(much: int) -> int:
    """Give thousandths rounded up to a whole litre or metre, as they are sold."""
    return -(-much // THOUSANDTHS) * THOUSANDTHS


# -- hands -------------------------------------------------------------------------------


def _blocks(problem: Problem, lot: Lot, longest: int) -> Iterator[Misfit]:
    """Find runs of hands-on steps longer than any hours; without hours at all there is no size."""
    chain = chain_of(problem, lot)
    for visit in () if chain is None or not longest else chain.visits:
        if visit.length <= longest:
            continue
        steps = tuple(name for name, _ in visit.steps)
        length = visit.length * problem.grid
        words = tr(
            _BLOCK if len(steps) == 1 else _BLOCKS,
            steps=capital(listed(steps)),
            lot=lot.name,
            length=exact_words(length),
            hours=exact_words(longest * problem.grid),
        )
        yield Misfit(lot.name, steps, words, tuple(_longer_hours(problem, length)))


_BLOCK: Final = tr_later(
    "{steps} of {lot} takes {length} of hands in one go; the longest hours of a day are {hours}."
)
_BLOCKS: Final = tr_later(
    "{steps} of {lot} take {length} of hands in one go; the longest hours of a day are {hours}."
)


def _longer_hours(problem: Problem, length: int) -> Iterator[tuple[Change, ...]]:
    """Give longer hours on the weekdays that have the longest, where somebody is awake then."""
    calendar = problem.calendar
    longest = max((b - a for hours in calendar.working for a, b in hours), default=0)
    for day, hours in enumerate(calendar.working):
        for begins, ends in hours:
            if ends - begins != longest:
                continue
            for start in (begins, max(0, ends - length)):
                end = start + length
                if end <= DAY and awake(problem, day, start, end):
                    yield (AddHours((day,), start, end),)


def awake(problem: Problem, weekday: int, begins: int, ends: int) -> bool:
    """Say whether somebody may be asked to come then: never in quiet hours, if they are a rule."""
    calendar = problem.calendar
    if calendar.quiet != "rule":
        return True
    waking = calendar.waking[weekday] or DAYLIGHT
    return any(one <= begins and ends <= other for one, other in waking)
