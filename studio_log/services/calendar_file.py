"""The calendar as a file: iCalendar (RFC 5545), written by the library icalendar.

All moments are in UTC. Nothing here recurs, and a soak lasts so many true hours whatever the
clocks do; so a definition of the zone (VTIMEZONE) would say nothing more, and could only be
read wrongly. Every calendar shows UTC in the zone of whoever looks.
"""

import unicodedata
from collections.abc import Sequence
from datetime import timedelta
from functools import lru_cache
from typing import TYPE_CHECKING, Final

from studio_log.services.calendar_memory import Told

if TYPE_CHECKING:
    from icalendar import Alarm, Event

PRODUCT: Final = "-//Studio Log//A dyer's logbook//EN"
LOOK_AGAIN: Final = timedelta(hours=1)
"""How often a subscriber may look for a newer file (RFC 7986, 5.7)."""
MOST_KEPT: Final = 6_000
"""Events kept as bytes, some 600 each."""
LONGEST: Final = {"title": 250, "why": 4000, "place": 250}
"""Letters; a longer text ends in an ellipsis."""


def calendar_bytes(told: Sequence[Told], name: str) -> bytes:
    """Give the file: UTF-8, CRLF, lines folded at 75 octets. The same in, the same out."""
    # Late: only who wants a calendar waits for the library.
    from icalendar import Calendar, vText  # noqa: PLC0415

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    # The library knows NAME (RFC 7986, 5.1) for no text and would not escape it.
    calendar.add("name", vText(_line(name, "title") or "Studio Log"))
    calendar.add("refresh-interval", LOOK_AGAIN, parameters={"VALUE": "DURATION"})
    head, end, nothing = calendar.to_ical().rpartition(b"END:VCALENDAR")
    return b"".join([head, *map(_event_bytes, told), end, nothing])


@lru_cache(maxsize=MOST_KEPT)
def _event_bytes(one: Told) -> bytes:
    """Give an event as it stands in the file; most are the same from one file to the next."""
    from icalendar import Event  # noqa: PLC0415 - see above

    event = Event()
    event.add("uid", one.uid)
    event.add("sequence", one.sequence)
    # Without METHOD the stamp says the same as the last change (RFC 5545, 3.8.7.2).
    event.add("dtstamp", one.modified)
    event.add("last-modified", one.modified)
    event.add("dtstart", one.event.start)
    event.add("dtend", one.event.end)
    event.add("summary", _line(one.event.title, "title"))
    event.add("status", "CANCELLED" if one.cancelled else "CONFIRMED")
    event.add("transp", "OPAQUE" if one.event.busy else "TRANSPARENT")
    _tell_more(event, one)
    data: bytes = event.to_ical()
    return data


def _tell_more(event: "Event", one: Told) -> None:
    if one.event.why:
        event.add("description", _plain(one.event.why, "why"))
    if one.event.place:
        event.add("location", _line(one.event.place, "place"))
    for at in one.event.alarms:
        event.add_component(_alarm(at - one.event.start, one.event.title))


def _alarm(after: timedelta, title: str) -> "Alarm":
    """Give an alarm so long after the start of its event; a negative span is before it."""
    from icalendar import Alarm  # noqa: PLC0415 - see above

    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", _line(title, "title"))
    alarm.add("trigger", after)
    return alarm


def _line(text: str, what: str) -> str:
    """Give a text in one line."""
    return _plain(" ".join(_plain(text, "why").split()), what)


def _plain(text: str, what: str) -> str:
    """Leave out the signs that RFC 5545 (3.3.11) takes in no text, and shorten what is endless."""
    kept = "".join(
        sign for sign in text if sign in "\n\t" or unicodedata.category(sign) not in {"Cc", "Cs"}
    )
    most = LONGEST[what]
    return kept if len(kept) <= most else f"{kept[: most - 1].rstrip()}…"
