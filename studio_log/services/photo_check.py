"""Whether the photos that journals name are there and whole, and mending what can be."""

from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.journal import Entry
from studio_log.services.desk import Desk
from studio_log.services.places import read_places
from studio_log.store import files
from studio_log.store.backup import ELSEWHERE
from studio_log.store.photo_files import BESIDE, NAME, carry, sound
from studio_log.store.photos import PhotoRecord

KINDS = ("jpg", "png", "webp")


@dataclass(frozen=True)
class _Wrong:
    """A photo that is not as it should be; `record` None where no row knows it."""

    entry: Entry
    digest: str
    record: PhotoRecord | None
    words: str


def photo_faults(desk: Desk) -> list[str]:
    """Name the photos that are missing, spoilt or unknown. Every file is read."""
    return [one.words for one in _wrong(desk)]


def mend_photos(desk: Desk) -> None:
    """Fetch missing files from the copies, and make rows anew from the files; [] left is best."""
    folder = desk.work.photos.folder
    for one in _wrong(desk):
        names = [one.record.file] if one.record else [f"{one.digest}.{kind}" for kind in KINDS]
        with suppress(BadStudio):
            carry(_fit(folder, names), _places(folder.parent), folder)
        if one.record is None:
            _know(desk, one, names)


def _fit(folder: Path, names: list[str]) -> list[str]:
    """Take a spoilt file out of the way of the whole one; gives the names to look for."""
    for name in names:
        if (folder / name).exists() and sound(folder / name) is None:
            (folder / name).replace(folder / f"spoilt-{name}")
    return names


def _places(folder: Path) -> list[Path]:
    """Give where copies of photos may lie."""
    chosen = read_places(folder).copies
    found = [folder / files.COPIES / BESIDE]
    if chosen:
        with suppress(OSError):
            found += sorted(place / BESIDE for place in Path(chosen).glob(f"{ELSEWHERE}*"))
    return found


def _know(desk: Desk, one: _Wrong, names: list[str]) -> None:
    """Make the row of a photo anew from its file; its name is lost with the row."""
    from studio_log.store.pictures import look  # noqa: PLC0415 - Pillow is for pictures only

    for name in names:
        content = sound(desk.work.photos.folder / name)
        if content is None:
            continue
        with suppress(Refusal):
            facts = look(content, name, desk.zone)
            record = PhotoRecord(
                one.entry.subject, one.entry.number, one.digest, facts.kind, name, len(content),
                facts.width, facts.height, one.entry.step, facts.taken_at,
            )  # fmt: skip
            desk.work.photos.put(record, content)


def _wrong(desk: Desk) -> Iterator[_Wrong]:
    folder = desk.work.photos.folder
    for entry in _with_photos(desk):
        digest = str(entry.data["photo"])
        record = desk.work.photos.of_hashes([digest]).get(digest)
        what = f"The photo of entry {entry.number} of {entry.subject}"
        if record is None:
            yield _Wrong(entry, digest, None, f"{what} is not in the list of photos.")
        elif sound(folder / record.file) is None:
            is_there = (folder / record.file).exists()
            fate = "is spoilt" if is_there else "is missing"
            yield _Wrong(entry, digest, record, f"{what} {fate} ({record.file}).")


def _with_photos(desk: Desk) -> Iterator[Entry]:
    for code in desk.work.journal.subjects():
        with suppress(BadStudio):  # that it does not read is said by the check of the journal
            for entry in desk.work.journal.of(code):
                digest = entry.data.get("photo")
                if isinstance(digest, str) and NAME.fullmatch(f"{digest}.jpg"):
                    yield entry
