"""How even a colour is: the spread over several spots of one cloth.

From spectra the relative unlevelness index, RUI (Chong, Li and Yeung, J. Soc. Dyers Colour. 108,
528-530, 1992; formula and bands from memory). From colours, as photos give them, the mean
difference from the mean colour over 8 to 12 spots. Its bands are a proposal of this log.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, stdev
from typing import Final

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab

LEAST_SPOTS: Final = 3
"""Fewer say nothing of a spread; eight or more are better."""
GOOD_SPOTS: Final = 8
RUI_BANDS: Final = ((0.2, "excellent"), (0.5, "good"), (1.0, "poor"), (math.inf, "bad"))
"""Upper end of each band, for RUI to two decimals: Chong, Li and Yeung 1992, from memory."""
SPREAD_BANDS: Final = ((0.3, "even"), (0.7, "slight"), (1.5, "visible"), (math.inf, "strong"))
"""Upper end of each band, in CIEDE2000: a proposal, no source."""
RUI_WHOSE: Final = "bands of Chong, Li and Yeung 1992, from memory"
SPREAD_WHOSE: Final = "bands of Studio Log, a proposal"
# fmt: off
PHOTOPIC: Final = (
    0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098, 0.13902, 0.20802,
    0.323, 0.503, 0.71, 0.862, 0.954, 0.9949501, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503,
    0.381, 0.265, 0.175, 0.107, 0.061, 0.032, 0.017, 0.00821, 0.004102,
)
# fmt: on
"""The eye's sensitivity V, CIE 1924, 390 to 700 nm by 10."""


@dataclass(frozen=True)
class Spread:
    """The spots of one cloth about their mean colour; differences in CIEDE2000."""

    spots: int
    mean: Lab
    mean_apart: float
    sd_apart: float
    most_apart: float
    sd_lightness: float
    band: str
    whose: str


@dataclass(frozen=True)
class Unlevelness:
    """RUI of spectra, its band, and whose band that is."""

    index: float
    band: str
    whose: str


def spread(spots: Sequence[Lab], own_noise: float = 0.0) -> Spread:
    """Give how far the spots of one cloth lie from their mean colour.

    `own_noise` is the mean difference that an even grey shows in the same photo; it is taken off
    in squares. ValueError for fewer than three spots.
    """
    if len(spots) < LEAST_SPOTS:
        raise ValueError(f"evenness needs {LEAST_SPOTS} spots or more, better {GOOD_SPOTS}")
    if not 0 <= own_noise < math.inf:
        raise ValueError("the noise of the photo is 0 or more")
    mean = mean_of(spots)
    apart = [ciede2000(mean, one) for one in spots]
    left = math.sqrt(max(0.0, fmean(apart) ** 2 - own_noise**2))
    return Spread(
        spots=len(spots),
        mean=mean,
        mean_apart=left,
        sd_apart=stdev(apart),
        most_apart=max(apart),
        sd_lightness=stdev(one.lightness for one in spots),
        band=_band(left, SPREAD_BANDS),
        whose=SPREAD_WHOSE,
    )


def unlevelness(spectra: Sequence[Sequence[float]]) -> Unlevelness:
    """Give RUI of the spectra of several spots, each 32 fractions, 390 to 700 nm by 10.

    ValueError for fewer than three spots, another number of figures, and for a black.
    """
    if len(spectra) < LEAST_SPOTS:
        raise ValueError(f"evenness needs {LEAST_SPOTS} spots or more, better {GOOD_SPOTS}")
    if any(len(one) != len(PHOTOPIC) for one in spectra):
        raise ValueError(f"RUI needs {len(PHOTOPIC)} figures a spot, 390 to 700 nm by 10")
    if not all(0 < figure < math.inf for one in spectra for figure in one):
        raise ValueError("a reflectance is above 0")
    index = math.fsum(
        seen * stdev(one) / fmean(one)
        for seen, one in zip(PHOTOPIC, zip(*spectra, strict=True), strict=True)
    )
    return Unlevelness(index, _band(round(index, 2), RUI_BANDS), RUI_WHOSE)


def mean_of(spots: Sequence[Lab]) -> Lab:
    """Give the mean colour of one spot or more, figure by figure."""
    return Lab(*(fmean(one) for one in zip(*map(_figures, spots), strict=True)))


def from_400(spectrum: Sequence[float]) -> tuple[float, ...]:
    """Give a spectrum that begins at 400 nm with a figure for 390, the same as its first.

    The eye's weight there is 0.00012 of its most: it moves RUI by less than its last decimal.
    """
    return (spectrum[0], *spectrum)


def _figures(lab: Lab) -> tuple[float, float, float]:
    return lab.lightness, lab.a, lab.b


def _band(value: float, bands: Sequence[tuple[float, str]]) -> str:
    return next(name for most, name in bands if value < most or math.isinf(most))
