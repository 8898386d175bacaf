"""Where this laptop puts the calendar and further copies: a small file beside the log.

It is no setting of the studio: another laptop, or a studio put back on one, has other sticks.
"""

import json
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.services.whole_file import write_whole

FILE_NAME: Final = "places.json"
LONGEST: Final = 4_000


@dataclass(frozen=True)
class Places:
    """Absolute paths; "" where nothing was chosen."""

    calendar: str = ""
    """A file, or a folder, that follows the plan."""
    copies: str = ""
    """A folder that gets a copy each day as well: on a stick, or one that is synced."""


@dataclass(frozen=True)
class ChangePlaces:
    """Choose places; None leaves one as it is, "" gives it up."""

    calendar: str | None = None
    copies: str | None = None


@dataclass(frozen=True)
class PlacesFor:
    """Ask what is chosen on this laptop, and how it fares."""


@dataclass(frozen=True)
class PlacesSeen:
    """What is chosen; words on the last writing, and a sentence where it failed."""

    places: Places
    calendar_words: str = ""
    calendar_fault: str = ""


def read_places(folder: Path) -> Places:
    """Give what was chosen; nothing where the file is missing or makes no sense."""
    try:
        kept = json.loads((folder / FILE_NAME).read_bytes()[:100_000])
        found = {name: kept.get(name, "") for name in ("calendar", "copies")}
    except (OSError, ValueError, AttributeError, RecursionError):
        return Places()
    return Places(**{name: where for name, where in found.items() if _fits(where)})


def _fits(where: object) -> bool:
    return isinstance(where, str) and len(where) <= LONGEST and Path(where).is_absolute()


def change_places(folder: Path, command: ChangePlaces) -> Places:
    """Keep what was chosen and give all of it; Refusal where it cannot serve."""
    before = read_places(folder)
    wanted = {name: where for name, where in asdict(command).items() if where is not None}
    for where in filter(None, wanted.values()):
        if "\0" in where or not _fits(where):
            raise Refusal(tr("That is no place on this laptop. Nothing was changed."))
    after = replace(before, **wanted)
    if wanted.get("calendar"):
        _check_calendar(folder, Path(after.calendar))
    if wanted.get("copies"):
        _check_copies(folder, Path(after.copies))
    write_whole(folder / FILE_NAME, json.dumps(asdict(after), ensure_ascii=False).encode())
    return after


def _check_calendar(folder: Path, chosen: Path) -> None:
    if _inside(chosen, folder):
        raise Refusal(
            tr("The calendar cannot lie in the studio’s own folder. Nothing was changed.")
        )
    if not (chosen.is_dir() or chosen.parent.is_dir()):
        raise Refusal(
            tr("There is no folder {folder}. Nothing was changed; choose another.", folder=chosen)
        )
    if chosen.is_file() and not is_calendar(chosen):
        raise Refusal(
            tr("{file} is there already and is no calendar. Nothing was changed.", file=chosen)
        )


def _check_copies(folder: Path, chosen: Path) -> None:
    if _inside(chosen, folder):
        raise Refusal(
            tr(
                "That is the studio’s own folder: what befalls it befalls the copies too. "
                "Nothing was changed; choose another."
            )
        )
    if not chosen.is_dir():
        raise Refusal(
            tr("There is no folder {folder}. Nothing was changed; choose another.", folder=chosen)
        )


def _inside(chosen: Path, folder: Path) -> bool:
    """Say whether a place is the studio's folder or lies in it, by whatever name."""
    try:
        return chosen.resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        return False


def is_calendar(path: Path) -> bool:
    """Say whether a file begins as a calendar does (RFC 5545, 3.4)."""
    head = b"BEGIN:VCALENDAR"
    try:
        with path.open("rb") as file:
            return file.read(len(head)).upper() == head
    except OSError:
        return False
