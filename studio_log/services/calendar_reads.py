"""What a calendar is worked out from, gathered in one reading."""

from contextlib import suppress
from pathlib import Path
from typing import Protocol

from studio_log.domain.bath_text import whole_bath_code
from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot
from studio_log.services.bath_keeping import bath_of, baths, is_bath
from studio_log.services.calendar import (
    CalendarAhead,
    CalendarFor,
    CalendarMatter,
    CalendarMatterFor,
    Matter,
    SaveCalendar,
)
from studio_log.services.calendar_out import write_calendar
from studio_log.services.calendar_work import worked_out
from studio_log.services.desk import Desk, whole_code
from studio_log.services.lots_read import lots_read


class House(Protocol):
    """What is asked of the studio beside the desk."""

    folder: Path


def save_calendar(house: House, desk: Desk, question: SaveCalendar) -> str:
    """Write what is ahead to a file once; gives words for the person."""
    return write_calendar(calendar_ahead(house, desk, CalendarFor(question.codes)), question.to)


def calendar_ahead(house: House, desk: Desk, question: CalendarFor) -> CalendarAhead:
    """Give what is ahead; Refusal for a code that is not known."""
    return worked_out(calendar_matter(house, desk, CalendarMatterFor(question.codes)))


def calendar_matter(house: House, desk: Desk, question: CalendarMatterFor) -> CalendarMatter:
    """Gather what a calendar is worked out from; Refusal for a code that is not known."""
    codes = tuple(dict.fromkeys(_whole(code) for code in question.codes))
    matters = [*_lots(desk, codes), *_baths(desk, codes)]
    return CalendarMatter(
        folder=house.folder,
        name=desk.settings.studio,
        now=desk.now,
        quiet=desk.quiet,
        matters=tuple(matters),
        covered=frozenset(codes) if codes else None,
    )


def _whole(code: str) -> str:
    return whole_bath_code(code) if is_bath(code.strip().upper()) else whole_code(code)


def _lots(desk: Desk, codes: tuple[str, ...]) -> list[Matter]:
    named = {code: desk.lot(code) for code in codes if not is_bath(code)}
    lots = named if codes else _live(desk)
    births = desk.work.journal.births(lots)
    milks = desk.milks() if lots else []
    return [
        Matter(lot, births[code][1], births[code][0], desk.milk_of(code, milks))
        for code, lot in sorted(lots.items())
    ]


def _live(desk: Desk) -> dict[str, Lot]:
    """Give the lots in work; one whose journal does not read is left out, `check` names it."""
    wanted = desk.work.lots.live_codes()
    try:
        return lots_read(desk, desk.work.lots.of(wanted), wanted)
    except Refusal:
        lots = {}
        for code in wanted:
            with suppress(Refusal):
                lots[code] = desk.lot(code)
        return lots


def _baths(desk: Desk, codes: tuple[str, ...]) -> list[Matter]:
    found = [bath_of(desk, code) for code in codes if is_bath(code)] if codes else baths(desk)
    births = desk.work.journal.births(one.code for one in found)
    return [Matter(one, births[one.code][1], births[one.code][0]) for one in found]
