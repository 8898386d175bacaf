"""What is ahead of the studio's lots and baths, gathered for a calendar."""

from collections.abc import Sequence
from datetime import UTC
from pathlib import Path
from typing import Protocol

from studio_log.domain.bath_text import whole_bath_code
from studio_log.domain.calendar_ahead import (
    CalendarEvent,
    event_of_reminder,
    events_of_bath,
    events_of_lot,
)
from studio_log.domain.due import milk_reminder
from studio_log.services.bath_keeping import bath_of, baths, is_bath
from studio_log.services.calendar import CalendarAhead, CalendarFor, SaveCalendar
from studio_log.services.calendar_memory import uid_of
from studio_log.services.calendar_out import write_calendar
from studio_log.services.desk import Desk, whole_code


class House(Protocol):
    """What is asked of the studio beside the desk."""

    folder: Path


def save_calendar(house: House, desk: Desk, question: SaveCalendar) -> str:
    """Write what is ahead to a file once; gives words for the person."""
    return write_calendar(calendar_ahead(house, desk, CalendarFor(question.codes)), question.to)


def calendar_ahead(house: House, desk: Desk, question: CalendarFor) -> CalendarAhead:
    """Gather the events; Refusal for a code that is not known."""
    codes = tuple(dict.fromkeys(_whole(code) for code in question.codes))
    events: dict[str, CalendarEvent] = {}
    floors: dict[str, int] = {}
    for code, found in _gathered(desk, codes):
        born = desk.entries(code)[0].written.astimezone(UTC).isoformat()
        floors[code] = desk.work.journal.last_number(code)
        events |= {uid_of(one, born): one for one in found}
    return CalendarAhead(
        folder=house.folder,
        name=desk.settings.studio,
        now=desk.now,
        events=events,
        floors=floors,
        covered=frozenset(codes) if codes else None,
    )


def _whole(code: str) -> str:
    return whole_bath_code(code) if is_bath(code.strip().upper()) else whole_code(code)


def _gathered(desk: Desk, codes: Sequence[str]) -> list[tuple[str, list[CalendarEvent]]]:
    if codes:
        return [(code, _one(desk, code)) for code in codes]
    lots = [(code, _of_lot(desk, code)) for code in desk.work.lots.live_codes()]
    return lots + [(bath.code, events_of_bath(bath, desk.now, desk.quiet)) for bath in baths(desk)]


def _one(desk: Desk, code: str) -> list[CalendarEvent]:
    if is_bath(code):
        return events_of_bath(bath_of(desk, code), desk.now, desk.quiet)
    return _of_lot(desk, code)


def _of_lot(desk: Desk, code: str) -> list[CalendarEvent]:
    lot = desk.lot(code)
    found = events_of_lot(lot, desk.now, desk.quiet)
    milk = milk_reminder(lot, desk.milk_of(code), desk.now, desk.quiet)
    return [*found, event_of_reminder(milk)] if milk is not None else found
