"""Questions about the calendar, and the values that answer them."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from studio_log.domain.calendar_ahead import CalendarEvent


@dataclass(frozen=True)
class CalendarFor:
    """Ask for what is ahead of these lots and baths, of all where none is named."""

    codes: tuple[str, ...] = ()


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
