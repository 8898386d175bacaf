"""Reads the form "studio-plan/1": hours, vessels, lots with their steps and facts, goals."""

from collections.abc import Mapping
from datetime import date
from itertools import pairwise
from typing import Any, Final
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from studio_log.planning.crowding import crowded
from studio_log.planning.pieces import shortage
from studio_log.planning.problem import (
    MOST_DAYS,
    MOST_SLOTS,
    THOUSANDTHS,
    Calendar,
    Clock,
    Goal,
    Problem,
    Vessel,
)
from studio_log.planning.read_lots import read_lots
from studio_log.planning.read_milks import read_milks
from studio_log.planning.taking import Table, read_clock, read_day, shown

MOST_WORTH: Final = 100_000
"""Minutes that a session may be worth."""
MOST_VESSELS: Final = 60
MOST_GOALS: Final = 8
MOST_EXCEPTIONS: Final = 2_000
MOST_HOURS: Final = 12
"""Stretches of working hours in a day."""
DAY: Final = 1440
WEEKDAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
TOP: Final = (
    "format", "name", "grid_min", "start", "zone", "horizon_days", "calendar", "resources",
    "lots", "goals", "dry_min_by_date", "session_worth", "milks",
    "best",
)  # fmt: skip
STORES: Final = {"line_m": "line", "burners": "burner", "hands": "hands"}


def read_studio(top: Table) -> Problem:
    """Give the problem; BadProblemError says all that is amiss."""
    top.known(TOP)
    start = top.moment("start")
    days = top.whole("horizon_days", 1, MOST_DAYS)
    grid = top.whole("grid_min", 1, 60, default=5)
    if days * DAY // grid > MOST_SLOTS:
        top.fault(f"asks for {days} days on a grid of {grid} min; take a coarser grid")
    clock = None if start is None else Clock(start, _zone(top))
    calendar = _calendar(top.table("calendar"))
    vessels, stores = _resources(top.table("resources"))
    drying = _drying(top.table("dry_min_by_date"))
    if clock is None:
        top.faults.end()
        raise AssertionError
    lots, notes = read_lots(top, clock, vessels, stores)
    notes += crowded(lots, vessels, stores)
    goals = _goals(top, clock, frozenset(one.name for one in lots))
    _enough(goals, {one.name: one.pieces for one in lots}, top)
    milks, lots = read_milks(top, clock, lots, vessels)
    worth = top.maybe("session_worth", most=MOST_WORTH)
    top.faults.end()
    name = top.value.get("name")
    return Problem(
        name if isinstance(name, str) else "", clock, days * DAY, calendar, vessels, stores,
        lots, goals, drying, grid, notes, worth, milks,
    )  # fmt: skip


def _zone(top: Table) -> ZoneInfo | None:
    name = top.value.get("zone")
    if name is None:
        return None
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError, TypeError):
        top.fault(f"has zone {shown(name)}; one such as Europe/London is due")
        return None


def _calendar(table: Table) -> Calendar:
    table.known(("working", "waking", "exceptions", "quiet"))
    other: dict[date, tuple[tuple[int, int], ...]] = {}
    for number, one in enumerate(table.list("exceptions", MOST_EXCEPTIONS), 1):
        entry = Table(one, f"Exception {number} of the calendar", table.faults)
        entry.known(("date", "working"))
        day = read_day(entry.value.get("date"))
        if day is None:
            entry.fault(f"has date {shown(entry.value.get('date'))}; one as 2027-03-01 is due")
        elif day in other:
            entry.fault(f"speaks of {day.isoformat()} a second time")
        else:
            other[day] = _hours(entry, "working")
    working, waking = _week(table.table("working")), _week(table.table("waking"))
    return Calendar(working, waking, other, table.limit("quiet") or "rule")


def _week(table: Table) -> tuple[tuple[tuple[int, int], ...], ...]:
    table.known(WEEKDAYS)
    return tuple(_hours(table, day) for day in WEEKDAYS)


def _hours(table: Table, key: str) -> tuple[tuple[int, int], ...]:
    """Give the hours of a day in order; they may touch, not overlap."""
    found: list[tuple[int, int]] = []
    for one in table.list(key, MOST_HOURS):
        ends = [read_clock(part) for part in one] if isinstance(one, list) else []
        if len(ends) != 2 or None in ends or not ends[0] < ends[1]:  # type: ignore[operator]
            table.fault(f"has for {key} hours that are no [from, to] of one day, as 09:00, 12:30")
        else:
            found.append((ends[0], ends[1]))  # type: ignore[arg-type]
    found.sort()
    if any(one[1] > other[0] for one, other in pairwise(found)):
        table.fault(f"has for {key} hours that overlap")
        return ()
    return tuple(found)


def _resources(table: Table) -> tuple[tuple[Vessel, ...], Mapping[str, int]]:
    table.known(("vessels", *STORES))
    found: dict[str, Vessel] = {}
    for number, one in enumerate(table.list("vessels", MOST_VESSELS), 1):
        entry = Table(one, f"Vessel {number}", table.faults)
        entry.known(("id", "kind", "litres", "one_lot"))
        name, kind = entry.name("id"), entry.name("kind")
        if name in found:
            entry.fault(f"is called {shown(name)}, as another is")
        if kind in STORES.values():
            entry.fault(f"is of kind {shown(kind)}, which is no vessel")
        found[name] = Vessel(
            name, kind, entry.amount("litres"), entry.flag("one_lot", default=True)
        )
    stores = {"line": table.amount("line_m", 0), "burner": table.amount("burners", 0)}
    hands = table.whole("hands", 1, 20, default=1) * THOUSANDTHS
    return tuple(found.values()), {**stores, "hands": hands}


def _drying(table: Table) -> dict[date, int]:
    found = {}
    for text in table.value:
        day = read_day(text)
        if day is None:
            table.fault(f"has {shown(text)}; a date such as 2027-03-01 is due")
        else:
            found[day] = table.whole(text)
    return found


def _goals(top: Table, clock: Clock, names: frozenset[str]) -> tuple[Goal, ...]:
    found: dict[str, Goal] = {}
    for number, one in enumerate(top.list("goals", MOST_GOALS), 1):
        entry = Table(one, f"Goal {number}", top.faults)
        entry.known(("id", "date", "pieces", "cured_days", "lots"))
        name, at = entry.name("id"), entry.moment("date")
        if name in found:
            entry.fault(f"is called {shown(name)}, as another is")
        lots = _names(entry, names)
        pieces = entry.whole("pieces", 1, 100_000)
        cured = entry.whole("cured_days", 0, 2_000, default=0) * DAY
        if at is not None:
            found[name] = Goal(name, clock.minute(at), pieces, cured, lots)
    return tuple(found.values())


def _enough(goals: tuple[Goal, ...], pieces: Mapping[str, int], top: Table) -> None:
    """Say which goals want more than their lots hold: each alone, and any of them together."""
    found = shortage(goals, pieces)
    if found is not None:
        wanted = sum(one.pieces for one in found[0])
        names = " and ".join(one.name for one in found[0])
        top.fault(f"wants {wanted} pieces for {names}; their lots hold {wanted - found[1]}")


def _names(entry: Table, names: frozenset[str]) -> tuple[str, ...]:
    found: dict[str, Any] = {}
    for one in entry.list("lots", 1_000):
        if not isinstance(one, str) or one not in names:
            entry.fault(f"names the lot {shown(one)}, which is not there")
        else:
            found[one] = None
    return tuple(found)
