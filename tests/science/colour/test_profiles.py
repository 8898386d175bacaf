"""Embedded profiles are used: a made-up one with other primaries gives the colour that it means.

The profiles are written here by the ICC specification, version 2: a screen whose red and blue are
exchanged, and a printer with ideal inks. No reader can mistake either.
"""

import struct
from itertools import product
from typing import Any

import numpy as np
import pytest
from PIL import Image

from studio_log.science.colour.lab import D50_2, lab_of_xyz
from studio_log.science.colour.picture import open_picture
from studio_log.science.colour.spaces import d50_of_d65, xyz_of_srgb
from tests.science.colour.made_photos import saved

D50 = (0.9642, 1.0, 0.8249)
"""The white of profiles (ICC.1)."""


def fixed(value: float) -> bytes:
    return struct.pack(">i", round(value * 65536))


def xyz(*figures: float) -> bytes:
    return b"XYZ \0\0\0\0" + b"".join(map(fixed, figures))


def curve(gamma: float) -> bytes:
    return b"curv\0\0\0\0" + struct.pack(">IH", 1, round(gamma * 256)) + b"\0\0"


def text(words: bytes) -> bytes:
    return b"text\0\0\0\0" + words + b"\0" * (4 - len(words) % 4)


def described(words: bytes) -> bytes:
    body = b"desc\0\0\0\0" + struct.pack(">I", len(words) + 1) + words + b"\0"
    return body + b"\0" * (4 + 4 + 2 + 1 + 67 + (4 - (len(body) + 78) % 4) % 4)


def profile(kind: bytes, tags: dict[bytes, bytes]) -> bytes:
    """A profile of version 2.4 (ICC.1, 7.2 and 7.3); `kind` is its class, colours and PCS."""
    tags = {b"desc": described(b"made up"), b"cprt": text(b"none"), **tags}
    tags[b"wtpt"] = xyz(*D50)
    at = 128 + 4 + 12 * len(tags)
    table, body = struct.pack(">I", len(tags)), b""
    for name, data in tags.items():
        table += name + struct.pack(">II", at + len(body), len(data))
        body += data
    head = struct.pack(">I", at + len(body)) + b"\0\0\0\0" + b"\x02\x40\0\0" + kind
    head += b"\0" * 12 + b"acsp" + b"\0" * (68 - 40)
    head += b"".join(map(fixed, D50))
    return head.ljust(128, b"\0") + table + body


def exchanged_profile() -> bytes:
    """A display profile of sRGB's primaries under D50 (ICC), red and blue exchanged."""
    red, green, blue = (0.4361, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7141)
    tags = {b"rXYZ": xyz(*blue), b"gXYZ": xyz(*green), b"bXYZ": xyz(*red)}
    curves = dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve(2.2))
    return profile(b"mntrRGB XYZ ", {**tags, **curves})


def ink_profile() -> bytes:
    """A printer whose inks are the opposites of red, green and blue: 16 corners (lut8, 10.8)."""
    corners = bytearray()
    for inks in product((0, 1), repeat=4):
        cyan, magenta, yellow, black = inks
        light = tuple(float((1 - one) * (1 - black)) for one in (cyan, magenta, yellow))
        warm = lab_of_xyz(d50_of_d65(xyz_of_srgb((light[0], light[1], light[2]))), D50_2)
        figures = (warm.lightness * 2.55, warm.a + 128, warm.b + 128)
        corners += bytes(round(min(255, max(0, one))) for one in figures)
    head = b"mft1\0\0\0\0" + bytes((4, 3, 2, 0))
    matrix = b"".join(fixed(float(one in (0, 4, 8))) for one in range(9))
    straight = bytes(range(256))
    table = head + matrix + 4 * straight + bytes(corners) + 3 * straight
    return profile(b"prtrCMYKLab ", {b"A2B0": table})


def codes(image: Image.Image, kind: str = "PNG", **more: Any) -> Any:
    found, _, notes = open_picture(saved(image, kind, **more), "flat").codes((0, 0, 20, 10))
    assert notes == ()
    return found.reshape(-1, 3).mean(axis=0)


def test_a_photo_is_turned_by_its_profile() -> None:
    flat = Image.new("RGB", (20, 10), (200, 120, 60))
    assert codes(flat).tolist() == [200, 120, 60]
    found = codes(flat, icc_profile=exchanged_profile())
    # The curve of 2.2 is that of sRGB to two codes above the darkest.
    assert np.abs(found - (60, 120, 200)).max() <= 3


@pytest.mark.parametrize(
    ("inks", "seen"),
    [
        ((0, 255, 255, 0), (255, 0, 0)),
        ((255, 0, 255, 0), (0, 255, 0)),
        ((0, 0, 0, 0), (255, 255, 255)),
        ((0, 0, 0, 255), (0, 0, 0)),
    ],
)
def test_inks_are_turned_to_the_light_that_their_profile_means(
    inks: tuple[int, int, int, int], seen: tuple[int, int, int]
) -> None:
    found = codes(Image.new("CMYK", (20, 10), inks), "TIFF", icc_profile=ink_profile())
    assert np.abs(found - seen).max() <= 12  # CIELAB of 8 bits; the screen's edges are cut off
