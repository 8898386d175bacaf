"""What a colour instrument hands over: CGATS.17 text, or a table of CSV, hostile until it is read.

Found in either: names of samples, reflectance from 400 to 700 nm by 10, and L*, a*, b*. Where a
sample has a spectrum, its colour is worked out from that (ASTM E308, D65 and 10 degree). CGATS.17
is the open text format of ANSI CGATS.17 / ISO 28178; its keywords are read, not its semantics
beyond them.
"""

import csv
import re
from collections.abc import Sequence
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_table import (
    MOST_FIELDS,
    MOST_SAMPLES,
    Instrument,
    Table,
    colours_of,
)
from studio_log.language.words import tr

LARGEST: Final = 5_000_000
"""Bytes."""


def read_instrument(data: bytes, name: str) -> Instrument:
    """Read what an instrument wrote; Refusal with words where it holds no colours."""
    if len(data) > LARGEST:
        raise Refusal(
            tr("{name} is larger than {most} MB. Nothing was changed.",
               name=name, most=LARGEST // 1_000_000)
        )  # fmt: skip
    text = _decoded(data, name)
    if "BEGIN_DATA" in text:
        return _cgats(text, name)
    return colours_of(_rows(text, name), {}, name)


def _decoded(data: bytes, name: str) -> str:
    encodings = ("utf-16",) if data[:2] in (b"\xff\xfe", b"\xfe\xff") else ("utf-8-sig", "latin-1")
    for encoding in encodings:
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise Refusal(tr("{name} is no text. Nothing was changed; save it as CSV or CGATS.", name=name))


def _cgats(text: str, name: str) -> Instrument:
    """Read the first table of a CGATS.17 text."""
    head, mark, rest = text.partition("BEGIN_DATA_FORMAT")
    fields_text, end, rest = rest.partition("END_DATA_FORMAT")
    between, begun, rest = rest.partition("BEGIN_DATA")
    body, ended, _ = rest.partition("END_DATA")
    if not (mark and end and begun and ended):
        raise Refusal(
            tr("{name} breaks off, or is no CGATS text: its data has no beginning or no end. "
               "Nothing was changed.", name=name)
        )  # fmt: skip
    fields = _words(fields_text)
    rows = [_words(line) for line in body.splitlines() if line.strip()]
    if not fields or len(fields) > MOST_FIELDS or any(len(row) != len(fields) for row in rows):
        raise Refusal(
            tr("{name}: a line of its data has not as many values as there are fields ({count}). "
               "Nothing was changed.", name=name, count=len(fields))
        )  # fmt: skip
    return colours_of([fields, *rows], _keywords(head + between), name)


def _words(line: str) -> list[str]:
    """Split at blanks, what stands in quotation marks staying whole."""
    found = re.findall(r'"([^"]*)"|(\S+)', line)
    return [quoted or plain for quoted, plain in found]


def _keywords(text: str) -> dict[str, str]:
    """Give what the head says of light, observer and scale, in small letters."""
    found = {}
    for line in text.splitlines():
        words = _words(line.split("#", 1)[0])
        if len(words) > 1:
            key = words[1] if words[0].upper() == "KEYWORD" else words[0]
            found[key.upper()] = " ".join(words[1:]).casefold()
    return found


def _rows(text: str, name: str) -> Table:
    """Cut a table into cells: by tabs, semicolons or commas, whichever parts more."""
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    if not lines:
        raise Refusal(tr("{name} is empty. Nothing was changed.", name=name))
    if len(lines) > MOST_SAMPLES + 400:
        raise Refusal(
            tr("{name} has more than {most} lines. Nothing was changed.",
               name=name, most=MOST_SAMPLES)
        )  # fmt: skip
    marks = ("\t", ";", ",") if not _decimal_commas(lines) else ("\t", ";")
    mark = max(marks, key=lambda one: sum(line.count(one) for line in lines[:40]))
    if not any(mark in line for line in lines):
        return [line.split() for line in lines]
    try:
        found = list(csv.reader(lines, delimiter=mark, strict=True))
    except csv.Error:
        raise Refusal(
            tr("{name} cannot be read as a table. Nothing was changed; save it as CSV.", name=name)
        ) from None
    return [[cell.strip() for cell in row] for row in found]


def _decimal_commas(lines: Sequence[str]) -> bool:
    """Say whether commas stand within figures: then tabs or semicolons part them."""
    return any((";" in line or "\t" in line) and re.search(r"\d,\d", line) for line in lines[:40])
