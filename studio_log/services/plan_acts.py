"""Accepting a plan: lots follow it, those that were wanted are made."""

from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.following import Moments
from studio_log.domain.journal import Act
from studio_log.domain.plan_milks import strain_of
from studio_log.domain.plan_wishes import SharedMilk, WantedLot, write_wishes
from studio_log.domain.reminders import Cause
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.commands import NewLot, Outcome
from studio_log.services.desk import Desk
from studio_log.services.lot_acts import new_lot
from studio_log.services.milk_words import served_words
from studio_log.services.plan import PLAN, AcceptPlan, Planned
from studio_log.services.plan_means import with_changes
from studio_log.services.plan_studio import PlanStudio, plan_studio_of, wanted_lot


def accept_plan(desk: Desk, command: AcceptPlan) -> Outcome:
    """Write the plan's moments into each lot's journal, as one entry a lot."""
    studio = plan_studio_of(desk)
    moments = studio.moments(command.starts, command.ends)
    if command.codes is not None:
        moments = {code: ends for code, ends in moments.items() if code in command.codes}
    moments = {code: ends for code, ends in moments.items() if ends and studio.forms[code].is_open}
    if not moments:
        raise Refusal("Choose at least one lot that shall follow the plan. Nothing was changed.")
    _both_follow(studio, moments)
    _keep_means(desk, command)
    known: dict[str, str] = {}
    for name in moments:
        made = studio.wanted.get(name)
        known[name] = _made(desk, made) if made is not None else name
    for name, ends in moments.items():
        maker = studio.lots[name].milk_of
        serves = [known.get(one, one) for one in studio.served_by(name)]
        _follow(desk, known[name], ends, known.get(maker, maker), serves)
    _forget(desk, [one for one in studio.wanted.values() if one.name not in moments])
    _keep_shared(desk, studio, known)
    codes = list(known.values())
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
            *(served_words(desk, desk.lot(code)) for code in codes if desk.lot(code).serves),
        ),
        lots=frozenset(codes),
        reminders=True,
        settings=bool(studio.wanted or studio.shared or command.changes),
        code=codes[0],
        subject=codes[0] if len(codes) == 1 else PLAN,
    )


def _keep_means(desk: Desk, command: AcceptPlan) -> None:
    """Write into the studio what the plan counts on, and nothing else."""
    if not command.changes:
        return
    before = asdict(desk.settings)
    for name, value in asdict(with_changes(desk.settings, command.changes)).items():
        if value != before[name]:
            desk.work.settings.put(name, value)


def _both_follow(studio: PlanStudio, moments: Planned) -> None:
    """Refuse to let a lot count on the milk of one that goes its own way."""
    for name in moments:
        maker = studio.lots[name].milk_of
        strain = strain_of(studio.lots[maker]) if maker in studio.lots else None
        follows = strain is None or strain.end is not None or strain.plan_end is not None
        if maker not in moments and not follows:
            raise Refusal(
                tr(
                    "{name} counts on the milk of {maker}: let {maker} follow too, or take the "
                    "sharing out. Nothing was changed.",
                    name=name,
                    maker=maker,
                )
            )


def _keep_shared(desk: Desk, studio: PlanStudio, known: Mapping[str, str]) -> None:
    """Name lots that were made by their codes; what cannot be shared any more is forgotten."""
    kept = tuple(
        SharedMilk(known.get(one.maker, one.maker), tuple(known.get(it, it) for it in one.lots))
        for one in studio.shared
    )
    desk.work.settings.put("plan_milks", write_wishes(kept))


def _made(desk: Desk, wanted: WantedLot) -> str:
    pieces = wanted_lot(desk, wanted).pieces
    litres = desk.settings.vessel_litres
    return new_lot(desk, NewLot(wanted.method, wanted.name, pieces, vessel_litres=litres)).code


def _follow(desk: Desk, code: str, ends: Moments, milk_of: str, serves: list[str]) -> None:
    moments = {str(number): [at.isoformat() for at in two] for number, two in ends.items()}
    milk = {"milk_of": milk_of, "serves": serves}
    data = {"moments": moments, **{name: value for name, value in milk.items() if value}}
    lot = desk.lot(code)
    lot = desk.write(lot, desk.entry(lot.code, Act.FOLLOW, data=data))
    desk.settle(lot, Cause(why="a plan was accepted"))


def _forget(desk: Desk, left: list[WantedLot]) -> None:
    """Lots that were made are wanted no more."""
    desk.work.settings.put("plan_wanted", write_wishes(tuple(left)))


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {AcceptPlan: accept_plan}
