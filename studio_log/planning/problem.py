"""A studio's planning problem and its plan, as plain values.

Times are whole minutes of real time from the problem's start; negative before it. Amounts
(litres, metres, burners) are whole thousandths, so that sums are exact.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from typing import Literal
from zoneinfo import ZoneInfo

THOUSANDTHS = 1000
MOST_DAYS = 800
"""How far a plan may reach, and"""
MOST_SLOTS = 60_000
"""how fine: slots of its grid."""
Limit = Literal["rule", "advice"]
"""Whether a way out may be sought beyond a limit: never beyond a rule."""


class BadProblemError(Exception):
    """A problem that makes no sense; `faults` are its sentences."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__(" ".join(faults))
        self.faults = faults


@dataclass(frozen=True, slots=True)
class Clock:
    """The wall clock of a problem; without a zone every day has 24 hours."""

    start: datetime
    """Naive local time of minute 0."""
    zone: ZoneInfo | None = None

    def minute(self, local: datetime) -> int:
        """Give the minute of a naive local time; of one that comes twice, the first."""
        if self.zone is None:
            return int((local - self.start).total_seconds() // 60)
        begun = self.start.replace(tzinfo=self.zone).astimezone(UTC)
        return int((local.replace(tzinfo=self.zone).astimezone(UTC) - begun).total_seconds() // 60)

    def local(self, minute: int) -> datetime:
        """Give the naive local time of a minute."""
        if self.zone is None:
            return self.start + timedelta(minutes=minute)
        return self.utc(minute).astimezone(self.zone).replace(tzinfo=None, fold=0)

    def utc(self, minute: int) -> datetime:
        """Give the instant of a minute; without a zone the local time counts as UTC."""
        begun = self.start.replace(tzinfo=self.zone or UTC).astimezone(UTC)
        return begun + timedelta(minutes=minute)


@dataclass(frozen=True, slots=True)
class Calendar:
    """Working and waking hours: (from, to) in minutes of the wall clock, `to` up to 1440."""

    working: tuple[tuple[tuple[int, int], ...], ...]
    """Seven weekdays, Monday first."""
    waking: tuple[tuple[tuple[int, int], ...], ...]
    exceptions: Mapping[date, tuple[tuple[int, int], ...]] = field(default_factory=dict)
    """Other working hours on single days."""
    quiet: Limit = "rule"
    """Whether nobody is asked to come outside the waking hours."""

    def on(self, day: date) -> tuple[tuple[int, int], ...]:
        """Give the working hours of a day, in order."""
        return self.exceptions.get(day, self.working[day.weekday()])


@dataclass(frozen=True, slots=True)
class Vessel:
    """A vessel of a kind; `one_lot` false lets lots share it while the amounts add up."""

    name: str
    kind: str
    size: int
    one_lot: bool = True


@dataclass(frozen=True, slots=True)
class Step:
    """A step: `hands` minutes by hand, or by itself between `least` and `most`.

    Between its end and the next step lie `then_after` to `then_within` minutes.
    """

    name: str
    hands: int | None = None
    least: int = 0
    most: int | None = None
    target: int | None = None
    then_after: int = 0
    then_within: int = 0
    uses: Mapping[str, int] = field(default_factory=dict)
    drying: bool = False
    cure: bool = False
    stir_every: int | None = None
    limit: Limit = "advice"
    """What `most` is."""
    then_limit: Limit | None = None
    """What `then_within` is; unless said, a rule where nothing may wait at all."""

    @property
    def pause_rule(self) -> bool:
        """Whether the waiting behind the step is never made longer."""
        return (self.then_limit or ("advice" if self.then_within else "rule")) == "rule"


@dataclass(frozen=True, slots=True)
class Fact:
    """What is recorded of a step; `end` None while it is running."""

    start: int
    end: int | None = None


@dataclass(frozen=True, slots=True)
class Link:
    """A longest time from the start or end of one step to that of a later one."""

    first: str
    first_end: bool
    second: str
    second_end: bool
    most: int
    limit: Limit = "advice"


@dataclass(frozen=True, slots=True)
class Lot:
    """A lot: its steps in order, what is recorded, and when it is wanted."""

    name: str
    steps: tuple[Step, ...]
    pieces: int = 1
    weight: int = 1
    release: int = 0
    due: int | None = None
    facts: Mapping[str, Fact] = field(default_factory=dict)
    links: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True)
class Goal:
    """So many pieces out of some lots, cured so many minutes at a moment."""

    name: str
    at: int
    pieces: int
    cured: int
    lots: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Milk:
    """One making that several lots use: from the end of the making step for `life` minutes.

    It is made by a step of a lot, or at a known minute. What it stands in is taken from its making
    to its last use, once.
    """

    name: str
    life: int
    uses: tuple[tuple[str, str], ...]
    """Lot and step of each use."""
    maker: tuple[str, str] | None = None
    """Lot and step."""
    at: int | None = None
    """The minute it is made, where no step of a lot makes it."""
    kind: str | None = None
    """The kind of vessel it stands in, with `much`."""
    much: int = 0
    vessel: str | None = None
    """The very vessel, where it is known."""


@dataclass(frozen=True, slots=True)
class Problem:
    """All that a plan has to keep to."""

    name: str
    clock: Clock
    horizon: int
    calendar: Calendar
    vessels: tuple[Vessel, ...]
    stores: Mapping[str, int]
    """Capacities by name: line, burner, hands."""
    lots: tuple[Lot, ...]
    goals: tuple[Goal, ...] = ()
    drying: Mapping[date, int] = field(default_factory=dict)
    """The shortest drying of cloth hung on a day, in minutes."""
    grid: int = 5
    notes: tuple[str, ...] = ()
    """What is odd in it and was planned with all the same."""
    session_worth: int | None = None
    """So many minutes of one lot's waiting is a session worth; None: fewer sessions come first."""
    milks: tuple[Milk, ...] = ()


@dataclass(frozen=True, slots=True)
class Span:
    """Start and end of a planned step."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Score:
    """Smallest first: minutes late, sessions, minutes off target and to taking down."""

    late: int
    sessions: int
    fine: int

    def parts(self) -> tuple[int, int, int]:
        """Give the three parts in their order."""
        return self.late, self.sessions, self.fine


@dataclass(frozen=True, slots=True)
class Plan:
    """Every step that is not over, by lot and step, with its vessels by kind."""

    spans: Mapping[str, Mapping[str, Span]]
    vessels: Mapping[str, Mapping[str, Mapping[str, str]]]
    serves: Mapping[str, Mapping[str, int]]
    """By goal: so many pieces of which lots."""
    score: Score
    made_for: str = ""
    """The mark of the problem that it was made for (`made_for.mark_of`), "" where not known."""
    milks: Mapping[str, str] = field(default_factory=dict)
    """By milk, the vessel it stands in."""
