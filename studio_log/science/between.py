"""Values between the points of a table, and the root of a function: what the models need."""

import math
from bisect import bisect_right
from collections.abc import Callable, Sequence


def between(points: Sequence[tuple[float, float]], x: float, *, by_ratio: bool = False) -> float:
    """Give the value at x on the straight line between the two nearest points.

    `points` rise in x. Before the first and after the last point its value holds on. With
    `by_ratio` equal steps multiply: the line is straight on a logarithmic scale of values,
    which then have to be above nought. ValueError where x is no number.
    """
    if math.isnan(x):
        raise ValueError("a place in a table has to be a number")
    at = bisect_right([one for one, _ in points], x)
    if at == 0:
        return points[0][1]
    if at == len(points):
        return points[-1][1]
    (x0, y0), (x1, y1) = points[at - 1], points[at]
    share = (x - x0) / (x1 - x0)
    return y0 * (y1 / y0) ** share if by_ratio else y0 + (y1 - y0) * share


def root(function: Callable[[float], float], low: float, high: float) -> float:
    """Give where a function that changes sign once between low and high is nought.

    Halving, to a ten-thousand-millionth of the span. ValueError where both ends have one sign.
    """
    at_low, at_high = function(low), function(high)
    if at_low == 0:
        return low
    if at_low * at_high > 0:
        raise ValueError(f"no change of sign between {low:g} and {high:g}")
    for _ in range(60):
        middle = (low + high) / 2
        if (function(middle) > 0) == (at_low > 0):
            low = middle
        else:
            high = middle
    return (low + high) / 2
