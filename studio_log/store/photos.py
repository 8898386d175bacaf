"""Photos: the pictures beside the log, named by their content, and the entries they belong to."""

import hashlib
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path
from typing import Final

from sqlalchemy import select, text
from sqlmodel import Session

from studio_log.store import faults, files
from studio_log.store.rows import rows, upsert, values_of
from studio_log.store.tables import PHOTO

FOLDER: Final = "photos"


@dataclass(frozen=True)
class PhotoRecord:
    """One photo of one entry. `hash` is the SHA-256 of the file in hex, `size` its bytes."""

    lot: str
    entry: int
    hash: str
    kind: str
    """"jpg", "png" or "webp"."""
    name: str
    size: int
    width: int
    height: int
    step: int | None = None
    taken_at: datetime | None = None

    @property
    def file(self) -> str:
        """Name of the file in the folder of photos."""
        return f"{self.hash}.{self.kind}"


class Photos:
    """The photos of all lots. Files are only ever added: an undo hides, it deletes nothing."""

    def __init__(self, session: Session) -> None:
        self._session = session

    @property
    def folder(self) -> Path:
        """Where the pictures are kept: beside the studio's file."""
        return Path(self._session.info["folder"]) / FOLDER

    def put(self, record: PhotoRecord, content: bytes) -> None:
        """Keep a picture and say whose it is; BadStudio where the disk refuses."""
        upsert(self._session, PHOTO, [asdict(record)])
        self._session.flush()
        keep(self.folder / record.file, content, record.hash)
        put_on_server(self._session, record.hash, content)

    def unlike(self, other: "Photos") -> tuple[PhotoRecord, ...]:
        """Give those that another state of the studio does not have."""
        known = set(other.every())
        return tuple(one for one in self.every() if one not in known)

    def every(self) -> tuple[PhotoRecord, ...]:
        """Give all there are, by lot and entry."""
        ordered = select(PHOTO).order_by(PHOTO.c.lot, PHOTO.c.entry)
        return tuple(PhotoRecord(**values_of(row)) for row in rows(self._session, ordered))

    def of_hashes(self, hashes: Iterable[str]) -> dict[str, PhotoRecord]:
        """Give one record for each hash that is known."""
        wanted = sorted(set(hashes))[:900]
        ordered = select(PHOTO).where(PHOTO.c.hash.in_(wanted)).order_by(PHOTO.c.lot, PHOTO.c.entry)
        return {row.hash: PhotoRecord(**values_of(row)) for row in rows(self._session, ordered)}


def put_on_server(session: Session, digest: str, content: bytes) -> None:
    """Let the other laptops have a picture, where the studio lies on a server."""
    if session.get_bind().dialect.name == "postgresql":
        asked = text(
            "INSERT INTO studio_picture (hash, content) VALUES (:hash, :content) "
            "ON CONFLICT DO NOTHING"
        )
        session.execute(asked, {"hash": digest, "content": content})


def keep(path: Path, content: bytes, digest: str) -> None:
    """Write a picture once, whole and unchanged; one that was spoilt on the disk is mended."""
    with faults.told_with_disk(path.parent.parent):
        if path.exists() and hashlib.sha256(path.read_bytes()).hexdigest() == digest:
            return
        path.parent.mkdir(exist_ok=True)
        part = path.with_name(f".{path.name}.part")
        try:
            part.write_bytes(content)
            files.settle(part)
            part.replace(path)
            files.settle(path)
        finally:
            part.unlink(missing_ok=True)
