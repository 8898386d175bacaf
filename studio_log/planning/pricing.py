"""What a change costs, in words and as a number to sort by.

The numbers are our judgement, in minutes of somebody's trouble; they only put ways out in order
and are never shown. A piece that is not made costs a day, a lot that is lost more than all else.
"""

from collections.abc import Callable, Sequence
from datetime import date, timedelta
from typing import Any, Final

from studio_log.language.words import listed, tr, tr_later
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
    LongerLink,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreDays,
    MoreHands,
    MoreLine,
)
from studio_log.planning.changes import goal_of, lot_of, with_stretch
from studio_log.planning.plain_words import (
    BURNERS,
    DAY,
    DAYS,
    PIECES,
    amount_words,
    counted,
    exact_words,
    number_words,
)
from studio_log.planning.problem import Plan, Problem
from studio_log.planning.vessel_words import sized_words

COMING: Final = 60
"""Coming once more."""
DAY_OFF: Final = 120
"""Coming on a day without hours."""
BEYOND: Final = 600
"""Stretching a longest time to twice its length."""
WAITING_DAY: Final = 480
"""A date that moves by a day."""
PIECE: Final = 1440
LOST: Final = 100_000
"""A lot that is begun and given up."""
Price = tuple[int, str]


def price_of(problem: Problem, changes: tuple[Change, ...], plan: Plan | None = None) -> Price:
    """Give the price of changes of a problem, to sort by and in words.

    With the plan they lead to, longer hours cost only where it needs them.
    """
    prices = [
        _add_hours(problem, one, plan)
        if isinstance(one, AddHours)
        else _PRICES[type(one)](problem, one)
        for one in changes
    ]
    words: dict[str, None] = {}
    for one, (_, own) in zip(changes, prices, strict=True):
        alike = [other for other in changes if _family(other) == _family(one)]
        many = _MANY.get(_family(one)) if len(alike) > 1 else None
        words[own if many is None else many(alike)] = None
    return sum(price for price, _ in prices), listed(list(words))


def _family(change: Change) -> type:
    """Give what changes have in common that are told together."""
    return LongerStep if isinstance(change, _LONGER) else type(change)


def _comings(changes: Sequence[Any]) -> str:
    return tr(
        "coming {n} times more, {length} in all",
        n=number_words(len(changes)),
        length=exact_words(sum(one.ends - one.begins for one in changes)),
    )


def _beyonds(changes: Sequence[Any]) -> str:
    most = exact_words(max(one.minutes for one in changes))
    n = number_words(len(changes))
    return tr("{n} longest times passed, by up to {most}", n=n, most=most)


_LONGER: Final = (LongerStep, LongerPause, LongerLink)
_MANY: Final[dict[type, Callable[[Sequence[Any]], str]]] = {
    AddSession: _comings, LongerStep: _beyonds,
}  # fmt: skip
"""What several changes alike cost, in words."""


def _longer_step(problem: Problem, change: LongerStep) -> Price:
    steps = lot_of(problem, change.lot).steps
    most = next((one.most for one in steps if one.name == change.step), None)
    return _beyond(most, change.minutes)


def _beyond(most: int | None, minutes: int) -> Price:
    price = 30 + BEYOND * minutes // max(most or 0, 60)
    return price, tr("{length} beyond what is advised", length=exact_words(minutes))


def _longer_pause(problem: Problem, change: LongerPause) -> Price:
    steps = lot_of(problem, change.lot).steps
    most = next((one.then_within for one in steps if one.name == change.step), None)
    return _beyond(most, change.minutes)


def _longer_link(problem: Problem, change: LongerLink) -> Price:
    links = lot_of(problem, change.lot).links
    return _beyond(max((one.most for one in links), default=None), change.minutes)


def _add_session(problem: Problem, change: AddSession) -> Price:
    length = change.ends - change.begins
    said = exact_words(length)
    if problem.calendar.on(change.day):
        return COMING + length, tr("{length} outside the hours of that day", length=said)
    words = tr("coming once more, for {length} on a day without hours", length=said)
    return COMING + DAY_OFF + length, words


def _add_hours(problem: Problem, change: AddHours, plan: Plan | None) -> Price:
    if plan is None:
        first = problem.clock.start.date()
        every = (first + timedelta(days=one) for one in range(problem.horizon // DAY))
        times = sum(day.weekday() in change.weekdays for day in every)
    else:
        times = len(_days_outside(problem, plan))
    more = max((_added(problem, change, one) for one in change.weekdays), default=0)
    words = counted(times, _LONGER_DAYS, most=exact_words(more))
    return (COMING + more) * times, words  # as coming so often: which is what it comes to


_LONGER_DAYS: Final = (
    tr_later("no days with up to {most} beyond the present hours"),
    tr_later("one day with up to {most} beyond the present hours"),
    tr_later("{n} days with up to {most} beyond the present hours"),
)


def _days_outside(problem: Problem, plan: Plan) -> set[date]:
    """Give the days on which a plan needs hands outside the hours that the problem has."""
    found = set()
    for lot in problem.lots:
        by_hand = {one.name for one in lot.steps if one.hands}
        for name, span in plan.spans.get(lot.name, {}).items():
            local = problem.clock.local(span.start)
            begins = local.hour * 60 + local.minute
            ends = begins + span.end - span.start
            hours = problem.calendar.on(local.date())
            if name in by_hand and not any(a <= begins and ends <= b for a, b in hours):
                found.add(local.date())
    return found


def _added(problem: Problem, change: AddHours, weekday: int) -> int:
    """Give the minutes that a weekday gets more of."""
    before = problem.calendar.working[weekday]
    after = with_stretch(before, change.begins, change.ends)
    return sum(b - a for a, b in after) - sum(b - a for a, b in before)


def _add_vessel(_: Problem, change: AddVessel) -> Price:
    vessel = sized_words(change.kind, amount_words(change.size))
    return 300 + change.size // 200, tr("{thing} to find or buy", thing=vessel)


def _more_line(_: Problem, change: MoreLine) -> Price:
    return 200 + change.metres // 20, tr(
        "{metres} m of line to hang up", metres=amount_words(change.metres)
    )


def _more_burners(_: Problem, change: MoreBurners) -> Price:
    burners = counted(change.burners, BURNERS)
    return 500 * change.burners, tr("{thing} to find or buy", thing=burners)


def _more_hands(_: Problem, change: MoreHands) -> Price:
    return 2000 * change.hands, tr("somebody who helps whenever two have to work at once")


def _later_goal(_: Problem, change: LaterGoal) -> Price:
    words = tr("the date of {whose} moves", whose=change.goal)
    return 300 + WAITING_DAY * change.minutes // DAY, words


def _later_due(problem: Problem, change: LaterDue) -> Price:
    weight = lot_of(problem, change.lot).weight
    price = 150 + weight * WAITING_DAY * change.minutes // DAY
    return price, tr("the date of {whose} moves", whose=change.lot)


def _goal_pieces(problem: Problem, change: GoalPieces) -> Price:
    fewer = goal_of(problem, change.goal).pieces - change.pieces
    several = tr_later("{n} fewer pieces for {goal}")
    text = tr_later("one fewer piece for {goal}") if fewer == 1 else several
    return PIECE * fewer, tr(text, n=number_words(fewer), goal=change.goal)


def _goal_cured(problem: Problem, change: GoalCured) -> Price:
    short = goal_of(problem, change.goal).cured // DAY - change.days
    days, several = counted(short, DAYS), tr_later("{pieces} are {days} short of the cure")
    text = tr_later("{pieces} is {days} short of the cure") if change.pieces == 1 else several
    words = tr(text, pieces=counted(change.pieces, PIECES), days=days)
    return 60 + change.pieces * max(short, 0) * 60, words


def _leave_out(problem: Problem, change: LeaveOut) -> Price:
    lot = lot_of(problem, change.lot)
    pieces = counted(lot.pieces, PIECES)
    if lot.facts:
        return LOST, tr("{lot} is lost, with {pieces}", lot=lot.name, pieces=pieces)
    words = tr("{lot} is not done, with {pieces}", lot=lot.name, pieces=pieces)
    return PIECE * 2 + PIECE * lot.pieces, words


def _more_days(_: Problem, change: MoreDays) -> Price:
    return 10 * change.days, tr("a plan that reaches further ahead")


_PRICES: Final[dict[type, Callable[..., Price]]] = {
    LongerStep: _longer_step, LongerPause: _longer_pause, LongerLink: _longer_link,
    AddSession: _add_session, AddVessel: _add_vessel, MoreLine: _more_line,
    MoreBurners: _more_burners, LaterGoal: _later_goal, LaterDue: _later_due,
    GoalPieces: _goal_pieces, GoalCured: _goal_cured, LeaveOut: _leave_out,
    MoreDays: _more_days, MoreHands: _more_hands,
}  # fmt: skip
"""Of the changes that ways out are made of, longer hours aside."""
