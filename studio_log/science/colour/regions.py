"""Parts of a photo: the patches of a target, a swatch, a card; their light and what spoils it.

Geometry by the perspective of four corners. Light is linear, 0 to 1, the mean of the pixels with
a tenth left off at either end; its error comes from a 4 by 4 split, since pixels that lie side by
side are not apart from each other.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from studio_log.language.words import tr
from studio_log.science.colour.correction import LUMINANCE, Values
from studio_log.science.colour.picture import PhotoError, Picture
from studio_log.science.colour.target import COLUMNS, ROWS

BRIGHTEST_CODE: Final = 250
DARKEST_CODE: Final = 3
"""A pixel with a channel at or beyond these is clipped, of 255."""
MOST_CLIPPED: Final = 0.01
"""Part of a region that may be clipped."""
TRIMMED: Final = 0.1
"""Left off at either end of the values of a region."""
LEAST_PIXELS: Final = 100
MOST_PIXELS: Final = 40_000
"""Of a larger region every so-manieth pixel is read."""
MIDDLE: Final = 0.5
"""Part of a patch's width and height that is read."""
BLOCKS: Final = 4

Point = tuple[float, float]
Corners = tuple[Point, Point, Point, Point]
Rect = tuple[float, float, float, float]
"""Left, top, width, height."""


@dataclass(frozen=True, eq=False)
class Region:
    """A part of a photo: its light and the error of that, and what may spoil it."""

    light: Values
    error: Values
    pixels: int
    clipped: float
    """Part of its pixels, 0 to 1."""
    glare: float
    """How far its brightest twentieth lies above its median, in parts of that."""
    uneven: float
    """Ratio of its brightest block to its darkest, less 1."""

    @property
    def luminance(self) -> float:
        """Its light as one figure, 0 to 1."""
        return float(self.light @ np.array(LUMINANCE))


def rect_corners(rect: tuple[float, float, float, float]) -> Corners:
    """Give the corners of left, top, width, height."""
    left, top, width, height = rect
    right, bottom = left + width, top + height
    return (left, top), (right, top), (right, bottom), (left, bottom)


def check_corners(corners: Corners, size: tuple[int, int], what: str) -> None:
    """Raise PhotoError with words where corners lie outside a photo, or are no four-sided shape."""
    width, height = size
    for x, y in corners:
        if not (0 <= x <= width and 0 <= y <= height):
            raise PhotoError(
                tr(
                    "A corner of {what}, {x},{y}, lies outside the photo of {width} × {height} "
                    "pixels.",
                    what=what,
                    x=f"{x:g}",
                    y=f"{y:g}",
                    width=width,
                    height=height,
                )
            )
    turns = [_turn(corners[i], corners[i - 3], corners[i - 2]) for i in range(4)]
    if all(one < 0 for one in turns):
        raise PhotoError(
            tr(
                "The corners of {what} go round the wrong way: name them clockwise, as it is seen.",
                what=what,
            )
        )
    if not all(one > 1 for one in turns):
        raise PhotoError(tr("The corners of {what} are no shape with four sides.", what=what))


def _turn(one: Point, two: Point, three: Point) -> float:
    return (two[0] - one[0]) * (three[1] - two[1]) - (two[1] - one[1]) * (three[0] - two[0])


def patch_corners(corners: Corners) -> list[Corners]:
    """Give the middle parts of the 24 patches, in order, seen from the target's outer corners.

    The first corner is that of dark skin, the second of bluish green, then black and white.
    """
    return part_corners(corners, COLUMNS, ROWS, MIDDLE)


def part_corners(corners: Corners, columns: int, rows: int, share: float) -> list[Corners]:
    """Give the middle `share` of each of so many parts across and down, row by row."""
    view = perspective(corners)
    low, high = (1 - share) / 2, (1 + share) / 2
    found = []
    for row in range(rows):
        for column in range(columns):
            parts = ((low, low), (high, low), (high, high), (low, high))
            unit = [((column + x) / columns, (row + y) / rows) for x, y in parts]
            first, second, third, fourth = (_seen(view, one) for one in unit)
            found.append((first, second, third, fourth))
    return found


def perspective(corners: Corners) -> Values:
    """Give the 3 x 3 matrix from the unit square to four corners."""
    unit = ((0, 0), (1, 0), (1, 1), (0, 1))
    rows, right = [], []
    for (u, v), (x, y) in zip(unit, corners, strict=True):
        rows += [[u, v, 1, 0, 0, 0, -u * x, -v * x], [0, 0, 0, u, v, 1, -u * y, -v * y]]
        right += [x, y]
    figures = np.linalg.solve(np.array(rows, dtype=np.float64), np.array(right))
    return np.append(figures, 1.0).reshape(3, 3)


def _seen(view: Values, unit: Point) -> Point:
    x, y, w = view @ np.array([*unit, 1.0])
    return float(x / w), float(y / w)


class Field:
    """The part of a photo that holds all that is asked for, turned to sRGB once."""

    def __init__(self, picture: Picture, shapes: Sequence[Corners]) -> None:
        xs = [x for shape in shapes for x, _ in shape]
        ys = [y for shape in shapes for _, y in shape]
        width, height = picture.size
        self._left, self._top = max(0, int(min(xs)) - 1), max(0, int(min(ys)) - 1)
        right, bottom = min(width, int(max(xs)) + 2), min(height, int(max(ys)) + 2)
        box = (self._left, self._top, right, bottom)
        self._codes, self._recorded, self.notes = picture.codes(box)

    def region(self, corners: Corners, what: str) -> Region:
        """Read the light within four corners; PhotoError where too few pixels lie in them."""
        places, unit = self._inside(corners)
        if len(unit) < LEAST_PIXELS:
            raise PhotoError(
                tr(
                    "{what} is too small in the photo: {count} pixels, {least} are the least. Go "
                    "nearer.",
                    what=f"{what[:1].upper()}{what[1:]}",
                    count=len(unit),
                    least=LEAST_PIXELS,
                )
            )
        codes, recorded = self._codes[places], self._recorded[places]
        clipped = _clipped(codes)
        if recorded.shape == codes.shape:  # CMYK is clipped nowhere that could be seen
            clipped |= _clipped(recorded)
        light = _LINEAR[codes]
        luminance = light @ np.array(LUMINANCE)
        blocks = _blocks(light, unit)
        shine = blocks @ np.array(LUMINANCE)
        middle = max(float(np.median(luminance)), 1e-6)
        return Region(
            light=_trimmed(light),
            error=np.asarray(blocks.std(axis=0, ddof=1) / BLOCKS),
            pixels=len(unit),
            clipped=float(clipped.mean()),
            glare=float(np.percentile(luminance, 95)) / middle - 1,
            uneven=float(shine.max() / max(float(shine.min()), 1e-6)) - 1,
        )

    def _inside(self, corners: Corners) -> tuple[tuple[NDArray[np.intp], ...], Values]:
        """Give the places of the pixels within corners, and where in the unit square they lie."""
        moved = np.array(corners) - (self._left, self._top)
        low = np.maximum(np.floor(moved.min(axis=0)).astype(int), 0)
        high = np.minimum(np.ceil(moved.max(axis=0)).astype(int), self._codes.shape[1::-1])
        area = max(1.0, float(np.prod(np.maximum(high - low, 1))))
        step = max(1, math.ceil((area / MOST_PIXELS) ** 0.5))
        x, y = np.meshgrid(np.arange(low[0], high[0], step), np.arange(low[1], high[1], step))
        first, second, third, fourth = ((float(a), float(b)) for a, b in moved)
        back = np.linalg.inv(perspective((first, second, third, fourth)))
        seen = np.column_stack([x.ravel() + 0.5, y.ravel() + 0.5, np.ones(x.size)]) @ back.T
        unit = seen[:, :2] / seen[:, 2:]
        inside = np.all((unit > 0) & (unit < 1), axis=1)
        return (y.ravel()[inside], x.ravel()[inside]), unit[inside]


def _srgb_table() -> Values:
    code = np.arange(256) / 255
    return np.where(code <= 0.04045, code / 12.92, ((code + 0.055) / 1.055) ** 2.4)


_LINEAR: Final = _srgb_table()
"""Linear light of each code of sRGB (IEC 61966-2-1)."""


def _clipped(codes: NDArray[np.uint8]) -> NDArray[np.bool_]:
    found = np.any((codes >= BRIGHTEST_CODE) | (codes <= DARKEST_CODE), axis=1)
    return np.asarray(found, dtype=np.bool_)


def _trimmed(light: Values) -> Values:
    off = int(TRIMMED * len(light))
    ordered = np.sort(light, axis=0)[off : len(light) - off]
    return np.asarray(ordered.mean(axis=0))


def _blocks(light: Values, unit: Values) -> Values:
    """Give the mean light of each of the 4 by 4 blocks that has pixels."""
    at = np.minimum((unit * BLOCKS).astype(int), BLOCKS - 1)
    block = at[:, 1] * BLOCKS + at[:, 0]
    means = [light[block == one].mean(axis=0) for one in range(BLOCKS**2) if np.any(block == one)]
    return np.array(means)
