"""The dryings that a journal tells of: what was worked out for each, and what it took."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import timedelta
from typing import Final

from studio_log.domain.drying_factor import Dried
from studio_log.domain.drying_time import Hanging, fibre_of, worked_out
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Entry, standing
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.number_text import plain
from studio_log.domain.room_text import ROOM_AIR_M_S, Room
from studio_log.domain.spin_text import Spun
from studio_log.language.words import tr
from studio_log.science.bath_sums import pick_up_percent
from studio_log.science.drying import FIBRES, regain_of
from studio_log.science.drying_series import Weighing, course_of
from studio_log.science.water_held import weighed

ROOM_HEAT: Final = "room-temperature"
ROOM_HUMIDITY: Final = "room-humidity"
WET_WEIGHT: Final = "wet-weight"
"""Names of the readings that a drying is worked out from: °C, per cent, grams of wet cloth."""

ROOM_AT_REST: Final = 60.0
"""Humidity in per cent of the room in which cloth is weighed dry: where nobody read it."""

Readings = Mapping[str, float | str]


def logged_dryings(lot: Lot, entries: Iterable[Entry]) -> Iterator[Dried]:
    """Give the dryings of a lot that ended and whose room and wet weight were read.

    `entries` is the lot's journal, as written. What cannot be worked out is passed over.
    """
    read = _readings(entries)
    for step in lot.steps:
        if step.spec.kind is StepKind.DRY and step.start is not None and step.end is not None:
            hanging = _hanging(lot, step, read)
            if hanging is None:
                continue
            try:
                yield Dried(step.end, worked_out(hanging), step.end - step.start)
            except Refusal:  # a room of 99 %: it was read, yet nothing can be worked out
                continue


def hanging_of(lot: Lot, step: LotStep, entries: Iterable[Entry]) -> Hanging | None:
    """Give the cloth of a drying as its journal tells it, None where something was not read.

    Needed are the weight and size of the lot, its wet weight after the spin, and the room.
    """
    return _hanging(lot, step, _readings(entries))


def hanging_from(lot: Lot, step: LotStep) -> Hanging | None:
    """Give the cloth of a drying from what the lot's own steps have read; as `hanging_of`."""
    return _hanging(lot, step, {one.number: one.read for one in lot.steps})


def weighed_course(lot: Lot, step: LotStep, entries: Iterable[Entry]) -> timedelta | None:
    """Give how long after its start a drying ends, from its own weighings alone.

    Three `wet-weight` readings of the step tell it, while the surface is still wet. None before, or
    where the lot's dry weight is not known. Right to about a fifth.
    """
    grams = step.grams_used or lot.grams
    if grams is None or step.start is None:
        return None
    humidity = _number(readings_of(entries, step), ROOM_HUMIDITY)
    fibre = fibre_of(lot.pieces[0].fibre if lot.pieces else "")
    bone_dry = grams / (1 + regain_of(fibre, ROOM_AT_REST))
    try:
        course = course_of(
            _weighings(step, entries),
            bone_dry,
            critical=FIBRES[fibre].critical,
            regain=regain_of(fibre, ROOM_AT_REST if humidity is None else humidity),
        )
    except ValueError:  # a weight of nothing, or air of 130 %: a slip of the hand
        return None
    return None if course is None else timedelta(minutes=course.dry_minute)


def _weighings(step: LotStep, entries: Iterable[Entry]) -> list[Weighing]:
    """Give what the cloth of a drying weighed, in minutes from its start."""
    found = []
    for entry in standing(entries):
        grams = _number(entry.readings, WET_WEIGHT) if entry.step == step.number else None
        if grams is not None and step.start is not None and entry.at >= step.start:
            found.append(Weighing((entry.at - step.start) / timedelta(minutes=1), grams))
    return sorted(found, key=lambda one: one.minute)


def readings_of(entries: Iterable[Entry], step: LotStep) -> Readings:
    """Give what stands read in one step, the latest of a name."""
    return _readings(entries).get(step.number, {})


def _readings(entries: Iterable[Entry]) -> dict[int, dict[str, float | str]]:
    """Give what was read in each step, the latest of a name."""
    found: dict[int, dict[str, float | str]] = {}
    for entry in standing(entries):
        if entry.step is not None:
            found.setdefault(entry.step, {}).update(entry.readings)
    return found


def _hanging(lot: Lot, step: LotStep, read: Mapping[int, Readings]) -> Hanging | None:
    grams, area = step.grams_used or lot.grams, lot.area_m2
    here = read.get(step.number, {})
    heat, humidity = _number(here, ROOM_HEAT), _number(here, ROOM_HUMIDITY)
    spun = _spun(lot, step, read, grams)
    if not grams or not area or heat is None or humidity is None or spun is None:
        return None
    fibre = lot.pieces[0].fibre if lot.pieces else "cotton"
    return Hanging(grams / area, spun, Room(heat, humidity, ROOM_AIR_M_S), fibre=fibre)


def _spun(
    lot: Lot, step: LotStep, read: Mapping[int, Readings], grams: float | None
) -> Spun | None:
    """Give the water that the cloth was hung with, from its wet weight here or at the spin."""
    before = lot.steps[lot.place_of(step.number) - 1] if lot.place_of(step.number) else step
    spin = before.number if before.spec.kind is StepKind.SPIN else step.number
    wet = _number(read.get(step.number, {}), WET_WEIGHT)
    wet = _number(read.get(spin, {}), WET_WEIGHT) if wet is None else wet
    if wet is None or not grams:
        return None
    percent = pick_up_percent(grams, wet)
    try:
        words = tr("{part} % of its weight in water, weighed", part=plain(percent, 1))
        return Spun(weighed(percent / 100), words)
    except ValueError:  # lighter wet than dry, or six times as heavy: a slip of the scale
        return None


def _number(read: Readings, name: str) -> float | None:
    value = read.get(name)
    return float(value) if isinstance(value, int | float) else None
