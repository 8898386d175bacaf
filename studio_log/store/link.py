"""Which server a studio lies on: a small file of the folder, without the password."""

import json
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from studio_log.domain.errors import BadStudio, Refusal
from studio_log.domain.server_address import ServerAddress, read_address
from studio_log.store import faults, files

FILE_NAME: Final = "shared.json"
LARGEST: Final = 10_000

UNREADABLE: Final = (
    "The file {where}, which says on which server this studio lies, cannot be read. Nothing was "
    "changed. Name the server with --studio {form}, or take the file away to open what is kept "
    "on this laptop."
)


@dataclass(frozen=True)
class Link:
    """Where the studio lies, and the sign by which it is known again."""

    address: ServerAddress
    sign: str = ""
    """"" before anything was fetched."""
    rings: bool = True
    """Whether reminders ring on this laptop."""

    def with_sign(self, sign: str) -> "Link":
        """Give the link to the same server with another studio's sign."""
        return replace(self, sign=sign)


def read_link(folder: Path) -> Link | None:
    """Give the link of a folder, None where its studio is this laptop's own.

    BadStudio where the file is there and makes no sense.
    """
    path = folder / FILE_NAME
    try:
        if not path.is_file():
            return None
        kept = json.loads(path.read_bytes()[:LARGEST])
        address = read_address(str(kept["address"])).address
        return Link(address, str(kept.get("sign", ""))[:64], bool(kept.get("rings", True)))
    except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError,
            Refusal) as error:  # fmt: skip
        words = UNREADABLE.format(where=path, form="postgresql://…")
        raise BadStudio(words) from error


def write_link(folder: Path, link: Link) -> None:
    """Keep a link, whole or not at all."""
    path = folder / FILE_NAME
    part = path.with_name(f".{FILE_NAME}.part")
    told = json.dumps({"address": link.address.text, "sign": link.sign, "rings": link.rings})
    with faults.told_with_disk(folder):
        folder.mkdir(parents=True, exist_ok=True)
        try:
            part.write_text(told, encoding="utf-8")
            files.settle(part)
            part.replace(path)
        finally:
            part.unlink(missing_ok=True)


def remove_link(folder: Path) -> None:
    """Make the studio in a folder this laptop's own."""
    with faults.told_with_disk(folder):
        (folder / FILE_NAME).unlink(missing_ok=True)
