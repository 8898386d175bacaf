"""How well and how fast plans are made, against their bars; prints, asserts nothing.

Public projects run for 2 s each, if they are beside this project; the studios of
tests/reference/planner for --seconds each, and made-up ones of two families; then a first plan
of 40 lots with 14 steps, its memory, and how soon planning ends when it is told to. With
--engine optimizer the optional optimizer, which has bars of its own.
"""

import argparse
import json
import sys
import tracemalloc
from pathlib import Path
from statistics import mean
from time import perf_counter
from typing import Any

sys.path.insert(0, str(Path(__file__).parents[2]))

from studio_log.planning.calendar_links import goes_alone
from studio_log.planning.effort import Effort
from studio_log.planning.hours import windows_of
from studio_log.planning.plan_project import plan_project
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.problem import Problem
from studio_log.planning.why import explain
from studio_log.planning.why_reasons import Reasons
from tests.planning.kit import PUBLIC, STUDIOS, hours, instance, read, read_tasks
from tests.speed import planner_optimizer
from tests.speed.report import resident_kib, verdict
from tests.speed.studio_families import FAMILIES, family

PROJECT_S, FIRST_S, STOP_S, MORE_MIB, ALONE_S = 2.0, 4.0, 0.2, 60.0, 0.5


def for_seconds(seconds: float) -> Effort:
    """Plan until so many seconds have passed from now."""
    begun = perf_counter()
    return Effort(stop=lambda: perf_counter() - begun > seconds)


def projects() -> None:
    """Print the gap of each public project to its published optimum, and their mean."""
    gaps, wrong = [], 0
    for path in sorted(PUBLIC.glob("[jpu]*.json")):
        value = json.loads(path.read_text("utf-8"))
        known, begun = value["known"], perf_counter()
        found = plan_project(read_tasks(value), for_seconds(PROJECT_S))
        took = perf_counter() - begun
        wrong += found.status == "infeasible" != known["status"]
        if known["status"] == "optimal":
            gaps.append(100 * ((found.makespan or 10**6) / known["makespan"] - 1))
        best = known.get("makespan")
        print(f"  {path.stem}: {found.status} {found.makespan}, known {best}, {took:.2f} s")
    if gaps:
        verdict("projects, mean gap to the optimum", mean(gaps), 5, "%", f"{len(gaps)} instances")
        verdict("projects wrongly called infeasible", wrong, 0, "", "their published status")


def studios(seconds: float) -> None:
    """Print score after the time against the best known one of each studio."""
    for name in STUDIOS:
        value = instance(name)
        late, sessions, _ = value["best"]["score"]
        first: list[float] = []
        begun = perf_counter()
        effort = for_seconds(seconds)
        found = plan_studio(
            read(value), Effort(effort.stop, on_better=lambda _, b=begun, f=first:
                                f.append(perf_counter() - b))
        )  # fmt: skip
        assert found.plan is not None
        score = found.plan.score
        print(f"  {name}: {found.status} {score.parts()}, known {value['best']['score']}, first "
              f"after {first[0]:.2f} s, {found.tries} tries")  # fmt: skip
        bar = max(1.02 * late, late + 60)
        verdict(f"{name}, late", score.late, bar, "min", f"best known {late:g}")
        bar = 1.05 * sessions + 0.5
        verdict(f"{name}, sessions", score.sessions, bar, "", f"best known {sessions}")


def families(seconds: float) -> None:
    """Print what improving makes of first plans in two families of made-up studios.

    Both are ratios of sessions: to those of the first plan, and to the bound that no plan is
    below, which is far from tight.
    """
    for name in FAMILIES:
        for lots in (5, 10, 20, 40):
            for seed in (1, 2):
                first: list[int] = []
                effort = for_seconds(seconds)
                found = plan_studio(
                    family(name, lots, seed),
                    Effort(effort.stop, on_better=lambda plan, f=first:
                           f.append(plan.score.sessions)),
                )  # fmt: skip
                assert found.plan is not None
                assert found.bound is not None
                got, bound = found.plan.score.sessions, max(1, found.bound.sessions)
                print(
                    f"  {name}, {lots} lots, seed {seed}: {got / first[0]:.2f} of the first plan, "
                    f"{got / bound:.2f} of the bound, {found.tries} tries"
                )


def forty() -> Problem:
    """Forty lots of fourteen steps over 200 days, hours with a free Sunday, on a grid of 5 min."""
    steps: list[dict[str, Any]] = [
        {"id": "beans to soak", "hands": 10, "use": {"bowl": 7}},
        {"id": "bean soak", "min": 480, "target": 720, "max": 960, "use": {"bowl": 7}},
        {"id": "strain", "hands": 40, "then_within": 1440},
        {"id": "load", "hands": 15, "use": {"tub": 14}},
        {"id": "soak", "min": 600, "target": 840, "max": 1080, "use": {"tub": 14}},
        {"id": "spin", "hands": 10, "use": {"tub": 14}},
        {"id": "hang", "hands": 10, "use": {"line": 8}},
    ]
    for number in (1, 2, 3):
        dry = {"min": 240, "target": 360, "max": 2880, "drying": True, "use": {"line": 8}}
        steps.append({"id": f"dry {number}", **dry})
        if number < 3:
            steps.append({"id": f"dip {number}", "hands": 15, "use": {"line": 8}})
    steps += [{"id": "take down", "hands": 10}, {"id": "cure", "min": 129_600, "cure": True}]
    week = hours(("09:00", "12:30"), ("13:30", "17:30")) | {
        "wed": [["09:00", "12:30"]], "sat": [["10:00", "13:00"]], "sun": []}  # fmt: skip
    sizes = (("tub", 20, True), ("tub", 20, True), ("tub", 60, False), ("bowl", 10, True),
             ("bowl", 10, True))  # fmt: skip
    return read({
        "format": "studio-plan/1", "start": "2027-03-01T00:00", "horizon_days": 200,
        "calendar": {"working": week},
        "resources": {"line_m": 24, "vessels": [
            {"id": f"{kind}{n}", "kind": kind, "litres": litres, "one_lot": alone}
            for n, (kind, litres, alone) in enumerate(sizes)
        ]},
        "lots": [{"id": f"L{n:02}", "steps": steps, "release": 1440 * 4 * n} for n in range(40)],
    })  # fmt: skip


def first_plan() -> None:
    """Print time and memory of a first plan of forty lots, and how soon it ends when told."""
    problem = forty()
    before, begun = resident_kib(), perf_counter()
    found = plan_studio(problem, Effort(tries=0))
    took = perf_counter() - begun
    assert found.plan is not None
    print(f"  forty lots: {len(problem.lots[0].steps)} steps each, {found.plan.score.parts()}")
    verdict("first valid plan of forty lots", took, FIRST_S, "s", "from the problem as read")
    more = (resident_kib() - before) / 1024
    verdict("memory it takes", more, MORE_MIB, "MiB", "resident, against before")
    tracemalloc.start()
    plan_studio(problem, Effort(tries=0))
    peak = tracemalloc.get_traced_memory()[1] / 2**20
    tracemalloc.stop()
    verdict("memory it takes at its peak", peak, MORE_MIB, "MiB", "Python's own count")
    verdict("longest time to end", max(_ending(problem, at) for at in (0.2, 0.7, 2, 5)), STOP_S,
            "s", "told at four moments")  # fmt: skip


def explanations() -> None:
    """Print how long one lot is looked at alone, and what is offered for the late reference."""
    problem = forty()
    windows = windows_of(problem)
    begun = perf_counter()
    for lot in problem.lots:
        goes_alone(problem, lot.name, lambda: False, windows)
    took = (perf_counter() - begun) / len(problem.lots)
    verdict("one lot against the calendar alone", took, ALONE_S, "s", "mean of forty, 200 days")
    late = read(instance("studio-five-lots-too-early"))
    plan = plan_studio(late, for_seconds(3)).plan
    begun = perf_counter()
    when: list[float] = []

    def hear(so_far: Reasons) -> None:
        when.extend([perf_counter() - begun] * bool(so_far.ways))

    told = explain(late, plan, for_seconds(5), hear)
    for way in told.ways:
        print(f"  {way.sentence}")
    verdict("first way out of a late date", min(when, default=99.0), ALONE_S, "s", "a plan in hand")


def _ending(problem: Problem, at: float) -> float:
    """Give the seconds from the moment planning was told to end until it had."""
    begun = perf_counter()
    plan_studio(problem, for_seconds(at))
    return max(0.0, perf_counter() - begun - at)


def main() -> None:
    """Run what was asked for, or all."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=10.0, help="for each studio")
    parser.add_argument("--only", choices=("projects", "studios", "families", "first", "why"))
    parser.add_argument("--engine", choices=("own", "optimizer"), default="own")
    asked = parser.parse_args()
    if asked.engine == "optimizer":
        for name, measure in planner_optimizer.PARTS.items():
            if asked.only in (None, name):
                measure(asked.seconds)
        return
    parts = {
        "projects": projects,
        "studios": lambda: studios(asked.seconds),
        "families": lambda: families(asked.seconds),
        "first": first_plan,
        "why": explanations,
    }
    for name, part in parts.items():
        if asked.only in (None, name):
            part()


if __name__ == "__main__":
    main()
