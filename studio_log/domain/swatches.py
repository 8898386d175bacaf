"""Swatches: a sample cut from a lot at a moment, with its colour readings and test grades.

A swatch has a journal of its own, like a bath. It may be cut in halves: the master half rests in
the dark, the test half is worn by light, wash and rubbing. Its colour is the master half's.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Final, Literal

from studio_log.domain.errors import Refusal
from studio_log.domain.folding import folded
from studio_log.domain.journal import Act, Entry
from studio_log.language.words import tr_later
from studio_log.science.colour.lab import Lab

Half = Literal["master", "test", "adjacent", "stained"]
Source = Literal["instrument", "photo", "relative"]

HALVES: Final[tuple[Half, ...]] = ("master", "test", "adjacent", "stained")
"""Which cloth a reading is of: a half of the swatch, or the undyed cloth that lies beside it in a
wash or a rubbing, "adjacent" before and "stained" after."""
SOURCES: Final[tuple[Source, ...]] = ("instrument", "photo", "relative")
"""Where a colour comes from, the surest first: "relative" is a photo without a target."""
WHITES: Final = ("D65/2", "D65/10")
"""Daylight, and the observer: 2 degree for photos, 10 for reflectance."""
TESTS: Final = ("light", "wash", "rub-dry", "rub-wet", "perspiration", "other")
SCALES: Final = ("change", "staining", "blue-wool")
GREY_STEPS: Final = ("5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1")
"""Steps of the grey scales of ISO 105-A02 and A03, the best first."""
BLUE_STEPS: Final = tuple(str(step) for step in range(8, 0, -1))
"""The blue wools of ISO 105-B02, the most fast first (from memory)."""

MISSING: Final = tr_later("There is no such swatch. `swatch list` shows every one.")


@dataclass(frozen=True)
class Reading:
    """One reading of a colour, CIELAB under `white`. `two_u` is in CIEDE2000; None: not known."""

    entry: int
    at: datetime
    lab: Lab
    source: Source
    half: Half = "master"
    white: str = "D65/2"
    two_u: float | None = None
    method: str = ""
    """How it was come by: "root-polynomial", the instrument's name."""
    warnings: tuple[str, ...] = ()
    reflectance: tuple[float, ...] = ()
    """31 fractions, 400 to 700 nm by 10; () where there is no spectrum."""
    note: str = ""
    spots: tuple[Lab, ...] = ()
    """Where several spots of one cloth were read: their colours; `lab` is their mean."""
    spectra: tuple[tuple[float, ...], ...] = ()
    """Of each spot, as `reflectance`; () where there are none."""
    noise: float = 0.0
    """Spread that even grey shows in the same photo, CIEDE2000; 0: not known."""


@dataclass(frozen=True)
class Grade:
    """A grade of one test: a step of its scale; `estimated` from colours, else by eye."""

    entry: int
    at: datetime
    test: str
    grade: str
    scale: str = "change"
    estimated: bool = False
    length: str = ""
    """How long or often, in the dyer's words: "4 weeks", "3 washes"."""
    figure: float | None = None
    """Of an estimated grade the figure that its step was read from, None where it is not known."""
    readings: tuple[int, ...] = ()
    """Of an estimated grade the entries of the two colours, before and after."""
    note: str = ""


@dataclass(frozen=True)
class Remark:
    """A remark, perhaps with a photo, named by the SHA-256 of its file."""

    entry: int
    at: datetime
    note: str
    photo: str = ""


@dataclass(frozen=True)
class Swatch:
    """A swatch as its journal tells it; no clock in it."""

    code: str
    lot: str
    cut_at: datetime
    piece: int | None = None
    """Number of the piece that it was cut from, where that was said."""
    step: int | None = None
    """Number of the step of the lot at which it was cut, None before any."""
    name: str = ""
    place: str = ""
    """Where the master half is kept, or the whole."""
    test_place: str | None = None
    """Where the test half is kept; None where it was not cut in halves."""
    ended: bool = False
    """Kept no longer."""
    voided: bool = False
    readings: tuple[Reading, ...] = ()
    grades: tuple[Grade, ...] = ()
    remarks: tuple[Remark, ...] = ()
    light_begun: datetime | None = None
    """When its test half was hung into the light, None where no light test runs."""
    light_place: str = ""
    answered: frozenset[str] = frozenset()
    """Tails of the keys of reminders that the dyer has seen."""

    @property
    def reading(self) -> Reading | None:
        """The reading that gives its colour: the master half's latest that is not only relative."""
        own = [one for one in self.readings if one.half == "master"]
        whole = [one for one in own if one.source != "relative"]
        return max(whole or own, key=lambda one: (one.at, one.entry), default=None)

    @property
    def tested(self) -> Reading | None:
        """The latest reading of the test half."""
        return self.latest("test")

    @property
    def spots(self) -> Reading | None:
        """The master half's latest reading of several spots, which says how even it is."""
        own = [one for one in self.readings if one.half == "master" and one.spots]
        return max(own, key=lambda one: (one.at, one.entry), default=None)

    def latest(self, half: Half) -> Reading | None:
        """Give the latest reading of a half, or of the cloth beside it."""
        own = [one for one in self.readings if one.half == half]
        return max(own, key=lambda one: (one.at, one.entry), default=None)


def swatch_from(entries: Iterable[Entry]) -> Swatch:
    """Give the swatch as its journal tells it; Refusal where that does not read."""
    found = folded(entries, Act.SWATCH_NEW, _made, _after, missing=MISSING)
    _in_order(found)
    return found


def _made(entry: Entry) -> Swatch:
    return Swatch(entry.subject, cut_at=entry.at, step=entry.step, **entry.data)


def _after(swatch: Swatch, entry: Entry) -> Swatch:
    return _ACTS[entry.act](swatch, entry)


def _in_order(swatch: Swatch) -> None:
    """Refuse readings and grades from before the cut."""
    told = [(one.at, one.entry) for one in swatch.readings]
    told += [(one.at, one.entry) for one in swatch.grades]
    for at, number in told:
        if at < swatch.cut_at:
            raise Refusal(
                f"{swatch.code} was cut later than that (entry {number}). Nothing was changed; "
                "look at the time."
            )


def _read(swatch: Swatch, entry: Entry) -> Swatch:
    figures, data = entry.readings, dict(entry.data)
    lab = Lab(*(float(figures[name]) for name in ("L", "a", "b")))
    two_u = figures.get("two_u")
    reading = Reading(
        entry.number,
        entry.at,
        lab,
        source=data["source"],
        half=data.get("half", "master"),
        white=data.get("white", "D65/2"),
        two_u=None if two_u is None else float(two_u),
        method=data.get("method", ""),
        warnings=tuple(data.get("warnings", ())),
        reflectance=tuple(data.get("reflectance", ())),
        note=entry.note,
        spots=tuple(Lab(*map(float, one)) for one in data.get("spots", ())),
        spectra=tuple(tuple(map(float, one)) for one in data.get("spectra", ())),
        noise=float(data.get("noise", 0.0)),
    )
    return replace(swatch, readings=(*swatch.readings, reading))


def _graded(swatch: Swatch, entry: Entry) -> Swatch:
    data = dict(entry.data)
    grade = Grade(
        entry.number,
        entry.at,
        test=data["test"],
        grade=_step(entry.readings["grade"]),
        scale=data.get("scale", "change"),
        estimated=bool(data.get("estimated")),
        length=data.get("length", ""),
        note=entry.note,
        figure=float(data["figure"]) if "figure" in data else None,
        readings=tuple(map(int, data.get("from", ()))),
    )
    return replace(swatch, grades=(*swatch.grades, grade))


def _step(value: float | str) -> str:
    """Give a grade as it is written: 4.0 typed as a figure is "4"."""
    return f"{value:g}" if isinstance(value, int | float) else value


def _tested(swatch: Swatch, entry: Entry) -> Swatch:
    """Begin a light test, or end it."""
    begun = None if entry.data.get("ended") else entry.at
    return replace(swatch, light_begun=begun, light_place=str(entry.data.get("place", "")))


def _remarked(swatch: Swatch, entry: Entry) -> Swatch:
    if seen := entry.data.get("seen"):
        swatch = replace(swatch, answered=swatch.answered | {str(seen)})
    remark = Remark(entry.number, entry.at, entry.note, str(entry.data.get("photo", "")))
    return replace(swatch, remarks=(*swatch.remarks, remark))


def _set(swatch: Swatch, entry: Entry) -> Swatch:
    return replace(swatch, **entry.data)


def _void(swatch: Swatch, _entry: Entry) -> Swatch:
    return replace(swatch, voided=True)


def _same(swatch: Swatch, _entry: Entry) -> Swatch:
    return swatch


_ACTS: Final[Mapping[Act, Callable[[Swatch, Entry], Swatch]]] = {
    Act.SWATCH_SET: _set,
    Act.SWATCH_READ: _read,
    Act.SWATCH_GRADE: _graded,
    Act.SWATCH_TEST: _tested,
    Act.NOTE: _remarked,
    Act.VOID: _void,
    Act.PRINTED: _same,
}
