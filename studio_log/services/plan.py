"""The plan of the studio: what is asked, what is answered, and how a plan is accepted.

Making a plan is the planner's work, in a process of its own; here stand its problem, made from the
log, and the way back from its answer to the log.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Final

from studio_log.domain.following import Moments
from studio_log.domain.plan_lots import Part
from studio_log.domain.plan_wishes import PlanGoal, SharedMilk, SlowDay, WantedLot
from studio_log.domain.vessel_text import OwnVessel

Planned = Mapping[str, Moments]
"""By lot, code or name of a wanted one: by number of a step, its start and end."""


@dataclass(frozen=True)
class PlanFor:
    """The studio as a problem for the planner."""


@dataclass(frozen=True)
class PlanLine:
    """One lot of the plan, for a list."""

    code: str
    """Code of the lot; of one that is wanted its name."""
    name: str
    doing: str
    pieces: int
    wanted: bool = False
    open: bool = True
    """Whether anything of it is still to be planned."""
    follows: bool = False
    """Whether it follows an accepted plan."""
    orders: Mapping[str, str] = field(default_factory=dict, hash=False)
    """By step of the planner what is to be done, as an order."""
    tendings: Mapping[str, str] = field(default_factory=dict, hash=False)
    """By step of the planner what is done in passing while it runs, as an order: "Stir"."""
    places: Mapping[str, tuple[int, Part]] = field(default_factory=dict, hash=False)
    """By step of the planner: the number of the log's step, and which part of it."""
    makes_milk: bool = False
    """Whether it has still to make its milk, which may serve others too."""
    takes_milk: bool = False
    """Whether the milk of another lot can serve it, or does."""


@dataclass(frozen=True)
class PlanSetup:
    """The problem, what it was made of, and what cannot be planned, in sentences."""

    problem: Mapping[str, Any]
    """Of the form "studio-plan/1"."""
    lots: tuple[PlanLine, ...]
    goals: tuple[PlanGoal, ...]
    wanted: tuple[WantedLot, ...]
    slow_days: tuple[SlowDay, ...]
    vessels: tuple[OwnVessel, ...]
    hours_words: str
    notes: tuple[str, ...]
    now: datetime
    zone: str
    keep: Mapping[str, Any] | None = None
    """The plan that lots follow, as the planner's answer has it; None where none does."""
    visit_hours: float = 12.0
    methods: tuple[tuple[str, str], ...] = ()
    """Slug and title of every method, for lots that are wanted."""
    shared: tuple[SharedMilk, ...] = ()
    """Milks that are to serve several lots."""


@dataclass(frozen=True)
class PlannedFor:
    """The timeline as it would be if lots followed a plan."""

    starts: Mapping[str, Mapping[str, datetime]] = field(hash=False)
    """By lot and step of the planner."""
    ends: Mapping[str, Mapping[str, datetime]] = field(hash=False)


PLAN: Final = "plan"
"""Stands for the plan that was accepted last, where the code of a lot would be taken back."""


@dataclass(frozen=True)
class AcceptPlan:
    """Let lots follow a plan; lots that are wanted are made. `codes` None means all of the plan.

    `changes` are what it counts on beyond the studio as it is, to be written into the studio, each
    as the planner's JSON has it.
    """

    starts: Mapping[str, Mapping[str, datetime]] = field(hash=False)
    ends: Mapping[str, Mapping[str, datetime]] = field(hash=False)
    codes: tuple[str, ...] | None = None
    changes: tuple[Mapping[str, Any], ...] = field(default=(), hash=False)
    sure: bool = False
