"""Milks that serve several lots, in the planner's form: made once, used by all while they are good.

What is fresh is for the first coat, what is kept cold for the further ones.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Any, Final

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.milks import COLD_LIFE, ROOM_LIFE
from studio_log.domain.plan_lots import PlanLot
from studio_log.domain.plan_wishes import SharedMilk
from studio_log.domain.served import coats_of, served
from studio_log.language.words import tr

FRESH: Final = "milk of {maker}"
KEPT: Final = "milk of {maker}, kept cold"
_MINUTE: Final = timedelta(minutes=1)
_Use = tuple[str, str, str, timedelta]
"""Name of the milk, lot, step, and how old the milk may be at the end of it."""


def strain_of(lot: Lot) -> LotStep | None:
    """Give the step that makes a lot's milk: the next one, else the one that was done last."""
    own = [one for one in lot.steps
           if one.spec.makes_milk and one.skipped is None and lot.taken(one)]  # fmt: skip
    return next((one for one in own if one.end is None), own[-1] if own else None)


def sharings(
    wishes: Sequence[SharedMilk], lots: Mapping[str, Lot], now: datetime
) -> tuple[tuple[SharedMilk, ...], list[str]]:
    """Give the sharings that can be, each with the lots it can serve; and why others cannot."""
    found: list[SharedMilk] = []
    doubts: list[str] = []
    for one in wishes:
        maker = lots.get(one.maker)
        strain = None if maker is None or maker.milk_of else strain_of(maker)
        if strain is None:
            doubts.append(tr("{maker} makes no milk that others could share.", maker=one.maker))
            continue
        serves = []
        for name in one.lots:
            lot = served(lots[name], one.maker) if name in lots else None
            doubt = _doubt(name, lot, one.maker, strain, now)
            doubts += [doubt] if doubt else []
            serves += [] if doubt else [name]
        found += [SharedMilk(one.maker, tuple(serves))] if serves else []
    return tuple(found), doubts


def _doubt(name: str, lot: Lot | None, maker: str, strain: LotStep, now: datetime) -> str:
    """Say why a lot cannot be served; "" where it can."""
    coats = [] if lot is None or lot.milk_of != maker else coats_of(lot)
    if not coats:
        return tr(
            "{name} cannot take the milk of {maker}: it has begun its own, or needs none.",
            name=name, maker=maker,
        )  # fmt: skip
    first = coats[0]
    waits = first.start is None and first.end is None
    if waits and strain.end is not None and now > strain.end + fresh_life(first):
        return tr(
            "The milk of {maker} is too old for the first coat of {name}, which makes its own.",
            name=name, maker=maker,
        )  # fmt: skip
    return ""


def milk_forms(
    shared: Sequence[SharedMilk], lots: Mapping[str, Lot], forms: Mapping[str, PlanLot]
) -> list[dict[str, Any]]:
    """Give the milks of a problem; all lots named are among `lots` and `forms`."""
    found: dict[str, dict[str, Any]] = {}
    for one in shared:
        made = _made(lots[one.maker], forms[one.maker])
        for name in one.lots if made else ():
            for milk, lot, step, life in _uses(one.maker, lots[name], forms[name]):
                form = found.setdefault(milk, {"id": milk, **made, "life": 0, "used_by": []})
                minutes = round(life / _MINUTE)
                form["life"] = min(form["life"] or minutes, minutes)
                form["used_by"].append({"lot": lot, "step": step})
    return list(found.values())


def _made(lot: Lot, form: PlanLot) -> dict[str, Any]:
    """Give when a milk is made, or by what; empty where the plan knows nothing of it."""
    strain = strain_of(lot)
    names = [] if strain is None else _names(form, strain)
    if not names:
        return {}
    done = form.form["actual"].get(names[-1])
    if done is None:
        return {"made_by": {"lot": form.code, "step": names[-1]}}
    return {"made_at": done["end"]} if done["end"] else {}


def _uses(maker: str, lot: Lot, form: PlanLot) -> Iterator[_Use]:
    """Give the coats of a lot that are still to take milk."""
    for place, step in enumerate(coats_of(lot)):
        names = _names(form, step)
        if step.start is not None or step.end is not None or not names:
            continue
        what, life = (KEPT, COLD_LIFE) if place else (FRESH, fresh_life(step))
        yield what.format(maker=maker), lot.code, names[0], life + step.spec.hands_on


def fresh_life(step: LotStep) -> timedelta:
    """Give how long milk may stand before the first coat: the method's limit, else its life."""
    return step.spec.gap.most or ROOM_LIFE


def _names(form: PlanLot, step: LotStep) -> list[str]:
    return [name for name, (number, _) in form.places.items() if number == step.number]
