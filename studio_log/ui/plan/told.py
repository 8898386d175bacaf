"""A plan's answer as the page tells it: its acts, its moments, how good it is."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final

from studio_log.language.words import counted, tr, tr_later
from studio_log.present.plan_visits import HandsOn, PlanDay, Tended
from studio_log.present.words import moment, span
from studio_log.services.plan import PlanLine, PlanSetup
from studio_log.ui.plan.what_if import Tried

Fields = Mapping[str, Any]
"""A plan as the planner's answer has it."""


@dataclass(frozen=True)
class Group:
    """What stands in the way, in sentences, and the ways out of it as the answer has them."""

    words: list[str]
    ways: Sequence[Fields]


NEAR: Final = timedelta(minutes=5)
"""The grid of a plan: what lies nearer lies where it was drawn."""
Moments = dict[str, dict[str, datetime]]
"""By lot and step of the planner."""
PROVED: Final = tr_later("No plan is better; that is proved.")
PROVED_WITHOUT: Final = tr_later("Without them no plan is better; that is proved.")
OPEN: Final = tr_later("The best found; whether there is a better one is open.")
LOOKING: Final = tr_later("Looking for a better one…")
MOVED: Final = tr_later("A step lies where you moved it; “Plan” goes on from there.")


def moments(fields: Fields, key: str) -> Moments:
    """Give the "starts" or "ends" of an answer as instants."""
    return {
        lot: {step: datetime.fromisoformat(at) for step, at in steps.items()}
        for lot, steps in fields[key].items()
    }


def acts_of(fields: Fields, setup: PlanSetup) -> Iterator[HandsOn]:
    """Give everything that is done by hand in the visits of a plan."""
    orders = {line.code: line.orders for line in setup.lots}
    starts, ends = moments(fields, "starts"), moments(fields, "ends")
    for session in fields["sessions"]:
        for lot, step in session["steps"]:
            order = orders.get(lot, {}).get(step, step)
            yield HandsOn(starts[lot][step], ends[lot][step], lot, step, order)


def name_of(line: PlanLine) -> str:
    """Call a lot: one that is wanted has its name only."""
    return line.code if line.code == line.name else f"{line.code} {line.name}"


def begins(fields: Fields, setup: PlanSetup, now: datetime) -> list[tuple[str, str]]:
    """Give the lots that can follow a plan, as code and words; the first that begins is first."""
    first: dict[str, datetime] = {}
    for one in acts_of(fields, setup):
        first[one.lot] = min(one.start, first.get(one.lot, one.start))
    lines = [line for line in setup.lots if line.open and line.code in first]
    return [
        (line.code, tr("{lot} · from {moment}", lot=name_of(line),
                       moment=moment(first[line.code], now, setup.zone)))
        for line in sorted(lines, key=lambda line: (first[line.code], line.code))
    ]  # fmt: skip


def tended_of(fields: Fields, setup: PlanSetup) -> Iterator[Tended]:
    """Give the stirs of a plan and what else is tended in passing."""
    acts = {line.code: line.tendings for line in setup.lots}
    for one in fields.get("stirs", ()):
        at, lot = datetime.fromisoformat(one["at"]), one["lot"]
        yield Tended(at, at, lot, acts.get(lot, {}).get(one["step"], tr("Stir")))


def moved_acts(fields: Fields, before: Fields | None) -> frozenset[tuple[str, str]]:
    """Give the acts that stand elsewhere than in the plan before."""
    if before is None:
        return frozenset()
    was = before["starts"]
    return frozenset(
        (lot, step)
        for session in fields["sessions"]
        for lot, step in session["steps"]
        if step in was.get(lot, {}) and was[lot][step] != fields["starts"][lot][step]
    )


def head_words(
    fields: Fields,
    days: Sequence[PlanDay],
    *,
    looking: bool,
    moved: bool = False,
    lacking: int = 0,
) -> str:
    """Say in a line how good a plan is; `lacking` pieces of goals are not in it."""
    left = left_words(fields)
    visits = sum(len(day.visits) for day in days)
    if not visits:
        return tr("Planning…") if looking else tr("There is no plan.") + left
    told = tr(
        "{visits} on {days}; {late}.",
        visits=counted(visits, tr_later("{n} visit"), tr_later("{n} visits")),
        days=counted(
            sum(bool(day.visits) for day in days), tr_later("{n} day"), tr_later("{n} days")
        ),
        late=late_words(fields, lacking),
    )
    proved = PROVED_WITHOUT if left else PROVED
    proof = proved if fields["status"] == "optimal" else OPEN
    proof = MOVED if moved else LOOKING if looking else proof
    return f"{told}{left} {tr(proof)}"


def left_words(fields: Fields) -> str:
    """Say how many lots have no place in the plan; "" where all have one."""
    count = len({one["lot"] for one in fields.get("left_out", ())})
    words = counted(count, tr_later("{n} lot is left out."), tr_later("{n} lots are left out."))
    return f" {words}" if count else ""


def late_words(fields: Fields, lacking: int = 0) -> str:
    """Say whether dates are kept, and goals filled."""
    late = int(fields["score"][0])
    told = tr("dates are late by {span} together", span=span(timedelta(minutes=late)))
    if not lacking:
        return told if late else tr("no date is late")
    short = counted(lacking, tr_later("goals lack {n} piece"), tr_later("goals lack {n} pieces"))
    return tr("{late}, and {short}", late=told, short=short) if late else short


def is_late(fields: Fields) -> bool:
    """Say whether a way out would be wanted: late, without a plan, or with a lot left out."""
    return bool(not fields["starts"] or fields["score"][0] or fields.get("left_out"))


def groups_of(fields: Fields, setup: PlanSetup) -> list[Group]:
    """Give all that stands in the way, each sentence once, with the ways out of it."""
    told = fields.get("groups")
    if told is None:
        left = [one["why"] for one in fields.get("left_out", ())]
        words = list(dict.fromkeys([*left, *fields["why"]]))
        found = [Group(words, fields.get("ways_out", ()))] if words else []
    else:
        found = [Group(list(one["why"]), one["ways_out"]) for one in told]
        odd = [one for one in fields["why"] if not any(one in two.words for two in found)]
        found += [Group(odd, ())] if odd else []
    return [*found, Group(list(setup.notes), ())] if setup.notes else found


def explained(fields: Fields, why: Fields) -> Fields:
    """Give a plan with the reasons and ways out that were found after it."""
    if "groups" in why:
        return {**fields, "groups": why["groups"]}
    return {**fields, "why": why["why"], "ways_out": why["ways_out"]}


def tried_of(way: Fields) -> Tried:
    """Give a way out, to be tried."""
    return Tried(str(way["words"]), tuple(way["changes"]))


@dataclass(frozen=True, slots=True)
class Drawn:
    """A step of the planner, and the moment to which it was drawn by hand."""

    lot: str
    step: str
    at: datetime


def elsewhere_words(fields: Fields, drawn: Drawn | None, now: datetime, zone: str) -> str:
    """Say where a step came to lie that could not lie where it was drawn; "" where it does."""
    if drawn is None:
        return ""
    at = datetime.fromisoformat(fields["starts"][drawn.lot][drawn.step])
    if abs(at - drawn.at) < NEAR:
        return ""
    return tr(
        "{lot} cannot go to {wanted}. The nearest moment at which nothing else moves is {moment}.",
        lot=drawn.lot,
        wanted=moment(drawn.at, now, zone),
        moment=moment(at, now, zone),
    )


def stayed_words(fields: Fields, drawn: Drawn | None, now: datetime, zone: str) -> str:
    """Say that a step stays where it lay; "" where it was hardly drawn at all."""
    if drawn is None or not elsewhere_words(fields, drawn, now, zone):
        return ""
    return tr(
        "{lot} cannot go to {wanted}. It stays at {moment}: nearer than that something else would "
        "have to move.",
        lot=drawn.lot,
        wanted=moment(drawn.at, now, zone),
        moment=moment(datetime.fromisoformat(fields["starts"][drawn.lot][drawn.step]), now, zone),
    )


def step_at(setup: PlanSetup, lot: str, number: int, fields: Fields | None) -> str | None:
    """Give the planner's step that is moved with a step of the log: its first that is to come.

    Of one that runs it is its end, or what begins with its end.
    """
    line = next((one for one in setup.lots if one.code == lot), None)
    if line is None or fields is None:
        return None
    by_hand = [step for session in fields["sessions"] for of, step in session["steps"] if of == lot]
    own = [name for name, (of, _) in line.places.items() if of == number and name in by_hand]
    if own:
        return own[0]
    later = [name for name, (of, _) in line.places.items() if of > number and name in by_hand]
    return later[0] if later else None
