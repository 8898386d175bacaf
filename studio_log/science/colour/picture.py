"""A photo from anywhere, hostile until it is read: upright pixels in sRGB, or a sentence.

What the camera turned by Exif is set upright; an embedded profile is turned to sRGB (ICC, by
Pillow's colour management); 16 bits become 8. Nothing is decoded before its size is known.
"""

import io
import warnings
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageCms, ImageOps

from studio_log.language.words import tr

LARGEST: Final = 100_000_000
"""Bytes."""
MOST_PIXELS: Final = 100_000_000
FORMATS: Final = ("JPEG", "PNG", "WEBP", "TIFF")
_PLAIN: Final = frozenset({"RGB", "RGBA", "P", "CMYK"})
"""Modes of Pillow that hold colour; "P" may hold greys, which does no harm."""

Codes = NDArray[np.uint8]


class PhotoError(ValueError):
    """A photo that cannot be measured; the words are a sentence for the person."""


@dataclass(frozen=True, eq=False)
class Picture:
    """An open photo. `notes` say what was done to it."""

    image: Image.Image
    profile: bytes | None
    notes: tuple[str, ...]

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels, upright."""
        return self.image.size

    def codes(self, box: tuple[int, int, int, int]) -> tuple[Codes, Codes, tuple[str, ...]]:
        """Give sRGB codes of a part (left, top, right, bottom), the codes as recorded, and notes.

        Both have the shape height, width, channels. PhotoError where the profile fits no colour.
        """
        part = self.image.crop(box)
        recorded = np.asarray(part)
        if self.profile is None:
            return recorded, recorded, ()
        try:
            known = ImageCms.ImageCmsProfile(io.BytesIO(self.profile))
            turned = ImageCms.profileToProfile(
                part, known, ImageCms.createProfile("sRGB"), outputMode="RGB"
            )
        except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
            turned = None
        if turned is not None:
            return np.asarray(turned), recorded, ()
        if part.mode == "CMYK":
            raise PhotoError(
                tr(
                    "The photo is in CMYK and its colour profile cannot be read: its colours "
                    "are not known. Save it as RGB."
                )
            )
        note = tr("The photo’s colour profile cannot be read: it was taken as sRGB.")
        return recorded, recorded, (note,)


def open_picture(data: bytes, name: str) -> Picture:
    """Read a photo of one of FORMATS; PhotoError with words for anything else."""
    if len(data) > LARGEST:
        raise PhotoError(
            tr(
                "{name} is larger than {most} MB. Save it smaller.",
                name=name,
                most=LARGEST // 1_000_000,
            )
        )
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # Pillow's own limit warns; ours is lower
            image = _upright(data, name)
    except PhotoError:
        raise
    except MemoryError:
        words = tr("{name} is too large for this machine. Save it smaller.", name=name)
        raise PhotoError(words) from None
    except Exception:  # noqa: BLE001 - whatever a decoder says of a hostile file
        raise PhotoError(
            tr(
                "{name} cannot be read as a photo: it is damaged, cut short, or of another "
                "kind. Use JPEG, PNG, TIFF or WebP.",
                name=name,
            )
        ) from None
    return image


def _upright(data: bytes, name: str) -> Picture:
    with Image.open(io.BytesIO(data), formats=FORMATS) as opened:
        width, height = opened.size
        if width * height > MOST_PIXELS:
            raise PhotoError(
                tr(
                    "{name} has {width} × {height} pixels, more than {most} million. Save it "
                    "smaller.",
                    name=name,
                    width=width,
                    height=height,
                    most=MOST_PIXELS // 1_000_000,
                )
            )
        profile = opened.info.get("icc_profile")
        notes = _check(opened, name, has_profile=bool(profile))
        opened.load()
        upright = _turned(opened)
    if upright.mode not in {"RGB", "CMYK"}:
        upright = upright.convert("RGB")
    return Picture(upright, profile or None, notes)


def _turned(image: Image.Image) -> Image.Image:
    """Set a photo upright as its Exif says; a damaged Exif says nothing."""
    try:
        return ImageOps.exif_transpose(image)
    except Exception:  # noqa: BLE001 - whatever Pillow says of a hostile Exif
        return image


def _check(image: Image.Image, name: str, *, has_profile: bool) -> tuple[str, ...]:
    """Refuse what has no colour; say what will be lost."""
    if image.mode not in _PLAIN:
        greys = image.mode in {"1", "L", "LA", "La"} or image.mode.startswith(("I", "F"))
        if greys:
            words = tr("{name} has no colour, only greys. Save it as an RGB photo.", name=name)
        else:
            words = tr("{name} is of an unusual kind ({mode}). Save it as an RGB photo.",
                       name=name, mode=image.mode)  # fmt: skip
        raise PhotoError(words)
    if image.mode == "CMYK" and not has_profile:
        raise PhotoError(
            tr(
                "{name} is in CMYK without a colour profile: its colours are not known. Save it as "
                "RGB.",
                name=name,
            )
        )
    if image.has_transparency_data and _see_through(image):
        raise PhotoError(
            tr("{name} is transparent in places. Save it without transparency.", name=name)
        )
    return _deep(image)


def _see_through(image: Image.Image) -> bool:
    low = image.convert("RGBA").getchannel("A").getextrema()[0]
    return isinstance(low, int | float) and low < 255


def _deep(image: Image.Image) -> tuple[str, ...]:
    """Say that more than 8 bits were cut to 8."""
    modes = [str(tile[3]) for tile in getattr(image, "tile", ())]
    if any("16" in one for one in modes):
        return (tr("The photo has 16 bits a channel; the upper 8 were used."),)
    return ()
