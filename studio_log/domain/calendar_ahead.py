"""What is ahead as events of a calendar: moments at which hands are needed, and their alarms.

A pure function of lot or bath, clock and quiet hours. Moments are whole minutes, so that a
plan which stands still gives the same events again. What waits for the dyer stands where it
fell due, in the past, and does not wander with the clock.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from studio_log.domain.bath_due import bath_reminders, label, ready_from
from studio_log.domain.baths import Bath
from studio_log.domain.due import last_call, mark_words, open_since, resting_before
from studio_log.domain.likely import likely_lasts
from studio_log.domain.lots import Cure, Lot, LotStep, StepState, cure_days_of, cure_of
from studio_log.domain.methods import StepKind
from studio_log.domain.quiet import QuietHours
from studio_log.domain.reminders import Reminder
from studio_log.domain.tending import coming_tendings, next_ask
from studio_log.domain.windows import SHORT, StepWindow, windows_of
from studio_log.language.calendar_words import day_words
from studio_log.language.words import tr

LEAST: Final = timedelta(minutes=5)
"""A shorter event is hardly seen in a calendar."""
LOOKING: Final = timedelta(minutes=15)
"""How long it takes to feel whether cloth is dry, or to hear of a mark of the cure."""
MOST_ALARMS: Final = 40
SESSION_GAP: Final = timedelta(minutes=30)
"""Planned acts no further apart are one session at the bench."""
STUDIO: Final = "studio"
"""What a session is about, where another event names its lot."""
TOLD_FOR: Final = timedelta(days=3)
"""A mark of the cure that lies further back is not ahead any more."""


@dataclass(frozen=True)
class CalendarEvent:
    """One event. Instants are aware UTC in whole minutes; `alarms` are absolute moments.

    `key` is the same each time it is worked out: "26-001/4/end". `busy` is False for a stretch
    in which hands are free between its alarms.
    """

    key: str
    subject: str
    start: datetime
    end: datetime
    title: str
    why: str
    place: str = ""
    alarms: tuple[datetime, ...] = ()
    busy: bool = True
    planned: bool = False
    """Whether the dyer, or a plan that was accepted, set its moment."""


@dataclass(frozen=True)
class _Scene:
    lot: Lot
    now: datetime
    quiet: QuietHours


def events_of_lot(lot: Lot, now: datetime, quiet: QuietHours) -> list[CalendarEvent]:
    """Give the events of a lot in order of time; of a lot that nobody planned or began, none."""
    planned = any(step.plan is not None and step.plan >= now for step in lot.steps)
    if lot.voided or lot.stopped is not None or not (lot.started or planned):
        return []
    scene = _Scene(lot, now, quiet)
    windows = windows_of(lot, now, quiet)
    found: list[CalendarEvent] = []
    for step in lot.steps:
        window = windows.get(step.number)
        if window is None or (step.optional and not lot.taken(step)):
            continue
        if step.spec.kind is StepKind.CURE:
            found.extend(_marks(scene, _cure_ahead(lot, step, window)))
        elif not resting_before(lot, step):
            found.extend(_of_step(scene, step, window))
    cure = cure_of(lot)
    if cure is not None and cure.running and cure.step.number not in windows:
        found.extend(_marks(scene, cure))
    return sorted(found, key=lambda one: (one.start, one.key))


def _of_step(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[CalendarEvent]:
    if not step.running:
        yield from _begun(scene, step, window)
    if step.spec.kind is StepKind.DRY:
        yield _dry(scene, step, window)
        return
    lasts = step.spec.lasts
    if lasts is None or lasts.aim < SHORT:
        return
    yield from _tended(scene, step, window)
    yield _ended(scene, step, window)


def _begun(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[CalendarEvent]:
    """Give the start; what follows at once is done with the end of the step before it."""
    is_open = scene.lot.state_of(step) is StepState.OPEN
    if step.spec.gap.at_once and not is_open:
        return
    at = open_since(scene.lot, step, window, scene.now, scene.quiet) if is_open else None
    latest = window.start.latest if step.spec.gap.most is not None else None
    calls = _calls(scene, latest, (step.spec.gap.most or LEAST) - step.spec.gap.least)
    why = _sentences(step.spec.do, _latest(scene, latest), step.spec.if_late)
    act = _Act("start", step.spec.order, max(step.spec.hands_on, LEAST), why, calls)
    yield _make(scene, step, at or window.best_start, act)


def _ended(scene: _Scene, step: LotStep, window: StepWindow) -> CalendarEvent:
    latest, lasts = window.end.latest, step.spec.lasts
    calls = _calls(scene, latest, lasts.latest - lasts.earliest if lasts else LEAST)
    then = _then(scene.lot, step)
    why = _sentences(_title(step), _latest(scene, latest), step.spec.if_late, then)
    act = _Act("end", step.spec.end_order, max(step.spec.hands_on, LEAST), why, calls)
    return _make(scene, step, window.best_end, act)


def _calls(scene: _Scene, latest: datetime | None, span: timedelta) -> tuple[datetime, ...]:
    """Give the last call before a limit, by the whole span: it does not wander with the clock."""
    return (last_call(scene.quiet, latest - span, latest),) if latest else ()


def _dry(scene: _Scene, step: LotStep, window: StepWindow) -> CalendarEvent:
    """Give the question; of cloth that hangs already, when it is asked next."""
    at = None
    if step.running:
        likely = likely_lasts(scene.lot, step)
        at = next_ask(step, scene.quiet, likely.aim if likely else None)
    why = _sentences(_title(step), tr("The last piece counts."), step.spec.if_late)
    act = _Act("dry", tr("Is it dry?"), LOOKING, why)
    return _make(scene, step, at or scene.quiet.waking(window.best_end), act)


def _tended(scene: _Scene, step: LotStep, window: StepWindow) -> Iterator[CalendarEvent]:
    """Give one event for the whole stretch of a tended step; its alarms are the tendings."""
    tending = step.spec.tending
    if tending is None:
        return
    begun = step if step.running else replace(step, start=window.best_start)
    assert begun.start is not None  # noqa: S101 - given just now, or it runs
    moments = coming_tendings(begun, scene.quiet, window.best_end - SHORT / 3)
    if not moments:
        return
    times = ", ".join(_local(scene, at) for at in moments[:MOST_ALARMS])
    yield CalendarEvent(
        key=f"{scene.lot.code}/{step.number}/tend",
        subject=scene.lot.code,
        start=_minute(begun.start),
        end=max(_minute(window.best_end), _minute(begun.start) + LEAST),
        title=f"{tending.act} {scene.lot.code} {scene.lot.name}".strip(),
        why=_sentences(_title(step), tr("{act}: {times}.", act=tending.act, times=times)),
        place=scene.lot.place or scene.lot.vessel,
        alarms=tuple(dict.fromkeys(_minute(at) for at in moments[:MOST_ALARMS])),
        busy=False,
    )


def _cure_ahead(lot: Lot, step: LotStep, window: StepWindow) -> Cure | None:
    """Give the cure that runs, or the one to come, counted from when the cloth is likely dry."""
    known = cure_of(lot)
    if known is not None and known.step.number == step.number:
        return known
    plan = lot.methods[step.join].cure
    if plan is None:
        return None
    return Cure(step, plan, window.best_start, None, cure_days_of(lot, step.join))


def _marks(scene: _Scene, cure: Cure | None) -> Iterator[CalendarEvent]:
    if cure is None or scene.lot.use is not None:
        return
    for mark in cure.marks:
        told = mark_words(cure, mark.kind)
        if told is None:
            continue
        order, why, lead = told
        at = scene.quiet.waking(mark.at - lead)
        act = _Act(f"mark/{mark.kind}", order, LOOKING, why)
        if at >= scene.now - TOLD_FOR:
            yield replace(_make(scene, cure.step, at, act), busy=False)


@dataclass(frozen=True)
class _Act:
    """What is to be done, how long it takes, why, and when it is called for once more."""

    what: str
    order: str
    lasts: timedelta
    why: str
    calls: tuple[datetime, ...] = ()


def _make(scene: _Scene, step: LotStep, at: datetime, act: _Act) -> CalendarEvent:
    lot = scene.lot
    start = _minute(at if step.put_off is None or at > step.put_off else step.put_off)
    later = (_minute(one) for one in act.calls)
    return CalendarEvent(
        key=f"{lot.code}/{step.number}/{act.what}",
        subject=lot.code,
        start=start,
        end=start + max(_minutes_up(act.lasts), LEAST),
        title=f"{act.order} {lot.code} {lot.name}".strip(),
        why=act.why,
        place=lot.place or lot.vessel,
        alarms=(start, *(one for one in later if one > start)),
        planned=at in {step.plan, step.plan_end},
    )


def sessions_of(events: Iterable[CalendarEvent]) -> list[CalendarEvent]:
    """Give the sessions: planned acts that follow one another closely, as one stretch each.

    A session has no alarm of its own, since each of its acts has one.
    """
    found: list[list[CalendarEvent]] = []
    for event in sorted((one for one in events if one.planned), key=lambda one: one.start):
        last = max((one.end for one in found[-1]), default=event.start) if found else None
        if last is not None and event.start - last <= SESSION_GAP:
            found[-1].append(event)
        else:
            found.append([event])
    return [_session(group) for group in found if len(group) > 1]


def _session(group: Sequence[CalendarEvent]) -> CalendarEvent:
    start = group[0].start
    lots = len({one.subject for one in group})
    return CalendarEvent(
        key=f"{STUDIO}/session/{start:%Y-%m-%dT%H:%M}",
        subject=STUDIO,
        start=start,
        end=max(one.end for one in group),
        title=tr("Session: {acts} acts, lots: {lots}", acts=len(group), lots=lots),
        why=_sentences(*(f"{one.title}." for one in group)),
        busy=False,
    )


def events_of_bath(bath: Bath, now: datetime, quiet: QuietHours) -> list[CalendarEvent]:
    """Give the events of a bath: its planned use, and what its reminders tell, in order."""
    if not bath.live:
        return []
    found = [_of_reminder(one, bath.place) for one in bath_reminders(bath, now, quiet)]
    if bath.plan is not None and bath.plan.at >= now:
        start = _minute(bath.plan.at)
        ready = () if bath.plan.ready else (_minute(ready_from(bath.plan.at, quiet)),)
        found.append(
            CalendarEvent(
                f"{bath.code}/plan/{bath.plan.number}",
                bath.code,
                start,
                start + LOOKING,
                tr("Use {code} {name}", code=bath.code, name=label(bath)),
                "",
                bath.place,
                (*ready, start),
            )
        )
    return sorted(found, key=lambda one: (one.start, one.key))


def event_of_reminder(told: Reminder) -> CalendarEvent:
    """Give the event of a reminder that no step's start or end stands for, such as old milk."""
    return _of_reminder(told, "")


def _of_reminder(told: Reminder, place: str) -> CalendarEvent:
    start = _minute(told.rings_at)
    return CalendarEvent(
        told.key, told.subject, start, start + LOOKING, told.title.strip(),
        _sentences(told.why, told.if_late), place, (start,),
    )  # fmt: skip


def _then(lot: Lot, step: LotStep) -> str:
    """Name what follows at once, so that nobody is called away between."""
    after = lot.steps[lot.place_of(step.number) + 1 :]
    at_once = []
    for one in after:
        if not one.spec.gap.at_once or not lot.taken(one):
            break
        at_once.append(one.title)
    return tr("Then at once: {steps}.", steps=", ".join(at_once)) if at_once else ""


def _latest(scene: _Scene, latest: datetime | None) -> str:
    return tr("At the latest {moment}.", moment=_local(scene, latest)) if latest else ""


def _local(scene: _Scene, at: datetime) -> str:
    """Give a moment with its day: a phone reads it on another day than it was written."""
    there = _minute(at).astimezone(ZoneInfo(scene.quiet.zone))
    return f"{day_words(there.date())} {there:%H:%M}"


def _title(step: LotStep) -> str:
    return f"{step.title}."


def _sentences(*words: str) -> str:
    return " ".join(filter(None, (one.strip() for one in words)))


def _minute(at: datetime) -> datetime:
    return at.replace(second=0, microsecond=0)


def _minutes_up(span: timedelta) -> timedelta:
    return -(-span // timedelta(minutes=1)) * timedelta(minutes=1)
