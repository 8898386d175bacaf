"""Moist air: how much water it holds, and how much more it would take.

Equations of the ASHRAE Handbook - Fundamentals 2017, chapter 1: saturation pressure over ice
and water (5 and 6), humidity ratio (20), wet bulb from the heat balance over water (33), the
standard atmosphere (3). Checked by tests/reference/psychrometrics.csv, worked out
with two other programs: pressures within 0.05 %, humidity ratio 0.1 %, wet bulb and dew point
0.02 K. Real air holds up to 0.5 % more, which these equations leave out.

Temperatures in °C, relative humidity in per cent over water (over ice below 0 °C), pressures
in Pa. ValueError outside -40 to 90 °C, 0 to 100 % and 50 to 120 kPa.
"""

import math
from dataclasses import dataclass
from typing import Final

from studio_log.science.between import root

SEA_LEVEL_PA: Final = 101_325.0
ZERO_K: Final = 273.15
VAPOUR_J_PER_KG_K: Final = 461.5
"""Gas constant of water vapour."""
WATER_TO_AIR: Final = 0.621945
"""Molar mass of water over that of dry air."""
COLDEST_C: Final = -40.0
HOTTEST_C: Final = 90.0
_PRESSURES_PA: Final = (50_000.0, 120_000.0)

_WATER: Final = (
    -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673,
)  # fmt: skip
_ICE: Final = (
    -5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019,
)  # fmt: skip
"""ln p = a/T + b + c T + d T^2 + e T^3 + f T^4 + g ln T, T in K."""


def saturation_pa(celsius: float) -> float:
    """Give the vapour pressure at which air of a temperature can hold no more water."""
    if not COLDEST_C <= celsius <= HOTTEST_C:
        raise ValueError(f"air of {celsius} °C is outside {COLDEST_C:g} to {HOTTEST_C:g} °C")
    kelvin = celsius + ZERO_K
    a, b, c, d, e, f, g = _ICE if celsius <= 0.01 else _WATER  # 0.01: the triple point
    powers = b + kelvin * (c + kelvin * (d + kelvin * (e + kelvin * f)))
    return math.exp(a / kelvin + powers + g * math.log(kelvin))


def vapour_kg_per_m3(pressure_pa: float, celsius: float) -> float:
    """Give the water in a cubic metre of air, in kg, from its vapour pressure."""
    return pressure_pa / (VAPOUR_J_PER_KG_K * (celsius + ZERO_K))


def pressure_at(altitude_m: float) -> float:
    """Give the standard pressure at a height above the sea, -500 to 5,000 m."""
    if not -500 <= altitude_m <= 5_000:
        raise ValueError(f"a room {altitude_m} m above the sea is not meant")
    return SEA_LEVEL_PA * math.pow(1 - 2.25577e-5 * altitude_m, 5.2559)


@dataclass(frozen=True)
class Air:
    """Air of a temperature, relative humidity and pressure."""

    celsius: float
    humidity: float
    """Relative humidity, per cent."""
    pressure_pa: float = SEA_LEVEL_PA

    def __post_init__(self) -> None:
        if not 0 <= self.humidity <= 100:
            raise ValueError(f"relative humidity is 0 to 100 %, not {self.humidity}")
        low, high = _PRESSURES_PA
        if not low <= self.pressure_pa <= high:
            raise ValueError(f"air of {self.pressure_pa} Pa is not met with at a bench")
        saturation_pa(self.celsius)

    @property
    def vapour_pa(self) -> float:
        """Pressure of its water vapour."""
        return saturation_pa(self.celsius) * self.humidity / 100

    @property
    def deficit_pa(self) -> float:
        """Vapour pressure deficit: what is wanting to saturation."""
        return saturation_pa(self.celsius) - self.vapour_pa

    @property
    def humidity_ratio(self) -> float:
        """Kilograms of water to the kilogram of dry air."""
        return _ratio(self.vapour_pa, self.pressure_pa)

    @property
    def water_kg_per_m3(self) -> float:
        """Kilograms of water in a cubic metre: the absolute humidity."""
        return vapour_kg_per_m3(self.vapour_pa, self.celsius)

    @property
    def wet_bulb_c(self) -> float:
        """Temperature of a wet wick in a draught of this air; ValueError where it would freeze."""
        if self.humidity == 100:
            return self.celsius
        if self._over_wet_bulb(0.0) < 0:
            raise ValueError("a wet wick freezes in this air")
        return root(self._over_wet_bulb, 0.0, self.celsius)

    @property
    def dew_point_c(self) -> float:
        """Temperature at which its water begins to fall out; ValueError for quite dry air."""
        if self.vapour_pa <= saturation_pa(COLDEST_C):
            raise ValueError("air this dry has no dew point above -40 °C")
        return root(
            lambda celsius: self.vapour_pa - saturation_pa(celsius), COLDEST_C, self.celsius
        )

    def _over_wet_bulb(self, bulb: float) -> float:
        """Give the humidity ratio above the one that a wet bulb of this temperature tells of."""
        full = _ratio(saturation_pa(bulb), self.pressure_pa)
        apart = self.celsius - bulb
        told = ((2501 - 2.326 * bulb) * full - 1.006 * apart) / (
            2501 + 1.86 * self.celsius - 4.186 * bulb
        )
        return self.humidity_ratio - told


def _ratio(vapour_pa: float, pressure_pa: float) -> float:
    return WATER_TO_AIR * vapour_pa / (pressure_pa - vapour_pa)
