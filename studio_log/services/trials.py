"""The words of trials: what can be done (`trial_acts`) and asked (`trial_reads`)."""

from dataclasses import dataclass
from datetime import date, datetime

from studio_log.domain.trial_arms import ArmsHeld
from studio_log.domain.trial_fit import TrialFit
from studio_log.domain.trials import Trial
from studio_log.present.trial_plot import TrialPlot
from studio_log.science.colour.lab import Lab
from studio_log.science.statistics_blocks import BlockTest
from studio_log.science.statistics_line import Interval


@dataclass(frozen=True)
class TrialPlan:
    """How a trial is laid out. `day` None: today forwards, as soon as can be backwards.

    Forwards `day` is when the cloth is dry, backwards when all is dyed. `blocks` are names of
    batches or lots; `seed` None: drawn by chance.
    """

    ages: tuple[float, ...]
    others: tuple[str, ...] = ()
    blocks: tuple[str, ...] = ("1",)
    replicates: int = 2
    way: str = "forwards"
    day: date | None = None
    lead_d: int = 3
    measure: str = "chroma"
    seed: int | None = None
    control: str = ""
    """Name or age of the arm that the others are held against; "": age 0, else the first other."""


@dataclass(frozen=True)
class NewTrial:
    """Plan a trial; the outcome's `code` is its code."""

    question: str
    plan: TrialPlan
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SetTrial:
    """Change a trial's question, its day, its control, or whether it goes on."""

    code: str
    question: str | None = None
    day: date | None = None
    ended: bool | None = None
    control: str | None = None
    """Before anything is read only."""


@dataclass(frozen=True)
class GiveLot:
    """Say which lot the pieces of arms and blocks come from; () means all of them."""

    code: str
    lot: str
    arms: tuple[int, ...] = ()
    blocks: tuple[int, ...] = ()


@dataclass(frozen=True)
class GiveSwatch:
    """Say which swatch was cut from the piece of a tag."""

    code: str
    tag: str
    swatch: str


@dataclass(frozen=True)
class DoArm:
    """Write down that arms were soyed ("soy") or dyed ("dye"); () means all that is open."""

    code: str
    what: str
    arms: tuple[int, ...] = ()
    blocks: tuple[int, ...] = ()
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class ReadTag:
    """Write down what was read of a tag: a figure, a colour, or that the piece is lost."""

    code: str
    tag: str
    value: float | None = None
    lab: Lab | None = None
    two_u: float | None = None
    lost: bool = False
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class UnveilTrial:
    """Tell the tags from each other; before all is read only with `broken`, which is kept."""

    code: str
    broken: bool = False
    note: str = ""


@dataclass(frozen=True)
class NoteTrial:
    """Write down a remark on a trial."""

    code: str
    note: str
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class TrialsFor:
    """Ask for the trials; `ended` with those that are over."""

    ended: bool = False


@dataclass(frozen=True)
class TrialLine:
    """A trial as a list shows it."""

    code: str
    question: str
    way: str
    day: date
    arms: int
    blocks: int
    pieces: int
    read: int
    veiled: bool
    unveiled: bool
    ended: bool
    words: str
    next: str
    """What is to be done next, and when."""


@dataclass(frozen=True)
class TrialFor:
    """Ask for one trial by its code, or by words that only its question holds."""

    name: str


@dataclass(frozen=True)
class ArmLine:
    """An arm over time. `tags` are in the order of dipping; () while the trial is veiled."""

    number: int
    words: str
    age_d: float | None
    soy_day: date | None
    dye_days: tuple[date, ...]
    """One for each day on which blocks of it are or were dyed."""
    soyed: bool
    dyed: bool
    state: str
    lots: tuple[str, ...]
    tags: tuple[str, ...]
    control: bool = False


@dataclass(frozen=True)
class UnitLine:
    """A piece in the order of reading; while veiled only its tag and its reading are told."""

    tag: str
    read: int
    dip: int | None
    arm: str
    block: str
    lot: str
    swatch: str
    age_d: float | None
    value: float | None
    words: str
    """What was read, "" for nothing yet."""
    lost: bool = False


@dataclass(frozen=True)
class TrialPage:
    """One trial, whole."""

    line: TrialLine
    trial: Trial
    """Holds what the tags mean: not to be shown while it is veiled."""
    facts: tuple[str, ...]
    arms: tuple[ArmLine, ...]
    units: tuple[UnitLine, ...]
    next_tag: str
    """The tag to be read next, "" where none is left."""
    left: int
    can_unveil: bool
    history: tuple[tuple[int, str, str], ...]
    """Number, when and words of its entries, the latest first."""
    undo: str
    redo: str


@dataclass(frozen=True)
class TrialNeedsFor:
    """Ask what a plan needs and what it can resolve; nothing is written."""

    plan: TrialPlan


@dataclass(frozen=True)
class TrialNeeds:
    """Answers `TrialNeedsFor`, a sentence each; `fault` where it is no plan."""

    words: tuple[str, ...]
    warnings: tuple[str, ...] = ()
    fault: str = ""


@dataclass(frozen=True)
class TrialTagsFor:
    """The coded tags of a trial, shuffled: answered with TagFacts."""

    code: str


@dataclass(frozen=True)
class TrialReportFor:
    """Ask for the report of a trial by its code or words of its question."""

    name: str


@dataclass(frozen=True)
class Result:
    """One piece as it came out."""

    tag: str
    arm: str
    block: str
    age_d: float | None
    value: float
    two_u: float | None
    lab: Lab | None
    blind: bool
    source: str
    """"reading", or the code of the swatch whose colour it is."""


@dataclass(frozen=True)
class ArmMean:
    """What the pieces of an arm came to; against the control with its 95 % interval and chance."""

    words: str
    count: int
    mean: float
    sd: float | None
    control: bool = False
    difference: Interval | None = None
    p: float | None = None
    clear: bool | None = None
    """None where it cannot be said."""


@dataclass(frozen=True)
class TrialReport:
    """Answers `TrialReportFor`."""

    code: str
    question: str
    measure: str
    words: tuple[str, ...]
    """The answer first."""
    results: tuple[Result, ...]
    means: tuple[ArmMean, ...]
    fit: TrialFit | None
    held: ArmsHeld | None
    """The arms against the control."""
    blocks: BlockTest | None
    two_u: float | None
    """Median 2u of one piece, in the unit of the measure."""
    blind: int
    missing: tuple[str, ...]
    """Tags without a reading."""
    plot: TrialPlot
