"""Estimated grades on the grey scales: change in colour and staining of cloth beside it.

Change by ISO 105-A05, staining by ISO 105-A04. The formulas are from memory, confirmed by two
(A05) and one (A04) public programs that name the standards; the ladder of the staining formula
agrees with the steps of ISO 105-A03. No worked number of the standards could be read, and a photo
meets neither of them, nor ISO 105-A11: so a grade is always called estimated. Grades run
from 5, nothing seen, to 1.
"""

import math
from dataclasses import dataclass
from typing import Final

from studio_log.science.colour.lab import Lab, hue_angle, hue_difference

CHANGE_LIMITS: Final = (
    (0.40, "5"), (1.25, "4-5"), (2.10, "4"), (2.95, "3-4"), (4.10, "3"), (5.80, "2-3"),
    (8.20, "2"), (11.60, "1-2"),
)  # fmt: skip
"""ΔE_F below which a grade of change still holds; from there on the next, at last 1 (A05)."""
STAINING_LIMITS: Final = (
    (4.75, "5"), (4.25, "4-5"), (3.75, "4"), (3.25, "3-4"), (2.75, "3"), (2.25, "2-3"),
    (1.75, "2"), (1.25, "1-2"),
)  # fmt: skip
"""SSR, to two decimals, from which a grade of staining holds; below the last it is 1 (A04)."""
LOWEST: Final = "1"
UNSURE_WITHIN: Final = 0.05
"""ΔE_F this close to a limit may fall to either grade: no printed example could be checked."""


@dataclass(frozen=True)
class Change:
    """A change in colour: ΔE_F, the grade as a figure (not below 1), and its step."""

    de_f: float
    figure: float
    grade: str
    unsure: bool
    """Whether it lies so close to a limit that the neighbouring grade is as good."""


@dataclass(frozen=True)
class Staining:
    """Staining: ΔE_GS, the grade as a figure (5 to below 1), and its step."""

    de_gs: float
    figure: float
    grade: str


def change(original: Lab, tested: Lab) -> Change:
    """Give the estimated grade of change in colour by ISO 105-A05, original first.

    D65 and 10 degree are meant; the formula is not symmetric.
    """
    mean_chroma, bend = _blue_bend(original, tested)
    chroma = tested.chroma - original.chroma - bend
    hue = hue_difference(original, tested) - bend
    de_f = math.hypot(
        tested.lightness - original.lightness,
        chroma / (1 + (20 * mean_chroma / 1000) ** 2),
        hue / (1 + (10 * mean_chroma / 1000) ** 2),
    )
    figure = 5 - de_f / 1.7 if de_f <= 3.4 else 5 - math.log2(de_f / 0.85)
    grade = next((one for limit, one in CHANGE_LIMITS if de_f < limit), LOWEST)
    unsure = any(abs(de_f - limit) < UNSURE_WITHIN for limit, _ in CHANGE_LIMITS)
    return Change(de_f, max(1.0, figure), grade, unsure)


def staining(clean: Lab, stained: Lab) -> Staining:
    """Give the estimated grade of staining by ISO 105-A04, the unstained cloth first."""
    lightness = stained.lightness - clean.lightness
    coloured = math.hypot(stained.a - clean.a, stained.b - clean.b)
    de_gs = math.hypot(lightness, coloured) - 0.4 * coloured
    figure = 5.0 if de_gs == 0 else 6.1 - 1.45 * math.log(de_gs)
    if figure > 4:
        figure = 5 - 0.23 * de_gs
    rounded = round(figure, 2)
    grade = next((one for limit, one in STAINING_LIMITS if rounded >= limit), LOWEST)
    return Staining(de_gs, figure, grade)


def _blue_bend(original: Lab, tested: Lab) -> tuple[float, float]:
    """Give the mean chroma, and the part of change that the bent hues of blue take up."""
    mean_chroma = (original.chroma + tested.chroma) / 2
    away = abs(_mean_hue(original, tested) - 280)
    turns = (min(away, 360 - away) / 30) ** 2
    chroma = tested.chroma - original.chroma
    return mean_chroma, chroma * mean_chroma * math.exp(-turns) / 100


def _mean_hue(original: Lab, tested: Lab) -> float:
    first, last = (hue_angle(one.a, one.b) for one in (original, tested))
    middle = (first + last) / 2
    if abs(last - first) <= 180:
        return middle
    return middle + 180 if first + last < 360 else middle - 180
