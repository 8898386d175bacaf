"""What rang, in words: when it was due, how it rang, how it was answered; for screen and paper."""

import re
import unicodedata
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import pairwise
from typing import Final

from studio_log.domain.wall_clock import Kind, from_wall, known_zone
from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr
from studio_log.present.words import span
from studio_log.services.rang import ANSWERED, NOT_NEEDED, OPEN, Rang, Try
from studio_log.services.reminder_words import WORTH_SAYING

MOST_RINGS: Final = 12
MOST_TRIES: Final = 40
"""More than these are counted; all stand in the written-out list."""
_TURNS: Final = re.compile("[\u200e\u200f\u202a-\u202e\u2066-\u2069]")
"""Signs that turn the direction of writing for what stands after them."""


def tame(text: str) -> str:
    """Give a text in one line that can be shown whatever it holds."""
    if text.isprintable():
        return " ".join(text.split())
    plain = _TURNS.sub("", text)
    shown = "".join(
        "�" if unicodedata.category(sign) in {"Cc", "Cs"} and not sign.isspace() else sign
        for sign in plain
    )
    return " ".join(shown.split())


def clock_words(at: datetime, zone: str, *, seconds: bool = False) -> str:
    """Give the time of day; with the zone's own letters where the clock shows it twice."""
    local = at.astimezone(known_zone(zone))
    words = f"{local:%H:%M:%S}" if seconds else f"{local:%H:%M}"
    wall = from_wall(local.replace(tzinfo=None, fold=0), known_zone(zone))
    return f"{words} {zone_letters(local)}" if wall.kind is Kind.FOLD else words


def zone_letters(local: datetime) -> str:
    """Give what tells two equal times apart: "BST", or the offset where there are no letters."""
    name = local.tzname() or ""
    return name if name.isalpha() else f"UTC{local:%z}"


def day_of(at: datetime, zone: str, now: datetime) -> str:
    """Give a day: "Tue 9 June", with its year where it is not this one."""
    local = at.astimezone(known_zone(zone))
    year = f" {local.year}" if local.year != now.astimezone(known_zone(zone)).year else ""
    return f"{day_words(local.date())}{year}"


def due_words(row: Rang, now: datetime) -> str:
    """Give day and time at which it was due."""
    return f"{day_of(row.due, row.zone, now)}, {clock_words(row.due, row.zone)}"


def lot_words(row: Rang) -> str:
    """Give the lot with its name; "the studio" for what is about no lot."""
    return tame(f"{row.lot} {row.name}") or tr("the studio")


def what_words(row: Rang) -> str:
    """Give the act and its step, without the lot, which stands beside it."""
    act = row.title.removesuffix(f"{row.lot} {row.name}").rstrip(" :") if row.lot else row.title
    return tame(f"{act} · {row.step}" if act and row.step else act or row.title)


def rang_words(row: Rang) -> str:
    """Say whether and when it rang, in few words: "21:00:02, 3 times"."""
    first = row.first_rung
    if first is None:
        return _silent(row)
    words = [_from_due(first, row, seconds=True)]
    if late := late_words(row):
        words.append(late)
    if row.times > 1:
        words.append(tr("{times} times", times=row.times))
    return ", ".join(words)


def late_words(row: Rang) -> str:
    """Say that it was told late, and of quiet hours where they are known to be why."""
    if row.late is None or row.late < WORTH_SAYING:
        return ""
    if row.quiet_until is not None:
        return tr(
            "waited for quiet hours to end, {from_due}", from_due=_from_due(row.quiet_until, row)
        )
    return tr("told {span} late", span=span(row.late))


def how_words(row: Rang) -> str:
    """Name the channels that showed it; where none did, those that were tried."""
    if row.channels:
        return ", ".join(tame(tr(name)) for name in row.channels)
    failed = dict.fromkeys(tame(tr(one.channel)) for one in row.tries)
    return tr("failed: {channels}", channels=", ".join(failed)) if failed else "—"


def answer_words(row: Rang) -> str:
    """Say what became of it, in few words: "tended, 21:32"."""
    if row.told:
        return tr("told; wanted no answer")
    if row.state == ANSWERED and row.answered_at is not None:
        after = tr(", after {span}", span=span(wait)) if (wait := _wait(row)) else ""
        words = tame(row.answer) or tr("answered")
        return f"{words}, {_from_due(row.answered_at, row)}{after}"
    if row.state == NOT_NEEDED and row.void_at is not None:
        return f"{tr(NOT_NEEDED)}, {_from_due(row.void_at, row)}"
    if row.state == OPEN:
        return tr("open: no answer yet")
    rest = tr("rings again") if row.rings else "rings"
    return (
        tr("waits: {rest} {from_due}", rest=rest, from_due=_from_due(row.rings_at, row))
        if row.rings_at
        else row.state
    )


def details(row: Rang, now: datetime) -> tuple[str, ...]:
    """Give everything that is known of one reminder, a line each."""
    about = f"{lot_words(row)} · {tame(row.step)}" if row.step else lot_words(row)
    lines = [
        about,
        tr(
            "Due {due_words} ({tame}, {tame2}).",
            due_words=due_words(row, now),
            tame=tame(row.kind),
            tame2=tame(row.urgency),
        ),
        _rung(row),
        _late_line(row),
        _ended(row),
        *_tried(row.tries, row),
    ]
    return tuple(line for line in lines if line)


def _silent(row: Rang) -> str:
    if row.state == ANSWERED:
        return tr("did not ring: answered before")
    if row.state == NOT_NEEDED:
        return tr("did not ring: {why}", why=tr(NOT_NEEDED))
    if row.state == OPEN:
        return tr("did not ring: it came back when an act was taken back")
    return tr("did not ring yet")


def _rung(row: Rang) -> str:
    if not row.rings:
        silent = _silent(row)
        tried = tr(" It was tried, and no channel took it.") if row.tries else ""
        return f"{silent[:1].upper()}{silent[1:]}.{tried}"
    shown = row.rings[:MOST_RINGS]
    times = [_from_due(shown[0], row, seconds=True)]
    times += [_after(at, before, row.zone) for before, at in pairwise(shown)]
    more = len(row.rings) - len(shown)
    rest = (
        tr(
            " and {more} times more, last {from_due}",
            more=more,
            from_due=_from_due(row.rings[-1], row),
        )
        if more
        else ""
    )
    lost = row.times - len(row.rings)
    untold = (
        tr(" It rang {lost} times more at moments not written down.", lost=lost) if lost else ""
    )
    by = tr(", by {how_words}", how_words=how_words(row)) if row.channels else ""
    return tr(
        "Rang {join}{rest}{by}.{untold}", join=", ".join(times), rest=rest, by=by, untold=untold
    )


def _late_line(row: Rang) -> str:
    first = row.first_rung
    if first is not None and first < row.due:
        return tr("It rang before its moment as it stands now: it was planned anew, or put right.")
    words = late_words(row)
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def _ended(row: Rang) -> str:
    words = answer_words(row)
    if row.state == ANSWERED and row.answered_at is not None and not row.told:
        since = (
            tr(" ({span} after the first ring)", span=span(wait)) if (wait := _wait(row)) else ""
        )
        at = _from_due(row.answered_at, row)
        return tr(
            "Answered {at}{since}: {words}.",
            at=at,
            since=since,
            words=tame(row.answer) or tr("no words"),
        )
    if row.state == NOT_NEEDED and row.void_why:
        words = f"{words} ({tame(row.void_why)})"
    return f"{words[:1].upper()}{words[1:]}."


def unanswered(row: Rang) -> bool:
    """Say whether it has rung and still waits for an answer."""
    return row.state == OPEN


def _wait(row: Rang) -> timedelta | None:
    if row.first_rung is None or row.answered_at is None:
        return None
    wait = row.answered_at - row.first_rung
    return wait if wait >= WORTH_SAYING else None


def _tried(tries: Sequence[Try], row: Rang) -> Iterator[str]:
    if tries:
        yield tr("Every channel that was tried, and what it answered:")
    before = row.due
    for one in tries[:MOST_TRIES]:
        at = _after(one.at, before, row.zone, seconds=True)
        took = "shown" if one.ok else "failed"
        said = tame(one.words)
        told = said if said.startswith(took) else ", ".join(filter(None, (took, said)))
        yield f"• {at} {tame(one.channel)}: {told}"
        before = one.at
    if len(tries) > MOST_TRIES:
        yield tr("… and {rest} more; “Export…” writes them all.", rest=len(tries) - MOST_TRIES)
    if any(not one.ok for one in tries):
        yield tr("A failure that repeats the one before it is written down once.")


def _from_due(at: datetime, row: Rang, *, seconds: bool = False) -> str:
    return _after(at, row.due, row.zone, seconds=seconds)


def _after(at: datetime, before: datetime, zone: str, *, seconds: bool = False) -> str:
    """Give a time, with its day where that is not the day of the moment before it."""
    tz = known_zone(zone)
    day, day_before = at.astimezone(tz).date(), before.astimezone(tz).date()
    words = clock_words(at, zone, seconds=seconds)
    if day == day_before:
        return words
    return f"{day_of(at, zone, before)} {words}"


def local_iso(at: datetime | None, zone: str) -> str:
    """Write an instant in the zone, ISO 8601 with its offset, to the second; "" for none."""
    if at is None:
        return ""
    return at.astimezone(known_zone(zone)).replace(microsecond=0).isoformat()
