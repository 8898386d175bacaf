"""CIELAB: one colour, its chroma and hue, and the way from XYZ and back.

CIE 15: L* is 0 for black and 100 for the white it refers to; a* red against green, b* yellow
against blue; C* the distance from grey; h the hue angle in degrees, 0 to 360. Needs no library.
"""

import math
from dataclasses import dataclass
from typing import Final

White = tuple[float, float, float]
"""X, Y, Z of a white, with Y 100."""

D65_2: Final[White] = (95.0456, 100.0, 108.9058)
"""Daylight as sRGB means it, 2 degree observer: x 0.3127, y 0.3290 (IEC 61966-2-1)."""
D50_2: Final[White] = (96.4212, 100.0, 82.5188)
"""Warmer daylight, to which charts are published: x 0.34570, y 0.35854 (ICC)."""
EPSILON: Final = 216 / 24389
"""Below this part of the white the cube root gives way to a straight line (CIE 15)."""
KAPPA: Final = 24389 / 27
GREY_CHROMA: Final = 0.05
"""Below this C* a colour counts as grey and has no hue."""


@dataclass(frozen=True)
class Lab:
    """A colour by CIELAB; its white is the caller's: D65 and 2 degree for photos, 10 for spectra.

    ValueError where a figure is not finite.
    """

    lightness: float
    a: float
    b: float

    def __post_init__(self) -> None:
        if not all(math.isfinite(one) for one in (self.lightness, self.a, self.b)):
            raise ValueError("L*, a* and b* have to be numbers")

    @property
    def chroma(self) -> float:
        """C*: how far from grey."""
        return math.hypot(self.a, self.b)

    @property
    def hue(self) -> float | None:
        """H in degrees, 0 to 360; None for a grey, which has none."""
        if self.chroma < GREY_CHROMA:
            return None
        return hue_angle(self.a, self.b)


def hue_angle(a: float, b: float) -> float:
    """Give the angle of a* and b* in degrees, from 0 up to but not 360; 0 for a perfect grey."""
    return math.degrees(math.atan2(b, a)) % 360 % 360  # -1e-20 % 360 is 360 itself


def hue_difference(standard: Lab, sample: Lab) -> float:
    """Give ΔH* of CIE 15: what of a*b* is not chroma, with the sign of the turn."""
    turn = standard.a * sample.b - sample.a * standard.b
    square = (sample.a - standard.a) ** 2 + (sample.b - standard.b) ** 2
    apart = math.sqrt(max(0.0, square - (sample.chroma - standard.chroma) ** 2))
    return -apart if turn < 0 else apart


def lab_of_xyz(xyz: tuple[float, float, float], white: White = D65_2) -> Lab:
    """Give CIELAB of X, Y, Z on the scale of the white (Y of white 100), by CIE 15."""
    x, y, z = (_root(one / of) for one, of in zip(xyz, white, strict=True))
    return Lab(116 * y - 16, 500 * (x - y), 200 * (y - z))


def xyz_of_lab(lab: Lab, white: White = D65_2) -> tuple[float, float, float]:
    """Give X, Y, Z, Y of white 100: the way back of `lab_of_xyz`."""
    y = (lab.lightness + 16) / 116
    roots = (y + lab.a / 500, y, y - lab.b / 200)
    x, y, z = (of * _cube(root) for root, of in zip(roots, white, strict=True))
    return x, y, z


def _root(part: float) -> float:
    return math.cbrt(part) if part > EPSILON else (KAPPA * part + 16) / 116


def _cube(root: float) -> float:
    return root**3 if root**3 > EPSILON else (116 * root - 16) / KAPPA
