"""A room sensor's file, CSV from whatever maker: hostile until each line is read."""

import csv
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import islice
from statistics import median
from typing import Final

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.sensor_times import Reader, reader_of, refuse_times
from studio_log.language.words import tr
from studio_log.science.units import celsius_of_fahrenheit

LARGEST: Final = 20_000_000
"""Bytes."""
MOST_ROWS: Final = 300_000
"""Half a year at a reading a minute."""
LONGEST_LINE: Final = 4_000
HEAD_LINES: Final = 40
"""The names of the columns stand within these."""
TOLD_LINES: Final = 3
"""Lines left out that are named; the rest are counted."""
COLDEST_C: Final = -40.0
HOTTEST_C: Final = 60.0
SURELY_FAHRENHEIT: Final = 45.0
"""No bench is this warm in °C: half of the readings above it are asked about."""
_DELIMITERS: Final = ";\t,|"
_NUMBER: Final = re.compile(r"([-+−]?)(\d{1,4})(?:[.,](\d{1,6}))? ?(?:°? ?[CcFf]|%|%? ?[Rr][Hh])?")
_TIME: Final = re.compile(r"time|date|datum|zeit|uhr|moment|recorded|created", re.IGNORECASE)
_HEAT: Final = re.compile(r"temp|celsius|fahrenheit|°\s?[cf]\b|℃", re.IGNORECASE)
_WET: Final = re.compile(r"hum|feucht|\brh\b|r\.h\.|rel\b", re.IGNORECASE)
_NOT_AIR: Final = re.compile(
    r"dew|tau|wet.?bulb|abs|vpd|min|max|avg|heat.?index|feel", re.IGNORECASE
)
_FAHRENHEIT: Final = re.compile(r"fahrenheit|°\s?f\b|\(\s?f\s?\)|_f\b|\[\s?f\s?\]", re.IGNORECASE)
_CELSIUS: Final = re.compile(r"celsius|°\s?c\b|\(\s?c\s?\)|_c\b|\[\s?c\s?\]|℃", re.IGNORECASE)


@dataclass(frozen=True)
class RoomReading:
    """Air at a UTC instant: °C, and relative humidity in per cent."""

    at: datetime
    celsius: float
    humidity: float


@dataclass(frozen=True)
class RoomLog:
    """The readings in order of time, each instant once, and what was understood of the file."""

    readings: tuple[RoomReading, ...]
    left_out: int
    understood: str


@dataclass(frozen=True)
class _Columns:
    """Places of the columns; two of time where day and clock stand apart."""

    delimiter: str
    times: tuple[int, ...]
    heat: int
    wet: int
    fahrenheit: bool | None
    after: int
    """Lines up to and with the names."""


def read_sensor(
    data: bytes,
    *,
    name: str,
    zone: str,
    day_first: bool | None = None,
    fahrenheit: bool | None = None,
) -> RoomLog:
    """Give the readings of a sensor's file; lines that cannot be read are left out and counted.

    A Refusal where it is no such file or most of it cannot be read, a Question where day and
    month, or °C and °F, may be meant either way: `day_first` and `fahrenheit` answer it.
    """
    lines = _lines(data, name)
    columns = _columns(lines, name)
    rows = _rows(lines[columns.after :], columns.delimiter, name)
    read = reader_of([_time(row, columns) for row in rows[:5_000]], zone, day_first=day_first)
    hot = fahrenheit if fahrenheit is not None else columns.fahrenheit
    if hot is None:
        hot = _asked_scale(rows, columns)
    found: dict[datetime, RoomReading] = {}
    amiss: list[int] = []
    for number, row in enumerate(rows, columns.after + 1):
        reading = _reading(row, columns, read, fahrenheit=hot)
        if reading is None:
            amiss.append(number)
        else:
            found[reading.at] = reading
    _check(found, amiss, name)
    readings = tuple(found[at] for at in sorted(found))
    return RoomLog(readings, len(amiss), _understood(readings, amiss, fahrenheit=hot))


def _lines(data: bytes, name: str) -> list[str]:
    if len(data) > LARGEST:
        raise Refusal(
            f"{name} is larger than {LARGEST // 1_000_000} MB. Nothing was kept. "
            "Export a shorter time from the sensor."
        )
    marked = data.startswith((b"\xff\xfe", b"\xfe\xff"))
    try:
        text = data.decode("utf-16" if marked else "utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
    if "\0" in text or not text.strip():
        raise Refusal(f"{name} is no text with readings. Nothing was kept. Export it as CSV.")
    lines = text.splitlines()
    if len(lines) > MOST_ROWS or max(map(len, lines)) > LONGEST_LINE:
        raise Refusal(
            f"{name} has more than {MOST_ROWS:,} lines, or one of more than {LONGEST_LINE:,} "
            "signs. Nothing was kept. Export a shorter time from the sensor."
        )
    return lines


def _columns(lines: Sequence[str], name: str) -> _Columns:
    """Find the names of the columns, and with them what parts the columns."""
    for number, line in enumerate(islice(lines, HEAD_LINES), 1):
        for delimiter in _DELIMITERS:
            found = _named([cell.strip() for cell in line.split(delimiter)], delimiter, number)
            if found is not None:
                return found
    raise Refusal(
        f"{name} has no line that names its columns. Nothing was kept. They are called time, "
        "temperature and humidity, and stand above the readings."
    )


def _named(cells: Sequence[str], delimiter: str, number: int) -> _Columns | None:
    names = [cell.strip("\"' ") for cell in cells]
    times = [n for n, one in enumerate(names) if _TIME.search(one)]
    heat = _best(names, _HEAT)
    wet = _best(names, _WET)
    if not times or heat is None or wet is None or heat == wet or len(names) > 200:
        return None
    unit = names[heat]
    hot = True if _FAHRENHEIT.search(unit) else False if _CELSIUS.search(unit) else None
    return _Columns(delimiter, tuple(times[:2]), heat, wet, hot, number)


def _best(names: Sequence[str], pattern: re.Pattern[str]) -> int | None:
    """Give the first column of a kind, one of the air itself before a dew point or a mean."""
    found = [n for n, one in enumerate(names) if pattern.search(one) and not _TIME.search(one)]
    own = [n for n in found if not _NOT_AIR.search(names[n])]
    return next(iter(own or found), None)


def _rows(lines: Sequence[str], delimiter: str, name: str) -> list[list[str]]:
    try:
        return list(csv.reader(lines, delimiter=delimiter))
    except csv.Error:
        raise Refusal(
            f"{name} is not written as CSV: a cell runs on without end. Nothing was kept."
        ) from None


def _time(row: Sequence[str], columns: _Columns) -> str:
    """Give the moment of a row as text, day and clock put together where they stand apart."""
    cells = [row[place].strip() for place in columns.times if place < len(row)]
    if len(cells) == 2 and ":" in cells[1] and ":" not in cells[0]:
        return f"{cells[0]} {cells[1]}"
    return cells[0] if cells else ""


def _number(cell: str) -> float | None:
    found = _NUMBER.fullmatch(cell.strip())
    if found is None:
        return None
    value = float(f"{found[2]}.{found[3] or 0}")
    return -value if found[1] in {"-", "−"} else value


def _asked_scale(rows: Sequence[Sequence[str]], columns: _Columns) -> bool:
    """Say whether the heat is in °F where the column does not: never, or a Question."""
    cells = (row[columns.heat] for row in rows if columns.heat < len(row))
    values = [value for value in map(_number, cells) if value is not None]
    if values and median(values) > SURELY_FAHRENHEIT:
        raise Question(
            f"Are the temperatures in the file in °F, such as {median(values):g}? Say so, and "
            "read it again. Nothing was kept."
        )
    return False


def _reading(
    row: Sequence[str], columns: _Columns, read: Reader, *, fahrenheit: bool
) -> RoomReading | None:
    if len(row) <= max(columns.heat, columns.wet):
        return None
    heat, wet = _number(row[columns.heat]), _number(row[columns.wet])
    at = read(_time(row, columns))
    if heat is None or wet is None or at is None:
        return None
    celsius = celsius_of_fahrenheit(heat) if fahrenheit else heat
    if not (COLDEST_C <= celsius <= HOTTEST_C and 0 <= wet <= 100):
        return None
    return RoomReading(at, celsius, wet)


def _check(found: dict[datetime, RoomReading], amiss: Sequence[int], name: str) -> None:
    if not found and amiss:
        raise refuse_times(name)
    if not found:
        raise Refusal(f"{name} names its columns and holds no readings. Nothing was kept.")
    if len(amiss) > len(found):
        raise Refusal(
            f"Most lines of {name} cannot be read, the first in line {amiss[0]}. Nothing was kept. "
            "Each needs a time, a temperature and a humidity."
        )


def _understood(readings: Sequence[RoomReading], amiss: Sequence[int], *, fahrenheit: bool) -> str:
    said = tr(
        "{count} readings, temperatures in {scale}.",
        count=len(readings),
        scale="°F" if fahrenheit else "°C",
    )
    if not amiss:
        return said
    told = ", ".join(str(number) for number in amiss[:TOLD_LINES])
    more = "…" if len(amiss) > TOLD_LINES else ""
    left = tr(
        "{count} lines could not be read and are left out: {lines}", count=len(amiss), lines=told
    )
    return f"{said} {left}{more}"
