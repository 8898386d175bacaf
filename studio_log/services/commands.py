"""Everything a person can ask the studio to do, as frozen values.

`at` None means now. `sure` accepts a doubtful request (a Question). All instants are
aware UTC.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services.baths import MarkBath, NewBath, SetBath
from studio_log.services.card_times import TakeCard
from studio_log.services.copies import BackupTo, RestoreCopy, TakeCopy
from studio_log.services.joins import JoinLots
from studio_log.services.moving import TakeFolder
from studio_log.services.notebooks import TakeBackLots, TakeNotebook
from studio_log.services.pictures import AddPhoto
from studio_log.services.places import ChangePlaces
from studio_log.services.plan import AcceptPlan
from studio_log.services.shared import JoinStudio, RingHere, ShareStudio, UnshareStudio
from studio_log.services.stock import MoveMaterial, NewMaterial, SetMaterial
from studio_log.services.swatches import (
    GradeSwatch,
    LightTest,
    NewSwatch,
    NoteSwatch,
    ReadSwatch,
    SetSwatch,
)
from studio_log.services.trials import (
    DoArm,
    GiveLot,
    GiveSwatch,
    NewTrial,
    NoteTrial,
    ReadTag,
    SetTrial,
    UnveilTrial,
)


@dataclass(frozen=True)
class NewLot:
    """Make a lot; the outcome's `code` is its code."""

    method: str
    name: str
    pieces: tuple[Piece, ...]
    grams: float | None = None
    weighed: str | None = None
    cure_days: int | None = None
    at: datetime | None = None
    place: str = ""
    vessel_litres: float | None = None
    amounts: Mapping[str, float] = field(default_factory=dict)
    sure: bool = False
    vessel: str = ""


@dataclass(frozen=True)
class GoOn:
    """Let a lot go on to a further method."""

    code: str
    method: str
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class Mark:
    """Mark an act on a step: `step` is its number, its slug, or "now"."""

    code: str
    step: str
    act: Act
    at: datetime | None = None
    note: str = ""
    readings: Mapping[str, float | str] = field(default_factory=dict)
    put_off: timedelta | None = None
    until_morning: bool = False
    sure: bool = False


@dataclass(frozen=True)
class SetLot:
    """Change a lot's name, weight, place, cure view, vessel or amounts; None leaves it."""

    code: str
    name: str | None = None
    grams: float | None = None
    weighed: str | None = None
    place: str | None = None
    cure_days: int | None = None
    vessel_litres: float | None = None
    amounts: Mapping[str, float] = field(default_factory=dict)
    sure: bool = False
    vessel: str | None = None
    seen: int | None = None
    """The last entry of the lot that stood on the form; a later change is asked about."""


@dataclass(frozen=True)
class SplitLot:
    """Move pieces (by number) into a new lot; the outcome's `code` is the new code."""

    code: str
    pieces: tuple[int, ...]
    name: str
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class Undo:
    """Take back the latest entry still standing, or the one numbered `entry`."""

    code: str
    entry: int | None = None
    sure: bool = False


@dataclass(frozen=True)
class Redo:
    """Restore what was taken back last."""

    code: str
    sure: bool = False


@dataclass(frozen=True)
class Correct:
    """Correct an earlier entry by a later one."""

    code: str
    entry: int
    at: datetime | None = None
    note: str | None = None
    readings: Mapping[str, float | str] = field(default_factory=dict)
    sure: bool = False
    seen: int | None = None
    """The last entry of the journal that stood on the form; a later correction is asked about."""


@dataclass(frozen=True)
class NewMilk:
    """Record a batch of milk for lots; the outcome's `code` is its code."""

    lots: tuple[str, ...] = ()
    beans_grams: float | None = None
    litres: float | None = None
    strength: float | None = None
    """Grams of dry beans a litre."""
    cold: bool = True
    celsius: float | None = None
    """°C where it stands, where that was measured."""
    made_at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SetMilk:
    """Change a milk: its place, the lots that it serves, or that it is used up."""

    code: str
    cold: bool | None = None
    celsius: float | None = None
    lots: tuple[str, ...] | None = None
    finished: bool | None = None
    sure: bool = False


@dataclass(frozen=True)
class AnswerReminder:
    """Answer a reminder: "done", "putoff" or "skip"; the studio finds the act that fits."""

    key: str
    answer: str
    at: datetime | None = None
    put_off: timedelta | None = None
    until_morning: bool = False
    note: str = ""
    sure: bool = False


@dataclass(frozen=True)
class RaiseDue:
    """Raise every reminder that is due and not raised, and ring unanswered ones again."""


@dataclass(frozen=True)
class Hush:
    """Do not disturb for a span or until the next morning; with neither, disturb again."""

    span: timedelta | None = None
    until_morning: bool = False


@dataclass(frozen=True)
class NoteShown:
    """Record that a further channel, such as the tray, showed these reminders."""

    keys: tuple[str, ...]
    channel: str
    words: str = ""


@dataclass(frozen=True)
class NoteTagsPrinted:
    """Record that tags were printed."""

    codes: tuple[str, ...]


@dataclass(frozen=True)
class ChangeSettings:
    """Change settings by name (see services.settings.Settings)."""

    values: Mapping[str, object]


@dataclass(frozen=True)
class ImportMethod:
    """Take a method file into the studio; `text` is its TOML."""

    text: str
    name: str


Command = (
    NewLot | GoOn | Mark | SetLot | SplitLot | Undo | Redo | Correct | NewMilk | SetMilk
    | AnswerReminder | RaiseDue | Hush | NoteShown | NoteTagsPrinted | ChangeSettings | ImportMethod
    | AddPhoto | JoinLots | NewMaterial | MoveMaterial | SetMaterial
    | NewBath | SetBath | MarkBath | ChangePlaces
    | NewSwatch | SetSwatch | ReadSwatch | GradeSwatch | NoteSwatch | LightTest
    | NewTrial | SetTrial | GiveLot | GiveSwatch | DoArm | ReadTag | UnveilTrial | NoteTrial
    | NewBath | SetBath | MarkBath | ChangePlaces | AcceptPlan
    | TakeFolder | TakeNotebook | TakeBackLots | TakeCard
    | TakeCopy | BackupTo | RestoreCopy
    | ShareStudio | JoinStudio | UnshareStudio | RingHere
    | AcceptPlan
)  # fmt: skip


@dataclass(frozen=True)
class Outcome:
    """What a command did: the words for the person, what it touched, a new code if any."""

    words: str = ""
    advice: tuple[str, ...] = ()
    """Things worth knowing at once: "start by 19:40 or after 21:10 …"."""
    lots: frozenset[str] = frozenset()
    milks: frozenset[str] = frozenset()
    baths: frozenset[str] = frozenset()
    swatches: frozenset[str] = frozenset()
    trials: frozenset[str] = frozenset()
    settings: bool = False
    reminders: bool = False
    code: str = ""
    wants_milk: str = ""
    """Code of the lot whose milk is made just now and not recorded yet, or ""."""
    subject: str = ""
    """The lot, milk, bath, swatch or trial that Undo would take this back from, or ""."""
    final: bool = False
    """Whether it is never taken back, so that no undo is offered."""
