"""What lots share: vessels, the drying line, burners. Who takes what, and where lots meet.

That a step needs heat is told by a bath whose heat is read and which scalds, that it takes a vessel
by its kind or by an amount that a vessel has to hold. Cloth is counted along the line by its length
(common practice, no source).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from itertools import pairwise
from typing import Final

from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import MethodStep, StepKind
from studio_log.domain.windows import StepWindow

_IN_A_VESSEL: Final = frozenset({StepKind.SOAK, StepKind.DIP, StepKind.SCOUR})
_BEFORE_THE_LOT: Final = frozenset({StepKind.BEANS, StepKind.MILK})
"""Beans and milk have jars of their own."""
BATH_HEAT: Final = "bath-temperature"
HOT: Final = frozenset({"hot-bath", "hot-alkali"})
"""Cautions of a bath on the fire; the milk, whose heat is read too, has none of them."""


class Shared(StrEnum):
    """What there is only so much of."""

    VESSEL = "vessel"
    LINE = "line"
    HEAT = "heat"


@dataclass(frozen=True, slots=True)
class Taking:
    """One step of one lot that takes something shared, from `start` to `end`."""

    shared: Shared
    name: str
    """The vessel's name; "" for line and heat, and for a vessel that was not named."""
    code: str
    lot: str
    step: int
    title: str
    kind: StepKind
    start: datetime
    end: datetime
    closed: bool
    amount: float | None
    """Metres of line; 1 vessel or burner; None where a piece's length is not known."""
    milk: str = ""
    """Lots in the same milk lie in its vessel together, and do not meet."""


@dataclass(frozen=True, slots=True)
class Clash:
    """A stretch, without a break, in which more is wanted than there is."""

    start: datetime
    end: datetime
    codes: tuple[str, ...]
    wanted: float
    """The most at any moment of it: metres, burners, or lots that want the one vessel."""


def needs_heat(spec: MethodStep) -> bool:
    """Say whether a burner is taken for a step."""
    read = any(reading.slug == BATH_HEAT for reading in spec.readings)
    return read and not HOT.isdisjoint(spec.cautions) and spec.kind is not StepKind.DIP


def needs_vessel(spec: MethodStep) -> bool:
    """Say whether a step takes a bucket or pot."""
    if spec.kind in _BEFORE_THE_LOT:
        return False
    holds = any(rule.vessel for rule in spec.amounts)
    return holds or spec.kind in _IN_A_VESSEL or needs_heat(spec)


def line_metres(lot: Lot) -> float | None:
    """Give how much line the lot takes, in metres; None where any length is not known."""
    lengths = [piece.length_m for piece in lot.pieces]
    known = [length for length in lengths if length is not None]
    return sum(known) if known and len(known) == len(lengths) else None


def takings_of(lot: Lot, windows: Mapping[int, StepWindow]) -> tuple[Taking, ...]:
    """List what the steps of one lot take: as it happened, else at its best moment."""
    found: list[Taking] = []
    for step in lot.steps:
        span = _span(step, windows.get(step.number))
        if span is None or not lot.taken(step):
            continue
        spec, amounts = step.spec, dict[Shared, float | None]()
        if needs_vessel(spec):
            amounts[Shared.VESSEL] = 1.0
        if spec.kind is StepKind.DRY:
            amounts[Shared.LINE] = line_metres(lot)
        if needs_heat(spec):
            amounts[Shared.HEAT] = 1.0
        found += [
            Taking(
                shared, lot.vessel if shared is Shared.VESSEL else "", lot.code, lot.name,
                step.number, step.title, spec.kind, *span, step.closed, amount, step.milk or "",
            )
            for shared, amount in amounts.items()
        ]  # fmt: skip
    return tuple(found)


def clashes(takings: Sequence[Taking], limit: float | None, now: datetime) -> tuple[Clash, ...]:
    """Find where takings of one thing want more than `limit`, from now on; None is no limit.

    Lots are counted once however many of their steps overlap. Metres that are not known count as
    nothing, so that a clash told is one that is sure.
    """
    if limit is None:
        return ()
    ahead = [one for one in takings if one.end > now and one.start < one.end]
    edges = sorted({max(at, now) for one in ahead for at in (one.start, one.end)})
    found: list[Clash] = []
    for start, end in pairwise(edges):
        there = [one for one in ahead if one.start < end and one.end > start]
        wanted = _wanted(there)
        if wanted <= limit:
            continue
        codes = {one.code for one in there if one.amount}
        if found and found[-1].end == start:  # without a break it is one clash, whoever joins in
            last = found.pop()
            start_of, most = last.start, max(wanted, last.wanted)
            found.append(Clash(start_of, end, tuple(sorted({*last.codes, *codes})), most))
        else:
            found.append(Clash(start, end, tuple(sorted(codes)), wanted))
    return tuple(found)


def _span(step: LotStep, window: StepWindow | None) -> tuple[datetime, datetime] | None:
    if step.skipped is not None:
        return None
    if step.end is not None:
        return (step.start, step.end) if step.start is not None else None
    if window is None:
        return None
    start = step.start or window.best_start
    return start, max(window.best_end, start)


def _wanted(there: Iterable[Taking]) -> float:
    """Add up what is wanted at one moment; a lot once, lots in one milk together once."""
    most: dict[str, float] = {}
    for one in there:
        who = one.milk or one.code if one.shared is Shared.VESSEL else one.code
        most[who] = max(most.get(who, 0.0), one.amount or 0.0)
    return sum(most.values())
