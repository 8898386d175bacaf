"""Batches of milk."""

import math
from typing import Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, restorable, standing
from studio_log.domain.milks import milk_from
from studio_log.domain.reminders import Cause
from studio_log.language.words import tr, tr_later
from studio_log.present.words import moment
from studio_log.science.soy_milk import WARMEST_C
from studio_log.services.commands import NewMilk, Outcome, SetMilk
from studio_log.services.desk import Desk, whole_code
from studio_log.services.lot_acts import own_entries

TAKEN_BACK = tr_later("taken back")
MOST = {"beans_grams": 100_000.0, "litres": 5_000.0, "strength": 1_000.0}


def new_milk(desk: Desk, command: NewMilk) -> Outcome:
    """Record a batch; of beans, litres and strength two give the third."""
    data = _figures(command)
    lots = _lots(desk, command.lots)
    code = f"M{desk.year % 100:02d}-{desk.work.next_code('milk', desk.year):03d}"
    entry = desk.entry(
        code,
        Act.MILK_NEW,
        command.made_at,
        data={**data, **_heat(command.celsius), "cold": command.cold, "lots": lots},
    )
    desk.check_time(entry.at, sure=False)
    desk.work.journal.append(entry)
    milk = desk.milk(code)
    desk.put_milk(milk)
    _name_running_coats(desk, lots, code)
    good = moment(milk.use_by, desk.now, desk.zone)
    return Outcome(
        tr("Milk {code} is recorded, good for a further coat until {good}.", code=code, good=good),
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
            raise Refusal(
                tr(
                    "{value} is no figure for a milk's {replace}.",
                    value=value,
                    replace=name.replace("_", " "),
                )
            )
    beans, litres, strength = given["beans_grams"], given["litres"], given["strength"]
    if strength is None and beans and litres:
        given["strength"] = beans / litres
    elif litres is None and beans and strength:
        given["litres"] = beans / strength
    return given


def _heat(celsius: float | None) -> dict[str, float]:
    """Give what was measured where the milk stands; Refusal outside what milk is kept at."""
    if celsius is None:
        return {}
    if not 0 <= celsius <= WARMEST_C:
        raise Refusal(
            tr("Milk is kept between 0 and {most} °C, not at {celsius}. Nothing was changed.",
               most=f"{WARMEST_C:g}", celsius=f"{celsius:g}")
        )  # fmt: skip
    return {"celsius": celsius}


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
        desk.settle(lot, Cause(why=tr("the milk changed")))


def undo_milk(desk: Desk, code: str, number: int | None = None) -> Outcome:
    """Take back the latest change of a milk; before any, the milk itself, from its coats too."""
    before = milk_from(desk.entries(code))
    stand = [entry for entry in standing(desk.entries(code)) if number in {None, entry.number}]
    if not stand or stand[-1].note == TAKEN_BACK:
        raise Refusal(
            tr("Nothing of milk {code} is left to take back. Nothing was changed.", code=code)
        )
    if stand[-1].act is Act.MILK_NEW:
        if len(standing(desk.entries(code))) > 1:
            raise Refusal(tr("Milk {code} was changed since. Take that back first.", code=code))
        gone = {"finished": True, "lots": []}
        desk.work.journal.append(desk.entry(code, Act.MILK_SET, note=TAKEN_BACK, data=gone))
        for lot_code in before.lots:
            _forget(desk, lot_code, code)
    else:
        desk.work.journal.append(desk.entry(code, Act.UNDO, target=stand[-1].number))
    after = desk.milk(code)
    desk.put_milk(after)
    touched = sorted({*before.lots, *after.lots})
    for lot_code in touched:
        desk.settle(
            desk.lot(lot_code), Cause(undoing=True, why=tr_later("its milk was taken back"))
        )
    lots, milks = frozenset(touched), frozenset({code})
    words = tr("Milk {code}: {words} is taken back.", code=code, words=stand[-1].act.words)
    return Outcome(words, lots=lots, milks=milks, subject=code, reminders=True)


def redo_milk(desk: Desk, code: str) -> Outcome:
    """Restore what was taken back of a milk last, or the milk itself, for its coats too."""
    before = milk_from(desk.entries(code))
    found = restorable(desk.entries(code), TAKEN_BACK)
    if found is None:
        raise Refusal(tr("Nothing of {code} was taken back. Nothing was changed.", code=code))
    act, entry = found
    desk.work.journal.append(desk.entry(code, act, target=entry.number))
    after = desk.milk(code)
    desk.put_milk(after)
    touched = sorted({*before.lots, *after.lots})
    _name_running_coats(desk, touched, code)
    words = entry.act.words if act is Act.REDO else Act.MILK_NEW.words
    said = tr("{code}: “{words}” stands again.", code=code, words=words)
    return Outcome(
        said, lots=frozenset(touched), milks=frozenset({code}), subject=code, reminders=True
    )


def _forget(desk: Desk, lot_code: str, milk: str) -> None:
    """Take back the entries that named a milk to a coat which ran already."""
    for entry in own_entries(desk.entries(lot_code)):
        if entry.act is Act.MILK and entry.data.get("milk") == milk:
            desk.rewrite(lot_code, desk.entry(lot_code, Act.UNDO, target=entry.number))


def set_milk(desk: Desk, command: SetMilk) -> Outcome:
    """Move a milk to the cold, share it with further lots, or say that it is used up."""
    code = command.code.strip().upper()
    milk = milk_from(desk.entries(code))
    data: dict[str, Any] = {}
    if command.cold is not None:
        data["cold"] = command.cold
    data |= _heat(command.celsius)
    if command.lots is not None:
        data["lots"] = _lots(desk, command.lots)
    if command.finished is not None:
        data["finished"] = command.finished
    if not data:
        raise Refusal(tr("Say what changes: its place, its lots, or that it is used up."))
    desk.work.journal.append(desk.entry(code, Act.MILK_SET, data=data))
    after = desk.milk(code)
    desk.put_milk(after)
    touched = sorted({*milk.lots, *after.lots})
    _name_running_coats(desk, touched, code)
    return Outcome(
        tr("Milk {code} is changed.", code=code),
        lots=frozenset(touched),
        milks=frozenset({code}),
        subject=code,
        reminders=True,
    )
