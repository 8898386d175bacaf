"""What a running step is likely to do, said from what was read in it: the soak, the drying."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.drying_time import drying_time
from studio_log.domain.dryings import (
    ROOM_HUMIDITY,
    Readings,
    hanging_of,
    readings_of,
    weighed_course,
)
from studio_log.domain.errors import Refusal
from studio_log.domain.estimates import Estimate
from studio_log.domain.journal import Entry
from studio_log.domain.lots import Lot, LotStep
from studio_log.domain.methods import StepKind
from studio_log.domain.room_air import damp_warnings
from studio_log.domain.soak_time import soak_time, soaked_words
from studio_log.language.words import tr
from studio_log.present import words
from studio_log.services.desk import Desk
from studio_log.services.drying_reads import DryingFactorFor, drying_factor

WATER_HEAT: Final = "water-temperature"
SOAKED_WEIGHT: Final = "soaked-weight"


def estimate_words(
    desk: Desk, lot: Lot, step: LotStep, entries: tuple[Entry, ...], beans_grams: float | None
) -> str:
    """Say what is likely of a step that runs, "" where nothing was read that tells.

    `beans_grams` is what the step's own amounts say of the dry beans.
    """
    if not step.running or step.start is None:
        return ""
    read = readings_of(entries, step)
    if step.spec.kind is StepKind.BEANS:
        said = _soak(desk, step.start, read, beans_grams)
    elif step.spec.kind is StepKind.DRY:
        said = _drying(desk, lot, step, entries, step.start)
    else:
        return ""
    try:
        return "; ".join(said)
    except Refusal:  # a room or a weight that cannot be worked with says nothing
        return ""


def _soak(desk: Desk, start: datetime, read: Readings, beans_grams: float | None) -> Iterator[str]:
    heat, soaked = read.get(WATER_HEAT), read.get(SOAKED_WEIGHT)
    if isinstance(soaked, int | float) and beans_grams:
        yield soaked_words(beans_grams, float(soaked))
    elif isinstance(heat, int | float):
        found = soak_time(float(heat))
        yield _likely(desk, start, found.time, tr("soaked"))
        yield tr("the water may sour after {at}", at=_at(desk, start, found.sours_after))


def _drying(
    desk: Desk, lot: Lot, step: LotStep, entries: tuple[Entry, ...], start: datetime
) -> Iterator[str]:
    course = weighed_course(lot, step, entries)
    hanging = hanging_of(lot, step, entries)
    if course is not None:  # what it weighs itself tells more than any room
        yield tr("by its own weight likely dry {at}", at=_at(desk, start, course))
    elif hanging is not None:
        factor = drying_factor(None, desk, DryingFactorFor())
        yield _likely(desk, start, drying_time(hanging, factor).time, tr("dry"))
    humidity = readings_of(entries, step).get(ROOM_HUMIDITY)
    damp = float(humidity) if isinstance(humidity, int | float) else None
    for one in damp_warnings(damp, desk.now - start):
        yield f"{one.words[:1].lower()}{one.words[1:].rstrip('.')}"  # within a line, not a sentence


def _likely(desk: Desk, start: datetime, time: Estimate, what: str) -> str:
    said = time.as_said
    return tr(
        "likely {what} {aim}, between {earliest} and {latest}",
        what=what,
        aim=_at(desk, start, said.aim),
        earliest=_near(desk, start, said.earliest, said.aim),
        latest=_near(desk, start, said.latest, said.aim),
    )


def _at(desk: Desk, start: datetime, after: timedelta) -> str:
    return words.moment(_on_the_clock(start + after), desk.now, desk.zone)


def _near(desk: Desk, start: datetime, after: timedelta, aim: timedelta) -> str:
    """Say a moment by the clock alone where it is on the day that was named before it."""
    at, named = _on_the_clock(start + after), _on_the_clock(start + aim)
    same = words.day(at, desk.zone) == words.day(named, desk.zone)
    return words.clock(at, desk.zone) if same else words.moment(at, desk.now, desk.zone)


def _on_the_clock(at: datetime) -> datetime:
    """Give the nearest five minutes: an estimate means no more."""
    return datetime.fromtimestamp(round(at.timestamp() / 300) * 300, at.tzinfo)
