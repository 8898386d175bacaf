"""How long a running step is likely to last, from what was read in it: drying drives its window.

Pure: the lot's own readings and nothing of other lots, so that the same journal gives the same
reminders. The studio's factor, learnt from many lots, bends only what the sheet says.
"""

from datetime import timedelta
from typing import Final

from studio_log.domain.drying_time import drying_time
from studio_log.domain.dryings import hanging_from
from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import Spread, StepKind

STEP: Final = timedelta(minutes=5)
"""An estimate means no more."""


def likely_lasts(lot: Lot, step: LotStep) -> Spread | None:
    """Give how long a running drying is likely to take; None where too little was read.

    Damp past the method's latest stays a danger, whatever is likely: that limit is kept.
    """
    known = step.spec.lasts
    if step.spec.kind is not StepKind.DRY or not step.running or not step.read or known is None:
        return None
    hanging = hanging_from(lot, step)
    if hanging is None:
        return None
    try:
        found = drying_time(hanging).time
    except Refusal:  # a room that nothing dries in: the method's own window stands
        return None
    earliest, aim = (min(_whole(one), known.latest) for one in (found.earliest, found.aim))
    return Spread(min(earliest, aim), aim, known.latest)


def _whole(of: timedelta) -> timedelta:
    return max(STEP, STEP * round(of / STEP))
