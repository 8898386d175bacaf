"""Photos: kept by content, told on the sheet, refused with a sentence and nothing changed.

The pictures of tests/reference/pictures were made by ImageMagick and exiftool.
"""

import hashlib
import random
import struct
import zlib
from datetime import UTC, datetime
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import Redo, SplitLot, Undo
from studio_log.services.pictures import AddPhoto, PictureFor
from studio_log.store import pictures
from tests.support.tree import TREE

MADE = TREE / "tests" / "reference" / "pictures"


@pytest.fixture
def code(shop):
    return shop.new("Linen table runners")


def photos(shop, code: str) -> list[dict]:
    return shop.studio.ask(q.LotSheetFor(code)).data["photos"]


def kept(shop) -> list[Path]:
    return sorted((shop.studio.folder / "photos").glob("*"))


def add(shop, code: str, name: str = "plain.jpg", **more):
    return shop.studio.do(AddPhoto(code, MADE / name, **more))


@pytest.mark.parametrize(
    ("name", "size"),
    [("plain.jpg", (64, 48)), ("turned.jpg", (48, 64)), ("cloth.png", (32, 32)),
     ("cloth.webp", (32, 32))],
)  # fmt: skip
def test_a_photo_is_kept_unchanged_under_its_hash(shop, code, name, size):
    add(shop, code, name, step=1, note="before the soak")
    (shown,) = photos(shop, code)
    original = (MADE / name).read_bytes()
    assert Path(shown["file"]).read_bytes() == original
    assert Path(shown["file"]).stem == hashlib.sha256(original).hexdigest()
    assert (shown["width"], shown["height"]) == size
    assert (shown["name"], shown["step"], shown["note"]) == (name, "Bean soak", "before the soak")
    entry = shop.studio.ask(q.LotSheetFor(code)).entries[-1]
    assert entry.act == Act.NOTE.value
    assert entry.words == "Bean soak: note, with a photo"


def test_the_same_photo_twice_is_one_file(shop, code):
    other = shop.new("second")
    for one in (code, code, other):
        add(shop, one)
    assert len(photos(shop, code)) == 2
    assert len(photos(shop, other)) == 1
    assert len(kept(shop)) == 1


def test_an_undo_hides_the_photo_and_leaves_the_file(shop, code):
    add(shop, code)
    shop.studio.do(Undo(code))
    assert photos(shop, code) == []
    assert len(kept(shop)) == 1
    shop.studio.do(Redo(code))
    assert len(photos(shop, code)) == 1


def test_a_split_takes_its_past_with_its_photos(shop, code):
    add(shop, code)
    child = shop.studio.do(SplitLot(code, (2,), "half")).code
    assert [one["name"] for one in photos(shop, child)] == ["plain.jpg"]


def test_the_camera_s_time_is_offered_in_the_studio_s_zone(shop):
    """Written by exiftool: 08:02 on 9 June without a zone, and 09:02 at UTC+2."""
    ask = shop.studio.ask
    eight = ask(PictureFor(MADE / "turned.jpg"))
    assert eight.taken_at == datetime(2026, 6, 9, 7, 2, tzinfo=UTC), "BST is UTC+1"
    assert eight.taken_words.endswith("08:02")
    assert ask(PictureFor(MADE / "offset.jpg")).taken_at == datetime(2026, 6, 9, 7, 2, tzinfo=UTC)
    assert ask(PictureFor(MADE / "plain.jpg")).taken_at is None


def test_a_camera_ahead_of_now_offers_nothing(shop):
    shop.clock.move(hours=-12)
    assert shop.studio.ask(PictureFor(MADE / "turned.jpg")).taken_at is None


def test_a_file_spoilt_on_the_disk_is_mended_by_the_same_photo(shop, code):
    add(shop, code)
    (file,) = kept(shop)
    file.write_bytes(b"spoilt")
    add(shop, code)
    assert file.read_bytes() == (MADE / "plain.jpg").read_bytes()


def bomb(wide: int, high: int) -> bytes:
    """A PNG whose header promises a giant and whose body is a few bytes (PNG 1.2, 4.1.1)."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return (
            struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
        )

    head = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    body = chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 1000)) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + body


REFUSED = {
    "a giant": (bomb(60_000, 60_000), "100 million"),
    "too many bytes": (b"\xff\xd8\xff" + b"\0" * pictures.MOST_BYTES, "60 MB"),
    "a text": (b"Harbour Lane Cloth Studio", "not a JPEG"),
    "a GIF": ((MADE / "cloth.gif").read_bytes(), "not a JPEG"),
    "a cut JPEG": ((MADE / "plain.jpg").read_bytes()[:-40], "breaks off"),
    "a cut PNG": ((MADE / "cloth.png").read_bytes()[:-900], "breaks off"),
    "a short PNG": (bomb(100, 100), "breaks off"),
    "an SVG": (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "not a JPEG"),
}


@pytest.mark.parametrize("what", REFUSED)
def test_what_is_no_whole_picture_is_refused_and_nothing_changes(shop, code, tmp_path, what):
    content, words = REFUSED[what]
    path = tmp_path / "cloth.jpg"
    path.write_bytes(content)
    before = shop.studio.ask(q.LotSheetFor(code)).entries
    with pytest.raises(Refusal, match=words) as said:
        shop.studio.do(AddPhoto(code, path))
    assert "Nothing was changed." in str(said.value)
    with pytest.raises(Refusal, match=words):
        shop.studio.ask(PictureFor(path))
    assert shop.studio.ask(q.LotSheetFor(code)).entries == before
    assert kept(shop) == []


@pytest.mark.parametrize("where", ["nowhere.jpg", "."])
def test_a_file_that_is_not_there_is_refused(shop, code, tmp_path, where):
    with pytest.raises(Refusal, match="Nothing was changed"):
        shop.studio.do(AddPhoto(code, tmp_path / where))


def test_a_refused_entry_leaves_no_file(shop, code):
    with pytest.raises(Refusal):
        add(shop, code, step=99)
    assert kept(shop) == []


def outcome(content: bytes, name: str) -> str:
    try:
        pictures.look(content, name, "UTC")
    except Refusal as refusal:
        return "sentence" if str(refusal).startswith(name) else "other words"
    return "picture"


def test_spoilt_bytes_never_break_the_program():
    """Every outcome is a picture or a sentence."""
    told = random.Random(26)
    outcomes = {"picture": 0, "sentence": 0}
    for name in ("turned.jpg", "cloth.png", "cloth.webp"):
        original = (MADE / name).read_bytes()
        for _ in range(120):
            content = bytearray(original)
            for _ in range(told.choice((1, 4, 40))):
                content[told.randrange(len(content))] = told.randrange(256)
            cut = bytes(content[: told.randrange(8, len(content) + 1)])
            outcomes[outcome(cut, name)] += 1
    assert min(outcomes.values()) > 5


def test_a_picture_that_was_offered_is_unpacked_once_though_it_is_kept_later(
    shop, code, monkeypatch, tmp_path
):
    unpacked = []
    monkeypatch.setattr(
        "PIL.JpegImagePlugin.JpegImageFile.load_end", lambda image: unpacked.append(image.size)
    )
    # A picture of its own: what other tests have looked at is known already.
    path = tmp_path / "own.jpg"
    path.write_bytes((MADE / "plain.jpg").read_bytes() + b"\0own")
    shop.studio.ask(PictureFor(path))
    assert len(unpacked) == 1
    shop.studio.do(AddPhoto(code, path))
    assert len(unpacked) == 1
    path.write_bytes((MADE / "plain.jpg").read_bytes() + b"\0other")
    shop.studio.do(AddPhoto(code, path))
    assert len(unpacked) == 2, "another content is looked at anew, whatever its name"
