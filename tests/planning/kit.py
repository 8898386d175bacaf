"""Problems for tests: small ones as dicts, random ones, and those of the reference folder."""

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.project import Project
from studio_log.planning.read import read_problem
from tests.support.reference import REFERENCE
from tests.support.tree import TREE

PLANNER = REFERENCE / "planner"
PUBLIC = TREE.parent / "shared" / "reference" / "planner"
"""Public instances, beside the project where they are there."""
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
STUDIOS = sorted(path.stem for path in PLANNER.glob("studio-*.json"))


def read(value: Any) -> Problem:
    found = read_problem(json.dumps(value).encode())
    assert isinstance(found, Problem)
    return found


def read_tasks(value: Any) -> Project:
    found = read_problem(json.dumps(value).encode())
    assert isinstance(found, Project)
    return found


def faults(value: Any) -> tuple[str, ...]:
    """What a reader says is amiss; () where it reads."""
    data = value if isinstance(value, bytes) else json.dumps(value).encode()
    try:
        read_problem(data)
    except BadProblemError as bad:
        return bad.faults
    return ()


def instance(name: str, folder: Path = PLANNER) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((folder / f"{name}.json").read_text("utf-8"))
    return found


def hours(*stretches: tuple[str, str]) -> dict[str, list[list[str]]]:
    return {day: [list(one) for one in stretches] for day in WEEK}


SOAK: list[dict[str, Any]] = [
    {"id": "load", "hands": 20, "use": {"tub": 10}},
    {"id": "soak", "min": 600, "target": 840, "max": 1080, "use": {"tub": 10}},
    {"id": "lift", "hands": 10, "use": {"tub": 10}},
    {"id": "dry", "min": 240, "max": 2880, "drying": True, "use": {"line": 5}},
    {"id": "take down", "hands": 10},
    {"id": "cure", "min": 1440, "cure": True},
]


def studio(count: int = 1, /, **changes: Any) -> dict[str, Any]:
    """A studio with a tub, six metres of line and hours 09:00 to 12:00 and 14:00 to 17:00."""
    base: dict[str, Any] = {
        "format": "studio-plan/1", "start": "2027-03-01T00:00", "horizon_days": 14, "grid_min": 10,
        "calendar": {"working": hours(("09:00", "12:00"), ("14:00", "17:00"))},
        "resources": {"vessels": [{"id": "tub1", "kind": "tub", "litres": 20}], "line_m": 6},
        "lots": [
            {"id": f"L{n}", "pieces": 2, "steps": deepcopy(SOAK)} for n in range(1, count + 1)
        ],
    }  # fmt: skip
    return base | changes


def project(tasks: list[dict[str, Any]], lags: list[dict[str, Any]], room: int = 2) -> Any:
    return {
        "format": "rcpsp-max/1", "resources": [{"id": "R", "capacity": room}],
        "tasks": tasks, "lags": lags,
    }  # fmt: skip


@st.composite
def studios(draw: st.DrawFn) -> dict[str, Any]:
    """Studios of one to four lots; hours, vessels, steps, facts and goals by chance."""
    opens, closes = draw(st.integers(6, 10)), draw(st.integers(13, 20))
    stretches = [(f"{opens:02}:00", f"{closes:02}:00")]
    if draw(st.booleans()):
        stretches.append(("21:00", "22:30"))
    vessels = [
        {"id": f"tub{n}", "kind": "tub", "litres": draw(st.integers(10, 40)),
         "one_lot": draw(st.booleans())}
        for n in range(draw(st.integers(1, 3)))
    ]  # fmt: skip
    count = draw(st.integers(1, 4))
    lots = [draw(_lots(number)) for number in range(count)]
    goals = []
    if draw(st.booleans()):
        goals = [{"id": "class", "date": f"2027-03-{draw(st.integers(3, 14)):02}T09:00",
                  "pieces": count, "cured_days": draw(st.integers(0, 2)),
                  "lots": [lot["id"] for lot in lots]}]  # fmt: skip
    return studio(
        calendar={"working": hours(*stretches) | {"sun": []}},
        resources={"vessels": vessels, "line_m": draw(st.integers(5, 12))},
        lots=lots, goals=goals, grid_min=draw(st.sampled_from([5, 10, 15])),
        dry_min_by_date=draw(st.dictionaries(
            st.sampled_from(["2027-03-01", "2027-03-02", "2027-03-04"]), st.integers(0, 900),
        )),
    )  # fmt: skip


@st.composite
def _lots(draw: st.DrawFn, number: int) -> dict[str, Any]:
    litres, metres = draw(st.integers(2, 10)), draw(st.integers(1, 5))
    steps: list[dict[str, Any]] = [
        {"id": "load", "hands": draw(st.integers(0, 40)), "use": {"tub": litres}},
        {"id": "soak", "min": draw(st.integers(30, 700)), "max": draw(st.integers(1300, 3000)),
         "target": draw(st.integers(30, 900)), "use": {"tub": litres}},
        {"id": "lift", "hands": 15, "use": {"tub": litres}},
    ]  # fmt: skip
    for dip in range(draw(st.integers(0, 2))):
        steps.append({"id": f"dip {dip}", "hands": 20, "use": {"line": metres}})
        steps.append({"id": f"dry {dip}", "min": 200, "target": 300, "max": 4000, "drying": True,
                      "use": {"line": metres}})  # fmt: skip
    if draw(st.booleans()):
        steps[2]["then_within"] = draw(st.integers(0, 3000))
    steps.append({"id": "take down", "hands": 10})
    if draw(st.booleans()):
        steps.append({"id": "cure", "min": 1440, "cure": True})
    lot = {"id": f"L{number}", "pieces": 1, "steps": steps, "release": draw(st.integers(0, 2880))}
    if draw(st.integers(0, 3)) == 0:
        begun = draw(st.integers(1, 12))
        lot["actual"] = {
            "load": {"start": f"2027-02-28T{begun:02}:00", "end": f"2027-02-28T{begun:02}:20"},
            "soak": {"start": f"2027-02-28T{begun:02}:20", "end": None},
        }
    if draw(st.integers(0, 3)) == 0:
        lot["links"] = [
            {"from": "load.end", "to": "take down.end", "max": draw(st.integers(2000, 12000))}
        ]
    if draw(st.integers(0, 3)) == 0:
        lot["due"] = f"2027-03-{draw(st.integers(2, 14)):02}T12:00"
    return lot
