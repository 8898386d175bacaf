"""Embedded profiles are used: a made-up one with other primaries gives the colour that it means.

The profile is written here by the ICC specification (version 2, matrix and curve): its red and blue
are exchanged, which no reader can mistake.
"""

import struct
from typing import Any

import numpy as np
from PIL import Image

from studio_log.science.colour.picture import open_picture
from tests.science.colour.made_photos import saved


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


def exchanged_profile() -> bytes:
    """A display profile of sRGB's primaries under D50 (ICC), red and blue exchanged."""
    red, green, blue = (0.4361, 0.2225, 0.0139), (0.3851, 0.7169, 0.0971), (0.1431, 0.0606, 0.7141)
    tags = {
        b"desc": described(b"exchanged"),
        b"cprt": text(b"none"),
        b"wtpt": xyz(0.9642, 1.0, 0.8249),
        b"rXYZ": xyz(*blue),
        b"gXYZ": xyz(*green),
        b"bXYZ": xyz(*red),
        b"rTRC": curve(2.2),
        b"gTRC": curve(2.2),
        b"bTRC": curve(2.2),
    }
    at = 128 + 4 + 12 * len(tags)
    table, body = struct.pack(">I", len(tags)), b""
    for name, data in tags.items():
        table += name + struct.pack(">II", at + len(body), len(data))
        body += data
    head = struct.pack(">I", at + len(body)) + b"\0\0\0\0" + b"\x02\x40\0\0" + b"mntrRGB XYZ "
    head += b"\0" * 12 + b"acsp" + b"\0" * (68 - 40)
    head += b"".join(map(fixed, (0.9642, 1.0, 0.8249)))
    return head.ljust(128, b"\0") + table + body


def codes(image: Image.Image, **more: Any) -> Any:
    found, _, notes = open_picture(saved(image, **more), "flat.png").codes((0, 0, 20, 10))
    assert notes == ()
    return found.reshape(-1, 3).mean(axis=0)


def test_a_photo_is_turned_by_its_profile() -> None:
    flat = Image.new("RGB", (20, 10), (200, 120, 60))
    assert codes(flat).tolist() == [200, 120, 60]
    found = codes(flat, icc_profile=exchanged_profile())
    # The curve of 2.2 is that of sRGB to two codes above the darkest.
    assert np.abs(found - (60, 120, 200)).max() <= 3
