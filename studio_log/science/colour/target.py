"""The 24-patch target: what its patches are, published, and under the daylight of the log.

Four rows of six, from dark skin to black; the last row is neutral, white to black. Published by
its maker as CIELAB under D50, 2 degree, for targets made after November 2014 (by way of the data
of colour-science). A faded or older target has other colours.
"""

from dataclasses import dataclass
from functools import cache
from typing import Final

from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.spaces import Triple, d65_of_d50

COLUMNS: Final = 6
ROWS: Final = 4
NEUTRAL: Final = tuple(range(18, 24))
"""Places of the neutral row, white to black."""


@dataclass(frozen=True)
class Patch:
    """One patch: its name and its published colour under D50."""

    name: str
    published: Lab


PATCHES: Final = (
    Patch("dark skin", Lab(37.54, 14.37, 14.92)),
    Patch("light skin", Lab(64.66, 19.27, 17.5)),
    Patch("blue sky", Lab(49.32, -3.82, -22.54)),
    Patch("foliage", Lab(43.46, -12.74, 22.72)),
    Patch("blue flower", Lab(54.94, 9.61, -24.79)),
    Patch("bluish green", Lab(70.48, -32.26, -0.37)),
    Patch("orange", Lab(62.73, 35.83, 56.5)),
    Patch("purplish blue", Lab(39.43, 10.75, -45.17)),
    Patch("moderate red", Lab(50.57, 48.64, 16.67)),
    Patch("purple", Lab(30.1, 22.54, -20.87)),
    Patch("yellow green", Lab(71.77, -24.13, 58.19)),
    Patch("orange yellow", Lab(71.51, 18.24, 67.37)),
    Patch("blue", Lab(28.37, 15.42, -49.8)),
    Patch("green", Lab(54.38, -39.72, 32.27)),
    Patch("red", Lab(42.43, 51.05, 28.62)),
    Patch("yellow", Lab(81.8, 2.67, 80.41)),
    Patch("magenta", Lab(50.63, 51.28, -14.12)),
    Patch("cyan", Lab(49.57, -29.71, -28.32)),
    Patch("white 9.5", Lab(95.19, -1.03, 2.93)),
    Patch("neutral 8", Lab(81.29, -0.57, 0.44)),
    Patch("neutral 6.5", Lab(66.89, -0.75, -0.06)),
    Patch("neutral 5", Lab(50.76, -0.13, 0.14)),
    Patch("neutral 3.5", Lab(35.63, -0.46, -0.48)),
    Patch("black 2", Lab(20.64, 0.07, -0.46)),
)


@cache
def patches_xyz() -> tuple[Triple, ...]:
    """Give X, Y, Z of the patches under D65, 2 degree, by Bradford."""
    return tuple(d65_of_d50(one.published) for one in PATCHES)


@cache
def patches_lab() -> tuple[Lab, ...]:
    """Give the patches in CIELAB under D65, 2 degree."""
    return tuple(lab_of_xyz(one) for one in patches_xyz())
