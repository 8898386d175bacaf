"""Made-up studios for measuring: lots by chance from a seed, in two families of hours.

Family "day" has hours in the morning and in the afternoon; family "evening" has an hour and a
half besides, so that there are many more ways to share a session: the harder one.
"""

from random import Random
from typing import Any

from studio_log.planning.problem import Problem
from tests.planning.kit import hours, read

FAMILIES = ("day", "evening")
DAYS = {5: 30, 10: 60, 20: 120, 40: 200}
"""By the number of lots, the days in which they are to be done."""


def family(name: str, lots: int, seed: int) -> Problem:
    """Give a studio of so many lots; same name, number and seed, same studio."""
    chance = Random(1_000 * lots + seed)
    days = DAYS.get(lots, 6 * lots)
    stretches = [("09:00", "12:30"), ("13:30", "17:30")]
    evening = [("19:00", "20:30")] if name == "evening" else []
    full, short = hours(*stretches, *evening), hours(stretches[0], *evening)
    week = full | {"wed": short["wed"], "sat": short["sat"], "sun": []}
    sizes = (("tub", 20, True), ("tub", 20, True), ("tub", 60, False), ("bowl", 10, True),
             ("bowl", 10, True))  # fmt: skip
    return read({
        "format": "studio-plan/1", "start": "2027-03-01T08:00", "horizon_days": days,
        "calendar": {"working": week},
        "resources": {"line_m": 24, "burners": 1, "vessels": [
            {"id": f"{kind}{n}", "kind": kind, "litres": litres, "one_lot": alone}
            for n, (kind, litres, alone) in enumerate(sizes)
        ]},
        "lots": [_lot(f"L{n:02}", chance, 1440 * n * days // (3 * lots)) for n in range(lots)],
    })  # fmt: skip


def _lot(name: str, chance: Random, release: int) -> dict[str, Any]:
    """Give a lot of 14 to 17 steps: perhaps scoured, soaked, dipped two to four times."""
    litres, metres = chance.choice([8, 14, 18]), chance.choice([4, 5, 7, 9])
    steps: list[dict[str, Any]] = []
    if chance.random() < 0.5:
        steps += [
            {"id": "fill pot", "hands": 20, "use": {"burner": 1}},
            {"id": "simmer", "min": 45, "target": 60, "max": 90, "use": {"burner": 1}},
            {"id": "rinse and hang", "hands": 20},
            {"id": "dry after scour", "min": 240, "target": 720, "max": 5760, "drying": True,
             "use": {"line": metres}},
        ]  # fmt: skip
    steps += [
        {"id": "beans to soak", "hands": 10, "use": {"bowl": 9}},
        {"id": "bean soak", "min": 480, "target": 720, "max": 960, "use": {"bowl": 9}},
        {"id": "grind and strain", "hands": 40, "then_within": 1440},
        {"id": "load cloth", "hands": 15, "use": {"tub": litres}},
        {"id": "first soak", "min": 600, "target": 840, "max": 1080, "use": {"tub": litres}},
        {"id": "spin out", "hands": 10, "use": {"tub": litres}},
        {"id": "hang 1", "hands": 10, "use": {"line": metres}},
    ]
    last = chance.choice([2, 3, 3, 4])
    for number in range(1, last + 1):
        dry = {"min": 240, "target": 360, "max": 2880, "drying": True, "use": {"line": metres}}
        steps.append({"id": f"dry {number}", **dry})
        if number < last:
            dip = {"id": f"dip {number + 1} and hang", "hands": 15, "use": {"line": metres}}
            steps.append(dip)
    steps += [{"id": "take down", "hands": 10}, {"id": "cure", "min": 129_600, "cure": True}]
    return {"id": name, "steps": steps, "release": release}
