"""The whole studio as a problem of the planner's form "studio-plan/1": plain values for JSON.

Hours, vessels, line, burners, goals and lots of the log become what help/plan.md tells of.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.plan_lots import PlanLot, Shop, wall_text
from studio_log.domain.plan_wishes import PlanGoal, SlowDay
from studio_log.domain.stretch_text import WHOLE_DAY, Stretch, clock, without
from studio_log.domain.studio_hours import Cause, DayHours, Week
from studio_log.domain.vessel_text import OwnVessel

GRID: Final = 5
"""Minutes."""
LEAST_DAYS: Final = 28
MOST_DAYS: Final = 200
"""More are more moments than are planned with on this grid."""
DAYS_A_LOT: Final = 5
AFTER_GOAL: Final = 14
"""So many days are looked at behind the last moment at which a goal can still be met."""
WEEKDAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


@dataclass(frozen=True, slots=True)
class Means:
    """What the studio works with; empty or 0 means that nothing was said."""

    vessels: tuple[OwnVessel, ...] = ()
    line_metres: float = 0.0
    burners: int = 0
    litres: float = 10.0
    hands: int = 1

    @property
    def shop(self) -> Shop:
        """What lots have to wait for."""
        kinds = frozenset(one.kind for one in self.vessels)
        return Shop(kinds, self.litres, line=self.line_metres > 0, heat=self.burners > 0)


@dataclass(frozen=True, slots=True)
class PlanTime:
    """When a plan begins, how many days it may take, and the studio's hours in them."""

    now: datetime
    zone: ZoneInfo
    count: int
    days: Sequence[DayHours]
    week: Week
    """Working stretches of each weekday, as they usually are."""
    waking: Week

    def awake(self, weekday: int, working: Sequence[Stretch]) -> tuple[Stretch, ...]:
        """Give what of a weekday's working stretches somebody is awake in."""
        return without(working, without(WHOLE_DAY, self.waking[weekday]))


@dataclass(frozen=True, slots=True)
class Wishes:
    """What is wished of a plan, and the days on which cloth dries slowly."""

    goals: tuple[PlanGoal, ...] = ()
    slow_days: tuple[SlowDay, ...] = ()
    session_worth: int | None = None
    """Minutes of one lot's waiting that a session saved is worth; None above everything."""


def begin_of(now: datetime, zone: ZoneInfo) -> datetime:
    """Give the next moment of the grid: no plan begins before it."""
    floor = now.replace(second=0, microsecond=0)
    over = floor.astimezone(zone).minute % GRID
    return now if floor == now and not over else floor + timedelta(minutes=GRID - over)


def horizon_days(now: datetime, zone: ZoneInfo, goals: Iterable[PlanGoal], lots: int) -> int:
    """Give how many days are planned: as far as goals reach, and room for every lot."""
    today = now.astimezone(zone).replace(tzinfo=None)
    wanted = [
        (datetime.fromisoformat(one.at) - today).days - one.cured_days + AFTER_GOAL for one in goals
    ]
    return max(LEAST_DAYS, min(MOST_DAYS, max([*wanted, DAYS_A_LOT * lots, LEAST_DAYS])))


def studio_form(
    time: PlanTime, means: Means, lots: Sequence[PlanLot], wishes: Wishes
) -> dict[str, Any]:
    """Give the problem; goals for which no lot is there are left out."""
    found = {
        "format": "studio-plan/1",
        "grid_min": GRID,
        "start": wall_text(begin_of(time.now, time.zone), time.zone),
        "zone": time.zone.key,
        "horizon_days": time.count,
        "calendar": _calendar(time),
        "resources": _resources(means),
        "lots": [one.form for one in lots],
        "goals": [_goal(one, lots) for one in wishes.goals if _of_goal(one, lots)],
        "dry_min_by_date": {one.day: round(one.hours * 60) for one in wishes.slow_days},
    }
    worth = wishes.session_worth
    return found if worth is None else {**found, "session_worth": worth}


def short_goals(goals: Iterable[PlanGoal], lots: Sequence[PlanLot]) -> list[tuple[PlanGoal, int]]:
    """Give the goals for which there are too few pieces, and how many there are."""
    found = []
    for one in goals:
        there = sum(lot.form["pieces"] for lot in _of_goal(one, lots))
        if there < one.pieces:
            found.append((one, there))
    return found


def _of_goal(goal: PlanGoal, lots: Sequence[PlanLot]) -> list[PlanLot]:
    """Give the lots whose pieces can serve a goal: those named, else all that cure."""
    cures = [one for one in lots if any(step.get("cure") for step in one.form["steps"])]
    return [one for one in cures if not goal.lots or one.code in goal.lots]


def _goal(goal: PlanGoal, lots: Sequence[PlanLot]) -> dict[str, Any]:
    """Give a goal; one that wants more pieces than there are is planned for those there are."""
    there = sum(one.form["pieces"] for one in _of_goal(goal, lots))
    return {
        "id": goal.name,
        "date": goal.at,
        "pieces": min(goal.pieces, there),
        "cured_days": goal.cured_days,
        "lots": [one.code for one in _of_goal(goal, lots)],
    }


def _calendar(time: PlanTime) -> dict[str, Any]:
    """Give working hours as far as somebody is awake in them, and the days that differ."""
    return {
        "working": _week([time.awake(at, one) for at, one in enumerate(time.week)]),
        "waking": _week(time.waking),
        "exceptions": [
            {
                "date": one.day.isoformat(),
                "working": _texts(time.awake(one.day.weekday(), one.working)),
            }
            for one in time.days
            if one.cause is not Cause.WEEKDAY
        ],
    }


def _week(stretches: Sequence[Sequence[Stretch]]) -> dict[str, list[list[str]]]:
    return {day: _texts(one) for day, one in zip(WEEKDAYS, stretches, strict=True)}


def _texts(stretches: Iterable[Stretch]) -> list[list[str]]:
    return [[clock(start), clock(end)] for start, end in stretches]


def _resources(means: Means) -> Mapping[str, Any]:
    counted: dict[str, int] = {}
    vessels = []
    for one in means.vessels:
        counted[one.kind] = counted.get(one.kind, 0) + 1
        vessels.append({
            "id": f"{one.kind} {counted[one.kind]}", "kind": one.kind,
            "litres": one.litres, "one_lot": not one.shared,
        })  # fmt: skip
    return {
        "vessels": vessels,
        "line_m": means.line_metres,
        "burners": means.burners,
        "hands": means.hands,
    }
