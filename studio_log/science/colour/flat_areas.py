"""Even areas of a small picture: runs of alike pixels, joined from row to row."""

from collections import defaultdict
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from studio_log.science.colour.correction import Values

EVEN: Final = 0.035
"""Greatest step between neighbours, of codes from 0 to 1, within an area."""
LEAST: Final = 12
"""Pixels."""


@dataclass(frozen=True)
class Area:
    """An even area: its pixels, the middle of them, the box about it (left, top, width, height)."""

    pixels: int
    centre: tuple[float, float]
    box: tuple[float, float, float, float]
    at_edge: bool
    """Whether it reaches the edge of the picture."""

    @property
    def filled(self) -> float:
        """Part of its box that it fills."""
        return self.pixels / (self.box[2] * self.box[3])

    @property
    def aspect(self) -> float:
        """Width over height of its box."""
        return self.box[2] / self.box[3]


def flat_areas(codes: Values) -> list[Area]:
    """Give the even areas of a picture, height by width by 3, codes 0 to 1."""
    runs: list[tuple[int, int, int]] = []
    above: list[int] = []
    parent: list[int] = []
    for row, line in enumerate(_even(codes)):
        edges = np.flatnonzero(np.diff(np.concatenate(([0], line.astype(np.int8), [0]))))
        now = []
        for left, right in zip(edges[::2], edges[1::2], strict=True):
            mine = len(runs)
            runs.append((row, int(left), int(right)))
            parent.append(mine)
            now.append(mine)
            for other in above:
                if runs[other][1] < right and left < runs[other][2]:
                    parent[_root(parent, other)] = _root(parent, mine)
        above = now
    groups: dict[int, list[tuple[int, int, int]]] = defaultdict(list)
    for mine, run in enumerate(runs):
        groups[_root(parent, mine)].append(run)
    found = (_area(one, codes.shape[0], codes.shape[1]) for one in groups.values())
    return [one for one in found if one.pixels >= LEAST]


def _even(codes: Values) -> NDArray[np.bool_]:
    """Say of each pixel whether it is like its neighbours right and below, and left and above."""
    smooth = codes.copy()
    smooth[1:-1, 1:-1] = (
        codes[1:-1, 1:-1] * 2 + codes[:-2, 1:-1] + codes[2:, 1:-1] + codes[1:-1, :-2]
        + codes[1:-1, 2:]
    ) / 6  # fmt: skip
    across = np.abs(np.diff(smooth, axis=1)).max(axis=2) < EVEN
    down = np.abs(np.diff(smooth, axis=0)).max(axis=2) < EVEN
    even = np.ones(codes.shape[:2], dtype=np.bool_)
    even[:, 1:] &= across
    even[:, :-1] &= across
    even[1:] &= down
    even[:-1] &= down
    return even


def _root(parent: list[int], one: int) -> int:
    while parent[one] != one:
        parent[one] = parent[parent[one]]
        one = parent[one]
    return one


def _area(runs: list[tuple[int, int, int]], height: int, width: int) -> Area:
    pixels = sum(right - left for _, left, right in runs)
    x = sum((right - left) * (left + right) / 2 for _, left, right in runs) / pixels
    y = sum((right - left) * (row + 0.5) for row, left, right in runs) / pixels
    low, high = min(one[1] for one in runs), max(one[2] for one in runs)
    top, bottom = runs[0][0], runs[-1][0] + 1
    edge = low == 0 or top == 0 or high == width or bottom == height
    return Area(pixels, (x, y), (low, top, high - low, bottom - top), edge)
