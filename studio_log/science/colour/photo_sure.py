"""How sure a colour from a photo is: 2u of the whole, and of each of its figures.

u is the root of the squares of three: of the swatch's own pixels, of the fit (how it foretells
patches it does not know), and of repeated photos. Two swatches of one photo share the fit: their
difference is surer than either colour.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.science.colour.correction import Chosen, Values
from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.regions import Region
from studio_log.science.colour.target import patches_lab

U_REPEAT: Final = 1.0
"""CIEDE2000 between photos of the same swatch, until the studio has measured it."""

Lighting = Callable[[Values], Lab]


@dataclass(frozen=True)
class Sure:
    """2u: of the colour as a whole in CIEDE2000, and of L*, a*, b*, C* and h; h None for a grey."""

    ciede2000: float
    lightness: float
    a: float
    b: float
    chroma: float
    hue: float | None


def sure_of(
    lab: Lab, swatch: Region, chosen: Chosen, kept: Sequence[int], lighting: Lighting
) -> Sure:
    """Give 2u of a swatch's colour; `lighting` turns light to colour, `kept` are the patches."""
    own = [_moved(swatch, channel, lighting) for channel in range(3)]
    seen = _root(*(ciede2000(lab, one) for one in own), chosen.rms, U_REPEAT)
    published = [patches_lab()[place] for place in kept]
    share = U_REPEAT / math.sqrt(3)
    lightness, a, b = (
        _root(
            *(figure(one) - figure(lab) for one in own),
            _rms([figure(x) - figure(y) for x, y in zip(published, chosen.foretold, strict=True)]),
            share,
        )
        for figure in (_lightness, _a, _b)
    )
    strength = max(lab.chroma, 1e-9)
    chroma = math.hypot(lab.a * a, lab.b * b) / strength
    turn = math.degrees(math.hypot(lab.b * a, lab.a * b) / strength**2)
    hue = 2 * turn if lab.chroma > 2 * chroma else None
    return Sure(2 * seen, 2 * lightness, 2 * a, 2 * b, 2 * chroma, hue)


def _moved(swatch: Region, channel: int, lighting: Lighting) -> Lab:
    """Give the colour with one channel a standard error brighter."""
    light = swatch.light.copy()
    light[channel] += swatch.error[channel]
    return lighting(light)


def _lightness(lab: Lab) -> float:
    return lab.lightness


def _a(lab: Lab) -> float:
    return lab.a


def _b(lab: Lab) -> float:
    return lab.b


def _rms(values: Sequence[float]) -> float:
    return math.sqrt(sum(one * one for one in values) / len(values))


def _root(*parts: float) -> float:
    return math.sqrt(sum(one * one for one in parts))
