"""The bench: what needs hands now, by what spoils first; then later; and what is due."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, time, timedelta
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.milks import Milk
from studio_log.domain.reminders import (
    WITHOUT_ACT,
    Fate,
    Kind,
    Record,
    Reminder,
    Urgency,
    place_of,
    told_together,
)
from studio_log.domain.wall_clock import known_zone
from studio_log.domain.windows import SHORT
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.services.records import record_from
from studio_log.services.reminder_words import answer_words, second_words
from studio_log.services.subjects import reminders_of_others

TAKE_BACK_FOR = timedelta(minutes=10)
MOST_CARDS = (12, 12, 5)
"""How many stand under later today, tonight, further on."""
SECOND_COUNTS = {Kind.PAST, Kind.LAST_CALL, Kind.MAY_END}
"""Kinds that repeat what another one of the same step says; not listed as coming."""


def live_reminders(desk: Desk) -> list[tuple[Lot | None, Reminder, Record]]:
    """Give every reminder of lots in work that nobody has answered, with its record.

    Then those of baths, trials and swatches, which have no lot.
    """
    kept = {one.key: record_from(one) for one in desk.work.reminders.open()}
    milks = desk.milks()
    found = []
    for lot, reminder in _worked_out(desk, milks):
        record = kept.get(reminder.key)
        if record is None and _is_answered(desk, reminder):
            continue
        fresh = _fresh(record, reminder)
        found.append((lot, fresh.reminder, fresh))
    return found


def _worked_out(desk: Desk, milks: Sequence[Milk]) -> Iterator[tuple[Lot | None, Reminder]]:
    for code in desk.work.lots.live_codes():
        lot = desk.lot(code)
        for reminder in desk.reminders(lot, milks):
            yield lot, reminder
    for reminder in reminders_of_others(desk):
        yield None, reminder


def _is_answered(desk: Desk, reminder: Reminder) -> bool:
    kept = desk.work.reminders.get(reminder.key)
    return kept is not None and record_from(kept).fate is Fate.ANSWERED


def _fresh(record: Record | None, reminder: Reminder) -> Record:
    if record is None:
        return Record(reminder)
    put_off = record.reminder.rings_at if record.reminder.kind in WITHOUT_ACT else None
    if put_off is not None and put_off > reminder.rings_at and record.fate is Fate.WAITING:
        reminder = Reminder(**{**reminder.__dict__, "rings_at": put_off})
    return Record(reminder, record.fate, record.raised_at, record.times, record.rung_at)


def reminders_due(desk: Desk, question: q.RemindersFor) -> list[tuple[Reminder, float]]:
    """Give reminders due or coming with how many seconds late each is (0 for those ahead)."""
    at = question.at or desk.now
    until = _later(at, question.within)
    found = [
        (reminder, max((at - reminder.due).total_seconds(), 0.0))
        for _, reminder, _ in live_reminders(desk)
        if reminder.due <= until
    ]
    return sorted(found, key=lambda one: (one[0].due, one[0].key))


def _later(at: datetime, seconds: float) -> datetime:
    if not 0 <= seconds <= 400 * 86400 * 10:
        raise Refusal(tr("Look ahead by up to ten years, as in 24h or 90d."))
    return at + timedelta(seconds=seconds)


def bench(house: Any, desk: Desk, _question: q.BenchFor) -> q.Bench:
    """Give the bench."""
    everything = live_reminders(desk)
    lots = {lot.code: lot for lot, _, _ in everything if lot is not None}
    now, coming = _now_and_coming(desk, everything)
    now_cards = [_card(desk, lots, record) for record in now]
    parts = _by_part_of_day(desk, coming)
    later, tonight, further = (
        tuple(_card(desk, lots, one) for one in part[:most])
        for part, most in zip(parts, MOST_CARDS, strict=True)
    )
    return q.Bench(
        now=tuple(now_cards),
        later=later,
        tonight=tonight,
        further=further,
        next_words=_next_words(desk, coming, bool(now_cards)),
        quiet_words=_quiet_words(desk),
        take_back=_take_back(house, desk),
    )


def day_parts(desk: Desk) -> tuple[list[Record], list[Record], list[Record]]:
    """Give every reminder of today: due now, later today, tonight and in the morning."""
    now, coming = _now_and_coming(desk, live_reminders(desk))
    later, tonight, _ = _by_part_of_day(desk, coming)
    return now, later, tonight


def _now_and_coming(
    desk: Desk, everything: Sequence[tuple[Lot | None, Reminder, Record]]
) -> tuple[list[Record], list[Record]]:
    """Part what needs hands now from what is coming, soonest first; each act counts once."""
    due = [record for _, one, record in everything if _is_now(desk, one)]
    now = list(told_together(due))
    counted = {place_of(record.reminder) for record in now}
    coming = [
        record
        for _, one, record in everything
        if not _is_now(desk, one) and one.kind not in SECOND_COUNTS and place_of(one) not in counted
    ]
    return now, sorted(coming, key=lambda record: record.reminder.rings_at)


def _by_part_of_day(desk: Desk, coming: Sequence[Record]) -> tuple[list[Record], ...]:
    """Share out what is coming: today, tonight with its morning, further on."""
    limits = _evening_and_noon(desk)
    parts: tuple[list[Record], ...] = ([], [], [])
    for one in coming:
        parts[bisect_right(limits, one.reminder.rings_at)].append(one)
    return parts


def _evening_and_noon(desk: Desk) -> tuple[datetime, datetime]:
    """Give when the day ends (bedtime, else midnight) and the noon of the day after that."""
    zone = known_zone(desk.zone)
    night = next(desk.quiet.nights(desk.now, desk.now + timedelta(days=2)), None)
    tomorrow = desk.now.astimezone(zone).date() + timedelta(days=1)
    bedtime = night.start if night else datetime.combine(tomorrow, time(), zone)
    morning = night.end.astimezone(zone).date() if night else tomorrow
    noon = datetime.combine(morning, time(12), zone)
    return bedtime.astimezone(UTC), max(noon.astimezone(UTC), bedtime.astimezone(UTC))


def _quiet_words(desk: Desk) -> str:
    hours = desk.quiet.words
    return (
        tr("No quiet hours are set.")
        if hours == "none"
        else tr("Quiet hours {hours}: nothing rings.", hours=hours)
    )


def _is_now(desk: Desk, reminder: Reminder) -> bool:
    """Due, or a short step that is being watched through."""
    return reminder.rings_at <= desk.now or (reminder.quietly and reminder.kind is Kind.READY)


def _next_words(desk: Desk, coming: list[Record], busy: bool) -> str:  # noqa: FBT001
    if not coming:
        return "" if busy else tr("Nothing is waiting. A new lot begins with “New lot”.")
    first = coming[0].reminder
    when = words.moment(first.rings_at, desk.now, desk.zone)
    return (
        tr("Next: {when}, {title}.", when=when, title=first.title)
        if busy
        else tr("Nothing until {when}: {title}.", when=when, title=first.title)
    )


def _take_back(house: Any, desk: Desk) -> q.TakeBack | None:
    if house.last_act is None:
        return None
    outcome, at = house.last_act
    if desk.now > at + TAKE_BACK_FOR:
        return None
    return q.TakeBack(outcome.subject, outcome.words, at + TAKE_BACK_FOR)


def _card(desk: Desk, lots: dict[str, Lot], record: Record) -> q.Card:
    one = record.reminder
    step = lots[one.subject].step(one.step) if one.step is not None else None
    late = desk.now - one.due
    due_words = words.moment(one.rings_at, desk.now, desk.zone)
    if one.rings_at <= desk.now:
        due_words = tr("due {moment}", moment=words.moment(one.due, desk.now, desk.zone))
        if late >= timedelta(minutes=2):
            due_words += f" · {words.lateness(late)}"
    return q.Card(
        key=one.key,
        lot=one.subject,
        step=one.step,
        kind=one.kind.value,
        urgency=one.urgency.value,
        due=one.due,
        due_words=due_words,
        title=one.title,
        why=one.why,
        if_late=one.if_late,
        answer=answer_words(one, step),
        second=second_words(step),
        countdown_to=_countdown(one, step),
        raised=record.fate is Fate.RAISED,
        put_off_warning=_put_off_warning(desk, one),
    )


def _countdown(reminder: Reminder, step: LotStep | None) -> datetime | None:
    short = step is not None and step.spec.lasts is not None and step.spec.lasts.aim < SHORT
    running = step is not None and step.running
    if not (short and running) or step is None or step.start is None or step.spec.lasts is None:
        return None
    return step.start + step.spec.lasts.aim if reminder.kind is not Kind.TEND else None


def _put_off_warning(desk: Desk, reminder: Reminder) -> str:
    if reminder.latest is None or reminder.urgency not in {Urgency.NOW, Urgency.SPOILING}:
        return ""
    limit = words.moment(reminder.latest, desk.now, desk.zone)
    verb = "was" if reminder.latest <= desk.now else "is"
    return tr(
        "The limit {verb} {limit}. {if_late}", verb=verb, limit=limit, if_late=reminder.if_late
    ).strip()
