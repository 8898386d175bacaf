"""The events of a calendar, worked out on whatever thread from values alone."""

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Final

from studio_log.domain.baths import Bath
from studio_log.domain.calendar_ahead import (
    CalendarEvent,
    event_of_reminder,
    events_of_bath,
    events_of_lot,
    sessions_of,
)
from studio_log.domain.due import milk_reminder
from studio_log.domain.lots import Lot
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours
from studio_log.services.calendar import CalendarAhead, CalendarMatter, Matter
from studio_log.services.calendar_memory import uid_of

MOST_KNOWN: Final = 1_000


@dataclass(frozen=True)
class _Known:
    """What was worked out of a lot, and from what."""

    lot: Lot
    quiet: QuietHours
    milk: Milk | None
    events: tuple[CalendarEvent, ...]

    def holds(self, matter: Matter, quiet: QuietHours, now: datetime) -> bool:
        """Say whether it is so still: of the same lot, and nothing has fallen due since."""
        if self.lot is not matter.of or self.quiet != quiet or self.milk != matter.milk:
            return False
        return all((one.start if one.busy else one.end) > now for one in self.events)


_known: dict[str, _Known] = {}


def worked_out(matter: CalendarMatter) -> CalendarAhead:
    """Give what is ahead. A lot of which nothing is new is not worked out again."""
    events: dict[str, CalendarEvent] = {}
    for one in matter.matters:
        born = one.born.astimezone(UTC).isoformat()
        found = _of_any(one, matter.now, matter.quiet)
        events |= {uid_of(event, born): event for event in found}
    if matter.covered is None and matter.matters:
        born = min(one.born for one in matter.matters).astimezone(UTC).isoformat()
        events |= {uid_of(one, born): one for one in sessions_of(events.values())}
    return CalendarAhead(
        folder=matter.folder,
        name=matter.name,
        now=matter.now,
        events=events,
        floors={one.of.code: one.number for one in matter.matters},
        covered=matter.covered,
    )


def _of_any(matter: Matter, now: datetime, quiet: QuietHours) -> tuple[CalendarEvent, ...]:
    if isinstance(matter.of, Bath):
        return tuple(events_of_bath(matter.of, now, quiet))
    before = _known.get(matter.of.code)
    if before is not None and before.holds(matter, quiet, now):
        return before.events
    found = events_of_lot(matter.of, now, quiet)
    milk = milk_reminder(matter.of, matter.milk, now, quiet)
    if milk is not None:
        found.append(event_of_reminder(milk))
    if len(_known) >= MOST_KNOWN:
        _known.clear()
    _known[matter.of.code] = _Known(matter.of, quiet, matter.milk, tuple(found))
    return tuple(found)
