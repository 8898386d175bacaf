"""Reads the lots of "studio-plan/1": steps in order, facts, links, dates."""

from collections.abc import Mapping
from itertools import pairwise
from typing import Any, Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.problem import Clock, Fact, Link, Lot, Step, Vessel
from studio_log.planning.taking import Table, shown

MOST_LOTS: Final = 200
MOST_STEPS: Final = 200
"""Of one lot."""
MOST_TOGETHER: Final = 4_000
"""Steps of all lots."""
MOST_LINKS: Final = 20
LOT: Final = ("id", "pieces", "weight", "release", "due", "steps", "actual", "links")
STEP: Final = (
    "id", "hands", "min", "target", "max", "then_within", "then_after", "use", "drying", "cure",
    "stir_every", "limit", "then_limit",
)  # fmt: skip


def read_lots(
    top: Table, clock: Clock, vessels: tuple[Vessel, ...], stores: Mapping[str, int]
) -> tuple[tuple[Lot, ...], tuple[str, ...]]:
    """Give the lots, and what is odd in their facts."""
    kinds = frozenset((*(one.kind for one in vessels), *stores)) - {"hands"}
    found: dict[str, Lot] = {}
    notes: list[str] = []
    together = 0
    for number, value in enumerate(top.list("lots", MOST_LOTS), 1):
        entry = Table(value, f"Lot {number}", top.faults)
        lot = _lot(entry, clock, kinds)
        if lot.name in found:
            entry.fault(f"is called {shown(lot.name)}, as another is")
        found[lot.name] = lot
        notes += odd_facts(lot)
        together += len(lot.steps)
    if together > MOST_TOGETHER:
        top.fault(f"has {together:,} steps; up to {MOST_TOGETHER:,} are planned")
    return tuple(found.values()), tuple(notes)


def _lot(entry: Table, clock: Clock, kinds: frozenset[str]) -> Lot:
    entry.known(LOT)
    name = entry.name("id")
    entry.where = f"Lot {name or '?'}"
    steps = _steps(entry, kinds)
    release = _minute(entry, "release", clock)
    return Lot(
        name,
        steps,
        pieces=entry.whole("pieces", 0, 100_000, default=1),
        weight=entry.whole("weight", 0, 1_000, default=1),
        release=max(release or 0, 0),
        due=_minute(entry, "due", clock),
        facts=_facts(entry, steps, clock),
        links=_links(entry, steps),
    )


def _minute(entry: Table, key: str, clock: Clock) -> int | None:
    """Give the minute of a local time, or of minutes from the start."""
    if isinstance(entry.value.get(key), int):
        return entry.whole(key)
    at = None if entry.value.get(key) is None else entry.moment(key)
    return None if at is None else clock.minute(at)


def _steps(entry: Table, kinds: frozenset[str]) -> tuple[Step, ...]:
    found: dict[str, Step] = {}
    values = entry.list("steps", MOST_STEPS)
    for number, value in enumerate(values, 1):
        table = Table(value, f"{entry.where}, step {number}", entry.faults)
        step = _step(table, kinds)
        if step.name in found:
            table.fault(f"is called {shown(step.name)}, as another is")
        if step.cure and number < len(values):
            table.fault("is a cure and not the last")
        found[step.name] = step
    if not found:
        entry.fault("has no steps")
    return tuple(found.values())


def _step(table: Table, kinds: frozenset[str]) -> Step:
    table.known(STEP)
    hands = table.maybe("hands", most=1440)
    least, most, target = table.whole("min", default=0), table.maybe("max"), table.maybe("target")
    after, within = table.whole("then_after", default=0), table.whole("then_within", default=0)
    own = [key for key in ("min", "max", "target") if key in table.value]
    if (hands is None) == (not own):
        table.fault("has to have hands, or min, target or max")
    if most is not None and most < least:
        table.fault(f"has max {most} below min {least}")
    if after > within:
        table.fault(f"has then_after {after}, more than then_within {within}")
    if table.value.get("cure") is True and (hands is not None or table.value.get("use")):
        table.fault("is a cure, which needs neither hands nor anything to lie in")
    return Step(
        table.name("id"), hands, least, most, target, after, within,
        _uses(table, kinds), table.flag("drying"), table.flag("cure"),
        table.maybe("stir_every", least=1), table.limit("limit") or "advice",
        table.limit("then_limit"),
    )  # fmt: skip


def _uses(table: Table, kinds: frozenset[str]) -> dict[str, int]:
    use = table.table("use")
    use.known(kinds)
    found = {key: use.amount(key) for key in use.value if key in kinds}
    return {key: much for key, much in found.items() if much}


def _facts(entry: Table, steps: tuple[Step, ...], clock: Clock) -> dict[str, Fact]:
    table = entry.table("actual")
    table.known(one.name for one in steps)
    found = {}
    for step in steps:
        if step.name not in table.value:
            continue
        fact = table.table(step.name)
        fact.known(("start", "end"))
        start, end = _minute(fact, "start", clock), _minute(fact, "end", clock)
        if start is None:
            fact.fault("has no start")
        elif max(start, end or start) > 0:
            fact.fault("lies after the start of the plan")
        elif end is not None and end < start:
            fact.fault("ends before it starts")
        else:
            found[step.name] = Fact(start, end)
    return found


def _links(entry: Table, steps: tuple[Step, ...]) -> tuple[Link, ...]:
    order = {one.name: number for number, one in enumerate(steps)}
    found = []
    for number, value in enumerate(entry.list("links", MOST_LINKS), 1):
        table = Table(value, f"{entry.where}, link {number}", entry.faults)
        table.known(("from", "to", "max", "limit"))
        ends = [_end(table, key, order) for key in ("from", "to")]
        most = table.whole("max")
        if None in ends:
            continue
        (one, one_end), (other, other_end) = ends  # type: ignore[misc]
        if (order[one], one_end) >= (order[other], other_end):
            table.fault("leads backwards")
        found.append(Link(one, one_end, other, other_end, most, table.limit("limit") or "advice"))
    return tuple(found)


def _end(table: Table, key: str, order: Mapping[str, int]) -> tuple[str, bool] | None:
    """Give step and whether its end is meant, of "dip 2.start"."""
    text: Any = table.value.get(key)
    name, _, which = text.rpartition(".") if isinstance(text, str) else ("", "", "")
    if name not in order or which not in {"start", "end"}:
        table.fault(f"has {key} {shown(text)}; a step with .start or .end is due")
        return None
    return name, which == "end"


def odd_facts(lot: Lot) -> list[str]:
    """Say which facts of a lot do not fit each other or its limits; they are kept as they are."""
    told = [(one, lot.facts[one.name]) for one in lot.steps if one.name in lot.facts]
    said = []
    for (one, fact), (other, later) in pairwise(told):
        if fact.end is None:
            text = tr_later("{lot}: {step} has no end, though {other} has begun.")
            said.append(tr(text, lot=lot.name, step=one.name, other=other.name))
        elif later.start < fact.end:
            text = tr_later("{lot}: {other} begins before {step} ends.")
            said.append(tr(text, lot=lot.name, step=one.name, other=other.name))
    for step, fact in told:
        lasted = (fact.end or 0) - fact.start
        if step.most is not None and lasted > step.most:
            text = tr(
                "{lot}: {step} has lasted {lasted} min, longer than its {most}; the rest is "
                "planned all the same.",
                lot=lot.name,
                step=step.name,
                lasted=lasted,
                most=step.most,
            )
            said.append(text)
    known = [one.name in lot.facts for one in lot.steps]
    if any(known) and not all(known[: len(known) - known[::-1].index(True)]):
        said.append(tr("{lot}: steps before the last recorded one count as done.", lot=lot.name))
    return said
