"""The fourth layer: what fails only together, as the optimizer proves it in another process.

The optimizer says what it proved as the JSON of a `Joint`; here that is read and gets its words:

    {"goal": "class", "possible": 9, "parts": [{"part": "store", "name": "line"}],
     "lots": ["B", "D"], "day": "2027-03-07"}

`parts` are limits that cannot all be kept, while all but any one of them can; `possible` is how
many pieces of the goal can be ready by its date; `lots` need the first store or vessel of them on
that day, or cannot all have it where no day is told. All but `parts` may miss.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from studio_log.language.words import listed, tr, tr_later
from studio_log.planning.changes import goal_of, lot_of
from studio_log.planning.plain_words import (
    PIECES,
    amount_words,
    counted,
    exact_words,
    hour_words,
    long_day,
    moment_words,
    number_words,
)
from studio_log.planning.problem import THOUSANDTHS, BadProblemError, Problem
from studio_log.planning.taking import Faults, Table, read_day, shown
from studio_log.planning.vessel_words import there_words, wanted_words
from studio_log.planning.why_reasons import Reason, capital

MOST_PARTS: Final = 12
THINGS: Final = ("store", "vessel")
"""Parts that lots may want at one moment."""


@dataclass(frozen=True, slots=True)
class Part:
    """One limit of a conflict; `name` is a store, kind of vessel, step or goal, `lot` its lot."""

    part: str
    name: str = ""
    lot: str = ""


@dataclass(frozen=True, slots=True)
class Joint:
    """Limits that cannot all be kept, proved."""

    parts: tuple[Part, ...]
    goal: str | None = None
    possible: int | None = None
    lots: tuple[str, ...] = ()
    day: date | None = None


def read_joint(problem: Problem, value: Any) -> Joint:
    """Give what another process found; BadProblemError where it makes no sense here."""
    faults = Faults()
    table = Table(value, "The conflict", faults)
    table.known(("parts", "goal", "possible", "lots", "day"))
    parts = tuple(_part(one, faults) for one in table.list("parts", MOST_PARTS))
    goal = None if table.value.get("goal") is None else table.name("goal")
    possible = table.maybe("possible")
    lots = tuple(str(one) for one in table.list("lots", 200))
    told = table.value.get("day")
    day = None if told is None else read_day(told)
    if told is not None and day is None:
        table.fault(f"has day {shown(told)}; one as 2027-03-07 is due")
    if not parts:
        table.fault("has no parts")
    faults.end()
    found = Joint(parts, goal, possible, lots, day)
    _meant(problem, found)
    return found


def _part(value: Any, faults: Faults) -> Part:
    table = Table(value, "A part of the conflict", faults)
    table.known(("part", "name", "lot"))
    kind = table.value.get("part")
    if not isinstance(kind, str) or kind not in _SAID:
        table.fault(f"is {shown(kind)}; one of {', '.join(_SAID)} is due")
        return Part("hours")
    name = "" if table.value.get("name") is None else table.name("name")
    return Part(kind, name, "" if table.value.get("lot") is None else table.name("lot"))


def _meant(problem: Problem, joint: Joint) -> None:
    """See that everything it names is there; BadProblemError if not."""
    if joint.goal is not None:
        goal_of(problem, joint.goal)
    for name in joint.lots:
        lot_of(problem, name)
    for part in joint.parts:
        try:
            _SAID[part.part](problem, part)
        except (KeyError, StopIteration, ValueError):
            raise BadProblemError((f"The problem has no {part.part} {part.name}.",)) from None


def joint_reason(problem: Problem, joint: Joint) -> Reason:
    """Give a conflict as a reason: what can be, what stands against the rest."""
    short = [one for one in joint.parts if one.part in THINGS][:1] if joint.lots else []
    told = _told_by_head(joint)
    parts = [one for one in joint.parts if one not in short and one != told]
    said = [_SAID[one.part](problem, one) for one in (*parts, *short)]
    if joint.lots:
        said.append(_clash(joint))
    steps = tuple(one.name for one in joint.parts if one.part == "step")
    lots = tuple(dict.fromkeys((*joint.lots, *(one.lot for one in joint.parts if one.lot))))
    return Reason("joint", lots, steps, _whole(problem, joint, listed(said)))


def _told_by_head(joint: Joint) -> Part | None:
    """Give the goal whose wish the head tells already; None where it is all there is."""
    whole = joint.possible is not None and len(joint.parts) > 1
    return Part("goal", joint.goal) if joint.goal is not None and whole else None


def _whole(problem: Problem, joint: Joint, limits: str) -> str:
    """Say what can be; where one limit alone stands against it, that all else may be free."""
    alone = len(joint.parts) == 1 and not joint.lots
    if joint.goal is None or joint.possible is None:
        return tr(_FAILS[alone], limits=limits)
    goal = goal_of(problem, joint.goal)
    return tr(
        _POSSIBLE[goal.cured > 0, alone],
        pieces=capital(counted(joint.possible, PIECES)),
        date=moment_words(problem.clock, goal.at),
        wanted=number_words(goal.pieces),
        limits=limits,
    )


_FAILS: Final = {
    True: tr_later("Even if everything else were free, it fails: {limits}."),
    False: tr_later("Not all together: {limits}."),
}
"""By whether one limit alone stands against it."""
_POSSIBLE: Final = {
    (True, False): tr_later("{pieces} can be cured by {date}, not {wanted}; {limits}."),
    (False, False): tr_later("{pieces} can be ready by {date}, not {wanted}; {limits}."),
    (True, True): tr_later(
        "{pieces} can be cured by {date}, not {wanted}; even if everything else were free, "
        "{limits}."
    ),
    (False, True): tr_later(
        "{pieces} can be ready by {date}, not {wanted}; even if everything else were free, "
        "{limits}."
    ),
}
"""By whether the goal's pieces cure, and whether one limit alone stands against it."""


def _clash(joint: Joint) -> str:
    """Say which lots want the first part, and on which day."""
    short = [one.name for one in joint.parts if one.part in THINGS]
    name = short[0] if short else "hands"
    lots, thing = listed(joint.lots), wanted_words(name)
    texts = _HANG if name == "line" else _NEED
    if joint.day is not None:
        text, day = texts[min(len(joint.lots), 3)], long_day(joint.day)
        return tr(text, lots=lots, thing=thing, day=day)
    text = _CANNOT.get(name, _CANNOT_HAVE) if len(joint.lots) > 1 else texts[0]
    return tr(text, lots=lots, thing=thing)


_HANG: Final = (
    tr_later("{lots} hangs"), tr_later("{lots} hangs on {day}"),
    tr_later("{lots} both hang on {day}"), tr_later("{lots} all hang on {day}"),
)  # fmt: skip
_NEED: Final = (
    tr_later("{lots} needs {thing}"), tr_later("{lots} needs {thing} on {day}"),
    tr_later("{lots} both need {thing} on {day}"), tr_later("{lots} all need {thing} on {day}"),
)  # fmt: skip
"""One lot on no day told; one, two and more lots on a day."""
_CANNOT: Final = {
    "line": tr_later("{lots} cannot all have it when they need it"),
    "hands": tr_later("{lots} cannot all be worked at when they need it"),
}
_CANNOT_HAVE: Final = tr_later("{lots} cannot all have {thing} when they need it")


def _store(problem: Problem, part: Part) -> str:
    much = problem.stores[part.name]
    if part.name == "line":
        return tr("the line holds {metres} m", metres=amount_words(much))
    if part.name not in {"burner", "hands"}:
        raise KeyError(part.name)
    return there_words(part.name, much // THOUSANDTHS)


def _vessel(problem: Problem, part: Part) -> str:
    count = sum(one.kind == part.name for one in problem.vessels)
    if not count:
        raise ValueError(part.name)
    return there_words(part.name, count)


def _hours(problem: Problem, part: Part) -> str:
    day = date.fromisoformat(part.name) if part.name else None
    if day is None:
        return tr("the working hours leave no more time")
    hours = problem.calendar.on(day)
    if not hours:
        return tr("nobody is there on {day}", day=long_day(day))
    text = tr_later("{begins} to {ends}")
    named = [tr(text, begins=hour_words(one), ends=hour_words(other)) for one, other in hours]
    return tr("the hours on {day} are {hours}", day=long_day(day), hours=listed(named))


def _step(problem: Problem, part: Part) -> str:
    step = next(one for one in lot_of(problem, part.lot).steps if one.name == part.name)
    if step.most is None:
        length = exact_words(step.least or step.hands or 0)
        text = tr_later("{step} of {lot} takes {length}")
        return tr(text, step=step.name, lot=part.lot, length=length)
    text = tr_later("{step} of {lot} may last {most} at most")
    return tr(text, step=step.name, lot=part.lot, most=exact_words(step.most))


def _link(problem: Problem, part: Part) -> str:
    link = next(iter(lot_of(problem, part.lot).links))
    return tr(
        "from {first} to {second} of {lot} may pass {most} at most",
        first=link.first,
        second=link.second,
        lot=part.lot,
        most=exact_words(link.most),
    )


def _goal(problem: Problem, part: Part) -> str:
    goal = goal_of(problem, part.name)
    return tr(
        "{goal} wants {pieces} by {moment}",
        goal=goal.name,
        pieces=counted(goal.pieces, PIECES),
        moment=moment_words(problem.clock, goal.at),
    )


def _due(problem: Problem, part: Part) -> str:
    lot = lot_of(problem, part.lot)
    if lot.due is None:
        raise ValueError(part.lot)
    moment = moment_words(problem.clock, lot.due)
    return tr("{lot} is due by {moment}", lot=lot.name, moment=moment)


_SAID: Final[Mapping[str, Callable[[Problem, Part], str]]] = {
    "store": _store, "vessel": _vessel, "hours": _hours, "step": _step, "link": _link,
    "goal": _goal, "due": _due,
}  # fmt: skip
"""By part of a conflict, its words; KeyError, StopIteration or ValueError for what is not there."""
