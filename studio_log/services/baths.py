"""Baths and vats: what can be done with them and asked about them, as values."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from studio_log.domain.journal import Act


@dataclass(frozen=True)
class NewBath:
    """Make a bath; the outcome's `code` is its code. `refresh_grams` None: by its kind."""

    kind: str
    name: str = ""
    litres: float | None = None
    refresh_grams: float | None = None
    place: str = ""
    made_at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SetBath:
    """Change a bath, or say that it is finished or is not; None leaves it."""

    code: str
    name: str | None = None
    litres: float | None = None
    refresh_grams: float | None = None
    place: str | None = None
    finished: bool | None = None
    sure: bool = False


@dataclass(frozen=True)
class MarkBath:
    """Write into a bath's journal: one of `bath_acts.MARKABLE`; the others' fields stay empty.

    `grams` None takes the lots' own weight. `planned` None withdraws what was planned.
    """

    code: str
    act: Act
    at: datetime | None = None
    note: str = ""
    readings: Mapping[str, float | str] = field(default_factory=dict)
    lots: tuple[str, ...] = ()
    step: str = ""
    grams: float | None = None
    dipped: timedelta | None = None
    aired: timedelta | None = None
    fed: tuple[str, ...] = ()
    planned: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class BathsFor:
    """The baths, those that stand first; with `lot` those that it used."""

    finished: bool = False
    lot: str = ""


@dataclass(frozen=True)
class BathLine:
    """One bath in a list."""

    code: str
    name: str
    """What it is called: its own name, else its kind."""
    kind: str
    kind_words: str
    litres: float
    place: str
    made_at: datetime
    fresh_since: datetime
    grams: float
    grams_since: float
    uses: int
    refresh_grams: float | None
    refresh_due: bool
    next_exhaust: int | None
    """0 for a fresh dye bath, None for what has no exhausts."""
    ph: float | None
    temperature: float | None
    planned: datetime | None
    use_by: datetime | None
    finished: bool
    lots: tuple[str, ...]
    words: str
    """Its state in a line: kilos through, last pH and heat, what is due."""
    urgent: str
    """What is due in words, "" for nothing."""


@dataclass(frozen=True)
class BathFor:
    """One bath, whole."""

    code: str


@dataclass(frozen=True)
class DiaryLine:
    """One line of a bath's diary, for reading."""

    number: int
    at: datetime
    written: datetime
    act: str
    words: str
    readings: Mapping[str, float | str]
    lots: tuple[str, ...]
    step: int | None
    grams: float | None
    exhaust: int | None
    note: str
    taken_back: bool
    corrected_by: int | None
    when: str
    """Its moment in words."""


@dataclass(frozen=True)
class BathPage:
    """Everything about one bath."""

    line: BathLine
    facts: tuple[str, ...]
    """Sentences: what went through, what it wants, what it should measure."""
    warnings: tuple[str, ...]
    """What the last readings say against it."""
    lots: tuple[tuple[str, str], ...]
    """Code and name of every lot that used it."""
    diary: tuple[DiaryLine, ...]
    cautions: tuple[str, ...]
    vat: bool
    warms: bool
    undo: str
    """What undo would take back, "" if nothing."""
    redo: str
