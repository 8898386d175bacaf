"""A plan as the dyer lives it: day by day, when to come, and what to do for which lot."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import Final
from zoneinfo import ZoneInfo

PAUSE: Final = timedelta(minutes=30)
"""With a longer pause between two acts one comes twice."""
ONE_SPELL: Final = timedelta(minutes=60)
"""Tendings of a lot that follow each other so soon are told in one line."""


@dataclass(frozen=True, slots=True)
class HandsOn:
    """One thing done by hand: lot and step as the planner calls them, and its order in words."""

    start: datetime
    end: datetime
    lot: str
    step: str
    order: str


@dataclass(frozen=True, slots=True)
class Visit:
    """One coming: from the first act to the end of the last, without a long pause between."""

    start: datetime
    end: datetime
    acts: tuple[HandsOn, ...]

    @property
    def runs(self) -> tuple[tuple[HandsOn, ...], ...]:
        """Give the acts in order of time, those in a row that are for one lot together."""
        return tuple(tuple(acts) for _, acts in groupby(self.acts, key=lambda one: one.lot))


@dataclass(frozen=True, slots=True)
class Tended:
    """A small act inside a step that goes by itself, such as a stir, or several soon after another.

    No visit of its own: it is done in passing, by whoever is awake.
    """

    start: datetime
    end: datetime
    """When the last one is due."""
    lot: str
    act: str
    times: int = 1


@dataclass(frozen=True, slots=True)
class PlanDay:
    """A local day, its visits and what is tended, each in order; either may be missing."""

    day: date
    visits: tuple[Visit, ...]
    tended: tuple[Tended, ...] = ()


def plan_days(
    acts: Iterable[HandsOn], zone: str, tended: Iterable[Tended] = ()
) -> tuple[PlanDay, ...]:
    """Give the days on which something is to be done; a visit belongs to the day it begins on."""
    visits: dict[date, list[Visit]] = {}
    for visit in _visits(sorted(acts, key=lambda one: (one.start, one.end, one.lot))):
        visits.setdefault(_day(visit.start, zone), []).append(visit)
    small: dict[date, list[Tended]] = {}
    for one in sorted(tended, key=lambda one: (one.start, one.lot)):
        small.setdefault(_day(one.start, zone), []).append(one)
    return tuple(
        PlanDay(day, tuple(visits.get(day, ())), _spells(small.get(day, ())))
        for day in sorted({*visits, *small})
    )


def _day(at: datetime, zone: str) -> date:
    return at.astimezone(ZoneInfo(zone)).date()


def _visits(acts: Sequence[HandsOn]) -> list[Visit]:
    found: list[list[HandsOn]] = []
    for one in acts:
        if not found or one.start - max(before.end for before in found[-1]) > PAUSE:
            found.append([])
        found[-1].append(one)
    return [Visit(acts[0].start, max(one.end for one in acts), tuple(acts)) for acts in found]


def _spells(tended: Sequence[Tended]) -> tuple[Tended, ...]:
    """Give tendings of a day with those of a lot that are the same and follow soon as one."""
    found: list[Tended] = []
    last: dict[tuple[str, str], int] = {}
    for one in tended:
        place = last.get((one.lot, one.act))
        if place is not None and one.start - found[place].end < ONE_SPELL:
            found[place] = replace(found[place], end=one.end, times=found[place].times + one.times)
            continue
        last[one.lot, one.act] = len(found)
        found.append(one)
    return tuple(found)
