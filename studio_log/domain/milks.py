"""Milk: a batch from one bean soak, with its own life."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing

COLD_LIFE = timedelta(hours=48)
"""Kept cold for a further coat (common practice, no source)."""
ROOM_LIFE = timedelta(hours=4)
"""At 20-25 °C: a proposal bracketed by food-safety figures (handbook, section 1.10)."""


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

    @property
    def use_by(self) -> datetime:
        """Last moment at which kept milk is good for a further coat."""
        return self.made_at + (COLD_LIFE if self.cold else ROOM_LIFE)


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
        elif milk is not None and entry.act is Act.MILK_SET:
            milk = replace(milk, **data)
    if milk is None:
        raise Refusal("There is no such milk. `milk list` shows every one.")
    return milk
