"""Spots of one cloth in a photo, by which its evenness is told: the frame in three by three."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.science.colour.correction import Values
from studio_log.science.colour.evenness import spread
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.picture import PhotoError
from studio_log.science.colour.regions import Corners, Field, Region, part_corners

ACROSS: Final = 3
ROOMY: Final = 0.8
"""Part of a spot's width and height that is read."""
Lighting = Callable[[Values], Lab]


@dataclass(frozen=True)
class Spots:
    """The colours of nine spots, row by row, and what even grey spreads by in the same photo."""

    colours: tuple[Lab, ...] = ()
    """() where the frame is too small to be parted."""
    noise: float = 0.0
    """Mean CIEDE2000 from the mean of nine spots of a grey, as if they were as large."""


def spots_of(field: Field, cloth: Corners, grey: Corners, lab_of: Lighting) -> Spots:
    """Read the spots of a cloth, and those of a grey for the grain of the photo."""
    own = _parts(field, cloth)
    if not own:
        return Spots()
    colours = tuple(lab_of(one.light) for one in own)
    even = _parts(field, grey)
    if not even:
        return Spots(colours)
    noise = spread([lab_of(one.light) for one in even]).mean_apart
    # The mean of more pixels is steadier: a grey smaller than the cloth shows more of the grain.
    return Spots(colours, noise * min(1.0, (_pixels(even) / _pixels(own)) ** 0.5))


def _parts(field: Field, corners: Corners) -> list[Region]:
    try:
        return [field.region(one, "") for one in part_corners(corners, ACROSS, ACROSS, ROOMY)]
    except PhotoError:  # too few pixels
        return []


def _pixels(regions: Sequence[Region]) -> float:
    return sum(one.pixels for one in regions) / len(regions)
