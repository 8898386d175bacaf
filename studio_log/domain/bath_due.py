"""Reminders of a bath, worked out from bath, clock and quiet hours; the same in, the same out."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.baths import Bath
from studio_log.domain.due import evening_before
from studio_log.domain.number_text import plain
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr, tr_later

LEAD: Final = timedelta(hours=2)
"""Before a planned use, to warm and feed (common practice, no source)."""
HANDS_FREE: Final = timedelta(hours=1)
"""After the use that spent a bath, until refreshing is told: the work with it goes on first."""
URGENCY: Final = {
    Kind.MAKE_READY: Urgency.SOON,
    Kind.REFRESH: Urgency.CALM,
    Kind.USE_BY: Urgency.CALM,
}
ORDERS: Final = {
    "warm": tr_later("Warm and feed"),
    "feed": tr_later("Feed"),
    "ready": tr_later("Make ready"),
}


def bath_reminders(bath: Bath, now: datetime, quiet: QuietHours) -> list[Reminder]:
    """Give every reminder of a bath that is due or coming, in order of time."""
    if not bath.live:
        return []
    told = (rule(bath, now, quiet) for rule in (_make_ready, _refresh, _use_by))
    found = [
        _make(bath, one, quiet) for one in told if one is not None and one.tail not in bath.answered
    ]
    return sorted(found, key=lambda one: (one.rings_at, -one.urgency.rank, one.key))


def label(bath: Bath) -> str:
    """Give what a bath is called: its name, else its kind."""
    return bath.name or tr(bath.kind.title)


def making_ready(bath: Bath) -> str:
    """Give the order that makes a bath ready: "Warm and feed"."""
    if bath.kind.warm_to is not None:
        return tr(ORDERS["warm"])
    return tr(ORDERS["feed" if bath.kind.vat else "ready"])


def ready_from(use: datetime, quiet: QuietHours) -> datetime:
    """Give when to make a bath ready: two hours before its use, or the evening before.

    The evening where the two hours before would begin in quiet hours.
    """
    at = use - LEAD
    return evening_before(use, quiet) if quiet.is_quiet(at) else at


@dataclass(frozen=True)
class _Told:
    """What one reminder of a bath says; `tail` ends its key."""

    kind: Kind
    tail: str
    due: datetime
    act: str
    why: str
    if_late: str
    latest: datetime | None = None


def _make(bath: Bath, told: _Told, quiet: QuietHours) -> Reminder:
    return Reminder(
        key=f"{bath.code}/{told.tail}",
        subject=bath.code,
        step=None,
        kind=told.kind,
        urgency=URGENCY[told.kind],
        due=told.due,
        rings_at=quiet.waking(told.due),
        title=f"{told.act} {bath.code} {label(bath)}",
        why=told.why,
        if_late=told.if_late,
        latest=told.latest,
    )


def _make_ready(bath: Bath, now: datetime, quiet: QuietHours) -> _Told | None:
    plan = bath.plan
    if plan is None or plan.ready:
        return None
    why = tr("Its next use is planned for {at}.", at=_local(plan.at, now, quiet.zone))
    if bath.kind.warm_to is not None:
        why += tr(" Warm it to {heat} °C.", heat=f"{bath.kind.warm_to:g}")
    late = tr("A vat that idles cools, loses its pH and goes blue; cloth comes out of it pale.")
    return _Told(
        Kind.MAKE_READY,
        f"ready/{plan.number}",
        max(ready_from(plan.at, quiet), plan.made_at),  # late is only what could be known
        making_ready(bath),
        why,
        late if bath.kind.vat else "",
        plan.at,
    )


def _refresh(bath: Bath, _now: datetime, quiet: QuietHours) -> _Told | None:
    since = bath.refresh_since
    if since is None:
        return None
    why = tr(
        "{kilos} kg of cloth through it since {day}; uses: {count}.",
        kilos=plain(bath.grams_since / 1000, 2),
        day=_day(bath.fresh_since, quiet.zone),
        count=len(bath.uses_since),
    )
    do = tr(bath.kind.refresh.do) if bath.kind.refresh is not None else ""
    return _Told(
        Kind.REFRESH,
        f"refresh/{len(bath.refreshed)}",
        since + HANDS_FREE,
        tr("Refresh"),
        f"{why} {do}".strip(),
        tr("A spent bath fixes or colours cloth unevenly."),
    )


def _use_by(bath: Bath, _now: datetime, quiet: QuietHours) -> _Told | None:
    if bath.kind.tell is None or bath.kind.keeps is None:
        return None
    why = tr(
        "Made or refreshed {day}; such a bath ferments or moulds after about {days} days.",
        day=_day(bath.fresh_since, quiet.zone),
        days=bath.kind.keeps.days,
    )
    return _Told(
        Kind.USE_BY,
        f"use_by/{len(bath.refreshed)}",
        bath.fresh_since + bath.kind.tell,
        tr("Use up, skim or simmer"),
        why,
        tr("Mould harms the lungs: pour a mouldy bath away."),
        bath.use_by,
    )


def _local(at: datetime, now: datetime, zone: str) -> str:
    there, here = at.astimezone(ZoneInfo(zone)), now.astimezone(ZoneInfo(zone))
    return f"{there:%H:%M}" if there.date() == here.date() else f"{_day(at, zone)} {there:%H:%M}"


def _day(at: datetime, zone: str) -> str:
    return day_words(at.astimezone(ZoneInfo(zone)).date())
