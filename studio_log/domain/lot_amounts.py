"""What a lot's step takes: worked out while it is ahead, as it was used once it has begun."""

import re
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from studio_log.domain.amounts import Amount, countable, work_out
from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.served import draws_with

_AGAIN: Final = re.compile(r"-[0-9]$")
"""A material that a method takes more than once: "alum-1", "alum-3"."""
_NOT_BOUGHT: Final = frozenset({"bath", "water", "milk", "thinned", "vat"})


@dataclass(frozen=True)
class Use:
    """So much of a material went into a step of a lot; `value` in grams or litres, as `unit`."""

    lot: str
    step: int
    material: str
    title: str
    value: float
    unit: str
    at: datetime


def amounts_of(lot: Lot, step: LotStep) -> tuple[Amount, ...]:
    """Give a step's amounts; those of a step that has begun stay as they were used."""
    if not step.spec.amounts:
        return ()
    used = step.grams_used is not None
    grams = step.grams_used if used else lot.grams
    changed = step.amounts_used if used else lot.amounts_changed
    if grams is None:
        return ()
    area = lot.area_m2
    every = [rule for one in lot.methods[step.join].steps for rule in one.amounts]
    rules = countable(every, area_m2=area)
    own = {rule.slug for rule in step.spec.amounts}
    try:
        worked = work_out(rules, grams=grams, changed=changed, area_m2=area)
    except Refusal:
        worked = work_out(rules, grams=grams, area_m2=area)
    return tuple(one for one in worked if one.slug in own)


def material_of(slug: str) -> str:
    """Give what an amount is of: "alum-3" is alum."""
    return _AGAIN.sub("", slug)


def is_bought(material: str) -> bool:
    """Whether a material is bought: water and what is made of it in the studio is not."""
    return material not in _NOT_BOUGHT and not material.endswith(("-bath", "-water"))


def bought_for(lot: Lot, step: LotStep, at: datetime) -> tuple[Use, ...]:
    """Give what of a step's amounts is bought, as uses at a moment."""
    found: dict[str, Use] = {}
    for one in amounts_of(lot, step):
        name = material_of(one.slug)
        if not is_bought(name):
            continue
        before = found[name].value if name in found else 0.0
        found[name] = Use(lot.code, step.number, name, one.title, before + one.value, one.unit, at)
    return tuple(found.values())


def uses_of(lot: Lot) -> tuple[Use, ...]:
    """Give all that went into a lot's steps so far; a step draws when it begins, or ends.

    What another lot's milk took for this one is drawn when the first coat begins.
    """
    found: list[Use] = []
    for step in lot.steps:
        begun = draws_with(lot, step)
        at = None if begun is None else begun.start or begun.end
        if begun is not None and at is not None and begun.skipped is None:
            found += bought_for(lot, step, at)
    return tuple(found)


def beans_of(lot: Lot) -> float | None:
    """Give the grams of dry beans that a lot's method counts on, or None."""
    for step in lot.steps:
        for amount in amounts_of(lot, step):
            if amount.unit == "g" and step.spec.kind is StepKind.BEANS:
                return amount.value
    return None
