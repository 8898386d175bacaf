"""A curve that rises to a level: y = start + rise (1 - exp(-x / tau)), by least squares.

For each tau start and rise follow from a straight line, so that one number is looked for; then
Gauss and Newton bring all to their last figures. Checked by NIST StRD Misra1a (start 0).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Final

TRIED: Final = 240
"""Values of tau that are tried, evenly on a log scale."""
REACH: Final = 10.0
"""tau is looked for from the least x over this to the largest x times this."""
_MOST_STEPS: Final = 60

Columns = list[list[float]]


@dataclass(frozen=True)
class Saturating:
    """The curve, tau in the unit of x; standard errors beside, None without spare points."""

    start: float
    rise: float
    tau: float
    residual_ss: float
    se_rise: float | None
    se_rate: float | None
    """Of 1 / tau."""

    def at(self, x: float) -> float:
        """Give y on the curve."""
        return self.start - self.rise * math.expm1(-x / self.tau)

    def reached(self, part: float = 0.9) -> float:
        """Give x at which that part of the whole rise is reached."""
        return -self.tau * math.log(1 - part)


def fit_saturating(
    x: Sequence[float], y: Sequence[float], *, from_zero: bool = False
) -> Saturating | None:
    """Fit the curve; `from_zero` holds its start at 0.

    None where the points show no level within reach: where the best tau lies at either end of
    what is looked for, or there are no more points than figures to find. x is above 0.
    """
    found = 2 if from_zero else 3
    if len(set(x)) <= found - 1 or len(x) < found or min(x) <= 0:
        return None
    low, high = math.log(min(x) / REACH), math.log(max(x) * REACH)
    logs = [low + (high - low) * step / (TRIED - 1) for step in range(TRIED)]
    left = [_linear(x, y, math.exp(-one), from_zero=from_zero)[2] for one in logs]
    best = min(range(TRIED), key=left.__getitem__)
    if best in (0, TRIED - 1) or not math.isfinite(left[best]):
        return None
    rate = math.exp(-logs[best])
    start, rise, _ = _linear(x, y, rate, from_zero=from_zero)
    return _polished(x, y, [start, rise, rate], from_zero=from_zero)


def _linear(
    x: Sequence[float], y: Sequence[float], rate: float, *, from_zero: bool
) -> tuple[float, float, float]:
    """Give start, rise and the sum of squares left at a rate 1 / tau."""
    z = [-math.expm1(-rate * one) for one in x]
    mean_z, mean_y = (0.0, 0.0) if from_zero else (fmean(z), fmean(y))
    spread = math.fsum((one - mean_z) ** 2 for one in z)
    if spread < 1e-24:
        return 0.0, 0.0, math.inf
    both = math.fsum((a - mean_z) * (b - mean_y) for a, b in zip(z, y, strict=True))
    rise = both / spread
    start = mean_y - rise * mean_z
    left = math.fsum((b - start - rise * a) ** 2 for a, b in zip(z, y, strict=True))
    return start, rise, left


def _polished(
    x: Sequence[float], y: Sequence[float], figures: list[float], *, from_zero: bool
) -> Saturating | None:
    first = 1 if from_zero else 0
    for _ in range(_MOST_STEPS):
        start, rise, rate = figures
        columns = _columns(x, rise, rate)[first:]
        off = [b - start + rise * math.expm1(-rate * a) for a, b in zip(x, y, strict=True)]
        step = solve(_products(columns), [_sum(one, off) for one in columns])
        if step is None:
            return None
        moved = [0.0] * first + step
        figures = [one + by for one, by in zip(figures, moved, strict=True)]
        if not (figures[2] > 0 and all(map(math.isfinite, figures))):
            return None
        if all(abs(by) <= 1e-14 * abs(one) for one, by in zip(figures, moved, strict=True)):
            break
    return _with_errors(x, y, figures, first)


def _with_errors(
    x: Sequence[float], y: Sequence[float], figures: list[float], first: int
) -> Saturating:
    start, rise, rate = figures
    off = [b - start + rise * math.expm1(-rate * a) for a, b in zip(x, y, strict=True)]
    left = math.fsum(one * one for one in off)
    spare = len(x) - (3 - first)
    products = _products(_columns(x, rise, rate)[first:])
    errors: list[float | None] = [None, None]
    if spare > 0:
        errors = [_error(products, place, left / spare) for place in (1 - first, 2 - first)]
    return Saturating(start, rise, 1 / rate, left, errors[0], errors[1])


def _error(products: Columns, place: int, variance: float) -> float | None:
    unit = [float(place == one) for one in range(len(products))]
    column = solve(products, unit)
    return None if column is None else math.sqrt(max(0.0, variance * column[place]))


def _columns(x: Sequence[float], rise: float, rate: float) -> Columns:
    """Give how y changes with start, rise and rate at each x."""
    return [
        [1.0] * len(x),
        [-math.expm1(-rate * one) for one in x],
        [rise * one * math.exp(-rate * one) for one in x],
    ]


def _products(columns: Columns) -> Columns:
    return [[_sum(one, other) for other in columns] for one in columns]


def _sum(one: Sequence[float], other: Sequence[float]) -> float:
    return math.fsum(a * b for a, b in zip(one, other, strict=True))


def solve(matrix: Columns, right: Sequence[float]) -> list[float] | None:
    """Solve a few linear equations, scaled and pivoted; None where they have no one answer."""
    size = len(right)
    scale = [math.sqrt(matrix[one][one]) for one in range(size)]
    if not all(0 < one < math.inf for one in scale):
        return None
    rows = [
        [matrix[i][j] / scale[i] / scale[j] for j in range(size)] + [right[i] / scale[i]]
        for i in range(size)
    ]
    for at in range(size):
        pivot = max(range(at, size), key=lambda one: abs(rows[one][at]))
        rows[at], rows[pivot] = rows[pivot], rows[at]
        if abs(rows[at][at]) < 1e-14:
            return None
        for below in range(at + 1, size):
            share = rows[below][at] / rows[at][at]
            rows[below] = [a - share * b for a, b in zip(rows[below], rows[at], strict=True)]
    found = [0.0] * size
    for at in reversed(range(size)):
        known = math.fsum(rows[at][j] * found[j] for j in range(at + 1, size))
        found[at] = (rows[at][size] - known) / rows[at][at]
    return [one / by for one, by in zip(found, scale, strict=True)]
