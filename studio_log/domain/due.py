"""Reminders worked out from lot, clock and quiet hours; the same in, the same out."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, time, timedelta
from zoneinfo import ZoneInfo

from studio_log.domain.likely import likely_lasts
from studio_log.domain.lots import Cure, Lot, LotStep, StepState, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.milks import Milk
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.domain.tending import next_ask, next_tending
from studio_log.domain.windows import SHORT, StepWindow, limit_words, short_span, windows_of
from studio_log.language.words import tr

URGENCY = {
    Kind.START: Urgency.SOON,
    Kind.TEND: Urgency.NOW,
    Kind.MAY_END: Urgency.CALM,
    Kind.READY: Urgency.NOW,
    Kind.LAST_CALL: Urgency.NOW,
    Kind.PAST: Urgency.SPOILING,
    Kind.IS_DRY: Urgency.SOON,
    Kind.USE_BY: Urgency.SOON,
    Kind.CURE_MARK: Urgency.CALM,
}
SPOILS = frozenset(
    {StepKind.BEANS, StepKind.MILK, StepKind.SOAK, StepKind.SPIN, StepKind.DRY, StepKind.DIP}
)
"""Kinds of step whose latest gone harms milk or cloth; the others only come late."""
PRESSING_GAP = timedelta(hours=2)
"""A start that must come within this is urgent."""
USEFUL_EARLY = timedelta(hours=2)
"""`may_end` is told only when it comes at least this long before the best moment."""
PAINT_HEADS_UP = timedelta(days=2)
MARK_TOLD = {"paint": timedelta(0), "resists": timedelta(days=3)}
"""How long after its moment a mark is still worth telling; the others until answered."""
LONGEST_NOTICE = timedelta(hours=1)
SHORTEST_NOTICE = timedelta(minutes=5)


@dataclass(frozen=True)
class _Scene:
    """What every rule below looks at."""

    lot: Lot
    now: datetime
    quiet: QuietHours
    night_rings: bool

    def local(self, at: datetime) -> str:
        """Give a moment as the dyer's clock shows it, with its day where it is not today."""
        zone = ZoneInfo(self.quiet.zone)
        there, here = at.astimezone(zone), self.now.astimezone(zone)
        return f"{there:%H:%M}" if there.date() == here.date() else f"{there:%a %H:%M}"


def reminders_of(
    lot: Lot, now: datetime, quiet: QuietHours, *, spoiling_at_night: bool = False
) -> list[Reminder]:
    """Give every reminder of a lot that is due or coming, in order of time."""
    if lot.voided or lot.stopped is not None or not (lot.started or lot.planned):
        return []
    scene = _Scene(lot, now, quiet, spoiling_at_night)
    windows = windows_of(lot, now, quiet)
    found: list[Reminder] = []
    for step in lot.steps:
        window = windows.get(step.number)
        if window is None or (step.optional and not lot.taken(step)):
            continue
        if step.running:
            found.extend(_of_running(scene, step, window))
        elif lot.state_of(step) is StepState.OPEN and not resting_before(lot, step):
            found.extend(_of_open(scene, step, window))
    found.extend(_of_cure(scene))
    unseen = [one for one in found if not is_seen(lot, one.key)]
    return sorted(unseen, key=lambda one: (one.rings_at, -one.urgency.rank, one.key))


def is_seen(lot: Lot, key: str) -> bool:
    """Say whether the journal holds that the dyer has seen a mark or a warning."""
    return key.partition("/")[2] in lot.seen


def _low(words: str) -> str:
    """Give an order for the middle of a sentence."""
    return f"{words[:1].lower()}{words[1:]}"


def resting_before(lot: Lot, step: LotStep) -> bool:
    """Say whether a cure still runs before this step: its own marks speak for it."""
    cure = cure_of(lot)
    return cure is not None and cure.running and step.join > cure.step.join


def _ring_at(scene: _Scene, due: datetime, urgency: Urgency, put_off: datetime | None) -> datetime:
    at = due if put_off is None or due > put_off else put_off
    if urgency is Urgency.SPOILING and scene.night_rings:
        return at
    return scene.quiet.waking(at)


def _make(  # noqa: PLR0913 - one door for all kinds; every value is named at the call
    scene: _Scene,
    step: LotStep,
    kind: Kind,
    due: datetime,
    *,
    act: str,
    why: str,
    if_late: str = "",
    urgency: Urgency | None = None,
    nth: str = "",
    window: tuple[datetime | None, datetime | None] = (None, None),
    quietly: bool = False,
) -> Reminder:
    lot = scene.lot
    weight = urgency or URGENCY[kind]
    if weight is Urgency.SPOILING and step.spec.kind not in SPOILS:
        weight = Urgency.NOW
    tail = f"/{nth}" if nth else ""
    return Reminder(
        key=f"{lot.code}/{step.number}/{kind.value}{tail}",
        subject=lot.code,
        step=step.number,
        kind=kind,
        urgency=weight,
        due=due,
        rings_at=_ring_at(scene, due, weight, step.put_off),
        title=f"{act} {lot.code} {lot.name}".strip(),
        why=why,
        if_late=if_late,
        earliest=window[0],
        latest=window[1],
        quietly=quietly,
    )


def _of_running(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[Reminder]:
    if step.spec.kind is StepKind.CURE:
        return
    if step.spec.kind is StepKind.DRY:
        yield from _of_drying(scene, step, window)
        return
    yield from _tending(scene, step, window)
    yield from _ending(scene, step, window)


def _tending(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[Reminder]:
    tending = step.spec.tending
    if tending is None:
        return
    due = next_tending(step, scene.quiet)
    if due is None or due >= window.best_end - SHORT / 3:
        return
    since = step.tended[-1] if step.tended else step.start
    assert since is not None  # noqa: S101 - a running step has begun
    said = tr("Last tended") if step.tended else tr("In since")
    yield _make(
        scene,
        step,
        Kind.TEND,
        due,
        act=tending.act,
        why=f"{said} {scene.local(since)}.",
        if_late=step.spec.if_late,
        nth=str(len(step.tended)),
    )


def _ending(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[Reminder]:
    lasts, end = step.spec.lasts, window.end
    if lasts is None:
        return
    short = lasts.aim < SHORT
    bounds = (end.earliest, end.latest)
    act = step.spec.end_order
    asleep = scene.quiet.around(end.aim) if window.moved.night else None
    why = tr(
        "{title} since {at}; aim {span}.",
        title=step.title,
        at=scene.local(window.best_start),
        span=short_span(lasts.aim),
    )
    if asleep is not None and window.moved.clash is None:
        why += tr(" The aim, {at}, falls in quiet hours.", at=scene.local(end.aim))
    if not short and window.best_end - end.earliest >= USEFUL_EARLY:
        yield _make(scene, step, Kind.MAY_END, end.earliest, why=why,
                    act=tr("From now on: {low}", low=_low(act)), window=bounds)  # fmt: skip
    yield _make(scene, step, Kind.READY, window.best_end, act=act, why=why, window=bounds,
                if_late=step.spec.if_late, quietly=short)  # fmt: skip
    if end.latest is None:
        return
    limit = limit_words(step, lasts, None)
    call = last_call(scene.quiet, end.earliest, end.latest)
    # Where the best moment is asleep for want of a waking one, only a call before bed helps.
    since = window.best_end if window.moved.clash is None else window.best_start
    if not short and call > since:
        yield _make(scene, step, Kind.LAST_CALL, call, act=tr("Last call: {low}", low=_low(act)),
                    why=tr("{limit}, that is {at}.", limit=limit, at=scene.local(end.latest)),
                    if_late=step.spec.if_late, window=bounds)  # fmt: skip
    yield _make(scene, step, Kind.PAST, end.latest, act=tr("Too long: {low}", low=_low(act)),
                why=tr("{limit}; that was {at}.", limit=limit, at=scene.local(end.latest)),
                if_late=step.spec.if_late, window=bounds)  # fmt: skip


def last_call(quiet: QuietHours, earliest: datetime, latest: datetime) -> datetime:
    """Give the moment of the last call: a tenth of the window before its end, before any night."""
    lead = min(LONGEST_NOTICE, max(SHORTEST_NOTICE, (latest - earliest) / 10))
    at = latest - lead
    night = quiet.around(at)
    return at if night is None else night.start - SHORTEST_NOTICE


def _of_drying(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[Reminder]:
    ask = step.spec.ask_dry
    likely = likely_lasts(scene.lot, step)
    due = next_ask(step, scene.quiet, likely.aim if likely else None) if ask else None
    if due is not None and step.start is not None:
        why = tr("Hanging since {at}; the last piece counts.", at=scene.local(step.start))
        if likely is not None:
            at = scene.local(step.start + likely.aim)
            why += tr(" By its weight and the room it is likely dry at {at}.", at=at)
        yield _make(
            scene, step, Kind.IS_DRY, due, act=tr("Is it dry?"), why=why,
            if_late=step.spec.if_late, nth=str(len(step.damp)),
            window=(window.end.earliest, window.end.latest),
        )  # fmt: skip
    if window.end.latest is not None:
        longest = step.spec.lasts.latest if step.spec.lasts else timedelta(0)
        yield _make(
            scene, step, Kind.PAST, window.end.latest, act=tr("Still not dry?"),
            why=tr("Damp for {span} and more.", span=short_span(longest)),
            if_late=step.spec.if_late, window=(window.end.earliest, window.end.latest),
        )  # fmt: skip


def _of_open(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[Reminder]:
    gap, start = step.spec.gap, window.start
    pressing = gap.most is not None and gap.most <= PRESSING_GAP
    before = _ended_before(scene.lot, step)
    earlier = before.end if before is not None else None
    behind = (
        tr("{title} ended {at}.", title=before.title, at=scene.local(earlier))
        if before and earlier
        else ""
    )
    due = open_since(scene.lot, step, window, scene.now, scene.quiet)
    bounds = (start.earliest, start.latest)
    act = step.spec.order
    yield _make(scene, step, Kind.START, due, act=act, why=behind, if_late=step.spec.if_late,
                urgency=Urgency.NOW if pressing else Urgency.SOON, window=bounds)  # fmt: skip
    if gap.most is None or earlier is None:
        return
    latest = earlier + gap.most
    limit = limit_words(step, None, gap)
    call = last_call(scene.quiet, earlier + gap.least, latest)
    low = _low(act)
    if call > due:
        yield _make(scene, step, Kind.LAST_CALL, call, act=tr("Last call: {low}", low=low),
                    why=tr("{limit}, that is {at}.", limit=limit, at=scene.local(latest)),
                    if_late=step.spec.if_late, window=bounds)  # fmt: skip
    yield _make(scene, step, Kind.PAST, latest, act=tr("Late: {low}", low=low),
                why=tr("{limit}; that was {at}.", limit=limit, at=scene.local(latest)),
                if_late=step.spec.if_late, window=bounds)  # fmt: skip


def open_since(
    lot: Lot, step: LotStep, window: StepWindow, now: datetime, quiet: QuietHours
) -> datetime:
    """Give when a step that is open is due to begin: its best moment while that is ahead.

    Else since when it has been due: as planned, or in the morning, after a night.
    """
    if window.best_start > now:
        return window.best_start
    before = _ended_before(lot, step)
    if step.plan is not None and step.plan <= now:
        return max(step.plan, before.end) if before and before.end else step.plan
    if before is None or before.end is None:
        return now
    woken = quiet.waking(before.end)
    return woken if woken <= now else before.end


def _ended_before(lot: Lot, step: LotStep) -> LotStep | None:
    return next((one for one in lot.before(step) if one.end is not None), None)


def _of_cure(scene: _Scene) -> Iterator[Reminder]:
    cure = cure_of(scene.lot)
    if cure is None or not cure.running or scene.lot.use is not None:
        return
    for mark in cure.marks:
        words = mark_words(cure, mark.kind)
        if words is None:
            continue
        act, why, lead = words
        due = mark.at - lead
        told_until = MARK_TOLD.get(mark.kind)
        if told_until is not None and scene.now > mark.at + told_until:
            continue
        nearing = mark.kind == "paint"
        yield _make(
            scene, cure.step, Kind.CURE_MARK, due, act=act, why=why,
            urgency=Urgency.SOON if nearing else Urgency.CALM,
            nth=f"{_coats_dry(scene.lot, cure)}/{mark.kind}", window=(cure.fully_dry, mark.at),
        )  # fmt: skip


def mark_words(cure: Cure, kind: str) -> tuple[str, str, timedelta] | None:
    """Give a mark's act and reason, and how long before it is told; None where it is not."""
    return _MARK_WORDS[kind](cure)


def _coats_dry(lot: Lot, cure: Cure) -> int:
    """Count the dryings before a cure: after one more the marks are new ones, not answered."""
    return sum(
        one.join == cure.step.join and one.spec.kind is StepKind.DRY and one.end is not None
        for one in lot.steps
    )


_MARK_WORDS: dict[str, Callable[[Cure], tuple[str, str, timedelta] | None]] = {
    "ready": lambda cure: (
        tr("Cured, {ready_title}:", ready_title=cure.plan.ready_title),
        tr("Day {days} from fully dry.", days=cure.days),
        timedelta(0),
    ),
    "paint": lambda cure: (
        tr("Paint within two days:"),
        tr(
            "Takes paint best until day {paint_best_days} from fully dry.",
            paint_best_days=cure.plan.paint_best_days,
        ),
        PAINT_HEADS_UP,
    ),
    "resists": lambda cure: (
        tr("Painting time is over:"),
        tr(
            "From day {paint_best_days} on paint sinks in less well.",
            paint_best_days=cure.plan.paint_best_days,
        ),
        timedelta(0),
    ),
}


def milk_reminder(lot: Lot, milk: Milk | None, now: datetime, quiet: QuietHours) -> Reminder | None:
    """Remind, the evening before, to soak beans where the milk will not last to the next coat."""
    if lot.voided or lot.stopped is not None or lot.use is not None or not lot.started:
        return None
    windows = windows_of(lot, now, quiet)
    ahead = (
        step
        for step in lot.steps
        if step.number in windows and step.spec.uses_milk and step.start is None and lot.taken(step)
    )
    step = next(ahead, None)
    if step is None or milk is None or step.coat in {None, 1}:
        return None
    dip = windows[step.number].best_start
    if milk.use_by >= dip:
        return None
    due = evening_before(dip, quiet)
    made = _make(
        _Scene(lot, now, quiet, night_rings=False), step, Kind.USE_BY, due,
        act=tr("Soak beans tonight for"),
        why=tr("Milk {code} will be too old for {title}, planned next.",
               code=milk.code, title=step.title),
        if_late=tr("Without fresh milk the next coat waits a day longer."),
    )  # fmt: skip
    key = f"{lot.code}/{step.number}/use_by/{milk.code}"
    return None if is_seen(lot, key) else replace(made, key=key)


def evening_before(at: datetime, quiet: QuietHours) -> datetime:
    """Give two hours before the quiet hours of the evening before a moment (else 20:00)."""
    zone = ZoneInfo(quiet.zone)
    day = at.astimezone(zone).date() - timedelta(days=1)
    noon = datetime.combine(day, time(12), zone).astimezone(UTC)
    lead = timedelta(hours=2)
    nights = quiet.nights(noon, noon + timedelta(days=1))
    night = next((one for one in nights if one.start >= noon + lead), None)
    if night is None:
        return datetime.combine(day, time(20), zone).astimezone(UTC)
    return night.start - lead
