"""A studio as a folder and back: the same entry for entry; what is hostile changes nothing."""

import csv
import io
import json
import zipfile
from collections.abc import Callable
from contextlib import closing
from datetime import timedelta
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from PIL import Image

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.services.baths import NewBath
from studio_log.services.commands import ChangeSettings, NewMilk, SplitLot, Undo
from studio_log.services.moving import ExportFor, Looked, TakeFolder
from studio_log.services.pictures import AddPhoto
from studio_log.services.shelf import SCHEMA, Shelf
from studio_log.services.stock import NewMaterial
from studio_log.services.studio import Studio
from studio_log.services.swatches import NewSwatch
from studio_log.services.trials import NewTrial, TrialPlan
from studio_log.store import folder_in, folder_out, plain
from studio_log.store.folder_schema import schema
from studio_log.store.folder_shape import DOCUMENT, columns_of, truths
from tests.support.builders import shipped_texts
from tests.support.fixtures import Workshop, clock, shop
from tests.support.tree import TREE

__all__ = ["clock", "shop"]
NAME = '=HYPERLINK("x")'
Opened = Callable[[], Studio]


def go_on(done: int, every: int) -> bool:
    assert 0 <= done <= every
    return True


@pytest.fixture
def full(shop: Workshop) -> Workshop:
    """A studio in which something of everything happened."""
    shop.studio.shelf = Shelf(lambda name: (TREE / "resources" / name).read_text("utf-8"))
    code = shop.new(NAME)
    shop.mark(code, "bean-soak", Act.START, at=shop.clock.now() - timedelta(hours=13))
    shop.mark(code, "bean-soak", Act.END, note="+ smells\nof beans; “fine”, they say")
    shop.mark(code, "now", Act.NOTE, readings={"temperature": -3.5, "colour": "@pale"})
    shop.do(Undo(code))
    shop.do(SplitLot(code, (2,), "Hälfte, zum Färben 🌿"))
    shop.do(NewMilk(lots=(code,), beans_grams=100.0, strength=100.0))
    shop.do(ChangeSettings({"studio": "Harbour Lane Cloth Studio"}))
    for shade in (10, 200):
        picture = io.BytesIO()
        Image.new("RGB", (40, 30), (shade, 30, 30)).save(picture, "PNG")
        shop.do(AddPhoto(code, content=picture.getvalue(), name="../../cloth.png"))
    shop.do(NewSwatch(code, name="-from the hem"))
    shop.do(NewBath("fructose-vat"))
    shop.do(NewMaterial("Soda ash", amount=1000.0, price=6.2))
    plan = TrialPlan((0.0, 3.0), blocks=("1",), seed=7, day=shop.clock.now().date())
    shop.do(NewTrial("Does a long cure deepen madder?", plan, sure=True))
    shop.clock.move(hours=1)
    shop.studio.raise_due()
    return shop


def write(shop: Workshop, to: Path, *, zipped: bool = False) -> Path:
    shop.studio.ask(ExportFor(to, zipped=zipped)).run(go_on)
    return to


@pytest.fixture
def empty(tmp_path: Path, shop: Workshop) -> Any:
    made: list[Studio] = []

    def one() -> Studio:
        folder = tmp_path / f"new-{len(made)}"
        studio = Studio(folder, shop.clock, shipped_texts(), {})
        studio.shelf = shop.studio.shelf
        made.append(studio)
        return studio

    yield one
    for studio in made:
        studio.close()


def rows_of(studio: Studio) -> dict[str, list[tuple[Any, ...]]]:
    """Every row of every table as the file has it, save when a line was last worked out."""
    found = {}
    with closing(plain.connect(studio.store.path, "ro")) as line:
        asked = "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"
        names = [name for (name,) in line.execute(asked)]
        for name in names:
            if name.startswith(("sqlite_", "lot_words", "alembic")):
                continue
            told = line.execute(f'SELECT * FROM "{name}"')
            keys = [one[0] for one in told.description]
            left_out = keys.index("updated_at") if name == "lot" else -1
            rows = [tuple(v for n, v in enumerate(row) if n != left_out) for row in told]
            found[name] = rows if name == "entry" else sorted(rows, key=repr)
    return found


@pytest.mark.parametrize("zipped", [False, True])
def test_the_same_studio_comes_back_entry_for_entry(
    full: Workshop, tmp_path: Path, empty: Opened, zipped: bool
) -> None:
    to = write(full, tmp_path / "out", zipped=zipped)
    studio = empty()
    outcome = studio.do(TakeFolder(to))
    assert "2 lots" in outcome.words
    before, after = rows_of(full.studio), rows_of(studio)
    assert before["entry"]
    assert len(before) > 8
    assert after == before
    kept, here = ((one.folder / "photos") for one in (full.studio, studio))
    assert {p.name: p.read_bytes() for p in kept.iterdir()} == {
        p.name: p.read_bytes() for p in here.iterdir()
    }
    assert studio.settings == full.studio.settings
    assert studio.check() == []
    # And out again, the same but for the moment.
    again = json.loads((write_from(studio, tmp_path / "again") / DOCUMENT).read_text("utf-8"))
    with folder_in.opened(to) as folder:
        first = json.loads((folder.place / DOCUMENT).read_text("utf-8"))
    assert {**again, "written": ""} == {**first, "written": ""}


def write_from(studio: Studio, to: Path) -> Path:
    studio.ask(ExportFor(to)).run(go_on)
    return to


def test_the_journal_goes_on_where_it_was(full: Workshop, tmp_path: Path, empty: Opened) -> None:
    studio = empty()
    studio.do(TakeFolder(write(full, tmp_path / "out")))
    there = Workshop(studio, full.clock, full.notice, full.bell, full.alarm)
    assert there.new("next") == "26-003"
    there.mark("26-001", "blend", Act.START)
    assert studio.check() == []


def test_the_export_is_valid_by_the_shipped_schema(full: Workshop, tmp_path: Path) -> None:
    folder = write(full, tmp_path / "out")
    shipped = json.loads((folder / SCHEMA).read_text("utf-8"))
    jsonschema.Draft202012Validator.check_schema(shipped)
    told = json.loads((folder / DOCUMENT).read_text("utf-8"))
    jsonschema.Draft202012Validator(shipped).validate(told)
    told["tables"]["entry"][0]["number"] = 0
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(shipped).validate(told)


def test_the_schema_is_that_of_the_tables_and_says_what_each_is() -> None:
    shipped = json.loads((TREE / "resources" / SCHEMA).read_text("utf-8"))
    assert shipped == schema(), "run studio_log.store.folder_schema"
    tables = shipped["properties"]["tables"]["properties"]
    assert set(tables) == {table.name for table in truths()}
    for table in truths():
        assert set(tables[table.name]["items"]["properties"]) == set(columns_of(table))


def test_no_cell_is_a_formula_and_every_row_is_there(full: Workshop, tmp_path: Path) -> None:
    folder = write(full, tmp_path / "out")
    sheets = {}
    for path in sorted((folder / "tables").glob("*.csv")):
        with path.open(encoding="utf-8-sig", newline="") as file:
            sheets[path.stem] = list(csv.DictReader(file))
    cells = [cell for rows in sheets.values() for row in rows for cell in row.values()]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "@", "\t", "\r"))]
    # A text that begins with a minus is defused; a number below nought stays one.
    assert not [cell for cell in cells if cell.startswith("-") and not _is_number(cell)]
    assert sheets["lot"][0]["name"] == f"'{NAME}"
    notes = [row["note"] for row in sheets["entry"]]
    assert "'+ smells\nof beans; “fine”, they say" in notes
    told = json.loads((folder / DOCUMENT).read_text("utf-8"))["tables"]
    assert {name: len(rows) for name, rows in told.items()} == {
        name: len(sheets[name]) for name in told
    }


def _is_number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "\tx", "\rx"])
def test_what_could_be_a_formula_leaves_as_text(text: str) -> None:
    # OWASP, CSV Injection: fields that begin with = + - @, tab (0x09) or carriage return (0x0D).
    assert folder_out.harmless(text) == f"'{text}"
    assert folder_out.harmless("plain = text") == "plain = text"
    assert folder_out.harmless(-1.5) == -1.5


def test_photos_are_named_and_lie_inside(full: Workshop, tmp_path: Path) -> None:
    folder = write(full, tmp_path / "out")
    names = sorted(path.name for path in (folder / "photos").iterdir())
    assert names == ["26-001-0007-cloth.png", "26-001-0008-cloth.png"]
    assert {path.name for path in tmp_path.iterdir() if path.name != "out"}.isdisjoint(names)


def test_a_stopped_export_leaves_nothing(full: Workshop, tmp_path: Path) -> None:
    to = tmp_path / "out"
    with pytest.raises(Refusal, match="Nothing was written"):
        full.studio.ask(ExportFor(to)).run(lambda _done, _every: False)
    assert not to.exists()
    assert not list(tmp_path.glob(".writing-*"))


def test_what_is_there_is_left_as_it_is(full: Workshop, tmp_path: Path) -> None:
    to = tmp_path / "out"
    to.mkdir()
    (to / "letter.txt").write_text("mine")
    with pytest.raises(Refusal, match="left as it is"):
        write(full, to)
    assert [path.name for path in to.iterdir()] == ["letter.txt"]
    with pytest.raises(Refusal, match="cannot be reached"):
        write(full, tmp_path / "missing" / "out")


def test_a_studio_with_work_takes_no_folder(full: Workshop, tmp_path: Path) -> None:
    before = rows_of(full.studio)
    with pytest.raises(Refusal, match="holds work already"):
        full.do(TakeFolder(write(full, tmp_path / "out")))
    assert rows_of(full.studio) == before


def test_a_look_keeps_nothing(full: Workshop, tmp_path: Path, empty: Opened) -> None:
    studio = empty()
    before = rows_of(studio)
    with pytest.raises(Looked, match="2 lots"):
        studio.do(TakeFolder(write(full, tmp_path / "out"), only_look=True))
    assert rows_of(studio) == before
    assert not (studio.folder / "photos").exists()


def _entry(told: dict[str, Any], **more: Any) -> None:
    told["tables"]["entry"][0].update(more)


HOSTILE: dict[str, Callable[[dict[str, Any]], object]] = {
    "another format": lambda told: told.update(format="other"),
    "no version": lambda told: told.pop("version"),
    "a newer version": lambda told: told.update(version=2),
    "no tables": lambda told: told.update(tables=[]),
    "an unknown table": lambda told: told["tables"].update(evil=[]),
    "an unknown field": lambda told: _entry(told, evil=1),
    "a missing field": lambda told: told["tables"]["entry"][0].pop("zone"),
    "an unknown act": lambda told: _entry(told, act="rm"),
    "a gap": lambda told: told["tables"]["entry"].pop(1),
    "another order": lambda told: told["tables"]["entry"].reverse(),
    "a text for a number": lambda told: _entry(told, number="1"),
    "true for a number": lambda told: _entry(told, number=True),
    "a huge number": lambda told: _entry(told, number=2**60),
    "no moment": lambda told: _entry(told, at="yesterday"),
    "a moment without a zone": lambda told: _entry(told, at="2026-06-09T12:00:00"),
    "a moment elsewhere": lambda told: _entry(told, at="2026-06-09T12:00:00+02:00"),
    "a list for fields": lambda told: _entry(told, readings=[1]),
    "half a letter": lambda told: _entry(told, note="\ud800"),
    "a broken journal": lambda told: _entry(told, data={}),
    "a piece of words": lambda told: _entry(told, data={**_data(told), "pieces": ["x"]}),
    "a method that is nowhere": lambda told: _entry(told, data={**_data(told), "method": ["x", 1]}),
    "another code": lambda told: [one.update(subject="../../x") for one in told["tables"]["entry"]],
    "a method that is none": lambda told: told["tables"]["method"][0].update(text="x = "),
    "a setting twice": lambda told: told["tables"]["setting"].append(told["tables"]["setting"][0]),
    "a photo outside": lambda told: _photos(told, "../evil.png"),
    "a photo at the root": lambda told: _photos(told, "/etc/passwd"),
    "a photo in a drive": lambda told: _photos(told, "photos/C:evil.png"),
    "a photo behind a stroke": lambda told: _photos(told, "photos\\..\\evil.png"),
    "another photo": lambda told: _photos(told, "photos/other.png"),
    "a photo of nobody": lambda told: told["photos"].update({"0" * 64: "photos/x.png"}),
    "photos as a list": lambda told: told.update(photos=[]),
}


def _data(told: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = told["tables"]["entry"][0]["data"]
    return found


def _photos(told: dict[str, Any], name: str) -> None:
    told["photos"] = dict.fromkeys(told["photos"], name)


@pytest.mark.parametrize("what", HOSTILE)
def test_a_folder_that_does_not_make_sense_changes_nothing(
    full: Workshop, tmp_path: Path, empty: Opened, what: str
) -> None:
    folder = write(full, tmp_path / "out")
    (folder / "photos" / "other.png").write_bytes(b"no picture")
    told = json.loads((folder / DOCUMENT).read_text("utf-8"))
    HOSTILE[what](told)
    (folder / DOCUMENT).write_text(json.dumps(told))
    studio = empty()
    before = rows_of(studio)
    with pytest.raises(Refusal) as refused:
        studio.do(TakeFolder(folder))
    assert "Nothing was" in str(refused.value)
    assert rows_of(studio) == before
    assert studio.book
    assert not (studio.folder / "photos").exists() or what == "another photo"


@pytest.mark.parametrize(
    "text", ["", "nope", "[1]", "[" * 100_000, '{"format": NaN}', "\x00", '{"a": 1' * 3]
)
def test_what_is_no_json_is_refused(tmp_path: Path, empty: Opened, text: str) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / DOCUMENT).write_text(text)
    with pytest.raises(Refusal, match="Nothing was"):
        empty().do(TakeFolder(tmp_path / "out"))


def test_a_linked_photo_is_refused(full: Workshop, tmp_path: Path, empty: Opened) -> None:
    folder = write(full, tmp_path / "out")
    photo = next((folder / "photos").iterdir())
    secret = tmp_path / "secret"
    photo.replace(secret)
    photo.symlink_to(secret)
    with pytest.raises(Refusal, match="link"):
        empty().do(TakeFolder(folder))


def _zip(path: Path, **files: bytes) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return path


@pytest.mark.parametrize("name", ["../evil", "/evil", "a/../../evil", "C:/evil", "..\\evil"])
def test_an_archive_cannot_write_outside(tmp_path: Path, empty: Opened, name: str) -> None:
    path = _zip(tmp_path / "out.zip", **{DOCUMENT: b"{}", name: b"evil"})
    inner = tmp_path / "inner"
    inner.mkdir()
    with pytest.raises(Refusal, match="outside"):
        empty().do(TakeFolder(path))
    assert not list(tmp_path.rglob("evil"))


def test_an_archive_holds_no_links(tmp_path: Path, empty: Opened) -> None:
    path = tmp_path / "out.zip"
    with zipfile.ZipFile(path, "w") as archive:
        link = zipfile.ZipInfo("photos")
        link.external_attr = 0o120777 << 16
        archive.writestr(link, "/etc")
        archive.writestr(DOCUMENT, "{}")
    with pytest.raises(Refusal, match="links"):
        empty().do(TakeFolder(path))


def test_an_archive_cannot_swell_without_bound(tmp_path: Path, empty: Opened) -> None:
    path = _zip(tmp_path / "out.zip", **{DOCUMENT: b"{}" + b" " * 60_000_000})
    assert path.stat().st_size < 100_000
    with pytest.raises(Refusal, match="far too much"):
        empty().do(TakeFolder(path))


def test_an_archive_that_lies_about_its_size_is_found_out(tmp_path: Path, empty: Opened) -> None:
    path = _zip(tmp_path / "out.zip", **{DOCUMENT: b" " * 1000})
    content = bytearray(path.read_bytes())
    for sign, at in ((b"PK\x03\x04", 22), (b"PK\x01\x02", 24)):
        start = content.index(sign) + at
        content[start : start + 4] = (10).to_bytes(4, "little")
    path.write_bytes(bytes(content))
    with pytest.raises(Refusal, match="Nothing was taken"):
        empty().do(TakeFolder(path))


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04 broken", b"no archive"])
def test_another_file_is_refused(tmp_path: Path, empty: Opened, content: bytes) -> None:
    path = tmp_path / "out.zip"
    path.write_bytes(content)
    with pytest.raises(Refusal, match="Nothing was taken"):
        empty().do(TakeFolder(path))
    with pytest.raises(Refusal):
        empty().do(TakeFolder(tmp_path / "missing"))
