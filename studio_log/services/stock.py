"""The words of the stock: what can be done (`stock_acts`) and asked (`stock_reads`)."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta


@dataclass(frozen=True)
class NewMaterial:
    """Take a material in; `material` is what methods call it, worked out from the title if empty.

    `amount` is what is there now; `low` the level below which it is to be bought. In `unit`.
    """

    title: str
    material: str = ""
    unit: str = "g"
    amount: float | None = None
    price: float | None = None
    batch: str = ""
    best_before: date | None = None
    low: float | None = None
    place: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class MoveMaterial:
    """Buy, draw or count: `act` is "buy", "draw" or "count"; `amount` in the material's unit."""

    code: str
    act: str
    amount: float
    unit: str = ""
    """In which the amount is; "" for the material's own."""
    price: float | None = None
    batch: str = ""
    best_before: date | None = None
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SetMaterial:
    """Change its title, low level or place, or say that it is kept no longer."""

    code: str
    title: str | None = None
    low: float | None = None
    unit: str = ""
    """In which the low level is; "" for the material's own."""
    place: str | None = None
    ended: bool | None = None
    sure: bool = False


@dataclass(frozen=True)
class StockFor:
    """Every material; those no longer kept as well if asked for."""

    ended: bool = False


@dataclass(frozen=True)
class StockLine:
    """One material as a list shows it; figures in `unit`, `words` beside them."""

    code: str
    title: str
    material: str
    unit: str
    left: float
    left_words: str
    low: float | None
    is_low: bool
    price_per_unit: float | None
    price_words: str
    batch: str
    best_before: date | None
    state: str
    """"Enough", "low: buy again", "past its date 3 March 2026", "more was used than known"."""
    place: str
    used_by: tuple[str, ...]
    """The lots that drew on it, the latest first."""
    ended: bool
    history: tuple[str, ...]
    """Its entries in words, the latest first."""


@dataclass(frozen=True)
class ShoppingFor:
    """What to buy for the steps that come within a span."""

    within: timedelta = timedelta(days=14)


@dataclass(frozen=True)
class ShoppingLine:
    """One material to buy; figures in `unit`."""

    material: str
    title: str
    unit: str
    needed: float
    there: float
    low: float
    buy: float
    buy_words: str
    why: str
    lots: tuple[str, ...]


@dataclass(frozen=True)
class CostFor:
    """What a lot's materials cost so far."""

    code: str


@dataclass(frozen=True)
class Cost:
    """The cost by mean prices, and what has no price; `words` say both, "" for nothing used."""

    total: float
    unknown: tuple[str, ...]
    words: str
