"""Reads the form "rcpsp-max/1": tasks, lags between starts, resources."""

from typing import Final

from studio_log.planning.project import Lag, Project, Task
from studio_log.planning.taking import Faults, Table, shown

MOST_TASKS: Final = 200
MOST_LAGS: Final = 20_000
MOST_RESOURCES: Final = 50
MOST_UNITS: Final = 1_000_000
TOP: Final = (
    "format name resources tasks lags known source".split()  # noqa: SIM905 - a list of words
)


def read_project(top: Table) -> Project:
    """Give the project; BadProblemError says all that is amiss."""
    top.known(TOP)
    faults = top.faults
    capacity: dict[str, int] = {}
    for number, one in enumerate(top.list("resources", MOST_RESOURCES), 1):
        entry = Table(one, f"Resource {number}", faults)
        entry.known(("id", "capacity"))
        name = entry.name("id")
        if name in capacity:
            entry.fault(f"is called {shown(name)}, as another is")
        capacity[name] = entry.whole("capacity", most=MOST_UNITS)
    tasks = _tasks(top, capacity, faults)
    lags = _lags(top, frozenset(one.name for one in tasks), faults)
    if not tasks:
        faults.add("The problem has no tasks.")
    faults.end()
    return Project(top.value.get("name", "") or "", tasks, lags, capacity)


def _tasks(top: Table, capacity: dict[str, int], faults: Faults) -> tuple[Task, ...]:
    found: dict[str, Task] = {}
    for number, one in enumerate(top.list("tasks", MOST_TASKS), 1):
        entry = Table(one, f"Task {number}", faults)
        entry.known(("id", "duration", "demand", "release", "tail"))
        name = entry.name("id")
        if name in found:
            entry.fault(f"is called {shown(name)}, as another is")
        needs = entry.table("demand")
        needs.known(capacity)
        demand = {key: needs.whole(key, most=MOST_UNITS) for key in needs.value if key in capacity}
        duration = entry.whole("duration", most=MOST_UNITS)
        release = entry.whole("release", most=MOST_UNITS, default=0)
        tail = entry.whole("tail", most=MOST_UNITS, default=duration)
        demand = {key: much for key, much in demand.items() if much and duration}
        found[name] = Task(name, duration, demand, release, max(tail, duration))
    return tuple(found.values())


def _lags(top: Table, names: frozenset[str], faults: Faults) -> tuple[Lag, ...]:
    found = []
    for number, one in enumerate(top.list("lags", MOST_LAGS), 1):
        entry = Table(one, f"Lag {number}", faults)
        entry.known(("from", "to", "min", "max"))
        first, second = entry.name("from"), entry.name("to")
        for name in (first, second):
            if name and name not in names:
                entry.fault(f"speaks of task {shown(name)}, which is not there")
        if ("min" in entry.value) == ("max" in entry.value):
            entry.fault("has to have one of min and max")
        elif "min" in entry.value:
            least = entry.whole("min", -MOST_UNITS, MOST_UNITS)
            found.append(Lag(first, second, least))
        else:
            most = entry.whole("max", -MOST_UNITS, MOST_UNITS)
            found.append(Lag(second, first, -most))
    return tuple(found)
