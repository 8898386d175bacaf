"""A damaged studio read into a new file; the damaged one is kept as it was found."""

import shutil
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Final

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.method_text import read_method
from studio_log.domain.methods import Method
from studio_log.services.mending import Mended, mend, report
from studio_log.services.places import read_places
from studio_log.services.whole_file import write_whole
from studio_log.store import faults, files, plain
from studio_log.store.backup import ELSEWHERE, days_in
from studio_log.store.database import Store, open_store
from studio_log.store.link import read_link, write_link
from studio_log.store.restore import swap
from studio_log.store.salvage import Found, pour, read_all

MOST_COPIES: Final = 30


@dataclass(frozen=True)
class Salvaged:
    """What became of it: sentences, whether anything is lost, where the damaged file is kept."""

    lines: tuple[str, ...]
    lost: bool
    kept: Path | None = None


def is_damaged(folder: Path) -> bool:
    """Say whether the studio in a folder does not open, or holds entries that are not whole.

    BadStudio where it cannot be reached, is locked, is something else or from a newer version:
    then nothing here would help.
    """
    path = folder / files.FILE_NAME
    try:
        if plain.examine(path) is None:
            return bool(days_in(folder / files.COPIES))
        with open_store(folder, create=False) as store:
            return not _is_sound(store)
    except faults.Damaged:
        return True


def _is_sound(store: Store) -> bool:
    """Say whether all entries and methods are what was written."""
    try:
        with store.reading() as look:
            for code in look.journal.subjects():
                look.journal.of(code)
            look.methods.all()
            look.settings.all()
    except BadStudio:
        return False
    return True


def look_over(folder: Path, shipped: Mapping[str, str]) -> Salvaged:
    """Say what could be read and what is lost; nothing is changed."""
    mended = _mended(folder, shipped)
    return Salvaged(tuple(mended.lines), _is_lost(mended))


def salvage(folder: Path, shipped: Mapping[str, str], now: datetime) -> Salvaged:
    """Read what can be read into a new file and put it in the damaged one's place.

    The damaged one is kept in `copies`, with a report of all that could not be placed. What is
    worked out from the journal is missing in the new file until it is opened and rebuilt.
    BadStudio where the disk refuses: everything is as it was then.
    """
    mended = _mended(folder, shipped)
    stamp = files.stamp(now)
    with _work_folder(folder) as work:
        with open_store(work / "new", now=now) as store:
            pour(store, mended.entries, mended.rows)
        part = work / "whole.sqlite3"
        plain.copy(work / "new" / files.FILE_NAME, part)
        kept = swap(part, folder / files.FILE_NAME, folder / files.COPIES, f"damaged-{stamp}")
    lines = list(mended.lines)
    if (link := read_link(folder)) is not None:
        write_link(folder, link.with_sign(""))  # what the server has is fetched whole
        lines.append(f"The studio lies on {link.address.text}, and is fetched from there anew.")
    if kept is not None:
        lines.append(f"The damaged file is kept: {kept}.")
        told = kept.with_suffix(".txt")
        with suppress(Refusal):
            write_whole(told, report(mended, str(kept), now).encode())
            lines.append(f"The report is {told}.")
    return Salvaged(tuple(lines), _is_lost(mended), kept)


def _is_lost(mended: Mended) -> bool:
    return mended.lost > 0 or not mended.sure


@contextmanager
def _work_folder(folder: Path) -> Iterator[Path]:
    """Give a folder for the time of the work, beside the studio: what is damaged is not touched."""
    with faults.told_with_disk(folder):
        made = Path(tempfile.mkdtemp(prefix=".salvage-", dir=folder))
    try:
        yield made
    finally:
        shutil.rmtree(made, ignore_errors=True)


def _mended(folder: Path, shipped: Mapping[str, str]) -> Mended:
    path = folder / files.FILE_NAME
    with _work_folder(folder) as work:
        found = _read(path, work, "damaged")
        copies = [
            (copy.name, read)
            for number, copy in enumerate(_copies(folder))
            if (read := _read_copy(copy, work, f"copy{number}")) is not None
        ]
    book = _book([found, *(copy for _, copy in copies)], shipped)
    return mend(found, copies, book)


def _read(path: Path, work: Path, name: str) -> Found:
    """Read a copy of a file, so that nothing is changed where it lies."""
    place = work / name
    with faults.told_with_disk(path.parent):
        place.mkdir()
        for suffix in ("", "-wal"):
            beside = path.with_name(path.name + suffix)
            if beside.exists():
                shutil.copyfile(beside, place / f"{files.FILE_NAME}{suffix}")
        if not (place / files.FILE_NAME).exists():
            return Found()
        return read_all(place / files.FILE_NAME)


def _read_copy(path: Path, work: Path, name: str) -> Found | None:
    try:
        return _read(path, work, name)
    except BadStudio:
        return None
    finally:
        shutil.rmtree(work / name, ignore_errors=True)


def _copies(folder: Path) -> list[Path]:
    """Give the copies that may hold what is lost, the newest first, here and elsewhere."""
    found = dict(days_in(folder / files.COPIES))
    chosen = read_places(folder).copies
    if chosen:
        with suppress(OSError):
            for place in sorted(Path(chosen).glob(f"{ELSEWHERE}*")):
                # Of several studios on one stick, journals that begin otherwise are passed over.
                found = {**days_in(place), **found}
    return [found[day] for day in sorted(found, reverse=True)][:MOST_COPIES]


def _book(read: Iterable[Found], shipped: Mapping[str, str]) -> dict[tuple[str, int], Method]:
    """Give the methods that journals may name: those read, and those of the program."""
    texts = [*shipped.values()]
    texts += [row["text"] for one in read for row in one.rows.get("method", {}).values()]
    book: dict[tuple[str, int], Method] = {}
    for text in dict.fromkeys(texts):
        with suppress(Refusal):
            method = read_method(text, name="a method")
            book[method.key] = method
    return book
