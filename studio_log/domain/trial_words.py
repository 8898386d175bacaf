"""What a trial's fit says, in sentences: the answer first, then what speaks for and against it."""

from collections.abc import Sequence

from studio_log.domain.trial_fit import TrialFit
from studio_log.science.statistics_line import Interval

CAREFUL_BATCHES = 3
"""Fewer slopes make an interval that is mostly guess."""


def trial_words(fit: TrialFit, left_out: Sequence[int] = ()) -> list[str]:
    """Give the sentences of a fit; `left_out` are lines of its file with an empty cell."""
    said = [_answer(fit), *_doubts(fit), _line(fit), *_curve(fit), _robust(fit)]
    return [one for one in (*said, _control(fit), _left_out(left_out)) if one]


def photo_words(fit: TrialFit, two_u: float) -> str:
    """Say whether a colour that is known to 2u shows the change over the ages by itself."""
    change = abs(fit.change)
    base = f"From {fit.ages[0]:g} to {fit.ages[-1]:g} d depth changes by {change:.3g}"
    if change > two_u:
        return f"{base}, more than the 2u of one swatch, {two_u:g}: single swatches can show it."
    return (
        f"{base}, no more than the 2u of one swatch, {two_u:g}: single swatches cannot show it, "
        "only many of them in one photo."
    )


def _answer(fit: TrialFit) -> str:
    by = f"the slopes of {len(fit.batch_slopes)} batches"
    by = by if fit.slope_by == "batches" else f"{fit.line.count} swatches as if each stood apart"
    interval = f"95 % interval {_between(fit.slope)}, from {by}"
    if fit.clear:
        way = "rises" if fit.slope.value > 0 else "falls"
        return f"Depth {way} by {abs(fit.slope.value):.3g} for each tenfold of age ({interval})."
    most = max(abs(fit.slope.low), abs(fit.slope.high))
    hidden = f" A change of up to {most:.3g} may still be hidden in the scatter." if most else ""
    return (
        f"No clear effect: for each tenfold of age depth changes by {fit.slope.value:.3g} "
        f"({interval}), and no change at all is among what fits.{hidden}"
    )


def _doubts(fit: TrialFit) -> list[str]:
    """Say what the interval does not know of."""
    if fit.confounded:
        same = "a difference of the batches looks the same as one of the ages"
        return [f"Each batch has one age only: {same}. Dye every age from every batch."]
    if fit.slope_by == "swatches":
        one = "All swatches are of one batch" if len(fit.batches) == 1 else "No batches are named"
        return [f"{one}: how much another batch would differ is not in the interval."]
    if len(fit.batch_slopes) < CAREFUL_BATCHES:
        return ["Two batches say little of how batches differ: the interval is wide for that."]
    return []


def _line(fit: TrialFit) -> str:
    line = fit.line
    explained = "" if line.r2 is None else f", R² {line.r2:.3f}"
    base = f"Line: depth = {line.intercept:.4g} + {line.slope:.4g} log10(age in days){explained}."
    if fit.lack is None:
        why = "two ages only" if len(fit.ages) < 3 else "no swatches repeat an age, or all agree"
        return f"{base} Whether a line fits cannot be tested: {why}."
    found = f"lack of fit p = {fit.lack.p:.3g}"
    return f"{base} It does not fit ({found})." if fit.bent else f"{base} It fits ({found})."


def _curve(fit: TrialFit) -> list[str]:
    said = []
    if fit.saturating is not None:
        curve = fit.saturating
        said.append(
            f"A curve with a level: from {curve.start:.4g} by {curve.rise:.3g} to "
            f"{curve.start + curve.rise:.4g}; 90 % of it after {_days(fit, curve.reached())}."
        )
    if fit.rising is not None:
        way = "falling" if fit.line.slope < 0 else "rising"
        steps = ", ".join(
            f"{depth:.4g} at {age:g} d"
            for age, depth in zip(fit.rising.ages, fit.rising.depths, strict=True)
        )
        reached = fit.rising.reached_d
        when = f"; 90 % of the way after {_days(fit, reached)}" if reached is not None else ""
        said.append(f"The nearest curve that is only {way}: {steps}{when}.")
    return said


def _days(fit: TrialFit, age: float) -> str:
    beyond = ", beyond the oldest swatch: extrapolated" if age > fit.ages[-1] else ""
    return f"{age:.3g} d{beyond}"


def _robust(fit: TrialFit) -> str:
    slope = fit.robust.slope
    base = f"Robust check: slope {slope.value:.3g} ({_between(slope)})"
    if fit.robust_agrees:
        return f"{base}, which agrees."
    lines = ", ".join(map(str, fit.wild[:10])) + (" and more" if len(fit.wild) > 10 else "")
    look = f" Look at line {lines} of the file." if fit.wild else ""
    return f"{base}, which differs by more than a standard error.{look}"


def _control(fit: TrialFit) -> str:
    if not fit.control:
        return ""
    mean = sum(fit.control) / len(fit.control)
    many = "1 swatch" if len(fit.control) == 1 else f"{len(fit.control)} swatches"
    return f"Control of age 0, not in the fit: {many}, mean depth {mean:.4g}."


def _left_out(lines: Sequence[int]) -> str:
    if not lines:
        return ""
    told = ", ".join(map(str, lines[:10])) + (" and more" if len(lines) > 10 else "")
    return f"Left out, with an empty cell: line {told}."


def _between(interval: Interval) -> str:
    return f"{interval.low:.3g} to {interval.high:.3g}"
