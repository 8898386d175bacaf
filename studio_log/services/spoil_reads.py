"""What would spoil in the steps of a lot: the rules of the domain, asked with all that is known."""

from datetime import datetime

from studio_log.domain.dryings import readings_of
from studio_log.domain.journal import Entry
from studio_log.domain.lot_amounts import amounts_of
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.spoil_orders import Case, warnings_of
from studio_log.domain.spoiling import Warned
from studio_log.domain.windows import StepWindow, windows_of
from studio_log.services.desk import Desk
from studio_log.services.questions import StepLine


def warned_of(
    desk: Desk,
    lot: Lot,
    line: StepLine,
    window: StepWindow | None,
    entries: tuple[Entry, ...],
) -> tuple[Warned, ...]:
    """Give the warnings of one step that is not closed; none for an optional coat left alone.

    A step ahead is looked at as of its best start, one that runs as of when it began.
    """
    step = lot.step(line.number)
    if step.closed or not lot.taken(step) or lot.stopped is not None:
        return ()
    read = readings_of(entries, step) if step.running else {}
    return warnings_of(Case(lot, step, _moment(desk, step, window), line.amounts, read))


def spoils_of_step(lot: Lot, step: LotStep) -> list[str]:
    """Give the warnings for a step that has just begun or in which something was just read."""
    if step.closed or step.start is None:
        return []
    case = Case(lot, step, step.start, amounts_of(lot, step), step.read)
    return [one.words for one in warnings_of(case)]


def spoils_ahead(desk: Desk, lot: Lot) -> list[str]:
    """Give the warnings for all steps that a lot has still before it, each told once."""
    windows = windows_of(lot, desk.now, desk.quiet)
    found: dict[str, None] = {}
    for step in lot.steps:
        if step.closed or not lot.taken(step):
            continue
        at = _moment(desk, step, windows.get(step.number))
        for one in warnings_of(Case(lot, step, at, amounts_of(lot, step), step.read)):
            found[one.words] = None
    return list(found)


def _moment(desk: Desk, step: LotStep, window: StepWindow | None) -> datetime:
    if step.start is not None:
        return step.start
    return desk.now if window is None else max(window.best_start, desk.now)
