"""Look through a whole studio and say in sentences what is not as it should be."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing

from studio_log.domain.errors import BadStudio
from studio_log.domain.journal import META, Act
from studio_log.store import faults, plain
from studio_log.store.database import Store
from studio_log.store.work import Work

MOST = 100
"""Sentences of one kind; more help nobody."""


def check(store: Store) -> list[str]:
    """Give what is wrong, [] where nothing is. Nothing is changed.

    Looked at: every page and index of the file, what hangs on what, the journal (numbers
    without gaps, known acts, whole entries, targets that are there), and whether each lot
    and milk of the journal has its lines for the lists and those have it.
    """
    found: list[str] = []
    for look in (_pages, _words, _journal, _lists, _reminders):
        try:
            found.extend(look(store))
        except BadStudio as error:
            found.append(str(error))
    return list(dict.fromkeys(found))


def _pages(store: Store) -> Iterator[str]:
    with faults.told_with_disk(store.folder), closing(plain.connect(store.path, "ro")) as line:
        line.execute("PRAGMA cell_size_check = ON")
        for (words,) in line.execute(f"PRAGMA integrity_check({MOST})"):
            if words != "ok":
                yield f"The file is damaged: {words}."
        for table, row, parent, _ in line.execute("PRAGMA foreign_key_check"):
            yield f"Line {row} of {table} hangs on a {parent} that is not there."
        yield from _stray(line)


def _words(store: Store) -> Iterator[str]:
    """Have the index of words look itself through (sqlite.org/fts5.html, 6.4)."""
    with faults.told_with_disk(store.folder), closing(plain.connect(store.path, "rw")) as line:
        line.execute("BEGIN")
        try:
            line.execute("INSERT INTO lot_words(lot_words) VALUES ('integrity-check')")
        except sqlite3.DatabaseError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_CORRUPT:
                raise
            yield "The index of words is damaged; a search may miss lots."
        finally:
            line.execute("ROLLBACK")


def _stray(line: sqlite3.Connection) -> Iterator[str]:
    """Name lines with values of a kind that the program never writes."""
    for table, columns in MOMENTS.items():
        for column in columns:
            asked = (
                f'SELECT rowid FROM "{table}" WHERE "{column}" IS NOT NULL '  # noqa: S608 - ours
                f'AND "{column}" NOT GLOB ? LIMIT {MOST}'
            )
            for (row,) in line.execute(asked, (MOMENT_FORM,)):
                yield f"The {column} of line {row} of {table} is no moment."


MOMENT_FORM = "[0-9][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9] [0-2][0-9]:[0-5][0-9]:[0-5][0-9].*"
MOMENTS: dict[str, tuple[str, ...]] = {
    "entry": ("at", "written"),
    "lot": ("begun_at", "fully_dry_at", "ready_at", "used_at", "updated_at"),
    "step": ("start", "end"),
    "milk": ("made_at", "use_by"),
    "swatch": ("cut_at", "read_at"),
    "reminder": (
        "due", "rings_at", "raised_at", "last_rung_at", "answered_at", "void_at", "updated_at",
    ),
    "delivery": ("at",),
}  # fmt: skip


def _journal(store: Store) -> Iterator[str]:
    with store.reading() as look:
        subjects = look.journal.subjects()
        for subject in subjects:
            try:
                yield from _subject(look, subject)
            except BadStudio as error:
                yield str(error)
        look.settings.all()
        look.methods.all()


def _subject(look: Work, subject: str) -> Iterator[str]:
    entries = look.journal.of(subject)
    for entry in entries:
        earlier = entry.target is not None and 0 < entry.target < entry.number
        if entry.act in META and not earlier:
            yield f"Entry {entry.number} of {subject} acts on an entry that is not before it."


def _lists(store: Store) -> Iterator[str]:
    with store.reading() as look:
        subjects = set(look.journal.subjects())
        lots = set(look.lots.codes())
        milks = {line.code for line in look.milks.all()}
        steps = look.steps.of_many(lots)
        for subject in sorted(subjects):
            yield from _listed(look, subject, lots, milks)
        for code in sorted(lots):
            line = look.lots.get(code)
            if line is not None and line.last_number != look.journal.last_number(code):
                yield f"The list line of {code} is older than its journal."
            if code not in steps:
                yield f"Lot {code} has no steps in the lists."
        for code in sorted((lots | milks) - subjects):
            yield f"{code} stands in the lists and has no journal."


def _listed(look: Work, subject: str, lots: set[str], milks: set[str]) -> Iterator[str]:
    entries = look.journal.of(subject)
    is_milk = bool(entries) and entries[0].act is Act.MILK_NEW
    if is_milk and subject not in milks:
        yield f"Milk {subject} is missing in the lists."
    if subject[:1].isdigit() and subject not in lots:
        yield f"Lot {subject} is missing in the lists."


def _reminders(store: Store) -> Iterator[str]:
    with store.reading() as look:
        subjects = set(look.journal.subjects())
        for record in look.reminders.open():
            if record.subject not in subjects:
                yield f"Reminder {record.key} is about {record.subject}, which has no journal."
