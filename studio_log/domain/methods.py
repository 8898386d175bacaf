"""A written procedure: ordered steps with their windows, amounts, cautions and source."""

from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum


class StepKind(StrEnum):
    """What sort of work a step is; decides its hue, its shape and its rules."""

    BEANS = "beans"
    MILK = "milk"
    SOAK = "soak"
    SPIN = "spin"
    DRY = "dry"
    DIP = "dip"
    CURE = "cure"
    SCOUR = "scour"
    RINSE = "rinse"
    HAND = "hand"


@dataclass(frozen=True)
class Spread:
    """Earliest, aim and latest length of a step; earliest <= aim <= latest."""

    earliest: timedelta
    aim: timedelta
    latest: timedelta


@dataclass(frozen=True)
class Gap:
    """How soon after the step before; `most` None means it may wait without limit.

    `at_once` means that ending the step before starts this one.
    """

    at_once: bool = False
    least: timedelta = timedelta(0)
    aim: timedelta = timedelta(0)
    most: timedelta | None = None
    after: str = ""
    """What the limit counts from, in words: "lifting", "straining"."""


@dataclass(frozen=True)
class Tending:
    """A small act inside a long step: offsets from its start, then an interval."""

    act: str
    """What to do, as a short order: "Stir"."""
    done: str
    """What the button says: "Stirred"."""
    offsets: tuple[timedelta, ...]
    every: timedelta | None


@dataclass(frozen=True)
class AskDry:
    """When to ask "is it dry?": offsets from hanging, then an interval while awake."""

    offsets: tuple[timedelta, ...]
    every: timedelta


class Basis(StrEnum):
    """What an amount is worked out from."""

    WOF = "wof"  # per cent of the weight of fibre -> grams
    PER_LITRE = "per_litre"  # litres such that `of` grams give `value` grams a litre -> litres
    TIMES_VOLUME = "times_volume"  # `value` times the dry volume of `of` -> litres
    PARTS = "parts"  # `value` parts water on one part of `of`, the whole -> litres
    PER_KG = "per_kg"  # `value` litres a kilogram of cloth -> litres
    PER_AREA = "per_area"  # `value` grams a square metre of cloth -> grams
    IN_BATH = "in_bath"  # `value` grams in each litre of `of` -> grams
    TIMES_WEIGHT = "times_weight"  # `value` times the grams of `of` -> grams
    FIXED = "fixed"  # `value` of `unit`


@dataclass(frozen=True)
class AmountRule:
    """How much of a material a step takes."""

    slug: str
    """Name by which other amounts refer to this one: "beans"."""
    title: str
    """What it is, on screen: "dry soybeans"."""
    basis: Basis
    value: float
    of: str = ""
    """Slug of the amount this one follows, for the bases that follow one."""
    unit: str = ""
    """"g" or "L"; needed for FIXED only."""
    at_least: bool = False
    """True where more does no harm: shown as "0.47 L or more"."""
    cup_grams: float | None = None
    """Grams in a level US cup (236.6 mL), for the kitchen measure and for volumes."""
    vessel: bool = False
    """True for the liquid that a bucket has to hold."""
    editable: bool = True
    note: str = ""
    source: str = "common practice"


@dataclass(frozen=True)
class Reading:
    """Something worth measuring in a step."""

    slug: str
    title: str
    unit: str


@dataclass(frozen=True)
class MethodStep:
    """One thing of a method."""

    slug: str
    title: str
    """As a heading: "First soak"."""
    order: str
    """As an order on a notice: "Lay the cloth in the milk"."""
    end_order: str
    """The order when it ends: "Lift the cloth and spin"."""
    end_done: str
    """What the answering button says: "Lifted"."""
    do: str
    """How it is done, in full sentences."""
    kind: StepKind
    hands_on: timedelta
    lasts: Spread | None
    """None for a cure, whose length is the dyer's view."""
    gap: Gap
    if_late: str
    """What happens if it waits, one sentence."""
    tending: Tending | None = None
    ask_dry: AskDry | None = None
    amounts: tuple[AmountRule, ...] = ()
    readings: tuple[Reading, ...] = ()
    cautions: tuple[str, ...] = ()
    """Slugs of resources/cautions.toml."""
    coat: int | None = None
    optional: bool = False
    makes_milk: bool = False
    uses_milk: bool = False


@dataclass(frozen=True)
class CureView:
    """One school's view of how long a cure takes, in days."""

    days: int
    title: str
    source: str


@dataclass(frozen=True)
class CurePlan:
    """Marks of the rest before use, in days from fully dry."""

    ready_title: str
    """"ready for immersion" or "ready for painting"."""
    default_days: int
    views: tuple[CureView, ...]
    paint_best_days: int | None = None
    """Last day of the best time for painting; the cloth resists paint from then on."""


@dataclass(frozen=True)
class Method:
    """A method at one version; a lot keeps the version it joined."""

    slug: str
    version: int
    title: str
    school: str
    summary: str
    source: str
    steps: tuple[MethodStep, ...]
    cure: CurePlan | None = None
    brings: tuple[str, ...] = ()
    """What this method brings near the cloth, in words of the rules: "alkali", "soy"."""
    spoiled_by: tuple[str, ...] = ()
    """What must not come after it, once it is done: "alkali"."""
    text: str = ""
    """The TOML it was read from, kept so that the version can be written out again."""

    @property
    def key(self) -> tuple[str, int]:
        """Slug and version: what a lot joins."""
        return (self.slug, self.version)
