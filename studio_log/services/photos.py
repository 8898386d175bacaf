"""Photos of a lot: looked over, kept beside the log by their content, told on the sheet."""

import hashlib
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry, standing
from studio_log.domain.lots import Lot
from studio_log.domain.reminders import Cause
from studio_log.present.words import moment
from studio_log.services.commands import Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import clean
from studio_log.services.pictures import AddPhoto, Picture, PictureFor
from studio_log.services.swatches import NoteSwatch
from studio_log.store.photos import PhotoRecord

if TYPE_CHECKING:
    from studio_log.store.pictures import Facts

LONGEST_NAME = 200
MOST_SEEN = 60
_SEEN: "OrderedDict[tuple[str, str], Facts]" = OrderedDict()
"""What pictures looked over lately said, by hash and zone; used on the worker alone."""


def picture(_house: Any, desk: Desk, question: PictureFor) -> Picture:
    """Say what a picture is; Refusal where it cannot be kept."""
    content, name = _content(question)
    facts = _looked_over(content, name, desk.zone, _digest(content))
    taken = facts.taken_at if facts.taken_at is not None and facts.taken_at <= desk.now else None
    return Picture(
        name,
        f"{facts.width} × {facts.height}, {len(content) / 1e6:.1f} MB",
        taken,
        moment(taken, desk.now, desk.zone) if taken else "",
    )


def add_photo(desk: Desk, command: AddPhoto) -> Outcome:
    """Keep a picture and the entry that names it; the same picture is one file."""
    lot = desk.lot(command.code)
    picture = looked_at(desk, command)
    entry = desk.entry(
        lot.code,
        Act.NOTE,
        command.at,
        step=lot.step(command.step).number if command.step is not None else None,
        note=clean(command.note, "The note"),
        data={"photo": picture.digest},
    )
    after = desk.write(lot, entry, sure=command.sure)
    desk.settle(after, Cause(entry.step, why="a photo was kept"))
    keep_photo(desk, lot.code, desk.cache[lot.code][0], entry.step, picture)
    words = f"{lot.code}: {picture.name} is kept."
    return Outcome(words, lots=frozenset({lot.code}), subject=lot.code)


@dataclass(frozen=True)
class LookedAt:
    """A picture that can be kept: its bytes, its name, its SHA-256 and what it says of itself."""

    content: bytes
    name: str
    digest: str
    facts: "Facts"


def looked_at(desk: Desk, command: AddPhoto | NoteSwatch) -> LookedAt:
    """Look over the picture of a command; Refusal where it cannot be kept."""
    content, name = _content(command)
    digest = _digest(content)
    return LookedAt(content, name, digest, _looked_over(content, name, desk.zone, digest))


def keep_photo(desk: Desk, code: str, entry: int, step: int | None, picture: LookedAt) -> None:
    """Keep a picture as that of an entry of a lot or swatch."""
    facts = picture.facts
    record = PhotoRecord(
        lot=code,
        entry=entry,
        hash=picture.digest,
        kind=facts.kind,
        name=picture.name,
        size=len(picture.content),
        width=facts.width,
        height=facts.height,
        step=step,
        taken_at=facts.taken_at,
    )
    desk.work.photos.put(record, picture.content)


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _looked_over(content: bytes, name: str, zone: str, digest: str) -> "Facts":
    """Look a picture over, once: it is offered first and kept a moment later."""
    facts = _SEEN.get((digest, zone))
    if facts is None:
        from studio_log.store.pictures import look  # noqa: PLC0415 - Pillow is for pictures only

        facts = _SEEN[digest, zone] = look(content, name, zone)
        while len(_SEEN) > MOST_SEEN:
            _SEEN.popitem(last=False)
    return facts


HANDLERS: Mapping[type, Callable[[Desk, Any], Outcome]] = {AddPhoto: add_photo}


def _content(of: PictureFor | AddPhoto | NoteSwatch) -> tuple[bytes, str]:
    name = of.name or (of.path.name if of.path is not None else "The picture")
    shown = "".join(sign for sign in name if sign.isprintable())[-LONGEST_NAME:] or "The picture"
    if of.path is None:
        if not of.content:
            raise Refusal("There is no picture to keep. Nothing was changed.")
        return of.content, shown
    from studio_log.store.pictures import read_file  # noqa: PLC0415 - as above

    return read_file(of.path), shown


def photos_data(desk: Desk, lot: Lot, entries: tuple[Entry, ...]) -> list[dict[str, Any]]:
    """Give the photos that stand in a lot's journal, as plain JSON values, latest last."""
    named = [entry for entry in standing(entries) if isinstance(entry.data.get("photo"), str)]
    if not named:
        return []
    known = desk.work.photos.of_hashes(str(entry.data["photo"]) for entry in named)
    folder = desk.work.photos.folder
    return [
        _data(desk, lot, entry, known[str(entry.data["photo"])], str(folder))
        for entry in named
        if entry.data["photo"] in known
    ]


def _data(desk: Desk, lot: Lot, entry: Entry, kept: PhotoRecord, folder: str) -> dict[str, Any]:
    there = entry.step is not None and any(one.number == entry.step for one in lot.steps)
    return {
        "entry": entry.number,
        "hash": kept.hash,
        "file": f"{folder}/{kept.file}",
        "name": kept.name,
        "size": kept.size,
        "width": kept.width,
        "height": kept.height,
        "step": lot.step(entry.step or 0).title if there else "",
        "note": entry.note,
        "when": moment(entry.at, desk.now, desk.zone),
    }
