"""What can still be read of a studio's file, and of its copies, whatever is damaged."""

import json
import re
import sqlite3
import zlib
from collections.abc import Callable, Iterable, Mapping
from contextlib import closing
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

from studio_log.domain.journal import Act, Entry
from studio_log.store import faults, plain
from studio_log.store.database import Store
from studio_log.store.journal import seal
from studio_log.store.raw_pages import Pages, RawRow
from studio_log.store.tables import COUNTER, LOT, METHOD, PHOTO, REMINDER, SETTING

CODE: Final = re.compile(r"[A-Z]?\d{2}-\d{1,6}")
MOST_NUMBER: Final = 1_000_000
MOST_ENTRIES: Final = 100_000_000
ENTRY_WIDTH: Final = 13
LAST_NUMBER: Final = [column.name for column in LOT.columns].index("last_number")
LIST_WIDTHS: Final = frozenset({len(LOT.columns) - 1, len(LOT.columns)})
"""Columns of a line of the lots' list, before and since its codes have places."""
Row = dict[str, Any]


@dataclass
class Found:
    """What was read: sound entries by code and number, and what else of a studio there was."""

    entries: dict[str, dict[int, Entry]] = field(default_factory=dict)
    order: dict[tuple[str, int], int] = field(default_factory=dict)
    """The place of each entry among all, as they were written."""
    spoilt: set[tuple[str, int]] = field(default_factory=set)
    """Entries that are there and are not what was written."""
    listed: dict[str, int] = field(default_factory=dict)
    """The number of the last entry of each lot, as the lists knew it."""
    rows: dict[str, dict[tuple[Any, ...], Row]] = field(default_factory=dict)
    """Rows of the other truths, by table and key: methods, settings, counters and so on."""

    read_whole: set[str] = field(default_factory=set)
    """Tables of these that SQLite could still read as such."""
    ever: int = 0
    """How many entries there ever were, as far as that can be told."""
    counted: bool = False
    """Whether `ever` is the file's own count."""

    @property
    def count(self) -> int:
        """How many entries were read."""
        return sum(map(len, self.entries.values()))


def read_all(path: Path) -> Found:
    """Read every row that can be found in a file that nobody else uses.

    BadStudio where not even its bytes can be read.
    """
    found = Found()
    with faults.told_with_disk(path.parent):
        for row in Pages(path).rows():
            if not _take_entry(found, row) and row.whole:
                _take_other(found, row)
    sound = {(code, number) for code, kept in found.entries.items() for number in kept}
    found.spoilt -= sound
    highest = max(found.order.values(), default=0)
    # A number that is far off is damaged itself.
    believed = found.ever <= 4 * max(highest, 250)
    found.counted = believed and found.ever >= highest > 0
    found.ever = max(found.ever if believed else 0, highest)
    _by_sql(found, path)
    return found


def _take_entry(found: Found, row: RawRow) -> bool:
    """Take a row for an entry where it has the shape of one; say whether it has."""
    values = row.values
    if len(values) < 4 or values[0] is not None:
        return False
    _, code, number, act = values[:4]
    if not isinstance(code, str) or not CODE.fullmatch(code):
        return False
    if not isinstance(number, int) or not 0 < number < MOST_NUMBER or not isinstance(act, str):
        return False
    entry = _sound(values) if row.whole and len(values) == ENTRY_WIDTH else None
    if entry is None:
        found.spoilt.add((code, number))
    else:
        found.entries.setdefault(code, {})[number] = entry
        found.order[code, number] = row.rowid
    return True


def _sound(values: tuple[Any, ...]) -> Entry | None:
    """Give the entry of these values where its seal agrees with it."""
    _, code, number, act, at, written, zone, step, note, readings, data, target, sealed = values
    try:
        entry = Entry(
            code, Act(act), _moment(at), _moment(written), str(zone), number=number, step=step,
            note=note, readings=json.loads(readings), data=json.loads(data), target=target,
        )  # fmt: skip
        return entry if seal(entry) == sealed else None
    except (ValueError, TypeError, AttributeError, OverflowError, RecursionError):
        return None


def _moment(text: Any) -> datetime:
    return datetime.fromisoformat(str(text)).replace(tzinfo=UTC)


def _take_other(found: Found, row: RawRow) -> None:
    if len(row.values) == 2 and row.values[0] == "entry" and isinstance(row.values[1], int):
        found.ever = max(found.ever, min(row.values[1], MOST_ENTRIES))  # of sqlite_sequence
        return
    if len(row.values) in LIST_WIDTHS and _take_listed(found, row.values):
        return
    for table, rule in RULES.items():
        if len(row.values) == len(rule.kinds) and all(map(_fits, row.values, rule.kinds)):
            named = dict(zip(rule.names, row.values, strict=True))
            if rule.sound(named):
                kept = found.rows.setdefault(table, {})
                kept[tuple(named[name] for name in rule.keys)] = named
                return


def _take_listed(found: Found, values: tuple[Any, ...]) -> bool:
    """Take a row for a line of the lots' list: it tells how long a journal was."""
    code, last = values[0], values[LAST_NUMBER]
    if not isinstance(code, str) or not CODE.fullmatch(code) or not isinstance(last, int):
        return False
    if not 0 < last < MOST_NUMBER or not isinstance(values[1], str):
        return False
    found.listed[code] = max(last, found.listed.get(code, 0))
    return True


def _fits(value: object, kind: str) -> bool:
    """Say whether a value is of a kind: text, number; "?" behind it lets it be missing."""
    if value is None:
        return kind.endswith("?")
    wanted = str if kind.startswith("t") else int
    return isinstance(value, wanted)


@dataclass(frozen=True)
class Rule:
    """How a row of a table is known: the kinds of its columns, and what else must hold."""

    names: tuple[str, ...]
    kinds: tuple[str, ...]
    keys: tuple[str, ...]
    sound: Callable[[Row], bool]


def _rule(table: Any, kinds: str, sound: Callable[[Row], bool]) -> Rule:
    names = tuple(column.name for column in table.columns)
    keys = tuple(column.name for column in table.primary_key)
    return Rule(names, tuple(kinds.split()), keys, sound)


def _method(row: Row) -> bool:
    return bool(zlib.crc32(row["text"].encode()) == row["seal"])


def _setting(row: Row) -> bool:
    try:
        json.loads(row["value"])
    except (ValueError, RecursionError):
        return False
    return re.fullmatch(r"[a-z_]{2,40}", row["name"]) is not None


def _counter(row: Row) -> bool:
    return re.fullmatch(r"[a-z]+/\d\d", row["name"]) is not None and (
        0 < int(row["value"]) < MOST_NUMBER
    )


def _photo(row: Row) -> bool:
    return CODE.fullmatch(row["lot"]) is not None and len(row["hash"]) == 64


MOMENT: Final = re.compile(r"\d{4}-[01]\d-[0-3]\d [0-2]\d:[0-5]\d:[0-5]\d(?:\.\d{1,6})?")


def _reminder(row: Row) -> bool:
    moments = (
        row[name] for name in
        ("due", "rings_at", "raised_at", "last_rung_at", "answered_at", "void_at", "updated_at")
    )  # fmt: skip
    if not all(at is None or MOMENT.fullmatch(at) for at in moments):
        return False
    return row["status"] in {"waiting", "raised", "answered", "void"}


RULES: Final[Mapping[str, Rule]] = {
    "method": _rule(METHOD, "t i t t i", _method),
    "setting": _rule(SETTING, "t t", _setting),
    "counter": _rule(COUNTER, "t i", _counter),
    "photo": _rule(PHOTO, "t i t i? t t i i i t?", _photo),
    "reminder": _rule(REMINDER, "t t i? t t t t t t t t t? i t? t? t t? t t i t", _reminder),
}
"""The truths beside the journal. Projections are worked out anew."""


def _by_sql(found: Found, path: Path) -> None:
    """Take the tables that SQLite itself can still read as it reads them.

    Pages that were let go hold older rows, which only it can tell from those that count.
    """
    for table, rule in RULES.items():
        names = ", ".join(f'"{name}"' for name in rule.names)
        try:
            with closing(plain.connect(path, "rw")) as line:
                line.execute("PRAGMA trusted_schema = OFF")
                asked = line.execute(f'SELECT {names} FROM "{table}"')  # noqa: S608 - ours
                rows = [dict(zip(rule.names, row, strict=True)) for row in asked]
        except (sqlite3.Error, ValueError, OverflowError):
            continue
        kept = [
            row for row in rows if all(map(_fits, row.values(), rule.kinds)) and rule.sound(row)
        ]
        found.rows[table] = {tuple(row[name] for name in rule.keys): row for row in kept}
        found.read_whole.add(table)


def pour(store: Store, entries: Iterable[Entry], rows: Mapping[str, Iterable[Row]]) -> None:
    """Write what was read into a new studio; each journal's entries stand in their order."""
    with store.work() as work:
        for entry in entries:
            work.journal.append(entry)
        for table, kept in rows.items():
            work.take_rows(RULES[table].names, table, list(kept))
