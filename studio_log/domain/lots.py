"""A lot: pieces treated together under one code, and where it stands in its steps."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum

from studio_log.domain.errors import Refusal
from studio_log.domain.methods import CurePlan, Method, MethodStep, StepKind
from studio_log.domain.pieces import Piece


class LotState(StrEnum):
    """What a lot is doing, in one word."""

    PLANNED = "planned"
    IN_WORK = "in-work"
    CURING = "curing"
    READY = "ready"
    USED = "used"
    STOPPED = "stopped"


class StepState(StrEnum):
    """Where a step stands. OPEN: everything before it is closed, it may begin."""

    AHEAD = "ahead"
    OPEN = "open"
    RUNNING = "running"
    DONE = "done"
    SKIPPED = "skipped"


@dataclass(frozen=True)
class LotStep:
    """A step of a method as one lot walks it. `number` never changes; order is the place."""

    number: int
    slug: str
    title: str
    spec: MethodStep
    join: int
    """Which of the lot's methods it belongs to, counted from 0."""
    coat: int | None = None
    optional: bool = False
    start: datetime | None = None
    end: datetime | None = None
    skipped: str | None = None
    """The reason, "" where none was given, None when not skipped."""
    tended: tuple[datetime, ...] = ()
    damp: tuple[datetime, ...] = ()
    put_off: datetime | None = None
    plan: datetime | None = None
    """The start that the dyer or a plan has set, the end where the step runs."""
    plan_end: datetime | None = None
    """The end that an accepted plan has set; it holds on when the step begins."""
    meant_start: datetime | None = None
    """The start that was planned, as it stood when the step began."""
    meant_end: datetime | None = None
    """The end that was planned, as it stood when the step ended."""
    milk: str | None = None
    read: Mapping[str, float | str] = field(default_factory=dict)
    """What was read in it, the latest of a name."""
    grams_used: float | None = None
    """Weight of the cloth when the step began: its amounts no longer follow the lot."""
    amounts_used: Mapping[str, float] = field(default_factory=dict)
    """What the dyer had changed of its amounts by then."""

    @property
    def closed(self) -> bool:
        """Done or skipped."""
        return self.end is not None or self.skipped is not None

    @property
    def running(self) -> bool:
        """Begun and not yet closed."""
        return self.start is not None and not self.closed


@dataclass(frozen=True)
class Use:
    """The moment the cloth first met paint or a dye bath, and what for."""

    at: datetime
    note: str = ""


@dataclass(frozen=True)
class Lot:
    """A lot as its journal tells it; no clock in it."""

    code: str
    name: str
    begun: datetime
    """When the lot was made, by its journal."""
    zone: str
    pieces: tuple[Piece, ...]
    methods: tuple[Method, ...]
    steps: tuple[LotStep, ...]
    """In order of walking; `LotStep.number` need not rise."""
    given_grams: float | None = None
    weighed: str | None = None
    cure_days: int | None = None
    cure_join: int = 0
    """Which of the methods `cure_days` was chosen for, counted from 0."""
    place: str = ""
    vessel_litres: float | None = None
    vessel: str = ""
    """Name of the bucket or pot; lots that name the same one share it."""
    amounts_changed: Mapping[str, float] = field(default_factory=dict)
    use: Use | None = None
    stopped: tuple[datetime, str] | None = None
    voided: bool = False
    parents: tuple[str, ...] = ()
    children: tuple[str, ...] = ()
    joined_into: str = ""
    """Code of the lot that all its pieces went into, the last of its children; "" for none."""
    milk_of: str = ""
    """Code of the lot whose milk serves it, by the plan that it follows; "" for its own."""
    serves: tuple[str, ...] = ()
    """Codes of the lots that its milk serves too, by the plan that it follows."""
    spared: frozenset[int] = frozenset()
    """Numbers of the steps that it is spared by that milk; they are skipped."""
    seen: frozenset[str] = frozenset()
    """Keys, without the code, of marks and warnings that the dyer has answered as seen."""

    @property
    def grams(self) -> float | None:
        """Dry weight of the lot in grams, as weighed, else the sum of its pieces."""
        if self.given_grams is not None:
            return self.given_grams
        weights = [piece.grams for piece in self.pieces]
        known = [grams for grams in weights if grams is not None]
        return sum(known) if known and len(known) == len(weights) else None

    @property
    def area_m2(self) -> float | None:
        """Area of all pieces in m², where all are known."""
        areas = [piece.area_m2 for piece in self.pieces]
        known = [area for area in areas if area is not None]
        return sum(known) if known and len(known) == len(areas) else None

    @property
    def method(self) -> Method:
        """The method that was joined last."""
        return self.methods[-1]

    @property
    def joined(self) -> bool:
        """Whether it was made by joining lots; a split leaves one parent."""
        return len(self.parents) > 1

    @property
    def started(self) -> bool:
        """Whether any step was ever begun, ended or skipped by hand."""
        return any(
            step.start or (step.closed and step.number not in self.spared) for step in self.steps
        )

    def step(self, number: int) -> LotStep:
        """Give the step of a number; Refusal where there is none."""
        for step in self.steps:
            if step.number == number:
                return step
        raise Refusal(
            f"{self.code} has no step {number}; its steps are 1 to {len(self.steps)}. "
            "Nothing was changed."
        )

    def place_of(self, number: int) -> int:
        """Give the place of a step in the order of walking, from 0."""
        return self.steps.index(self.step(number))

    def taken(self, step: LotStep) -> bool:
        """Say whether a step is walked at all: an optional coat counts once it is begun."""
        if not step.optional:
            return True
        return any(
            other.start is not None or other.end is not None
            for other in self.steps
            if other.optional and other.coat == step.coat and other.join == step.join
        )

    def before(self, step: LotStep) -> Iterator[LotStep]:
        """Give the steps walked before this one, nearest first."""
        for other in reversed(self.steps[: self.place_of(step.number)]):
            if self.taken(other) or (other.optional and other.coat == step.coat):
                yield other

    @property
    def planned(self) -> bool:
        """Whether a moment was set by hand or by a plan: a lot not begun has no other."""
        return any(step.plan is not None for step in self.steps if not step.closed)

    def state_of(self, step: LotStep) -> StepState:
        """Give the state of one step."""
        if step.skipped is not None:
            return StepState.SKIPPED
        if step.end is not None:
            return StepState.DONE
        if step.start is not None:
            return StepState.RUNNING
        earlier = list(self.before(step))
        # A cure is "once dry" for whatever comes after it, and the dyer alone ends it.
        waiting = [one for one in earlier if not one.closed and one.spec.kind is not StepKind.CURE]
        return StepState.AHEAD if waiting else StepState.OPEN

    def coats(self, join: int) -> int:
        """Count the coats of one method that are neither skipped nor optional and unbegun."""
        return len(
            {
                step.coat
                for step in self.steps
                if step.join == join
                and step.coat is not None
                and step.skipped is None
                and self.taken(step)
            }
        )

    def open_steps(self) -> tuple[LotStep, ...]:
        """Give the steps that run, in order."""
        return tuple(step for step in self.steps if step.running)

    def state(self, now: datetime) -> LotState:
        """Say what the lot is doing at a moment."""
        if self.stopped is not None or self.voided:
            return LotState.STOPPED
        if not self.started:
            return LotState.PLANNED
        cure = cure_of(self)
        left = [
            step
            for step in self.steps
            if not step.closed and step.spec.kind is not StepKind.CURE and self.taken(step)
        ]
        if left:
            resting = cure is not None and cure.running and left[0].join > cure.step.join
            if not resting:
                return LotState.IN_WORK
        if cure is not None and cure.running and self.use is None:
            return LotState.READY if now >= cure.ready_at else LotState.CURING
        return LotState.USED if self.use is not None else LotState.READY


@dataclass(frozen=True)
class CureMark:
    """A moment of the cure: its name, kind ("paint", "resists", "ready"), day and instant."""

    name: str
    kind: str
    day: int
    at: datetime


@dataclass(frozen=True)
class Cure:
    """The rest before use, counted in days of 24 h from fully dry."""

    step: LotStep
    plan: CurePlan
    fully_dry: datetime
    ended: datetime | None
    days: int
    """The view chosen: ready this many days after fully dry."""

    @property
    def running(self) -> bool:
        """Neither used nor closed."""
        return self.ended is None

    @property
    def ready_at(self) -> datetime:
        """When the chosen view says that the cloth is ready."""
        return self.fully_dry + timedelta(days=self.days)

    def age(self, now: datetime) -> timedelta:
        """Age of the cure: up to its end, after which it is frozen."""
        return max((self.ended or now) - self.fully_dry, timedelta(0))

    @property
    def marks(self) -> tuple[CureMark, ...]:
        """The marks in order of time."""
        marks = [CureMark(f"{self.plan.ready_title} from", "ready", self.days, self.ready_at)]
        best = self.plan.paint_best_days
        if best is not None:
            at = self.fully_dry + timedelta(days=best)
            marks.append(CureMark("best for painting until", "paint", best, at))
            marks.append(CureMark("resists paint from", "resists", best, at))
        return tuple(sorted(marks, key=lambda mark: (mark.at, mark.kind)))


def fully_dry(lot: Lot, cure_step: LotStep) -> datetime | None:
    """Give the moment the last coat before a cure was dry, or None while one is open."""
    walked = [
        step
        for step in lot.steps[: lot.place_of(cure_step.number)]
        if step.join == cure_step.join and lot.taken(step)
    ]
    if any(not step.closed for step in walked):
        return None
    ends = [step.end for step in walked if step.end and step.spec.kind is StepKind.DRY]
    return max(ends, default=None)


def cure_days_of(lot: Lot, join: int) -> int:
    """Give the days of cure in force for one of a lot's methods; 0 where it has no cure."""
    plan = lot.methods[join].cure
    if plan is None:
        return 0
    chosen = lot.cure_days if join == lot.cure_join else None
    return plan.default_days if chosen is None else chosen


def last_cure(methods: Sequence[Method]) -> int:
    """Give the place of the last method with a cure, 0 where none has one."""
    return max((at for at, one in enumerate(methods) if one.cure is not None), default=0)


def cure_of(lot: Lot) -> Cure | None:
    """Give the lot's latest cure that has begun, or None."""
    for step in reversed(lot.steps):
        plan = lot.methods[step.join].cure
        if step.spec.kind is not StepKind.CURE or plan is None or step.skipped is not None:
            continue
        dry = fully_dry(lot, step)
        if dry is not None:
            days = cure_days_of(lot, step.join)
            return Cure(step, plan, dry, step.end, days)
    return None
