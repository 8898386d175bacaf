"""How the copies fare: those here, and those in the place that was chosen on this laptop."""

import json
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Final

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.language.calendar_words import date_words
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.places import read_places
from studio_log.services.whole_file import write_whole
from studio_log.store import files
from studio_log.store.backup import days_in
from studio_log.store.faults import reason

FILE_NAME: Final = "copies.json"
OLD_HERE: Final = timedelta(days=3)
OLD_ELSEWHERE: Final = timedelta(days=7)
"""A stick is plugged in once a week, not every day."""


@dataclass(frozen=True)
class Elsewhere:
    """The last good copy in the chosen place, and since when that place is chosen."""

    where: str = ""
    last: date | None = None
    since: date | None = None


def read_elsewhere(folder: Path) -> Elsewhere:
    """Give what is remembered; nothing where the file is missing or makes no sense."""
    try:
        kept = json.loads((folder / FILE_NAME).read_bytes()[:100_000])
        days = {name: kept.get(name) for name in ("last", "since")}
        dates = {name: date.fromisoformat(day) if day else None for name, day in days.items()}
        return Elsewhere(str(kept["where"]), **dates)
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return Elsewhere()


def note_elsewhere(folder: Path, where: str, today: date, *, good: bool) -> Elsewhere:
    """Remember that a copy is there, or only which place is chosen; gives what is known."""
    before = read_elsewhere(folder)
    if before.where != where:
        before = Elsewhere(where, None, today)
    after = Elsewhere(where, today if good else before.last, before.since or today)
    if after != read_elsewhere(folder):
        row = {
            "where": where,
            "last": after.last.isoformat() if after.last else "",
            "since": after.since.isoformat() if after.since else "",
        }
        try:
            write_whole(folder / FILE_NAME, json.dumps(row).encode(), wait=False)
        except Refusal:
            return after
    return after


def elsewhere_words(known: Elsewhere) -> str:
    """Say when the last good copy was written there."""
    if known.last is None:
        return tr("No copy is there yet.")
    return tr("The last good copy there is of {day}.", day=_day(known.last))


def lost_words(count: int) -> str:
    """Say that photos could not be copied; "" where all were."""
    if not count:
        return ""
    return counted(
        count,
        tr_later("1 photo could not be copied: its file is missing or spoilt."),
        tr_later("{n} photos could not be copied: their files are missing or spoilt."),
    )


def failed_words(known: Elsewhere, chosen: str, refused: BadStudio, today: date) -> tuple[str, str]:
    """Say why no copy could be kept there: as a remark, or as a fault where that is serious.

    A stick that is away is no fault while its last copy is fresh.
    """
    why = tr(reason(refused))
    last = elsewhere_words(known)
    words = tr(
        "No copy could be kept in {folder}: {why}. {last}", folder=chosen, why=why, last=last
    )
    away = not Path(chosen).is_dir()
    fresh = known.last is not None and today - known.last <= OLD_ELSEWHERE
    return (words, "") if away and fresh else ("", words)


def old_words(folder: Path, today: date, *, only_here: bool = False) -> str:
    """Say that the last good copy is old, here or elsewhere; "" while it is not."""
    here = days_in(folder / files.COPIES)
    newest = max(here, default=None)
    if newest is not None and today - newest > OLD_HERE:
        return tr("The last copy of the studio is of {day}. Take one: File, Copies.",
                  day=_day(newest))  # fmt: skip
    chosen = read_places(folder).copies
    known = read_elsewhere(folder)
    if only_here or not chosen or known.where != chosen:
        return ""
    since = known.last or known.since
    if since is None or today - since <= OLD_ELSEWHERE:
        return ""
    return tr(
        "{last} Connect {folder} and it is written by itself.",
        last=elsewhere_words(known), folder=chosen,
    )  # fmt: skip


def _day(day: date) -> str:
    return date_words(day, year=True)
