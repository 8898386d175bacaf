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

from studio_log.planning.changes import goal_of, lot_of
from studio_log.planning.plain_words import (
    amount_words,
    counted,
    exact_words,
    hour_words,
    listed,
    long_day,
    moment_words,
    number_words,
    with_article,
)
from studio_log.planning.problem import THOUSANDTHS, BadProblemError, Problem
from studio_log.planning.taking import Faults, Table, read_day, shown
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
    return Reason("joint", lots, steps, f"{_head(problem, joint)}{listed(said)}.")


def _told_by_head(joint: Joint) -> Part | None:
    """Give the goal whose wish the head tells already; None where it is all there is."""
    whole = joint.possible is not None and len(joint.parts) > 1
    return Part("goal", joint.goal) if joint.goal is not None and whole else None


def _head(problem: Problem, joint: Joint) -> str:
    """Say what can be; where one limit alone stands against it, that all else may be free."""
    alone = len(joint.parts) == 1 and not joint.lots
    if joint.goal is not None and joint.possible is not None:
        goal = goal_of(problem, joint.goal)
        ready = "cured" if goal.cured else "ready"
        by = moment_words(problem.clock, goal.at)
        also = "even if everything else were free, " if alone else ""
        pieces = capital(counted(joint.possible, "piece"))
        wanted = number_words(goal.pieces)
        return f"{pieces} can be {ready} by {by}, not {wanted}; {also}"
    return "Even if everything else were free, it fails: " if alone else "Not all together: "


def _clash(joint: Joint) -> str:
    """Say which lots want the first part, and on which day."""
    short = [one.name for one in joint.parts if one.part in THINGS]
    name = short[0] if short else "hands"
    thing = with_article(name)
    one, several = _NEEDS.get(name, (f"needs {thing}", f"need {thing}"))
    many = {1: one, 2: f"both {several}"}.get(len(joint.lots), f"all {several}")
    if joint.day is None and len(joint.lots) > 1:
        have = _HAVE.get(name, f"have {thing}")
        return f"{listed(joint.lots)} cannot all {have} when they need it"
    day = "" if joint.day is None else f" on {long_day(joint.day)}"
    return f"{listed(joint.lots)} {many}{day}"


_HAVE: Final = {"line": "have it", "hands": "be worked at"}
_NEEDS: Final = {
    "line": ("hangs", "hang"), "burner": ("needs a burner", "need a burner"),
    "hands": ("needs hands", "need hands"),
}  # fmt: skip


def _store(problem: Problem, part: Part) -> str:
    much = problem.stores[part.name]
    if part.name == "line":
        return f"the line holds {amount_words(much)} m"
    noun = {"burner": ("burner", ""), "hands": ("pair of hands", "pairs of hands")}[part.name]
    count = much // THOUSANDTHS
    return f"there {'is' if count == 1 else 'are'} {counted(count, *noun)}"


def _vessel(problem: Problem, part: Part) -> str:
    count = sum(one.kind == part.name for one in problem.vessels)
    if not count:
        raise ValueError(part.name)
    return f"there {'is' if count == 1 else 'are'} {counted(count, part.name)}"


def _hours(problem: Problem, part: Part) -> str:
    day = date.fromisoformat(part.name) if part.name else None
    if day is None:
        return "the working hours leave no more time"
    hours = problem.calendar.on(day)
    if not hours:
        return f"nobody is there on {long_day(day)}"
    stretches = listed([f"{hour_words(begins)} to {hour_words(ends)}" for begins, ends in hours])
    return f"the hours on {long_day(day)} are {stretches}"


def _step(problem: Problem, part: Part) -> str:
    step = next(one for one in lot_of(problem, part.lot).steps if one.name == part.name)
    if step.most is None:
        return f"{step.name} of {part.lot} takes {exact_words(step.least or step.hands or 0)}"
    return f"{step.name} of {part.lot} may last {exact_words(step.most)} at most"


def _link(problem: Problem, part: Part) -> str:
    link = next(iter(lot_of(problem, part.lot).links))
    most = exact_words(link.most)
    return f"from {link.first} to {link.second} of {part.lot} may pass {most} at most"


def _goal(problem: Problem, part: Part) -> str:
    goal = goal_of(problem, part.name)
    pieces = counted(goal.pieces, "piece")
    return f"{goal.name} wants {pieces} by {moment_words(problem.clock, goal.at)}"


def _due(problem: Problem, part: Part) -> str:
    lot = lot_of(problem, part.lot)
    if lot.due is None:
        raise ValueError(part.lot)
    return f"{lot.name} is due by {moment_words(problem.clock, lot.due)}"


_SAID: Final[Mapping[str, Callable[[Problem, Part], str]]] = {
    "store": _store, "vessel": _vessel, "hours": _hours, "step": _step, "link": _link,
    "goal": _goal, "due": _due,
}  # fmt: skip
"""By part of a conflict, its words; KeyError, StopIteration or ValueError for what is not there."""
