"""A lot that another lot's milk serves: it is spared the making of its own."""

from dataclasses import replace

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.language.words import tr

MAKING = frozenset({StepKind.BEANS, StepKind.MILK})


def making_milk(lot: Lot) -> tuple[LotStep, ...]:
    """Give the steps from beans to straining by which a lot still has to make its milk.

    Empty where it makes none, and once it has begun to.
    """
    open_ = (one for one in lot.steps if one.spec.makes_milk and not one.closed and lot.taken(one))
    strain = next(open_, None)
    if strain is None:
        return ()
    upto = lot.steps[: lot.place_of(strain.number) + 1]
    own = tuple(one for one in upto if one.join == strain.join and one.spec.kind in MAKING)
    begun = any(one.start is not None or one.end is not None for one in own)
    return () if begun else tuple(one for one in own if not one.closed)


def takes_milk(lot: Lot) -> bool:
    """Say whether a lot can be served by another's milk: it is served so, or makes its own yet."""
    return bool(lot.milk_of or making_milk(lot))


def served(lot: Lot, milk_of: str) -> Lot:
    """Give the lot as the milk of another serves it; "" lets it make its own again.

    A coat that has begun had its milk: from then on nothing is changed.
    """
    if lot.milk_of == milk_of:
        return lot
    if lot.milk_of:
        first = max(lot.place_of(number) for number in lot.spared) + 1
        if any(one.start is not None or one.end is not None for one in lot.steps[first:]):
            return lot
        lot = _with_skipped(lot, lot.spared, None)
        lot = replace(lot, milk_of="", spared=frozenset())
    spared = frozenset(one.number for one in making_milk(lot)) if milk_of else frozenset()
    if not spared:
        return lot
    lot = _with_skipped(lot, spared, tr("the milk of {code} serves it", code=milk_of))
    return replace(lot, milk_of=milk_of, spared=spared)


def coats_of(lot: Lot) -> list[LotStep]:
    """Give the steps that take the milk by which a lot is served."""
    strain = next((one for one in reversed(lot.steps) if one.number in lot.spared), None)
    if strain is None:
        return []
    return [
        one for one in lot.steps[lot.place_of(strain.number) + 1 :]
        if one.join == strain.join and one.spec.uses_milk and lot.taken(one)
        and one.skipped is None
    ]  # fmt: skip


def draws_with(lot: Lot, step: LotStep) -> LotStep | None:
    """Give the step with which one draws its materials: itself, or the coat of another's milk."""
    return next(iter(coats_of(lot)), None) if step.number in lot.spared else step


def _with_skipped(lot: Lot, numbers: frozenset[int], why: str | None) -> Lot:
    steps = (replace(one, skipped=why) if one.number in numbers else one for one in lot.steps)
    return replace(lot, steps=tuple(steps))
