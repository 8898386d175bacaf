"""What is asked of the stock: the shelf, what to buy, what a lot cost."""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.amount_shown import shown
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lot_amounts import Use, bought_for, uses_of
from studio_log.domain.lots import Lot
from studio_log.domain.number_text import money
from studio_log.domain.served import draws_with
from studio_log.domain.stock import Material, Wanted, cost_of, left_of, material_from, shopping
from studio_log.domain.windows import windows_of
from studio_log.language.calendar_words import date_words
from studio_log.language.words import tr
from studio_log.present.words import litres, mass, moment
from studio_log.services.desk import Desk, whole_code
from studio_log.services.stock import (
    Cost,
    CostFor,
    ShoppingFor,
    ShoppingLine,
    StockFor,
    StockLine,
)

LONGEST: Final = timedelta(days=3660)
MOST_HISTORY: Final = 60


def shelf_of(desk: Desk) -> tuple[Material, ...]:
    """Give every material that ever was, in order of its title."""
    journals = desk.work.journal.of_many(desk.work.journal.subjects("S"))
    return tuple(
        sorted(map(material_from, journals.values()), key=lambda one: one.title.casefold())
    )


def _uses(desk: Desk, shelf: Sequence[Material]) -> tuple[Use, ...]:
    since = min((one.made_at for one in shelf), default=desk.now)
    return desk.work.uses.since(since) if shelf else ()


def stock(_house: Any, desk: Desk, question: StockFor) -> tuple[StockLine, ...]:
    """Give the shelf as a list."""
    shelf = shelf_of(desk)
    uses = _uses(desk, shelf)
    return tuple(_line(desk, one, uses) for one in shelf if question.ended or not one.ended)


def _line(desk: Desk, of: Material, uses: Sequence[Use]) -> StockLine:
    left, own = left_of(of, uses), of.draws_from(uses)
    is_low = of.low is not None and left < of.low
    price = of.price_per_unit
    return StockLine(
        code=of.code, title=of.title, material=of.material, unit=of.unit,
        left=left, left_words=said(desk, max(left, 0.0), of.unit),
        low=of.low, is_low=is_low,
        price_per_unit=price, price_words=_price_words(price, of.unit),
        batch=of.purchases[-1].batch if of.purchases else "", best_before=of.best_before,
        state=_state(desk, of, left, is_low=is_low), place=of.place,
        used_by=tuple(dict.fromkeys(one.lot for one in reversed(own))),
        ended=of.ended, history=_history(desk, of, own),
    )  # fmt: skip


def said(desk: Desk, value: float, unit: str) -> str:
    """Say so much of a material in the dyer's units."""
    return mass(value, desk.units) if unit == "g" else litres(value, desk.units)


def _price_words(price: float | None, unit: str) -> str:
    if price is None:
        return ""
    if unit == "g":
        return tr("{price} a kilogram", price=money(price * 1000))
    return tr("{price} a litre", price=money(price))


def _state(desk: Desk, of: Material, left: float, *, is_low: bool) -> str:
    today = desk.now.astimezone(ZoneInfo(desk.zone)).date()
    if of.ended:
        return tr("kept no longer")
    if left < 0:
        return tr("more was used than was bought: count it")
    if of.best_before is not None and of.best_before < today:
        return tr("past its date, {day}", day=date_words(of.best_before, year=True))
    if is_low:
        return tr("low: buy again")
    return tr("enough") if left > 0 else tr("none there")


def _history(desk: Desk, of: Material, own: Sequence[Use]) -> tuple[str, ...]:
    told = [
        (entry.at, _entry_words(desk, of, entry))
        for entry in standing(desk.entries(of.code))
        if entry.act is not Act.STOCK_SET
    ]
    told += [
        (use.at, tr("{amount} for {lot}", amount=said(desk, use.value, of.unit), lot=use.lot))
        for use in own
    ]
    told.sort(key=lambda pair: pair[0], reverse=True)
    return tuple(
        f"{moment(at, desk.now, desk.zone)} · {words}" for at, words in told[:MOST_HISTORY]
    )


def _entry_words(desk: Desk, of: Material, entry: Entry) -> str:
    if "amount" not in entry.data:
        return tr("taken in")
    amount = said(desk, float(entry.data["amount"]), of.unit)
    whole = {
        Act.STOCK_IN: tr("bought {amount}", amount=amount),
        Act.STOCK_OUT: tr("drawn by hand: {amount}", amount=amount),
        Act.STOCK_COUNT: tr("counted: {amount}", amount=amount),
    }[entry.act]
    batch = str(entry.data.get("batch", ""))
    more = [tr("batch {batch}", batch=batch)] if batch else []
    if (price := entry.data.get("price")) is not None:
        more.append(tr("for {price}", price=money(float(price))))
    return ", ".join([whole, *more, *filter(None, [entry.note])])


def shopping_list(_house: Any, desk: Desk, question: ShoppingFor) -> tuple[ShoppingLine, ...]:
    """Give what to buy for the steps that begin within a span, and what has fallen low."""
    if not timedelta(0) < question.within <= LONGEST:
        raise Refusal("Look ahead by up to ten years, as in 14d or 8w. Nothing was changed.")
    shelf = shelf_of(desk)
    until = desk.now + question.within
    ahead = [
        use for code in desk.work.lots.live_codes() for use in _ahead(desk, desk.lot(code), until)
    ]
    return tuple(_to_buy(desk, one) for one in shopping(ahead, shelf, _uses(desk, shelf)))


def _ahead(desk: Desk, lot: Lot, until: datetime) -> list[Use]:
    windows = windows_of(lot, desk.now, desk.quiet)
    found: list[Use] = []
    for step in lot.steps:
        drawn = draws_with(lot, step) or step
        window = windows.get(drawn.number)
        begun = drawn.start is not None or drawn.end is not None or drawn.skipped is not None
        if window is None or begun or step.optional or window.best_start > until:
            continue
        found += bought_for(lot, step, window.best_start)
    return found


def _to_buy(desk: Desk, one: Wanted) -> ShoppingLine:
    up = shown(one.buy, "g" if one.unit == "g" else "L")
    words = up if desk.units == "metric" else said(desk, one.buy, one.unit)
    parts = []
    if one.needed:
        parts.append(
            tr("{needed} for {lots}", needed=said(desk, one.needed, one.unit),
               lots=", ".join(one.lots))
        )  # fmt: skip
    if one.low:
        parts.append(tr("{low} to keep", low=said(desk, one.low, one.unit)))
    parts.append(tr("{there} there", there=said(desk, one.there, one.unit)))
    return ShoppingLine(
        one.material, one.title, one.unit, one.needed, one.there, one.low, one.buy, words,
        "; ".join(parts), one.lots,
    )  # fmt: skip


def cost(_house: Any, desk: Desk, question: CostFor) -> Cost:
    """Give what a lot's materials cost so far."""
    return cost_of_lot(desk, desk.lot(whole_code(question.code)))


def cost_of_lot(desk: Desk, lot: Lot) -> Cost:
    """Give what a lot's materials cost so far, with words where the stock knows any of them."""
    shelf = shelf_of(desk)
    total, unknown = cost_of(uses_of(lot), shelf)
    if not shelf or not (total or unknown):
        return Cost(total, unknown, "")
    words = tr("Materials so far: {total}", total=money(total))
    if unknown:
        words = tr("{words}; without a price: {titles}", words=words, titles=", ".join(unknown))
    return Cost(total, unknown, f"{words}.")


ANSWERS: Final[Mapping[type, Any]] = {StockFor: stock, ShoppingFor: shopping_list, CostFor: cost}
