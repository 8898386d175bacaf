"""Taking materials in, buying, drawing, counting them."""

import math
import re
from collections.abc import Callable, Mapping
from typing import Any, Final

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, restorable, standing
from studio_log.domain.number_text import quoted
from studio_log.domain.stock import UNITS, Material, material_from
from studio_log.language.words import tr
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import LONGEST_NAME, LONGEST_NOTE, clean
from studio_log.services.stock import MoveMaterial, NewMaterial, SetMaterial

MOST: Final = 10_000_000.0
"""Grams or litres, and money."""
MOVES: Final[Mapping[str, Act]] = {
    "buy": Act.STOCK_IN,
    "draw": Act.STOCK_OUT,
    "count": Act.STOCK_COUNT,
}
NOTHING: Final = "Nothing was changed."
TAKEN_BACK: Final = "taken back"


def stock_code(text: str) -> str:
    """Give a material's code as it is written: "s26-3" is S26-003."""
    found = re.fullmatch(r"\s*[Ss](\d{2})-(\d{1,5})\s*", text)
    if found is None:
        raise Refusal(f"{quoted(text)} is no material's code, such as S26-004. {NOTHING}")
    return f"S{found[1]}-{int(found[2]):03d}"


def material_at(desk: Desk, text: str) -> Material:
    """Give a material by its code; Refusal where there is none."""
    return material_from(desk.entries(stock_code(text)))


def new_material(desk: Desk, command: NewMaterial) -> Outcome:
    """Take a material in, with what is there of it."""
    title = _text(command.title, "The name")
    name = _slug(command.material or title)
    if command.unit not in UNITS:
        raise Refusal(f"A material is kept in g or in L, not in {quoted(command.unit)}. {NOTHING}")
    _check_once(desk, name, command.unit)
    low = None if command.low is None else _figure(command.low, "the low level")
    data: dict[str, Any] = {"title": title, "material": name, "unit": command.unit}
    data |= {"place": _text(command.place, "The place", empty=True)} if command.place else {}
    data |= {"low": low} if low is not None else {}
    code = f"S{desk.year % 100:02d}-{desk.work.next_code('stock', desk.year):03d}"
    entry = desk.entry(code, Act.STOCK_NEW, command.at, data=data)
    desk.check_time(entry.at, sure=command.sure)
    desk.work.journal.append(entry)
    if command.amount is not None:
        bought = MoveMaterial(
            code, "buy", command.amount, price=command.price, batch=command.batch,
            best_before=command.best_before, at=command.at, sure=command.sure,
        )  # fmt: skip
        move_material(desk, bought)
    return Outcome(
        tr("{title} is in the stock as {code}.", title=title, code=code), code=code, subject=code
    )


def move_material(desk: Desk, command: MoveMaterial) -> Outcome:
    """Buy, draw by hand or count a material."""
    material = material_at(desk, command.code)
    if command.act not in MOVES:
        raise Refusal(f"{quoted(command.act)} is none of buy, draw and count. {NOTHING}")
    _check_unit(material, command.unit)
    least = 0.0 if command.act == "count" else None
    data: dict[str, Any] = {"amount": _figure(command.amount, "the amount", least=least)}
    if command.act == "buy":
        if command.price is not None:
            data["price"] = _figure(command.price, "the price", least=0.0)
        if command.batch:
            data["batch"] = _text(command.batch, "The batch")
        if command.best_before is not None:
            data["best_before"] = command.best_before.isoformat()
    note = _text(command.note, "The note", empty=True, longest=LONGEST_NOTE)
    entry = desk.entry(material.code, MOVES[command.act], command.at, data=data, note=note)
    desk.check_time(entry.at, sure=command.sure)
    if entry.at < material.made_at:
        raise Refusal(
            f"{material.title} was taken in later than that. {NOTHING} Choose a later time."
        )
    desk.work.journal.append(entry)
    said = {
        "buy": tr("{title}: bought.", title=material.title),
        "draw": tr("{title}: drawn.", title=material.title),
        "count": tr("{title}: counted.", title=material.title),
    }
    return Outcome(said[command.act], subject=material.code)


def set_material(desk: Desk, command: SetMaterial) -> Outcome:
    """Change what is known of a material."""
    material = material_at(desk, command.code)
    data: dict[str, Any] = {}
    if command.title is not None:
        data["title"] = _text(command.title, "The name")
    if command.low is not None:
        _check_unit(material, command.unit)
        data["low"] = _figure(command.low, "the low level", least=0.0)
    if command.place is not None:
        data["place"] = _text(command.place, "The place", empty=True)
    if command.ended is not None:
        data["ended"] = command.ended
    if not data:
        raise Refusal("Say what changes: its name, its low level, its place, or that it is gone.")
    desk.work.journal.append(desk.entry(material.code, Act.STOCK_SET, data=data))
    return Outcome(tr("{title} is changed.", title=material.title), subject=material.code)


def undo_material(desk: Desk, code: str) -> Outcome:
    """Take back the latest entry of a material that still stands; the first one last of all."""
    entries = desk.entries(code)
    material_from(entries)  # refuses where there is none
    latest = standing(entries)[-1]
    if latest.note == TAKEN_BACK:
        raise Refusal(f"Nothing of {code} is left to take back. {NOTHING}")
    if latest.act is Act.STOCK_NEW:
        gone = desk.entry(code, Act.STOCK_SET, data={"ended": True}, note=TAKEN_BACK)
        desk.work.journal.append(gone)
    else:
        desk.work.journal.append(desk.entry(code, Act.UNDO, target=latest.number))
    words = tr("{code}: “{words}” is taken back.", code=code, words=latest.act.words)
    return Outcome(words, subject=code)


def redo_material(desk: Desk, code: str) -> Outcome:
    """Restore what was taken back last."""
    found = restorable(desk.entries(code), TAKEN_BACK)
    if found is None:
        raise Refusal(f"Nothing of {code} was taken back. {NOTHING}")
    act, entry = found
    desk.work.journal.append(desk.entry(code, act, target=entry.number))
    said = entry.act.words if act is Act.REDO else Act.STOCK_NEW.words
    return Outcome(tr("{code}: “{words}” stands again.", code=code, words=said), subject=code)


def _check_unit(material: Material, unit: str) -> None:
    if unit and unit != material.unit:
        what = "a weight" if material.unit == "g" else "a volume"
        raise Refusal(f"{material.title} is kept in {material.unit}: give {what}. {NOTHING}")


def _check_once(desk: Desk, name: str, unit: str) -> None:
    for code in desk.work.journal.subjects("S"):
        kept = material_from(desk.entries(code))
        if kept.material == name and kept.unit == unit and not kept.ended:
            raise Refusal(
                f"{kept.title} is in the stock already, as {code}. {NOTHING} Buy more of that one."
            )


def _text(text: str, what: str, *, empty: bool = False, longest: int = LONGEST_NAME) -> str:
    kept = text.strip()
    if not kept and not empty:
        raise Refusal(f"{what} is empty. {NOTHING}")
    return clean(kept, what, longest)


def _slug(text: str) -> str:
    slug = re.sub(r"[^a-z0-9]+", "-", text.casefold()).strip("-")[:60]
    if not slug:
        raise Refusal(f"{quoted(text)} has no letter to name it by. {NOTHING}")
    return slug


def _figure(value: float, what: str, *, least: float | None = None) -> float:
    low_enough = value >= least if least is not None else value > 0
    if not (math.isfinite(value) and low_enough and value <= MOST):
        raise Refusal(f"{value:g} is no figure for {what}. {NOTHING}")
    return float(value)


HANDLERS: Final[Mapping[type, Callable[[Desk, Any], Outcome]]] = {
    NewMaterial: new_material,
    MoveMaterial: move_material,
    SetMaterial: set_material,
}
