"""What a lot does next by the plan that it follows, in words."""

from studio_log.domain.lots import Lot
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.desk import Desk
from studio_log.services.plan_slips import planned_of


def follows_words(desk: Desk, lot: Lot) -> str:
    """Say that a lot follows a plan, and the next moment that it sets; "" where it does not."""
    if lot.voided or lot.stopped is not None:
        return ""
    step, at = next(
        ((one, at) for one in lot.steps if (at := planned_of(one)) is not None), (None, None)
    )
    if step is None or at is None:
        return ""
    when = moment(at, desk.now, desk.zone)
    if step.running:
        return tr("Follows a plan: {title} is to end {moment}.", title=step.title, moment=when)
    return tr("Follows a plan: {title} is to begin {moment}.", title=step.title, moment=when)
