"""The second layer: a lot that dies even alone, where it dies, and what just lets it live.

Everything is tried on the calendar alone first, which is exact and takes milliseconds; `why` then
plans the whole studio with it.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from typing import Final

from studio_log.planning.calendar_links import goes_alone
from studio_log.planning.calendar_sweep import Death, death_of
from studio_log.planning.chain import Chain, chain_of
from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    Change,
    LongerLink,
    LongerPause,
    LongerStep,
    MoreDays,
)
from studio_log.planning.changes import apply_change, apply_changes, link_ends, lot_of
from studio_log.planning.check_plan import open_steps
from studio_log.planning.hours import windows_of
from studio_log.planning.plain_words import DAY, WEEK
from studio_log.planning.problem import BadProblemError, Lot, Problem
from studio_log.planning.why_sizes import awake

MOST_COMINGS: Final = 6
"""Sessions that are asked for in one way out."""
MOST_ROOM: Final = 4
"""Lots that a session which is asked for has room for."""
QUARTER: Final = 15
MOST_LONGER: Final = 60 * DAY
NOON: Final = 12 * 60
DAYTIME: Final = (9 * 60, 17 * 60)
"""Hours that are proposed where there are none to go by."""
Mend = tuple[Change, ...]
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Dead:
    """A lot without a place even alone; `death` None where only its links forbid it."""

    lot: Lot
    chain: Chain
    death: Death | None


def dead_lots(problem: Problem, stop: Stop) -> tuple[Dead, ...]:
    """Give the lots that have no place even if everything else were free."""
    found = []
    windows = windows_of(problem)
    for lot in problem.lots:
        chain = chain_of(problem, lot)
        if chain is None or stop() or goes_alone(problem, lot.name, stop, windows) or stop():
            continue  # where it was told to stop in between, nothing is known
        found.append(Dead(lot, chain, death_of(chain, problem)))
    return tuple(found)


def mends_of(problem: Problem, dead: Dead, stop: Stop, *, lots: int = 1) -> Iterator[Mend]:
    """Give what lets a lot live, each alone and by just enough; sessions have room for so many."""
    found: list[Mend] = [(one,) for one in _loosened(problem, dead, stop)]
    comings = _comings(problem, dead, stop, min(lots, MOST_ROOM))
    found += [comings] if comings else []
    found += [(one,) for one in _other_days(problem, dead, stop)]
    yield from found or [(one,) for one in _further(problem, dead, stop)]


def lives(problem: Problem, changes: Mend, name: str, stop: Stop) -> bool:
    """Say whether a lot goes through the calendar with changes."""
    try:
        return goes_alone(apply_changes(problem, changes), name, stop)
    except BadProblemError:
        return False


# -- longer by just enough ---------------------------------------------------------------


def _loosened(problem: Problem, dead: Dead, stop: Stop) -> Iterator[Change]:
    """Give each limit that may be stretched and alone is enough, stretched by just enough."""
    lot = dead.lot
    steps = open_steps(lot)
    makers: list[Callable[[int], Change]] = [
        *(partial(LongerStep, lot.name, one.name)
          for one in steps if one.most is not None and one.limit != "rule"),
        *(partial(LongerPause, lot.name, one.name) for one in steps if not one.pause_rule),
        *(partial(LongerLink, lot.name, *link_ends(one))
          for one in lot.links if one.limit != "rule"),
    ]  # fmt: skip
    for maker in makers:
        by = _just_enough(problem, lot.name, maker, stop)
        if by is not None:
            yield maker(by)


def _just_enough(
    problem: Problem, name: str, maker: Callable[[int], Change], stop: Stop
) -> int | None:
    """Give the fewest minutes, in whole slots, that let a lot live; None where none do."""
    grid = problem.grid
    low, high = 0, MOST_LONGER // grid
    if stop() or not lives(problem, (maker(high * grid),), name, stop):
        return None
    while high - low > 1 and not stop():
        middle = (low + high) // 2
        if lives(problem, (maker(middle * grid),), name, stop):
            high = middle
        else:
            low = middle
    return None if stop() else high * grid


# -- coming once more --------------------------------------------------------------------


def _comings(problem: Problem, dead: Dead, stop: Stop, room: int) -> Mend:
    """Give sessions outside the hours that let a lot live, each where its way ends; () if none."""
    made: list[Change] = []
    while len(made) < MOST_COMINGS and not stop():
        chain = chain_of(problem, lot_of(problem, dead.lot.name))
        death = None if chain is None else death_of(chain, problem)
        if death is None:
            return tuple(made) if goes_alone(problem, dead.lot.name, stop) else ()
        session = _session_for(problem, death, room)
        if session is None:
            return ()
        made.append(session)
        problem = apply_change(problem, session)
    return ()


def _session_for(problem: Problem, death: Death, room: int) -> AddSession | None:
    """Give the session for a visit that has no hours, nearest to hours that there are."""
    length = death.chain.visits[death.visit].length * problem.grid * room
    found = []
    for number, slot in enumerate(_candidates(problem, death)):
        local = problem.clock.local(slot * problem.grid)
        begins = local.hour * 60 + local.minute
        day, ends = local.date(), begins + length
        if ends <= DAY and awake(problem, day.weekday(), begins, ends):
            away = _away(problem.calendar.on(day), begins, ends)
            found.append((away, begins % QUARTER != 0, number, AddSession(day, begins, ends)))
    return min(found, key=lambda one: one[:3])[3] if found and length else None


def _candidates(problem: Problem, death: Death) -> Iterator[int]:
    """Give the slots in which the visit would have to start, of the first days they lie in."""
    week = 7 * DAY // problem.grid
    for low, high in death.due[:MOST_COMINGS]:
        yield from range(max(low, 0), min(high, low + week, problem.horizon // problem.grid) + 1)


def _away(hours: tuple[tuple[int, int], ...], begins: int, ends: int) -> int:
    """Give how far a session lies from hours of its day; a day without hours is far."""
    if not hours:
        return DAY + abs(begins - NOON)
    return min(max(one - ends, begins - other, 0) for one, other in hours)


# -- other days, more days ---------------------------------------------------------------


def _other_days(problem: Problem, dead: Dead, stop: Stop) -> Iterator[Change]:
    """Give hours on one more weekday, as long as the longest there are, where that is enough."""
    if dead.chain.opening is not None:
        return
    begins, ends = usual_hours(problem) or DAYTIME
    free = [day for day, hours in enumerate(problem.calendar.working) if not hours]
    some = [(day,) for day in free] if len(free) < WEEK else [tuple(free)]
    for days in some:
        change = AddHours(days, begins, ends)
        good = not stop() and all(awake(problem, day, begins, ends) for day in days)
        if good and lives(problem, (change,), dead.lot.name, stop):
            yield change


def usual_hours(problem: Problem) -> tuple[int, int] | None:
    """Give the longest hours of any weekday, None where there are none."""
    every = [one for hours in problem.calendar.working for one in hours]
    return max(every, key=lambda one: one[1] - one[0], default=None)


def _further(problem: Problem, dead: Dead, stop: Stop) -> Iterator[Change]:
    """Give as many more days as let a lot live that finds its end behind the last day."""
    for days in (1, 2, 4, 7, 14, 28, 56, 112):
        if stop():
            return
        if lives(problem, (MoreDays(days),), dead.lot.name, stop):
            yield MoreDays(days)
            return
