"""The journal on disk: entries are added, never changed."""

import zlib
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Row, Select, and_, func, insert, select
from sqlmodel import Session

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.store.rows import CHUNK, UNREADABLE, from_json, rows, to_json
from studio_log.store.tables import ENTRY

NO_TEXT = (
    "Part of what was typed is no text that can be kept. Nothing of it was written. "
    "Type it again, without the odd characters."
)
COLUMNS = tuple(column for column in ENTRY.columns if column.name != "id")


def seal(entry: Entry) -> int:
    """Give a CRC-32 over all that an entry says, so that a flipped bit is found."""
    fields = (
        entry.subject,
        entry.number,
        entry.act.value,
        entry.at.astimezone(UTC).isoformat(),
        entry.written.astimezone(UTC).isoformat(),
        entry.zone,
        entry.step,
        entry.note,
        dict(entry.readings),
        dict(entry.data),
        entry.target,
    )
    return zlib.crc32(to_json(fields).encode())


def row_of(entry: Entry) -> dict[str, Any]:
    """Give the values of the entry's row."""
    return {
        "subject": entry.subject,
        "number": entry.number,
        "act": entry.act.value,
        "at": entry.at,
        "written": entry.written,
        "zone": entry.zone,
        "step": entry.step,
        "note": entry.note,
        "readings": to_json(dict(entry.readings)),
        "data": to_json(dict(entry.data)),
        "target": entry.target,
        "seal": seal(entry),
    }


def entry_of(row: Row[Any]) -> Entry:
    """Give the entry of a row; BadStudio, naming it, where it is not what was written."""
    what = f"entry {row.number} of {row.subject}"
    try:
        entry = Entry(
            subject=row.subject,
            act=Act(row.act),
            at=row.at,
            written=row.written,
            zone=row.zone,
            number=row.number,
            step=row.step,
            note=row.note,
            readings=_mapping(row.readings, what),
            data=_mapping(row.data, what),
            target=row.target,
        )
        sound = seal(entry) == row.seal
    except (ValueError, TypeError, AttributeError) as error:
        raise BadStudio(UNREADABLE.format(what=what)) from error
    if not sound:
        raise BadStudio(UNREADABLE.format(what=what))
    return entry


def _mapping(text: str, what: str) -> Mapping[str, Any]:
    value = from_json(text, what)
    if not isinstance(value, dict):
        raise BadStudio(UNREADABLE.format(what=what))
    return value


class Journal:
    """The entries of all lots, milks and baths."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def append(self, entry: Entry) -> Entry:
        """Write an entry as the next of its subject; give it with its number.

        What `entry.number` says is not looked at. Instants must be aware. Refusal where
        what was typed holds bytes that are no text.
        """
        try:
            numbered = replace(entry, number=self.last_number(entry.subject) + 1)
            row = row_of(numbered)
        except UnicodeEncodeError as error:
            raise Refusal(NO_TEXT) from error
        self._session.execute(insert(ENTRY), [row])
        return numbered

    def of(self, subject: str) -> tuple[Entry, ...]:
        """Give all entries of a lot or milk as they were written; () where there is none.

        BadStudio where one of them is spoiled or missing.
        """
        return self.of_many([subject]).get(subject, ())

    def of_many(self, subjects: Iterable[str]) -> dict[str, tuple[Entry, ...]]:
        """Give the entries of several subjects; one without entries is left out."""
        wanted = sorted(set(subjects))
        found: dict[str, list[Entry]] = defaultdict(list)
        for start in range(0, len(wanted), CHUNK):
            part = wanted[start : start + CHUNK]
            for entry in self._entries(select(*COLUMNS).where(ENTRY.c.subject.in_(part))):
                found[entry.subject].append(entry)
        for subject, entries in found.items():
            if [entry.number for entry in entries] != list(range(1, len(entries) + 1)):
                raise BadStudio(UNREADABLE.format(what=f"not all entries of {subject} are there"))
        return {subject: tuple(entries) for subject, entries in found.items()}

    def subjects(self, prefix: str = "") -> tuple[str, ...]:
        """Give the codes that have entries and begin with `prefix`, in order of their text."""
        # The bounds let the index find them; LIKE alone would look at every entry there is.
        begins = and_(
            ENTRY.c.subject.startswith(prefix, autoescape=True),
            ENTRY.c.subject.between(prefix, f"{prefix}\uffff"),
        )
        statement = select(ENTRY.c.subject).distinct().where(begins).order_by(ENTRY.c.subject)
        return tuple(row.subject for row in rows(self._session, statement))

    def last_number(self, subject: str) -> int:
        """Give the number of the latest entry of a subject, 0 where there is none."""
        statement = select(func.max(ENTRY.c.number)).where(ENTRY.c.subject == subject)
        return self._session.execute(statement).scalar() or 0

    def births(self, subjects: Iterable[str]) -> dict[str, tuple[datetime, int]]:
        """Give when each journal was begun, by the clock of then, and its last number."""
        wanted = sorted(set(subjects))
        found: dict[str, tuple[datetime, int]] = {}
        for start in range(0, len(wanted), CHUNK):
            part = ENTRY.c.subject.in_(wanted[start : start + CHUNK])
            first = select(ENTRY.c.subject, ENTRY.c.written).where(part, ENTRY.c.number == 1)
            last = select(ENTRY.c.subject, func.max(ENTRY.c.number).label("last")).where(part)
            ends = {row.subject: row.last for row in rows(self._session, last.group_by("subject"))}
            for row in rows(self._session, first):
                found[row.subject] = (row.written, ends[row.subject])
        return found

    def last_written(self) -> datetime | None:
        """Give when the last entry was written, by the clock of then; None where none is."""
        last = select(ENTRY.c.written).order_by(ENTRY.c.id.desc()).limit(1)
        found = rows(self._session, last)
        written: datetime | None = found[0].written if found else None
        return written

    def mark(self) -> int:
        """Give a number that grows with every entry written, whatever its subject."""
        return self._session.execute(select(func.max(ENTRY.c.id))).scalar() or 0

    def written_at(self, moment: datetime) -> tuple[str, ...]:
        """Give the subjects of which an entry was written at exactly this moment."""
        asked = select(ENTRY.c.subject).distinct().where(ENTRY.c.written == moment)
        return tuple(row.subject for row in rows(self._session, asked.order_by(ENTRY.c.subject)))

    def after(self, mark: int) -> tuple[Entry, ...]:
        """Give all entries written after a mark, in the order in which they were written."""
        asked = select(*COLUMNS).where(ENTRY.c.id > mark).order_by(ENTRY.c.id)
        return tuple(entry_of(row) for row in rows(self._session, asked))

    def anchor(self) -> tuple[int, int]:
        """Give the place and the seal of the entry written last; (0, 0) where there is none."""
        last = select(ENTRY.c.id, ENTRY.c.seal).order_by(ENTRY.c.id.desc()).limit(1)
        row = self._session.execute(last).first()
        return (int(row.id), int(row.seal)) if row is not None else (0, 0)

    def holds(self, anchor: tuple[int, int]) -> bool:
        """Say whether that entry is still in its place: no other journal was put here since."""
        place, seal_then = anchor
        if not place:
            return True
        found = self._session.execute(select(ENTRY.c.seal).where(ENTRY.c.id == place)).scalar()
        return found == seal_then

    def touched_since(self, mark: int) -> tuple[str, ...]:
        """Give the subjects that got entries after `mark`, in order of their text."""
        statement = select(ENTRY.c.subject).distinct().where(ENTRY.c.id > mark)
        found = rows(self._session, statement.order_by(ENTRY.c.subject))
        return tuple(row.subject for row in found)

    def _entries(self, statement: Select[Any]) -> tuple[Entry, ...]:
        ordered = statement.order_by(ENTRY.c.subject, ENTRY.c.number)
        return tuple(entry_of(row) for row in rows(self._session, ordered))
