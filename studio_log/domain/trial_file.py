"""A trial's table, CSV from whatever program: hostile until each line is read.

Lines that begin with "#" are remarks. The first other line names the columns. Cells between
commas, semicolons or tabs; a decimal comma is read, a doubtful one ("1,800") is not guessed at.
"""

import csv
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr_later

LARGEST: Final = 2_000_000
"""Bytes."""
MOST_ROWS: Final = 2_000
"""The robust check takes time by the square of it."""
LONGEST_LINE: Final = 4_000
LONGEST_NAME: Final = 60
MOST_AGE_D: Final = 36_500.0
MOST_DEPTH: Final = 1e6
TOLD_NAMES: Final = 20
NOTHING: Final = tr_later("Nothing was changed.")
_NUMBER: Final = re.compile(r"[-+]?(?:\d{1,9}(?:[.,]\d{0,15})?|[.,]\d{1,15})(?:[eE][-+]?\d{1,2})?")
_DOUBTFUL: Final = re.compile(r"[-+]?[1-9]\d{0,2},\d{3}")
_AGE: Final = re.compile(r"(.*?)\s*(d|days?|w|weeks?|h|hours?)?", re.IGNORECASE)
_DAYS: Final[Mapping[str, float]] = {"": 1.0, "d": 1.0, "w": 7.0, "h": 1 / 24}
_MISSING: Final = frozenset({"", "-", "–", "na", "n/a", "nan", "none", "null", "?"})


@dataclass(frozen=True)
class Reading:
    """One swatch: its cure age in days, its depth, its batch ("" where none), its line."""

    age_d: float
    depth: float
    batch: str
    line: int


@dataclass(frozen=True)
class TrialTable:
    """The swatches in the order of the file, and the lines left out because a cell is empty."""

    readings: tuple[Reading, ...]
    left_out: tuple[int, ...]


def read_trial(
    data: bytes, *, name: str, age: str, depth: str, batch: str | None = None
) -> TrialTable:
    """Read a trial's table by the names of its columns, or by their numbers from 1.

    A Refusal names the line and what is amiss with it; a cell that is empty leaves out its line.
    """
    lines = _lines(data, name)
    names, rows = _table(lines, name)
    wanted = [age, depth] if batch is None else [age, depth, batch]
    places = [_place(one, names, name) for one in wanted]
    if len(set(places)) < len(places):
        raise Refusal(f"Age, depth and batch are different columns of {name}. {NOTHING}")
    readings: list[Reading] = []
    left_out: list[int] = []
    for number, row in rows:
        cells = [row[place].strip() if place < len(row) else "" for place in places]
        if any(cell.casefold() in _MISSING for cell in cells):
            left_out.append(number)
            continue
        readings.append(_reading(cells, number, name))
    if not readings:
        raise Refusal(f"{name} holds no line with both age and depth. {NOTHING}")
    return TrialTable(tuple(readings), tuple(left_out))


def _lines(data: bytes, name: str) -> list[str]:
    if len(data) > LARGEST:
        raise Refusal(f"{name} is larger than {LARGEST // 1_000_000} MB. {NOTHING}")
    marked = data.startswith((b"\xff\xfe", b"\xfe\xff"))
    try:
        text = data.decode("utf-16" if marked else "utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")
    if "\0" in text or not text.strip():
        raise Refusal(f"{name} is no text with a table. {NOTHING} Export it as CSV.")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    if max(map(len, lines)) > LONGEST_LINE:
        raise Refusal(f"{name} has a line of more than {LONGEST_LINE:,} signs. {NOTHING}")
    return lines


def _table(lines: Sequence[str], name: str) -> tuple[list[str], list[tuple[int, list[str]]]]:
    """Give the names of the columns, and each further line's number and cells."""
    told = [
        (number, line)
        for number, line in enumerate(lines, 1)
        if line.strip() and not line.lstrip().startswith("#")
    ]
    if len(told) > MOST_ROWS + 1:
        raise Refusal(f"{name} has more than {MOST_ROWS:,} lines of readings. {NOTHING}")
    if len(told) < 2:
        raise Refusal(f"{name} has no readings below the names of its columns. {NOTHING}")
    head = told[0][1]
    delimiter = max(";\t,", key=head.count)
    try:
        split = [(number, next(csv.reader([line], delimiter=delimiter))) for number, line in told]
    except csv.Error:
        raise Refusal(f"{name} is not written as CSV. {NOTHING} Export it anew.") from None
    return [cell.strip() for cell in split[0][1]], split[1:]


def _place(wanted: str, names: Sequence[str], name: str) -> int:
    """Give the place of a column by its name, whatever its case, or by its number from 1."""
    plain = wanted.strip().casefold()
    found = [place for place, one in enumerate(names) if one.casefold() == plain]
    if len(found) == 1 and plain:
        return found[0]
    if len(found) > 1:
        raise Refusal(f"{name} has {len(found)} columns “{_shown(wanted)}”. {NOTHING} Rename one.")
    if re.fullmatch(r"[1-9][0-9]{0,3}", plain) and int(plain) <= len(names):
        return int(plain) - 1
    known = ", ".join(_shown(one) for one in names[:TOLD_NAMES] if one)
    raise Refusal(
        f"{name} has no column “{_shown(wanted)}”. {NOTHING} Its columns are: {known or 'unnamed'}."
    )


def _reading(cells: Sequence[str], line: int, name: str) -> Reading:
    found = _AGE.fullmatch(cells[0])
    figure, unit = (found[1], (found[2] or "")[:1].lower()) if found else (cells[0], "")
    age = _number(figure, "an age", line, name) * _DAYS[unit]
    depth = _number(cells[1], "a depth", line, name)
    if not 0 <= age <= MOST_AGE_D:
        raise Refusal(
            f"Line {line} of {name}: an age of {age:g} days makes no sense. {NOTHING} "
            "Ages are days from fully dry; an uncured control has 0."
        )
    if abs(depth) > MOST_DEPTH:
        raise Refusal(f"Line {line} of {name}: a depth of {depth:g} makes no sense. {NOTHING}")
    batch = cells[2] if len(cells) > 2 else ""
    if len(batch) > LONGEST_NAME:
        raise Refusal(f"Line {line} of {name}: a batch's name is too long. {NOTHING}")
    return Reading(age, depth, batch, line)


def _number(cell: str, what: str, line: int, name: str) -> float:
    plain = cell.replace("−", "-").replace("\u00a0", " ").strip()
    if _DOUBTFUL.fullmatch(plain):
        raise Refusal(
            f"Line {line} of {name}: “{plain}” may be a thousand or a part. {NOTHING} "
            "Write it with a point, or without a mark."
        )
    if not plain.isascii() or not _NUMBER.fullmatch(plain):
        raise Refusal(f"Line {line} of {name}: “{_shown(cell)}” is not {what}. {NOTHING}")
    return float(plain.replace(",", "."))


def _shown(text: str) -> str:
    return "".join(sign if sign.isprintable() else "�" for sign in text[:LONGEST_NAME])
