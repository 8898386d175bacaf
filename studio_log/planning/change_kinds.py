"""The kinds of changes of a problem as plain data: ways out and what-ifs are made of them.

A change knows what it asks for, in the units of the problem: minutes, thousandths. `changes` makes
them, `change_words` has their words, `change_json` their JSON.
"""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class AddVessel:
    """One more vessel of a kind, of `size` thousandths of a litre, for one lot at a time."""

    kind: str
    size: int


@dataclass(frozen=True, slots=True)
class RemoveVessel:
    """A vessel taken away."""

    vessel: str


@dataclass(frozen=True, slots=True)
class MoreLine:
    """More metres of line, in thousandths; fewer where negative."""

    metres: int


@dataclass(frozen=True, slots=True)
class MoreBurners:
    """So many more burners; fewer where negative."""

    burners: int


@dataclass(frozen=True, slots=True)
class MoreHands:
    """So many more pairs of hands whenever somebody works; fewer where negative."""

    hands: int


@dataclass(frozen=True, slots=True)
class AddSession:
    """One more stretch of working hours on a day, in minutes of the wall clock."""

    day: date
    begins: int
    ends: int


@dataclass(frozen=True, slots=True)
class CloseDay:
    """Nobody works on a day."""

    day: date


@dataclass(frozen=True, slots=True)
class AddHours:
    """One more stretch of working hours on some weekdays, 0 for Monday."""

    weekdays: tuple[int, ...]
    begins: int
    ends: int


@dataclass(frozen=True, slots=True)
class LongerStep:
    """The longest time of a step, longer by so many minutes."""

    lot: str
    step: str
    minutes: int


@dataclass(frozen=True, slots=True)
class LongerPause:
    """The longest waiting behind a step, longer by so many minutes."""

    lot: str
    step: str
    minutes: int


@dataclass(frozen=True, slots=True)
class LongerLink:
    """The longest time between two moments of a lot, longer by so many minutes."""

    lot: str
    first: str
    second: str
    minutes: int


@dataclass(frozen=True, slots=True)
class LaterGoal:
    """The date of a goal, so many minutes later."""

    goal: str
    minutes: int


@dataclass(frozen=True, slots=True)
class GoalPieces:
    """A goal with another number of pieces."""

    goal: str
    pieces: int


@dataclass(frozen=True, slots=True)
class GoalCured:
    """So many pieces of a goal cured another number of days; the others as before."""

    goal: str
    pieces: int
    days: int


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """A lot is not done; where goals then lack pieces they want fewer."""

    lot: str


@dataclass(frozen=True, slots=True)
class LaterRelease:
    """A lot begins so many minutes later at the earliest."""

    lot: str
    minutes: int


@dataclass(frozen=True, slots=True)
class LaterDue:
    """A lot is due so many minutes later."""

    lot: str
    minutes: int


@dataclass(frozen=True, slots=True)
class MoreDays:
    """The plan may reach so many days further."""

    days: int


Change = (
    AddVessel | RemoveVessel | MoreLine | MoreBurners | AddSession | CloseDay | AddHours
    | LongerStep | LongerPause | LongerLink | LaterGoal | GoalPieces | GoalCured | LeaveOut
    | LaterRelease | LaterDue | MoreDays | MoreHands
)  # fmt: skip
