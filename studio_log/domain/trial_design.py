"""How a trial is laid out: its units, their coded tags, and both random orders, from a seed.

Orders are drawn by Fisher and Yates from `random.Random(seed).random()`, whose numbers Python
promises to keep; they are written into the journal all the same. Tags are random numbers of
three figures, as sensory tests use them (ISO 6658, from memory), so that no tag says anything.
"""

import random
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, TypeVar

from studio_log.domain.errors import Refusal
from studio_log.domain.trials import Arm, Cell, Trial, Unit, Way
from studio_log.language.words import tr

DEFAULT_AGES: Final = (0.0, 3.0, 7.0, 14.0, 30.0, 60.0, 90.0)
"""Days from fully dry; each of the later about twice the one before."""
MOST_UNITS: Final = 400
MOST_ARMS: Final = 20
MOST_BLOCKS: Final = 20
MOST_REPLICATES: Final = 20
MOST_SEED: Final = 999_999
_Any = TypeVar("_Any")


@dataclass(frozen=True)
class Needs:
    """What a trial asks for: pieces of cloth, soyings, days on which it is dyed, and its span."""

    pieces: int
    soyings: int
    baths: int
    first: date
    last: date


def lay_out(
    arms: Sequence[Arm], blocks: int, replicates: int, *, way: Way, seed: int
) -> tuple[Unit, ...]:
    """Give the units with tags and orders.

    Backwards all are dipped in one random order. Forwards each arm is dipped on its own day, so
    the order is random within an arm, the youngest arm first.
    """
    _check(len(arms), blocks, replicates, seed)
    chance = random.Random(seed)  # noqa: S311 - an order, not a secret
    places = [
        (arm.number, block, replicate)
        for arm in arms
        for block in range(1, blocks + 1)
        for replicate in range(1, replicates + 1)
    ]
    tags = _shuffled([str(one) for one in range(100, 1000)], chance)[: len(places)]
    dips = _shuffled(list(range(len(places))), chance)
    if way == "forwards":
        ages = {arm.number: arm.age_d or 0.0 for arm in arms}
        dips.sort(key=lambda at: (ages[places[at][0]], places[at][0]))  # stable: random within
    reads = _shuffled(list(range(len(places))), chance)
    dip_of = {at: place for place, at in enumerate(dips, 1)}
    read_of = {at: place for place, at in enumerate(reads, 1)}
    return tuple(
        Unit(at + 1, arm, block, replicate, tags[at], dip_of[at], read_of[at])
        for at, (arm, block, replicate) in enumerate(places)
    )


def _check(arms: int, blocks: int, replicates: int, seed: int) -> None:
    bounds = (
        (arms, 1, MOST_ARMS, tr("arms")),
        (blocks, 1, MOST_BLOCKS, tr("batches")),
        (replicates, 1, MOST_REPLICATES, tr("replicates")),
        (arms * blocks * replicates, 1, MOST_UNITS, tr("pieces")),
        (seed, 0, MOST_SEED, tr("as a seed")),
    )
    for value, least, most, what in bounds:
        if not least <= value <= most:
            raise Refusal(
                tr("{value} {what}: a trial takes {least} to {most}. Nothing was changed.",
                   value=value, what=what, least=least, most=most)
            )  # fmt: skip


def _shuffled(known: list[_Any], chance: random.Random) -> list[_Any]:
    for last in range(len(known) - 1, 0, -1):
        other = int(chance.random() * (last + 1))
        known[last], known[other] = known[other], known[last]
    return known


def needs_of(
    arms: Sequence[Arm], blocks: int, replicates: int, *, way: Way, day: date, lead_d: int
) -> Needs:
    """Count what a trial asks for."""
    ages = [arm.age_d or 0.0 for arm in arms]
    soyed = [arm for arm in arms if arm.age_d is not None]
    first, last = day_span(ages, way=way, day=day, lead_d=lead_d)
    return Needs(
        pieces=len(arms) * blocks * replicates,
        soyings=blocks * (len(soyed) if way == "backwards" else min(len(soyed), 1)),
        baths=1 if way == "backwards" else len(set(ages)),
        first=first,
        last=last,
    )


def day_span(ages: Sequence[float], *, way: Way, day: date, lead_d: int) -> tuple[date, date]:
    """Give the day on which the beans of the first soying soak, and that of the last dyeing."""
    lead, oldest = timedelta(days=lead_d), timedelta(days=round(max(ages)))
    return (day - oldest - lead, day) if way == "backwards" else (day - lead, day + oldest)


def dye_day(trial: Trial, cell: Cell, dry: date | None) -> date:
    """Give the day an arm of a block is dyed; `dry` is when its lot was dry, if it is known."""
    if trial.way == "backwards":
        return trial.day
    age = trial.arm(cell[0]).age_d or 0.0
    return (dry or trial.day) + timedelta(days=round(age))


def soy_day(trial: Trial, arm: int) -> date:
    """Give the day the beans for an arm soak."""
    age = trial.arm(arm).age_d or 0.0 if trial.way == "backwards" else 0.0
    return trial.day - timedelta(days=round(age) + trial.lead_d)
