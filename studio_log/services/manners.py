"""Manners of the reminders: do not disturb, and the looks ahead of the day and the evening.

A look ahead is told once a day. It wants no answer: its record is closed as it is told.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from studio_log.domain.errors import Refusal
from studio_log.domain.look_ahead import acts_of_day, day_lines, day_words, tonight, tonight_words
from studio_log.domain.lots import Lot
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Fate, Kind, Record, Reminder, Urgency
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.commands import ChangeSettings, Hush
from studio_log.services.copies_elsewhere import old_words
from studio_log.services.desk import LONGEST_HUSH, Desk
from studio_log.services.marking import next_morning

STUDIO = "studio"
"""What a look ahead is about, where a reminder names its lot."""
TOLD = "told"
COPIES_AT = "08:00"
"""When old copies are told where the day's look ahead is switched off."""


@dataclass(frozen=True)
class Look:
    """One look ahead: its record's key, when it was to be told, and what it says."""

    key: str
    kind: Kind
    due: datetime
    words: str
    """The whole in a sentence or two, for the end of another notice."""
    title: str
    body: str


def hush(desk: Desk, command: Hush) -> ChangeSettings:
    """Give the change of settings that lets nothing disturb for a while."""
    until = ""
    if command.until_morning:
        until = next_morning(desk).isoformat()
    elif command.span is not None:
        if not timedelta(0) < command.span <= LONGEST_HUSH:
            raise Refusal(tr("Do not disturb lasts from a minute to a day. Nothing was changed."))
        until = (desk.now + command.span).isoformat()
    return ChangeSettings({"hush_until": until})


def hush_words(desk: Desk) -> str:
    """Say whether anything may disturb just now."""
    until = desk.hush_until
    if until is None:
        return tr("Reminders may ring.")
    spoiling = desk.settings.spoiling_at_night
    but = tr("Only what spoils rings") if spoiling else tr("Nothing rings")
    return tr(
        "{but} until {moment}; then all that is due is told.",
        but=but,
        moment=moment(until, desk.now, desk.zone),
    )


def looks_due(desk: Desk, looked: set[str]) -> list[Look]:
    """Give the looks ahead to tell now; `looked` keeps what was looked at and not worth telling."""
    if desk.may_ring_from(desk.now) != desk.now:
        return []
    found = []
    for kind in _LOOKS:
        key, at = _today(desk, kind)
        if (
            at is None
            or not at <= desk.now < at + _LOOKS[kind].lasts
            or _was_told(desk, key, looked)
        ):
            continue
        looked.add(key)
        words, title, body = _LOOKS[kind].say(desk)
        if words:
            found.append(Look(key, kind, at, words, title, body))
    return found


def next_look(desk: Desk, looked: set[str]) -> datetime | None:
    """Give when the next look ahead is to be told, None where both are switched off."""
    moments = []
    for kind in _LOOKS:
        key, at = _today(desk, kind)
        if at is None:
            continue
        over = desk.now >= at + _LOOKS[kind].lasts
        if over or _was_told(desk, key, looked):
            at = _at(desk, kind, _local_day(desk) + timedelta(days=1))
        moments.append(at if at > desk.now else desk.may_ring_from(desk.now))
    return min(moments, default=None)


def record_looks(desk: Desk, looks: Sequence[Look], channels: tuple[str, ...]) -> None:
    """Record that these were told, and by what; nothing is left to answer."""
    desk.put_records(
        Record(
            Reminder(
                look.key, STUDIO, None, look.kind, Urgency.CALM, look.due, look.due,
                title=look.title, why=look.body, if_late="",
            ),
            Fate.ANSWERED, raised_at=desk.now, times=1, rung_at=desk.now,
            answered_at=desk.now, answer=TOLD, channels=channels,
        )
        for look in looks
    )  # fmt: skip


def _was_told(desk: Desk, key: str, looked: set[str]) -> bool:
    return key in looked or desk.work.reminders.get(key) is not None


def _local_day(desk: Desk) -> date:
    return desk.now.astimezone(ZoneInfo(desk.zone)).date()


def _today(desk: Desk, kind: Kind) -> tuple[str, datetime | None]:
    """Give the key of today's look and its moment, None where it is switched off."""
    day = _local_day(desk)
    wanted = _LOOKS[kind].wall(desk)
    return f"{STUDIO}/{day}/{kind.value}", _at(desk, kind, day) if wanted else None


def _at(desk: Desk, kind: Kind, day: date) -> datetime:
    wall = time.fromisoformat(_LOOKS[kind].wall(desk))
    return datetime.combine(day, wall, ZoneInfo(desk.zone)).astimezone(UTC)


def _say_day(desk: Desk) -> tuple[str, str, str]:
    ahead = acts_of_day(*_live(desk))
    words = day_words(ahead, desk.now, desk.zone)
    return words, words, "\n".join(day_lines(ahead, desk.now, desk.zone))


def _say_evening(desk: Desk) -> tuple[str, str, str]:
    found = tonight(*_live(desk))
    words = tonight_words(found, desk.now, desk.zone)
    return words, tr("What to start tonight"), words


def _say_copies(desk: Desk) -> tuple[str, str, str]:
    """Say once a week that the last good copy is old."""
    day = _local_day(desk)
    told = (f"{STUDIO}/{day - timedelta(days=back)}/{Kind.COPY_OLD}" for back in range(1, 7))
    if any(desk.work.reminders.get(key) is not None for key in told):
        return "", "", ""
    words = old_words(desk.work.folder, day)
    return words, tr("Copies of the studio"), words


def _copies_at(desk: Desk) -> str:
    """Give when old copies are told: with the look ahead where there is one.

    Where copies are fresh there is nothing to wake up for.
    """
    if not old_words(desk.work.folder, _local_day(desk)):
        return ""
    return desk.settings.look_ahead or COPIES_AT


def _live(desk: Desk) -> tuple[list[Lot], datetime, QuietHours, dict[str, Milk]]:
    """Give what a look looks at: the lots in work, the present, the nights, each lot's milk."""
    lots = [desk.lot(code) for code in desk.work.lots.live_codes()]
    milks = desk.milks()
    pairs = ((lot.code, desk.milk_of(lot.code, milks)) for lot in lots)
    return lots, desk.now, desk.quiet, {code: milk for code, milk in pairs if milk is not None}


@dataclass(frozen=True)
class _LookRule:
    """How long after its moment a look is still worth telling, when that is, what it says."""

    lasts: timedelta
    say: Callable[[Desk], tuple[str, str, str]]
    wall: Callable[[Desk], str]
    """Its local time; "" where it is switched off."""


_LOOKS: Mapping[Kind, _LookRule] = {
    Kind.LOOK_AHEAD: _LookRule(timedelta(hours=6), _say_day, lambda desk: desk.settings.look_ahead),
    Kind.EVENING_LOOK: _LookRule(
        timedelta(hours=4), _say_evening, lambda desk: desk.settings.evening_look
    ),
    Kind.COPY_OLD: _LookRule(timedelta(hours=6), _say_copies, _copies_at),
}
