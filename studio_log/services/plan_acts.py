"""Accepting a plan: lots follow it, those that were wanted are made."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.following import Moments
from studio_log.domain.journal import Act
from studio_log.domain.plan_wishes import WantedLot, write_wishes
from studio_log.domain.reminders import Cause
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.commands import NewLot, Outcome
from studio_log.services.desk import Desk
from studio_log.services.lot_acts import new_lot
from studio_log.services.plan import PLAN, AcceptPlan
from studio_log.services.plan_studio import plan_studio_of, wanted_lot


def accept_plan(desk: Desk, command: AcceptPlan) -> Outcome:
    """Write the plan's moments into each lot's journal, as one entry a lot."""
    studio = plan_studio_of(desk)
    moments = studio.moments(command.starts, command.ends)
    if command.codes is not None:
        moments = {code: ends for code, ends in moments.items() if code in command.codes}
    moments = {code: ends for code, ends in moments.items() if ends}
    if not moments:
        raise Refusal("Choose at least one lot that shall follow the plan. Nothing was changed.")
    codes = []
    for name, ends in moments.items():
        made = studio.wanted.get(name)
        code = _made(desk, made) if made is not None else name
        _follow(desk, code, ends)
        codes.append(code)
    _forget(desk, [one for one in studio.wanted.values() if one.name not in moments])
    return Outcome(
        counted(
            len(codes),
            tr_later("{n} lot follows the plan."),
            tr_later("{n} lots follow the plan."),
        ),
        advice=(
            tr(
                "Lots that follow a plan are reminded by it. Undo takes the plan back, and on a "
                "lot that lot alone."
            ),
        ),
        lots=frozenset(codes),
        reminders=True,
        settings=bool(studio.wanted),
        code=codes[0],
        subject=codes[0] if len(codes) == 1 else PLAN,
    )


def _made(desk: Desk, wanted: WantedLot) -> str:
    pieces = wanted_lot(desk, wanted).pieces
    litres = desk.settings.vessel_litres
    return new_lot(desk, NewLot(wanted.method, wanted.name, pieces, vessel_litres=litres)).code


def _follow(desk: Desk, code: str, ends: Moments) -> None:
    moments = {str(number): [at.isoformat() for at in two] for number, two in ends.items()}
    lot = desk.lot(code)
    lot = desk.write(lot, desk.entry(lot.code, Act.FOLLOW, data={"moments": moments}))
    desk.settle(lot, Cause(why="a plan was accepted"))


def _forget(desk: Desk, left: list[WantedLot]) -> None:
    """Lots that were made are wanted no more."""
    desk.work.settings.put("plan_wanted", write_wishes(tuple(left)))


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {AcceptPlan: accept_plan}
