"""Photos from anywhere: right, or a sentence."""

import io
import struct
import zlib
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.measure import measure_with_target
from studio_log.science.colour.picture import MOST_PIXELS, PhotoError, open_picture
from tests.science.colour import made_photos as made
from tests.science.colour.made_photos import CLOTH, CORNERS, SWATCH, saved


def png_head(width: int, height: int, mode: int = 2, bits: int = 8) -> bytes:
    """The beginning of a PNG (its specification, sections 5.2 and 11.2.2), without pixels."""
    head = struct.pack(">IIBBBBB", width, height, bits, mode, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head)


def chunk(kind: bytes, data: bytes) -> bytes:
    seal = struct.pack(">I", zlib.crc32(kind + data))
    return struct.pack(">I", len(data)) + kind + data + seal


def png16(codes: Any) -> bytes:
    """A PNG of 16 bits a channel."""
    height, width, _ = codes.shape
    wide = codes.astype(">u2") * 257
    lines = b"".join(b"\0" + line.tobytes() for line in wide)
    pixels = chunk(b"IDAT", zlib.compress(lines)) + chunk(b"IEND", b"")
    return png_head(width, height, bits=16) + pixels


def colour_of(data: bytes, name: str = "cloth") -> Any:
    return measure_with_target(open_picture(data, name), CORNERS, SWATCH)


@pytest.fixture(scope="module")
def image(scene: Any) -> Image.Image:
    return made.photo(scene)


@pytest.mark.parametrize("kind", ["PNG", "TIFF", "WEBP", "JPEG"])
def test_every_kind_of_file_gives_the_same_colour(image: Image.Image, kind: str) -> None:
    more: dict[str, Any] = {"quality": 92} if kind == "JPEG" else {}
    if kind == "WEBP":
        more = {"lossless": True}
    assert ciede2000(colour_of(saved(image, kind, **more)).lab, CLOTH) < 1.0


@pytest.mark.parametrize(
    ("orientation", "back"),
    [
        (1, None), (2, Image.Transpose.FLIP_LEFT_RIGHT), (3, Image.Transpose.ROTATE_180),
        (4, Image.Transpose.FLIP_TOP_BOTTOM), (5, Image.Transpose.TRANSPOSE),
        (6, Image.Transpose.ROTATE_90), (7, Image.Transpose.TRANSVERSE),
        (8, Image.Transpose.ROTATE_270),
    ],
)  # fmt: skip
def test_a_photo_turned_by_exif_is_read_upright(
    image: Image.Image, orientation: int, back: Image.Transpose | None
) -> None:
    """Exif 2.31, tag 274: all eight ways. Corners are those of the picture as it is seen."""
    laid = image if back is None else image.transpose(back)
    exif = Image.Exif()
    exif[274] = orientation
    data = saved(laid, "JPEG", quality=95, exif=exif)
    assert open_picture(data, "turned").size == made.SIZE
    assert ciede2000(colour_of(data).lab, CLOTH) < 1.0


def test_sixteen_bits_are_read_as_eight(image: Image.Image) -> None:
    found = colour_of(png16(np.asarray(image)))
    assert ciede2000(found.lab, CLOTH) < 1.0
    assert any("16 bits" in one for one in found.warnings)


def test_an_embedded_profile_of_srgb_changes_nothing(image: Image.Image) -> None:
    known = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    with_it, without = colour_of(saved(image, icc_profile=known)), colour_of(saved(image))
    assert ciede2000(with_it.lab, without.lab) < 0.1


def test_a_broken_profile_is_told_and_passed_over(image: Image.Image) -> None:
    found = colour_of(saved(image, icc_profile=b"not a profile"))
    assert any("profile cannot be read" in one for one in found.warnings)
    assert ciede2000(found.lab, CLOTH) < 1.0


def test_cmyk_without_a_profile_is_refused_and_with_a_broken_one_too(image: Image.Image) -> None:
    inks = image.convert("CMYK")
    with pytest.raises(PhotoError, match="CMYK without a colour profile"):
        open_picture(saved(inks, "JPEG"), "inks.jpg")
    with pytest.raises(PhotoError, match="CMYK and its colour profile cannot be read"):
        colour_of(saved(inks, "JPEG", icc_profile=b"not a profile"))


@pytest.mark.parametrize("mode", ["1", "L", "LA", "I;16"])
def test_a_photo_without_colour_is_refused(mode: str) -> None:
    with pytest.raises(PhotoError, match="no colour, only greys"):
        open_picture(saved(Image.new(mode, (50, 50))), "grey.png")


def test_a_transparent_photo_is_refused_and_an_opaque_one_read(image: Image.Image) -> None:
    opaque = image.convert("RGBA")
    assert ciede2000(colour_of(saved(opaque)).lab, CLOTH) < 1.0
    opaque.putpixel((3, 3), (0, 0, 0, 10))
    with pytest.raises(PhotoError, match="transparent in places"):
        open_picture(saved(opaque), "clear.png")


def test_a_photo_of_few_colours_is_read() -> None:
    flat = Image.new("RGB", (60, 50), (120, 80, 40)).convert("P")
    codes, _, _ = open_picture(saved(flat), "few.png").codes((0, 0, 60, 50))
    assert np.abs(codes.reshape(-1, 3).mean(axis=0) - (120, 80, 40)).max() < 30


def test_a_bomb_is_refused_before_it_is_unpacked() -> None:
    side = int(MOST_PIXELS**0.5) + 1
    with pytest.raises(PhotoError, match="more than 100 million"):
        open_picture(png_head(side, side) + chunk(b"IDAT", b""), "bomb.png")


def test_a_bomb_of_words_is_refused(image: Image.Image) -> None:
    """A text chunk that unpacks to 300 MB, in 300 kB."""
    words = chunk(b"zTXt", b"a\0\0" + zlib.compress(b"\0" * 300_000_000, 9))
    data = saved(image)
    at = 8 + 25  # behind the signature and the head
    found = None
    try:
        found = open_picture(data[:at] + words + data[at:], "words.png")
    except PhotoError as error:
        assert "cannot be read as a photo" in str(error)  # noqa: PT017 - either is right
    assert found is None or found.size == made.SIZE


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP", "TIFF"])
@pytest.mark.parametrize("part", [0.0, 0.01, 0.3, 0.9])
def test_a_photo_cut_short_is_refused(image: Image.Image, kind: str, part: float) -> None:
    data = saved(image, kind)
    with pytest.raises(PhotoError, match="cannot be read as a photo"):
        open_picture(data[: int(part * len(data))], "short")


@pytest.mark.parametrize(
    "data",
    [
        b"", b"GIF89a" + b"\0" * 50, b"%PDF-1.7\n", b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        b"\0" * 1000, b"II*\0" + b"\xff" * 60, b"BM" + b"\0" * 60,
    ],
)  # fmt: skip
def test_what_is_no_photo_is_refused_in_a_sentence(data: bytes) -> None:
    with pytest.raises(PhotoError) as refused:
        open_picture(data, "thing.jpg")
    assert str(refused.value).isprintable()
    assert len(str(refused.value).split()) > 6


def test_a_file_larger_than_any_photo_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("studio_log.science.colour.picture.LARGEST", 10)
    with pytest.raises(PhotoError, match="larger than"):
        open_picture(b"x" * 11, "big.jpg")


SEED = saved(Image.new("RGB", (16, 12), (90, 60, 40)), "JPEG")


@settings(max_examples=60, deadline=None)
@given(st.integers(2, len(SEED) - 1), st.binary(min_size=1, max_size=8))
def test_a_damaged_photo_is_a_photo_or_a_sentence(at: int, damage: bytes) -> None:
    data = SEED[:at] + damage + SEED[at + len(damage) :]
    size = None
    try:
        size = open_picture(data, "damaged").size
    except PhotoError as error:
        size = (len(str(error)), 1)
    assert min(size) > 0
    assert io.BytesIO(data).readable()
