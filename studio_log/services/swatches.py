"""The words of swatches: what can be done (`swatch_acts`) and asked (`swatch_reads`)."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Final

from studio_log.domain.swatches import Swatch
from studio_log.language.words import tr_later
from studio_log.science.colour.lab import Lab

TEST_WORDS: Final[Mapping[str, str]] = {
    "light": tr_later("daylight"),
    "wash": tr_later("wash"),
    "rub-dry": tr_later("dry rubbing"),
    "rub-wet": tr_later("wet rubbing"),
    "perspiration": tr_later("perspiration"),
    "other": tr_later("other test"),
}
SCALE_WORDS: Final[Mapping[str, str]] = {
    "change": tr_later("change, grey scale"),
    "staining": tr_later("staining, grey scale"),
    "blue-wool": tr_later("blue wool"),
}


@dataclass(frozen=True)
class NewSwatch:
    """Cut a swatch from a lot; the outcome's `code` is its code.

    `step` None: the step at which the lot stood then. `test_place` None: not cut in halves.
    """

    lot: str
    piece: int | None = None
    step: int | None = None
    name: str = ""
    place: str = ""
    test_place: str | None = None
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SetSwatch:
    """Change a swatch's name, where its halves are kept, or that it is kept no longer.

    `whole` True: it has no test half any more.
    """

    code: str
    name: str | None = None
    place: str | None = None
    test_place: str | None = None
    whole: bool = False
    ended: bool | None = None
    sure: bool = False


@dataclass(frozen=True)
class ReadSwatch:
    """Write down a colour of a swatch: CIELAB under `white`, from one of `domain.swatches.SOURCES`.

    `two_u` is in CIEDE2000; `method` says how it was come by; `reflectance` are 31 fractions or ().
    Where `spots` of one cloth were read, three or more, their mean is the colour and `lab` is None;
    `spectra` has one for each or none, `noise` is what even grey spreads by in the same photo.
    """

    code: str
    lab: Lab | None
    source: str
    half: str = "master"
    white: str = "D65/2"
    two_u: float | None = None
    method: str = ""
    warnings: tuple[str, ...] = ()
    reflectance: tuple[float, ...] = ()
    spots: tuple[Lab, ...] = ()
    spectra: tuple[tuple[float, ...], ...] = ()
    noise: float = 0.0
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class GradeSwatch:
    """Write down the grade of a test; `grade` "" estimates it from colours that were read.

    The change comes from those of both halves, staining from those of the cloth beside it.
    """

    code: str
    test: str
    grade: str = ""
    scale: str = "change"
    length: str = ""
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class LightTest:
    """Begin the window light test of a swatch's test half, or end it."""

    code: str
    place: str = ""
    ended: bool = False
    note: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class NoteSwatch:
    """Write down a remark, with a picture if `path` or `content` is given."""

    code: str
    note: str = ""
    path: Path | None = None
    content: bytes = b""
    name: str = ""
    at: datetime | None = None
    sure: bool = False


@dataclass(frozen=True)
class SwatchesFor:
    """Swatches that hold every word of `find`; `lots` empty means those of all lots.

    `ages`: with the age of the cure of each, which reads the journals of their lots.
    `order`: newest, code, lot, cut, light or dark. `limit` lines from `offset` on are given.
    """

    find: str = ""
    lots: tuple[str, ...] = ()
    ended: bool = False
    read_only: bool = False
    order: str = "newest"
    limit: int = 500
    offset: int = 0
    ages: bool = False


@dataclass(frozen=True)
class SwatchShown:
    """One swatch as a list shows it. `lab` None: its colour was not read yet."""

    code: str
    lot: str
    lot_name: str
    name: str
    cut_at: datetime
    cut_words: str
    chain: tuple[str, ...]
    """Titles of the methods that the lot had walked by then."""
    place: str
    test_place: str | None
    lab: Lab | None
    white: str
    source: str
    two_u: float | None
    shown: str
    """Its colour as "#rrggbb", "" where none was read."""
    beyond: bool
    """Whether a screen cannot show it, and `shown` is only near."""
    colour_words: str
    """"L* 52.1, a* 31.8, b* 24.0 · photo with target · 2u 2.4"."""
    grades: Mapping[str, str] = field(default_factory=dict, hash=False)
    """The latest grade of each test ("wash", "wash staining"), and its "evenness"."""
    ended: bool = False
    piece: int | None = None
    step: int | None = None
    age_d: float | None = None
    """Days that its lot had cured when it was cut; None before any, or where it was not asked."""


@dataclass(frozen=True)
class SwatchesThere:
    """Part of the list, and how many there are in all."""

    lines: tuple[SwatchShown, ...]
    total: int


@dataclass(frozen=True)
class SwatchFor:
    """One swatch, whole."""

    code: str


@dataclass(frozen=True)
class Told:
    """One line of a swatch's diary, in words."""

    entry: int
    at: datetime
    when: str
    words: str
    shown: str = ""
    """The colour as "#rrggbb", where it is a reading."""


@dataclass(frozen=True)
class SwatchPage:
    """All about one swatch."""

    line: SwatchShown
    swatch: Swatch
    piece_words: str
    step_words: str
    halves: str
    chain: tuple[str, ...]
    """The methods by then, each with its days: "soy binder for immersion, 2 to 9 June 2026"."""
    apart_words: str
    """How far the test half is from the master half, "" where that cannot be said."""
    grades: tuple[str, ...]
    """The latest grade of each test and scale, in words."""
    even_words: str
    """How even its colour is over its spots, "" where none were read."""
    age_words: str
    """How old the cure was when it was cut, "" before any."""
    history: tuple[Told, ...]
    """The latest first."""
    photos: tuple[Mapping[str, str], ...]
    """Of each: file, name, note, when."""
    undo: str
    redo: str


@dataclass(frozen=True)
class CardsFor:
    """What stands on the cards of these swatches: answered with CardFacts, in order."""

    codes: tuple[str, ...]


@dataclass(frozen=True)
class NearFor:
    """The swatches nearest to a colour; at most so many, at most `within` apart (None: any)."""

    lab: Lab
    most: int = 12
    within: float | None = None
    white: str = "D65/2"
    ended: bool = False
    but: str = ""
    """The code of one that is left out: the swatch whose colour is looked for."""


@dataclass(frozen=True)
class NearLine:
    """A swatch and how far its colour is from the one looked for, CIEDE2000."""

    apart: float
    line: SwatchShown
    doubt: str
    """Why the difference may say less than it seems to: "" where nothing stands against it."""
