"""Milk: a batch from one bean soak, with its own life, which runs faster the warmer it stands."""

import itertools
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.science.soy_milk import keeps_hours

COLD_LIFE = timedelta(hours=48)
"""Kept cold for a further coat (common practice, no source)."""
ROOM_LIFE = timedelta(hours=4)
"""At 20-25 °C: a proposal bracketed by food-safety figures."""
_ONE = timedelta(seconds=1)


@dataclass(frozen=True)
class Place:
    """Where a milk stood from a moment on, and how long it would keep there from fresh."""

    since: datetime
    life: timedelta


@dataclass(frozen=True)
class Milk:
    """A batch of milk; litres and strength (g dry beans a litre) where they are known."""

    code: str
    made_at: datetime
    cold: bool = True
    lots: tuple[str, ...] = ()
    beans_grams: float | None = None
    litres: float | None = None
    strength: float | None = None
    finished: bool = False
    celsius: float | None = None
    """°C where it stands, where somebody measured it."""
    places: tuple[Place, ...] = ()
    """Where it has stood, the first from when it was made."""

    @property
    def life(self) -> timedelta:
        """How long fresh milk keeps where this one stands."""
        if self.celsius is not None:
            return timedelta(hours=keeps_hours(self.celsius))
        return COLD_LIFE if self.cold else ROOM_LIFE

    @property
    def use_by(self) -> datetime:
        """Last moment at which kept milk is good for a further coat.

        What it lost in one place it does not win back in a colder one: two of four hours at room
        heat leave it half its life in the cold.
        """
        places = self.places or (Place(self.made_at, self.life),)
        left = 1.0
        for place, following in itertools.pairwise(places):
            spent = (following.since - place.since) / _ONE / (place.life / _ONE)
            if spent >= left:
                return place.since + left * place.life
            left -= spent
        return places[-1].since + left * places[-1].life


def milk_from(entries: Iterable[Entry]) -> Milk:
    """Give the milk as its journal tells it."""
    milk: Milk | None = None
    for entry in standing(entries):
        data = dict(entry.data)
        lots = data.pop("lots", None)
        if lots is not None:
            data["lots"] = tuple(lots)
        if entry.act is Act.MILK_NEW:
            milk = Milk(code=entry.subject, made_at=entry.at, **data)
            milk = replace(milk, places=(Place(entry.at, milk.life),))
        elif milk is not None and entry.act is Act.MILK_SET:
            milk = _changed(milk, entry.at, data)
    if milk is None:
        raise Refusal("There is no such milk. `milk list` shows every one.")
    return milk


def _changed(milk: Milk, at: datetime, data: dict[str, Any]) -> Milk:
    """Give the milk after a change; one moved stands elsewhere from then on."""
    if "cold" in data:
        data.setdefault("celsius", None)  # what was measured was measured in the other place
    after = replace(milk, **data)
    if after.life == milk.life:
        return after
    since = max(at, milk.places[-1].since)
    return replace(after, places=(*milk.places, Place(since, after.life)))
