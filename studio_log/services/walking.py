"""A lot walked as planned: each act at its best moment, up to a moment.

Used for the demo's lots and for tests; acts are checked and written like any others.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta

from studio_log.domain.journal import Act, Entry
from studio_log.domain.lots import Lot, LotStep, StepState
from studio_log.domain.methods import StepKind
from studio_log.domain.tending import coming_tendings
from studio_log.domain.windows import SHORT, windows_of
from studio_log.services.desk import Desk

MOST_ACTS = 400


def walk(desk: Desk, lot: Lot, since: datetime, until: datetime) -> Lot:
    """Give the lot after every act that is best done from `since` to `until`."""
    at = since
    for _ in range(MOST_ACTS):
        step, act, moment = next_act(desk, lot, at)
        if step is None or moment > until:
            break
        for stir in _stirs(desk, step, act, moment):
            if stir <= until:
                lot = desk.write(lot, _entry(desk, lot, step, Act.TEND, stir), sure=True)
        lot = desk.write(lot, _entry(desk, lot, step, act, moment), sure=True)
        at = moment
    running = next((one for one in lot.open_steps() if one.spec.tending is not None), None)
    if running is not None:
        for stir in _stirs(desk, running, Act.END, until):
            lot = desk.write(lot, _entry(desk, lot, running, Act.TEND, stir), sure=True)
    return lot


def next_act(desk: Desk, lot: Lot, at: datetime) -> tuple[LotStep | None, Act, datetime]:
    """Give the step, the act and the moment at which a lot is best carried on."""
    windows = windows_of(lot, at, desk.quiet)
    for step in lot.steps:
        if step.closed or not lot.taken(step) or step.spec.kind is StepKind.CURE:
            continue
        window = windows[step.number]
        if step.running:
            act = Act.DRY if step.spec.kind is StepKind.DRY else Act.END
            return step, act, window.best_end
        if lot.state_of(step) is StepState.OPEN:
            return step, Act.START, window.best_start
    return None, Act.NOTE, at


def _stirs(desk: Desk, step: LotStep, act: Act, until: datetime) -> Iterator[datetime]:
    if act is Act.END and step.running and step.spec.tending is not None:
        yield from coming_tendings(step, desk.quiet, until - SHORT / 3)


def _entry(desk: Desk, lot: Lot, step: LotStep, act: Act, at: datetime) -> Entry:
    data = {}
    milk = desk.milk_of(lot.code) if act is Act.START and step.spec.uses_milk else None
    if milk is not None:
        data["milk"] = milk.code
    written = at + timedelta(seconds=20)
    return Entry(lot.code, act, at, written, desk.zone, step=step.number, data=data)
