"""Amounts: how much of each material a step takes, from the weight of the cloth.

Densities: dry soybeans 774 kg/m³, 183 g to a US cup (see science/soybeans.py); the figures
themselves stand in the methods with their sources.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from studio_log.domain.errors import BadMethod, Refusal
from studio_log.domain.kitchen import cups_of, dry_litres, measure
from studio_log.domain.methods import AmountRule, Basis
from studio_log.domain.number_text import plain
from studio_log.science.units import convert

CLOTH_KG_PER_M3: Final = 1500.0
"""What the fibre of cellulose cloth weighs: 1.5 g/cm³, textile handbooks (from memory)."""
RIM_SHARE: Final = 0.10
"""Part of a vessel left free, so that cloth can be turned: common practice, no source."""
MOST_GRAMS: Final = 50_000_000.0
"""500 pieces of 100 kg."""

MassOrVolume = Literal["g", "L"]


@dataclass(frozen=True)
class Amount:
    """So much of one material: `value` in grams or litres, `shown` as it is measured.

    `kitchen` is the kitchen measure or empty; `rule_value` the figure it was worked out by,
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


@dataclass(frozen=True)
class VesselFit:
    """Whether a bath and its cloth find room in a vessel, and how much is left or missing."""

    fits: bool
    sentence: str


@dataclass(frozen=True)
class _Basis:
    """How a basis is worked out, said and limited; `most` is a figure nobody means."""

    unit: MassOrVolume
    rule_unit: str
    most: float
    work_out: Callable[[float, "_Known", float], float]
    how: Callable[[float, "_Known", float], str]


@dataclass(frozen=True)
class _Known:
    """The amount that another one follows."""

    title: str = ""
    value: float = 0.0
    unit: MassOrVolume = "g"
    litres: float = 0.0
    """Its own volume, for a dry material by its cup."""

    @property
    def words(self) -> str:
        return f"{plain(self.value, 1 if self.unit == 'g' else 2)} {self.unit} {self.title}"


def _parts_words(value: float, of: _Known, _: float) -> str:
    return (
        f"1 part {of.title} ({litres_shown(of.value)}) and {plain(value, 2)} parts water "
        f"({litres_shown(of.value * value)})"
    )


_BASES: Final[Mapping[Basis, _Basis]] = {
    Basis.WOF: _Basis(
        "g", "% WOF", 1_000,
        lambda value, _of, grams: grams * value / 100,
        lambda value, _of, grams: f"{plain(value, 2)} % of {plain(grams, 1)} g cloth",
    ),
    Basis.PER_LITRE: _Basis(
        "L", "g/L", 5_000,
        lambda value, of, _grams: of.value / value,
        lambda value, of, _grams: f"{of.words} at {plain(value, 2)} g to the litre",
    ),
    Basis.TIMES_VOLUME: _Basis(
        "L", "times the volume", 1_000,
        lambda value, of, _grams: of.litres * value,
        lambda value, of, _grams: (
            f"{plain(value, 2)} times the volume of {of.words} ({litres_shown(of.litres)})"
        ),
    ),
    Basis.PARTS: _Basis(
        "L", "parts water", 10_000,
        lambda value, of, _grams: of.value * (1 + value),
        _parts_words,
    ),
    Basis.PER_KG: _Basis(
        "L", "L/kg", 1_000,
        lambda value, _of, grams: value * grams / 1000,
        lambda value, _of, grams: (
            f"{plain(value, 2)} L to the kilogram of cloth, for {plain(grams, 1)} g"
        ),
    ),
}  # fmt: skip
_FOLLOWS: Final[Mapping[Basis, str]] = {
    Basis.PER_LITRE: "g", Basis.TIMES_VOLUME: "g", Basis.PARTS: "L",
}  # fmt: skip


def work_out(
    rules: Sequence[AmountRule],
    *,
    grams: float,
    changed: Mapping[str, float] | None = None,
) -> tuple[Amount, ...]:
    """Give the amounts for so many grams of dry cloth, in the order of the rules.

    `changed` puts the dyer's own figures in place of a rule's, by slug; slugs not among the
    rules are passed over. Refuses a weight or figure that cannot be; BadMethod where rules
    follow one that is not there, or each other in a ring.
    """
    if not 0 < grams <= MOST_GRAMS:  # also false for nan
        raise Refusal(
            "The amounts need the weight of the cloth, in grams and above nought. "
            "Weigh it, or give its size and g/m²."
        )
    book = _Book({rule.slug: rule for rule in rules}, grams, changed or {})
    return tuple(book.amount(rule) for rule in rules)


class _Book:
    """Works one amount out after the other, each after the one it follows."""

    def __init__(
        self, rules: Mapping[str, AmountRule], grams: float, changed: Mapping[str, float]
    ) -> None:
        self._rules = rules
        self._grams = grams
        self._changed = changed
        self._done: dict[str, Amount] = {}
        self._open: set[str] = set()

    def amount(self, rule: AmountRule) -> Amount:
        if rule.slug in self._done:
            return self._done[rule.slug]
        if rule.slug in self._open:
            raise BadMethod(f"The amount of {rule.title} follows itself in a ring.")
        self._open.add(rule.slug)
        basis = _BASES[rule.basis] if rule.basis is not Basis.FIXED else _fixed(rule)
        value = _figure(rule, basis, self._changed)
        of = self._known(rule)
        worth = basis.work_out(value, of, self._grams)
        self._done[rule.slug] = Amount(
            slug=rule.slug,
            title=rule.title,
            value=worth,
            unit=basis.unit,
            shown=shown(worth, basis.unit, at_least=rule.at_least),
            kitchen=_kitchen(rule, worth, basis.unit),
            at_least=rule.at_least,
            how=basis.how(value, of, self._grams),
            editable=rule.editable,
            vessel=rule.vessel,
            rule_value=value,
            rule_unit=basis.rule_unit,
        )
        return self._done[rule.slug]

    def _known(self, rule: AmountRule) -> _Known:
        wanted = _FOLLOWS.get(rule.basis)
        if wanted is None:
            return _Known()
        if rule.of not in self._rules:
            raise BadMethod(f"The amount of {rule.title} follows “{rule.of}”, which is not there.")
        followed = self._rules[rule.of]
        of = self.amount(followed)
        if of.unit != wanted:
            raise BadMethod(f"The amount of {rule.title} follows {of.title}, not in {wanted}.")
        if rule.basis is not Basis.TIMES_VOLUME:
            return _Known(of.title, of.value, of.unit)
        if not followed.cup_grams:
            raise BadMethod(f"{rule.title} goes by the volume of {of.title}: give its cup_grams.")
        return _Known(of.title, of.value, of.unit, dry_litres(of.value, followed.cup_grams))


def _fixed(rule: AmountRule) -> _Basis:
    unit: MassOrVolume
    match rule.unit:
        case "g":
            unit = "g"
        case "L":
            unit = "L"
        case _:
            raise BadMethod(f"The fixed amount of {rule.title} is in g or L, not “{rule.unit}”.")
    return _Basis(
        unit, unit, 100_000, lambda value, _of, _grams: value, lambda *_: "the same for any weight"
    )


def _figure(rule: AmountRule, basis: _Basis, changed: Mapping[str, float]) -> float:
    """Give the figure to work by: the dyer's own where there is one, else the rule's."""
    value = changed.get(rule.slug, rule.value)
    if rule.slug in changed and not rule.editable:
        raise Refusal(f"The amount of {rule.title} follows from the others. Change those.")
    if not (math.isfinite(value) and 0 < value <= basis.most):
        raise Refusal(
            f"{value:g} {basis.rule_unit} of {rule.title} cannot be: it has to be above nought "
            f"and at most {plain(basis.most, 0)}. The figure before is kept."
        )
    return value


def shown(value: float, unit: MassOrVolume, *, at_least: bool = False) -> str:
    """Say an amount as it is measured: "90 g", "5.4 L", "0.47 L or more".

    What is a least amount is rounded up, so that what is shown is never too little.
    """
    words = grams_shown(value, up=at_least) if unit == "g" else litres_shown(value, up=at_least)
    return f"{words} or more" if at_least else words


def grams_shown(grams: float, *, up: bool = False) -> str:
    """Round to what a kitchen scale shows: 1 g from 10 g on, 0.1 g below."""
    if grams < 0.05 and not up:
        return "less than 0.1 g"
    if grams < 9.95:
        return f"{plain(grams, 1, up=up)} g"
    if grams < 999.5:
        return f"{plain(grams, 0, up=up)} g"
    return f"{plain(grams / 1000, 3, up=up)} kg"


def litres_shown(litres: float, *, up: bool = False) -> str:
    """Round to two figures, from 10 L on to the litre; below 0.1 L in millilitres."""
    if litres < 0.000_5 and not up:
        return "less than 1 mL"
    if litres < 0.0995:
        return f"{plain(litres * 1000, 0, up=up)} mL"
    places = 2 if litres < 0.995 else 1 if litres < 9.95 else 0
    return f"{plain(litres, places, up=up)} L"


def _kitchen(rule: AmountRule, value: float, unit: MassOrVolume) -> str:
    if unit == "L":
        return measure(convert(value, "L", "cup"))
    return measure(cups_of(value, rule.cup_grams)) if rule.cup_grams else ""


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
