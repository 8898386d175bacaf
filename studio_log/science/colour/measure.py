"""The colour of a swatch in a photo: with a 24-patch target, or relative to a card alone.

What would make it wrong is refused (PhotoError) or warned of, in words; how sure it is stands
beside it as 2u.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from studio_log.language.words import tr
from studio_log.science.colour.correction import Values, choose
from studio_log.science.colour.lab import Lab, lab_of_xyz
from studio_log.science.colour.photo_checks import (
    card_warnings,
    check_fit,
    check_swatch,
    check_target,
    swatch_warnings,
    target_warnings,
)
from studio_log.science.colour.photo_spots import Spots, spots_of
from studio_log.science.colour.photo_sure import Sure, sure_of
from studio_log.science.colour.picture import PhotoError, Picture
from studio_log.science.colour.regions import (
    MOST_CLIPPED,
    Corners,
    Field,
    Rect,
    check_corners,
    patch_corners,
    rect_corners,
)
from studio_log.science.colour.spaces import Triple, shown_code, srgb_of_linear, xyz_of_srgb
from studio_log.science.colour.target import PATCHES

GREY = next(place for place, one in enumerate(PATCHES) if one.name == "neutral 5")
"""The patch whose evenness tells the grain of the photo."""


@dataclass(frozen=True)
class Measured:
    """A swatch of a photo under D65, 2 degree. `two_u` is None where it is relative only."""

    lab: Lab
    two_u: Sure | None
    relative: bool
    method: str
    tone_undone: bool
    fit_rms: float | None
    patches: int
    rejected: tuple[str, ...]
    pixels: int
    shown: str
    """Its colour as "#rrggbb"."""
    warnings: tuple[str, ...]
    spots: Spots = field(default_factory=Spots)
    """Nine spots of the swatch's frame, by which its evenness is told."""


def measure_with_target(
    picture: Picture, target: Corners, swatch: Rect, cards: Sequence[Rect] = ()
) -> Measured:
    """Measure a swatch by a target's outer corners, clockwise from the corner of dark skin.

    `cards` are places of one and the same neutral card, to check the light by. Pixels upright.
    """
    check_corners(target, picture.size, tr("the target"))
    shapes = _shapes(picture, swatch, cards)
    field = Field(picture, [target, *shapes])
    found = field.region(shapes[0], tr("the swatch"))
    regions = [
        field.region(shape, tr("the patch {name}", name=patch.name))
        for shape, patch in zip(patch_corners(target), PATCHES, strict=True)
    ]
    check_swatch(found)
    kept = [place for place, one in enumerate(regions) if one.clipped <= MOST_CLIPPED]
    rejected = tuple(one.name for place, one in enumerate(PATCHES) if place not in kept)
    check_target(regions, kept)
    chosen = choose(np.array([regions[place].light for place in kept]), kept)
    check_fit(chosen)
    warnings = (
        *picture.notes,
        *field.notes,
        *target_warnings(regions, kept, chosen),
        *card_warnings(field, shapes[1:]),
        *swatch_warnings(found),
    )
    correction = chosen.correction
    x, y, z = (float(one) for one in correction.xyz(found.light[np.newaxis])[0])
    lab = lab_of_xyz((x, y, z))

    def lighting(light: Values) -> Lab:
        a, b, c = correction.xyz(light[np.newaxis])[0]
        return lab_of_xyz((float(a), float(b), float(c)))

    return Measured(
        lab=lab,
        two_u=sure_of(lab, found, chosen, kept, lighting),
        relative=False,
        method=correction.kind,
        tone_undone=correction.tone is not None,
        fit_rms=chosen.rms,
        patches=len(kept),
        rejected=rejected,
        pixels=found.pixels,
        shown=shown_code((x, y, z))[0],
        warnings=warnings,
        spots=spots_of(field, shapes[0], patch_corners(target)[GREY], lighting),
    )


def measure_with_card(
    picture: Picture, swatch: Rect, cards: Sequence[Rect], reflectance: float
) -> Measured:
    """Give the colour of a swatch relative to a neutral card of this reflectance, 0 to 1.

    Without a target the camera's own colours stay in it: only differences within one photo count.
    """
    shapes = _shapes(picture, swatch, cards)
    field = Field(picture, shapes)
    found = field.region(shapes[0], tr("the swatch"))
    card = field.region(shapes[1], tr("the card"))
    check_swatch(found)
    if card.clipped > MOST_CLIPPED:
        raise PhotoError(
            tr(
                "The card is too bright or too dark in the photo: some of its pixels are clipped. "
                "Take it again with less or more light."
            )
        )

    def beside_card(light: Values) -> Triple:
        red, green, blue = (float(one) for one in light / card.light * reflectance)
        return xyz_of_srgb(srgb_of_linear((red, green, blue)))

    xyz = beside_card(found.light)
    words = tr(
        "Relative only: without a target the camera’s own colours stay in it. Compare it with "
        "swatches of the same photo, and with nothing else."
    )
    warnings = (
        words,
        *picture.notes,
        *field.notes,
        *card_warnings(field, shapes[1:]),
        *swatch_warnings(found),
    )
    return Measured(
        lab=lab_of_xyz(xyz),
        two_u=None,
        relative=True,
        method="card",
        tone_undone=False,
        fit_rms=None,
        patches=0,
        rejected=(),
        pixels=found.pixels,
        shown=shown_code(xyz)[0],
        warnings=warnings,
        spots=spots_of(field, shapes[0], shapes[1], lambda light: lab_of_xyz(beside_card(light))),
    )


def _shapes(picture: Picture, swatch: Rect, cards: Sequence[Rect]) -> list[Corners]:
    """Give the corners of swatch and cards, checked."""
    shapes = [rect_corners(one) for one in (swatch, *cards)]
    for number, shape in enumerate(shapes):
        check_corners(shape, picture.size, tr("a card") if number else tr("the swatch"))
    return shapes
