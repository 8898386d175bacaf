"""Stock: what of a material is there, worked out from its journal and from what lots used.

A material is bought, drawn by hand and counted by entries of its own; what lots took is theirs to
tell (`lot_amounts.uses_of`), so that taking a lot's step back puts the material back on the shelf.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lot_amounts import Use

UNITS: Final = ("g", "L")


@dataclass(frozen=True)
class Purchase:
    """So much was bought; `price` is for all of it, in the studio's money."""

    at: datetime
    amount: float
    price: float | None = None
    batch: str = ""
    best_before: date | None = None


@dataclass(frozen=True)
class Material:
    """A material on the shelf. `material` is what methods call it, such as "soda-ash".

    `low` is the level below which it is to be bought again; figures in `unit`. `moves` are hand
    draws, below nought; `counted` is the last count with what was there.
    """

    code: str
    title: str
    material: str
    unit: str
    made_at: datetime
    low: float | None = None
    place: str = ""
    ended: bool = False
    purchases: tuple[Purchase, ...] = ()
    draws: tuple[tuple[datetime, float], ...] = ()
    counted: tuple[datetime, float] | None = None

    @property
    def price_per_unit(self) -> float | None:
        """Give the mean price of a gram or litre over all that was bought with a price."""
        priced = [one for one in self.purchases if one.price is not None]
        amount = sum(one.amount for one in priced)
        return sum(one.price or 0.0 for one in priced) / amount if amount else None

    @property
    def best_before(self) -> date | None:
        """Give the date of what was bought last, if it has one."""
        return self.purchases[-1].best_before if self.purchases else None

    def draws_from(self, uses: Iterable[Use]) -> tuple[Use, ...]:
        """Give those uses that drew on this shelf."""
        return tuple(
            one
            for one in uses
            if one.material == self.material and one.unit == self.unit and one.at >= self.made_at
        )


def material_from(entries: Iterable[Entry]) -> Material:
    """Give the material as its journal tells it; Refusal where there is none."""
    found: Material | None = None
    for entry in standing(entries):
        if entry.act is Act.STOCK_NEW:
            found = Material(code=entry.subject, made_at=entry.at, **entry.data)
        elif found is not None:
            found = _after(found, entry)
    if found is None:
        raise Refusal("There is no such material. `stock list` shows every one.")
    return found


def _after(material: Material, entry: Entry) -> Material:
    data = dict(entry.data)
    if entry.act is Act.STOCK_IN:
        day = data.pop("best_before", None)
        bought = Purchase(entry.at, best_before=date.fromisoformat(day) if day else None, **data)
        by_time = sorted((*material.purchases, bought), key=lambda one: one.at)
        return replace(material, purchases=tuple(by_time))
    if entry.act is Act.STOCK_OUT:
        return replace(material, draws=(*material.draws, (entry.at, float(data["amount"]))))
    if entry.act is Act.STOCK_COUNT:
        count = (entry.at, float(data["amount"]))
        if material.counted is not None and material.counted[0] > entry.at:
            return material
        return replace(material, counted=count)
    return replace(material, **data)


def left_of(material: Material, uses: Iterable[Use]) -> float:
    """Give what should be on the shelf, in its unit; below nought where more was used than known.

    A count wins over all that came before it.
    """
    since, left = material.counted or (material.made_at, 0.0)
    counted = material.counted is not None

    def later(at: datetime) -> bool:
        return at > since if counted else at >= since

    left += sum(one.amount for one in material.purchases if later(one.at))
    left -= sum(amount for at, amount in material.draws if later(at))
    return left - sum(one.value for one in material.draws_from(uses) if later(one.at))


def cost_of(uses: Iterable[Use], shelf: Sequence[Material]) -> tuple[float, tuple[str, ...]]:
    """Give what uses cost by the mean price, and the titles of what has no price."""
    total, unknown = 0.0, dict[str, None]()
    by_name = {(one.material, one.unit): one for one in shelf}
    for use in uses:
        material = by_name.get((use.material, use.unit))
        price = material.price_per_unit if material is not None else None
        if price is None:
            unknown[use.title] = None
        else:
            total += price * use.value
    return total, tuple(unknown)


@dataclass(frozen=True)
class Wanted:
    """So much is to be bought: what lots ahead need and the low level, less what is there."""

    material: str
    title: str
    unit: str
    needed: float
    there: float
    low: float
    buy: float
    lots: tuple[str, ...]


def shopping(
    ahead: Iterable[Use], shelf: Sequence[Material], uses: Sequence[Use]
) -> tuple[Wanted, ...]:
    """Give what to buy for uses ahead, and what has fallen below its low level."""
    by_name = {(one.material, one.unit): one for one in shelf if not one.ended}
    needs: dict[tuple[str, str], list[Use]] = {key: [] for key in by_name}
    for use in ahead:
        needs.setdefault((use.material, use.unit), []).append(use)
    found = [_wanted(key, needed, by_name, uses) for key, needed in needs.items()]
    return tuple(sorted((one for one in found if one.buy > 0), key=lambda one: one.title))


def _wanted(
    key: tuple[str, str],
    needed: Sequence[Use],
    by_name: dict[tuple[str, str], Material],
    uses: Sequence[Use],
) -> Wanted:
    kept = by_name.get(key)
    there = max(0.0, left_of(kept, uses)) if kept is not None else 0.0
    low = kept.low or 0.0 if kept is not None else 0.0
    total = sum(one.value for one in needed)
    title = kept.title if kept is not None else needed[0].title
    lots = tuple(dict.fromkeys(one.lot for one in needed))
    return Wanted(key[0], title, key[1], total, there, low, max(0.0, total + low - there), lots)
