"""A lot that follows a plan: the moments of a whole plan, taken at once."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from studio_log.domain.journal import Entry
from studio_log.domain.lots import Lot
from studio_log.domain.served import served

Moments = Mapping[int, tuple[datetime, datetime]]
"""By number of a step, when it starts and ends."""


def following(lot: Lot, moments: Moments, milk_of: str = "") -> Lot:
    """Give the lot as it follows these moments; what was planned before counts no more.

    Of a step that runs only the end is taken, of one that is closed nothing. `milk_of` is the lot
    whose milk serves it by the plan.
    """
    lot = served(lot, milk_of)
    steps = []
    for step in lot.steps:
        start, end = moments.get(step.number, (None, None))
        begins = None if step.running else start
        steps.append(step if step.closed else replace(step, plan=begins, plan_end=end))
    return replace(lot, steps=tuple(steps))


def follow(lot: Lot, entry: Entry) -> Lot:
    """Give the lot after an accepted plan, as its journal holds it."""
    told = entry.data["moments"].items()
    serves = tuple(entry.data.get("serves", ()))
    return following(
        replace(lot, serves=serves),
        {
            int(number): (datetime.fromisoformat(start), datetime.fromisoformat(end))
            for number, (start, end) in told
        },
        str(entry.data.get("milk_of", "")),
    )
