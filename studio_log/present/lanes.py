"""What the timeline is given: one lane a lot, with all instants in UTC.

The words of `story` are whole sentences; they are shown on hover and spoken on focus. Those of
bars and drops come from `facts`, by `timeline_story`, when somebody asks; `story` is for lanes
without facts.
"""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from studio_log.domain.methods import StepKind
from studio_log.present.timeline_story import LaneFacts

BarState = Literal["done", "running", "ahead", "broken"]
MarkKind = Literal["paint", "ready", "resists"]


@dataclass(frozen=True, slots=True)
class Bar:
    """One step of a lot as a length of time."""

    step: int
    kind: StepKind
    title: str
    start: datetime
    end: datetime
    """When it ended; for a step still open, its aim."""
    state: BarState
    soft_from: datetime | None = None
    """Earliest end; None for a step that has ended."""
    soft_until: datetime | None = None
    """Latest end."""
    planned: tuple[datetime, datetime] | None = None
    """Start and end as first planned."""
    story: str = ""


@dataclass(frozen=True, slots=True)
class Stitch:
    """One tending of a step."""

    at: datetime
    done: bool
    story: str = ""


@dataclass(frozen=True, slots=True)
class Drop:
    """A dip: too short to be a bar."""

    at: datetime
    done: bool
    step: int
    story: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark of the cure: best for painting until, ready from, resists paint from."""

    at: datetime
    title: str
    kind: MarkKind
    story: str = ""


@dataclass(frozen=True, slots=True)
class Lane:
    """One lot; bars in order of their start, the rest in order of time."""

    code: str
    name: str
    bars: tuple[Bar, ...] = ()
    stitches: tuple[Stitch, ...] = ()
    drops: tuple[Drop, ...] = ()
    marks: tuple[Mark, ...] = ()
    hands: tuple[datetime, ...] = ()
    """Moments at which somebody is needed."""
    facts: LaneFacts | None = None
    """What the words and a move are worked out from, once somebody looks."""


@dataclass(frozen=True, slots=True)
class Night:
    """One stretch of quiet hours."""

    start: datetime
    end: datetime


@dataclass(frozen=True, slots=True)
class Closed:
    """One stretch in which the workshop is not open."""

    start: datetime
    end: datetime
    days: tuple[tuple[date, str], ...] = ()
    """Local days in it that differ from their weekday, and why in words."""
