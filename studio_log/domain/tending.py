"""When a running step wants its next small act: stirring, or the question "is it dry?"."""

from datetime import datetime, timedelta

from studio_log.domain.lots import LotStep
from studio_log.domain.quiet import QuietHours

COVERED = timedelta(minutes=5)
"""An act this shortly before a set moment serves for it."""
BEFORE_BED = timedelta(minutes=10)


def next_tending(step: LotStep, quiet: QuietHours) -> datetime | None:
    """Give the next moment to tend: the set offsets from the start, then an interval.

    In quiet hours none falls: it moves to just before them, where that is still a fair
    while after the last act, else to just after. Missed ones do not stack, since only
    the last actual act counts.
    """
    tending, start = step.spec.tending, step.start
    if tending is None or start is None:
        return None
    last = step.tended[-1] if step.tended else start
    ahead = [start + offset for offset in tending.offsets if start + offset > last + COVERED]
    if ahead:
        raw = ahead[0]
    elif tending.every is not None:
        raw = last + tending.every
    else:
        return None
    night = quiet.around(raw)
    if night is None:
        return raw
    evening = night.start - BEFORE_BED
    return evening if evening - last >= (raw - last) / 3 and evening > last else night.end


def coming_tendings(step: LotStep, quiet: QuietHours, until: datetime) -> tuple[datetime, ...]:
    """Give the moments to tend up to the step's end, were each one kept."""
    found: list[datetime] = []
    seen = step
    while len(found) < 60:
        at = next_tending(seen, quiet)
        if at is None or at >= until:
            break
        found.append(at)
        seen = LotStep(**{**seen.__dict__, "tended": (*seen.tended, at)})
    return tuple(found)


def next_ask(step: LotStep, quiet: QuietHours, likely: timedelta | None = None) -> datetime | None:
    """Give when to ask "is it dry?": at the set offsets, then at an interval, while awake.

    Where it is known how long the drying is likely to take, that is the first offset. Where a plan
    has somebody come within the limits, that moment is the first. "Still damp" asks again at the
    next offset, once those are over after the interval.
    """
    ask, start = step.spec.ask_dry, step.start
    if ask is None or start is None:
        return None
    if not step.damp:
        first = start + (likely or (ask.offsets[0] if ask.offsets else ask.every))
        return quiet.waking(_planned_end(step) or first)
    last = step.damp[-1]
    ahead = [start + offset for offset in ask.offsets if start + offset > last + COVERED]
    after = last + ask.every
    raw = after if not ahead or last >= start + ask.offsets[-1] else ahead[0]
    return quiet.waking(raw)


def _planned_end(step: LotStep) -> datetime | None:
    """Give when a plan has somebody take the cloth down; None where its limits forbid it."""
    lasts, start, at = step.spec.lasts, step.start, step.plan_end
    if at is None or start is None or lasts is None:
        return None
    if not start < at <= start + lasts.latest:
        return None
    return at
