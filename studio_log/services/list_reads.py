"""The lot list: what each lot is doing, in words, and what it needs next."""

from datetime import datetime
from typing import Any

from studio_log.domain.lots import Cure, Lot, LotState, LotStep, StepState, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.store.values import LotQuery

LIVE = ("planned", "in-work", "curing", "ready")
LONGEST_LIST = 500
ORDER = {"in-work": 0, "ready": 1, "curing": 2, "planned": 3, "used": 4, "stopped": 5}


def lot_lines(_house: Any, desk: Desk, question: q.LotLinesFor) -> q.LotLines:
    """Give the rows of the list and how many each filter would show."""
    states = {"live": LIVE, "all": ()}.get(question.state, (question.state,))
    find = question.find.strip()[:200]
    page = desk.work.lots.page(LotQuery(states=states, find=find, now=desk.now, limit=LONGEST_LIST))
    lines = [lot_line(desk, desk.lot(one.code)) for one in page.lines]
    far = datetime.max.replace(tzinfo=desk.now.tzinfo)
    lines.sort(
        key=lambda line: (
            ORDER[line.state],
            -Urgency(line.urgency).rank,
            line.need_at or far,
            line.code,
        )
    )
    return q.LotLines(tuple(lines), _counts(desk, find))


def _counts(desk: Desk, find: str) -> dict[str, int]:
    def count(*states: str) -> int:
        query = LotQuery(states=states, find=find, now=desk.now, limit=1)
        return desk.work.lots.page(query).total

    counts = {state.value: count(state.value) for state in LotState}
    counts["live"] = sum(counts[state] for state in LIVE)
    counts["all"] = sum(counts[state.value] for state in LotState)
    return counts


def lot_line(desk: Desk, lot: Lot) -> q.LotLine:
    """Give one row."""
    coming = desk.reminders(lot)
    wanted = [one for one in coming if one.kind not in {Kind.MAY_END, Kind.PAST, Kind.LAST_CALL}]
    passed = [one for one in coming if one.due <= desk.now]
    pressing = max(passed, key=lambda one: (one.urgency.rank, one.due), default=None)
    first = pressing or (wanted[0] if wanted else (coming[0] if coming else None))
    state = lot.state(desk.now)
    return q.LotLine(
        code=lot.code,
        name=lot.name,
        state=state.value,
        doing=doing_words(desk, lot),
        need=need_words(desk, lot, first),
        need_at=first.rings_at if first else None,
        urgency=first.urgency.value if first is pressing and first else "calm",
        strip=tuple(
            (step.spec.kind, lot.state_of(step).value) for step in lot.steps if lot.taken(step)
        ),
    )


def doing_words(desk: Desk, lot: Lot) -> str:
    """Say what a lot is doing: "First soak · 3 h 40 min in"."""
    state = lot.state(desk.now)
    cure = cure_of(lot)
    if state is LotState.STOPPED:
        return "Taken back" if lot.voided else "Stopped"
    if state is LotState.USED and lot.use is not None:
        age = f", cured {cure.age(desk.now).days} d" if cure else ""
        return f"Used {words.moment(lot.use.at, desk.now, desk.zone)}{age}"
    return _live_words(desk, lot, cure)


def _live_words(desk: Desk, lot: Lot, cure: Cure | None) -> str:
    running = [step for step in lot.open_steps() if step.spec.kind is not StepKind.CURE]
    if running:
        return _running_words(desk, lot, running[-1])
    if cure is not None and cure.running:
        return cure_line(cure, desk.now)
    ahead = next((one for one in lot.steps if lot.state_of(one) is StepState.OPEN), None)
    return f"Next: {ahead.title}" if ahead else "Every step is done"


def cure_line(cure: Cure, now: datetime) -> str:
    """Say how far a cure is: "Curing · day 12 of 90"."""
    day = cure.age(now).days
    if now >= cure.ready_at:
        return f"{cure.plan.ready_title.capitalize()} · day {day}"
    return f"Curing · day {day} of {cure.days}"


IN_WORDS = {StepKind.DRY: "Drying", StepKind.SPIN: "Spinning out", StepKind.DIP: "Dip"}
"""What a coat's steps are called where the coat is named beside them."""


def work_words(lot: Lot, step: LotStep) -> str:
    """Say what is being done, and to which coat: "Drying · coat 2 of 3"."""
    if step.coat is None:
        return step.title
    of = max(lot.coats(step.join), step.coat)
    return f"{IN_WORDS.get(step.spec.kind, step.title)} · coat {step.coat} of {of}"


def _running_words(desk: Desk, lot: Lot, step: LotStep) -> str:
    since = step.start
    inside = f" · {words.span(desk.now - since)} in" if since and desk.now > since else ""
    return f"{work_words(lot, step)}{inside}"


NEED = {
    Kind.TEND: "stir",
    Kind.IS_DRY: "dry?",
    Kind.START: "begin",
    Kind.READY: "end",
    Kind.MAY_END: "may end",
    Kind.LAST_CALL: "last call",
    Kind.PAST: "too late since",
    Kind.USE_BY: "soak beans",
}


BY_ORDER = {Kind.START, Kind.READY}
"""Kinds whose need is the first word of the step's own order: "drain", "lift"."""


def _mark_words(desk: Desk, reminder: Reminder) -> str:
    """Say what a mark of the cure asks: "paint by Fri 12 June", "ready Tue 8 September"."""
    mark = reminder.key.rsplit("/", 1)[-1]
    at = words.day(reminder.latest or reminder.due, desk.zone)
    if mark == "resists":
        return "painting time is over"
    return f"{'paint by' if mark == 'paint' else 'ready'} {at}"


def need_words(desk: Desk, lot: Lot, reminder: Reminder | None) -> str:
    """Say what a lot needs next and when: "stir now", "dry? 16:40"."""
    if reminder is None:
        return ""
    step = lot.step(reminder.step) if reminder.step is not None else None
    verb = NEED.get(reminder.kind, "")
    if reminder.kind in BY_ORDER and step is not None:
        order = step.spec.order if step.start is None else step.spec.end_order
        verb = order.split(" ", 1)[0].lower()
    if reminder.kind is Kind.TEND and step is not None and step.spec.tending is not None:
        verb = step.spec.tending.act.lower()
    if reminder.kind is Kind.CURE_MARK:
        return _mark_words(desk, reminder)
    if reminder.due <= desk.now:
        return f"{verb} now" if reminder.kind is not Kind.PAST else "too late: see why"
    return f"{verb} {words.moment(reminder.rings_at, desk.now, desk.zone)}"
