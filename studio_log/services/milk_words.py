"""The running clock of a milk, in words."""

from datetime import timedelta

from studio_log.domain.milks import Milk
from studio_log.language.words import tr
from studio_log.present.words import moment, span
from studio_log.services.desk import Desk


def milk_until(milk: Milk, desk: Desk) -> str:
    """Say until when a milk is good for a further coat, and how long that is yet."""
    good = moment(milk.use_by, desk.now, desk.zone)
    left = milk.use_by - desk.now
    if milk.finished or left <= timedelta(0):
        return good
    return tr("{moment}, {span} left", moment=good, span=span(left))
