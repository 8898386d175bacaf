"""CIEDE2000 from one colour to many at once, and a bound in CIELAB that holds all near ones.

The sums follow Sharma, Wu and Dalal (Color Res. Appl. 30, 21-30, 2005), here over whole arrays. The
bound makes a search exact: what lies outside is further off. It follows from the formula: S_L grows
with the distance of the mean L* from 50; S_H never exceeds S_C = 1 + 0.045 C', and C' is never more
than 6.4 above C*; the rotation term counts near hue 275 only, and takes from chroma and hue
together at most half its size of their squares. It is narrowed a few times, for each bound makes a
better one.
"""

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from studio_log.science.colour.lab import Lab, hue_angle

Values = NDArray[np.float64]

CHROMA_WEIGHT: Final = 0.045
MOST_GROWTH: Final = 6.4
"""Most that the stretching of a* adds to a chroma: its peak is 6.374, at C* 16.6."""
MOST_STRETCH: Final = 1.5
"""Of a*."""
MOST_TURN: Final = 30.0
BLUE: Final = 275.0
BLUE_WIDTH: Final = 25.0
"""Degrees: of the rotation term."""
EVERYTHING: Final = 1000.0
"""Further out than any colour."""
SLACK: Final = 1e-6
ROUNDS: Final = 4
_FAR: Final = 25.0**7


def ciede2000_of(one: Lab, others: Values) -> Values:
    """Give CIEDE2000 from a colour to each row of L*, a*, b*; kL = kC = kH = 1."""
    lightness, a, b = others[:, 0], others[:, 1], others[:, 2]
    mean = (one.chroma + np.hypot(a, b)) / 2
    grow = 1 + 0.5 * (1 - np.sqrt(mean**7 / (mean**7 + _FAR)))
    first, second = _polar(one.a * grow, np.full_like(b, one.b)), _polar(a * grow, b)
    chroma = (first[0] + second[0]) / 2
    turn, hue = _turns(first, second)
    d_h = 2 * np.sqrt(first[0] * second[0]) * np.sin(np.radians(turn / 2))
    off = (one.lightness + lightness) / 2 - 50
    s_l = 1 + 0.015 * off**2 / np.sqrt(20 + off**2)
    s_c = 1 + 0.045 * chroma
    s_h = 1 + 0.015 * chroma * _t(hue)
    light, strong, round_ = (
        (lightness - one.lightness) / s_l,
        (second[0] - first[0]) / s_c,
        d_h / s_h,
    )
    square = light**2 + strong**2 + round_**2 + _rotation(chroma, hue) * strong * round_
    return np.asarray(np.sqrt(np.maximum(square, 0)), dtype=np.float64)


@dataclass(frozen=True)
class Reach:
    """How far a colour may lie off in L*, and in a*b*, and still be near; an ellipsoid as well.

    Near ones have (ΔL / light)² + (Δab / across)² of 1 at most.
    """

    light: float
    across: float


def reach_of(lab: Lab, apart: float) -> Reach:
    """Give what holds every colour at most so far from one by CIEDE2000."""
    light = across = EVERYTHING
    for _ in range(ROUNDS):
        light = min(light, apart * _most_s_l(lab, light) + SLACK)
        share = math.sqrt(1 - _most_rotation(lab, across) / 2)
        widest = 1 + CHROMA_WEIGHT * (lab.chroma + MOST_GROWTH)
        left = share - CHROMA_WEIGHT * apart / 2
        if left > 0:
            across = min(across, apart * widest / left + SLACK)
    return Reach(light, across)


def _most_s_l(lab: Lab, light: float) -> float:
    """Give the largest S_L where the other L* lies within so much, and within 0 to 110."""
    ends = (max(0.0, lab.lightness - light), min(110.0, lab.lightness + light))
    off = max(abs((lab.lightness + end) / 2 - 50) for end in ends)
    return 1 + 0.015 * off**2 / math.sqrt(20 + off**2)


def _most_rotation(lab: Lab, across: float) -> float:
    """Give the largest size of R_T where the other a*b* lies within so much."""
    turn, reach = MOST_TURN, MOST_STRETCH * across
    if reach < lab.chroma:
        aside = math.degrees(math.asin(reach / lab.chroma)) / 2
        hues = (hue_angle(lab.a, lab.b), hue_angle(MOST_STRETCH * lab.a, lab.b))
        off = min(abs((hue - BLUE + 180) % 360 - 180) for hue in hues) - aside
        across_blue = lab.b < 0 and abs(lab.a) < abs(lab.b)  # the hues may lie on either side
        off = 0.0 if across_blue else max(0.0, off)
        turn = MOST_TURN * math.exp(-((off / BLUE_WIDTH) ** 2))
    return 2 * math.sin(math.radians(2 * turn))


def _polar(a: Values, b: Values) -> tuple[Values, Values]:
    """Give chroma and hue in degrees, 0 to 360; the hue of a grey is 0."""
    return np.hypot(a, b), np.degrees(np.arctan2(b, a)) % 360


def _turns(first: tuple[Values, Values], second: tuple[Values, Values]) -> tuple[Values, Values]:
    """Give the turn from the first hue to the second, and the hue between them, in degrees."""
    grey = first[0] * second[0] == 0
    apart = second[1] - first[1]
    turn = np.where(apart > 180, apart - 360, np.where(apart < -180, apart + 360, apart))
    total = first[1] + second[1]
    far = np.abs(apart) > 180
    middle = np.where(far, np.where(total < 360, total + 360, total - 360), total) / 2
    return np.where(grey, 0, turn), np.where(grey, total, middle)


def _t(hue: Values) -> Values:
    parts = ((-0.17, 1, -30), (0.24, 2, 0), (0.32, 3, 6), (-0.20, 4, -63))
    found = np.ones_like(hue)
    for share, times, plus in parts:
        found += share * np.cos(np.radians(times * hue + plus))
    return found


def _rotation(chroma: Values, hue: Values) -> Values:
    spread = 30 * np.exp(-(((hue - 275) / 25) ** 2))
    rises = 2 * np.sqrt(chroma**7 / (chroma**7 + _FAR))
    return np.asarray(-np.sin(np.radians(2 * spread)) * rises, dtype=np.float64)
