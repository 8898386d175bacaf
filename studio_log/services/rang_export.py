"""What rang, written out as a table of comma-separated values (RFC 4180) in UTF-8."""

import csv
import io
from collections.abc import Callable, Mapping, Sequence
from typing import Final

from studio_log.services.rang import Rang
from studio_log.services.rang_words import local_iso, tame

RISKY: Final = ("=", "+", "-", "@", "\t", "\r", "\n")
"""A spreadsheet takes a cell that begins with one of these for a formula, or loses its sign."""


def _tries(row: Rang) -> str:
    return "\n".join(
        f"{local_iso(one.at, row.zone)} {tame(one.channel)}: "
        f"{'shown' if one.ok else 'failed'}{', ' if one.words else ''}{tame(one.words)}"
        for one in row.tries
    )


COLUMNS: Final[Mapping[str, Callable[[Rang], str]]] = {
    "due": lambda row: local_iso(row.due, row.zone),
    "lot": lambda row: row.lot,
    "name": lambda row: row.name,
    "step": lambda row: row.step,
    "reminder": lambda row: row.title,
    "kind": lambda row: row.kind,
    "urgency": lambda row: row.urgency,
    "state": lambda row: row.state,
    "first rang": lambda row: local_iso(row.first_rung, row.zone),
    "late, seconds": lambda row: "" if row.late is None else str(int(row.late.total_seconds())),
    "waited for quiet hours until": lambda row: local_iso(row.quiet_until, row.zone),
    "times rung": lambda row: str(row.times),
    "rings": lambda row: " ".join(local_iso(at, row.zone) for at in row.rings),
    "last rang": lambda row: local_iso(row.last_rung, row.zone),
    "rings again": lambda row: local_iso(row.rings_at, row.zone),
    "channels": lambda row: ", ".join(row.channels),
    "answer": lambda row: row.answer,
    "answered": lambda row: local_iso(row.answered_at, row.zone),
    "no longer needed": lambda row: local_iso(row.void_at, row.zone),
    "why not needed": lambda row: row.void_why,
    "tries": _tries,
}


def rang_csv(rows: Sequence[Rang]) -> bytes:
    """Give the rows as CSV with a header; local times carry their offset."""
    page = io.StringIO(newline="")
    writer = csv.writer(page)  # its own defaults are RFC 4180: CRLF, doubled quotes
    writer.writerow(COLUMNS)
    writer.writerows([cell(write(row)) for write in COLUMNS.values()] for row in rows)
    return page.getvalue().encode("utf-8")


def cell(text: str) -> str:
    """Give a cell that every program reads as text; what could be a formula gets an apostrophe."""
    shown = "\n".join(map(tame, text.splitlines())) if "\n" in text else tame(text)
    return f"'{shown}" if text.startswith(RISKY) or shown.startswith(RISKY) else shown
