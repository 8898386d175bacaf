"""The limits of a studio that a conflict may be made of, and a problem with some of them only."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from studio_log.planning.problem import Problem, Vessel

ENOUGH: Final = 10**9
"""Thousandths: more of anything than a studio can take."""


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit of a studio, named as `planning.why_joint` reads it."""

    part: str
    name: str = ""
    lot: str = ""

    def to_json(self) -> dict[str, str]:
        """Give the limit as plain values; what is empty is left out."""
        own = {"part": self.part, "name": self.name, "lot": self.lot}
        return {key: value for key, value in own.items() if value}


def limits_of(problem: Problem, *, late: bool) -> list[Limit]:
    """Give the limits of a problem; those that explain least go first, and are told last.

    Dates only for a late plan: where there is none at all, they cannot be what stands against it.
    """
    found = [Limit("hours"), Limit("store", "hands")]
    used = {kind for lot in problem.lots for step in lot.steps for kind in step.uses}
    found += [Limit("store", one) for one in ("burner", "line") if one in used]
    found += [Limit("vessel", one) for one in dict.fromkeys(it.kind for it in problem.vessels)
              if one in used]  # fmt: skip
    if late:
        dated = [lot.name for lot in problem.lots if lot.due is not None]
        found += [Limit("due", "", name) for name in reversed(dated)]
        found += [Limit("goal", one.name) for one in reversed(problem.goals)]
    return found


def only(problem: Problem, limits: Sequence[Limit]) -> Problem:
    """Give a problem with some limits; hours are left to the model."""
    stores = {
        name: much if Limit("store", name) in limits else ENOUGH
        for name, much in problem.stores.items()
    }
    kinds = dict.fromkeys(one.kind for one in problem.vessels)
    vessels: list[Vessel] = []
    for kind in kinds:
        own = [one for one in problem.vessels if one.kind == kind]
        endless = [Vessel(own[0].name, kind, ENOUGH, one_lot=False)]
        vessels += own if Limit("vessel", kind) in limits else endless
    lots = tuple(
        one if Limit("due", "", one.name) in limits else replace(one, due=None)
        for one in problem.lots
    )
    goals = tuple(one for one in problem.goals if Limit("goal", one.name) in limits)
    return replace(problem, stores=stores, vessels=tuple(vessels), lots=lots, goals=goals)
