"""Picture files as they come: looked into with limits, before anything is kept."""

import struct
import warnings
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from PIL import Image

from studio_log.domain.errors import Refusal
from studio_log.domain.wall_clock import from_wall

MOST_BYTES: Final = 60_000_000
MOST_PIXELS: Final = 100_000_000
KINDS: Final[Mapping[str, str]] = {"JPEG": "jpg", "MPO": "jpg", "PNG": "png", "WEBP": "webp"}
READ: Final = ("JPEG", "PNG", "WEBP")
EXIF: Final = 0x8769
TAKEN: Final = ((0x9003, 0x9011), (0x9004, 0x9012))
"""When it was taken or digitised, and the offset from UTC of each (Exif 2.31, table 8)."""
TURNED: Final = frozenset({5, 6, 7, 8})
"""Orientations that lay a picture on its side (Exif 2.31, tag 274)."""
BROKEN: Final = (
    OSError, SyntaxError, ValueError, TypeError, KeyError, IndexError, EOFError, AttributeError,
    ArithmeticError, MemoryError, RuntimeError, struct.error, zlib.error,
)  # fmt: skip
"""What Pillow raises over files that are not what they say."""
KEPT: Final = "Nothing was changed."

# Sizes are looked at in the header here, before anything is unpacked.
Image.MAX_IMAGE_PIXELS = None


@dataclass(frozen=True)
class Facts:
    """What a picture says of itself; width and height as it is looked at, upright."""

    kind: str
    width: int
    height: int
    taken_at: datetime | None = None


def read_file(path: Path) -> bytes:
    """Give a file's content; Refusal where it cannot be read or is larger than 60 MB."""
    try:
        if not path.is_file():
            raise Refusal(f"{path.name} is no file that can be read. {KEPT}")
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except OSError as error:
        why = error.strerror or "the system refuses it"
        raise Refusal(f"{path.name} cannot be read ({why}). {KEPT}") from error
    return content


def look(content: bytes, name: str, zone: str) -> Facts:
    """Look a picture over whole; Refusal for one that is broken, giant or of another kind."""
    if len(content) > MOST_BYTES:
        raise Refusal(f"{name} is larger than 60 MB. {KEPT} Save it smaller and try again.")
    with warnings.catch_warnings():
        # Pillow warns of a damaged Exif; what comes of it is looked at here.
        warnings.simplefilter("ignore")
        return _looked_over(content, name, zone)


def _looked_over(content: bytes, name: str, zone: str) -> Facts:
    try:
        image = Image.open(BytesIO(content), formats=READ)
    except BROKEN as error:
        raise Refusal(
            f"{name} is not a JPEG, PNG or WebP picture, or its beginning is damaged. {KEPT} "
            "Save it as a JPEG and try again."
        ) from error
    with image:
        wide, high = image.size
        if wide * high > MOST_PIXELS:
            raise Refusal(
                f"{name} has {wide} × {high} points, more than 100 million. {KEPT} "
                "Save it smaller and try again."
            )
        return _facts(image, name, zone)


def _facts(image: Image.Image, name: str, zone: str) -> Facts:
    kind = KINDS[image.format or "JPEG"]
    wide, high = image.size
    taken, turned = _exif(image, zone)
    try:
        image.draft("RGB", (max(wide // 8, 1), max(high // 8, 1)))
        image.load()
    except BROKEN as error:
        raise Refusal(
            f"{name} breaks off or is damaged inside. {KEPT} Copy it again from where it came."
        ) from error
    return Facts(kind, *((high, wide) if turned else (wide, high)), taken)


def _exif(image: Image.Image, zone: str) -> tuple[datetime | None, bool]:
    """Give when it was taken, and whether it lies on its side; a damaged Exif says neither."""
    try:
        exif = image.getexif()
        turned = exif.get(274) in TURNED
        inner = exif.get_ifd(EXIF)
        for moment, offset in TAKEN:
            taken = _moment(str(inner.get(moment, "")), str(inner.get(offset, "")), zone)
            if taken is not None:
                return taken, turned
    except BROKEN:
        return None, False
    return None, turned


def _moment(text: str, offset: str, zone: str) -> datetime | None:
    """Read "2026:06:09 14:02:00", in the zone given unless the picture names its offset."""
    try:
        local = datetime.strptime(text.strip("\0 ")[:19], "%Y:%m:%d %H:%M:%S")  # noqa: DTZ007
    except ValueError:
        return None
    if local.year < 1990:
        return None
    try:
        return datetime.strptime(f"{local:%Y-%m-%d %H:%M:%S} {offset.strip(chr(0) + ' ')}",
                                 "%Y-%m-%d %H:%M:%S %z").astimezone(UTC)  # fmt: skip
    except ValueError:
        return from_wall(local, ZoneInfo(zone)).at
