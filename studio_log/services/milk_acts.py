"""Batches of milk."""

import math
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.milks import milk_from
from studio_log.domain.reminders import Cause
from studio_log.present.words import moment
from studio_log.services.commands import NewMilk, Outcome, SetMilk
from studio_log.services.desk import Desk, whole_code

MOST = {"beans_grams": 100_000.0, "litres": 5_000.0, "strength": 1_000.0}


def new_milk(desk: Desk, command: NewMilk) -> Outcome:
    """Record a batch; of beans, litres and strength two give the third."""
    data = _figures(command)
    lots = _lots(desk, command.lots)
    code = f"M{desk.year % 100:02d}-{desk.work.next_code('milk', desk.year):03d}"
    entry = desk.entry(
        code, Act.MILK_NEW, command.made_at, data={**data, "cold": command.cold, "lots": lots}
    )
    desk.check_time(entry.at, sure=False)
    desk.work.journal.append(entry)
    milk = desk.milk(code)
    desk.put_milk(milk)
    _name_running_coats(desk, lots, code)
    good = moment(milk.use_by, desk.now, desk.zone)
    return Outcome(
        f"Milk {code} is recorded, good for a further coat until {good}.",
        lots=frozenset(lots),
        milks=frozenset({code}),
        code=code,
        subject=code,
        reminders=True,
    )


def _figures(command: NewMilk) -> dict[str, Any]:
    given = {name: getattr(command, name) for name in MOST}
    for name, value in given.items():
        if value is not None and not (math.isfinite(value) and 0 < value <= MOST[name]):
            raise Refusal(f"{value} is no figure for a milk's {name.replace('_', ' ')}.")
    beans, litres, strength = given["beans_grams"], given["litres"], given["strength"]
    if strength is None and beans and litres:
        given["strength"] = beans / litres
    elif litres is None and beans and strength:
        given["litres"] = beans / strength
    return given


def _lots(desk: Desk, codes: tuple[str, ...]) -> list[str]:
    return [desk.lot(code).code for code in dict.fromkeys(map(whole_code, codes))]


def _name_running_coats(desk: Desk, lots: list[str], code: str) -> None:
    """Let a coat that runs without a milk name this one; later coats name it as they begin."""
    for lot_code in lots:
        lot = desk.lot(lot_code)
        for step in lot.open_steps():
            if step.spec.uses_milk and step.milk is None:
                entry = desk.entry(lot_code, Act.MILK, step=step.number, data={"milk": code})
                lot = desk.write(lot, entry)
        desk.settle(lot, Cause(why="the milk changed"))


def set_milk(desk: Desk, command: SetMilk) -> Outcome:
    """Move a milk to the cold, share it with further lots, or say that it is used up."""
    code = command.code.strip().upper()
    milk = milk_from(desk.entries(code))
    data: dict[str, Any] = {}
    if command.cold is not None:
        data["cold"] = command.cold
    if command.lots is not None:
        data["lots"] = _lots(desk, command.lots)
    if command.finished is not None:
        data["finished"] = command.finished
    if not data:
        raise Refusal("Say what changes: its place, its lots, or that it is used up.")
    desk.work.journal.append(desk.entry(code, Act.MILK_SET, data=data))
    after = desk.milk(code)
    desk.put_milk(after)
    touched = sorted({*milk.lots, *after.lots})
    _name_running_coats(desk, touched, code)
    return Outcome(
        f"Milk {code} is changed.",
        lots=frozenset(touched),
        milks=frozenset({code}),
        subject=code,
        reminders=True,
    )
