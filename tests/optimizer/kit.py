"""Problems for the optimizer's tests, small enough to list every plan there is."""

from collections.abc import Iterator, Sequence
from itertools import product
from random import Random
from typing import Any

from studio_log.planning.check_plan import violations
from studio_log.planning.problem import Lot, Plan, Problem, Score, Span
from tests.planning.kit import hours, read, studio

GRID = 60


def tiny(seed: int) -> Problem:
    """Two lots of one to two visits by hand in short hours; what binds them goes by chance."""
    chance = Random(seed)
    lots: list[dict[str, Any]] = []
    for name in ("A", "B"):
        soak = chance.choice((60, 120, 180))
        steps: list[dict[str, Any]] = [
            {"id": "load", "hands": 60, "use": {"tub": chance.choice((4, 8))}},
            {"id": "soak", "min": soak, "max": soak + chance.choice((0, 60, 1200)),
             "use": {"tub": 4}},
            {"id": "lift", "hands": 60},
        ]  # fmt: skip
        steps[0]["use"]["tub"] = steps[1]["use"]["tub"]
        if chance.random() < 0.5:
            steps[1]["target"] = chance.choice((60, 180, 300))
        if chance.random() < 0.3:
            steps[1] |= {"drying": True}
        lot: dict[str, Any] = {"id": name, "steps": steps, "release": chance.choice((0, 600, 1500))}
        if chance.random() < 0.5:
            lot |= {"due": chance.choice((700, 900, 2200)), "weight": chance.choice((1, 2))}
        lots.append(lot)
    goals = []
    if chance.random() < 0.4:
        goals = [{"id": "class", "date": "2027-03-01T13:00", "pieces": chance.choice((1, 2)),
                  "lots": ["A", "B"]}]  # fmt: skip
    tubs = [{"id": "t1", "kind": "tub", "litres": 8, "one_lot": chance.random() < 0.7}]
    if chance.random() < 0.3:
        tubs.append({"id": "t2", "kind": "tub", "litres": 4})
    return read(studio(
        lots=lots, goals=goals, grid_min=GRID, horizon_days=2,
        calendar={"working": hours(("09:00", "12:00"), ("13:00", "16:00"))},
        resources={"vessels": tubs, "line_m": 6},
        dry_min_by_date={"2027-03-01": chance.choice((0, 240))},
    ))  # fmt: skip


def best_of_all(problem: Problem) -> tuple[int, int, int] | None:
    """The least score of all plans that the checker lets pass, each looked at; None without one."""
    found: list[tuple[int, int, int]] = []
    ways = [list(_ways(problem, lot)) for lot in problem.lots]
    good = [[one for one in some if _alone(problem, lot, one)]
            for lot, some in zip(problem.lots, ways, strict=True)]  # fmt: skip
    for chosen in product(*good):
        score = _score(problem, chosen)
        if score is not None:
            found.append(score)
    return min(found, default=None)


Way = tuple[dict[str, Span], str]


def _ways(problem: Problem, lot: Lot) -> Iterator[Way]:
    soak = lot.steps[1]
    for start in range(0, problem.horizon, GRID):
        for length in range(soak.least, (soak.most or 0) + 1, GRID):
            spans = {"load": Span(start, start + 60), "soak": Span(start + 60, start + 60 + length)}
            spans["lift"] = Span(start + 60 + length, start + 120 + length)
            if start + 120 + length > problem.horizon:
                continue
            for vessel in problem.vessels:
                if vessel.size >= soak.uses["tub"]:
                    yield spans, vessel.name


def _alone(problem: Problem, lot: Lot, way: Way) -> bool:
    """Whether a lot's own rules hold: what the checker says of it does not name the lot."""
    plan = _plan(problem, [way if one is lot else ({}, "") for one in problem.lots])
    return not any(said.startswith(f"{lot.name}: ") for said in violations(problem, plan))


def _plan(problem: Problem, ways: Sequence[Way]) -> Plan:
    spans = {lot.name: way[0] for lot, way in zip(problem.lots, ways, strict=True)}
    vessels = {
        lot.name: {step: {"tub": way[1]} for step in ("load", "soak")}
        for lot, way in zip(problem.lots, ways, strict=True)
    }
    return Plan(spans, vessels, {}, Score(-1, -1, -1))


def _score(problem: Problem, ways: Sequence[Way]) -> tuple[int, int, int] | None:
    """The least score of some ways, over all shares of pieces; None for a bad plan."""
    plan = _plan(problem, ways)
    if not problem.goals:
        return _said(problem, plan)
    (goal,) = problem.goals
    shares = [{"A": n, "B": goal.pieces - n} for n in range(goal.pieces + 1)]
    scores = [
        _said(problem, Plan(plan.spans, plan.vessels, {goal.name: share}, plan.score))
        for share in shares
        if max(share.values()) <= 1
    ]
    return min((one for one in scores if one is not None), default=None)


def _said(problem: Problem, plan: Plan) -> tuple[int, int, int] | None:
    """The score that the checker works out, read off its sentences."""
    said = violations(problem, plan)
    if len(said) != 3 or not all(one.startswith("The ") for one in said):
        return None
    late, sessions, fine = (int(one.split(" is ")[1].split(";")[0]) for one in said)
    return late, sessions, fine
