"""Checks that few wild points cannot bend: the median of slopes, order, and a rising curve.

The slope by Theil (1950) and its interval by Sen (J. Am. Stat. Assoc. 63, 1379-1389, 1968);
tau-b by Kendall; the rising curve by pooling neighbours that fall (Ayer and others, Ann. Math.
Stat. 26, 641-647, 1955). All from memory, checked by another library's values.
"""

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import NormalDist, median
from typing import Final

from studio_log.science.statistics_line import Interval

FAR_OFF: Final = 3.5
"""Robust deviations beyond which a point is looked at."""


@dataclass(frozen=True)
class RobustLine:
    """The median slope with its 95 % interval, a line through the medians, and tau-b."""

    slope: Interval
    intercept: float
    tau_b: float | None
    """-1 to 1: how well order in x tells order in y; None where all y are the same."""

    def at(self, x: float) -> float:
        """Give y on the line."""
        return self.intercept + self.slope.value * x


def robust_line(x: Sequence[float], y: Sequence[float]) -> RobustLine:
    """Give the median of the slopes of all pairs; ValueError where all x are the same.

    It takes time by the square of the number of points.
    """
    slopes = sorted(
        (y[j] - y[i]) / (x[j] - x[i])
        for i in range(len(x))
        for j in range(i + 1, len(x))
        if x[i] != x[j]
    )
    if not slopes:
        raise ValueError("all points stand at one place: no line goes through them")
    middle = median(slopes)
    wide = -NormalDist().inv_cdf(0.025) * math.sqrt(_order_variance(x, y))
    last = len(slopes) - 1
    low = slopes[max(0, round((len(slopes) - wide) / 2) - 1)]
    high = slopes[min(last, round((len(slopes) + wide) / 2))]
    tau = _tau_b(x, y)
    return RobustLine(Interval(middle, low, high), median(y) - middle * median(x), tau)


def _order_variance(x: Sequence[float], y: Sequence[float]) -> float:
    """Give the variance of Kendall's score, ties taken off."""
    ties = sum(map(_weight, [*Counter(x).values(), *Counter(y).values()]))
    return max(0.0, (_weight(len(x)) - ties) / 18)


def _weight(count: int) -> int:
    return count * (count - 1) * (2 * count + 5)


def _tau_b(x: Sequence[float], y: Sequence[float]) -> float | None:
    score = sum(
        _sign(x[j] - x[i]) * _sign(y[j] - y[i]) for i in range(len(x)) for j in range(i + 1, len(x))
    )
    free = _free_pairs(x) * _free_pairs(y)
    return score / math.sqrt(free) if free else None


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


def _free_pairs(values: Sequence[float]) -> int:
    """Count the pairs that are no ties."""
    count = len(values)
    tied = sum(many * (many - 1) // 2 for many in Counter(values).values())
    return count * (count - 1) // 2 - tied


def rising(means: Sequence[float], weights: Sequence[float]) -> list[float]:
    """Give the nearest values that never fall, in the order given; weights above 0."""
    pools: list[tuple[float, float, int]] = []  # mean, weight, how many
    for mean, weight in zip(means, weights, strict=True):
        pool = (mean, weight, 1)
        while pools and pools[-1][0] >= pool[0]:
            pool = _joined(pools.pop(), pool)
        pools.append(pool)
    return [mean for mean, _, many in pools for _ in range(many)]


def _joined(
    one: tuple[float, float, int], other: tuple[float, float, int]
) -> tuple[float, float, int]:
    weight = one[1] + other[1]
    return (one[0] * one[1] + other[0] * other[1]) / weight, weight, one[2] + other[2]


def far_off(residuals: Iterable[float], times: float = FAR_OFF) -> list[int]:
    """Give the places of residuals further from their median than so many robust deviations.

    A robust deviation is 1.4826 times the median distance from the median, which is the standard
    deviation where errors are normal. None where half of them are equal.
    """
    known = list(residuals)
    if not known:
        return []
    middle = median(known)
    scale = 1.4826 * median(abs(one - middle) for one in known)
    if scale <= 0:
        return []
    return [place for place, one in enumerate(known) if abs(one - middle) > times * scale]
