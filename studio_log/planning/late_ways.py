"""Single loosenings that may put a late date right.

Some keep every step where it is (a later date, fewer pieces, pieces cured less); the others have to
be planned, and `why` offers only what really made a plan less late.
"""

from collections.abc import Iterator
from datetime import datetime, time, timedelta
from itertools import chain, pairwise
from typing import Final

from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    AddVessel,
    Change,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LeaveOut,
    MoreBurners,
    MoreHands,
    MoreLine,
)
from studio_log.planning.check_plan import open_steps
from studio_log.planning.lates import late_dues, late_goals, late_names
from studio_log.planning.plain_words import DAY
from studio_log.planning.problem import THOUSANDTHS, Goal, Plan, Problem
from studio_log.planning.score import end_of
from studio_log.planning.why_alone import usual_hours
from studio_log.planning.why_sizes import DAYLIGHT, awake

MORE: Final = 120
"""Minutes that working days are made longer by."""
MOST_DAYS_OFF: Final = 3
MOST_MOVED: Final = 4
"""Dates that a way out moves."""
MOST_THEN: Final = 3
"""Waits of late lots behind which a session is tried."""
LEAST_COMING: Final = 30
QUARTER: Final = 15
Mend = tuple[Change, ...]


def in_hand(problem: Problem, plan: Plan) -> Iterator[Mend]:
    """Give what puts dates right with every step where it is."""
    moved: list[Change] = []
    for one in late_goals(problem, plan):
        goal = one.goal
        moved.append(LaterGoal(goal.name, _whole_days(one.last - goal.at)))
        if one.in_time:
            yield (GoalPieces(goal.name, one.in_time),)
        days = (goal.at - one.last + goal.cured) // DAY
        if 1 <= days < goal.cured // DAY:
            yield (GoalCured(goal.name, one.pieces, days),)
    for lot, end in late_dues(problem, plan):
        moved.append(LaterDue(lot.name, _whole_days(end - (lot.due or 0))))
    if len(moved) <= MOST_MOVED:
        yield from ((one,) for one in moved)
    if 1 < len(moved) <= MOST_MOVED:
        yield tuple(moved)


def pieces_of(problem: Problem, goal: Goal) -> list[int]:
    """Give how many pieces a goal may have, so that lots are taken whole: few to many."""
    lots = {one.name: one.pieces for one in problem.lots}
    sums = {0}
    for name in dict.fromkeys(goal.lots):
        sums |= {one + lots[name] for one in sums if one + lots[name] <= goal.pieces}
    return sorted(sums - {0})


def _whole_days(minutes: int) -> int:
    """Give minutes rounded up to days, so that a date keeps its hour; short ones to quarters."""
    unit = DAY if minutes > DAY // 4 else QUARTER
    return -(-minutes // unit) * unit


def searched(problem: Problem, plan: Plan | None) -> Iterator[Mend]:
    """Give single loosenings that may help, those that cost little first."""
    every = chain(
        _just_then(problem, plan),
        _days_off(problem, plan),
        _longer_weeks(problem),
        _things(problem),
        _others(problem, plan),
    )
    yield from ((one,) for one in every)


def _just_then(problem: Problem, plan: Plan | None) -> Iterator[Change]:
    """Give a session at the end of the longest waits of late lots that hours alone made longer."""
    if plan is None:
        return
    waits = []
    late = late_names(problem, plan)
    for lot in problem.lots:
        spans = plan.spans.get(lot.name, {}) if lot.name in late else {}
        for step, after in pairwise(one for one in lot.steps if one.name in spans):
            span = spans[step.name]
            ready = span.start + max(step.least, step.hands or 0)
            if step.hands is None and after.hands and ready < span.end:
                waits.append((span.end - ready, ready, after.hands))
    for _, ready, hands in sorted(waits, reverse=True)[:MOST_THEN]:
        session = _session_at(problem, ready, hands)
        if session is not None:
            yield session


def _session_at(problem: Problem, ready: int, hands: int) -> AddSession | None:
    """Give the first session from a minute on in which somebody may be asked to come."""
    length = max(hands, LEAST_COMING)
    for minute in range(max(ready, 0), max(ready, 0) + DAY // 2, QUARTER):
        local = problem.clock.local(minute)
        begins = -(-(local.hour * 60 + local.minute) // QUARTER) * QUARTER
        day = local.date()
        if begins + length > DAY or not awake(problem, day.weekday(), begins, begins + length):
            continue
        hours = problem.calendar.on(day)
        inside = any(one <= begins and begins + length <= other for one, other in hours)
        return None if inside else AddSession(day, begins, begins + length)
    return None


def _days_off(problem: Problem, plan: Plan | None) -> Iterator[Change]:
    """Give a session on each of the first days without hours, before what is late is done."""
    usual = usual_hours(problem)
    if usual is None:
        return
    last, given = last_needed(problem, plan), 0
    day = problem.clock.start.date()
    while problem.clock.minute(datetime.combine(day, time())) < last and given < MOST_DAYS_OFF:
        if not problem.calendar.on(day) and awake(problem, day.weekday(), *usual):
            given += 1
            yield AddSession(day, *usual)
        day += timedelta(days=1)


def last_needed(problem: Problem, plan: Plan | None) -> int:
    """Give when the last late lot is over but for its cure."""
    if plan is None:
        return problem.horizon
    late = late_names(problem, plan)
    ends = [end_of(lot, plan.spans.get(lot.name, {})) for lot in problem.lots if lot.name in late]
    return max(ends, default=0)


def _longer_weeks(problem: Problem) -> Iterator[Change]:
    """Give hours on each weekday without any, and two more hours behind those of all others."""
    working, usual = problem.calendar.working, usual_hours(problem)
    for day, hours in enumerate(working):
        if usual is not None and not hours and awake(problem, day, *usual):
            yield AddHours((day,), *usual)
    if usual is not None:
        yield from _evenings(problem)


def _evenings(problem: Problem) -> Iterator[Change]:
    """Give two more hours of every day that has some: behind them, before them, the last awake."""
    working, waking = problem.calendar.working, problem.calendar.waking
    days = tuple(day for day, hours in enumerate(working) if hours)
    closes = max(working[day][-1][1] for day in days)
    opens = min(working[day][0][0] for day in days)
    last = min((waking[day] or DAYLIGHT)[-1][1] for day in days)
    edges = {closes: closes + MORE, last - MORE: last, opens - MORE: opens}
    for begins, ends in edges.items():
        if begins >= 0 and ends <= DAY and all(awake(problem, day, begins, ends) for day in days):
            yield AddHours(days, begins, ends)


def _things(problem: Problem) -> Iterator[Change]:
    """Give one more of each kind of thing that open steps take, and one more pair of hands."""
    uses: dict[str, list[int]] = {}
    for lot in problem.lots:
        for step in open_steps(lot):
            for kind, much in step.uses.items():
                uses.setdefault(kind, []).append(much)
    for kind, some in uses.items():
        if kind == "line":
            yield MoreLine(THOUSANDTHS)
            yield MoreLine(-(-min(some) // THOUSANDTHS) * THOUSANDTHS)
        elif kind == "burner":
            yield MoreBurners(1)
        else:
            sizes = {-(-one // THOUSANDTHS) * THOUSANDTHS for one in (min(some), max(some))}
            yield from (AddVessel(kind, size) for size in sorted(sizes))
    yield MoreHands(1)


def _others(problem: Problem, plan: Plan | None) -> Iterator[Change]:
    """Give each lot that no date waits for and that is not begun, left out."""
    wanted = {name for goal in problem.goals for name in goal.lots} if plan is not None else set()
    for lot in problem.lots:
        dated = plan is not None and (lot.due is not None or lot.name in wanted)
        if not lot.facts and not dated:
            yield LeaveOut(lot.name)
