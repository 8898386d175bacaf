"""The words of a change, as they stand in "with …" or "… more": nouns come from the problem."""

from collections.abc import Callable
from typing import Final

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
    ORDINALS,
    WEEKDAYS,
    amount_words,
    counted,
    exact_words,
    hour_words,
    later_words,
    listed,
    long_day,
    number_words,
    with_article,
)
from studio_log.planning.problem import THOUSANDTHS, Problem


def change_words(problem: Problem, change: Change) -> str:
    """Give a change in words, small letter first: "a second bucket of 20 L"."""
    return _WORDS[type(change)](problem, change)


def _add_vessel(problem: Problem, change: AddVessel) -> str:
    there = sum(one.kind == change.kind for one in problem.vessels)
    which = ORDINALS[there + 1] if there + 1 < len(ORDINALS) else "one more"
    named = f"{which} {change.kind}" if which else with_article(change.kind)
    return f"{named} of {amount_words(change.size)} L"


def _remove_vessel(_: Problem, change: RemoveVessel) -> str:
    return f"no {change.vessel}"


def _more_line(_: Problem, change: MoreLine) -> str:
    much, word = abs(change.metres), "more" if change.metres > 0 else "less"
    if much % THOUSANDTHS:
        return f"{amount_words(much)} m of line {word}"
    return f"{counted(much // THOUSANDTHS, 'metre')} of line {word}"


def _more_burners(_: Problem, change: MoreBurners) -> str:
    word = "more" if change.burners > 0 else "less"
    return f"{counted(abs(change.burners), 'burner')} {word}"


def _more_hands(_: Problem, change: MoreHands) -> str:
    word = "more" if change.hands > 0 else "less"
    return f"{counted(abs(change.hands), 'pair of hands', 'pairs of hands')} {word}"


def _add_session(_: Problem, change: AddSession) -> str:
    return f"one session on {long_day(change.day)} {_from_to(change.begins, change.ends)}"


def _close_day(_: Problem, change: CloseDay) -> str:
    return f"no hours on {long_day(change.day)}"


def _add_hours(_: Problem, change: AddHours) -> str:
    return f"hours {_from_to(change.begins, change.ends)} {days_words(change.weekdays)}"


def _from_to(begins: int, ends: int) -> str:
    return f"from {hour_words(begins)} to {hour_words(ends)}"


def days_words(days: tuple[int, ...]) -> str:
    """Give "every day", "from Monday to Friday", or the days one by one."""
    if len(days) == len(WEEKDAYS):
        return "every day"
    if len(days) > 2 and days == tuple(range(days[0], days[-1] + 1)):
        return f"from {WEEKDAYS[days[0]]} to {WEEKDAYS[days[-1]]}"
    return f"on {listed([f'{WEEKDAYS[day]}s' for day in days])}"


def _longer_step(problem: Problem, change: LongerStep) -> str:
    steps = [one for lot in problem.lots if lot.name == change.lot for one in lot.steps]
    most = next((one.most for one in steps if one.name == change.step), None)
    if most is None:
        return f"{change.step} of {change.lot} {exact_words(change.minutes)} longer"
    whole = exact_words(most + change.minutes)
    return f"{change.step} of {change.lot} for up to {whole} instead of {exact_words(most)}"


def _longer_pause(_: Problem, change: LongerPause) -> str:
    return f"{exact_words(change.minutes)} more of waiting after {change.step} of {change.lot}"


def _longer_link(_: Problem, change: LongerLink) -> str:
    ends = (change.first.rpartition("."), change.second.rpartition("."))
    first, second = (f"the {which} of {name}" for name, _, which in ends)
    return f"{exact_words(change.minutes)} more from {first} to {second} of {change.lot}"


def _later_goal(_: Problem, change: LaterGoal) -> str:
    return f"{change.goal} {later_words(change.minutes)} later"


def _goal_pieces(problem: Problem, change: GoalPieces) -> str:
    wanted = next((one.pieces for one in problem.goals if one.name == change.goal), None)
    instead = "" if wanted is None else f" instead of {number_words(wanted)}"
    return f"{counted(change.pieces, 'piece')} for {change.goal}{instead}"


def _goal_cured(_: Problem, change: GoalCured) -> str:
    pieces, days = counted(change.pieces, "piece"), f"{change.days} days"
    return f"{pieces} for {change.goal} cured {'1 day' if change.days == 1 else days}"


def _leave_out(problem: Problem, change: LeaveOut) -> str:
    begun = any(one.name == change.lot and one.facts for one in problem.lots)
    return f"{change.lot} {'given up' if begun else 'left out'}"


def _later_release(_: Problem, change: LaterRelease) -> str:
    return f"{change.lot} begun {later_words(change.minutes)} later at the earliest"


def _later_due(_: Problem, change: LaterDue) -> str:
    return f"{change.lot} due {later_words(change.minutes)} later"


def _more_days(_: Problem, change: MoreDays) -> str:
    return f"a plan that reaches {counted(change.days, 'day')} further"


_WORDS: Final[dict[type, Callable[..., str]]] = {
    AddVessel: _add_vessel, RemoveVessel: _remove_vessel, MoreLine: _more_line,
    MoreBurners: _more_burners, AddSession: _add_session, CloseDay: _close_day,
    AddHours: _add_hours, LongerStep: _longer_step, LongerPause: _longer_pause,
    LongerLink: _longer_link, LaterGoal: _later_goal, GoalPieces: _goal_pieces,
    GoalCured: _goal_cured, LeaveOut: _leave_out, LaterRelease: _later_release,
    LaterDue: _later_due, MoreDays: _more_days, MoreHands: _more_hands,
}  # fmt: skip
