"""What would spoil in the steps of a lot: the rules of the domain, asked with all that is known."""

from datetime import datetime

from studio_log.domain.dryings import readings_of
from studio_log.domain.journal import Entry
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.spoil_orders import Case, warnings_of
from studio_log.domain.spoiling import Warned
from studio_log.domain.windows import StepWindow
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


def _moment(desk: Desk, step: LotStep, window: StepWindow | None) -> datetime:
    if step.start is not None:
        return step.start
    return desk.now if window is None else max(window.best_start, desk.now)
