"""The air of a room while cloth hangs in it: its mean, and the warning of a rainy season."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from studio_log.domain.number_text import plain
from studio_log.domain.sensor_file import RoomReading
from studio_log.domain.spoiling import Warned
from studio_log.language.words import tr, tr_later

DAMP_HUMIDITY: Final = 65.0
"""Per cent: mould may grow on cloth in such air; below 60, with moving air, it hardly does."""
DAMP_LATEST: Final = timedelta(hours=24)
"""By then soyed cloth is dry: a proposal."""
LONGEST_GAP: Final = timedelta(hours=3)
"""A reading counts for so long at most; a sensor that fell silent says nothing."""
DAMP_SOURCE: Final = "CCI Notes 13/15"
_DAMP_AIR: Final = tr_later(
    "The air is at {humidity} % and the cloth still damp: it may mildew. Move the air, warm the "
    "room or draw the water out of it; spin the cloth again."
)
_DAMP_LONG: Final = tr_later(
    "The cloth has been damp for {hours} h. Soy is food for mould: dry it today, smell it, and "
    "keep it apart until it is dry."
)


@dataclass(frozen=True)
class MeanAir:
    """What the air was over a time: means by time, the dampest, and how much of it was read."""

    celsius: float
    humidity: float
    dampest: float
    covered: float
    """Part of the time that readings stand for."""


def mean_air(readings: Sequence[RoomReading], start: datetime, end: datetime) -> MeanAir | None:
    """Give the mean air from start to end, or None where no reading stands for any of it.

    `readings` are in order of time. Each counts until the next one, three hours at most.
    """
    if end <= start:
        return None
    first = max(bisect_left(readings, start, key=lambda one: one.at) - 1, 0)
    seconds = heat = wet = dampest = 0.0
    for number in range(first, len(readings)):
        one = readings[number]
        if one.at >= end:
            break
        until = readings[number + 1].at if number + 1 < len(readings) else end
        until = min(until, one.at + LONGEST_GAP, end)
        held = (until - max(one.at, start)).total_seconds()
        if held > 0:
            seconds += held
            heat += held * one.celsius
            wet += held * one.humidity
            dampest = max(dampest, one.humidity)
    if not seconds:
        return None
    covered = seconds / (end - start).total_seconds()
    return MeanAir(heat / seconds, wet / seconds, dampest, covered)


def damp_warnings(humidity: float | None, hung: timedelta) -> tuple[Warned, ...]:
    """Give the warnings for cloth that is still damp, after hanging for a time.

    `humidity` is that of the room now, in per cent, None where nobody read it.
    """
    found = []
    if humidity is not None and humidity > DAMP_HUMIDITY:
        words = tr(_DAMP_AIR, humidity=plain(humidity, 0))
        found.append(Warned("damp-air", words, DAMP_SOURCE))
    if hung > DAMP_LATEST:
        words = tr(_DAMP_LONG, hours=plain(hung / timedelta(hours=1), 0))
        found.append(Warned("damp-long", words, DAMP_SOURCE))
    return tuple(found)
