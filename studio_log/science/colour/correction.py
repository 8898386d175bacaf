"""From a camera's light to colour: a fit on the patches of a target, chosen by what it foretells.

Root polynomials of degree 2 (Finlayson, Mackiewicz and Hurlbert, IEEE Trans. Image Process. 24(5),
1460-1470, 2015) and the plain 3 x 3 matrix: in both, twice the light gives twice the colour. A
phone bends its light by a tone curve that it does not tell; it is sought in the neutral patches, as
a parabola of logarithms that never falls. Of all these the one is taken that foretells best each
patch from the others. Light is linear, of any scale; XYZ has Y of white 100.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.target import NEUTRAL, patches_xyz

Values = NDArray[np.float64]
Kind = Literal["root-polynomial", "matrix"]

LEAST_PATCHES: Final = 12
"""Fewer say too little of a camera."""
LEAST_FOR_ROOTS: Final = 18
"""Below, only the 3 x 3 matrix is fitted."""
LEAST_NEUTRALS: Final = 4
"""A tone curve of three figures needs more."""
DARKEST: Final = 1e-5
"""Light below counts as this much where a logarithm is taken."""
LUMINANCE: Final = (0.2126, 0.7152, 0.0722)
"""Parts of linear sRGB in luminance (IEC 61966-2-1)."""


@dataclass(frozen=True, eq=False)
class Correction:
    """A fit: its kind, its figures (3 rows), and the tone curve undone before it, if any."""

    kind: Kind
    figures: Values
    tone: tuple[float, float] | None
    """Factors of the logarithm and of its square."""

    def xyz(self, light: Values) -> Values:
        """Give X, Y, Z of lights; rows of three to rows of three."""
        return expanded(undone(light, self.tone), self.kind) @ self.figures.T


@dataclass(frozen=True, eq=False)
class Chosen:
    """The fit that was taken, and how it foretells each patch that it does not know."""

    correction: Correction
    foretold: tuple[Lab, ...]
    apart: tuple[float, ...]
    """CIEDE2000 of each from what is published."""

    @property
    def rms(self) -> float:
        """Root mean square of those differences: the uncertainty of the fit."""
        return math.sqrt(sum(one * one for one in self.apart) / len(self.apart))


def expanded(light: Values, kind: Kind) -> Values:
    """Give the terms of lights: r, g, b, and for roots also those of rg, gb and rb."""
    if kind == "matrix":
        return light
    known = np.maximum(light, 0)
    red, green, blue = known[:, 0], known[:, 1], known[:, 2]
    roots = [np.sqrt(red * green), np.sqrt(green * blue), np.sqrt(red * blue)]
    return np.column_stack([light, *roots])


def fit(light: Values, xyz: Values, kind: Kind, tone: tuple[float, float] | None) -> Correction:
    """Fit by least squares, no patch weighing more than another."""
    figures, *_ = np.linalg.lstsq(expanded(undone(light, tone), kind), xyz, rcond=None)
    return Correction(kind, np.asarray(figures.T, dtype=np.float64), tone)


def undone(light: Values, tone: tuple[float, float] | None) -> Values:
    """Undo a tone curve in each channel."""
    if tone is None:
        return light
    logs = np.log(np.maximum(light, DARKEST))
    bent: Values = np.exp(tone[0] * logs + tone[1] * logs * logs)
    return bent


def tone_of(light: Values, luminance: Sequence[float]) -> tuple[float, float] | None:
    """Give the curve that makes neutral lights go with their published luminance, 0 to 100.

    None where there are too few of them, or where no curve rises over the whole picture.
    """
    if len(luminance) < LEAST_NEUTRALS:
        return None
    logs = np.log(np.maximum(light @ np.array(LUMINANCE), DARKEST))
    wanted = np.log(np.asarray(luminance) / 100)
    for degree in (2, 1):
        terms = np.column_stack([logs**power for power in range(degree + 1)])
        found, *_ = np.linalg.lstsq(terms, wanted, rcond=None)
        bend = float(found[2]) if degree > 1 else 0.0
        ends = (float(logs.min()) - 1.5, 0.0)
        if all(found[1] + 2 * bend * end > 0.1 for end in ends):
            return float(found[1]), bend
    return None


def choose(light: Values, places: Sequence[int]) -> Chosen:
    """Fit the lights of the patches at these places of the target; take the best foretelling.

    ValueError where there are too few patches.
    """
    if len(places) < LEAST_PATCHES:
        raise ValueError(f"{len(places)} patches are too few: a fit needs {LEAST_PATCHES}")
    found = [_foretelling(light, places, kind, bent=bent) for kind, bent in _ways(places)]
    return min(found, key=lambda one: one.rms)


def _ways(places: Sequence[int]) -> Iterator[tuple[Kind, bool]]:
    kinds: tuple[Kind, ...] = ("root-polynomial", "matrix")
    for kind in kinds if len(places) >= LEAST_FOR_ROOTS else kinds[1:]:
        for bent in (False, True):
            if not bent or sum(one in NEUTRAL for one in places) > LEAST_NEUTRALS:
                yield kind, bent


def _foretelling(light: Values, places: Sequence[int], kind: Kind, *, bent: bool) -> Chosen:
    """Fit one way; foretell each patch by a fit on the others."""
    xyz = np.array(patches_xyz())[list(places)]
    every = np.arange(len(places))
    foretold = []
    for left in every:
        others = every != left
        correction = _fitted(light[others], xyz[others], np.array(places)[others], kind, bent=bent)
        x, y, z = correction.xyz(light[left : left + 1])[0]
        foretold.append(lab_of_xyz((float(x), float(y), float(z))))
    apart = [ciede2000(_lab(xyz[one]), foretold[one]) for one in every]
    whole = _fitted(light, xyz, np.array(places), kind, bent=bent)
    return Chosen(whole, tuple(foretold), tuple(apart))


def _fitted(
    light: Values, xyz: Values, places: NDArray[np.intp], kind: Kind, *, bent: bool
) -> Correction:
    tone = None
    if bent:
        neutral = np.isin(places, NEUTRAL)
        tone = tone_of(light[neutral], list(xyz[neutral][:, 1]))
    return fit(light, xyz, kind, tone)


def _lab(xyz: Values) -> Lab:
    return lab_of_xyz((float(xyz[0]), float(xyz[1]), float(xyz[2])))
