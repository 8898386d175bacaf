"""A whole studio as a folder: JSON to be read back, CSV for other programs, photos by name.

Reads the file by a line of its own, in one transaction, so that it can run beside the
studio in any thread.
"""

import csv
import json
import re
import shutil
import sqlite3
import zipfile
from collections.abc import Callable, Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import mkdtemp
from typing import IO, Any, Final

from sqlalchemy import Table

from studio_log.domain.errors import Refusal
from studio_log.store import faults, plain
from studio_log.store.folder_shape import (
    DOCUMENT,
    FORMAT,
    PICTURES,
    SCHEMA,
    TABLES,
    VERSION,
    columns_of,
    outward,
    truths,
)
from studio_log.store.photos import FOLDER
from studio_log.store.rows import from_json, to_json
from studio_log.store.tables import METADATA

Progress = Callable[[int, int], bool]
"""Told how much of all is done; False stops the work."""
STOPPED: Final = "The export was stopped. Nothing was written; export again when there is time."
_RISKY: Final = ("=", "+", "-", "@", "\t", "\r")
"""A cell that begins so would be worked out as a formula by a program for tables."""
_ODD: Final = re.compile(r"[^\w. -]+")
_STEP: Final = 200


@dataclass(frozen=True)
class Order:
    """What is to be written where."""

    studio: Path
    """The studio's file."""
    to: Path
    zipped: bool
    written: str
    """When, as ISO 8601 in UTC."""
    program: str
    schema: str
    about: str
    """What the folder says of itself, for a person."""


def export(order: Order, progress: Progress) -> int:
    """Write the folder or archive, whole or not at all; gives the number of rows and photos.

    Refusal where there is something at the place already, or where it was stopped.
    """
    to = order.to.absolute()
    _check_place(to)
    with faults.told_with_disk(to.parent):
        beside = Path(mkdtemp(prefix=".writing-", dir=to.parent))
        try:
            made = beside / to.name
            made.mkdir()
            count = _Writing(order, made, progress).run()
            if order.zipped:
                made = _packed(made, beside / f"{to.name}.part", progress)
            _put(made, to)
        finally:
            shutil.rmtree(beside, ignore_errors=True)
    return count


def _check_place(to: Path) -> None:
    if not to.parent.is_dir():
        raise faults.refusal(faults.UNREACHABLE, to.parent)
    if to.exists() and not (to.is_dir() and not any(to.iterdir())):
        raise Refusal(
            f"There is something at {to} already. It was left as it is. Name a new folder."
        )


def _put(made: Path, to: Path) -> None:
    if made.is_dir() and to.is_dir():
        to.rmdir()
    made.replace(to)


class _Writing:
    """Writes one export."""

    def __init__(self, order: Order, folder: Path, progress: Progress) -> None:
        self._order, self._folder, self._progress = order, folder, progress
        self._done = self._all = 0
        self._files: dict[str, str] = {}

    def run(self) -> int:
        (self._folder / TABLES).mkdir()
        (self._folder / SCHEMA).write_text(self._order.schema, encoding="utf-8")
        (self._folder / "README.txt").write_text(self._order.about, encoding="utf-8")
        with closing(plain.connect(self._order.studio, "ro")) as line:
            line.row_factory = sqlite3.Row
            line.execute("PRAGMA trusted_schema = OFF")
            line.execute("BEGIN")
            self._all = self._count(line)
            self._name_photos(line)
            self._document(line)
            for table in METADATA.sorted_tables:
                self._csv(line, table)
            self._photos()
        return self._done

    def _count(self, line: sqlite3.Connection) -> int:
        once = {table.name for table in truths()}
        count = 0
        for table in METADATA.sorted_tables:
            asked = f'SELECT count(*) FROM "{table.name}"'  # noqa: S608 - ours
            times = 2 if table.name in once else 1
            count += times * int(line.execute(asked).fetchone()[0])
        pictures = line.execute("SELECT count(DISTINCT hash) FROM photo").fetchone()[0]
        return count + int(pictures)

    def _tick(self) -> None:
        self._done += 1
        if self._done % _STEP == 0 or self._done == self._all:
            check(self._progress, self._done, self._all)

    def _rows(self, line: sqlite3.Connection, table: Table) -> Iterator[sqlite3.Row]:
        order = (
            "rowid"
            if table.name in {"entry", "delivery"}
            else ", ".join(f'"{one.name}"' for one in table.primary_key)
        )
        for row in line.execute(f'SELECT * FROM "{table.name}" ORDER BY {order}'):  # noqa: S608
            yield row
            self._tick()

    def _name_photos(self, line: sqlite3.Connection) -> None:
        """Name each picture by its lot, its entry and what it was called."""
        asked = "SELECT lot, entry, hash, kind, name FROM photo ORDER BY lot, entry"
        for lot, entry, digest, kind, name in line.execute(asked):
            stem = _ODD.sub("-", Path(str(name)).stem).strip(" .-")[:60] or "photo"
            lead = _ODD.sub("-", str(lot))
            self._files.setdefault(digest, f"{PICTURES}/{lead}-{int(entry):04d}-{stem}.{kind}")

    def _document(self, line: sqlite3.Connection) -> None:
        head = {"format": FORMAT, "version": VERSION, "program": self._order.program,
                "written": self._order.written}  # fmt: skip
        with (self._folder / DOCUMENT).open("w", encoding="utf-8", newline="\n") as file:
            file.write("{\n")
            file.writelines(f'"{name}": {to_json(value)},\n' for name, value in head.items())
            file.write(f'"photos": {to_json(self._files)},\n"tables": {{\n')
            for number, table in enumerate(truths()):
                file.write(",\n" if number else "")
                self._table(file, line, table)
            file.write("\n}\n}\n")

    def _table(self, file: IO[str], line: sqlite3.Connection, table: Table) -> None:
        file.write(f'"{table.name}": [')
        names = columns_of(table)
        for number, row in enumerate(self._rows(line, table)):
            told = {name: outward(table, name, row[name], _read) for name in names}
            file.write(f"{',' if number else ''}\n{json.dumps(told, ensure_ascii=False)}")
        file.write("]")

    def _csv(self, line: sqlite3.Connection, table: Table) -> None:
        names = columns_of(table)
        path = self._folder / TABLES / f"{table.name}.csv"
        # The mark at its start tells programs for tables that it is UTF-8.
        with path.open("w", encoding="utf-8-sig", newline="") as file:
            sheet = csv.writer(file)
            sheet.writerow(names)
            for row in self._rows(line, table):
                sheet.writerow([harmless(_shown(table, name, row[name])) for name in names])

    def _photos(self) -> None:
        (self._folder / PICTURES).mkdir()
        kept = self._order.studio.parent / FOLDER
        for digest, name in self._files.items():
            kind = name.rsplit(".", 1)[1]
            with suppress(FileNotFoundError):
                shutil.copyfile(kept / f"{digest}.{kind}", self._folder / name)
            self._tick()


def _read(text: str) -> Any:
    return from_json(text, "a line of it")


def _shown(table: Table, name: str, value: Any) -> Any:
    """Give a value as a cell: an instant as it is in the JSON, JSON as its text."""
    said = outward(table, name, value, str)
    return "" if said is None else said


def harmless(value: Any) -> Any:
    """Give a text so that no program works it out: an apostrophe before what looks like it."""
    if isinstance(value, str) and value.startswith(_RISKY):
        return f"'{value}"
    return value


def check(progress: Progress, done: int, every: int) -> None:
    """Tell how far it is; Refusal where it is to stop."""
    if not progress(done, every):
        raise Refusal(STOPPED)


def _packed(folder: Path, to: Path, progress: Progress) -> Path:
    """Pack a folder into an archive."""
    files = sorted(one for one in folder.rglob("*") if one.is_file())
    with zipfile.ZipFile(to, "w", zipfile.ZIP_DEFLATED, allowZip64=True) as archive:
        for number, path in enumerate(files):
            archive.write(path, path.relative_to(folder).as_posix())
            check(progress, number + 1, len(files))
    return to
