"""Amounts: how much of each material a step takes, from the weight of the cloth.

Densities: dry soybeans 774 kg/m³, 183 g to a US cup (see science/soybeans.py); the figures
themselves stand in the methods with their sources.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from studio_log.domain.amount_bases import BASES, Base, Cloth, Followed, MassOrVolume
from studio_log.domain.amount_shown import litres_shown, shown
from studio_log.domain.errors import BadMethod, Refusal
from studio_log.domain.kitchen import dry_litres, measure
from studio_log.domain.methods import AmountRule, Basis
from studio_log.domain.number_text import plain
from studio_log.science.units import convert

CLOTH_KG_PER_M3: Final = 1500.0
"""What the fibre of cellulose cloth weighs: 1.5 g/cm³, textile handbooks (from memory)."""
RIM_SHARE: Final = 0.10
"""Part of a vessel left free, so that cloth can be turned: common practice, no source."""
MOST_GRAMS: Final = 50_000_000.0
"""500 pieces of 100 kg."""
MOST_M2: Final = 2_000_000.0
"""500 pieces of 200 m by 20 m."""


@dataclass(frozen=True)
class Amount:
    """So much of one material: `value` in grams or litres, `shown` as it is measured.

    `kitchen` is the kitchen measure or empty, `litres` the volume it goes by, dry where the
    amount is in grams, None where nobody knows it; `rule_value` the figure it was worked out by,
    in `rule_unit` ("% WOF"), which the dyer may change where it is `editable`.
    """

    slug: str
    title: str
    value: float
    unit: MassOrVolume
    shown: str
    kitchen: str
    at_least: bool
    how: str
    editable: bool
    vessel: bool
    rule_value: float
    rule_unit: str
    litres: float | None = None
    cup_grams: float | None = None
    """Grams to the level US cup by which the kitchen measure was worked out."""


@dataclass(frozen=True)
class VesselFit:
    """Whether a bath and its cloth find room in a vessel, and how much is left or missing."""

    fits: bool
    sentence: str


def work_out(
    rules: Sequence[AmountRule],
    *,
    grams: float,
    changed: Mapping[str, float] | None = None,
    area_m2: float | None = None,
) -> tuple[Amount, ...]:
    """Give the amounts for so many grams of dry cloth, in the order of the rules.

    `changed` puts the dyer's own figures in place of a rule's, by slug; slugs not among the
    rules are passed over. `area_m2` is one side of all pieces, which amounts by the area
    need: see `countable`. Refuses a weight, size or figure that cannot be; BadMethod where
    rules follow one that is not there, or each other in a ring.
    """
    if not 0 < grams <= MOST_GRAMS:  # also false for nan
        raise Refusal(
            "The amounts need the weight of the cloth, in grams and above nought. "
            "Weigh it, or give its size and g/m²."
        )
    if area_m2 is not None and not 0 < area_m2 <= MOST_M2:
        raise Refusal("The cloth has to have a size, in square metres and above nought.")
    cloth = Cloth(grams, area_m2)
    book = _Book({rule.slug: rule for rule in rules}, cloth, changed or {})
    return tuple(book.amount(rule) for rule in rules)


def countable(rules: Sequence[AmountRule], *, area_m2: float | None) -> tuple[AmountRule, ...]:
    """Give the rules that can be worked out: without a size none by the area, nor what follows."""
    left_out: set[str] = set()
    if area_m2 is None:
        left_out = {rule.slug for rule in rules if rule.basis is Basis.PER_AREA}
    kept = []
    for rule in rules:  # a rule follows only one before it
        if rule.of in left_out:
            left_out.add(rule.slug)
        if rule.slug not in left_out:
            kept.append(rule)
    return tuple(kept)


class _Book:
    """Works one amount out after the other, each after the one it follows."""

    def __init__(
        self, rules: Mapping[str, AmountRule], cloth: Cloth, changed: Mapping[str, float]
    ) -> None:
        self._rules = rules
        self._cloth = cloth
        self._changed = changed
        self._done: dict[str, Amount] = {}
        self._open: set[str] = set()

    def amount(self, rule: AmountRule) -> Amount:
        if rule.slug in self._done:
            return self._done[rule.slug]
        if rule.slug in self._open:
            raise BadMethod(f"The amount of {rule.title} follows itself in a ring.")
        self._open.add(rule.slug)
        base = BASES[rule.basis] if rule.basis is not Basis.FIXED else _fixed(rule)
        value = _figure(rule, base, self._changed)
        if rule.basis is Basis.PER_AREA and self._cloth.m2 is None:
            raise Refusal(
                f"{rule.title} goes by the area of the cloth, which is not known. "
                "Give its length and width."
            )
        of = self._followed(rule, base)
        worth = base.work_out(value, of, self._cloth)
        litres = _litres(rule, worth, base.unit)
        self._done[rule.slug] = Amount(
            slug=rule.slug,
            title=rule.title,
            value=worth,
            unit=base.unit,
            shown=shown(worth, base.unit, at_least=rule.at_least),
            kitchen="" if litres is None else measure(convert(litres, "L", "cup")),
            litres=litres,
            cup_grams=rule.cup_grams if base.unit == "g" else None,
            at_least=rule.at_least,
            how=base.how(value, of, self._cloth),
            editable=rule.editable,
            vessel=rule.vessel,
            rule_value=value,
            rule_unit=base.rule_unit,
        )
        return self._done[rule.slug]

    def _followed(self, rule: AmountRule, base: Base) -> Followed:
        if base.follows is None:
            return Followed()
        if rule.of not in self._rules:
            raise BadMethod(f"The amount of {rule.title} follows “{rule.of}”, which is not there.")
        other = self._rules[rule.of]
        of = self.amount(other)
        if of.unit != base.follows:
            raise BadMethod(
                f"The amount of {rule.title} follows {of.title}, not in {base.follows}."
            )
        if rule.basis is not Basis.TIMES_VOLUME:
            return Followed(of.title, of.value, of.unit)
        if not other.cup_grams:
            raise BadMethod(f"{rule.title} goes by the volume of {of.title}: give its cup_grams.")
        return Followed(of.title, of.value, of.unit, dry_litres(of.value, other.cup_grams))


def _fixed(rule: AmountRule) -> Base:
    unit: MassOrVolume
    match rule.unit:
        case "g":
            unit = "g"
        case "L":
            unit = "L"
        case _:
            raise BadMethod(f"The fixed amount of {rule.title} is in g or L, not “{rule.unit}”.")
    return replace(BASES[Basis.FIXED], unit=unit, rule_unit=unit)


def _figure(rule: AmountRule, base: Base, changed: Mapping[str, float]) -> float:
    """Give the figure to work by: the dyer's own where there is one, else the rule's."""
    value = changed.get(rule.slug, rule.value)
    if rule.slug in changed and not rule.editable:
        raise Refusal(f"The amount of {rule.title} follows from the others. Change those.")
    if not (math.isfinite(value) and 0 < value <= base.most):
        raise Refusal(
            f"{value:g} {base.rule_unit} of {rule.title} cannot be: it has to be above nought "
            f"and at most {plain(base.most, 0)}. The figure before is kept."
        )
    return value


def _litres(rule: AmountRule, value: float, unit: MassOrVolume) -> float | None:
    if unit == "L":
        return value
    return dry_litres(value, rule.cup_grams) if rule.cup_grams else None


def vessel_fits(bath_litres: float, grams: float, vessel_litres: float) -> VesselFit:
    """Say whether a vessel holds the bath and the cloth in it, a tenth left free at the rim.

    `grams` is dry cloth; it takes up grams / 1500 litres.
    """
    if not all(math.isfinite(figure) for figure in (bath_litres, grams, vessel_litres)):
        raise Refusal("Bath, cloth and vessel have to be plain numbers. Nothing was changed.")
    if bath_litres < 0 or grams < 0 or vessel_litres <= 0:
        raise Refusal("Bath, cloth and vessel cannot be below nought. Nothing was changed.")
    filled = bath_litres + grams / CLOTH_KG_PER_M3
    room = vessel_litres * (1 - RIM_SHARE) - filled
    what = f"{litres_shown(bath_litres)} bath with {plain(grams, 1)} g cloth"
    vessel = f"{plain(vessel_litres, 2)} L vessel"
    if room >= 0:
        return VesselFit(
            fits=True,
            sentence=f"The {vessel} holds {what}; about {litres_shown(room)} of room is left, "
            "with a tenth free at the rim.",
        )
    least = plain(filled / (1 - RIM_SHARE), 1, up=True)
    return VesselFit(
        fits=False,
        sentence=f"The {vessel} is too small for {what}, with a tenth free at the rim: "
        f"{litres_shown(-room, up=True)} of room is missing. Take one of {least} L or more.",
    )
