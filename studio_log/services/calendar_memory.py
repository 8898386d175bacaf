"""What of the plan was put into a calendar, so that an update replaces it.

What fell away is called off. A phone knows an event by its UID and takes the greater SEQUENCE
(RFC 5545, 3.8.7.4). What was handed out is kept in a small file beside the log; without that
file the numbers begin at those of the journal, which only grow.
"""

import json
import uuid
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, Final
from zlib import crc32

from studio_log.domain.calendar_ahead import CalendarEvent
from studio_log.domain.errors import Refusal
from studio_log.services.whole_file import write_whole

FILE_NAME: Final = "calendar.json"
LARGEST: Final = 8_000_000
MOST_VERSIONS: Final = 2**31
"""An INTEGER has 32 bits (RFC 5545, 3.3.8)."""
LONGEST: Final = 500
KEPT_AFTER: Final = timedelta(days=30)
"""How long an event that was called off is still told of, counted from its end."""
UIDS: Final = uuid.UUID("6b1f4f1e-5d0c-4b93-9d5e-6f0d8f3c2a71")
"""The namespace of the names of events (RFC 9562, name-based): made for this program."""


@dataclass(frozen=True)
class Told:
    """An event as it goes into a calendar: its standing in the row of its versions."""

    uid: str
    sequence: int
    modified: datetime
    cancelled: bool
    event: CalendarEvent


@dataclass(frozen=True)
class Known:
    """What is remembered of an event that was put into a calendar."""

    subject: str
    key: str
    sequence: int
    digest: int
    modified: datetime
    start: datetime
    end: datetime
    title: str
    cancelled: bool = False


Memory = Mapping[str, Known]


def uid_of(event: CalendarEvent, born: str) -> str:
    """Give the UID of an event; `born` says when its lot's journal begins, to the microsecond.

    So 26-001 of one studio is never taken for that of another, and the name tells nobody
    anything (RFC 7986, 5.3).
    """
    return str(uuid.uuid5(UIDS, f"{event.subject} {born} {event.key}"))


def tell(
    events: Mapping[str, CalendarEvent],
    memory: Memory,
    now: datetime,
    floors: Mapping[str, int],
    covered: Iterable[str] | None = None,
) -> tuple[list[Told], dict[str, Known]]:
    """Give what goes into the calendar, in order of time, and what is to be remembered.

    `events` by UID; `floors` gives the least sequence by subject; only subjects in `covered`
    (None for all) can have lost events. Where nothing has changed both are as before.
    """
    second = now.astimezone(UTC).replace(microsecond=0)
    after = {uid: known for uid, known in memory.items() if known.end + KEPT_AFTER > now}
    told: list[Told] = []
    for uid, event in events.items():
        known = _known(event, memory.get(uid), second, floors.get(event.subject, 0))
        after[uid] = known
        told.append(Told(uid, known.sequence, known.modified, cancelled=False, event=event))
    only = None if covered is None else set(covered)
    for uid in sorted(after.keys() - events.keys()):
        known = after[uid]
        if only is not None and known.subject not in only:
            continue
        if not known.cancelled and known.end <= now:
            del after[uid]  # it has been, and was done or not: nothing to call off
            continue
        after[uid] = known = _called_off(known, second)
        told.append(Told(uid, known.sequence, known.modified, cancelled=True, event=_bare(known)))
    return sorted(told, key=lambda one: (one.event.start, one.event.key, one.uid)), after


def _known(event: CalendarEvent, before: Known | None, now: datetime, floor: int) -> Known:
    digest = crc32(repr(event).encode())
    if before is not None and not before.cancelled and before.digest == digest:
        return before
    sequence = floor if before is None else max(before.sequence + 1, floor)
    return Known(
        event.subject, event.key, sequence, digest, now, event.start, event.end, event.title
    )


def _called_off(known: Known, now: datetime) -> Known:
    if known.cancelled:
        return known
    return replace(known, sequence=known.sequence + 1, modified=now, cancelled=True)


def _bare(known: Known) -> CalendarEvent:
    return CalendarEvent(
        known.key, known.subject, known.start, known.end, known.title, "", busy=False
    )


def read_memory(folder: Path) -> dict[str, Known]:
    """Give what is remembered; {} where the file is missing or makes no sense."""
    path = folder / FILE_NAME
    try:
        if path.stat().st_size > LARGEST:
            return {}
        kept = json.loads(path.read_bytes())
        return {str(uid): _from_json(row) for uid, row in kept["events"].items()}
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return {}


def _from_json(row: Mapping[str, Any]) -> Known:
    moments = {name: datetime.fromisoformat(row[name]) for name in ("modified", "start", "end")}
    if any(at.tzinfo is None for at in moments.values()):
        raise ValueError("a moment without its offset")
    known = Known(**{**row, **moments})
    if not 0 <= int(known.sequence) < MOST_VERSIONS:
        raise ValueError("no number of a version")
    return replace(
        known, subject=str(known.subject), key=str(known.key), title=str(known.title)[:LONGEST]
    )


def keep_memory(folder: Path, memory: Memory) -> None:
    """Keep what was told; that it cannot be kept costs no more than sharper sequences."""
    rows = {uid: vars(known) for uid, known in sorted(memory.items())}
    text = json.dumps(
        {"version": 1, "events": rows}, ensure_ascii=False, default=lambda at: at.isoformat()
    )
    try:
        write_whole(folder / FILE_NAME, text.encode(), wait=False)
    except Refusal:
        return
