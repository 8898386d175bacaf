"""Tails of the t and F distributions, by the incomplete beta function.

The continued fraction is that of the NIST Digital Library of Mathematical Functions, 8.17.22;
checked by printed tables of t and by p-values of two statistics libraries.
"""

import math
from typing import Final

_SMALLEST: Final = 1e-300
_CLOSE: Final = 1e-16
_MOST_STEPS: Final = 10_000


def t_two_sided(t: float, df: float) -> float:
    """Give the chance of a t as far from 0, either way, with `df` degrees of freedom above 0."""
    return beta_share(df / 2, 0.5, df / (df + t * t))


def f_tail(f: float, df1: float, df2: float) -> float:
    """Give the chance of an F as large; 0 where it is infinite."""
    return beta_share(df2 / 2, df1 / 2, df2 / (df2 + df1 * f))


def t_quantile(df: float, inside: float = 0.95) -> float:
    """Give the t within which, either side of 0, a part `inside` of all lies; 0 < inside < 1."""
    if not (df > 0 and 0 < inside < 1):
        raise ValueError("t needs degrees of freedom above 0, and a part between 0 and 1")
    outside = 1 - inside
    low, high = 0.0, 1.0
    while t_two_sided(high, df) > outside:
        low, high = high, 2 * high
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if t_two_sided(middle, df) > outside else (low, middle)
    return (low + high) / 2


def beta_share(a: float, b: float, x: float) -> float:
    """Give the regularised incomplete beta function; a and b above 0, x from 0 to 1."""
    if not (a > 0 and b > 0 and 0 <= x <= 1):
        raise ValueError("the incomplete beta function needs a, b > 0 and x from 0 to 1")
    if x in (0.0, 1.0):
        return x
    if x > (a + 1) / (a + b + 2):  # the fraction is quick on the near side only
        return 1 - beta_share(b, a, 1 - x)
    front = a * math.log(x) + b * math.log1p(-x) - math.log(a)
    front += math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b)
    return math.exp(front) * _fraction(a, b, x)


def _fraction(a: float, b: float, x: float) -> float:
    """Give 1 / (1 + d1 / (1 + d2 / (1 + ...))), from its front, by the way of Lentz."""
    above, below, whole = 1.0, 0.0, 1.0
    for step in range(1, _MOST_STEPS):
        part = _part(a, b, x, step)
        below = 1 / _away(1 + part * below)
        above = _away(1 + part / above)
        whole *= above * below
        if abs(above * below - 1) < _CLOSE:
            break
    return 1 / whole


def _part(a: float, b: float, x: float, step: int) -> float:
    half = step // 2
    if step % 2:
        return -(a + half) * (a + b + half) * x / ((a + 2 * half) * (a + 2 * half + 1))
    return half * (b - half) * x / ((a + 2 * half - 1) * (a + 2 * half))


def _away(value: float) -> float:
    return value if abs(value) > _SMALLEST else _SMALLEST
