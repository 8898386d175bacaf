"""What may be asked for, so that all dates can be kept: options, and a problem that has them all.

The model has every option there is, and a price for each that it makes use of. So the changes it
comes out with are enough, and they are a way out as soon as they are planned.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from itertools import islice
from typing import Final

from studio_log.planning.change_kinds import (
    AddSession,
    AddVessel,
    Change,
    LongerLink,
    LongerPause,
    LongerStep,
)
from studio_log.planning.changes import apply_changes, link_ends
from studio_log.planning.check_plan import open_steps
from studio_log.planning.plain_words import DAY
from studio_log.planning.problem import THOUSANDTHS, Lot, Problem
from studio_log.planning.why_alone import usual_hours
from studio_log.planning.why_sizes import DAYLIGHT, awake

Longer = LongerStep | LongerPause | LongerLink
KINDS: Final = ("dates", "cured", "pieces", "things", "longer", "comings")
OF_DATES: Final = ("pieces", "cured", "dates")
"""Those that help only where a date is missed."""
MOST_COMINGS: Final = 90
"""Stretches of hours that are weighed up."""
MOST_MORE: Final = 2
"""Of a kind of vessel, and burners."""
QUARTER: Final = 15
LEAST_COMING: Final = 30


@dataclass(frozen=True, slots=True)
class Options:
    """What may be asked for, at most."""

    vessels: tuple[AddVessel, ...] = ()
    line: int = 0
    """Whole metres."""
    burners: int = 0
    hands: int = 0
    comings: tuple[AddSession, ...] = ()
    """Apart from all hours there are; somebody comes for a part of one."""
    longer: tuple[Longer, ...] = ()
    pieces: bool = False
    cured: bool = False
    dates: bool = False

    def wide(self, problem: Problem) -> Problem:
        """Give a problem in which all of it may be made use of."""
        stores = dict(problem.stores)
        more = {"line": self.line, "burner": self.burners, "hands": self.hands}
        for store, much in more.items():
            if much:
                stores[store] = stores.get(store, THOUSANDTHS * (store == "hands"))
                stores[store] += much * THOUSANDTHS
        changes: tuple[Change, ...] = (*self.vessels, *self.comings, *self.longer)
        return apply_changes(replace(problem, stores=stores), changes)


def options_of(problem: Problem, kinds: tuple[str, ...], until: int) -> Options:
    """Give what may be asked for, of some kinds; nobody is asked to come after the minute `until`.

    A longest time grows to twice its length at most, and a rule never does.
    """
    comings = _comings(problem, until) if "comings" in kinds else ()
    things = _things(problem) if "things" in kinds else Options()
    return replace(
        things,
        comings=tuple(islice(comings, MOST_COMINGS)),
        longer=tuple(_longer(problem)) if "longer" in kinds else (),
        pieces="pieces" in kinds,
        cured="cured" in kinds,
        dates="dates" in kinds,
    )


def _things(problem: Problem) -> Options:
    """Give more of what open steps take."""
    uses: dict[str, list[int]] = {}
    for lot in problem.lots:
        most: dict[str, int] = {}
        for step in open_steps(lot):
            for kind, much in step.uses.items():
                most[kind] = max(much, most.get(kind, 0))
        for kind, much in most.items():
            uses.setdefault(kind, []).append(much)
    vessels: list[AddVessel] = []
    for kind, some in uses.items():
        if kind not in {"line", "burner"}:
            size = -(-max(some) // THOUSANDTHS) * THOUSANDTHS
            vessels += [AddVessel(kind, size)] * min(MOST_MORE, len(some) - 1)
    line = -(-sum(uses.get("line", [0])) // THOUSANDTHS)
    burners = min(MOST_MORE, max(0, len(uses.get("burner", ())) - 1))
    hands = int(len(problem.lots) > 1)
    return Options(vessels=tuple(vessels), line=line, burners=burners, hands=hands)


def _comings(problem: Problem, until: int) -> Iterator[AddSession]:
    """Give, day by day, the hours before and after those there are, and those of days without."""
    clock, usual = problem.clock, usual_hours(problem)
    day = clock.start.date()
    last = min(until, problem.horizon)
    while clock.minute(datetime.combine(day, time())) < last:
        for begins, ends in _free_hours(problem, day, usual):
            at = clock.minute(datetime.combine(day, time()) + timedelta(minutes=begins))
            if (
                ends - begins >= LEAST_COMING
                and at >= 0
                and awake(problem, day.weekday(), begins, ends)
            ):
                yield AddSession(day, begins, ends)
        day += timedelta(days=1)


def _free_hours(
    problem: Problem, day: date, usual: tuple[int, int] | None
) -> Iterator[tuple[int, int]]:
    hours = problem.calendar.on(day)
    if not hours:
        yield from () if usual is None else (usual,)
        return
    waking = problem.calendar.waking[day.weekday()] or DAYLIGHT
    yield _inwards(waking[0][0], hours[0][0] - problem.grid)
    yield _inwards(hours[-1][1] + problem.grid, waking[-1][1])


def _inwards(begins: int, ends: int) -> tuple[int, int]:
    """Give hours cut to quarters, so that they do not touch those beside them."""
    return -(-begins // QUARTER) * QUARTER, min(ends, DAY) // QUARTER * QUARTER


def _longer(problem: Problem) -> Iterator[Longer]:
    """Give each longest time that may be stretched, twice as long."""
    for lot in problem.lots:
        yield from _longer_steps(lot)
        for link in lot.links:
            if link.limit != "rule":
                yield LongerLink(lot.name, *link_ends(link), link.most)


def _longer_steps(lot: Lot) -> Iterator[Longer]:
    for step in open_steps(lot):
        if step.most and step.limit != "rule" and step.hands is None and not step.cure:
            yield LongerStep(lot.name, step.name, step.most)
        if step.then_within and not step.pause_rule:
            yield LongerPause(lot.name, step.name, step.then_within)
