"""Reflectance of an instrument, 400 to 700 nm by 10 nm: XYZ, K/S and strength.

XYZ by the weights of ASTM E308 for D65 and 10 degree, the weights beyond the ends added to the
ends as that practice says (computed by the way of ASTM E2022, as tests/reference has them).
K/S by Kubelka and Munk (1931; Kubelka 1948) for a sample so thick that nothing shines through:
fold cloth to four layers or more. Reflectance is a fraction, 0 to 1, a little above 1 where
cloth fluoresces. K/S goes with the dye only up to about 20 (from memory), and the shine of the
surface flattens deep shades.
"""

import math
from collections.abc import Sequence
from typing import Final

from studio_log.science.colour.lab import Lab, White, lab_of_xyz

WAVELENGTHS: Final = tuple(range(400, 701, 10))
"""nm."""
MOST_REFLECTANCE: Final = 2.0
"""More is surely a percentage."""
# fmt: off
WEIGHTS_X: Final = (
    0.1439, 0.6760, 1.6033, 2.4507, 3.4182, 3.6987, 3.0641, 1.9328, 0.8021, 0.1563, 0.0392,
    0.3469, 1.0703, 2.1701, 3.3971, 4.7324, 6.0698, 7.3112, 8.2906, 8.6336, 8.6724, 7.9303,
    6.4456, 4.6690, 3.0953, 1.8594, 1.0557, 0.5699, 0.2740, 0.1214, 0.1105,
)
WEIGHTS_Y: Final = (
    0.0151, 0.0691, 0.1679, 0.3002, 0.5539, 0.8901, 1.2904, 1.8384, 2.5197, 3.2264, 4.3200,
    5.6214, 6.9073, 8.0592, 8.6680, 8.8545, 8.5810, 7.9511, 7.1059, 6.0042, 5.0786, 4.0646,
    2.9992, 2.0418, 1.2896, 0.7462, 0.4165, 0.2230, 0.1067, 0.0471, 0.0429,
)
WEIGHTS_Z: Final = (
    0.6431, 3.1097, 7.6266, 12.0945, 17.5372, 19.8881, 17.6954, 12.9997, 7.6993, 3.9382, 2.0455,
    1.0492, 0.5435, 0.2782, 0.1216, 0.0345, 0.0005, -0.0004, 0.0, 0.0, 0.0, 0.0,
    0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0,
)
# fmt: on
WHITE: Final[White] = (math.fsum(WEIGHTS_X), math.fsum(WEIGHTS_Y), math.fsum(WEIGHTS_Z))
"""The white of these weights, D65 and 10 degree: their sums."""


def xyz_of_reflectance(reflectance: Sequence[float]) -> tuple[float, float, float]:
    """Give X, Y, Z (Y of white about 100) of 31 fractions, 400 to 700 nm by 10.

    ValueError for another number of them, and for what is no reflectance.
    """
    check_reflectance(reflectance)
    x, y, z = (
        math.fsum(weight * one for weight, one in zip(weights, reflectance, strict=True))
        for weights in (WEIGHTS_X, WEIGHTS_Y, WEIGHTS_Z)
    )
    return x, y, z


def lab_of_reflectance(reflectance: Sequence[float]) -> Lab:
    """Give CIELAB under D65, 10 degree, of 31 fractions."""
    return lab_of_xyz(xyz_of_reflectance(reflectance), WHITE)


def check_reflectance(reflectance: Sequence[float]) -> None:
    """Raise ValueError with words where these are not 31 fractions."""
    if len(reflectance) != len(WAVELENGTHS):
        raise ValueError(
            f"a spectrum has {len(WAVELENGTHS)} figures, 400 to 700 nm by 10, not "
            f"{len(reflectance)}"
        )
    if not all(0 <= one <= MOST_REFLECTANCE for one in reflectance):  # neither is not a number
        raise ValueError("a reflectance is a fraction from 0 to 1, such as 0.35; not a percentage")


def k_over_s(reflectance: float) -> float:
    """Give K/S of one reflectance, above 0 and at most 1; ValueError otherwise."""
    if not 0 < reflectance <= 1:
        raise ValueError("K/S needs a reflectance above 0 and at most 1")
    return (1 - reflectance) ** 2 / (2 * reflectance)


def reflectance_of(ks: float) -> float:
    """Give the reflectance of a K/S of 0 or more: the way back of `k_over_s`."""
    if not 0 <= ks < math.inf:
        raise ValueError("K/S is 0 or more")
    return 1 / (1 + ks + math.sqrt(ks * ks + 2 * ks))  # the usual form loses all figures far up


def ks_peak(reflectance: Sequence[float]) -> tuple[int, float]:
    """Give the wavelength in nm of the largest K/S, and that K/S."""
    check_reflectance(reflectance)
    least = min(range(len(reflectance)), key=reflectance.__getitem__)
    return WAVELENGTHS[least], k_over_s(reflectance[least])


def ks_sum(reflectance: Sequence[float]) -> float:
    """Give K/S summed over the 31 wavelengths: a steadier depth than the peak."""
    check_reflectance(reflectance)
    return math.fsum(k_over_s(one) for one in reflectance)


def strength_percent(ks_batch: float, ks_standard: float, ks_ground: float = 0.0) -> float:
    """Give the strength of a batch to its standard in per cent, net of the undyed ground.

    All three are K/S at the same wavelength, that of the lowest reflectance (ISO 105-J practice,
    from memory). ValueError where the standard is no deeper than the ground.
    """
    if not (ks_standard > ks_ground >= 0 and ks_batch >= 0):
        raise ValueError("the standard has to be deeper than the ground")
    return 100 * (ks_batch - ks_ground) / (ks_standard - ks_ground)


def apparent_ks(luminance: float) -> float:
    """Give K/S of a luminance factor (Y over that of white), for photos: call it apparent."""
    return k_over_s(luminance)
