"""The words of a change, as they stand in "with …" or "… more": nouns come from the problem."""

from collections.abc import Callable
from typing import Final

from studio_log.language.calendar_words import long_weekday_name
from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.change_kinds import (
    AddHours,
    AddSession,
    AddVessel,
    Change,
    CloseDay,
    GoalCured,
    GoalPieces,
    LaterDue,
    LaterGoal,
    LaterRelease,
    LeaveOut,
    LongerLink,
    LongerPause,
    LongerStep,
    MoreBurners,
    MoreDays,
    MoreHands,
    MoreLine,
    RemoveVessel,
)
from studio_log.planning.plain_words import (
    BURNERS,
    DAYS,
    HANDS,
    PIECES,
    WEEK,
    amount_words,
    counted,
    exact_words,
    hour_words,
    later_words,
    long_day,
    number_words,
)
from studio_log.planning.problem import THOUSANDTHS, Problem
from studio_log.planning.vessel_words import further_words, vessel_words

_METRES: Final = (tr_later("no metres"), tr_later("one metre"), tr_later("{n} metres"))
_ON_DAYS: Final = (
    tr_later("Mondays"), tr_later("Tuesdays"), tr_later("Wednesdays"), tr_later("Thursdays"),
    tr_later("Fridays"), tr_later("Saturdays"), tr_later("Sundays"),
)  # fmt: skip
MOMENTS: Final = {"start": tr_later("the start of {step}"), "end": tr_later("the end of {step}")}
"""The two ends of a step, as links name them."""


def change_words(problem: Problem, change: Change) -> str:
    """Give a change in words, small letter first: "a second bucket of 20 L"."""
    return _WORDS[type(change)](problem, change)


def _add_vessel(problem: Problem, change: AddVessel) -> str:
    there = sum(one.kind == change.kind for one in problem.vessels)
    return further_words(change.kind, amount_words(change.size), there)


def _remove_vessel(_: Problem, change: RemoveVessel) -> str:
    return tr("no {vessel}", vessel=vessel_words(change.vessel))


def _more_line(_: Problem, change: MoreLine) -> str:
    much = abs(change.metres)
    text = tr_later("{much} of line more") if change.metres > 0 else tr_later("{much} of line less")
    if much % THOUSANDTHS:
        return tr(text, much=f"{amount_words(much)} m")
    return tr(text, much=counted(much // THOUSANDTHS, _METRES))


def _more_burners(_: Problem, change: MoreBurners) -> str:
    return _more_or_less(change.burners, counted(abs(change.burners), BURNERS))


def _more_hands(_: Problem, change: MoreHands) -> str:
    return _more_or_less(change.hands, counted(abs(change.hands), HANDS))


def _more_or_less(number: int, things: str) -> str:
    text = tr_later("{things} more") if number > 0 else tr_later("{things} less")
    return tr(text, things=things)


def _add_session(_: Problem, change: AddSession) -> str:
    return tr(
        "one session on {day} from {begins} to {ends}",
        day=long_day(change.day),
        begins=hour_words(change.begins),
        ends=hour_words(change.ends),
    )


def _close_day(_: Problem, change: CloseDay) -> str:
    return tr("no hours on {day}", day=long_day(change.day))


def _add_hours(_: Problem, change: AddHours) -> str:
    days = change.weekdays
    hours = {"begins": hour_words(change.begins), "ends": hour_words(change.ends)}
    if len(days) == WEEK:
        return tr("hours from {begins} to {ends} every day", **hours)
    if len(days) > 2 and days == tuple(range(days[0], days[-1] + 1)):
        first, last = long_weekday_name(days[0]), long_weekday_name(days[-1])
        text = tr_later("hours from {begins} to {ends} from {first} to {last}")
        return tr(text, first=first, last=last, **hours)
    named = listed([tr(_ON_DAYS[day]) for day in days])
    return tr("hours from {begins} to {ends} on {days}", days=named, **hours)


def _longer_step(problem: Problem, change: LongerStep) -> str:
    steps = [one for lot in problem.lots if lot.name == change.lot for one in lot.steps]
    most = next((one.most for one in steps if one.name == change.step), None)
    if most is None:
        return tr(
            "{step} of {lot} {length} longer",
            step=change.step,
            lot=change.lot,
            length=exact_words(change.minutes),
        )
    return tr(
        "{step} of {lot} for up to {whole} instead of {most}",
        step=change.step,
        lot=change.lot,
        whole=exact_words(most + change.minutes),
        most=exact_words(most),
    )


def _longer_pause(_: Problem, change: LongerPause) -> str:
    return tr(
        "{length} more of waiting after {step} of {lot}",
        length=exact_words(change.minutes),
        step=change.step,
        lot=change.lot,
    )


def _longer_link(_: Problem, change: LongerLink) -> str:
    first, second = (moment_name(one) for one in (change.first, change.second))
    return tr(
        "{length} more from {first} to {second} of {lot}",
        length=exact_words(change.minutes),
        first=first,
        second=second,
        lot=change.lot,
    )


def moment_name(of: str) -> str:
    """Give a moment of a link, as in "dip 2.end", as "the end of dip 2"."""
    step, _, which = of.rpartition(".")
    return tr(MOMENTS[which], step=step)


def _later_goal(_: Problem, change: LaterGoal) -> str:
    return tr("{goal} {length} later", goal=change.goal, length=later_words(change.minutes))


def _goal_pieces(problem: Problem, change: GoalPieces) -> str:
    wanted = next((one.pieces for one in problem.goals if one.name == change.goal), None)
    pieces = counted(change.pieces, PIECES)
    if wanted is None:
        return tr("{pieces} for {goal}", pieces=pieces, goal=change.goal)
    return tr(
        "{pieces} for {goal} instead of {wanted}",
        pieces=pieces,
        goal=change.goal,
        wanted=number_words(wanted),
    )


def _goal_cured(_: Problem, change: GoalCured) -> str:
    several = tr_later("{pieces} for {goal} cured {n} days")
    text = tr_later("{pieces} for {goal} cured 1 day") if change.days == 1 else several
    pieces = counted(change.pieces, PIECES)
    return tr(text, pieces=pieces, goal=change.goal, n=change.days)


def _leave_out(problem: Problem, change: LeaveOut) -> str:
    begun = any(one.name == change.lot and one.facts for one in problem.lots)
    return tr(tr_later("{lot} given up") if begun else tr_later("{lot} left out"), lot=change.lot)


def _later_release(_: Problem, change: LaterRelease) -> str:
    length = later_words(change.minutes)
    return tr("{lot} begun {length} later at the earliest", lot=change.lot, length=length)


def _later_due(_: Problem, change: LaterDue) -> str:
    return tr("{lot} due {length} later", lot=change.lot, length=later_words(change.minutes))


def _more_days(_: Problem, change: MoreDays) -> str:
    return tr("a plan that reaches {days} further", days=counted(change.days, DAYS))


_WORDS: Final[dict[type, Callable[..., str]]] = {
    AddVessel: _add_vessel, RemoveVessel: _remove_vessel, MoreLine: _more_line,
    MoreBurners: _more_burners, AddSession: _add_session, CloseDay: _close_day,
    AddHours: _add_hours, LongerStep: _longer_step, LongerPause: _longer_pause,
    LongerLink: _longer_link, LaterGoal: _later_goal, GoalPieces: _goal_pieces,
    GoalCured: _goal_cured, LeaveOut: _leave_out, LaterRelease: _later_release,
    LaterDue: _later_due, MoreDays: _more_days, MoreHands: _more_hands,
}  # fmt: skip
