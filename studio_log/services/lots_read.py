"""Many lots at once: from what is known, else from their journals in one reading."""

from collections.abc import Collection

from studio_log.domain.lots import Lot
from studio_log.domain.replay import replay
from studio_log.services.desk import Desk
from studio_log.store.values import LotLine

MOST_KEPT = 1_000
"""Lots that are kept in mind; who scrolls through years shall not fill the memory."""


def lots_read(desk: Desk, kept: dict[str, LotLine], codes: Collection[str]) -> dict[str, Lot]:
    """Give the lots of these codes whose lines are `kept`; journals are read where need be."""
    known = {code: desk.cache[code] for code in codes if code in desk.cache and code in kept}
    lots = {code: lot for code, (at, lot) in known.items() if at == kept[code].last_number}
    journals = desk.work.journal.of_many(set(kept) - set(lots))
    for code, entries in journals.items():
        lots[code] = replay(entries, desk.book)
        if len(desk.cache) < MOST_KEPT:
            desk.cache[code] = (entries[-1].number, lots[code])
    return lots
