"""Screen colours: sRGB, linear light and XYZ, and the way from the D50 of charts to D65.

sRGB by IEC 61966-2-1; adaptation by Bradford's matrix. The sums are those of coloraide, which
uses the matrix unrounded: up to 0.025 in L*, a*, b* beside the four figures that the standard
prints. Light is linear, 0 to 1; XYZ has Y of white 100.
"""

from typing import Final

from coloraide import Color
from coloraide.cat import WHITES, Bradford

from studio_log.science.colour.lab import D50_2, Lab, xyz_of_lab

Triple = tuple[float, float, float]

_D50_XY: Final = (0.34570291, 0.35853860)
_D65_XY: Final = WHITES["2deg"]["D65"]


def linear_of_srgb(code: Triple) -> Triple:
    """Give linear light of sRGB codes, each 0 to 1 (255 is 1)."""
    return _triple(Color("srgb", code).convert("srgb-linear").coords(nans=False))


def srgb_of_linear(light: Triple) -> Triple:
    """Give sRGB codes of linear light, not cut off: what the screen cannot show leaves 0 to 1."""
    return _triple(Color("srgb-linear", light).convert("srgb").coords(nans=False))


def xyz_of_srgb(code: Triple) -> Triple:
    """Give X, Y, Z under D65, 2 degree, of sRGB codes from 0 to 1."""
    return _hundred(Color("srgb", code).convert("xyz-d65").coords(nans=False))


def srgb_of_xyz(xyz: Triple) -> Triple:
    """Give sRGB codes of X, Y, Z under D65; outside 0 to 1 where the screen cannot show it."""
    part = tuple(one / 100 for one in xyz)
    return _triple(Color("xyz-d65", part).convert("srgb").coords(nans=False))


def shown_code(xyz: Triple) -> tuple[str, bool]:
    """Give "#rrggbb" of a colour under D65, and whether it had to be cut off to be shown."""
    codes = srgb_of_xyz(xyz)
    cut = any(not -0.002 < one < 1.002 for one in codes)
    whole = [round(255 * min(1.0, max(0.0, one))) for one in codes]
    return "#" + "".join(f"{one:02x}" for one in whole), cut


def d65_of_d50(lab: Lab) -> Triple:
    """Give X, Y, Z under D65 of a colour published under D50, by Bradford (ICC's D50)."""
    part = [one / 100 for one in xyz_of_lab(lab, D50_2)]
    return _hundred(Bradford().adapt(_D50_XY, _D65_XY, part))


def d50_of_d65(xyz: Triple) -> Triple:
    """Give X, Y, Z under D50 of those under D65, by Bradford."""
    return _hundred(Bradford().adapt(_D65_XY, _D50_XY, [one / 100 for one in xyz]))


def _triple(values: list[float]) -> Triple:
    x, y, z = values
    return x, y, z


def _hundred(values: list[float]) -> Triple:
    x, y, z = values
    return 100 * x, 100 * y, 100 * z
