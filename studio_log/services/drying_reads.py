"""What the studio's own dryings teach."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final

from studio_log.domain.drying_factor import COUNTED_LAST, Dried, Factor, learn
from studio_log.domain.dryings import logged_dryings
from studio_log.domain.journal import Act
from studio_log.services.desk import CODE, Desk

LOOKED_AT: Final = 60
"""The latest lots that are looked through; older ones teach nothing any more."""


@dataclass(frozen=True)
class DryingFactorFor:
    """The studio's own factor of drying, None where too few were logged since the setting."""


def drying_factor(_house: Any, desk: Desk, _question: DryingFactorFor) -> Factor | None:
    """Give the factor of the latest dryings that were logged with room and wet weight."""
    since = desk.settings.dryings_since
    return learn(_dryings(desk), since=datetime.fromisoformat(since) if since else None)


def _dryings(desk: Desk) -> Iterator[Dried]:
    """Give the dryings of the latest lots, the latest lot first, until enough are known."""
    lots = [code for code in desk.work.journal.subjects() if CODE.match(code)]
    seen: set[tuple[datetime, timedelta]] = set()  # a split copies the history of its lot
    for code in sorted(lots, reverse=True)[:LOOKED_AT]:
        entries = desk.entries(code)
        if not entries or entries[0].act is not Act.NEW:
            continue
        for dried in logged_dryings(desk.lot(code), entries):
            if (dried.ended, dried.took) not in seen:
                seen.add((dried.ended, dried.took))
                yield dried
        if len(seen) >= COUNTED_LAST:
            return
