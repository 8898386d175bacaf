"""An exported folder or archive read back: hostile until checked, and all of it or nothing."""

import hashlib
import json
import stat
import zipfile
import zlib
from collections import Counter
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from typing import Any, Final

from sqlalchemy import delete, insert, select
from sqlmodel import Session

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.store import faults
from studio_log.store.folder_shape import (
    DOCUMENT,
    FORMAT,
    PICTURES,
    VERSION,
    inward,
    spoiled,
    truths,
)
from studio_log.store.journal import seal
from studio_log.store.photos import keep
from studio_log.store.rows import from_json
from studio_log.store.tables import ENTRY, METADATA, PHOTO

MOST_DOCUMENT: Final = 1_000_000_000
"""Bytes of studio.json; a studio of 20,000 lots has about a tenth."""
MOST_FILES: Final = 100_000
MOST_UNPACKED: Final = 8_000_000_000
MOST_SWELLING: Final = 200
"""How many times larger than packed an archive's content may be: JSON packs to a tenth."""
MOST_PICTURE: Final = 200_000_000
_BIT: Final = 1 << 20


@dataclass(frozen=True)
class Folder:
    """What a folder holds, checked as far as one row can be."""

    place: Path
    rows: Mapping[str, list[dict[str, Any]]]
    photos: Mapping[str, str]
    """Hash -> file, below the folder."""
    written: str

    @property
    def counts(self) -> dict[str, int]:
        """Give how many rows each table has."""
        return {name: len(rows) for name, rows in self.rows.items()}


def is_export(path: Path) -> bool:
    """Say whether a path is a folder, or an archive, that an export wrote."""
    if path.is_dir():
        return (path / DOCUMENT).is_file()
    try:
        with zipfile.ZipFile(path) as archive:
            return DOCUMENT in archive.namelist()
    except (OSError, zipfile.BadZipFile, ValueError, NotImplementedError):
        return False


@contextmanager
def opened(path: Path) -> Iterator[Folder]:
    """Read a folder or an archive; Refusal where it is not one of ours or does not make sense."""
    with faults.told_with_disk(path):
        if path.is_dir():
            yield _read(path)
            return
        with TemporaryDirectory(prefix="studio-log-import-") as scratch:
            _unpack(path, Path(scratch))
            yield _read(Path(scratch))


def put(session: Session, folder: Folder) -> None:
    """Write all rows into an empty studio; the pictures are another matter.

    Refusal where the studio holds something already.
    """
    if session.execute(select(ENTRY.c.id).limit(1)).first() is not None:
        raise Refusal(
            "This studio holds work already. Nothing was changed: a folder is read back into an "
            "empty studio only. Name a new one with --studio FOLDER."
        )
    for table in reversed(METADATA.sorted_tables):
        if table.name != ENTRY.name:  # of which there is none, and which lets nothing be deleted
            session.execute(delete(table))
    for table in truths():
        rows = folder.rows[table.name]
        for start in range(0, len(rows), 500):
            session.execute(insert(table), rows[start : start + 500])


def put_photos(folder: Folder, pictures: Path | None) -> None:
    """Keep each picture that is there, by its content; None looks them over only.

    One that was lost before the export stays lost.
    """
    kinds = {str(row["hash"]): str(row["kind"]) for row in folder.rows[PHOTO.name]}
    for digest, name in folder.photos.items():
        path = folder.place / name
        if not path.exists():
            continue
        content = path.read_bytes()
        if hashlib.sha256(content).hexdigest() != digest:
            raise spoiled(f"the photo {name} is not the one that was kept")
        if pictures is not None:
            keep(pictures / f"{digest}.{kinds[digest]}", content, digest)


# -- reading -------------------------------------------------------------------------------


def _read(place: Path) -> Folder:
    path = place / DOCUMENT
    if not path.is_file():
        raise Refusal(
            f"There is no {DOCUMENT} in {place}: it is no exported studio. Nothing was changed."
        )
    if path.stat().st_size > MOST_DOCUMENT:
        raise spoiled(f"{DOCUMENT} is far too large")
    try:
        told = json.loads(path.read_bytes(), parse_constant=_no_number)
    except (ValueError, RecursionError) as error:
        raise spoiled(f"{DOCUMENT} is no JSON") from error
    _check_head(told)
    rows = {table.name: _rows(told["tables"], table.name) for table in truths()}
    unknown = sorted(set(told["tables"]) - set(rows))
    if unknown:
        raise spoiled(f"the table {unknown[0][:40]} is not known")
    _check_journal(rows[ENTRY.name])
    _seal_methods(rows)
    return Folder(place, rows, _photo_files(told, rows, place), str(told["written"]))


def _no_number(name: str) -> float:
    raise ValueError(name)


def _check_head(told: Any) -> None:
    if not isinstance(told, dict) or told.get("format") != FORMAT:
        raise spoiled("it is no studio's folder")
    version = told.get("version")
    if isinstance(version, int) and version > VERSION:
        raise Refusal(
            f"The folder was written by a newer Studio Log (version {version} of its form). "
            "Nothing was changed; use that version, or a newer one."
        )
    if version != VERSION or not isinstance(told.get("tables"), dict):
        raise spoiled("its head is incomplete")
    if not isinstance(told.get("written"), str):
        raise spoiled("it does not say when it was written")


def _rows(tables: dict[str, Any], name: str) -> list[dict[str, Any]]:
    found = tables.get(name, [])
    if not isinstance(found, list):
        raise spoiled(f"{name} is no list")
    table = METADATA.tables[name]
    rows = [inward(table, row, f"{name} {n}") for n, row in enumerate(found, 1)]
    keys = [one.name for one in table.primary_key if one.name != "id"]
    twice = [key for key, n in Counter(tuple(r[k] for k in keys) for r in rows).items() if n > 1]
    if keys and twice:
        raise spoiled(f"{name} {twice[0]} is there twice")
    return rows


def _check_journal(rows: list[dict[str, Any]]) -> None:
    """See that every journal counts from one without gaps; give each entry its seal."""
    last: Counter[str] = Counter()
    for row in rows:
        subject = row["subject"]
        last[subject] += 1
        if row["number"] != last[subject]:
            raise spoiled(f"entry {row['number']} of {subject[:20]} is out of turn")
        row["seal"] = seal(_entry(row))


def _entry(row: Mapping[str, Any]) -> Entry:
    what = f"entry {row['number']} of {row['subject'][:20]}"
    try:
        act = Act(row["act"])
    except ValueError as error:
        raise spoiled(f"{what} has an act that is not known") from error
    readings, data = from_json(row["readings"], what), from_json(row["data"], what)
    if not isinstance(readings, dict) or not isinstance(data, dict):
        raise spoiled(f"{what} has readings or data that are no fields")
    return Entry(
        subject=row["subject"], act=act, at=row["at"], written=row["written"], zone=row["zone"],
        number=row["number"], step=row["step"], note=row["note"], readings=readings, data=data,
        target=row["target"],
    )  # fmt: skip


def _seal_methods(rows: Mapping[str, list[dict[str, Any]]]) -> None:
    for row in rows["method"]:
        row["seal"] = zlib.crc32(row["text"].encode())


def _photo_files(
    told: dict[str, Any], rows: Mapping[str, list[dict[str, Any]]], place: Path
) -> dict[str, str]:
    """Give the pictures' files, none of which lies outside the folder."""
    found = told.get("photos")
    if not isinstance(found, dict):
        raise spoiled("the photos are not told")
    known = {row["hash"] for row in rows[PHOTO.name]}
    for digest, name in found.items():
        if digest not in known or not isinstance(name, str):
            raise spoiled("a photo is told that no entry has")
        parts = PurePosixPath(name).parts
        if len(parts) != 2 or parts[0] != PICTURES or not _is_plain(parts[1]):
            raise spoiled(f"the photo {name[:60]} would lie outside the folder")
        path = place / name
        if path.is_symlink() or (path.exists() and path.stat().st_size > MOST_PICTURE):
            raise spoiled(f"the photo {name[:60]} is a link or far too large")
    return found


def _is_plain(name: str) -> bool:
    return name not in {"", ".", ".."} and not set(name) & set("/\\:\0")


# -- archives ------------------------------------------------------------------------------


def _unpack(path: Path, to: Path) -> None:
    """Unpack an archive into a folder that nothing can leave, as much as was said and no more."""
    try:
        with zipfile.ZipFile(path) as archive:
            members = archive.infolist()
            _check_members(members, path.stat().st_size)
            left = MOST_UNPACKED
            for member in members:
                if not member.is_dir():
                    left -= _unpack_one(archive, member, to, left)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, zlib.error) as error:
        raise spoiled("the archive is damaged or of another kind") from error


def _check_members(members: list[zipfile.ZipInfo], packed: int) -> None:
    if len(members) > MOST_FILES:
        raise spoiled("the archive holds far too many files")
    for member in members:
        parts = PurePosixPath(member.filename).parts
        if not parts or member.filename.startswith("/") or not all(map(_is_plain, parts)):
            raise spoiled("a file of the archive would lie outside its folder")
        if stat.S_ISLNK(member.external_attr >> 16):
            raise spoiled("the archive holds links")
    total = sum(member.file_size for member in members)
    if total > MOST_UNPACKED or total > MOST_SWELLING * max(packed, 100_000):
        raise spoiled("the archive would unpack to far too much")


def _unpack_one(archive: zipfile.ZipFile, member: zipfile.ZipInfo, to: Path, left: int) -> int:
    """Unpack one file; what it says of its own size is not believed."""
    path = to.joinpath(*PurePosixPath(member.filename).parts)
    path.parent.mkdir(parents=True, exist_ok=True)
    count, most = 0, min(left, member.file_size)
    with archive.open(member) as source, path.open("xb") as target:
        while bit := source.read(_BIT):
            count += len(bit)
            if count > most:
                raise spoiled("the archive unpacks to more than it says")
            target.write(bit)
    return count
