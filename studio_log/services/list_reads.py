"""The lot list: what each lot is doing, in words, and what it needs next."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, time
from typing import Any
from zoneinfo import ZoneInfo

from studio_log.domain.lots import Cure, Lot, LotState, LotStep, StepState, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.domain.search_text import read_search, search_words
from studio_log.domain.wall_clock import from_wall
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.services import questions as q
from studio_log.services.desk import Desk
from studio_log.services.lots_found import LotsFound
from studio_log.services.lots_read import lots_read
from studio_log.services.search import FindLots
from studio_log.store.values import LotQuery

LIVE = ("planned", "in-work", "curing", "ready")
LONGEST_LIST = 500
STATES = {
    LotState.PLANNED: tr_later("planned"),
    LotState.IN_WORK: tr_later("in work"),
    LotState.CURING: tr_later("curing"),
    LotState.READY: tr_later("ready"),
    LotState.USED: tr_later("used"),
    LotState.STOPPED: tr_later("stopped"),
}
ORDER = {"in-work": 0, "ready": 1, "curing": 2, "planned": 3, "used": 4, "stopped": 5}


def lot_lines(_house: Any, desk: Desk, question: q.LotLinesFor) -> q.LotLines:
    """Give the rows of the list and how many each filter would show."""
    found = find_lots(desk, question.find, question.state)
    lines = list(lot_rows(desk, found.codes[:LONGEST_LIST]))
    if found.order != ("need", False):
        return q.LotLines(tuple(lines), found.counts)
    far = datetime.max.replace(tzinfo=desk.now.tzinfo)
    lines.sort(
        key=lambda line: (
            ORDER[line.state],
            -Urgency(line.urgency).rank,
            line.need_at or far,
            line.code,
        )
    )
    return q.LotLines(tuple(lines), found.counts)


def lots_found(_house: Any, desk: Desk, question: FindLots) -> LotsFound:
    """Give all that is found by its codes, and the first rows."""
    sort = (question.sort, question.backwards)
    found = find_lots(desk, question.find, question.state, sort)
    return replace(found, first=lot_rows(desk, found.codes[: question.rows]))


def find_lots(
    desk: Desk, find: str, state: str, sort: tuple[str, bool] = ("need", False)
) -> LotsFound:
    """Look for lots; a state or an order that was typed goes before the one that was chosen."""
    here = ZoneInfo(desk.zone)
    search = read_search(find.strip(), desk.now.astimezone(here).date())
    states = {"live": LIVE, "all": ()}.get(state, (state,))
    query = LotQuery(
        states=(search.state,) if search.state else states,
        find=search.words,
        search=search,
        begun_from=_midnight(search.begun_from, here),
        begun_before=_midnight(search.begun_before, here),
        now=desk.now,
        order=search.sort or sort[0],
        backwards=search.backwards if search.sort else sort[1],
    )
    found = desk.work.lots.found(query)
    counts = {one.value: 0 for one in LotState} | dict(found.counts)
    counts["live"], counts["all"] = (sum(counts[one] for one in each) for each in (LIVE, LotState))
    said, order = search_words(search), (query.order, query.backwards)
    return LotsFound(found.codes, counts, said, order=order)


def _midnight(day: date | None, here: ZoneInfo) -> datetime | None:
    return None if day is None else from_wall(datetime.combine(day, time.min), here).at


def lot_rows(desk: Desk, codes: Sequence[str]) -> tuple[q.LotLine, ...]:
    """Give the rows of these lots. Their journals are read at once, and only where need be."""
    kept = desk.work.lots.of(codes)
    lots = lots_read(desk, kept, codes)
    milks = desk.milks() if lots else []
    return tuple(
        lot_line(desk, lots[code], desk.reminders(lots[code], milks))
        for code in codes
        if code in lots
    )


def lot_line(desk: Desk, lot: Lot, coming: Sequence[Reminder]) -> q.LotLine:
    """Give one row of a lot with its reminders."""
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
        need=" ".join(part for part in need_words(desk, lot, first) if part),
        need_at=first.rings_at if first else None,
        urgency=first.urgency.value if first is pressing and first else "calm",
        strip=tuple(
            (step.spec.kind, lot.state_of(step).value) for step in lot.steps if lot.taken(step)
        ),
        cells=line_cells(desk, lot, need_words(desk, lot, first)),
    )


def line_cells(desk: Desk, lot: Lot, need: tuple[str, str]) -> Mapping[str, str]:
    """Give what the columns of the list say of a lot, each in words; nothing known is ""."""
    cure = cure_of(lot)
    coats = sum(
        step.spec.kind is StepKind.DIP and step.coat is not None and step.start is not None
        and step.skipped is None for step in lot.steps
    )  # fmt: skip
    grams, litres = lot.grams, lot.vessel_litres
    return {
        "state": tr(STATES[lot.state(desk.now)]),
        "next": need[0],
        "when": need[1],
        "fibre": ", ".join(sorted({piece.title for piece in lot.pieces})),
        "weight": words.mass(grams, desk.units) if grams is not None else "",
        "coats": str(coats) if coats else "",
        "age": tr("{n} d", n=cure.age(desk.now).days) if cure else "",
        "vessel": words.litres(litres, desk.units) if litres is not None else "",
        "shelf": lot.place,
    }


def doing_words(desk: Desk, lot: Lot) -> str:
    """Say what a lot is doing: "First soak · 3 h 40 min in"."""
    state = lot.state(desk.now)
    cure = cure_of(lot)
    if state is LotState.STOPPED:
        if lot.voided:
            return tr("Taken back")
        return tr("Joined into {lot}", lot=lot.joined_into) if lot.joined_into else tr("Stopped")
    if state is LotState.USED and lot.use is not None:
        when = words.moment(lot.use.at, desk.now, desk.zone)
        if cure is None:
            return tr("Used {when}", when=when)
        return tr("Used {when}, cured {n} d", when=when, n=cure.age(desk.now).days)
    return _live_words(desk, lot, cure)


def _live_words(desk: Desk, lot: Lot, cure: Cure | None) -> str:
    running = [step for step in lot.open_steps() if step.spec.kind is not StepKind.CURE]
    if running:
        return _running_words(desk, lot, running[-1])
    if cure is not None and cure.running:
        return cure_line(cure, desk.now)
    ahead = next((one for one in lot.steps if lot.state_of(one) is StepState.OPEN), None)
    return tr("Next: {step}", step=ahead.title) if ahead else tr("Every step is done")


def cure_line(cure: Cure, now: datetime) -> str:
    """Say how far a cure is: "Curing · day 12 of 90"."""
    day = cure.age(now).days
    if now >= cure.ready_at:
        return tr("{ready} · day {n}", ready=cure.plan.ready_title.capitalize(), n=day)
    return tr("Curing · day {n} of {of}", n=day, of=cure.days)


IN_WORDS = {
    StepKind.DRY: tr_later("Drying"),
    StepKind.SPIN: tr_later("Spinning out"),
    StepKind.DIP: tr_later("Dip"),
}
"""What a coat's steps are called where the coat is named beside them."""


def work_words(lot: Lot, step: LotStep) -> str:
    """Say what is being done, and to which coat: "Drying · coat 2 of 3"."""
    if step.coat is None:
        return step.title
    of = max(lot.coats(step.join), step.coat)
    work = tr(IN_WORDS[step.spec.kind]) if step.spec.kind in IN_WORDS else step.title
    return tr("{work} · coat {n} of {of}", work=work, n=step.coat, of=of)


def _running_words(desk: Desk, lot: Lot, step: LotStep) -> str:
    since = step.start
    work = work_words(lot, step)
    if since is None or desk.now <= since:
        return work
    return tr("{work} · {span} in", work=work, span=words.span(desk.now - since))


NEED = {
    Kind.TEND: tr_later("stir"),
    Kind.IS_DRY: tr_later("dry?"),
    Kind.START: tr_later("begin"),
    Kind.READY: tr_later("end"),
    Kind.MAY_END: tr_later("may end"),
    Kind.LAST_CALL: tr_later("last call"),
    Kind.PAST: tr_later("too late since"),
    Kind.USE_BY: tr_later("soak beans"),
}


BY_ORDER = {Kind.START, Kind.READY}
"""Kinds whose need is the first word of the step's own order: "drain", "lift"."""


def _mark_words(desk: Desk, reminder: Reminder) -> tuple[str, str]:
    """Say what a mark of the cure asks, and when: ("paint by", "Fri 12 June")."""
    mark = reminder.key.rsplit("/", 1)[-1]
    at = words.day(reminder.latest or reminder.due, desk.zone)
    if mark == "resists":
        return (tr("painting time is over"), "")
    return (tr("paint by") if mark == "paint" else tr("ready"), at)


def need_words(desk: Desk, lot: Lot, reminder: Reminder | None) -> tuple[str, str]:
    """Say what a lot needs next, and when: ("stir", "now"), ("dry?", "16:40")."""
    if reminder is None:
        return ("", "")
    step = lot.step(reminder.step) if reminder.step is not None else None
    verb = tr(NEED.get(reminder.kind, ""))
    if reminder.kind in BY_ORDER and step is not None:
        order = step.spec.order if step.start is None else step.spec.end_order
        verb = order.split(" ", 1)[0].lower()
    if reminder.kind is Kind.TEND and step is not None and step.spec.tending is not None:
        verb = step.spec.tending.act.lower()
    if reminder.kind is Kind.CURE_MARK:
        return _mark_words(desk, reminder)
    if reminder.due <= desk.now:
        passed = reminder.kind is Kind.PAST
        return (tr("too late:"), tr("see why")) if passed else (verb, tr("now"))
    return (verb, words.moment(reminder.rings_at, desk.now, desk.zone))
