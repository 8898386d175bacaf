"""Lots as the planner takes them: steps by hand and by themselves, what happened, what they use.

A step of a method becomes up to three of the planner's: its beginning by hand, the wait in which it
goes by itself, and its end, for which somebody has to come. A step that is done within its hands-on
minutes is one. The form is "studio-plan/1" of resources/help/plan.md: plain values, whole minutes.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum
from itertools import count
from typing import Any, Final
from zoneinfo import ZoneInfo

from studio_log.domain.due import SPOILS
from studio_log.domain.lot_amounts import amounts_of
from studio_log.domain.lots import Lot, LotStep, cure_days_of
from studio_log.domain.methods import Gap, StepKind
from studio_log.domain.milks import COLD_LIFE
from studio_log.domain.sharing import line_metres, needs_heat, needs_vessel
from studio_log.domain.windows import SHORT, lengths_of
from studio_log.language.words import tr, tr_later

END_HANDS: Final = 5
"""Minutes by hand for ending a step by which nothing else begins at once: lifting, taking down."""
HANGS_ON: Final = timedelta(hours=24)
"""Dry cloth may hang so much longer than the method's latest (common practice, no source)."""
NO_LIMIT: Final = 120 * 1440
"""Minutes for which a step may wait where its method sets no limit."""
_MINUTE: Final = timedelta(minutes=1)


class Part(StrEnum):
    """Which part of a step of the log one of the planner's steps is."""

    WHOLE = "whole"
    BEGIN = "begin"
    WAIT = "wait"
    END = "end"


_NAMES: Final[Mapping[Part, str]] = {
    Part.WHOLE: "{title}",
    Part.BEGIN: tr_later("{title}, begin"),
    Part.WAIT: "{title}",
    Part.END: tr_later("{title}, end"),
}
"""What the planner's sentences call a part; in no file, so it may be said in the language."""


@dataclass(frozen=True, slots=True)
class Shop:
    """What the studio has, as far as it was said: without a kind nobody waits for it."""

    kinds: frozenset[str] = frozenset()
    """Kinds of vessels: "bucket", "pot"."""
    litres: float = 10.0
    """Litres of a step whose bath is not known."""
    line: bool = False
    heat: bool = False


@dataclass(frozen=True, slots=True)
class PlanLot:
    """A lot in the planner's form; `places` leads from each of its steps back to the log's."""

    code: str
    form: Mapping[str, Any]
    places: Mapping[str, tuple[int, Part]]
    notes: tuple[str, ...] = ()

    @property
    def is_open(self) -> bool:
        """Whether anything of it is still to be planned."""
        done = self.form["actual"]
        return any(one["id"] not in done for one in self.form["steps"] if not one.get("cure"))


@dataclass(slots=True)
class _Chain:
    """The planner's steps of one lot while they are put together."""

    lot: Lot
    now: datetime
    shop: Shop
    zone: ZoneInfo
    steps: list[dict[str, Any]] = field(default_factory=list)
    places: dict[str, tuple[int, Part]] = field(default_factory=dict)
    actual: dict[str, dict[str, str | None]] = field(default_factory=dict)
    free: frozenset[int] = frozenset()
    """Numbers of the steps that meet milk from elsewhere: no step before bounds their wait."""
    last: datetime | None = None
    """When the last thing ended that is recorded."""

    def add(self, step: LotStep, part: Part, **values: Any) -> str:
        name = self._free_name(tr(_NAMES[part], title=step.title))
        self.steps.append({"id": name, **values})
        self.places[name] = (step.number, part)
        return name

    def _free_name(self, name: str) -> str:
        if name not in self.places:
            return name
        return next(one for n in count(2) if (one := f"{name} ({n})") not in self.places)

    def happened(self, name: str, start: datetime, end: datetime | None) -> None:
        """Keep what is recorded, in order of time and none of it ahead, as the planner wants it."""
        since = min(max(start, self.last or start), self.now)
        until = None if end is None else min(max(end, since), self.now)
        self.last = until or since
        self.actual[name] = {
            "start": self.wall(since), "end": None if until is None else self.wall(until)
        }  # fmt: skip

    def wall(self, at: datetime) -> str:
        return wall_text(at, self.zone)


def wall_text(at: datetime, zone: ZoneInfo) -> str:
    """Give an instant as the planner's local time, to the minute."""
    return at.astimezone(zone).strftime("%Y-%m-%dT%H:%M")


def plan_lot(
    lot: Lot, now: datetime, zone: ZoneInfo, shop: Shop, *, milk_by: datetime | None = None
) -> PlanLot | None:
    """Give a lot in the planner's form; None where nothing of it is left to plan or to count.

    `milk_by` is until when the milk that it has is good. Steps after a cure that has not begun are
    left for later; behind one that runs they wait for the day on which the lot is ready.
    """
    walked = [one for one in lot.steps if lot.taken(one) and one.skipped is None]
    part, rest = _stretch(walked)
    if not part:
        return None
    chain = _Chain(lot, now, shop, zone, free=_free(lot))
    for step, after in _with_next(part):
        _add(chain, step, after)
    form: dict[str, Any] = {"id": lot.code, "pieces": len(lot.pieces), "steps": chain.steps}
    form["actual"] = chain.actual
    form["links"] = _milk_links(chain, part, milk_by)
    ready = _released(lot, part)
    if ready is not None and ready > now:
        form["release"] = chain.wall(ready)
    return PlanLot(lot.code, form, chain.places, _waiting(lot, rest))


def _waiting(lot: Lot, rest: Sequence[LotStep]) -> tuple[str, ...]:
    """Say what is left out since it waits for the cure; () where nothing is."""
    if not rest:
        return ()
    text = tr_later("{lot}: {step} and what follows it wait for the cure.")
    return (tr(text, lot=lot.code, step=rest[0].title),)


def _free(lot: Lot) -> frozenset[int]:
    """Give the step behind each straining that was skipped."""
    skipped = [n for n, one in enumerate(lot.steps)
               if one.spec.makes_milk and one.skipped is not None]  # fmt: skip
    behind = (
        next((one for one in lot.steps[n + 1 :] if one.skipped is None), None) for n in skipped
    )
    return frozenset(one.number for one in behind if one is not None)


def _stretch(walked: Sequence[LotStep]) -> tuple[list[LotStep], list[LotStep]]:
    """Give the steps to plan now, up to a cure, and those left for when it is over."""
    first = 0
    for place, step in enumerate(walked):
        if step.spec.kind is not StepKind.CURE:
            continue
        later = [one for one in walked[place + 1 :] if not one.closed]
        if step.closed or (step.running and later):
            first = place + 1  # what lies behind a cure that has begun is a chain of its own
            continue
        return list(walked[first : place + 1]), later
    part = list(walked[first:])
    return (part, []) if any(not one.closed for one in part) else ([], [])


def _released(lot: Lot, part: Sequence[LotStep]) -> datetime | None:
    """Give when the cure before these steps is over, where one runs."""
    place = lot.place_of(part[0].number)
    for step in reversed(lot.steps[:place]):
        if step.spec.kind is StepKind.CURE and step.running and step.start is not None:
            return step.start + timedelta(days=cure_days_of(lot, step.join))
    return None


def _with_next(part: Sequence[LotStep]) -> Iterator[tuple[LotStep, LotStep | None]]:
    return zip(part, [*part[1:], None], strict=True)


def _add(chain: _Chain, step: LotStep, after: LotStep | None) -> None:
    if step.spec.kind is StepKind.CURE:
        days = cure_days_of(chain.lot, step.join)
        chain.add(step, Part.WAIT, min=days * 1440, cure=True)
    elif step.closed:
        name = chain.add(step, Part.WHOLE, min=0, **_pause(chain, after))
        chain.happened(name, step.start or step.end or chain.now, step.end)
    elif _by_hand(chain.lot, step):
        _add_short(chain, step, after)
    else:
        _add_long(chain, step, after)


def _by_hand(lot: Lot, step: LotStep) -> bool:
    """Say whether somebody stays with a step from its beginning to its end."""
    aim = lengths_of(lot, step).aim
    return aim < SHORT or step.spec.hands_on >= aim


def _add_short(chain: _Chain, step: LotStep, after: LotStep | None) -> None:
    hands = max(step.spec.hands_on, lengths_of(chain.lot, step).aim)
    name = chain.add(
        step, Part.WHOLE, hands=_minutes(hands), use=_uses(chain, step), **_pause(chain, after)
    )
    if step.running:  # so short a step counts as done: its end is a matter of minutes
        chain.happened(name, step.start or chain.now, chain.now)


def _add_long(chain: _Chain, step: LotStep, after: LotStep | None) -> None:
    use, hands = _uses(chain, step), step.spec.hands_on
    if hands and not step.running:
        chain.add(step, Part.BEGIN, hands=_minutes(hands), use=use)
    spent = timedelta(0) if step.running else hands
    taken_up = after is not None and _at_once(chain, after) and not _is_cure(after)
    wait = {**_lengths(chain.lot, step, spent), "use": use, **_stirs(step)}
    name = chain.add(step, Part.WAIT, **wait, **(_pause(chain, after) if taken_up else {}))
    if step.running and step.start is not None:
        chain.happened(name, step.start, None)
    if not taken_up:
        line = {"line": use["line"]} if "line" in use else {}
        chain.add(step, Part.END, hands=END_HANDS, use=line, **_pause(chain, after))


def _lengths(lot: Lot, step: LotStep, spent: timedelta) -> dict[str, Any]:
    """Give least, aim and most of what is left of a step once its first hands have left it.

    Where a longer one harms milk or cloth, or heat would be left on, it is a rule, never offered
    to be broken. Drying is none: cloth that hangs dry only waits.
    """
    lasts = lengths_of(lot, step)
    drying = step.spec.kind is StepKind.DRY
    longest = lasts.latest + HANGS_ON if drying else lasts.latest
    found = {
        "min": _minutes(max(lasts.earliest - spent, timedelta(0))),
        "target": _minutes(max(lasts.aim - spent, timedelta(0))),
        "max": _minutes(max(longest - spent, timedelta(0))),
    }
    if drying:
        return {**found, "drying": True}
    rule = step.spec.kind in SPOILS or needs_heat(step.spec)
    return {**found, "limit": "rule"} if rule else found


def _stirs(step: LotStep) -> dict[str, int]:
    tending = step.spec.tending
    every = None if tending is None else tending.every
    return {} if every is None else {"stir_every": _minutes(every)}


def _pause(chain: _Chain, after: LotStep | None) -> dict[str, int | str]:
    """Give how long there may be, and has to be, until the next step begins."""
    if after is None or _is_cure(after) or _at_once(chain, after):
        return {}
    gap = Gap() if after.number in chain.free else after.spec.gap
    most = NO_LIMIT if gap.most is None else _minutes(gap.most)
    rule = gap.most is not None and after.spec.kind in SPOILS
    return {
        "then_within": max(most, _minutes(gap.least)),
        "then_after": _minutes(gap.least),
        "then_limit": "rule" if rule else "advice",
    }


def _at_once(chain: _Chain, step: LotStep) -> bool:
    return step.spec.gap.at_once and step.number not in chain.free


def _is_cure(step: LotStep) -> bool:
    return step.spec.kind is StepKind.CURE


def _uses(chain: _Chain, step: LotStep) -> dict[str, float]:
    """Give what a step takes of what the studio was said to have."""
    spec, shop, found = step.spec, chain.shop, dict[str, float]()
    kind = "pot" if needs_heat(spec) else "bucket"
    if needs_vessel(spec) and kind in shop.kinds:
        found[kind] = _litres(chain, step)
    if needs_heat(spec) and shop.heat:
        found["burner"] = 1
    if spec.kind is StepKind.DRY and shop.line:
        found["line"] = round(line_metres(chain.lot) or 0.0, 3)
    return {name: much for name, much in found.items() if much}


def _litres(chain: _Chain, step: LotStep) -> float:
    baths = [one.value for one in amounts_of(chain.lot, step) if one.vessel]
    return round(max(baths, default=chain.lot.vessel_litres or chain.shop.litres), 1)


def _milk_links(
    chain: _Chain, part: Sequence[LotStep], milk_by: datetime | None
) -> list[dict[str, Any]]:
    """Let every further coat meet milk that is still good: kept cold, it lasts two days."""
    strained = [one for one in part if one.spec.makes_milk]
    if not strained:
        return []
    source = _name_of(chain, strained[-1], last=True)
    life = COLD_LIFE
    ended = strained[-1].end
    if milk_by is not None and ended is not None:
        life = max(milk_by - ended, timedelta(0))
    coats = [
        one for one in part
        if one.spec.uses_milk and (one.coat or 0) > 1 and one.start is None and not one.closed
    ]  # fmt: skip
    return [
        {"from": f"{source}.end", "to": f"{_name_of(chain, one)}.start", "max": _minutes(life)}
        for one in coats
    ]


def _name_of(chain: _Chain, step: LotStep, *, last: bool = False) -> str:
    own = [name for name, (number, _) in chain.places.items() if number == step.number]
    return own[-1 if last else 0]


def _minutes(span: timedelta) -> int:
    return round(span / _MINUTE)
