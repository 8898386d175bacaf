"""The studio's own factor: what dryings really took, against what was worked out for them."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.number_text import plain
from studio_log.language.words import tr

LEAST_LOGGED: Final = 5
"""Dryings before a factor is believed."""
COUNTED_LAST: Final = 40
"""Older dryings are left out: a studio moves and seasons turn; a proposal."""
SURELY_A_SLIP: Final = 20.0
"""A drying this many times longer or shorter than worked out was not watched: left out."""
LEAST_SPREAD: Final = 1.15
"""No range is narrower than this factor either way: a proposal."""
WIDTH: Final = 2.0
"""Standard deviations, on the scale of ratios, that the range reaches to either side."""


@dataclass(frozen=True)
class Dried:
    """A drying that was logged: when it ended, what was worked out, what it took."""

    ended: datetime
    worked_out: timedelta
    took: timedelta

    @property
    def ratio(self) -> float:
        """What it took over what was worked out; nan where either is nought."""
        if self.worked_out <= timedelta(0) or self.took <= timedelta(0):
            return math.nan
        return self.took / self.worked_out


@dataclass(frozen=True)
class Factor:
    """The geometric mean of the ratios, how far the next one may be off, and how many they are.

    The next drying lies between mean / spread and mean x spread of the time worked out.
    """

    mean: float
    spread: float
    count: int

    @property
    def words(self) -> str:
        """Say it in a sentence."""
        return tr(
            "{count} dryings logged here took {mean} times what is worked out, within a factor "
            "of {spread}.",
            count=self.count,
            mean=plain(self.mean, 2),
            spread=plain(self.spread, 2),
        )


def learn(dryings: Iterable[Dried], *, since: datetime | None = None) -> Factor | None:
    """Give the factor of the latest dryings, or None where fewer than five are known.

    Only those that ended at `since` or later count: that is how it is reset. The spread is of one
    further drying: two standard deviations of the logarithms, wider while few are known.
    """
    known = sorted(
        (one for one in dryings if (since is None or one.ended >= since) and _believed(one.ratio)),
        key=lambda one: one.ended,
    )[-COUNTED_LAST:]
    if len(known) < LEAST_LOGGED:
        return None
    logs = [math.log(one.ratio) for one in known]
    count = len(logs)
    mean = math.fsum(logs) / count
    variance = math.fsum((one - mean) ** 2 for one in logs) / (count - 1)
    off = WIDTH * math.sqrt(variance * (1 + 1 / count))
    return Factor(math.exp(mean), max(math.exp(off), LEAST_SPREAD), count)


def _believed(ratio: float) -> bool:
    return 1 / SURELY_A_SLIP <= ratio <= SURELY_A_SLIP  # also false for nan
