"""The whole story of a step in words, worked out when somebody looks at it.

A sheet of 200 lots holds thousands of steps, and words for all of them would take longer than
everything else; so a lane carries `LaneFacts`, and the words are made for the one in sight.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from studio_log.domain.lots import Lot, LotStep, StepState
from studio_log.domain.methods import StepKind
from studio_log.domain.quiet import QuietHours
from studio_log.domain.tending import next_tending
from studio_log.domain.windows import StepWindow
from studio_log.language.words import counted, tr, tr_later
from studio_log.present import words

_STATES: Mapping[StepState, str] = {
    StepState.AHEAD: tr_later("ahead"),
    StepState.OPEN: tr_later("may begin"),
    StepState.RUNNING: tr_later("running"),
    StepState.DONE: tr_later("done"),
    StepState.SKIPPED: tr_later("skipped"),
}
_ON_TIME = timedelta(minutes=5)
"""Nobody with wet hands writes to the minute."""
Span = tuple[datetime, datetime]


@dataclass(frozen=True, slots=True)
class LaneFacts:
    """One lot as it stood when the lanes were made, and the hours it is read in."""

    lot: Lot
    windows: Mapping[int, StepWindow]
    planned: Mapping[int, Span]
    """As planned before each step began; see `domain.windows.planned_spans`."""
    quiet: QuietHours
    now: datetime
    zone: str

    def at(self, moment: datetime) -> str:
        """Say a moment as seen from now."""
        return words.moment(moment, self.now, self.zone)


def step_story(facts: LaneFacts, number: int) -> str:
    """Tell lot, step, state, times, window, tending, lateness, what waits and what is next."""
    lot, step = facts.lot, facts.lot.step(number)
    window = facts.windows.get(number)
    state = tr(_STATES[lot.state_of(step)])
    parts = [
        tr(
            "{code} {name} — {title}, step {number}: {state}.",
            code=lot.code,
            name=lot.name,
            title=step.title,
            number=number,
            state=state,
        )
    ]
    parts.append(_times(facts, step, window))
    parts.append(_planned(facts, step))
    if not step.closed and window is not None:
        parts.append(_window(facts, step, window))
    parts.append(_tending(facts, step))
    if not step.closed and window is not None:
        parts += [_limit(window), _waits(step), _next(facts, step)]
    return " ".join(part for part in parts if part)


def _times(facts: LaneFacts, step: LotStep, window: StepWindow | None) -> str:
    if step.end is not None:
        if step.start is None:
            return tr("Start not written, ended {at}.", at=facts.at(step.end))
        length = words.span(step.end - step.start)
        return tr(
            "{capital} to {at}, {length}.",
            capital=_capital(facts.at(step.start)),
            at=facts.at(step.end),
            length=length,
        )
    if step.start is not None:
        return tr("Since {at}.", at=facts.at(step.start))
    if window is None:
        return ""
    set_by = tr(" as you planned it") if step.plan == window.best_start else ""
    return tr("Best begun {at}{set_by}.", at=facts.at(window.best_start), set_by=set_by)


def _planned(facts: LaneFacts, step: LotStep) -> str:
    """Say what was planned before the step began, and how late it came."""
    span = facts.planned.get(step.number)
    if span is None:
        return ""
    start, end = span
    told = tr("Planned {at} to {at2}", at=facts.at(start), at2=facts.at(end))
    late = (step.end or max(facts.now, end)) - end
    if step.start is not None and abs(step.start - start) >= _ON_TIME:
        told += tr("; begun {off}", off=_off(step.start - start))
    if step.end is not None:
        told += tr("; ended {off}", off=_off(late))
    elif late >= _ON_TIME:
        told += tr("; {span} over its plan", span=words.span(late))
    return f"{told}."


def _off(late: timedelta) -> str:
    if abs(late) < _ON_TIME:
        return tr("on time")
    span = words.span(late)
    return tr("{span} late", span=span) if late > timedelta(0) else tr("{span} early", span=span)


def _window(facts: LaneFacts, step: LotStep, window: StepWindow) -> str:
    if step.spec.kind is StepKind.CURE:
        return tr("Ready {at}.", at=facts.at(window.best_end))
    bounds, act = (window.end, tr("End it")) if step.running else (window.start, tr("Begin it"))
    until = tr(" to {at}", at=facts.at(bounds.latest)) if bounds.latest else tr(" or later")
    best = tr(", best ended {at}", at=facts.at(window.best_end))
    moved = ""
    if window.moved.clash is not None:
        moved = tr(" No waking moment fits: quiet hours are {words}.", words=facts.quiet.words)
    elif window.moved.night is not None:
        moved = tr(" Moved out of quiet hours ({words}).", words=facts.quiet.words)
    return f"{act} {facts.at(bounds.earliest)}{until}{best}.{moved}"


def _tending(facts: LaneFacts, step: LotStep) -> str:
    tending = step.spec.tending
    if tending is None or (not step.running and not step.tended):
        return ""
    count = len(step.tended)
    one, many = tr_later("{done} {n} time"), tr_later("{done} {n} times")
    done = counted(count, one, many, done=tending.done)
    if step.tended:
        done += tr(", last {at}", at=facts.at(step.tended[-1]))
    due = next_tending(step, facts.quiet) if step.running else None
    if due is None:
        return f"{done}."
    overdue = tr(" (overdue)") if due < facts.now else ""
    return tr(
        "{done}; {lower} next {at}{overdue}.",
        done=done,
        lower=tending.act.lower(),
        at=facts.at(due),
        overdue=overdue,
    )


def _limit(window: StepWindow) -> str:
    if window.broken is None:
        return ""
    return tr(
        "{limit}: passed by {span}.", limit=window.broken.limit, span=words.span(window.broken.by)
    )


def _waits(step: LotStep) -> str:
    return tr("If it waits: {if_late}", if_late=step.spec.if_late) if step.spec.if_late else ""


def _next(facts: LaneFacts, step: LotStep) -> str:
    """Say which step comes after, and when."""
    for other in facts.lot.steps[facts.lot.place_of(step.number) + 1 :]:
        window = facts.windows.get(other.number)
        if window is not None and facts.lot.taken(other):
            return tr("Next: {title}, {at}.", title=other.title, at=facts.at(window.best_start))
    return ""


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
