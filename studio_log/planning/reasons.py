"""Why a visit is not where an old plan had it: what stands in its way there, said plainly."""

from typing import Final

from studio_log.language.calendar_words import weekday_name
from studio_log.language.words import tr, tr_later
from studio_log.planning.chain import Chain
from studio_log.planning.grip import Grip, reach, takings
from studio_log.planning.plain_words import hour_words, short_day
from studio_log.planning.problem import Problem
from studio_log.planning.vessel_words import vessel_words

STORES: Final = {
    "line": tr_later("the line is full until {moment}"),
    "burner": tr_later("the burners are taken until {moment}"),
    "hands": tr_later("your hands are full until {moment}"),
}


def reason(grip: Grip, slot: int) -> str:
    """Give what keeps a visit from beginning at a slot, all else as it is; "" for nothing."""
    for look in (_past, _too_soon, _too_late, _out_of_hours, _taken):
        found = look(grip, slot)
        if found:
            return found
    return ""


def _past(_grip: Grip, slot: int) -> str:
    return tr("that moment has passed") if slot < 0 else ""


def _too_soon(grip: Grip, slot: int) -> str:
    """Look whether what goes before is not over."""
    low, _ = reach(grip, behind=False)
    if slot >= low:
        return ""
    chain, number, problem = grip.chain, grip.visit, grip.studio.problem
    before = chain.betweens[number - 1] if number else chain.opening
    until = moment_said(problem, low * problem.grid)
    if before is None:
        return tr("{lot} is not to begin before {moment}", lot=chain.lot.name, moment=until)
    step = before.step or _ahead(chain, number)
    return tr("{step} is not over before {moment}", step=step, moment=until)


def _too_late(grip: Grip, slot: int) -> str:
    """Look whether what goes before, or a limit of the lot, can last no longer."""
    _, high = reach(grip, behind=False)
    if slot <= high:
        return ""
    chain, number, problem = grip.chain, grip.visit, grip.studio.problem
    before = chain.betweens[number - 1] if number else chain.opening
    until = moment_said(problem, high * problem.grid)
    if before is not None and before.step is not None:
        return tr("{step} is to end by {moment}", step=before.step, moment=until)
    return tr("it has to be by {moment}", moment=until)


def _ahead(chain: Chain, number: int) -> str:
    """Give the step before a visit, where only a pause lies between."""
    for visit in reversed(chain.visits[:number]):
        if visit.steps:
            return visit.steps[-1][0]
    return tr("what comes before")


def _out_of_hours(grip: Grip, slot: int) -> str:
    length = grip.chain.visits[grip.visit].length
    place = grip.studio.board.window_at(slot) if length else None
    windows = grip.studio.board.windows
    if not length or (place is not None and slot + length <= windows[place].end):
        return ""
    if place is None:
        return tr("those are no working hours")
    return tr("the working hours end before")


def _taken(grip: Grip, slot: int) -> str:
    """Look for a store, a vessel or hands that other lots take; the one that is longest is said."""
    board, problem = grip.studio.board, grip.studio.problem
    found: list[tuple[int, str]] = []
    for store, start, end, much in takings(grip, slot):
        meets = [one for one in board.blocked(store, much) if one[0] < end and start < one[1]]
        found += [(one[1], store) for one in meets]
    if not found:
        return ""
    until, store = max(found)
    said = moment_said(problem, until * problem.grid)
    text = STORES.get(store, tr_later("{vessel} is taken until {moment}"))
    return tr(text, vessel=vessel_words(store), moment=said)


def moment_said(problem: Problem, minute: int) -> str:
    """Give "Tue 09:00" of a moment within a week, else with its date too."""
    at = problem.clock.local(minute)
    if 0 <= minute < 6 * 1440:
        return f"{weekday_name(at.weekday())} {hour_words(at.hour * 60 + at.minute)}"
    return f"{short_day(at.date())} {hour_words(at.hour * 60 + at.minute)}"
