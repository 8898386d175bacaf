"""When steps that go by themselves are stirred: found behind a plan, which gives no way for them.

A stir is due each so many minutes from the step's start, as long as it runs. It may be an hour
off, so that it falls where somebody is awake and hands are free; in the night there is none.
"""

from bisect import bisect_right, insort
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from studio_log.language.words import tr
from studio_log.planning.problem import THOUSANDTHS, Plan, Problem, Span
from studio_log.planning.reasons import moment_said

OFF: Final = 60
"""Minutes by which a stir may be sooner or later than it is due."""
LASTS: Final = 5
"""Minutes of a stir."""
MOST: Final = 4_000
"""Stirs that are given; a plan with more of them is told of."""
DAY: Final = 1440
Stretch = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Stir:
    """A stir: the minute it begins, and the one it is due."""

    lot: str
    step: str
    at: int
    due: int


@dataclass(frozen=True, slots=True)
class Stirs:
    """All stirs in order of time, and those that have no place."""

    placed: tuple[Stir, ...]
    missing: tuple[str, ...]
    """A sentence for each step that has stirs without a place."""
    left: tuple[tuple[str, str, int], ...] = ()
    """Lot, step and due minute of each that has none."""


def stirs_of(problem: Problem, plan: Plan) -> Stirs:
    """Give the stirs of a plan: from now on, in waking hours, where no step takes all hands."""
    awake, busy = _awake(problem), _busy(problem, plan)
    placed: list[Stir] = []
    left: list[tuple[str, str, int]] = []
    more: tuple[str, ...] = ()
    for due, lot, step in sorted(_dues(problem, plan)):
        if len(placed) + len(left) == MOST:
            more = (tr("Only the first {n} stirs are given.", n=f"{MOST:,}"),)
            break
        at = _place(due, plan.spans[lot][step], awake, busy)
        if at is None and not _within(due, awake):
            continue  # everybody is asleep
        if at is None:
            left.append((lot, step, due))
            continue
        insort(busy, (at, at + LASTS))
        placed.append(Stir(lot, step, at, due))
    in_order = tuple(sorted(placed, key=lambda one: (one.at, one.lot)))
    return Stirs(in_order, (*_left_words(problem, left), *more), tuple(left))


def _left_words(problem: Problem, left: list[tuple[str, str, int]]) -> Iterator[str]:
    dues: dict[tuple[str, str], list[int]] = {}
    for lot, step, due in left:
        dues.setdefault((lot, step), []).append(due)
    yield from (_step_words(problem, *step, some) for step, some in dues.items())


def _step_words(problem: Problem, lot: str, step: str, dues: list[int]) -> str:
    first = moment_said(problem, dues[0])
    if len(dues) == 1:
        return tr(
            "{lot}'s {step} is to be stirred on {moment}, and your hands are full for an hour "
            "before and after.",
            lot=lot,
            step=step,
            moment=first,
        )
    return tr(
        "{lot}'s {step} is to be stirred {n} times from {first} to {last}, and your hands are full "
        "for an hour before and after each.",
        lot=lot,
        step=step,
        n=len(dues),
        first=first,
        last=moment_said(problem, dues[-1]),
    )


def _dues(problem: Problem, plan: Plan) -> Iterator[tuple[int, str, str]]:
    """Give when each step is due to be stirred from now on, by day and by night."""
    for lot in problem.lots:
        for step in lot.steps:
            span = plan.spans.get(lot.name, {}).get(step.name)
            every = step.stir_every
            if span is not None and every and step.hands is None:
                first = max(1, -(span.start // every))
                times = range(span.start + first * every, span.end, every)
                yield from ((due, lot.name, step.name) for due in times[: MOST + 1])


def _place(due: int, span: Span, awake: list[Stretch], busy: list[Stretch]) -> int | None:
    """Give the moment nearest to when a stir is due at which somebody is awake and free."""
    for off in range(0, OFF + 1, LASTS):
        for at in (due + off, due - off):
            inside = max(0, span.start) <= at and at + LASTS <= span.end
            if inside and _within(at, awake, LASTS) and _is_free(at, busy):
                return at
    return None


def _within(at: int, awake: list[Stretch], lasts: int = 1) -> bool:
    """Say whether somebody is awake for so many minutes."""
    place = bisect_right(awake, at, key=lambda one: one[0]) - 1
    return place >= 0 and at + lasts <= awake[place][1]


def _is_free(at: int, busy: list[Stretch]) -> bool:
    place = bisect_right(busy, at, key=lambda one: one[0])
    before = place == 0 or busy[place - 1][1] <= at
    return before and (place == len(busy) or at + LASTS <= busy[place][0])


def _awake(problem: Problem) -> list[Stretch]:
    """Give the waking hours in minutes; where none are said, the working hours."""
    calendar, clock = problem.calendar, problem.clock
    some = any(calendar.waking)
    day, found = clock.start.replace(hour=0, minute=0), []
    while clock.minute(day) < problem.horizon:
        hours = calendar.waking[day.weekday()] if some else calendar.on(day.date())
        for begins, ends in hours:
            found.append(
                (clock.minute(day + timedelta(minutes=begins)),
                 clock.minute(day + timedelta(minutes=ends)))
            )  # fmt: skip
        day += timedelta(minutes=DAY)
    return sorted(one for one in found if one[0] < one[1])


def _busy(problem: Problem, plan: Plan) -> list[Stretch]:
    """Give the stretches in which steps take all hands there are, apart and in order."""
    events: list[tuple[int, int]] = []
    for lot in problem.lots:
        for step in lot.steps:
            span = plan.spans.get(lot.name, {}).get(step.name)
            if span is not None and step.hands is not None and span.start < span.end:
                events += [(span.start, 1), (span.end, -1)]
    room, held, since = problem.stores["hands"] // THOUSANDTHS, 0, 0
    found: list[Stretch] = []
    for at, change in sorted(events):
        if held < room <= held + change:
            since = at
        elif held >= room > held + change:
            found.append((since, at))
        held += change
    return found
