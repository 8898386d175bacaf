"""How long dry soybeans soak: Peleg's equation, its band, and when the water sours.

M. Peleg, J. Food Sci. 53, 1216-1219 (1988): gain = t / (k1 + k2 t). The constants are derived for
this log from published points and are not published themselves: k2 from a mean uptake of
132.9 % over 70 varieties, k1 and its rise with heat fitted to +100 % after 7.5, 5 and 3.5 h
at 20, 30 and 50 °C (Korean J. Food Sci. Technol., 1987). Arithmetic checked by
tests/reference/soak_peleg_check.csv (0.1 %), against published points in soak_points.csv: 25 % in
gain and 40 % in time, for varieties differ that much. Gain is in per cent of the dry beans,
time in hours.
"""

import math
from typing import Final

from studio_log.science.between import between

K2: Final = 0.007524
"""1/%: one over the equilibrium gain, which heat does not change."""
K1_AT_25: Final = 0.0154
"""h/% at 25 °C."""
ACTIVATION_J_PER_MOL: Final = 19_300.0
GAS_J_PER_MOL_K: Final = 8.314462618
FULL_GAIN: Final = 100.0
"""Soaked through: the beans weigh twice what they did."""
TIME_BAND: Final = 0.40
"""Beans may need so much less or more time, as parts of it."""
GAIN_BAND: Final = 0.25
COLDEST_C: Final = 4.0
HOTTEST_C: Final = 50.0
"""The equation holds between these."""
SOURS: Final = (
    (5.0, 48.0), (10.0, 36.0), (15.0, 24.0), (20.0, 16.0), (25.0, 12.0), (30.0, 8.0), (35.0, 6.0),
)  # fmt: skip
"""°C of the water -> hours after which it may turn: judgement from soak_souring.csv, no
published table."""
RATIO_LEAST: Final = 2.0
RATIO_MOST: Final = 2.6
"""Soaked over dry weight: below, keep soaking; above, water was not drained off."""


def k1_at(celsius: float) -> float:
    """Give Peleg's k1 in h/%; ValueError outside 4 to 50 °C."""
    if not COLDEST_C <= celsius <= HOTTEST_C:
        raise ValueError(f"{celsius} °C is outside {COLDEST_C:g} to {HOTTEST_C:g} °C")
    apart = 1 / (celsius + 273.15) - 1 / 298.15
    return K1_AT_25 * math.exp(ACTIVATION_J_PER_MOL / GAS_J_PER_MOL_K * apart)


def gain_after(hours: float, celsius: float) -> float:
    """Give what beans have taken up after some hours, in per cent of their dry weight."""
    if not 0 <= hours < math.inf:
        raise ValueError(f"{hours} hours have not passed")
    return hours / (k1_at(celsius) + K2 * hours)


def hours_to(gain: float, celsius: float) -> float:
    """Give the hours to a gain; ValueError at or above the equilibrium of 132.9 %."""
    if not 0 <= gain * K2 < 1:
        raise ValueError(f"beans never gain {gain} %")
    return k1_at(celsius) * gain / (1 - K2 * gain)


def sours_after(celsius: float) -> float:
    """Give the hours after which soak water may sour; ValueError above 35 °C."""
    if not celsius <= SOURS[-1][0]:
        raise ValueError(f"soaking at {celsius} °C is not meant: it sours and loses solids")
    return between(SOURS, celsius)


def soaked_ratio(dry_grams: float, soaked_grams: float) -> float:
    """Give soaked over dry weight; ValueError where a weight is not above nought."""
    if not (0 < dry_grams < math.inf and 0 < soaked_grams < math.inf):
        raise ValueError("weights are above nought")
    return soaked_grams / dry_grams
