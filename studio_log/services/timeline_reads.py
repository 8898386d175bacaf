"""Lanes for the timeline: what was, what runs, what is planned."""

from datetime import datetime, timedelta

from studio_log.domain.lots import Lot, LotStep, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.tending import coming_tendings
from studio_log.domain.windows import SHORT, StepWindow, windows_of
from studio_log.present import words
from studio_log.present.lanes import Bar, BarState, Drop, Lane, Mark, Night, Stitch
from studio_log.services import questions as q
from studio_log.services.desk import Desk, whole_code

PAST_SHOWN = timedelta(days=3)
FUTURE_SHOWN = timedelta(days=200)
MOST_LANES = 400
NIGHTS_AHEAD = timedelta(days=15)


def timeline(desk: Desk, question: q.TimelineFor) -> q.Timeline:
    """Give the lanes of the lots named, else of every lot that is not ended."""
    codes = [whole_code(code) for code in question.codes] or list(desk.work.lots.live_codes())
    lots = [desk.lot(code) for code in codes[:MOST_LANES]]
    lanes = [lane(desk, lot) for lot in lots if lot.started or question.codes]
    lanes.sort(key=lambda one: (_next_hands(one, desk.now), one.code))
    nights = [
        Night(night.start, night.end)
        for night in desk.quiet.nights(desk.now - PAST_SHOWN * 2, desk.now + NIGHTS_AHEAD)
    ]
    return q.Timeline(tuple(lanes), tuple(nights), desk.now, desk.zone)


def _next_hands(one: Lane, now: datetime) -> datetime:
    """Give when the lot needs hands next; a tending that is overdue comes before all else."""
    overdue = [stitch.at for stitch in one.stitches if not stitch.done and stitch.at <= now]
    return (
        min(overdue) if overdue else next((at for at in one.hands if at >= now), now + FUTURE_SHOWN)
    )


def lane(desk: Desk, lot: Lot) -> Lane:
    """Give one lot's lane."""
    windows = windows_of(lot, desk.now, desk.quiet) if lot.started else {}
    bars: list[Bar] = []
    drops: list[Drop] = []
    stitches: list[Stitch] = []
    for step in lot.steps:
        if not lot.taken(step) or step.skipped is not None:
            continue
        window = windows.get(step.number)
        if step.spec.kind is StepKind.DIP and _is_short(step):
            drops.extend(_drop(desk, lot, step, window))
        else:
            bars.extend(_bar(desk, lot, step, window))
        stitches.extend(_stitches(desk, step, window))
    return Lane(
        code=lot.code,
        name=lot.name,
        bars=tuple(sorted(bars, key=lambda bar: bar.start)),
        stitches=tuple(stitches),
        drops=tuple(drops),
        marks=_marks(lot),
        hands=tuple(sorted({at for at in _hands(lot, windows) if at < desk.now + FUTURE_SHOWN})),
    )


def _is_short(step: LotStep) -> bool:
    return step.spec.lasts is not None and step.spec.lasts.aim < SHORT


def _drop(desk: Desk, lot: Lot, step: LotStep, window: StepWindow | None) -> list[Drop]:
    at = step.start or step.end or (window.best_start if window else None)
    if at is None:
        return []
    return [Drop(at, step.closed, step.number, _story(desk, lot, step, window))]


def _bar(desk: Desk, lot: Lot, step: LotStep, window: StepWindow | None) -> list[Bar]:
    if step.end is not None:
        start = step.start or step.end - timedelta(minutes=1)
        return [
            Bar(step.number, step.spec.kind, step.title, start, step.end, "done",
                story=_story(desk, lot, step, None))
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
    if step.running and end < desk.now:
        end = desk.now
    return [
        Bar(step.number, step.spec.kind, step.title, window.best_start, end, state,
            soft_from=soft[0], soft_until=soft[1], story=_story(desk, lot, step, window))
    ]  # fmt: skip


def _stitches(desk: Desk, step: LotStep, window: StepWindow | None) -> list[Stitch]:
    tending = step.spec.tending
    if tending is None:
        return []
    done = [
        Stitch(at, True, f"{tending.done} {words.moment(at, desk.now, desk.zone)}.")  # noqa: FBT003
        for at in step.tended
    ]
    if not step.running or window is None:
        return done
    ahead = coming_tendings(step, desk.quiet, window.best_end - SHORT / 3)
    return done + [
        Stitch(at, False, f"{tending.act} {words.moment(at, desk.now, desk.zone)}.")  # noqa: FBT003
        for at in ahead
    ]


def _marks(lot: Lot) -> tuple[Mark, ...]:
    cure = cure_of(lot)
    if cure is None or not cure.running:
        return ()
    return tuple(
        Mark(mark.at, mark.name, mark.kind, f"{lot.code}: {mark.name} day {mark.day}.")  # type: ignore[arg-type]
        for mark in cure.marks
        if mark.kind != "resists"
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
    found.extend(mark.at for mark in _marks(lot))
    return found


def _story(desk: Desk, lot: Lot, step: LotStep, window: StepWindow | None) -> str:
    """Tell the whole story of a step in words."""

    def at(moment: datetime) -> str:
        return words.moment(moment, desk.now, desk.zone)

    head = f"{lot.code} {lot.name} — {step.title}"
    if step.end is not None:
        since = f"{at(step.start)} to " if step.start else "start not written, ended "
        length = f", {words.span(step.end - step.start)}" if step.start else ""
        return f"{head}: {since}{at(step.end)}{length}."
    if window is None:
        return f"{head}."
    until = f" to {at(window.end.latest)}" if window.end.latest else ""
    span = f"best ended {at(window.best_end)}, window {at(window.end.earliest)}{until}"
    began = f"since {at(window.best_start)}" if step.running else f"from {at(window.best_start)}"
    broken = f" {window.broken.limit}: passed." if window.broken else ""
    return f"{head}: {began}, {span}.{broken}"
