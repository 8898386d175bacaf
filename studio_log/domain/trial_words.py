"""What a trial's fit says, in sentences: the answer first, then what speaks for and against it."""

from collections.abc import Mapping, Sequence
from typing import Final

from studio_log.domain.trial_fit import TrialFit
from studio_log.language.region import region
from studio_log.language.words import tr
from studio_log.science.statistics_blocks import BlockTest
from studio_log.science.statistics_line import Interval

CAREFUL_BATCHES: Final = 3
"""Fewer slopes make an interval that is mostly guess."""
CLEAR_BELOW_P: Final = 0.05
LEAST_P: Final = 0.001
"""Below it a chance is only said to be smaller."""
TOLD: Final = 10
"""Lines or tags that are named at the most."""


def trial_words(
    fit: TrialFit, left_out: Sequence[int] = (), *, tags: Mapping[int, str] | None = None
) -> list[str]:
    """Give the sentences of a fit; `left_out` are lines of its file with an empty cell.

    `tags` name the pieces of a trial in the log by the numbers that stand for lines.
    """
    said = [_answer(fit), *_doubts(fit), _line(fit), *_curve(fit), _robust(fit, tags)]
    return [one for one in (*said, _control(fit), _left_out(left_out)) if one]


def photo_words(fit: TrialFit, two_u: float) -> str:
    """Say whether a colour that is known to 2u shows the change over the ages by itself."""
    change = abs(fit.change)
    known = {
        "first": figure(fit.ages[0]), "last": figure(fit.ages[-1]), "change": figure(change),
        "two_u": figure(two_u),
    }  # fmt: skip
    if change > two_u:
        return tr("From {first} to {last} d depth changes by {change}, more than the 2u of one "
                  "swatch, {two_u}: single swatches can show it.", **known)  # fmt: skip
    return tr("From {first} to {last} d depth changes by {change}, no more than the 2u of one "
              "swatch, {two_u}: single swatches cannot show it, only many of them in one photo.",
              **known)  # fmt: skip


def block_words(test: BlockTest, *, pairs: bool = True) -> list[str]:
    """Say whether the arms differ, batch by batch; without `pairs` not by how much two have to.

    That holds for two arms that were chosen before, not for each against one control.
    """
    known = {"f": figure(test.f_arms), "df1": test.arms_df, "df2": test.rest_df,
             "p": chance(test.p_arms), "least": figure(test.least_difference)}  # fmt: skip
    differ = test.p_arms < CLEAR_BELOW_P
    if not pairs:
        found = [
            tr("Arms differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p}).",
               **known)
            if differ
            else tr("Arms do not differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, "
                    "p {p}).", **known)
        ]  # fmt: skip
    elif differ:
        found = [tr("Arms differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, p {p});"
                    " two means lie apart where they differ by more than {least}.",
                    **known)]  # fmt: skip
    else:
        found = [tr("Arms do not differ beyond chance (randomised blocks, F({df1}, {df2}) = {f}, "
                    "p {p}); two means would have to differ by more than {least}.",
                    **known)]  # fmt: skip
    if test.p_blocks < CLEAR_BELOW_P:
        found.append(tr("The batches differ (p {p}): it was right to keep them apart.",
                        p=chance(test.p_blocks)))  # fmt: skip
    return found


def figure(value: float, digits: int = 3) -> str:
    """Write a figure with so many that count, as the place does."""
    return f"{value:.{digits}g}".replace(".", region().decimal)


def _answer(fit: TrialFit) -> str:
    by = (
        tr("the slopes of {count} batches", count=len(fit.batch_slopes))
        if fit.slope_by == "batches"
        else tr("{count} swatches as if each stood apart", count=fit.line.count)
    )
    known = {"size": figure(abs(fit.slope.value)), "slope": figure(fit.slope.value),
             "interval": between(fit.slope), "by": by}  # fmt: skip
    if fit.clear and fit.slope.value > 0:
        return tr("Depth rises by {size} for each tenfold of age (95 % interval {interval}, from "
                  "{by}).", **known)  # fmt: skip
    if fit.clear:
        return tr("Depth falls by {size} for each tenfold of age (95 % interval {interval}, from "
                  "{by}).", **known)  # fmt: skip
    most = max(abs(fit.slope.low), abs(fit.slope.high))
    hidden = tr(" A change of up to {most} may still be hidden in the scatter.", most=figure(most))
    said = tr("No clear effect: for each tenfold of age depth changes by {slope} (95 % interval "
              "{interval}, from {by}), and no change at all is among what fits.",
              **known)  # fmt: skip
    return said + (hidden if most else "")


def _doubts(fit: TrialFit) -> list[str]:
    """Say what the interval does not know of."""
    if fit.confounded:
        return [tr("Each batch has one age only: a difference of the batches looks the same as one "
                   "of the ages. Dye every age from every batch.")]  # fmt: skip
    if fit.slope_by == "swatches" and len(fit.batches) == 1:
        return [tr("All swatches are of one batch: how much another batch would differ is not in "
                   "the interval.")]  # fmt: skip
    if fit.slope_by == "swatches":
        return [tr("No batches are named: how much another batch would differ is not in the "
                   "interval.")]  # fmt: skip
    if len(fit.batch_slopes) < CAREFUL_BATCHES:
        return [tr("Two batches say little of how batches differ: the interval is wide for that.")]
    return []


def _line(fit: TrialFit) -> str:
    line = fit.line
    explained = "" if line.r2 is None else f", R² {figure(line.r2)}"
    base = tr("Line: depth = {intercept} + {slope} log10(age in days){explained}.",
              intercept=figure(line.intercept, 4), slope=figure(line.slope, 4),
              explained=explained)  # fmt: skip
    if fit.lack is None:
        why = (
            tr("two ages only") if len(fit.ages) < 3
            else tr("no swatches repeat an age, or all agree")
        )  # fmt: skip
        return f"{base} " + tr("Whether a line fits cannot be tested: {why}.", why=why)
    p = chance(fit.lack.p)
    if fit.bent:
        return f"{base} " + tr("It does not fit (lack of fit p {p}).", p=p)
    return f"{base} " + tr("It fits (lack of fit p {p}).", p=p)


def _curve(fit: TrialFit) -> list[str]:
    said = []
    if fit.saturating is not None:
        curve = fit.saturating
        said.append(
            tr("A curve with a level: from {start} by {rise} to {level}; 90 % of it after {days}.",
               start=figure(curve.start, 4), rise=figure(curve.rise),
               level=figure(curve.start + curve.rise, 4), days=_days(fit, curve.reached()))
        )  # fmt: skip
    if fit.rising is not None:
        steps = ", ".join(
            tr("{depth} at {age} d", depth=figure(depth, 4), age=figure(age))
            for age, depth in zip(fit.rising.ages, fit.rising.depths, strict=True)
        )
        reached = fit.rising.reached_d
        when = (
            tr("; 90 % of the way after {days}", days=_days(fit, reached))
            if reached is not None
            else ""
        )
        said.append(
            tr("The nearest curve that is only falling: {steps}{when}.", steps=steps, when=when)
            if fit.line.slope < 0
            else tr("The nearest curve that is only rising: {steps}{when}.", steps=steps, when=when)
        )
    return said


def _days(fit: TrialFit, age: float) -> str:
    if age > fit.ages[-1]:
        return tr("{age} d, beyond the oldest swatch: extrapolated", age=figure(age))
    return f"{figure(age)} d"


def _robust(fit: TrialFit, tags: Mapping[int, str] | None) -> str:
    slope = fit.robust.slope
    base = tr("Robust check: slope {slope} ({interval})",
              slope=figure(slope.value), interval=between(slope))  # fmt: skip
    if fit.robust_agrees:
        return tr("{base}, which agrees.", base=base)
    said = tr("{base}, which differs by more than a standard error.", base=base)
    if not fit.wild:
        return said
    if tags is not None:
        return f"{said} " + tr("Look at tag {tags}.", tags=_listed([tags[one] for one in fit.wild]))
    return f"{said} " + tr("Look at line {lines} of the file.", lines=_listed(fit.wild))


def _control(fit: TrialFit) -> str:
    if not fit.control:
        return ""
    mean = figure(sum(fit.control) / len(fit.control), 4)
    if len(fit.control) == 1:
        return tr("Control of age 0, not in the fit: 1 swatch, mean depth {mean}.", mean=mean)
    return tr("Control of age 0, not in the fit: {count} swatches, mean depth {mean}.",
              count=len(fit.control), mean=mean)  # fmt: skip


def _left_out(lines: Sequence[int]) -> str:
    return tr("Left out, with an empty cell: line {lines}.", lines=_listed(lines)) if lines else ""


def _listed(known: Sequence[object]) -> str:
    told = ", ".join(map(str, known[:TOLD]))
    return tr("{told} and more", told=told) if len(known) > TOLD else told


def chance(p: float) -> str:
    """Say a chance behind its letter: "= 0.039", "< 0.001"."""
    return f"= {figure(p)}" if p >= LEAST_P else f"< {figure(LEAST_P)}"


def between(interval: Interval) -> str:
    """Say the ends of an interval."""
    return tr("{low} to {high}", low=figure(interval.low), high=figure(interval.high))
