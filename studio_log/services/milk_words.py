"""The running clock of a milk, in words."""

from datetime import timedelta

from studio_log.domain.lot_amounts import beans_of
from studio_log.domain.lots import Lot
from studio_log.domain.milks import Milk
from studio_log.domain.number_text import plain
from studio_log.domain.plan_milks import strain_of
from studio_log.language.words import listed, tr
from studio_log.present.words import moment, span
from studio_log.services.desk import Desk


def milk_until(milk: Milk, desk: Desk) -> str:
    """Say until when a milk is good for a further coat, and how long that is yet."""
    good = moment(milk.use_by, desk.now, desk.zone)
    left = milk.use_by - desk.now
    if milk.finished or left <= timedelta(0):
        return good
    return tr("{moment}, {span} left", moment=good, span=span(left))


def served_words(desk: Desk, lot: Lot) -> str:
    """Say whom a lot's milk serves too, and how many beans that takes; whose milk serves it.

    "" where it makes its own for itself, and once the milk is made.
    """
    if lot.milk_of:
        return tr("The milk of {maker} serves it, by its plan.", maker=lot.milk_of)
    others = [other for code in lot.serves if (other := desk.lot(code)).milk_of == lot.code]
    strain = strain_of(lot)
    if not others or strain is None or strain.end is not None:
        return ""
    beans = [beans_of(one) for one in (lot, *others)]
    named = listed([one.code for one in others])
    if any(grams is None for grams in beans):
        return tr("The milk of {maker} serves {others} too.", maker=lot.code, others=named)
    return tr(
        "The milk of {maker} serves {others} too: soak {grams} g of dry beans in all.",
        maker=lot.code,
        others=named,
        grams=plain(round(sum(filter(None, beans))), 0),
    )
