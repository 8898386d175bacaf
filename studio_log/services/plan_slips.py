"""Lots that follow a plan and have slipped from it: what was to be done by now, or fits no more."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.windows import windows_of
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.desk import Desk

SLACK: Final = timedelta(minutes=20)
"""So late is still as planned."""


@dataclass(frozen=True)
class Slip:
    """A planned moment that passed, or that the lot's limits no longer allow."""

    code: str
    title: str
    planned: datetime


def slips(desk: Desk) -> tuple[Slip, ...]:
    """Give the first slip of every lot that follows a plan, the oldest first."""
    found = [
        slip
        for code in desk.work.lots.live_codes()
        if (slip := _slip(desk, desk.lot(code))) is not None
    ]
    return tuple(sorted(found, key=lambda one: (one.planned, one.code)))


def _slip(desk: Desk, lot: Lot) -> Slip | None:
    if not any(step.plan_end is not None and not step.closed for step in lot.steps):
        return None
    windows = windows_of(lot, desk.now, desk.quiet)
    for step in lot.steps:
        planned = planned_of(step)
        if planned is None or step.number not in windows:
            continue
        window = windows[step.number]
        bounds = window.end if step.running else window.start
        if planned < desk.now - SLACK:
            return Slip(lot.code, step.title, planned)
        if window.broken is not None:
            return None  # no plan can hold to a limit that is broken, nor what follows from it
        if planned >= desk.now and not bounds.holds(planned):
            return Slip(lot.code, step.title, planned)
    return None


def planned_of(step: LotStep) -> datetime | None:
    """Give the moment that a plan has set for what comes next in a step; a cure has none.

    Cloth that is ready waits for whatever it is for.
    """
    if step.closed or step.spec.kind is StepKind.CURE:
        return None
    return step.plan_end if step.running else step.plan


def slip_words(desk: Desk) -> str:
    """Say that the plan has slipped, and what mends it; "" where it has not."""
    found = slips(desk)
    if not found:
        return ""
    first = found[0]
    told = tr(
        "{code} has slipped from its plan: {title} was planned for {moment}.",
        code=first.code,
        title=first.title,
        moment=moment(first.planned, desk.now, desk.zone),
    )
    more = tr(" So have {n} more.", n=len(found) - 1) if len(found) > 1 else ""
    return told + more + tr(" The plan (Ctrl+0) offers a repair.")
