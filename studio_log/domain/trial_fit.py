"""Did the long cure matter? A trial's swatches become a fit, its checks and an honest answer.

Depth against the logarithm of the age. Swatches of one batch are not apart from each other: so
where there are two batches or more, each gives its own slope, and the interval is that of
these slopes. A line that does not fit gives way to a curve with a level, or to one that only rises.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from statistics import fmean
from typing import Final, Literal

from studio_log.domain.errors import Refusal
from studio_log.domain.trial_file import NOTHING, Reading
from studio_log.language.words import tr
from studio_log.science.statistics_curve import Saturating, fit_saturating
from studio_log.science.statistics_line import (
    Interval,
    LackOfFit,
    Line,
    fit_line,
    lack_of_fit,
    mean_interval,
    slope_of,
)
from studio_log.science.statistics_robust import RobustLine, far_off, rising, robust_line

LEAST_SWATCHES: Final = 3
LACKS_BELOW_P: Final = 0.05
"""A line that would lack as much as this seldom does not fit."""
RISE_PART: Final = 0.9
"""Of the whole rise, when the age is named at which it is reached."""


@dataclass(frozen=True)
class Rising:
    """The curve that never falls (or never rises): ages in days, depths, and where 90 % is."""

    ages: tuple[float, ...]
    depths: tuple[float, ...]
    reached_d: float | None


@dataclass(frozen=True)
class Expected:
    """At an age: the mean and where one new swatch falls, each with its 95 % interval."""

    age_d: float
    mean: Interval
    swatch: Interval
    extrapolated: bool


@dataclass(frozen=True)
class TrialFit:
    """What a trial says. Slopes are the change of depth for each tenfold of age."""

    line: Line
    slope: Interval
    slope_by: Literal["batches", "swatches"]
    batch_slopes: dict[str, float]
    batches: tuple[str, ...]
    ages: tuple[float, ...]
    control: tuple[float, ...]
    """Depths of swatches of age 0: they have no place on a log scale."""
    lack: LackOfFit | None
    saturating: Saturating | None
    rising: Rising | None
    robust: RobustLine
    wild: tuple[int, ...]
    """Lines of the file far off, named where the robust slope differs from the fit."""
    expected: tuple[Expected, ...]

    @property
    def clear(self) -> bool:
        """Whether the interval of the slope leaves out 0."""
        return not self.slope.low <= 0 <= self.slope.high

    @property
    def change(self) -> float:
        """How much depth changes from the youngest age to the oldest, by the slope."""
        return self.slope.value * math.log10(self.ages[-1] / self.ages[0])

    @property
    def confounded(self) -> bool:
        """Whether each batch has but one age, so that batch and age cannot be told apart."""
        return len(self.batches) > 1 and not self.batch_slopes

    @property
    def bent(self) -> bool:
        """Whether the line does not fit."""
        return self.lack is not None and self.lack.p < LACKS_BELOW_P

    @property
    def robust_agrees(self) -> bool:
        """Whether the robust slope is within a standard error of the fit."""
        return abs(self.robust.slope.value - self.line.slope) <= self.line.se_slope + 1e-12


def fit_trial(readings: Sequence[Reading], at: Iterable[float] = ()) -> TrialFit:
    """Fit depth in log age; `at` are further ages in days, above 0, to say the depth of.

    A Refusal in words where there are too few swatches, or all are of one age.
    """
    control = tuple(one.depth for one in readings if one.age_d == 0)
    aged = [one for one in readings if one.age_d > 0]
    ages = tuple(sorted({one.age_d for one in aged}))
    _check(aged, ages, control)
    x, y = [math.log10(one.age_d) for one in aged], [one.depth for one in aged]
    line = fit_line(x, y)
    slopes = _batch_slopes(aged)
    by_batch = len(slopes) > 1
    lack = lack_of_fit(x, y, line)
    bent = lack is not None and lack.p < LACKS_BELOW_P
    robust = robust_line(x, y)
    fit = TrialFit(
        line=line,
        slope=mean_interval(list(slopes.values())) if by_batch else line.slope_interval(),
        slope_by="batches" if by_batch else "swatches",
        batch_slopes=slopes,
        batches=tuple(dict.fromkeys(one.batch for one in aged if one.batch)),
        ages=ages,
        control=control,
        lack=lack,
        saturating=fit_saturating([one.age_d for one in aged], y) if bent else None,
        rising=_rising(aged, ages, falls=line.slope < 0) if bent else None,
        robust=robust,
        wild=(),
        expected=tuple(_expected(line, ages, one) for one in sorted({*ages, *at})),
    )
    return fit if fit.robust_agrees else _with_wild(fit, aged)


def _check(aged: Sequence[Reading], ages: Sequence[float], control: Sequence[float]) -> None:
    beside = (
        tr(" Swatches of age 0 are a control and have no place on a log scale.") if control else ""
    )
    if len(aged) < LEAST_SWATCHES:
        raise Refusal(
            tr("{count} swatches with an age are too few for a fit: {least} are the least, 24 say "
               "something.{beside}", count=len(aged), least=LEAST_SWATCHES, beside=beside)
            + f" {tr(NOTHING)}"
        )  # fmt: skip
    if len(ages) == 1:
        raise Refusal(
            tr("All {count} swatches are of one age, {age} d: whether age matters cannot be told "
               "from them.{beside}", count=len(aged), age=f"{ages[0]:g}", beside=beside)
            + f" {tr(NOTHING)} "
            + tr("Add swatches of other ages, such as 1, 7 and 28 d.")
        )  # fmt: skip


def _batch_slopes(aged: Sequence[Reading]) -> dict[str, float]:
    """Give the slope of each named batch that has two ages or more."""
    batches: dict[str, list[Reading]] = defaultdict(list)
    for one in aged:
        if one.batch:
            batches[one.batch].append(one)
    return {
        name: slope_of([math.log10(one.age_d) for one in some], [one.depth for one in some])
        for name, some in batches.items()
        if len({one.age_d for one in some}) > 1
    }


def _rising(aged: Sequence[Reading], ages: Sequence[float], *, falls: bool) -> Rising:
    sign = -1 if falls else 1
    groups = {age: [one.depth for one in aged if one.age_d == age] for age in ages}
    means = [sign * fmean(groups[age]) for age in ages]
    found = rising(means, [len(groups[age]) for age in ages])
    return Rising(tuple(ages), tuple(sign * one for one in found), _reached(ages, found))


def _reached(ages: Sequence[float], depths: Sequence[float]) -> float | None:
    """Give the age at which 90 % of the rise between the ends is reached, None where none is."""
    if depths[-1] <= depths[0]:
        return None
    wanted = depths[0] + RISE_PART * (depths[-1] - depths[0])
    at = next(place for place, one in enumerate(depths) if one >= wanted)
    share = (wanted - depths[at - 1]) / (depths[at] - depths[at - 1])
    before, after = math.log10(ages[at - 1]), math.log10(ages[at])
    return float(10 ** (before + share * (after - before)))


def _expected(line: Line, ages: Sequence[float], age: float) -> Expected:
    x = math.log10(age)
    outside = not ages[0] <= age <= ages[-1]
    return Expected(age, line.mean_interval(x), line.prediction_interval(x), outside)


def _with_wild(fit: TrialFit, aged: Sequence[Reading]) -> TrialFit:

    off = far_off(one.depth - fit.robust.at(math.log10(one.age_d)) for one in aged)
    return replace(fit, wild=tuple(aged[place].line for place in off))
