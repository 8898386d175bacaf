"""Salts with and without their water of crystals, and one in place of another.

Molar masses from the standard atomic weights (IUPAC, abridged, 2021). A swap keeps what counts
equal: aluminium for aluminium, carbonate for carbonate. Good to the purity of what stands on
the shelf: crystals dry out and powders draw water.
"""

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

ATOMIC_WEIGHTS: Final[Mapping[str, float]] = {
    "H": 1.008, "C": 12.011, "O": 15.999, "Na": 22.990, "Al": 26.982, "S": 32.06, "K": 39.098,
    "Ca": 40.078, "Fe": 55.845,
}  # fmt: skip
_WATER: Final = "H2O"


@dataclass(frozen=True)
class Salt:
    """A salt: formula without its water, molecules of water, what counts and how often."""

    title: str
    formula: str
    water: int
    counts: str
    times: int = 1

    @property
    def molar_mass(self) -> float:
        """Grams to the mole, with its water."""
        return molar_mass(self.formula) + self.water * molar_mass(_WATER)


SALTS: Final[Mapping[str, Salt]] = {
    "soda-ash": Salt("soda ash", "Na2CO3", 0, "carbonate"),
    "washing-soda": Salt("washing soda crystals", "Na2CO3", 10, "carbonate"),
    "alum": Salt("alum", "KAl(SO4)2", 12, "Al"),
    "alum-dry": Salt("alum without water", "KAl(SO4)2", 0, "Al"),
    "aluminium-sulphate": Salt("aluminium sulphate", "Al2(SO4)3", 18, "Al", 2),
    "aluminium-acetate": Salt("aluminium acetate, dibasic", "Al(OH)2C2H3O2", 0, "Al"),
    "aluminium-lactate": Salt("aluminium lactate", "Al(C3H5O3)3", 0, "Al"),
    "aluminium-triformate": Salt("aluminium triformate", "Al(CHO2)3", 0, "Al"),
    "sodium-acetate-dry": Salt("sodium acetate without water", "NaC2H3O2", 0, "acetate"),
    "sodium-acetate": Salt("sodium acetate crystals", "NaC2H3O2", 3, "acetate"),
    "ferrous-sulphate": Salt("ferrous sulphate", "FeSO4", 7, "Fe"),
    "ferrous-sulphate-dry": Salt("ferrous sulphate, dried", "FeSO4", 1, "Fe"),
}
"""By a short name. Aluminium sulphate is sold with 14 to 18 waters: ask what is on the bag."""


def molar_mass(formula: str) -> float:
    """Give the grams to the mole of a formula such as "KAl(SO4)2"; KeyError for other atoms."""
    return sum(ATOMIC_WEIGHTS[atom] * count for atom, count in _atoms(formula).items())


def element_percent(salt: Salt, element: str) -> float:
    """Give how much of a salt is one element, in per cent of its weight."""
    return 100 * ATOMIC_WEIGHTS[element] * _atoms(salt.formula)[element] / salt.molar_mass


def in_place_of(grams: float, salt: str, other: str) -> float:
    """Give the grams of another salt that hold as much of what counts.

    Names as in `SALTS`. KeyError for one that is not there, ValueError where the two do not
    stand for each other.
    """
    one, two = SALTS[salt], SALTS[other]
    if one.counts != two.counts:
        raise ValueError(f"{two.title} does not stand for {one.title}")
    return grams / one.molar_mass * one.times / two.times * two.molar_mass


def acetate_for(alum_grams: float, salt: str) -> float:
    """Give the grams of a sodium acetate that turn alum into aluminium acetate: three to one."""
    acetate = SALTS[salt]
    if acetate.counts != "acetate":
        raise ValueError(f"{acetate.title} is no acetate")
    return alum_grams / SALTS["alum"].molar_mass * 3 * acetate.molar_mass


def _atoms(formula: str) -> Counter[str]:
    """Count the atoms of a formula; groups stand in brackets, one within another if need be."""
    stack: list[Counter[str]] = [Counter()]
    for atom, opened, closed, figure in re.findall(r"(?:([A-Z][a-z]?)|(\()|(\)))(\d*)", formula):
        times = int(figure or 1)
        if opened:
            stack.append(Counter())
        elif closed:
            for inner, count in stack.pop().items():
                stack[-1][inner] += count * times
        else:
            stack[-1][atom] += times
    return stack[0]
