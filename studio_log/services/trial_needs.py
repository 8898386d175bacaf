"""What a trial that is being planned needs, and what it can resolve, said at once."""

import math
from collections.abc import Sequence
from datetime import date
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.trial_design import lay_out, needs_of
from studio_log.domain.trial_words import figure
from studio_log.domain.trials import MEASURES, Arm, Way, control_of
from studio_log.language.calendar_words import date_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.science.statistics_control import limit_of
from studio_log.science.statistics_power import least_effect
from studio_log.services.desk import Desk
from studio_log.services.trial_acts import checked_plan
from studio_log.services.trial_keeping import local_day, trials
from studio_log.services.trial_report import spread_kept
from studio_log.services.trials import TrialNeeds, TrialNeedsFor, TrialPlan

FEW_AGES: Final = 4
FEW_BATCHES: Final = 3


def trial_needs(_house: Any, desk: Desk, question: TrialNeedsFor) -> TrialNeeds:
    """Say what a plan needs; what makes it no plan is a fault and no refusal."""
    plan = question.plan
    try:
        arms, blocks, day = checked_plan(desk, plan)
        way: Way = "backwards" if plan.way == "backwards" else "forwards"
        lay_out(arms, len(blocks), plan.replicates, way=way, seed=plan.seed or 0)
    except Refusal as refusal:
        return TrialNeeds((), fault=str(refusal))
    needs = needs_of(arms, len(blocks), plan.replicates, way=way, day=day, lead_d=plan.lead_d)
    pieces = counted(needs.pieces, tr_later("{n} piece"), tr_later("{n} pieces"))
    soyings = counted(needs.soyings, tr_later("{n} soying"), tr_later("{n} soyings"))
    baths = counted(needs.baths, tr_later("{n} dye bath"), tr_later("{n} dye baths"))
    said = [
        tr("{pieces}, {soyings}, {baths}.", pieces=pieces, soyings=soyings, baths=baths),
        tr("First beans on {first}, last dyeing on {last}.",
           first=_day(needs.first), last=_day(needs.last))
        if needs.soyings
        else tr("Dyeing on {day}.", day=_day(day)),
        resolution(desk, plan, arms),
    ]  # fmt: skip
    today = local_day(desk, desk.now)
    first = needs.first if needs.soyings else today
    return TrialNeeds(tuple(filter(None, said)), tuple(_warnings(plan, arms, first, today)))


def _day(day: date) -> str:
    return date_words(day, short=True, year=True)


def _warnings(plan: TrialPlan, arms: Sequence[Arm], first: date, today: date) -> list[str]:
    found = []
    if first < today:
        found.append(
            tr("The first beans would have had to soak on {day}: choose a later day, or leave out "
               "the oldest arm.", day=_day(first))
        )  # fmt: skip
    aged = [arm for arm in arms if arm.age_d]
    if 0 < len(aged) < FEW_AGES:
        found.append(tr("Fewer than four ages hardly tell a line from a curve."))
    if control_of(arms) is None and not plan.control.strip():
        found.append(tr("No control: add age 0, or an arm without soy."))
    if len(plan.blocks) < FEW_BATCHES:
        found.append(tr("Fewer than three batches say little of how batches differ."))
    if plan.way == "forwards" and len({arm.age_d for arm in arms}) > 1:
        found.append(
            tr("Each age meets a bath of its own, and baths differ. Backwards, all meet one bath.")
        )
    return found


def resolution(desk: Desk, plan: TrialPlan, arms: Sequence[Arm]) -> str:
    """Say what effect would be seen four times of five, from the spread kept so far."""
    found = _least(plan, arms)
    if found is None:
        return tr("What it can resolve cannot be told: too few pieces.")
    times, between = found
    kept = spread_kept(desk, plan.measure, trials(desk))
    sign = tr(MEASURES[plan.measure].sign)
    if kept is None:
        return tr("What it can resolve is not known: no trial was read by {sign} yet. It would be "
                  "{times} times the spread of alike pieces {between}.",
                  sign=sign, times=figure(times, 2), between=between)  # fmt: skip
    spread, count = kept
    said = counted(count, tr_later("{n} trial"), tr_later("{n} trials"))
    return tr("It would show a difference of {least} {sign} {between}, four times of five (alike "
              "pieces lay {spread} apart in {count} so far).",
              least=figure(times * spread, 2), sign=sign, between=between, spread=figure(spread, 2),
              count=said)  # fmt: skip


def _least(plan: TrialPlan, arms: Sequence[Arm]) -> tuple[float, str] | None:
    """Give the least difference in spreads of alike pieces, and between what."""
    blocks, each = len(plan.blocks), len(plan.blocks) * plan.replicates
    ages = sorted({arm.age_d for arm in arms if arm.age_d})
    if len(ages) > 1:
        logs = [math.log10(age) for age in ages]
        mean = sum(logs) / len(logs)
        spread_x = each * sum((one - mean) ** 2 for one in logs)
        df = blocks - 1 if blocks > 1 else each * len(logs) - 2
        if df < 1:
            return None
        least = least_effect(1 / math.sqrt(spread_x), df) * (logs[-1] - logs[0])
        return least, tr("from {first} to {last} d", first=figure(ages[0]), last=figure(ages[-1]))
    df = (len(arms) - 1) * (blocks - 1) if blocks > 1 else len(arms) * (each - 1)
    if df < 1:
        return None
    if control_of(arms) is None and not plan.control.strip():
        return least_effect(math.sqrt(2 / each), df), tr("between two arms")
    limit = limit_of(df, [0.5] * (len(arms) - 1))
    return least_effect(math.sqrt(2 / each), df, limit=limit), tr("from the control")
