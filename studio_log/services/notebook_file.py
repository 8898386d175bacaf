"""Tables from other programs: CSV in its many manners, and XLSX; hostile until read."""

import csv
import io
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time
from pathlib import Path
from typing import Any, Final

from studio_log.domain.errors import Refusal

MOST_BYTES: Final = 20_000_000
MOST_ROWS, MOST_COLUMNS, MOST_LETTERS = 5_000, 60, 10_000
MOST_UNPACKED, MOST_SWELLING = 200_000_000, 150
_SEPARATORS: Final = (";", "\t", ",", "|")
_MARKS: Final = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_XML_LEAD: Final = 4_096


@dataclass(frozen=True)
class Sheet:
    """A table as text: heads, and rows of the same width."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: tuple[int, ...]
    """The line or row of the file that each row stood in, from 1."""
    told: str
    """How it was read: "CSV, semicolons, UTF-8"."""


def read_sheet(path: Path) -> Sheet:
    """Read a table; Refusal where it is none, too large, or built to do harm."""
    raw = _bytes(path)
    if raw[:4] == b"PK\x03\x04":
        rows, told = list(_workbook(raw, path.name)), "XLSX"
    else:
        rows, told = _text_rows(raw, path.name)
    return _sheet(rows, told, path.name)


def _bytes(path: Path) -> bytes:
    try:
        if path.stat().st_size > MOST_BYTES:
            raise _unfit(path.name, "is larger than 20 MB")
        return path.read_bytes()
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name cannot be used"
        raise Refusal(f"{path} cannot be read ({reason}). Nothing was taken in.") from error


def _sheet(rows: list[list[str]], told: str, name: str) -> Sheet:
    trimmed = [(n, _without_end(row)) for n, row in enumerate(rows, 1)]
    kept = [(n, row) for n, row in trimmed if row]
    if len(kept) < 2:
        raise _unfit(name, "has no row below its heads")
    (_, first), *rest = kept
    width = max(len(row) for _, row in kept)
    if width > MOST_COLUMNS:
        raise _unfit(name, f"has more than {MOST_COLUMNS} columns")
    if len(rest) > MOST_ROWS:
        raise _unfit(name, f"has more than {MOST_ROWS:,} rows; part it")
    if any(len(cell) > MOST_LETTERS for _, row in kept for cell in row):
        raise _unfit(name, f"has a cell of more than {MOST_LETTERS:,} letters")
    even = [(*row, *[""] * (width - len(row))) for _, row in rest]
    named = enumerate((*first, *[""] * (width - len(first))), 1)
    heads = tuple(cell.strip() or f"column {n}" for n, cell in named)
    return Sheet(heads, tuple(even), tuple(n for n, _ in rest), told)


def _without_end(row: list[str]) -> list[str]:
    """Give a row without the empty cells at its end."""
    last = max((n for n, cell in enumerate(row, 1) if cell.strip()), default=0)
    return row[:last]


# -- CSV -----------------------------------------------------------------------------------


def _text_rows(raw: bytes, name: str) -> tuple[list[list[str]], str]:
    text, encoding = _decoded(raw, name)
    separator = _separator(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=False)
    rows: list[list[str]] = []
    try:
        for row in reader:
            rows.append(row)
            if len(row) > MOST_COLUMNS + 1:
                raise _unfit(name, f"has more than {MOST_COLUMNS} columns")
            if len(rows) > 2 * MOST_ROWS:
                break
    except csv.Error as error:
        raise _unfit(name, f"cannot be read as a table in line {reader.line_num}") from error
    named = {";": "semicolons", "\t": "tabs", ",": "commas", "|": "strokes"}[separator]
    return rows, f"CSV, {named}, {encoding}"


def _decoded(raw: bytes, name: str) -> tuple[str, str]:
    if b"\0" in raw and not raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _unfit(name, "is neither a CSV table nor an XLSX workbook")
    for mark, encoding in _MARKS:
        if raw.startswith(mark):
            try:
                return raw.decode(encoding), "UTF-16" if encoding == "utf-16" else "UTF-8"
            except UnicodeDecodeError as error:
                raise _unfit(name, "begins as Unicode and then is none") from error
    try:
        return raw.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError:
        # What programs of that time wrote; every byte is some letter in it.
        return raw.decode("cp1252", "replace"), "Windows-1252"


def _separator(text: str) -> str:
    """Guess by the first lines: what stands most evenly in all of them."""
    lines = [line for line in text.splitlines()[:30] if line.strip()] or [""]
    best, most = ",", 0
    for separator in _SEPARATORS:
        counts = [_cells(line, separator) for line in lines]
        if min(counts) == counts[0] and min(counts) > most and counts[0] > 1:
            best, most = separator, min(counts)
    if most:
        return best
    return max(_SEPARATORS, key=lines[0].count)


def _cells(line: str, separator: str) -> int:
    try:
        return len(next(csv.reader([line], delimiter=separator), []))
    except csv.Error:
        return 0


# -- XLSX ----------------------------------------------------------------------------------


def _workbook(raw: bytes, name: str) -> Iterator[list[str]]:
    """Give the rows of the first sheet that has any."""
    _check_archive(raw, name)
    from openpyxl import load_workbook  # noqa: PLC0415 - for workbooks only

    try:
        book = load_workbook(io.BytesIO(raw), read_only=True, data_only=True, keep_links=False)
        try:
            sheets = [sheet for sheet in book.worksheets if hasattr(sheet, "iter_rows")]
            rows = (rows for sheet in sheets if (rows := _rows(sheet)))
            yield from next(rows, [])
        finally:
            book.close()
    except Refusal:
        raise
    except Exception as error:
        # The library raises whatever it stumbles over in a file that is not what it says.
        raise _unfit(name, "cannot be read as an XLSX workbook") from error


def _rows(sheet: Any) -> list[list[str]]:
    limits = {"max_row": MOST_ROWS + 100, "max_col": MOST_COLUMNS + 1}
    rows = sheet.iter_rows(values_only=True, **limits)
    found = [[_cell(value) for value in row] for row in rows]
    while found and not any(found[-1]):
        found.pop()
    return found


def _cell(value: Any) -> str:
    """Give a cell as it would be typed. A formula gives the value that was kept with it."""
    for sort, write in _WRITERS:
        if isinstance(value, sort):
            return write(value)
    return "" if value is None else str(value)[:MOST_LETTERS]


def _instant(value: datetime) -> str:
    return value.strftime("%Y-%m-%d" if value.time() == time() else "%Y-%m-%d %H:%M")


_WRITERS: Final[tuple[tuple[type, Callable[[Any], str]], ...]] = (
    (bool, lambda value: "yes" if value else "no"),
    (datetime, _instant),
    (date, date.isoformat),
    (float, lambda value: f"{value:.10g}"),
)


def _check_archive(raw: bytes, name: str) -> None:
    """See that a workbook unpacks to something sane, and that its XML declares nothing."""
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as archive:
            members = archive.infolist()
            total = sum(member.file_size for member in members)
            if total > MOST_UNPACKED or total > MOST_SWELLING * max(len(raw), 50_000):
                raise _unfit(name, "would unpack to far too much")
            for member in members:
                if member.filename.endswith((".xml", ".rels")):
                    with archive.open(member) as part:
                        lead = part.read(_XML_LEAD).upper()
                    if b"<!DOCTYPE" in lead or b"<!ENTITY" in lead:
                        raise _unfit(name, "declares entities, which no honest workbook does")
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError, EOFError) as error:
        raise _unfit(name, "is a damaged archive") from error


def _unfit(name: str, words: str) -> Refusal:
    return Refusal(f"{name[:80]} {words}. Nothing was taken in; the studio is as it was.")
