"""A straight line by least squares, with its intervals and the test whether a line will do.

Textbook formulas: Draper and Smith, Applied Regression Analysis, chapters 1 and 2 (from memory),
checked by the certified values of NIST StRD Norris and by two statistics libraries. Sums are
taken about the means, so that no figures are lost.
"""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean

from studio_log.science.statistics_tails import f_tail, t_quantile, t_two_sided


@dataclass(frozen=True)
class Interval:
    """A value with the ends of its interval, 95 % unless said otherwise."""

    value: float
    low: float
    high: float


@dataclass(frozen=True)
class Line:
    """y = intercept + slope x, of `count` points; errors are standard errors in the units of y."""

    count: int
    intercept: float
    slope: float
    se_intercept: float
    se_slope: float
    residual_sd: float
    r2: float | None
    """None where all y are the same."""
    p_slope: float | None
    """None where the points lie on the line to the last figure."""
    mean_x: float
    spread_x: float
    """Sum of squares of x about its mean."""

    @property
    def df(self) -> int:
        """Degrees of freedom of the residuals."""
        return self.count - 2

    def at(self, x: float) -> float:
        """Give y on the line."""
        return self.intercept + self.slope * x

    def slope_interval(self) -> Interval:
        """Give the slope with its 95 % interval, as if all points stood apart."""
        wide = t_quantile(self.df) * self.se_slope
        return Interval(self.slope, self.slope - wide, self.slope + wide)

    def mean_interval(self, x: float) -> Interval:
        """Give the mean at x with its 95 % interval."""
        return self._about(x, 0)

    def prediction_interval(self, x: float) -> Interval:
        """Give where one new point at x falls, 95 of 100 times."""
        return self._about(x, 1)

    def _about(self, x: float, new: int) -> Interval:
        share = new + 1 / self.count + (x - self.mean_x) ** 2 / self.spread_x
        wide = t_quantile(self.df) * self.residual_sd * math.sqrt(share)
        value = self.at(x)
        return Interval(value, value - wide, value + wide)


@dataclass(frozen=True)
class LackOfFit:
    """Whether the means at each x lie further off the line than repeats lie apart."""

    f: float
    df1: int
    df2: int
    p: float


def fit_line(x: Sequence[float], y: Sequence[float]) -> Line:
    """Fit a line; ValueError for fewer than three points, or where all x are the same."""
    count = len(x)
    if count < 3 or count != len(y):
        raise ValueError("a line with an interval needs three points or more")
    mean_x, mean_y = fmean(x), fmean(y)
    spread_x = math.fsum((one - mean_x) ** 2 for one in x)
    if spread_x <= 0:
        raise ValueError("all points stand at one place: no line goes through them")
    spread_y = math.fsum((one - mean_y) ** 2 for one in y) if max(y) > min(y) else 0.0
    slope = slope_of(x, y)
    intercept = mean_y - slope * mean_x
    left = math.fsum((b - mean_y - slope * (a - mean_x)) ** 2 for a, b in zip(x, y, strict=True))
    sd = math.sqrt(left / (count - 2))
    se_slope = sd / math.sqrt(spread_x)
    return Line(
        count=count,
        intercept=intercept,
        slope=slope,
        se_intercept=sd * math.sqrt(1 / count + mean_x**2 / spread_x),
        se_slope=se_slope,
        residual_sd=sd,
        r2=1 - left / spread_y if spread_y > 0 else None,
        p_slope=t_two_sided(slope / se_slope, count - 2) if se_slope > 0 else None,
        mean_x=mean_x,
        spread_x=spread_x,
    )


def slope_of(x: Sequence[float], y: Sequence[float]) -> float:
    """Give the slope of the line alone, 0 where all y are the same; two x have to differ."""
    if max(y) == min(y):
        return 0.0  # else the last binary place of the mean would make one
    mean_x, mean_y = fmean(x), fmean(y)
    both = math.fsum((a - mean_x) * (b - mean_y) for a, b in zip(x, y, strict=True))
    return both / math.fsum((a - mean_x) ** 2 for a in x)


def lack_of_fit(x: Sequence[float], y: Sequence[float], line: Line) -> LackOfFit | None:
    """Test a line against the repeats at each x; None where there are none, or only two x.

    Where all repeats are equal while their means leave the line, F is infinite and p is 0.
    """
    groups: dict[float, list[float]] = defaultdict(list)
    for a, b in zip(x, y, strict=True):
        groups[a].append(b)
    df1, df2 = len(groups) - 2, len(x) - len(groups)
    if df1 < 1 or df2 < 1:
        return None
    means = {place: fmean(some) for place, some in groups.items()}
    pure = math.fsum((b - means[a]) ** 2 for a, b in zip(x, y, strict=True))
    off = math.fsum(len(some) * (means[p] - line.at(p)) ** 2 for p, some in groups.items())
    dust = 1e-20 * max(1.0, *map(abs, y)) ** 2
    if pure <= dust:
        return None if off <= dust else LackOfFit(math.inf, df1, df2, 0.0)
    f = (off / df1) / (pure / df2)
    return LackOfFit(f, df1, df2, f_tail(f, df1, df2))


def mean_interval(values: Sequence[float]) -> Interval:
    """Give the mean of two values or more with its 95 % interval, by t."""
    count = len(values)
    if count < 2:
        raise ValueError("an interval needs two values or more")
    mean = fmean(values)
    square = math.fsum((one - mean) ** 2 for one in values) / (count - 1)
    wide = t_quantile(count - 1) * math.sqrt(square / count)
    return Interval(mean, mean - wide, mean + wide)
