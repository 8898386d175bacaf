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
from studio_log.present import words

_STATES: Mapping[StepState, str] = {
    StepState.AHEAD: "ahead",
    StepState.OPEN: "may begin",
    StepState.RUNNING: "running",
    StepState.DONE: "done",
    StepState.SKIPPED: "skipped",
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
    state = _STATES[lot.state_of(step)]
    parts = [f"{lot.code} {lot.name} — {step.title}, step {number}: {state}."]
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
            return f"Start not written, ended {facts.at(step.end)}."
        length = words.span(step.end - step.start)
        return f"{_capital(facts.at(step.start))} to {facts.at(step.end)}, {length}."
    if step.start is not None:
        return f"Since {facts.at(step.start)}."
    if window is None:
        return ""
    set_by = " as you planned it" if step.plan == window.best_start else ""
    return f"Best begun {facts.at(window.best_start)}{set_by}."


def _planned(facts: LaneFacts, step: LotStep) -> str:
    """Say what was planned before the step began, and how late it came."""
    span = facts.planned.get(step.number)
    if span is None:
        return ""
    start, end = span
    told = f"Planned {facts.at(start)} to {facts.at(end)}"
    late = (step.end or max(facts.now, end)) - end
    if step.start is not None and abs(step.start - start) >= _ON_TIME:
        told += f"; begun {_off(step.start - start)}"
    if step.end is not None:
        told += f"; ended {_off(late)}"
    elif late >= _ON_TIME:
        told += f"; {words.span(late)} over its plan"
    return f"{told}."


def _off(late: timedelta) -> str:
    if abs(late) < _ON_TIME:
        return "on time"
    return f"{words.span(late)} {'late' if late > timedelta(0) else 'early'}"


def _window(facts: LaneFacts, step: LotStep, window: StepWindow) -> str:
    if step.spec.kind is StepKind.CURE:
        return f"Ready {facts.at(window.best_end)}."
    bounds, act = (window.end, "End it") if step.running else (window.start, "Begin it")
    until = f" to {facts.at(bounds.latest)}" if bounds.latest else " or later"
    best = f", best ended {facts.at(window.best_end)}"
    moved = ""
    if window.moved.clash is not None:
        moved = f" No waking moment fits: quiet hours are {facts.quiet.words}."
    elif window.moved.night is not None:
        moved = f" Moved out of quiet hours ({facts.quiet.words})."
    return f"{act} {facts.at(bounds.earliest)}{until}{best}.{moved}"


def _tending(facts: LaneFacts, step: LotStep) -> str:
    tending = step.spec.tending
    if tending is None or (not step.running and not step.tended):
        return ""
    count = len(step.tended)
    done = f"{tending.done} {count} time{'' if count == 1 else 's'}"
    if step.tended:
        done += f", last {facts.at(step.tended[-1])}"
    due = next_tending(step, facts.quiet) if step.running else None
    if due is None:
        return f"{done}."
    overdue = " (overdue)" if due < facts.now else ""
    return f"{done}; {tending.act.lower()} next {facts.at(due)}{overdue}."


def _limit(window: StepWindow) -> str:
    if window.broken is None:
        return ""
    return f"{window.broken.limit}: passed by {words.span(window.broken.by)}."


def _waits(step: LotStep) -> str:
    return f"If it waits: {step.spec.if_late}" if step.spec.if_late else ""


def _next(facts: LaneFacts, step: LotStep) -> str:
    """Say which step comes after, and when."""
    for other in facts.lot.steps[facts.lot.place_of(step.number) + 1 :]:
        window = facts.windows.get(other.number)
        if window is not None and facts.lot.taken(other):
            return f"Next: {other.title}, {facts.at(window.best_start)}."
    return ""


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
