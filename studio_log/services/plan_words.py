"""What a lot does next by the plan that it follows, in words."""

from studio_log.domain.lots import Lot
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.desk import Desk


def follows_words(desk: Desk, lot: Lot) -> str:
    """Say that a lot follows a plan, and the next moment that it sets; "" where it does not."""
    if lot.voided or lot.stopped is not None:
        return ""
    step = next((one for one in lot.steps if one.plan_end is not None and not one.closed), None)
    if step is None:
        return ""
    at = step.plan_end if step.running else step.plan
    if at is None:
        return ""
    when = moment(at, desk.now, desk.zone)
    if step.running:
        return tr("Follows a plan: {title} is to end {moment}.", title=step.title, moment=when)
    return tr("Follows a plan: {title} is to begin {moment}.", title=step.title, moment=when)
