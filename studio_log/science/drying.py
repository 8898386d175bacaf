"""How long wet cloth takes to dry on a line: a heat balance of its surface.

While the surface is wet it is colder than the room, and what the air gives it in heat leaves as
vapour. Fourt, Sookne, Frishman and Harris (Textile Res. J., 1951) found one constant rate for
all fabrics, so that the time goes by the water held; a short slower end follows below a critical
content. Laminar flow past a plate, blended with still air; Lewis number 0.86.

A calculation, not a measurement: checked as arithmetic by tests/reference/drying_model_check.csv
(surface 0.05 K, rate and hours 1 %). Against real cloth the time is 0.6 to 1.6 times what is worked
out indoors, 0.4 to 2 times outdoors. It knows no sun. Symbols: X is kg of water to the
kg of dry cloth. Each figure has its source in help/sources.md.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.science.between import between, root
from studio_log.science.psychrometrics import COLDEST_C, Air, saturation_pa, vapour_kg_per_m3

AIR_KG_PER_M3: Final = 1.19
AIR_J_PER_KG_K: Final = 1006.0
AIR_W_PER_M_K: Final = 0.0257
AIR_M2_PER_S: Final = 1.53e-5
PRANDTL: Final = 0.71
LEWIS: Final = 0.86
STILL_W_PER_M2_K: Final = 2.5
"""Heat from still indoor air, the value of ISO 6946 (from memory)."""
RADIANT_W_PER_M2_K: Final = 5.4
LENGTH_M: Final = 0.5
"""Length of the cloth along the moving air, where nobody says another."""
DRY_WITHIN: Final = 0.02
"""Cloth counts as dry at so much above what it holds in that air."""
INDOORS: Final = (0.6, 1.6)
OUTDOORS: Final = (0.4, 2.0)
"""Least and most of the true time as parts of the time worked out."""


@dataclass(frozen=True)
class Fibre:
    """`critical` is X where the slow end begins, `regain` its regain as parts of cotton's."""

    critical: float
    regain: float


FIBRES: Final[Mapping[str, Fibre]] = {
    "cotton": Fibre(0.28, 1.0),
    "linen": Fibre(0.28, 1.4),
    "hemp": Fibre(0.28, 1.4),
    "viscose": Fibre(0.28, 1.5),
    "silk": Fibre(0.30, 1.3),
    "wool": Fibre(0.36, 1.9),
}
"""Critical contents, and regains by the commercial allowances (8.5, 12, 12, 13, 11, 16 %):
from memory."""
COTTON_REGAIN: Final = (
    (0.0, 0.0), (20.0, 0.035), (40.0, 0.055), (50.0, 0.070), (55.0, 0.072), (65.0, 0.080),
    (70.0, 0.085), (75.0, 0.095), (80.0, 0.100), (90.0, 0.140), (95.0, 0.180), (100.0, 0.250),
)  # fmt: skip
"""Relative humidity in per cent -> water that cotton holds in such air, kg/kg; from memory."""


@dataclass(frozen=True)
class WetCloth:
    """Cloth on a line: dry g/m², X at hanging, sides that meet the air (1 or 2)."""

    gsm: float
    water: float
    critical: float
    regain: float
    sides: int = 2

    def __post_init__(self) -> None:
        if not (self.gsm > 0 and self.water > 0 and self.sides in (1, 2)):
            raise ValueError("cloth has a weight, holds water and dries on one or two sides")
        if not 0 <= self.regain < self.critical:
            raise ValueError("what cloth holds in that air is below where its slow end begins")


@dataclass(frozen=True)
class Evaporation:
    """What one wet side does: its temperature in °C and its rate in g/m²h."""

    surface_c: float
    rate: float


@dataclass(frozen=True)
class Hours:
    """Hours of the constant rate, and until dry."""

    constant: float
    total: float


def regain_of(fibre: str, humidity: float) -> float:
    """Give X of a fibre at rest in air of a relative humidity in per cent; KeyError if unknown."""
    one = FIBRES[fibre]
    return min(between(COTTON_REGAIN, humidity) * one.regain, one.critical - DRY_WITHIN)


def heat_transfer(air_m_s: float, length_m: float = LENGTH_M) -> float:
    """Give the convective heat transfer in W/m²K for air of a speed along a length."""
    if not (0 <= air_m_s <= 20 and 0 < length_m <= 20):
        raise ValueError(f"air of {air_m_s} m/s along {length_m} m is not meant")
    plate = 0.664 * AIR_W_PER_M_K * PRANDTL ** (1 / 3) * math.sqrt(
        air_m_s / (AIR_M2_PER_S * length_m)
    )  # fmt: skip
    return float((STILL_W_PER_M2_K**3 + plate**3) ** (1 / 3))


def evaporation(air: Air, air_m_s: float, length_m: float = LENGTH_M) -> Evaporation:
    """Give what a wet side does in such air; the rate is nought where the air is full."""
    heat = heat_transfer(air_m_s, length_m)
    mass = heat / (AIR_KG_PER_M3 * AIR_J_PER_KG_K) * math.pow(LEWIS, -2 / 3)

    def leaves(surface: float) -> float:
        """Give the kg/m²s that leave a surface of a temperature."""
        over = vapour_kg_per_m3(saturation_pa(surface), surface)
        return mass * (over - air.water_kg_per_m3)

    def balance(surface: float) -> float:
        latent = (2500.9 - 2.365 * surface) * 1000
        gained = (heat + RADIANT_W_PER_M2_K) * (air.celsius - surface)
        return gained - latent * leaves(surface)

    if air.humidity >= 100:
        return Evaporation(air.celsius, 0.0)
    surface = root(balance, max(COLDEST_C, air.celsius - 40), air.celsius)
    return Evaporation(surface, leaves(surface) * 3.6e6)


def drying_hours(cloth: WetCloth, rate: float) -> Hours:
    """Give the hours until cloth is dry, from the rate of one side in g/m²h.

    ValueError where nothing evaporates.
    """
    if not rate > 0:
        raise ValueError("cloth does not dry in air that takes no water")
    per_water = cloth.gsm / (cloth.sides * rate)
    slow = cloth.critical - cloth.regain
    if cloth.water <= cloth.critical:
        left = max(cloth.water - cloth.regain, DRY_WITHIN)
        return Hours(0.0, per_water * slow * math.log(left / DRY_WITHIN))
    constant = per_water * (cloth.water - cloth.critical)
    return Hours(constant, constant + per_water * slow * math.log(slow / DRY_WITHIN))
