"""A fair guess at where in a photo the 24-patch target lies, and the swatch; a person corrects it.

Even areas of about one size are sought in a small copy of the photo; those that lie a step apart
from each other are numbered as a grid, and 4 by 6 of them give the perspective. Which way round it
lies is told by the colours. Nothing here is sure: what is found is only where handles begin.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from PIL import Image

from studio_log.science.colour.correction import Values
from studio_log.science.colour.flat_areas import Area, flat_areas
from studio_log.science.colour.picture import Picture
from studio_log.science.colour.regions import Corners, Point, Rect
from studio_log.science.colour.spaces import srgb_of_xyz
from studio_log.science.colour.target import COLUMNS, ROWS, patches_xyz

SMALL: Final = 480
"""Longer side of the copy, in pixels."""
LEAST_PATCHES: Final = 14
NEAR: Final = 0.32
"""How far, in steps of the grid, a patch may lie from where it is expected."""
ALIKE: Final = 0.75
"""Least correlation with the published colours."""
SWATCH_LEAST: Final = 1 / 300
INNER: Final = 0.6
"""Part of a swatch's width and height that is taken."""

Cell = tuple[int, int]


@dataclass(frozen=True)
class Guess:
    """Where target and swatch may lie, in pixels of the photo; None where no target was seen."""

    target: Corners | None
    swatch: Rect


def guess(picture: Picture) -> Guess:
    """Look for the target and the swatch."""
    width, height = picture.size
    share = max(1.0, max(width, height) / SMALL)
    size = (max(1, round(width / share)), max(1, round(height / share)))
    small = picture.image.convert("RGB").resize(size, Image.Resampling.BOX, reducing_gap=2.0)
    codes = np.asarray(small, dtype=np.float64) / 255
    areas = flat_areas(codes)
    target = _target(codes, areas)
    swatch = _swatch(areas, target, size)
    scale = width / size[0]
    first = None if target is None else _scaled(target, scale, picture.size)
    left, top, wide, high = (one * scale for one in swatch)
    return Guess(first, (left, top, wide, high))


def _scaled(corners: Corners, scale: float, size: tuple[int, int]) -> Corners:
    def point(one: Point) -> Point:
        return min(max(one[0] * scale, 0.0), size[0]), min(max(one[1] * scale, 0.0), size[1])

    first, second, third, fourth = map(point, corners)
    return first, second, third, fourth


def _target(codes: Values, areas: Sequence[Area]) -> Corners | None:
    """Give the outer corners of the target, clockwise from dark skin."""
    patches = _patches(areas, codes.shape[0] * codes.shape[1])
    if len(patches) < LEAST_PATCHES:
        return None
    grid = _numbered([one.centre for one in patches])
    best: tuple[float, Corners] | None = None
    for across, down in ((COLUMNS, ROWS), (ROWS, COLUMNS)):
        found = _window(grid, across, down)
        if len(found) < LEAST_PATCHES:
            continue
        view = _perspective(found, across, down)
        outer = [_seen(view, one) for one in ((0, 0), (1, 0), (1, 1), (0, 1))]
        for turn in (0, 2) if across == COLUMNS else (1, 3):
            first, second, third, fourth = (*outer[turn:], *outer[:turn])
            corners = (first, second, third, fourth)
            alike = _alike(codes, corners)
            if best is None or alike > best[0]:
                best = alike, corners
    return best[1] if best is not None and best[0] >= ALIKE else None


def _patches(areas: Sequence[Area], whole: int) -> list[Area]:
    """Give the areas that may be patches: of the size that most of them have."""
    fit = [
        one
        for one in areas
        if whole / 8000 < one.pixels < whole / 40 and one.filled > 0.5 and 0.4 < one.aspect < 2.5
    ]
    groups = [
        [other for other in fit if one.pixels / 2 <= other.pixels <= one.pixels * 2] for one in fit
    ]
    return max(groups, key=len, default=[])


def _numbered(centres: Sequence[Point]) -> dict[Cell, Point]:
    """Give points their places in a grid, going from each to those a step beside it."""
    points = np.array(centres)
    apart = np.linalg.norm(points[:, np.newaxis] - points, axis=2)
    np.fill_diagonal(apart, np.inf)
    step = float(np.median(apart.min(axis=1)))
    nearest = points[apart.argmin(axis=1)] - points
    turn = np.angle(np.exp(4j * np.arctan2(nearest[:, 1], nearest[:, 0])).mean()) / 4
    right = step * np.array([np.cos(turn), np.sin(turn)])
    ways: dict[Cell, Values] = {
        (1, 0): right, (-1, 0): -right,
        (0, 1): np.array([-right[1], right[0]]), (0, -1): np.array([right[1], -right[0]]),
    }  # fmt: skip
    middle = int(np.linalg.norm(points - np.median(points, axis=0), axis=1).argmin())
    found: dict[Cell, int] = {(0, 0): middle}
    left = [(0, 0)]
    while left:
        cell = left.pop(0)
        for (x, y), way in ways.items():
            beside = cell[0] + x, cell[1] + y
            off = np.linalg.norm(points - (points[found[cell]] + way), axis=1)
            at = int(off.argmin())
            if beside not in found and off[at] < NEAR * step and at not in found.values():
                found[beside] = at
                left.append(beside)
    return {cell: (float(points[at][0]), float(points[at][1])) for cell, at in found.items()}


def _window(grid: dict[Cell, Point], across: int, down: int) -> dict[Cell, Point]:
    """Give the part of a grid, so many across and down, that holds most points; counted from 0."""
    best: dict[Cell, Point] = {}
    for left in range(min(x for x, _ in grid), max(x for x, _ in grid) + 1):
        for top in range(min(y for _, y in grid), max(y for _, y in grid) + 1):
            held = {
                (x - left, y - top): point
                for (x, y), point in grid.items()
                if left <= x < left + across and top <= y < top + down
            }
            if len(held) > len(best):
                best = held
    return best


def _perspective(cells: dict[Cell, Point], across: int, down: int) -> Values:
    """Give the 3 x 3 matrix from the unit square that fits the middles of cells best."""
    rows, right = [], []
    for (column, row), (x, y) in cells.items():
        u, v = (column + 0.5) / across, (row + 0.5) / down
        rows += [[u, v, 1, 0, 0, 0, -u * x, -v * x], [0, 0, 0, u, v, 1, -u * y, -v * y]]
        right += [x, y]
    figures, *_ = np.linalg.lstsq(np.array(rows), np.array(right), rcond=None)
    return np.append(figures, 1.0).reshape(3, 3)


def _seen(view: Values, unit: tuple[float, float]) -> Point:
    x, y, w = view @ np.array([*unit, 1.0])
    return float(x / w), float(y / w)


def _alike(codes: Values, corners: Corners) -> float:
    """Give how the colours at the middles of the patches go with the published ones, up to 1."""
    view = _perspective(
        {(0, 0): corners[0], (1, 0): corners[1], (1, 1): corners[2], (0, 1): corners[3]}, 1, 1
    )
    shift = np.array([[1, 0, 0.5], [0, 1, 0.5], [0, 0, 1]])  # corners are no middles of cells
    view = view @ shift
    height, width = codes.shape[:2]
    told, found = [], []
    for place, xyz in enumerate(patches_xyz()):
        unit = ((place % COLUMNS + 0.5) / COLUMNS, (place // COLUMNS + 0.5) / ROWS)
        x, y = _seen(view, unit)
        column, row = int(x), int(y)
        if 0 <= column < width and 0 <= row < height:
            told.append(srgb_of_xyz(xyz))
            found.append(codes[row, column])
    if len(found) < LEAST_PATCHES:
        return 0.0
    one, other = np.array(told), np.array(found)
    pairs = [np.corrcoef(one[:, at], other[:, at])[0, 1] for at in range(3)]
    whole = float(np.mean(pairs))
    return whole if np.isfinite(whole) else 0.0


def _swatch(areas: Sequence[Area], target: Corners | None, size: tuple[int, int]) -> Rect:
    """Give the inside of the largest even area that lies freely beside the target."""
    width, height = size
    taken = _bounds(target) if target is not None else (0.0, 0.0, 0.0, 0.0)
    free = [
        one
        for one in areas
        if one.pixels > SWATCH_LEAST * width * height
        and one.filled > 0.6
        and not _touches(one.box, taken)
        and not one.at_edge
    ]
    if free:
        left, top, wide, high = max(free, key=lambda one: one.pixels).box
    elif target is not None and height - taken[3] > height / 6:
        left, top, wide, high = width * 0.3, taken[3], width * 0.4, height - taken[3]
    else:
        left, top, wide, high = width * 0.35, height * 0.35, width * 0.3, height * 0.3
    inset = (1 - INNER) / 2
    return left + inset * wide, top + inset * high, INNER * wide, INNER * high


def _bounds(corners: Corners) -> tuple[float, float, float, float]:
    """Give left, top, right and bottom."""
    xs, ys = zip(*corners, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _touches(box: Rect, bounds: tuple[float, float, float, float]) -> bool:
    left, top, wide, high = box
    return (
        left < bounds[2] and bounds[0] < left + wide and top < bounds[3] and bounds[1] < top + high
    )
