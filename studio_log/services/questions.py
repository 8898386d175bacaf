"""Everything a screen or a command can ask to see, and the shape of each answer.

Words are ready to show; instants are aware UTC for whoever computes with them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from studio_log.domain.amounts import Amount
from studio_log.domain.methods import Method, StepKind
from studio_log.domain.pieces import Piece
from studio_log.domain.spoiling import Warned
from studio_log.domain.tags import TagFacts
from studio_log.present.lanes import Closed, Lane, Night
from studio_log.present.timeline_shared import SharedRow
from studio_log.services.baths import BathFor, BathsFor
from studio_log.services.calendar import CalendarFor, SaveCalendar
from studio_log.services.card_times import TryCard
from studio_log.services.copies import CompareCopy, CopiesFor
from studio_log.services.joins import JoinFor, JoinOfferFor
from studio_log.services.method_page import CautionsFor, MethodPageFor
from studio_log.services.moving import ExportFor
from studio_log.services.notebooks import NotebookFor, TryNotebook
from studio_log.services.papers import CardFor, DaySheetFor, RecordFor
from studio_log.services.pictures import PictureFor
from studio_log.services.places import PlacesFor
from studio_log.services.plan import PlanFor, PlannedFor
from studio_log.services.rang import WhatRangFor
from studio_log.services.search import FindLots, LotRowsFor
from studio_log.services.shared import SharedFor
from studio_log.services.shelf import DyeFor, DyesFor, MaterialFor, MaterialsFor
from studio_log.services.stock import CostFor, ShoppingFor, StockFor
from studio_log.services.studio_hours import (
    HolidayPlaceFor,
    HolidayPlacesFor,
    HolidaysFor,
    StudioHoursFor,
)
from studio_log.services.swatches import CardsFor, NearFor, SwatchesFor, SwatchFor
from studio_log.services.trials import (
    TrialFor,
    TrialNeedsFor,
    TrialReportFor,
    TrialsFor,
    TrialTagsFor,
)


@dataclass(frozen=True)
class LotLinesFor:
    """The lot list: `state` one of the lot states, "live" (not used, not stopped) or "all"."""

    state: str = "live"
    find: str = ""


@dataclass(frozen=True)
class LotLine:
    """One row of the lot list."""

    code: str
    name: str
    state: str
    doing: str
    """"First soak · 3 h 40 min in"."""
    need: str
    """"stir now", "dry ≈ 16:40", "" where nobody is needed."""
    need_at: datetime | None
    urgency: str
    """calm, soon, now or spoiling; colours `need`, which also says it in words."""
    strip: tuple[tuple[StepKind, str], ...]
    """Kind and state of each step in order, for the strip."""
    cells: Mapping[str, str] = field(default_factory=dict, hash=False)
    """What the columns of a table say, in words, by their names: state, next, when, fibre, weight,
    coats, age, vessel, shelf."""


@dataclass(frozen=True)
class LotLines:
    """The rows, and how many lots each filter would show."""

    lines: tuple[LotLine, ...]
    counts: Mapping[str, int]


@dataclass(frozen=True)
class LotSheetFor:
    """One lot, whole."""

    code: str


@dataclass(frozen=True)
class StepLine:
    """One step of a lot's sheet."""

    number: int
    order: int
    slug: str
    title: str
    kind: StepKind
    state: str
    planned: str
    """"10–18 h, aim 14 h"; "within 10 min of lifting"."""
    actual: str
    """"20:00 → 08:10", "09:20 → now", ""."""
    when: str
    """For steps ahead: "Wed 10 June 07:00 (aim 03:00)"."""
    why: str
    """Why the best moment is what it is, and any limit broken."""
    broken: str
    amounts: tuple[Amount, ...]
    details: str
    """Amounts, milk, readings, tendings in one line."""
    do: str
    cautions: tuple[str, ...]
    start: datetime | None = None
    end: datetime | None = None
    optional: bool = False
    warned: tuple[Warned, ...] = ()
    """What would spoil in it as things stand, with the reason and on whose word."""
    acts: tuple[tuple[str, str], ...] = ()
    """What may be done now: (act, words of the button), the chief one first."""


@dataclass(frozen=True)
class EntryLine:
    """One line of a lot's journal, for reading."""

    number: int
    at: datetime
    written: datetime
    words: str
    act: str
    step: int | None
    note: str
    taken_back: bool
    corrected_by: int | None
    readings: Mapping[str, float | str] = field(default_factory=dict)
    """As they stand, corrections counted in."""


@dataclass(frozen=True)
class LotSheet:
    """Everything about one lot."""

    code: str
    name: str
    state: str
    heading: str
    """"soy binder for immersion · 299.7 g · 1.62 m²"."""
    doing: str
    pieces: tuple[Piece, ...]
    steps: tuple[StepLine, ...]
    entries: tuple[EntryLine, ...]
    cure_words: str
    """Age and marks of the cure in words, "" before it."""
    vessel_words: str
    cautions: tuple[str, ...]
    lineage: str
    milk_words: str
    undo: str
    """What undo would take back, "" if nothing."""
    redo: str
    data: Mapping[str, object] = field(default_factory=dict)
    """The same as plain JSON values: what `lot show --json` prints."""
    cost_words: str = ""
    """What its materials cost so far, "" where the stock knows nothing of them."""
    bath_words: str = ""
    """Which baths it went through, "" for none."""
    swatch_words: str = ""
    """The swatches cut from it, "" for none."""
    plan_words: str = ""
    """That it follows a plan, and what comes next by it; "" where it does not."""


@dataclass(frozen=True)
class TimelineFor:
    """Lanes of all live lots, or of those named."""

    codes: tuple[str, ...] = ()


@dataclass(frozen=True)
class Timeline:
    """What the timeline paints."""

    lanes: tuple[Lane, ...]
    nights: tuple[Night, ...]
    now: datetime
    zone: str
    closed: tuple[Closed, ...] = ()
    """When the workshop is not open; none where no hours were set."""
    shared: tuple[SharedRow, ...] = ()
    """Vessels, drying line and heat: who takes them and where lots meet."""
    left_out: int = 0
    """Lots that are not shown because there are too many: those that need hands last."""


@dataclass(frozen=True)
class BenchFor:
    """What needs hands."""


@dataclass(frozen=True)
class Card:
    """One reminder on the bench."""

    key: str
    lot: str
    step: int | None
    kind: str
    urgency: str
    due: datetime
    due_words: str
    title: str
    why: str
    if_late: str
    answer: str
    """Words of the one big answer: "Stirred", "Dry", "Lifted", "Start now"."""
    second: str = ""
    """A second direct answer ("Still damp"), "" for none; sent as answer "damp"."""
    countdown_to: datetime | None = None
    """Set for running steps under 15 minutes: counted down in large digits."""
    raised: bool = False
    put_off_warning: str = ""
    """What putting off costs, where it goes beyond the last call."""


@dataclass(frozen=True)
class TakeBack:
    """The last act, while it can be taken back in one click."""

    subject: str
    words: str
    until: datetime


@dataclass(frozen=True)
class Bench:
    """Now (by what spoils first), later today, tonight, further on; words when nothing is due."""

    now: tuple[Card, ...]
    later: tuple[Card, ...]
    tonight: tuple[Card, ...]
    """From bedtime to the noon after it: the night and the morning."""
    next_words: str
    quiet_words: str
    take_back: TakeBack | None = None
    further: tuple[Card, ...] = ()
    """What comes after that noon, the next few."""

    @property
    def coming(self) -> tuple[Card, ...]:
        """What is not due yet, soonest first."""
        return (*self.later, *self.tonight, *self.further)


@dataclass(frozen=True)
class RemindersFor:
    """Reminders due or coming, in order; `within` in seconds from `at` (None: now)."""

    at: datetime | None = None
    within: float = 86400.0


@dataclass(frozen=True)
class MethodsFor:
    """Every method, latest versions."""


@dataclass(frozen=True)
class MethodFor:
    """One method by its slug, its latest version."""

    slug: str


@dataclass(frozen=True)
class AmountsFor:
    """Amounts of a method for a weight of cloth in grams.

    Without `area_m2`, one side of all pieces, amounts by the area are left out.
    """

    slug: str
    grams: float
    changed: Mapping[str, float] = field(default_factory=dict)
    vessel_litres: float | None = None
    area_m2: float | None = None


@dataclass(frozen=True)
class AmountsAnswer:
    """Amounts by step, and whether the vessel holds the bath, in words."""

    amounts: tuple[Amount, ...]
    vessel_words: str
    vessel_fits: bool | None


@dataclass(frozen=True)
class MilksFor:
    """The batches of milk."""

    finished: bool = False


@dataclass(frozen=True)
class MilkLine:
    """One milk."""

    code: str
    litres: float | None
    strength: float | None
    cold: bool
    made_at: datetime
    use_by: datetime
    lots: tuple[str, ...]
    finished: bool
    words: str


@dataclass(frozen=True)
class MilkOfferFor:
    """What to propose when the milk of a lot is recorded."""

    code: str


@dataclass(frozen=True)
class MilkOffer:
    """A proposal: the lots that could take this milk, and its figures for those taken."""

    lots: tuple[tuple[str, str, float, bool], ...]
    """Code, name, grams of dry beans it counts on, whether it is proposed to take it."""
    strength: float
    """Grams of dry beans a litre, by the method."""


@dataclass(frozen=True)
class TagsFor:
    """Facts for the tags of these lots."""

    codes: tuple[str, ...]


@dataclass(frozen=True)
class SettingsFor:
    """The settings."""


@dataclass(frozen=True)
class StatusFor:
    """What the status line says."""


@dataclass(frozen=True)
class Status:
    """Saved, reminders and channels, next ring, last copy: each in words, and all truly."""

    saved: str
    channels: str
    channels_ok: bool
    next_ring: str
    copy: str
    warnings: tuple[str, ...] = ()


Question = (
    DyesFor | DyeFor | MaterialsFor | MaterialFor
    | SwatchesFor | SwatchFor | NearFor | CardsFor
    | TrialsFor | TrialFor | TrialNeedsFor | TrialReportFor | TrialTagsFor
    | FindLots | LotRowsFor | StockFor | ShoppingFor | CostFor | MethodPageFor | CautionsFor
    | LotLinesFor | LotSheetFor | TimelineFor | BenchFor | RemindersFor | MethodsFor | MethodFor
    | AmountsFor | MilksFor | MilkOfferFor | TagsFor | SettingsFor | StatusFor | WhatRangFor
    | PictureFor | JoinOfferFor | JoinFor | BathsFor | BathFor | StudioHoursFor
    | CardFor | RecordFor | DaySheetFor | CalendarFor | SaveCalendar | PlacesFor
    | PlanFor | PlannedFor
    | HolidayPlacesFor | HolidayPlaceFor | HolidaysFor
    | ExportFor | NotebookFor | TryNotebook | TryCard
    | CopiesFor | CompareCopy | SharedFor
)  # fmt: skip
Methods = tuple[Method, ...]
Tags = tuple[TagFacts, ...]
