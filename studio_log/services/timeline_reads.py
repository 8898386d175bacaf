"""Lanes for the timeline: what was, what runs, what is planned."""

from datetime import datetime, timedelta
from typing import cast
from zoneinfo import ZoneInfo

from studio_log.domain.closed_hours import REACH, closed_stretches
from studio_log.domain.lots import CureMark, Lot, LotStep, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.sharing import takings_of
from studio_log.domain.tending import coming_tendings
from studio_log.domain.windows import SHORT, StepWindow, planned_spans, windows_of
from studio_log.language.words import tr, tr_later
from studio_log.present import words
from studio_log.present.lanes import (
    Bar,
    BarState,
    Closed,
    Drop,
    Lane,
    Mark,
    MarkKind,
    Night,
    Stitch,
)
from studio_log.present.timeline_shared import SharedRow, Stock, shared_rows
from studio_log.present.timeline_story import LaneFacts, Span
from studio_log.services import questions as q
from studio_log.services.desk import Desk, whole_code
from studio_log.services.studio_hours import studio_hours
from studio_log.store.values import LotQuery

FUTURE_SHOWN = timedelta(days=200)
MOST_LANES = 400
NIGHTS_LEAST = (timedelta(days=6), timedelta(days=15))
"""How far back and ahead of now nights are told at least."""
NIGHTS_MOST = (timedelta(days=90), timedelta(days=400))
"""And at most, whatever the lanes reach to: a year of nights takes 10 ms."""


def timeline(desk: Desk, question: q.TimelineFor) -> q.Timeline:
    """Give the lanes of the lots named, else of every lot that is not ended."""
    codes = [whole_code(code) for code in question.codes] or _by_need(desk)
    lots = [desk.lot(code) for code in codes[:MOST_LANES]]
    lanes = [lane(desk, lot) for lot in lots if lot.started or lot.planned or question.codes]
    return sheet_of(desk, lanes, left_out=max(0, len(codes) - MOST_LANES))


def sheet_of(desk: Desk, lanes: list[Lane], *, left_out: int = 0) -> q.Timeline:
    """Give lanes as a timeline: what needs hands first, and what stands around them."""
    lanes.sort(key=lambda one: (_next_hands(one, desk.now), one.code))
    first, last = _nights_span(lanes, desk.now)
    nights = tuple(Night(night.start, night.end) for night in desk.quiet.nights(first, last))
    return q.Timeline(
        tuple(lanes),
        nights,
        desk.now,
        desk.zone,
        closed=_closed(desk, first, last),
        shared=_shared(desk, lanes),
        left_out=left_out,
    )


def _closed(desk: Desk, first: datetime, last: datetime) -> tuple[Closed, ...]:
    """Give when the workshop is closed, with the names of the days that differ."""
    edges = [at.astimezone(ZoneInfo(desk.zone)).date() for at in (first, last)]
    hours, _ = studio_hours(desk.settings, edges[0] - REACH, edges[1] + REACH)
    found = closed_stretches(hours, desk.zone, first, last)
    return tuple(Closed(one.start, one.end, one.days) for one in found)


def _by_need(desk: Desk) -> list[str]:
    """Give the codes of every lot that is not ended; of too many those first that need hands."""
    live = desk.work.lots.live_codes()
    if len(live) <= MOST_LANES:
        return list(live)
    there = set(live)
    needed = desk.work.lots.found(LotQuery(order="need", now=desk.now)).codes
    return [code for code in needed if code in there]


def _shared(desk: Desk, lanes: list[Lane]) -> tuple[SharedRow, ...]:
    """Give who takes vessels, line and heat, as far as the lanes tell of it."""
    facts = [one.facts for one in lanes if one.facts is not None]
    takings = [taking for one in facts for taking in takings_of(one.lot, one.windows)]
    stock = Stock(desk.settings.line_metres or None, desk.settings.burners or None)
    return shared_rows(takings, stock, desk.now, desk.zone, desk.units)


def _nights_span(lanes: list[Lane], now: datetime) -> tuple[datetime, datetime]:
    """Give from when to when nights are told: as far as the lanes reach, within reason."""
    starts = [bar.start for one in lanes for bar in one.bars]
    ends = [max(bar.end, bar.soft_until or bar.end) for one in lanes for bar in one.bars]
    back = now - min([*starts, now]) + timedelta(days=1)
    ahead = max([*ends, now]) - now + timedelta(days=1)
    return (
        now - min(max(back, NIGHTS_LEAST[0]), NIGHTS_MOST[0]),
        now + min(max(ahead, NIGHTS_LEAST[1]), NIGHTS_MOST[1]),
    )


def _next_hands(one: Lane, now: datetime) -> datetime:
    """Give when the lot needs hands next; a tending that is overdue comes before all else."""
    overdue = [stitch.at for stitch in one.stitches if not stitch.done and stitch.at <= now]
    return (
        min(overdue) if overdue else next((at for at in one.hands if at >= now), now + FUTURE_SHOWN)
    )


def lane(desk: Desk, lot: Lot) -> Lane:
    """Give one lot's lane."""
    windows = windows_of(lot, desk.now, desk.quiet) if lot.started or lot.planned else {}
    planned = planned_spans(lot, desk.quiet)
    bars: list[Bar] = []
    drops: list[Drop] = []
    stitches: list[Stitch] = []
    for step in lot.steps:
        if not lot.taken(step) or step.skipped is not None:
            continue
        window = windows.get(step.number)
        if step.spec.kind is StepKind.DIP and _is_short(step):
            drops.extend(_drop(step, window))
        else:
            bars.extend(_bar(desk.now, step, window, planned.get(step.number)))
        stitches.extend(_stitches(desk, lot, step, window))
    return Lane(
        code=lot.code,
        name=lot.name,
        bars=tuple(sorted(bars, key=lambda bar: bar.start)),
        stitches=tuple(stitches),
        drops=tuple(drops),
        marks=_marks(desk, lot),
        hands=tuple(sorted({at for at in _hands(lot, windows) if at < desk.now + FUTURE_SHOWN})),
        facts=LaneFacts(lot, windows, planned, desk.quiet, desk.now, desk.zone),
    )


def _is_short(step: LotStep) -> bool:
    return step.spec.lasts is not None and step.spec.lasts.aim < SHORT


def _drop(step: LotStep, window: StepWindow | None) -> list[Drop]:
    at = step.start or step.end or (window.best_start if window else None)
    if at is None:
        return []
    return [Drop(at, step.closed, step.number)]


def _bar(
    now: datetime, step: LotStep, window: StepWindow | None, planned: Span | None
) -> list[Bar]:
    if step.end is not None:
        start = step.start or step.end - timedelta(minutes=1)
        return [
            Bar(step.number, step.spec.kind, step.title, start, step.end, "done",
                planned=planned)
        ]  # fmt: skip
    if window is None:
        return []
    end = window.best_end
    latest = window.end.latest
    if step.spec.kind is StepKind.CURE:
        soft: tuple[datetime | None, datetime | None] = (None, None)
    else:
        soft = (window.end.earliest if step.running else None, latest if step.running else None)
    state: BarState = "running" if step.running else "ahead"
    state = "broken" if window.broken else state
    if step.running and end < now:
        end = now
    return [
        Bar(step.number, step.spec.kind, step.title, window.best_start, end, state,
            soft_from=soft[0], soft_until=soft[1], planned=planned)
    ]  # fmt: skip


def _stitches(desk: Desk, lot: Lot, step: LotStep, window: StepWindow | None) -> list[Stitch]:
    tending = step.spec.tending
    if tending is None:
        return []
    head = f"{lot.code} — {step.title}"
    done = [
        Stitch(at, True, f"{head}: {tending.done.lower()} {words.moment(at, desk.now, desk.zone)}.")  # noqa: FBT003
        for at in step.tended
    ]
    if not step.running or window is None:
        return done
    ahead = coming_tendings(step, desk.quiet, window.best_end - SHORT / 3)
    return done + [
        Stitch(at, False, f"{head}: {tending.act.lower()} {words.moment(at, desk.now, desk.zone)}.")  # noqa: FBT003
        for at in ahead
    ]


_MEANS = {
    "paint": tr_later("paint sinks in best before it"),
    "resists": tr_later("from here on paint sinks in less well"),
    "ready": tr_later("by the view that was chosen for this lot"),
}
"""What each mark of the cure means for the dyer."""


def _marks(desk: Desk, lot: Lot) -> tuple[Mark, ...]:
    cure = cure_of(lot)
    if cure is None or not cure.running:
        return ()
    return tuple(
        Mark(mark.at, mark.name, cast("MarkKind", mark.kind), _mark_story(desk, lot, mark))
        for mark in cure.marks
    )


def _mark_story(desk: Desk, lot: Lot, mark: CureMark) -> str:
    when = words.moment(mark.at, desk.now, desk.zone)
    return tr(
        "{code} {name} — {mark} day {day}, {when}: {means}.",
        code=lot.code,
        name=lot.name,
        mark=mark.name,
        day=mark.day,
        when=when,
        means=tr(_MEANS[mark.kind]),
    )


def _hands(lot: Lot, windows: dict[int, StepWindow]) -> list[datetime]:
    found: list[datetime] = []
    for step in lot.steps:
        found.extend(at for at in (step.start, step.end, *step.tended) if at is not None)
        window = windows.get(step.number)
        if window is not None and lot.taken(step):
            found.append(window.best_end)
            if step.spec.kind is not StepKind.CURE:
                found.append(window.best_start)
    cure = cure_of(lot)
    if cure is not None and cure.running:
        found.extend(mark.at for mark in cure.marks)
    return found
