"""Questions about the calendar, and the values that answer them."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from studio_log.domain.baths import Bath
from studio_log.domain.calendar_ahead import CalendarEvent
from studio_log.domain.lots import Lot
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours


@dataclass(frozen=True)
class CalendarFor:
    """Ask for what is ahead of these lots and baths, of all where none is named."""

    codes: tuple[str, ...] = ()


@dataclass(frozen=True)
class CalendarMatterFor:
    """Ask for what the calendar of these is worked out from, on whatever thread."""

    codes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Matter:
    """A lot or a bath, the number of its last entry, and when its journal was begun."""

    of: Lot | Bath
    number: int
    born: datetime
    milk: Milk | None = None


@dataclass(frozen=True)
class CalendarMatter:
    """What a calendar is worked out from."""

    folder: Path
    name: str
    now: datetime
    quiet: QuietHours
    matters: tuple[Matter, ...]
    covered: frozenset[str] | None


@dataclass(frozen=True)
class SaveCalendar:
    """Ask for a file with what is ahead; answered by words for the person."""

    to: Path
    codes: tuple[str, ...] = ()


@dataclass(frozen=True)
class CalendarAhead:
    """What is ahead: events by UID, and what the calendar needs to know beside them."""

    folder: Path
    """The studio's, where it is remembered what was told."""
    name: str
    now: datetime
    events: dict[str, CalendarEvent]
    floors: dict[str, int]
    """By subject, the number of its last entry."""
    covered: frozenset[str] | None
    """The subjects asked for; None for all."""
