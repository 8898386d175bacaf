"""The water that cloth holds after wringing, spinning or dripping, as parts of its dry weight.

Spinning: 52 and 44 per cent at 1200 and 1600 rpm as printed for household machines, about 60 and
50 at 1000 and 1400 (trade figures); cotton cannot be spun below 30 to 40 (M. J. Denton,
J. Textile Inst. 65, 1974). Below 1000 rpm, by hand and dripping: from memory. Whoever weighs
the wet cloth knows better; each figure has its source in help/sources.md.
"""

from dataclasses import dataclass
from typing import Final

from studio_log.science.between import between


@dataclass(frozen=True)
class WaterHeld:
    """Least, likely and most water, kg to the kg of dry cloth."""

    least: float
    likely: float
    most: float


WRUNG: Final = WaterHeld(0.90, 1.20, 1.50)
DRIPPING: Final = WaterHeld(2.00, 2.50, 3.00)
SPUN: Final = (
    (400.0, 1.00), (600.0, 0.85), (800.0, 0.70), (1000.0, 0.60), (1200.0, 0.52), (1400.0, 0.50),
    (1600.0, 0.44), (2800.0, 0.40),
)  # fmt: skip
"""Speed in rpm of a household drum -> water left."""
SPIN_SHARE_OFF: Final = 0.15
"""How far a spin may be off: machines, loads and cloths differ; a proposal."""
SLOWEST_RPM: Final = SPUN[0][0]
FASTEST_RPM: Final = SPUN[-1][0]


def spun(rpm: float) -> WaterHeld:
    """Give the water left by a spin; ValueError outside 400 to 2,800 rpm."""
    if not SLOWEST_RPM <= rpm <= FASTEST_RPM:
        raise ValueError(f"a spin of {rpm} rpm is outside {SLOWEST_RPM:g} to {FASTEST_RPM:g}")
    likely = between(SPUN, rpm)
    return WaterHeld(likely * (1 - SPIN_SHARE_OFF), likely, likely * (1 + SPIN_SHARE_OFF))


def weighed(part: float) -> WaterHeld:
    """Give the water of cloth that was weighed wet and dry; ValueError outside 0 to 5."""
    if not 0 < part <= 5:
        raise ValueError(f"cloth does not hold {part} times its weight of water")
    return WaterHeld(part, part, part)
