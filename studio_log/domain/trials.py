"""A trial: one question put to cloth, worked out from its own journal and nothing else.

Its units are pieces of cloth, one for each arm, block and replicate, with a coded tag, a place in
the order of dipping and one in the order of reading. Both orders, drawn from a seed, stand in
its first entry, so that no later way of drawing changes them. From the first reading until the
unveiling only tags are shown; what was seen cannot be unseen, so unveiling is not taken back.
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from typing import Any, Final, Literal

from studio_log.domain.errors import Refusal
from studio_log.domain.folding import folded
from studio_log.domain.journal import Act, Entry
from studio_log.domain.number_text import plain
from studio_log.language.words import tr, tr_later
from studio_log.science.colour.lab import Lab

Way = Literal["forwards", "backwards"]
WAYS: Final[tuple[Way, ...]] = ("forwards", "backwards")
"""Forwards: all soyed together, each age dyed on a day of its own. Backwards: soyed on days of
their own, so that all ages meet one bath on one day."""
MOST_DAYS: Final = 3_650
FIRST_YEAR, LAST_YEAR = 1900, 2200
"""What a journal from elsewhere is believed."""
MISSING: Final = tr_later("There is no such trial. `trial list` shows every one.")
Cell = tuple[int, int]
"""Number of an arm and of a block, both from 1."""


@dataclass(frozen=True)
class Measure:
    """What is read of each piece: its sign on axes, its words, what it lies between."""

    sign: str
    words: str
    low: float
    high: float


MEASURES: Final[Mapping[str, Measure]] = {
    "chroma": Measure("C*", tr_later("chroma C*"), 0.0, 200.0),
    "lightness": Measure("L*", tr_later("lightness L*"), 0.0, 110.0),
    "strength": Measure("K/S", tr_later("strength K/S"), 0.0, 100.0),
    "eye": Measure(tr_later("by eye"), tr_later("depth by eye, 0 to 10"), 0.0, 10.0),
}


@dataclass(frozen=True)
class Arm:
    """What one part of the cloth undergoes: a cure age in days, or something that has a name."""

    number: int
    age_d: float | None = None
    name: str = ""

    @property
    def words(self) -> str:
        """Its name, or its age: "30 d"."""
        return self.name or tr("{days} d", days=plain(self.age_d or 0.0, 1))


@dataclass(frozen=True)
class Unit:
    """One piece of cloth of the trial; `dip` and `read` are its places in the two orders."""

    number: int
    arm: int
    block: int
    replicate: int
    tag: str
    dip: int
    read: int

    @property
    def cell(self) -> Cell:
        """Arm and block."""
        return self.arm, self.block


@dataclass(frozen=True)
class UnitReading:
    """What was read of one piece; `blind`: before anything was unveiled."""

    entry: int
    at: datetime
    value: float | None
    lab: Lab | None
    two_u: float | None
    blind: bool
    note: str = ""


@dataclass(frozen=True)
class Unveiling:
    """When the tags were told from each other; `broken`: before all was read, and why."""

    entry: int
    at: datetime
    broken: bool
    note: str = ""
    unread: int = 0


@dataclass(frozen=True)
class Trial:
    """A trial as its journal tells it; no clock in it."""

    code: str
    made_at: datetime
    question: str
    arms: tuple[Arm, ...]
    blocks: tuple[str, ...]
    """Names of the batches or lots."""
    replicates: int
    units: tuple[Unit, ...]
    seed: int
    way: Way
    day: date
    """Forwards: when the cloth is dry. Backwards: when all is dyed."""
    lead_d: int
    """Days from the soak of the beans until the cloth is dry."""
    measure: str
    control: int | None = None
    """Number of the arm that the others are held against, None where there is none."""
    lots: Mapping[Cell, str] = field(default_factory=dict)
    swatches: Mapping[int, str] = field(default_factory=dict)
    """By the number of a unit."""
    soyed: Mapping[Cell, datetime] = field(default_factory=dict)
    dyed: Mapping[Cell, datetime] = field(default_factory=dict)
    readings: Mapping[int, UnitReading] = field(default_factory=dict)
    """The latest of each unit, by its number."""
    unveiling: Unveiling | None = None
    ended: bool = False
    voided: bool = False
    answered: frozenset[str] = frozenset()
    """Tails of the keys of reminders that the dyer has seen."""

    @property
    def cells(self) -> tuple[Cell, ...]:
        """Every arm of every block."""
        return tuple(dict.fromkeys(unit.cell for unit in self.units))

    @property
    def veiled(self) -> bool:
        """Whether only tags are to be shown: reading has begun, and nothing is unveiled."""
        return bool(self.readings) and self.unveiling is None

    @property
    def live(self) -> bool:
        """Whether it still goes on."""
        return not (self.ended or self.voided)

    def arm(self, number: int) -> Arm:
        """Give an arm by its number."""
        return self.arms[number - 1]

    def block_words(self, number: int) -> str:
        """Give the name of a block; one that is only a number is a batch."""
        name = self.blocks[number - 1]
        return tr("batch {name}", name=name) if name.isdigit() else name

    def unit(self, tag: str) -> Unit:
        """Give the unit of a tag, typed or read by a scanner: "417", "T26-001-417"."""
        plain_tag = tag.strip().upper().removeprefix(f"{self.code}-")
        for unit in self.units:
            if unit.tag == plain_tag:
                return unit
        raise Refusal(
            tr("{code} has no tag “{tag}”. Nothing was changed; look at the cloth again.",
               code=self.code, tag=tag.strip()[:24])
        )  # fmt: skip

    @property
    def unread(self) -> tuple[Unit, ...]:
        """The units without a reading of their own, in the order of reading."""
        left = [unit for unit in self.units if unit.number not in self.readings]
        return tuple(sorted(left, key=lambda one: one.read))


def trial_from(entries: Iterable[Entry]) -> Trial:
    """Give the trial as its journal tells it; Refusal where that does not read."""
    return folded(entries, Act.TRIAL_NEW, _made, _after, missing=MISSING)


def _after(trial: Trial, entry: Entry) -> Trial:
    return _ACTS[entry.act](trial, entry)


def _made(entry: Entry) -> Trial:
    data = entry.data
    arms = tuple(
        Arm(number, _age(one.get("age")), str(one.get("name", "")))
        for number, one in enumerate(data["arms"], 1)
    )
    blocks = tuple(map(str, data["blocks"]))
    units = tuple(
        Unit(number, int(arm), int(block), int(replicate), str(tag), int(dip), int(read))
        for number, (arm, block, replicate, tag, dip, read) in enumerate(data["units"], 1)
    )
    if any(not (0 < one.arm <= len(arms) and 0 < one.block <= len(blocks)) for one in units):
        raise ValueError("a unit of no arm or block")
    if not 0 <= int(data["lead"]) <= MOST_DAYS:
        raise ValueError("days that are none")
    if data["way"] not in WAYS or data["measure"] not in MEASURES or not units:
        raise ValueError("a trial of no known way or measure")
    return Trial(
        entry.subject, entry.at, str(data["question"]), arms, blocks, int(data["replicates"]),
        units, int(data["seed"]), data["way"], _day(data["day"]),
        int(data["lead"]), data["measure"], _control(arms, data.get("control")),
        ended=bool(data.get("ended")),
    )  # fmt: skip


def control_of(arms: Sequence[Arm]) -> int | None:
    """Give the number of the control where none was named: age 0, else the first without an age."""
    zero = next((one.number for one in arms if one.age_d == 0), None)
    return zero or next((one.number for one in arms if one.age_d is None), None)


def _control(arms: Sequence[Arm], said: Any) -> int | None:
    if said is None:
        return control_of(arms)
    if not 0 < int(said) <= len(arms):
        raise ValueError("a control of no arm")
    return int(said)


def _age(value: Any) -> float | None:
    age = None if value is None else float(value)
    if age is not None and not 0 <= age <= MOST_DAYS:
        raise ValueError("an age that is none")
    return age


def _day(text: str) -> date:
    day = date.fromisoformat(text)
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ValueError("a day of no trial")
    return day


def _cell(trial: Trial, arm: Any, block: Any) -> Cell:
    cell = int(arm), int(block)
    if cell not in trial.cells:
        raise ValueError("a cell of no trial")
    return cell


def _number(trial: Trial, unit: Any) -> int:
    """Give the number of a unit that there is."""
    number = int(unit)
    if not 0 < number <= len(trial.units):
        raise ValueError("a unit of no trial")
    return number


def _figure(value: Any) -> float | None:
    found = None if value is None else float(value)
    if found is not None and not math.isfinite(found):
        raise ValueError("a figure that is none")
    return found


def _set(trial: Trial, entry: Entry) -> Trial:
    data = dict(entry.data)
    if "day" in data:
        data["day"] = _day(data["day"])
    if "control" in data:
        data["control"] = _control(trial.arms, data["control"])
    return replace(trial, **{name: data[name] for name in ("question", "day", "ended", "control")
                             if name in data})  # fmt: skip


def _given(trial: Trial, entry: Entry) -> Trial:
    """Take over which lots and swatches belong to the units."""
    data = entry.data
    lots = {_cell(trial, arm, block): str(lot) for arm, block, lot in data.get("lots", ())}
    swatches = {_number(trial, unit): str(code) for unit, code in data.get("swatches", ())}
    return replace(trial, lots={**trial.lots, **lots}, swatches={**trial.swatches, **swatches})


def _done(trial: Trial, entry: Entry) -> Trial:
    cells = {_cell(trial, arm, block): entry.at for arm, block in entry.data["cells"]}
    if entry.data["what"] == "soy":
        return replace(trial, soyed={**trial.soyed, **cells})
    return replace(trial, dyed={**trial.dyed, **cells})


def _read(trial: Trial, entry: Entry) -> Trial:
    figures = {name: _figure(value) for name, value in entry.readings.items()}
    lab = Lab(*(figures[one] or 0.0 for one in "Lab")) if "L" in figures else None
    reading = UnitReading(
        entry.number, entry.at, figures.get("value"), lab, figures.get("two_u"),
        trial.unveiling is None, entry.note,
    )  # fmt: skip
    number = _number(trial, entry.data["unit"])
    return replace(trial, readings={**trial.readings, number: reading})


def _unveiled(trial: Trial, entry: Entry) -> Trial:
    if trial.unveiling is not None:
        return trial
    broken, unread = bool(entry.data.get("broken")), int(entry.data.get("unread", 0))
    return replace(trial, unveiling=Unveiling(entry.number, entry.at, broken, entry.note, unread))


def _remarked(trial: Trial, entry: Entry) -> Trial:
    seen = entry.data.get("seen")
    return replace(trial, answered=trial.answered | {str(seen)}) if seen else trial


def _void(trial: Trial, _entry: Entry) -> Trial:
    return replace(trial, voided=True)


def _same(trial: Trial, _entry: Entry) -> Trial:
    return trial


_ACTS: Final[Mapping[Act, Callable[[Trial, Entry], Trial]]] = {
    Act.TRIAL_SET: _set,
    Act.TRIAL_UNITS: _given,
    Act.TRIAL_ARM: _done,
    Act.TRIAL_READ: _read,
    Act.TRIAL_UNVEIL: _unveiled,
    Act.NOTE: _remarked,
    Act.VOID: _void,
    Act.PRINTED: _same,
}
