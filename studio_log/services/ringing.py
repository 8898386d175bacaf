"""Raising reminders: what is due is shown, then recorded; unanswered ones ring again.

Shown first and recorded after: killed in between, a reminder is shown twice rather than
never. An answered one is never shown, since what is shown is worked out from the journal
inside the same turn.
"""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.lots import Lot
from studio_log.domain.reminders import (
    SEEN,
    WITHOUT_ACT,
    Cause,
    Fate,
    Kind,
    Record,
    Reminder,
    Urgency,
    place_of,
    rings_next,
)
from studio_log.language.words import tr, tr_later
from studio_log.services.commands import AnswerReminder, Mark, NoteShown, Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.manners import Look
from studio_log.services.marking import mark, put_off_until
from studio_log.services.ports import Delivery, NoticeText
from studio_log.services.records import record_from
from studio_log.services.reminder_words import notice_text
from studio_log.services.subjects import ANSWERS, is_lot, settle_any
from studio_log.store.database import Store
from studio_log.store.values import DeliveryRecord

A_MINUTE = timedelta(minutes=1)
"""Longer ago it rang on the other laptop, and nobody came running: it will ring again."""
TEN_MINUTES = timedelta(minutes=10)
IN_WINDOW = tr_later("the window")
"""The channel of what the window shows by itself: its bar, its bench, its chime."""


def next_ring(desk: Desk) -> datetime | None:
    """Give when something may ring next, quiet hours kept; None where nothing is open."""
    at = desk.work.reminders.next_at()
    if at is None or at > desk.now:
        return at
    waking = desk.may_ring_from(desk.now)
    if waking == desk.now or not desk.settings.spoiling_at_night:
        return waking
    # At night only what spoils may ring; anything else that is due waits for the morning.
    spoiling = Urgency.SPOILING.value
    moments = [one.rings_at for one in desk.work.reminders.open() if one.urgency == spoiling]
    return min([waking, *(max(at, desk.now) for at in moments)])


def find_due(desk: Desk, *, under_way: Collection[str] = ()) -> tuple[list[Record], bool]:
    """Give the open records that ring now, freshly worked out, and whether any was quiet.

    Those the program counts down itself are marked as shown in the window and not given,
    nor are those whose notice is under way.
    """
    reminders = desk.work.reminders
    looked_at = (*reminders.due(desk.now), *reminders.rung_after(desk.now))
    subjects = {one.subject for one in looked_at}
    fresh: dict[str, Reminder] = {}
    for code in subjects:
        fresh |= {one.key: one for one in settle_any(desk, code, Cause())}
    due = []
    counted = []
    for kept in desk.work.reminders.due(desk.now):
        record = record_from(kept)
        reminder = fresh.get(record.reminder.key)
        if reminder is None or reminder.key in under_way:
            continue
        record = replace(record, reminder=reminder)
        if reminder.quietly:
            counted.append(record)
        elif _may_ring(desk, record) and rings_next(record) <= desk.now:
            due.append(record)
    record_raised(desk, counted, (IN_WINDOW,))
    return due, bool(counted)


def rung_lately(desk: Desk, shown: Mapping[str, datetime | None]) -> list[Record]:
    """Give the open records that rang within a minute and were not shown here since."""
    found = []
    for kept in desk.work.reminders.raised():
        record = record_from(kept)
        at, here = record.rung_at, shown.get(record.reminder.key)
        late = at is not None and desk.now - at > A_MINUTE
        if at is None or late or (here is not None and here >= at):
            continue
        if not record.reminder.quietly and _may_ring(desk, record):
            found.append(record)
    return found


def _may_ring(desk: Desk, record: Record) -> bool:
    night_rings = desk.settings.spoiling_at_night
    if record.reminder.urgency is Urgency.SPOILING and night_rings:
        return True
    return desk.may_ring_from(desk.now) == desk.now


def text_of(desk: Desk, records: Sequence[Record], looks: Sequence[Look] = ()) -> NoticeText:
    """Give one notice for these reminders and looks ahead; at least one of either."""
    if not records:
        title, body = looks[0].title, "\n".join(filter(None, (one.body for one in looks)))
        if len(looks) > 1:
            title, body = tr("Looking ahead"), "\n".join(one.words for one in looks)
        return NoticeText(title, body, Urgency.CALM.value, ())
    lots = {one.reminder.subject for one in records}
    known = {code: desk.lot(code) for code in lots if is_lot(code)}
    return notice_text(records, desk.now, known, [look.words for look in looks])


def ringing_keys(desk: Desk) -> frozenset[str]:
    """Give the keys of all that have rung and wait for an answer."""
    return frozenset(one.key for one in desk.work.reminders.raised())


def retold(desk: Desk, keys: Sequence[str]) -> NoticeText | None:
    """Give the notice for those of a group that still wait for an answer."""
    kept = (desk.work.reminders.get(key) for key in keys)
    records = [record_from(one) for one in kept if one is not None]
    return text_of(desk, records) if records else None


def record_raised(desk: Desk, records: Sequence[Record], channels: tuple[str, ...]) -> None:
    """Record that these were shown, and by what."""
    desk.put_records(
        replace(
            record,
            fate=Fate.RAISED,
            raised_at=record.raised_at or desk.now,
            times=record.times + 1,
            rung_at=desk.now,
            channels=tuple(dict.fromkeys((*record.channels, *channels))),
        )
        for record in records
        if record.open
    )


def record_deliveries(
    desk: Desk, records: Sequence[Record], deliveries: Sequence[Delivery]
) -> None:
    """Record each attempt by each channel; one that fails as the last did is told once."""
    for record in records:
        key = record.reminder.key
        before = desk.work.deliveries.of(key)
        last = {one.channel: (one.ok, one.words) for one in before}
        for one in deliveries:
            if one.ok or last.get(one.channel) != (one.ok, one.words):
                desk.work.deliveries.add(
                    DeliveryRecord(key, desk.now, one.channel, one.ok, one.words)
                )


def note_shown(desk: Desk, command: NoteShown) -> Outcome:
    """Record a further channel by which open reminders were shown."""
    kept = (desk.work.reminders.get(key) for key in command.keys)
    records = [record_from(one) for one in kept if one is not None]
    desk.put_records(
        replace(one, channels=tuple(dict.fromkeys((*one.channels, command.channel))))
        for one in records
    )
    record_deliveries(desk, records, [Delivery(command.channel, ok=True, words=command.words)])
    return Outcome()


def answers_of(store: Store, text: NoticeText, answer: str) -> Iterator[AnswerReminder]:
    """Give what a button of a notice asks for; of each step one reminder is put off."""
    with store.reading() as look:
        wanted = (text.answers_to,) if text.answers_to else text.keys
        kept = [one for key in wanted if (one := look.reminders.get(key)) is not None]
        records = [record for one in kept if (record := record_from(one)).open]
        first = {place_of(one.reminder): one.reminder.key for one in records}
    if answer not in {"done", "damp"}:
        yield from (AnswerReminder(key, "putoff", put_off=TEN_MINUTES) for key in first.values())
    elif text.answers_to:
        yield AnswerReminder(text.answers_to, answer)


def still_open(desk: Desk, records: Sequence[Record]) -> list[Record]:
    """Give those of the shown records that nobody has answered meanwhile."""
    kept = (desk.work.reminders.get(record.reminder.key) for record in records)
    pairs = zip(records, kept, strict=True)
    return [record for record, now in pairs if now is not None and record_from(now).open]


ACT_OF: Mapping[Kind, Act] = {
    Kind.TEND: Act.TEND,
    Kind.MAY_END: Act.END,
    Kind.READY: Act.END,
    Kind.IS_DRY: Act.DRY,
    Kind.START: Act.START,
}


def answer(desk: Desk, command: AnswerReminder) -> Outcome:
    """Answer a reminder by the act that fits it; one without an act is put on record."""
    kept = desk.work.reminders.get(command.key)
    if kept is None:
        raise Refusal(tr("That reminder is not known any more; the bench shows what is open."))
    record = record_from(kept)
    act = _ANSWERS.get(command.answer)
    if act is None:
        raise Refusal(tr("A reminder is not answered by {answer!r}.", answer=command.answer))
    if not record.open:
        what = tr(record.answer or tr_later("no longer needed"))
        raise Refusal(tr("That was answered already: {what}. Nothing was changed.", what=what))
    other = ANSWERS.get(record.reminder.subject[:1])
    if other is not None:
        return other(desk, record, command)
    chosen = act(desk, record)
    step = record.reminder.step
    if chosen is None or step is None:
        return _put_on_record(desk, record, command)
    marked = Mark(
        record.reminder.subject,
        str(step),
        chosen,
        at=command.at,
        note=command.note,
        put_off=command.put_off,
        until_morning=command.until_morning,
        sure=command.sure,
    )
    return mark(desk, marked)


def _act_done(desk: Desk, record: Record) -> Act | None:
    kind, number = record.reminder.kind, record.reminder.step
    if kind in {Kind.LAST_CALL, Kind.PAST} and number is not None:
        step = desk.lot(record.reminder.subject).step(number)
        if step.start is None:
            return Act.START
        return Act.DRY if step.spec.ask_dry is not None else Act.END
    return ACT_OF.get(kind)


def _act_put_off(_desk: Desk, record: Record) -> Act | None:
    """Put a step's reminders off in its journal; others on their own record."""
    return None if record.reminder.kind in WITHOUT_ACT else Act.PUTOFF


_ANSWERS: Mapping[str, Callable[[Desk, Record], Act | None]] = {
    "done": _act_done,
    "damp": lambda _desk, _record: Act.DAMP,
    "putoff": _act_put_off,
    "skip": lambda _desk, _record: Act.SKIP,
}


def _put_on_record(desk: Desk, record: Record, command: AnswerReminder) -> Outcome:
    """Answer a mark or a warning, which no act of a step answers."""
    lot = desk.lot(record.reminder.subject)
    if command.answer == "putoff":
        until = put_off_until(desk, command)
        moved = replace(record.reminder, rings_at=until)
        desk.put_records([replace(record, reminder=moved, fate=Fate.WAITING, rung_at=None)])
        words = tr("{title} is put off.", title=record.reminder.title)
    else:
        return _seen(desk, lot, record, clean(command.note, tr("The note")))
    return Outcome(words, lots=frozenset({lot.code}), reminders=True, subject="")


def _seen(desk: Desk, lot: Lot, record: Record, note: str) -> Outcome:
    """Write into the journal that it was seen, so that it can be taken back like any act."""
    one = record.reminder
    said = f"{one.title}: {SEEN}"
    entry = desk.entry(
        lot.code,
        Act.NOTE,
        step=one.step,
        note=f"{said}. {note}" if note else said,
        data={"seen": one.key.partition("/")[2]},
    )
    after = desk.write(lot, entry)
    answer = f"{SEEN}: {note}" if note else SEEN
    desk.settle(after, Cause(one.step, answer, key=one.key))
    code = lot.code
    return Outcome(f"{said}.", lots=frozenset({code}), reminders=True, subject=code)
