"""Making lots, changing them, splitting them, letting them go on."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any

from studio_log.domain.amounts import work_out
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import META, Act, Entry, standing
from studio_log.domain.lots import Lot
from studio_log.domain.methods import Method
from studio_log.domain.pieces import Piece, Weighed
from studio_log.domain.reminders import Cause
from studio_log.domain.starting import piece_data
from studio_log.services.commands import (
    GoOn,
    NewLot,
    NoteTagsPrinted,
    Outcome,
    SetLot,
    SplitLot,
)
from studio_log.services.desk import Desk, whole_code
from studio_log.services.limits import (
    LONGEST_NAME,
    check_cure_days,
    check_grams,
    check_litres,
    check_pieces,
    clean,
)
from studio_log.services.meanwhile import ask_about_fields
from studio_log.services.spoil_reads import spoils_ahead


def next_lot_code(desk: Desk) -> str:
    """Give the next code of the year: "26-031"; a code is never given twice."""
    return f"{desk.year % 100:02d}-{desk.work.next_code('lot', desk.year):03d}"


def new_lot(desk: Desk, command: NewLot) -> Outcome:
    """Make a lot."""
    method = desk.method(command.method)
    name = clean(command.name, "The name", LONGEST_NAME)
    if not name:
        raise Refusal("A lot needs a name. Nothing was made; give it one.")
    pieces = check_pieces(command.pieces)
    _check_weight(pieces, command.grams)
    check_weighed(command.weighed)
    check_cure_days(command.cure_days)
    check_litres(command.vessel_litres)
    data: dict[str, Any] = {
        "name": name,
        "method": list(method.key),
        "pieces": [piece_data(piece) for piece in pieces],
        "grams": command.grams,
        "weighed": command.weighed,
        "cure_days": command.cure_days,
        "place": clean(command.place, "The place", LONGEST_NAME),
        "vessel_litres": command.vessel_litres,
        "vessel": clean(command.vessel, "The vessel's name", LONGEST_NAME),
        "amounts": _check_amounts(method, command.amounts),
    }
    code = next_lot_code(desk)
    lot = desk.write(None, desk.entry(code, Act.NEW, command.at, data=data), sure=command.sure)
    desk.settle(lot, Cause())
    return Outcome(
        f"{code} {name} is made.",
        advice=tuple(spoils_ahead(desk, lot)),
        lots=frozenset({code}),
        code=code,
        subject=code,
        reminders=True,
    )


def _check_weight(pieces: tuple[Piece, ...], grams: float | None) -> None:
    if grams is not None:
        check_grams(grams)
    elif any(piece.grams is None for piece in pieces):
        raise Refusal(
            "The weight of the cloth is not known: give length, width and g/m² of every piece, "
            "or weigh the lot. Nothing was made."
        )
    else:
        check_grams(sum(piece.grams or 0.0 for piece in pieces))


def check_weighed(weighed: str | None) -> None:
    """Refuse a word for the weighing that is neither before nor after."""
    if weighed is not None and weighed not in set(Weighed):
        raise Refusal(f"A weight is taken before or after scouring, not {weighed!r}.")


def _check_amounts(method: Method, changed: Any) -> dict[str, float]:
    rules = {rule.slug for step in method.steps for rule in step.amounts}
    unknown = sorted(set(changed) - rules)
    if unknown:
        raise Refusal(f"{method.title} has no amount {unknown[0]!r}; it has {sorted(rules)}.")
    kept = {slug: float(value) for slug, value in changed.items()}
    all_rules = [rule for step in method.steps for rule in step.amounts]
    work_out(all_rules, grams=100.0, changed=kept, area_m2=1.0)
    return kept


def go_on(desk: Desk, command: GoOn) -> Outcome:
    """Join a lot to a further method; its steps run on."""
    lot = desk.lot(command.code)
    method = desk.method(command.method)
    entry = desk.entry(lot.code, Act.GO_ON, command.at, data={"method": list(method.key)})
    lot = desk.write(lot, entry, sure=command.sure)
    desk.settle(lot, Cause())
    return Outcome(
        f"{lot.code} goes on with {method.title}.",
        advice=tuple(spoils_ahead(desk, lot)),
        lots=frozenset({lot.code}),
        subject=lot.code,
        reminders=True,
    )


def set_lot(desk: Desk, command: SetLot) -> Outcome:
    """Change a lot; amounts of steps not yet begun follow."""
    lot = desk.lot(command.code)
    data = _changes(lot, command)
    if not data:
        raise Refusal("Nothing to change was given. Say what: name, weight, place or cure.")
    if command.seen is not None and not command.sure:
        ask_about_fields(desk, lot.code, command.seen, data)
    lot = desk.write(lot, desk.entry(lot.code, Act.SET, data=data), sure=command.sure)
    desk.settle(lot, Cause(why="the lot was changed"))
    return Outcome(
        f"{lot.code} is changed.", lots=frozenset({lot.code}), subject=lot.code, reminders=True
    )


def _changes(lot: Lot, command: SetLot) -> dict[str, Any]:
    """Give what changes, each value checked; the data of a `set` entry."""
    if command.name is not None and not command.name.strip():
        raise Refusal("A lot needs a name. Nothing was changed.")
    check_weighed(command.weighed)
    checked = {
        "name": _short(command.name, "The name"),
        "place": _short(command.place, "The place"),
        "grams": None if command.grams is None else check_grams(command.grams),
        "weighed": command.weighed,
        "cure_days": check_cure_days(command.cure_days),
        "vessel_litres": check_litres(command.vessel_litres),
        "vessel": _short(command.vessel, "The vessel's name"),
        "amounts": _check_amounts(lot.method, command.amounts) or None,
    }
    return {name: value for name, value in checked.items() if value is not None}


def _short(text: str | None, what: str) -> str | None:
    return None if text is None else clean(text, what, LONGEST_NAME)


def split_lot(desk: Desk, command: SplitLot) -> Outcome:
    """Move pieces into a new lot, which keeps the history it shares and walks on alone."""
    lot = desk.lot(command.code)
    name = clean(command.name, "The name", LONGEST_NAME)
    if not name:
        raise Refusal("The new lot needs a name. Nothing was split.")
    have = {piece.number for piece in lot.pieces}
    wanted = sorted(set(command.pieces))
    if not wanted or not set(wanted) < have:
        raise Refusal(
            f"{lot.code} has the pieces {', '.join(map(str, sorted(have)))}; a split moves some "
            "of them, not none and not all. Nothing was split."
        )
    code = next_lot_code(desk)
    child = _child(desk, lot, code, {"pieces": wanted, "parent": lot.code, "name": name})
    gone = {"pieces": wanted, "child": code}
    parent = desk.write(lot, desk.entry(lot.code, Act.SPLIT_OFF, command.at, data=gone))
    desk.settle(parent, Cause(why="the lot was split"))
    desk.settle(child, Cause())
    return Outcome(
        f"{code} {name} is split from {lot.code}.",
        lots=frozenset({lot.code, code}),
        code=code,
        subject=lot.code,
        reminders=True,
    )


def _child(desk: Desk, lot: Lot, code: str, data: dict[str, Any]) -> Lot:
    """Copy the standing history under the new code, then write what parts the two."""
    child: Lot | None = None
    for entry in standing(desk.entries(lot.code)):
        child = desk.write(child, copy_of(entry, code), sure=True)
    return desk.write(child, desk.entry(code, Act.SPLIT_FROM, data=data))


def copy_of(entry: Entry, code: str) -> Entry:
    """Give an entry as the journal of a further lot keeps it, naming where it comes from."""
    data = {**entry.data, "from": f"{entry.subject}#{entry.number}"}
    if entry.act is Act.SPLIT_OFF:
        data.pop("child", None)
    return replace(entry, subject=code, number=0, data=data)


def note_printed(desk: Desk, command: NoteTagsPrinted) -> Outcome:
    """Record in each lot's journal that its tag was printed."""
    codes = [whole_code(code) for code in command.codes]
    for code in codes:
        lot = desk.lot(code)
        desk.settle(desk.write(lot, desk.entry(code, Act.PRINTED)), Cause())
    return Outcome(f"Tags of {', '.join(codes)} are printed.", lots=frozenset(codes))


def own_entries(entries: Iterable[Entry]) -> list[Entry]:
    """Give the entries that stand and were written for this lot, not copied at a split."""
    return [
        entry for entry in standing(entries) if "from" not in entry.data and entry.act not in META
    ]


HANDLERS: Mapping[type, Callable[[Desk, Any], Outcome]] = {
    NewLot: new_lot,
    GoOn: go_on,
    SetLot: set_lot,
    SplitLot: split_lot,
    NoteTagsPrinted: note_printed,
}
