"""What spoils a photo of a target: refused with PhotoError, or told as a warning."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Final

import numpy as np

from studio_log.language.words import tr
from studio_log.science.colour.correction import LEAST_PATCHES, Chosen
from studio_log.science.colour.picture import PhotoError
from studio_log.science.colour.regions import MOST_CLIPPED, Corners, Field, Region
from studio_log.science.colour.target import COLUMNS, NEUTRAL, PATCHES, ROWS, patches_xyz

MOST_GLARE: Final = 0.15
"""A patch whose brightest twentieth lies further above its median shines."""
MOST_FALLOFF: Final = 0.05
"""Between one card here and the same card there."""
MOST_TARGET_FALLOFF: Final = 0.10
"""Across the target, by what the fit leaves over: less sure than cards."""
MOST_UNEVEN: Final = 0.20
"""Between the lightest and darkest sixteenth of a swatch."""
POOR_FIT: Final = 4.0
"""CIEDE2000, root mean square: phones do better (1.5 to 4, from memory)."""
WORST_FIT: Final = 8.0
"""A worse fit is no photo of this target in one light."""


def check_swatch(swatch: Region) -> None:
    """Refuse a swatch of which more than a hundredth is clipped."""
    if swatch.clipped > MOST_CLIPPED:
        raise PhotoError(
            tr(
                "{part} % of the swatch is too bright or too dark for the camera: its colour is "
                "lost there. Take the photo again with less or more light, without flash.",
                part=f"{100 * swatch.clipped:.0f}",
            )
        )


def check_target(regions: Sequence[Region], kept: Sequence[int]) -> None:
    """Refuse a target with too few readable patches, or whose neutral row is out of order."""
    if len(kept) < LEAST_PATCHES:
        raise PhotoError(
            tr(
                "Only {count} of the 24 patches can be read; the others are too bright or too "
                "dark. Take the photo again with less or more light, without flash.",
                count=len(kept),
            )
        )
    row = [regions[place].luminance for place in NEUTRAL if place in kept]
    if any(later >= earlier for earlier, later in pairwise(row)):
        raise PhotoError(
            tr(
                "The neutral patches do not grow darker from white to black. Name the corners "
                "clockwise from that of the dark skin patch; or something shines: then take the "
                "photo again with one soft light from the side."
            )
        )


def check_fit(chosen: Chosen) -> None:
    """Refuse a fit that cannot be one of this target."""
    if not chosen.rms <= WORST_FIT:
        raise PhotoError(
            tr(
                "The patches do not look as their target is published: {apart} CIEDE2000 apart. "
                "Look at the corners, and at the light: two kinds of light, shine or a shadow "
                "do this, and so does a photo changed by a filter.",
                apart=f"{chosen.rms:.1f}",
            )
        )


def target_warnings(regions: Sequence[Region], kept: Sequence[int], chosen: Chosen) -> list[str]:
    """Tell of shine, of a poor fit, of light that falls off and of patches left out."""
    said = []
    shining = [PATCHES[place].name for place in kept if regions[place].glare > MOST_GLARE]
    if shining:
        said.append(
            tr(
                "Something shines on the target ({patches}): better take another photo, lit from "
                "the side.",
                patches=", ".join([*shining[:4], *(["…"] if shining[4:] else [])]),
            )
        )
    if chosen.rms > POOR_FIT:
        said.append(
            tr(
                "The patches are foretold only to {apart} CIEDE2000: the colour is rough. A "
                "photo in one soft light, without the camera’s effects, does better.",
                apart=f"{chosen.rms:.1f}",
            )
        )
    fall = target_falloff(regions, kept, chosen)
    if fall > MOST_TARGET_FALLOFF:
        said.append(
            tr(
                "The light falls off by about {fall} % across the target: the swatch may stand in "
                "another light than the patches.",
                fall=f"{100 * fall:.0f}",
            )
        )
    if len(kept) < len(PATCHES):
        left = len(PATCHES) - len(kept)
        said.append(tr("{count} patches were left out: clipped.", count=left))
    return said


def target_falloff(regions: Sequence[Region], kept: Sequence[int], chosen: Chosen) -> float:
    """Give how much the light differs between the ends of the target, by a plane of logarithms."""
    light = np.array([regions[place].light for place in kept])
    found = np.maximum(chosen.correction.xyz(light)[:, 1], 1e-3)
    told = np.array([patches_xyz()[place][1] for place in kept])
    at = np.array([((place % COLUMNS) / (COLUMNS - 1) - 0.5, (place // COLUMNS) / (ROWS - 1) - 0.5)
                   for place in kept])  # fmt: skip
    terms = np.column_stack([at, np.ones(len(kept))])
    plane, *_ = np.linalg.lstsq(terms, np.log(found / told), rcond=None)
    return float(math.expm1(abs(plane[0]) + abs(plane[1])))


def card_warnings(field: Field, shapes: Sequence[Corners]) -> list[str]:
    """Tell of light that differs between places of one card."""
    lights = [field.region(shape, tr("a card")).luminance for shape in shapes]
    if len(lights) < 2 or max(lights) / max(min(lights), 1e-6) - 1 <= MOST_FALLOFF:
        return []
    fall = max(lights) / max(min(lights), 1e-6) - 1
    return [
        tr(
            "The light differs by {fall} % between the cards: move the lamp further off.",
            fall=f"{100 * fall:.0f}",
        )
    ]


def swatch_warnings(swatch: Region) -> list[str]:
    """Tell of folds, shadows and shine in a swatch."""
    said = []
    if swatch.uneven > MOST_UNEVEN:
        said.append(
            tr(
                "The swatch is uneven by {part} % in light: a fold, a shadow or an uneven "
                "dyeing is in it.",
                part=f"{100 * swatch.uneven:.0f}",
            )
        )
    elif swatch.glare > MOST_GLARE:
        said.append(tr("The swatch shines or has a coarse weave: lay the lamp to the side."))
    return said
