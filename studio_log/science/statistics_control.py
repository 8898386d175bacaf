"""Several arms held against one control, by intervals that hold for all of them together.

Dunnett, J. Am. Statist. Assoc. 50, 1096-1121 (1955) and Biometrics 20, 482-491 (1964), from memory:
differences from one control lean on the same mean, so their t are tied by what that mean adds. The
chance that all lie within a limit is one sum over the control's part and one over the scatter's;
both are even or smooth and die away, so the trapezoidal rule is exact to its last figures.
"""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Final

from studio_log.science.statistics_line import Interval
from studio_log.science.statistics_tails import t_quantile

INSIDE: Final = 0.95
_STEP: Final = 0.2
_FAR: Final = 8.4
"""Standard deviations beyond which nothing counts."""
_FINE: Final = 0.3
"""Steps of the scatter, in its standard deviations."""
_LOST: Final = 26.0
"""Logarithm by which a weight has to fall to be left out."""
_CLOSE: Final = 1e-7


@dataclass(frozen=True)
class Held:
    """One arm against the control: how much higher it lies, with its interval, and its chance."""

    arm: int
    difference: Interval
    p: float
    """That some arm would lie so far off if none differed."""

    @property
    def clear(self) -> bool:
        """Whether the interval leaves out 0."""
        return not self.difference.low <= 0 <= self.difference.high


@dataclass(frozen=True)
class HeldArms:
    """All arms against the control, in the unit of the values; numbers of arms are the caller's."""

    control: int
    control_mean: float
    arms: tuple[Held, ...]
    sd: float
    """Of what is left once arms, and blocks where there are any, are taken off."""
    df: int
    limit: float
    """How many standard errors wide the intervals are, either side."""


def held_by_pieces(groups: Mapping[int, Sequence[float]], control: int) -> HeldArms | None:
    """Hold groups of single values against the group `control`, by their pooled scatter.

    None with fewer than two groups, an empty one, or nothing left to tell the scatter by.
    """
    df = sum(len(some) for some in groups.values()) - len(groups)
    if len(groups) < 2 or df < 1 or not all(groups.values()):
        return None
    means = {arm: fmean(some) for arm, some in groups.items()}
    squares = math.fsum((one - means[arm]) ** 2 for arm, some in groups.items() for one in some)
    counts = {arm: float(len(some)) for arm, some in groups.items()}
    return _held(means, counts, control, squares, df)


def held_by_blocks(table: Mapping[int, Sequence[float]], control: int) -> HeldArms | None:
    """Hold rows of a table, one value for each block, against the row `control`.

    None with fewer than two rows or two blocks, or where a row lacks one.
    """
    blocks = len(next(iter(table.values()), ()))
    if len(table) < 2 or blocks < 2 or any(len(row) != blocks for row in table.values()):
        return None
    means = {arm: fmean(row) for arm, row in table.items()}
    mean = fmean(means.values())
    by_block = [fmean(row[place] for row in table.values()) for place in range(blocks)]
    squares = math.fsum(
        (row[place] - means[arm] - by_block[place] + mean) ** 2
        for arm, row in table.items()
        for place in range(blocks)
    )
    df = (len(table) - 1) * (blocks - 1)
    return _held(means, dict.fromkeys(table, float(blocks)), control, squares, df)


def _held(
    means: Mapping[int, float], counts: Mapping[int, float], control: int, squares: float, df: int
) -> HeldArms:
    dust = 1e-20 * max(1.0, *map(abs, means.values())) ** 2
    sd = math.sqrt((squares if squares > dust else 0.0) / df)
    arms = [arm for arm in means if arm != control]
    shares = [counts[arm] / (counts[arm] + counts[control]) for arm in arms]
    limit = limit_of(df, shares)
    found = []
    for arm in arms:
        value = means[arm] - means[control]
        error = sd * math.sqrt(1 / counts[arm] + 1 / counts[control])
        wide = limit * error
        if error > 0:
            p = max(0.0, 1 - chance_within(abs(value) / error, df, shares))
        else:
            p = 1.0 if value == 0 else 0.0
        found.append(Held(arm, Interval(value, value - wide, value + wide), p))
    return HeldArms(control, means[control], tuple(found), sd, df, limit)


def limit_of(df: float, shares: Sequence[float], inside: float = INSIDE) -> float:
    """Give how many standard errors wide intervals have to be, so that all hold `inside` of times.

    `shares` are n / (n + n of the control) of each arm, the correlations of equal arms.
    """
    low, high = t_quantile(df, inside), t_quantile(df, 1 - (1 - inside) / len(shares))
    if len(shares) == 1:
        return low
    high *= 1 + 1e-9
    while high - low > _CLOSE:
        middle = (low + high) / 2
        low, high = (middle, high) if chance_within(middle, df, shares) < inside else (low, middle)
    return (low + high) / 2


def chance_within(limit: float, df: float, shares: Sequence[float]) -> float:
    """Give the chance that every arm lies within so many standard errors of the control."""
    kinds = Counter(shares)
    whole, weights = 0.0, 0.0
    for spread, weight in _scatter(df):
        whole += weight * _within(limit * spread, kinds)
        weights += weight
    return min(1.0, whole / weights)


def _within(width: float, kinds: Mapping[float, int]) -> float:
    """Give the chance where the scatter is known: over where the control's own mean may lie."""
    ways = [(math.sqrt(share / (1 - share)), math.sqrt(1 - share), many)
            for share, many in kinds.items()]  # fmt: skip
    whole = 0.0
    for place in range(round(_FAR / _STEP) + 1):
        at = place * _STEP
        part = math.exp(-at * at / 2) * (1.0 if place else 0.5)
        for lean, rest, many in ways:
            middle, half = lean * at, width / rest
            part *= (0.5 * (math.erf((middle + half) / _ROOT2)
                            - math.erf((middle - half) / _ROOT2))) ** many  # fmt: skip
        whole += part
    return whole * 2 * _STEP / math.sqrt(2 * math.pi)


def _scatter(df: float) -> list[tuple[float, float]]:
    """Give places of the estimated scatter, in its true size, and their weights.

    The density of chi over the root of df, by the logarithm of the scatter, in which it has no end.
    """
    step = _FINE / math.sqrt(2 * df)

    def log_weight(at: float) -> float:
        return df * at - df / 2 * math.expm1(2 * at)

    found = []
    for way in (1, -1):
        place = 0 if way > 0 else 1
        while (log := log_weight(way * place * step)) > -_LOST:
            found.append((math.exp(way * place * step), math.exp(log)))
            place += 1
    return found


_ROOT2: Final = math.sqrt(2)
