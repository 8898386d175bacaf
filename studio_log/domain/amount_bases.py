"""What amounts are worked out from: one row for each `Basis`, with its sum and its words.

The sums are the trade's own: per cent of the weight of fibre, grams to the litre, parts,
litres to the kilogram (the liquor ratio), multiples of another amount (a 1-2-3 vat).
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from studio_log.domain.amount_shown import litres_shown
from studio_log.domain.methods import Basis
from studio_log.domain.number_text import plain

MassOrVolume = Literal["g", "L"]


@dataclass(frozen=True)
class Cloth:
    """What the amounts are for: grams of dry cloth, and its area where it is known."""

    grams: float
    m2: float | None = None


@dataclass(frozen=True)
class Followed:
    """The amount that another one follows."""

    title: str = ""
    value: float = 0.0
    unit: MassOrVolume = "g"
    litres: float = 0.0
    """Its own volume, for a dry material by its cup."""

    @property
    def words(self) -> str:
        """Say it: "90 g dry soybeans"."""
        return f"{plain(self.value, 1 if self.unit == 'g' else 2)} {self.unit} {self.title}"


@dataclass(frozen=True)
class Base:
    """How a basis is worked out, said and limited.

    `most` is the figure that nobody means, `follows` the unit of the amount that it needs
    before it, None where it needs none.
    """

    unit: MassOrVolume
    rule_unit: str
    most: float
    work_out: Callable[[float, Followed, Cloth], float]
    how: Callable[[float, Followed, Cloth], str]
    follows: MassOrVolume | None = None


def _area(value: float, _of: Followed, cloth: Cloth) -> float:
    return value * (cloth.m2 or 0.0)


def _parts_words(value: float, of: Followed, _cloth: Cloth) -> str:
    return (
        f"1 part {of.title} ({litres_shown(of.value)}) and {plain(value, 2)} parts water "
        f"({litres_shown(of.value * value)})"
    )


BASES: Final[Mapping[Basis, Base]] = {
    Basis.WOF: Base(
        "g", "% WOF", 1_000,
        lambda value, _of, cloth: cloth.grams * value / 100,
        lambda value, _of, cloth: f"{plain(value, 2)} % of {plain(cloth.grams, 1)} g cloth",
    ),
    Basis.PER_LITRE: Base(
        "L", "g/L", 5_000,
        lambda value, of, _cloth: of.value / value,
        lambda value, of, _cloth: f"{of.words} at {plain(value, 2)} g to the litre",
        follows="g",
    ),
    Basis.TIMES_VOLUME: Base(
        "L", "times the volume", 1_000,
        lambda value, of, _cloth: of.litres * value,
        lambda value, of, _cloth: (
            f"{plain(value, 2)} times the volume of {of.words} ({litres_shown(of.litres)})"
        ),
        follows="g",
    ),
    Basis.PARTS: Base(
        "L", "parts water", 10_000,
        lambda value, of, _cloth: of.value * (1 + value),
        _parts_words,
        follows="L",
    ),
    Basis.PER_KG: Base(
        "L", "L/kg", 1_000,
        lambda value, _of, cloth: value * cloth.grams / 1000,
        lambda value, _of, cloth: (
            f"{plain(value, 2)} L to the kilogram of cloth, for {plain(cloth.grams, 1)} g"
        ),
    ),
    Basis.PER_AREA: Base(
        "g", "g/m²", 10_000,
        _area,
        lambda value, _of, cloth: (
            f"{plain(value, 2)} g to the square metre, for {plain(cloth.m2 or 0, 2)} m²"
        ),
    ),
    Basis.IN_BATH: Base(
        "g", "g/L", 5_000,
        lambda value, of, _cloth: of.value * value,
        lambda value, of, _cloth: f"{plain(value, 2)} g in each litre of {of.words}",
        follows="L",
    ),
    Basis.TIMES_WEIGHT: Base(
        "g", "times the weight", 1_000,
        lambda value, of, _cloth: of.value * value,
        lambda value, of, _cloth: f"{plain(value, 2)} times the weight of {of.words}",
        follows="g",
    ),
    Basis.FIXED: Base(
        "g", "", 100_000,
        lambda value, _of, _cloth: value,
        lambda *_: "the same for any weight",
    ),
}  # fmt: skip
"""A fixed amount names its own unit: `unit` and `rule_unit` here are stand-ins."""
