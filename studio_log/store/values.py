"""What crosses the store's door: frozen values, never rows. Instants are aware UTC."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from studio_log.domain.search_text import LotSearch

WAITING = "waiting"
RAISED = "raised"
ANSWERED = "answered"
VOID = "void"


@dataclass(frozen=True)
class LotLine:
    """What lists need of one lot, worked out from its journal."""

    code: str
    name: str
    state_hint: str
    """State when it was worked out; "curing" turns to "ready" at `ready_at` by itself."""
    updated_at: datetime
    stage: str = ""
    place: str = ""
    method_slug: str = ""
    method_version: int = 0
    grams: float | None = None
    fibre: str = ""
    """Fibres in words."""
    begun_at: datetime | None = None
    fully_dry_at: datetime | None = None
    ready_at: datetime | None = None
    used_at: datetime | None = None
    ended: bool = False
    """Used, stopped or made void: nothing more is due."""
    search_text: str = ""
    """All that `find` looks through; stored casefolded."""
    last_number: int = 0
    """Number of the last entry this line knows of."""


@dataclass(frozen=True)
class LotQuery:
    """Which lots, in which order, which part of them.

    `states` empty means all. With `now` a curing lot past its `ready_at` counts as ready.
    `find`: every word must be the beginning of a word typed. `order`: "newest" (of codes,
    latest first) or another of domain.search_text.SORTS; `backwards` turns it round.
    """

    states: tuple[str, ...] = ()
    find: str = ""
    search: LotSearch = field(default_factory=LotSearch)
    """What else is asked of them; its `words` and `state` are not looked at here."""
    begun_from: datetime | None = None
    begun_before: datetime | None = None
    now: datetime | None = None
    live_only: bool = False
    order: str = "newest"
    backwards: bool = False
    limit: int = 500
    offset: int = 0


@dataclass(frozen=True)
class LotPage:
    """Part of a list, and how many lots the whole of it has."""

    lines: tuple[LotLine, ...]
    total: int


@dataclass(frozen=True)
class LotsThere:
    """The codes that are found, in order, and how many lots each state would give."""

    codes: tuple[str, ...]
    counts: Mapping[str, int]


@dataclass(frozen=True)
class StepLine:
    """What lists need of one step of a lot."""

    lot: str
    number: int
    order: int
    slug: str
    title: str
    kind: str
    state: str
    start: datetime | None = None
    end: datetime | None = None
    coat: int | None = None


@dataclass(frozen=True)
class ReminderRecord:
    """A reminder and what became of it. `status`: waiting, raised, answered or void."""

    key: str
    subject: str
    """Code of the lot or milk it is about."""
    kind: str
    urgency: str
    due: datetime
    rings_at: datetime
    """When it rings (again)."""
    title: str
    updated_at: datetime
    step: int | None = None
    why: str = ""
    if_late: str = ""
    status: str = WAITING
    raised_at: datetime | None = None
    """When it rang first."""
    raise_count: int = 0
    last_rung_at: datetime | None = None
    answered_at: datetime | None = None
    answer: str = ""
    void_at: datetime | None = None
    void_why: str = ""
    channels: tuple[str, ...] = ()
    """The channels that showed it."""
    retold: bool = False
    """Whether it was told late, after the program had been away."""


@dataclass(frozen=True)
class MilkLine:
    """What lists need of one batch of milk. Litres, grams of beans to the litre."""

    code: str
    made_at: datetime | None = None
    litres: float | None = None
    strength_g_per_l: float | None = None
    place: str = ""
    use_by: datetime | None = None
    lots: tuple[str, ...] = ()
    finished: bool = False


@dataclass(frozen=True)
class SwatchLine:
    """What lists need of one swatch. Its colour is CIELAB under `white`; None: not read yet."""

    code: str
    lot: str
    cut_at: datetime
    piece: int | None = None
    step: int | None = None
    name: str = ""
    place: str = ""
    test_place: str | None = None
    chain: str = ""
    """Titles of the methods that the lot had walked by then, a line each."""
    read_at: datetime | None = None
    lightness: float | None = None
    a: float | None = None
    b: float | None = None
    two_u: float | None = None
    source: str = ""
    white: str = ""
    grades: str = "{}"
    """JSON: the latest grade of each test."""
    ended: bool = False
    search_text: str = ""
    """All that `find` looks through; stored casefolded."""
    last_number: int = 0


@dataclass(frozen=True)
class SwatchQuery:
    """Which swatches, in which order (of store.swatches.ORDERS), which part of them.

    Every one of `words`, casefolded, must stand somewhere in a swatch's text.
    """

    words: tuple[str, ...] = ()
    lots: tuple[str, ...] = ()
    ended: bool = False
    read_only: bool = False
    order: str = "newest"
    limit: int = 500
    offset: int = 0


@dataclass(frozen=True)
class SwatchLines:
    """Part of a list of swatches, and how many the whole of it has."""

    lines: tuple[SwatchLine, ...]
    total: int


@dataclass(frozen=True)
class ColourBound:
    """An ellipsoid about L*, a*, b*, by its half axes in L* and in a*b*; and whether of all.

    Those kept no longer are in it with `ended`.
    """

    centre: tuple[float, float, float]
    light: float
    across: float
    ended: bool = False


@dataclass(frozen=True)
class MethodText:
    """One version of a method as it was written (TOML)."""

    slug: str
    version: int
    title: str
    text: str


@dataclass(frozen=True)
class DeliveryRecord:
    """What became of one attempt to show a reminder by one channel."""

    reminder_key: str
    at: datetime
    channel: str
    ok: bool
    words: str = ""
    id: int = 0
    """Given by the store; 0 means not written yet."""
