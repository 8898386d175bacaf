"""Why a plan is late or there is none, and the ways out: plain values, and their JSON."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from studio_log.language.words import tr, tr_later
from studio_log.planning.change_json import change_to_json
from studio_log.planning.change_kinds import (
    AddHours,
    AddVessel,
    Change,
    GoalCured,
    GoalPieces,
    LaterGoal,
    MoreLine,
)
from studio_log.planning.problem import Plan

Kind = Literal["sizes", "alone", "late", "joint", "open"]
"""A thing that is too small; a lot that dies even alone; a date that is late; what only fails
together; open: nothing was found and nothing is proved."""
MOST_WAYS: Final = 10
MOST_ALIKE: Final = 3
"""Ways out of one kind, such as longer hours."""


@dataclass(frozen=True, slots=True)
class Way:
    """A way out: what to change, what that costs, and the plan that it gives."""

    changes: tuple[Change, ...]
    words: str
    """The changes in words, small letter first."""
    price: int
    """For sorting only: dear is more."""
    price_words: str
    achieves: str
    """What the plan is worth: "no date is late then"."""
    plan: Plan
    least: bool = False
    """Whether nothing cheaper is enough, of all that was weighed up: proved."""

    @property
    def sentence(self) -> str:
        """Give the way out in one sentence, with its price."""
        plain = tr_later("{changes}: {achieves}. The price: {price}.")
        proved = tr_later(
            "{changes}: {achieves}. The price: {price}; proved, nothing cheaper is enough."
        )
        return tr(
            proved if self.least else plain,
            changes=capital(self.words),
            achieves=self.achieves,
            price=self.price_words,
        )


@dataclass(frozen=True, slots=True)
class Reason:
    """One reason why not: whom it concerns, in words."""

    kind: Kind
    lots: tuple[str, ...]
    steps: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class Reasons:
    """All reasons of the first layer that had any, and the ways out, the cheapest first."""

    reasons: tuple[Reason, ...] = ()
    ways: tuple[Way, ...] = ()


def in_order(ways: Iterable[Way]) -> tuple[Way, ...]:
    """Sort ways out by price, those first that keep all dates; not too many.

    One that another makes needless is left out.
    """
    every = list({frozenset(one.changes): one for one in ways}.values())
    kept = [one for one in every if not any(_needless(one, other) for other in every)]
    kept.sort(key=lambda one: (one.plan.score.late > 0, one.price, one.plan.score.parts()))
    kinds = [tuple(type(change) for change in one.changes) for one in kept]
    few = [one for n, one in enumerate(kept) if kinds[:n].count(kinds[n]) < MOST_ALIKE]
    # What was not weighed up, such as leaving a lot out, may be cheaper than what was.
    told = [replace(one, least=one.least and one.price == kept[0].price) for one in few]
    return tuple(told[:MOST_WAYS])


def _needless(one: Way, other: Way) -> bool:
    """Say whether another way achieves as much and asks for less, perhaps of the same thing."""
    if other.plan.score.late > one.plan.score.late:
        return False
    if set(other.changes) < set(one.changes):
        return True
    (mine, more), (theirs, less) = _thing(one), _thing(other)
    return mine == theirs and (other.price, less) < (one.price, more)


def _thing(way: Way) -> tuple[Any, int]:
    """Give what a way asks for, and how much of it."""
    (change, *others) = way.changes
    if others:
        return tuple(sorted({type(one).__name__ for one in way.changes})), way.price
    if type(change) not in _MUCH:
        return way.changes, 0
    what, much = _MUCH[type(change)](change)
    return (type(change), what), much


_MUCH: Final[dict[type, Callable[..., tuple[Any, int]]]] = {
    MoreLine: lambda it: (None, it.metres),
    AddVessel: lambda it: (it.kind, it.size),
    AddHours: lambda it: ((it.weekdays, it.begins), it.ends),
    LaterGoal: lambda it: (it.goal, it.minutes),
    GoalPieces: lambda it: (it.goal, -it.pieces),
    GoalCured: lambda it: (it.goal, it.pieces),
}  # fmt: skip
"""By kind of change, what a single one asks for, and how much of it."""


def capital(words: str) -> str:
    """Give words as a sentence begins."""
    return words[:1].upper() + words[1:]


Told = Callable[[Reasons], None]
"""Handed what is found so far: the reasons, then each way out with them."""


def way_to_json(way: Way) -> dict[str, Any]:
    """Give a way out as the answer has it; its changes can be applied as they are."""
    return {
        "sentence": way.sentence,
        "words": way.words,
        "achieves": way.achieves,
        "price": way.price_words,
        "changes": [change_to_json(one) for one in way.changes],
        "score": list(way.plan.score.parts()),
        "cheapest": way.least,
    }


def reason_to_json(reason: Reason) -> dict[str, Any]:
    """Give a reason as the answer has it."""
    return {
        "kind": reason.kind,
        "lots": list(reason.lots),
        "steps": list(reason.steps),
        "sentence": reason.sentence,
    }
