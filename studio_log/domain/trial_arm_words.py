"""What arms say against their control, in sentences: the answer first, then arm by arm."""

from collections.abc import Sequence
from typing import Final

from studio_log.domain.trial_arms import ArmsHeld
from studio_log.domain.trial_words import CAREFUL_BATCHES, between, chance, figure
from studio_log.domain.trials import Trial
from studio_log.language.words import tr
from studio_log.science.statistics_control import Held

PAIR: Final = 1


def arms_answer(trial: Trial, found: ArmsHeld) -> str:
    """Say in one sentence which arms differ from the control, or that none does clearly."""
    control = trial.arm(found.held.control).words
    if not found.scattered:
        return tr("Pieces of an arm do not differ at all: there is no scatter to judge the arms "
                  "by. Look at the readings.")  # fmt: skip
    if not found.clear:
        most = max(
            max(abs(one.difference.low), abs(one.difference.high)) for one in found.held.arms
        )
        return tr("No clear difference: no arm is told from the control, {control}, beyond chance. "
                  "A difference of up to {most} may still be hidden in the scatter.",
                  control=control, most=figure(most))  # fmt: skip
    return " ".join(_clear_words(trial, found, control))


def _clear_words(trial: Trial, found: ArmsHeld, control: str) -> list[str]:
    higher = _named(trial, [one for one in found.clear if one.difference.value > 0])
    lower = _named(trial, [one for one in found.clear if one.difference.value < 0])
    said = []
    if higher:
        said.append(tr("Clearly higher than the control, {control}: {arms}.",
                       control=control, arms=higher))  # fmt: skip
    if lower and higher:
        said.append(tr("Clearly lower: {arms}.", arms=lower))
    elif lower:
        said.append(tr("Clearly lower than the control, {control}: {arms}.",
                       control=control, arms=lower))  # fmt: skip
    if found.unclear:
        said.append(tr("No clear difference: {arms}.", arms=_named(trial, found.unclear)))
    return said


def arms_words(
    trial: Trial, found: ArmsHeld, two_u: float | None = None, *, each: bool = True
) -> list[str]:
    """Say each arm's difference with its interval, how it was judged, and what is in doubt.

    Without `each` the differences stay in the table: a fit in age says more of them.
    """
    if not found.scattered:
        return []
    said = [_arm(trial, one) for one in found.held.arms] if each else []
    return [*said, _judged(found), *_doubts(trial, found, two_u)]


def _arm(trial: Trial, one: Held) -> str:
    known = {
        "arm": trial.arm(one.arm).words, "size": figure(abs(one.difference.value)),
        "interval": between(one.difference), "p": chance(one.p),
    }  # fmt: skip
    if not one.clear:
        return tr("{arm}: no clear difference ({value}; 95 % interval {interval}, p {p}).",
                  value=figure(one.difference.value), **known)  # fmt: skip
    if one.difference.value > 0:
        return tr("{arm}: higher by {size} (95 % interval {interval}, p {p}).", **known)
    return tr("{arm}: lower by {size} (95 % interval {interval}, p {p}).", **known)


def _judged(found: ArmsHeld) -> str:
    held = found.held
    known = {"count": len(held.arms), "df": held.df, "batches": found.blocks}
    if found.by == "batches" and len(held.arms) > PAIR:
        return tr("The intervals hold for all {count} arms together (Dunnett; each arm once in "
                  "each of {batches} batches, {df} degrees of freedom).", **known)  # fmt: skip
    if found.by == "batches":
        return tr("The interval is that of a t test, the arm once in each of {batches} batches "
                  "({df} degrees of freedom).", **known)  # fmt: skip
    if len(held.arms) > PAIR:
        return tr("The intervals hold for all {count} arms together (Dunnett; from single pieces, "
                  "{df} degrees of freedom).", **known)  # fmt: skip
    return tr("The interval is that of a t test from single pieces ({df} degrees of freedom).",
              **known)  # fmt: skip


def _doubts(trial: Trial, found: ArmsHeld, two_u: float | None) -> list[str]:
    said = []
    if found.by == "pieces":
        said.append(tr("All pieces are of one batch: how much another batch would differ is not in "
                       "the interval."))  # fmt: skip
    elif found.blocks < CAREFUL_BATCHES:
        said.append(tr("Two batches say little of how batches differ: the interval is wide for "
                       "that."))  # fmt: skip
    if found.left_out:
        blocks = ", ".join(trial.block_words(one) for one in found.left_out)
        said.append(tr("Left out of this, as some arm has no reading there: {blocks}.",
                       blocks=blocks))  # fmt: skip
    small = [one for one in found.clear if two_u is not None and abs(one.difference.value) <= two_u]
    if small and two_u is not None:
        said.append(tr("No more than the 2u of one piece, {two_u}, though clear over many: {arms}.",
                       two_u=figure(two_u), arms=_named(trial, small)))  # fmt: skip
    return said


def _named(trial: Trial, some: Sequence[Held]) -> str:
    return ", ".join(trial.arm(one.arm).words for one in some)
