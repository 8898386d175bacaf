"""Copies kept, shown, compared and put back."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime
from pathlib import Path
from typing import Any, Final, Protocol

from studio_log.domain.errors import Question, Refusal
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.words import whole_moment
from studio_log.services import copies as c
from studio_log.services.commands import Outcome
from studio_log.services.copies_elsewhere import lost_words
from studio_log.services.copies_listed import listed
from studio_log.services.keeping import Upkeep
from studio_log.services.places import read_places
from studio_log.services.ports import Clock
from studio_log.store import files
from studio_log.store.backup import backup, daily_copy
from studio_log.store.compare import Difference, Holding, compare
from studio_log.store.database import Store
from studio_log.store.restore import restore

MOST_NAMED: Final = 8
"""Codes in a sentence; of more the first are named, and how many there are."""


class Studio(Protocol):
    """The studio, as it is seen from here."""

    folder: Path
    store: Store
    clock: Clock
    upkeep: Upkeep

    @property
    def zone(self) -> str:
        """IANA name of the studio's zone."""
        ...

    def local_now(self) -> datetime:
        """Give the present in that zone."""
        ...

    def begin_anew(self) -> None:
        """Open the file again."""
        ...


def keep_daily(studio: Studio, now: datetime, *, anew: bool = False) -> None:
    """Keep today's copy; a failing one is said, never in the way."""
    upkeep = studio.upkeep
    try:
        made = daily_copy(studio.store, now, anew=anew)
        day = tr("copy kept {day}", day=made.stem[-10:]) if made else tr("copy kept today")
        upkeep.copy_words = day
    except Refusal as refusal:
        upkeep.copy_words = tr("no copy could be kept today: {refusal}", refusal=refusal)


def take_copy(studio: Studio, _command: c.TakeCopy) -> Outcome:
    """Take today's copy anew; Refusal where that fails. The other place follows by itself."""
    daily_copy(studio.store, studio.local_now(), anew=True)
    studio.upkeep.copy_words = tr("copy kept today")
    studio.upkeep.anew = True
    return Outcome(tr("A copy is kept."), reminders=True)


def backup_to(studio: Studio, command: c.BackupTo) -> Outcome:
    """Write a copy to a file."""
    return Outcome(backup_words(studio, command.to))


def backup_words(studio: Studio, to: Path) -> str:
    """Write a copy to a file and say what was written."""
    made = backup(studio.store, to)
    words = tr("A copy of the studio is in {file}.", file=to)
    photos = made.photos
    if photos.copied or photos.there:
        words += " " + counted(
            photos.copied + photos.there,
            tr_later("Its photo lies beside it."),
            tr_later("Its {n} photos lie beside it."),
        )
    return f"{words} {lost_words(len(photos.lost))}".strip()


def restore_copy(studio: Studio, command: c.RestoreCopy) -> Outcome:
    """Put a copy back; asked for first, with what it would change."""
    if not command.sure:
        told = " ".join(difference_words(compare(studio.folder, command.source), studio.zone))
        raise Question(tr("{told} Put this copy back?", told=told))
    kept = restore(studio.folder, command.source, studio.clock.now())
    studio.begin_anew()
    words = tr("The studio is as it was in {file}.", file=command.source)
    if kept is not None:
        words += tr(" What was here before is kept: {file}.", file=kept)
    return Outcome(words, lots=frozenset({"*"}), settings=True, reminders=True)


HANDLERS: Final[Mapping[type, Callable[[Studio, Any], Outcome]]] = {
    c.TakeCopy: take_copy,
    c.BackupTo: backup_to,
    c.RestoreCopy: restore_copy,
}
"""Done outside any transaction: a copy is taken of what is committed."""


def compared(studio: Studio, question: c.CompareCopy) -> tuple[str, ...]:
    """Say what putting a copy back would change."""
    return tuple(difference_words(compare(studio.folder, question.source), studio.zone))


def difference_words(seen: Difference, zone: str) -> Iterator[str]:
    """Say what putting a copy back would change, a sentence each."""
    yield tr("The copy holds {there}.", there=_holding(seen.there, zone))
    if not seen.here.readable:
        yield tr("What is here now cannot be read; it is kept as it is.")
        return
    yield tr("The studio here holds {here}.", here=_holding(seen.here, zone))
    groups = (
        (seen.older, tr_later("Entries written since would be gone of {codes}.")),
        (seen.missing, tr_later("Not in the copy, and gone with it: {codes}.")),
        (seen.parted, tr_later("Written differently here and there: {codes}.")),
        (seen.newer, tr_later("The copy has further entries of {codes}.")),
        (seen.back, tr_later("In the copy alone, and back with it: {codes}.")),
    )
    for codes, words in groups:
        if codes:
            yield tr(words, codes=_named(codes))
    if not any(codes for codes, _ in groups):
        yield tr("Both hold the same journal.")
    if seen.photos_lost:
        yield counted(
            seen.photos_lost,
            tr_later("1 photo lies neither here nor beside the copy."),
            tr_later("{n} photos lie neither here nor beside the copy."),
        )
    yield tr("What is here now is kept among the copies.")


def _holding(held: Holding, zone: str) -> str:
    lots = counted(held.lots, tr_later("{n} lot"), tr_later("{n} lots"))
    entries = counted(held.entries, tr_later("{n} entry"), tr_later("{n:,} entries"))
    if held.last_written is None:
        return tr("{lots} and {entries}", lots=lots, entries=entries)
    last = whole_moment(held.last_written, zone)
    return tr("{lots} and {entries}, the last of {last}", lots=lots, entries=entries, last=last)


def _named(codes: tuple[str, ...]) -> str:
    named = ", ".join(codes[:MOST_NAMED])
    more = len(codes) - MOST_NAMED
    return tr("{named} and {more} more", named=named, more=more) if more > 0 else named


def copies_seen(studio: Studio, _question: c.CopiesFor) -> c.CopiesSeen:
    """List the copies here, and those that were last seen in the other place."""
    found = [*listed(studio.folder / files.COPIES, ""), *studio.upkeep.copies_there]
    upkeep = studio.upkeep
    return c.CopiesSeen(
        tuple(sorted(found, key=lambda one: (one.day or date.min, one.path.name), reverse=True)),
        read_places(studio.folder).copies,
        upkeep.elsewhere_words,
        upkeep.faults.get("copies", ""),
        studio.local_now().date(),
    )
