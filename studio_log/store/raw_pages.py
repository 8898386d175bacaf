"""The rows of a damaged SQLite file, read page by page without trusting any of it.

SQLite refuses a file whose head, schema or tree is damaged, and with it every row that is
whole. Here each page is looked at for itself: where it is the leaf of a table, its rows are
read (sqlite.org/fileformat2.html: 1.6 pages, 2.1 records, 4.1 the log). What a row is worth
is for the reader to judge: entries and methods carry seals.
"""

import struct
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

Value = int | float | str | bytes | None

USUAL_PAGE: Final = 4096
LEAF: Final = 0x0D
HEAD: Final = 100
"""Bytes of the file's head, before the first page's own."""
LOG_HEAD, FRAME_HEAD = 32, 24
MOST_COLUMNS: Final = 64
LARGEST_ROW: Final = 4_000_000
"""Bytes; a method's text is the longest that the log keeps, at most 256,000 letters."""


@dataclass(frozen=True)
class RawRow:
    """One row: its number in its table, and its values. A value that is cut off is missing."""

    rowid: int
    values: tuple[Value, ...]
    whole: bool = True


class Pages:
    """The pages of a file and of what was committed in its log, by any version of each."""

    def __init__(self, path: Path) -> None:
        self._content = path.read_bytes()
        self.size = _page_size(self._content)
        self._latest: dict[int, bytes] = {}
        self._log = list(_committed(path.with_name(path.name + "-wal"), self.size))
        self._latest.update(self._log)

    def page(self, number: int) -> bytes:
        """Give the last version of a page, counted from 1; b"" where it is not there."""
        start = (number - 1) * self.size
        return self._latest.get(number, self._content[start : start + self.size])

    def versions(self) -> Iterator[tuple[int, bytes]]:
        """Give every page there is, older versions first."""
        for number in range(1, -(-len(self._content) // self.size) + 1):
            start = (number - 1) * self.size
            yield number, self._content[start : start + self.size]
        yield from self._log

    def rows(self) -> Iterator[RawRow]:
        """Give the rows of every leaf of a table that can be found."""
        for number, page in self.versions():
            at = HEAD if number == 1 else 0
            if len(page) >= at + 8 and page[at] == LEAF:
                yield from _leaf(page, at, self.page, self.size)


def _page_size(content: bytes) -> int:
    """Give the size of a page as the head says it, else ours."""
    said = int.from_bytes(content[16:18], "big")
    size = 65536 if said == 1 else said
    return size if 512 <= size <= 65536 and not size & (size - 1) else USUAL_PAGE


def _committed(log: Path, size: int) -> Iterator[tuple[int, bytes]]:
    """Give the pages of a log up to its last commit; nothing where it is not this file's."""
    try:
        content = log.read_bytes()
    except OSError:
        return
    if len(content) < LOG_HEAD or int.from_bytes(content[8:12], "big") != size:
        return
    salts = content[16:24]
    waiting: list[tuple[int, bytes]] = []
    for start in range(LOG_HEAD, len(content) - FRAME_HEAD - size + 1, FRAME_HEAD + size):
        number, pages = struct.unpack(">II", content[start : start + 8])
        if content[start + 8 : start + 16] != salts or not number:
            return
        body = start + FRAME_HEAD
        waiting.append((number, content[body : body + size]))
        if pages:  # a frame that says how long the file is ends a transaction
            yield from waiting
            waiting = []


def _leaf(page: bytes, at: int, get: Callable[[int], bytes], size: int) -> Iterator[RawRow]:
    cells = int.from_bytes(page[at + 3 : at + 5], "big")
    for place in range(min(cells, (len(page) - at - 8) // 2)):
        start = at + 8 + 2 * place
        offset = int.from_bytes(page[start : start + 2], "big")
        if at + 8 <= offset < len(page):
            row = _cell(page, offset, get, size)
            if row is not None:
                yield row


def _cell(page: bytes, offset: int, get: Callable[[int], bytes], size: int) -> RawRow | None:
    length, offset = _varint(page, offset)
    rowid, offset = _varint(page, offset)
    if not 0 < length <= LARGEST_ROW:
        return None
    local = _local(length, size)
    payload = page[offset : offset + local]
    if local < length:
        link = int.from_bytes(page[offset + local : offset + local + 4], "big")
        payload += _overflow(link, length - local, get, size)
    return RawRow(rowid, *_record(payload, whole=len(payload) == length))


def _local(length: int, size: int) -> int:
    """Give how much of a row lies on its own page (1.6, "overflow")."""
    most = size - 35
    if length <= most:
        return length
    least = (size - 12) * 32 // 255 - 23
    fits = least + (length - least) % (size - 4)
    return fits if fits <= most else least


def _overflow(link: int, length: int, get: Callable[[int], bytes], size: int) -> bytes:
    found = bytearray()
    seen: set[int] = set()
    while link and len(found) < length and link not in seen:
        seen.add(link)
        page = get(link)
        if len(page) < 4:
            break
        found += page[4:size]
        link = int.from_bytes(page[:4], "big")
    return bytes(found[:length])


def _varint(content: bytes, at: int) -> tuple[int, int]:
    """Read a number of 1 to 9 bytes; gives it and the place behind it."""
    value = 0
    for count in range(9):
        if at >= len(content):
            return 0, at
        byte = content[at]
        at += 1
        if count == 8:
            value = value << 8 | byte
            break
        value = value << 7 | byte & 0x7F
        if not byte & 0x80:
            break
    return (value - 2**64 if value >= 2**63 else value), at


def _record(payload: bytes, *, whole: bool) -> tuple[tuple[Value, ...], bool]:
    """Read the values; those that are cut off or no text are left out with all behind them."""
    ends, at = _varint(payload, 0)
    kinds: list[int] = []
    while at < min(ends, len(payload)) and len(kinds) < MOST_COLUMNS:
        kind, at = _varint(payload, at)
        kinds.append(kind)
    values: list[Value] = []
    at = ends
    for kind in kinds:
        width = _width(kind)
        if width < 0 or at + width > len(payload):
            return tuple(values), False
        try:
            values.append(_value(kind, payload[at : at + width]))
        except UnicodeDecodeError:
            return tuple(values), False
        at += width
    return tuple(values), whole


WIDTHS: Final[Mapping[int, int]] = {
    0: 0, 1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8, 7: 8, 8: 0, 9: 0,
}  # fmt: skip
"""Bytes by the kind of a value (2.1, "serial type codes")."""


def _width(kind: int) -> int:
    if kind >= 12:
        return (kind - 12) // 2
    return WIDTHS.get(kind, -1)


def _value(kind: int, content: bytes) -> Value:
    if kind >= 12:
        return content.decode() if kind % 2 else content
    if kind == 7:
        number: float = struct.unpack(">d", content)[0]
        return number
    if kind in {8, 9}:
        return kind - 8
    return int.from_bytes(content, "big", signed=True) if kind else None
