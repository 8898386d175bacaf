"""Reads the milks of "studio-plan/1": made once, used by steps of several lots while they last."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any, Final

from studio_log.planning.problem import Clock, Link, Lot, Milk, Vessel
from studio_log.planning.taking import MOST_MINUTES, Table, shown

MOST_MILKS: Final = 50
MOST_USES: Final = 100
"""Of one milk."""
MILK: Final = ("id", "made_by", "made_at", "life", "used_by", "use", "vessel")
Place = tuple[str, str]
"""Lot and step."""


def read_milks(
    top: Table, clock: Clock, lots: tuple[Lot, ...], vessels: tuple[Vessel, ...]
) -> tuple[tuple[Milk, ...], tuple[Lot, ...]]:
    """Give the milks, and the lots; one that uses what it makes gets a limit for it."""
    found: dict[str, Milk] = {}
    known = {one.name: one for one in lots}
    for number, value in enumerate(top.list("milks", MOST_MILKS), 1):
        entry = Table(value, f"Milk {number}", top.faults)
        entry.known(MILK)
        milk = _milk(entry, clock, known, vessels)
        if milk.name in found:
            entry.fault(f"is called {shown(milk.name)}, as another is")
        found[milk.name] = milk
        for link in _own_uses(milk):
            own = known[milk.maker[0]]  # type: ignore[index]
            known[own.name] = replace(own, links=(*own.links, link))
    for name, links in _between_uses(found.values(), known).items():
        known[name] = replace(known[name], links=(*known[name].links, *links))
    return tuple(found.values()), tuple(known.values())


def _milk(entry: Table, clock: Clock, lots: Mapping[str, Lot], vessels: tuple[Vessel, ...]) -> Milk:
    name = entry.name("id")
    entry.where = f"Milk {name or '?'}"
    maker = None if entry.value.get("made_by") is None else _place(entry, "made_by", lots)
    at = _minute(entry, clock)
    if (entry.value.get("made_by") is None) == (entry.value.get("made_at") is None):
        entry.fault("has to have made_by or made_at")
    kind, much, vessel = _stands_in(entry, vessels)
    milk = Milk(
        name,
        entry.whole("life", 1, MOST_MINUTES),
        _uses(entry, lots),
        maker,
        at,
        kind,
        much,
        vessel,
    )
    if maker is not None:
        _sensible(entry, milk, lots[maker[0]])
    return milk


def _minute(entry: Table, clock: Clock) -> int | None:
    if isinstance(entry.value.get("made_at"), int):
        return entry.whole("made_at")
    at = None if entry.value.get("made_at") is None else entry.moment("made_at")
    return None if at is None else clock.minute(at)


def _place(entry: Table, key: str, lots: Mapping[str, Lot]) -> Place | None:
    return _of(entry.table(key), lots)


def _of(table: Table, lots: Mapping[str, Lot]) -> Place | None:
    """Give lot and step of {"lot": ..., "step": ...}."""
    table.known(("lot", "step"))
    lot: Any = table.value.get("lot")
    step: Any = table.value.get("step")
    if not isinstance(lot, str) or lot not in lots:
        table.fault(f"names the lot {shown(lot)}, which is not there")
        return None
    if not isinstance(step, str) or all(one.name != step for one in lots[lot].steps):
        table.fault(f"names the step {shown(step)}, which {lot} has not")
        return None
    return lot, step


def _uses(entry: Table, lots: Mapping[str, Lot]) -> tuple[Place, ...]:
    found: dict[Place, None] = {}
    for number, value in enumerate(entry.list("used_by", MOST_USES), 1):
        table = Table(value, f"{entry.where}, use {number}", entry.faults)
        place = _of(table, lots)
        if place in found:
            table.fault("is named a second time")
        if place is not None:
            found[place] = None
    if not entry.value.get("used_by"):
        entry.fault("is used by nothing")
    return tuple(found)


def _stands_in(entry: Table, vessels: tuple[Vessel, ...]) -> tuple[str | None, int, str | None]:
    """Give kind and amount of what a milk stands in, and the vessel if it is named."""
    use = entry.table("use")
    sizes: dict[str, int] = {}
    for one in vessels:
        sizes[one.kind] = max(sizes.get(one.kind, 0), one.size)
    use.known(sizes)
    held = {kind: use.amount(kind) for kind in use.value if kind in sizes}
    if len(held) > 1:
        use.fault("names more than one kind of vessel")
    kind, much = next(iter(held.items()), (None, 0))
    if kind is not None and much > sizes[kind]:
        use.fault(f"asks for {much / 1000:g} of {kind}; there are {sizes[kind] / 1000:g} at most")
    vessel = None if entry.value.get("vessel") is None else entry.name("vessel")
    if vessel is not None:
        fits = [one for one in vessels if one.name == vessel and one.kind == kind]
        if not fits or fits[0].size < much:
            entry.fault(f"has vessel {shown(vessel)}, which is none that it could stand in")
            vessel = None
    return kind, much, vessel


def _sensible(entry: Table, milk: Milk, lot: Lot) -> None:
    """Look at the step that makes a milk, and at what its lot does behind it."""
    order = {one.name: n for n, one in enumerate(lot.steps)}
    at = order[milk.maker[1]] if milk.maker else 0
    if lot.steps[at].hands is None:
        entry.fault(f"is made by {lot.steps[at].name}, which is no step by hand")
    if any(name == lot.name and order[step] <= at for name, step in milk.uses):
        entry.fault("is used before it is made")
    if any(milk.kind in one.uses for one in lot.steps[at + 1 :]):
        entry.fault(f"stands in a {milk.kind}, which {lot.name} needs itself behind making it")


def _own_uses(milk: Milk) -> list[Link]:
    """Give the limits between making and using of a lot that uses its own milk."""
    if milk.maker is None:
        return []
    lot, made = milk.maker
    return [
        Link(made, True, step, True, milk.life, "rule")  # noqa: FBT003 - ends, both
        for name, step in milk.uses
        if name == lot and step != made
    ]


def _between_uses(milks: Iterable[Milk], lots: Mapping[str, Lot]) -> dict[str, list[Link]]:
    """Give the limits between the uses that a lot makes of what was made at one moment.

    They follow from the milk's life. Said of the lot itself they are kept while it is placed, even
    before it is known when the milk is made.
    """
    uses: dict[tuple[str, Place], list[tuple[str, int]]] = {}
    for milk in milks:
        for lot, step in milk.uses if milk.maker is not None else ():
            if milk.maker is not None and lot != milk.maker[0]:
                uses.setdefault((lot, milk.maker), []).append((step, milk.life))
    found: dict[str, list[Link]] = {}
    for (lot, _), own in uses.items():
        order = {one.name: n for n, one in enumerate(lots[lot].steps)}
        for first, _ in own:
            found.setdefault(lot, []).extend(
                Link(first, False, step, True, life, "rule")  # noqa: FBT003 - ends, both
                for step, life in own
                if order[first] < order[step]
            )
    return found
