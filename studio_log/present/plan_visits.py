"""A plan as the dyer lives it: day by day, when to come, and what to do for which lot."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

PAUSE: Final = timedelta(minutes=30)
"""With a longer pause between two acts one comes twice."""


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
    def by_lot(self) -> Mapping[str, tuple[HandsOn, ...]]:
        """Give the acts of each lot, lots in the order in which they are first touched."""
        codes = dict.fromkeys(one.lot for one in self.acts)
        return {code: tuple(one for one in self.acts if one.lot == code) for code in codes}


@dataclass(frozen=True, slots=True)
class PlanDay:
    """A local day and its visits in order."""

    day: date
    visits: tuple[Visit, ...]


def plan_days(acts: Iterable[HandsOn], zone: str) -> tuple[PlanDay, ...]:
    """Give the days on which somebody comes; a visit belongs to the day it begins on."""
    days: dict[date, list[Visit]] = {}
    for visit in _visits(sorted(acts, key=lambda one: (one.start, one.end, one.lot))):
        day = visit.start.astimezone(ZoneInfo(zone)).date()
        days.setdefault(day, []).append(visit)
    return tuple(PlanDay(day, tuple(visits)) for day, visits in days.items())


def _visits(acts: Sequence[HandsOn]) -> list[Visit]:
    found: list[list[HandsOn]] = []
    for one in acts:
        if not found or one.start - max(before.end for before in found[-1]) > PAUSE:
            found.append([])
        found[-1].append(one)
    return [Visit(acts[0].start, max(one.end for one in acts), tuple(acts)) for acts in found]
