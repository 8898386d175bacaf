"""What check finds, and what repair mends of all that can be worked out or fetched again."""

import shutil
import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest

from studio_log.app.commands import ProgramHouse
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.outside.bell import FileBell
from studio_log.services import questions as q
from studio_log.services.pictures import AddPhoto
from studio_log.services.places import ChangePlaces
from studio_log.services.search import FindLots
from studio_log.store import files
from studio_log.store.backup import copy_elsewhere
from tests.support.builders import NINE
from tests.support.fixtures import Workshop
from tests.support.tree import TREE

PICTURES = TREE / "tests" / "reference" / "pictures"


@pytest.fixture
def code(shop: Workshop) -> str:
    made = shop.new("Linen table runners")
    shop.walk_to(made, "first-soak")
    shop.mark(made, "first-soak", Act.NOTE, note="smelt of hay")
    assert shop.studio.check() == []
    return made


def spoil(shop: Workshop, *statements: str) -> None:
    with closing(sqlite3.connect(shop.studio.store.path, isolation_level=None)) as line:
        for statement in statements:
            line.execute(statement)


def repaired(shop: Workshop) -> None:
    shop.studio.check(repair=True)
    assert shop.studio.check() == []


@pytest.mark.parametrize(
    ("statement", "words"),
    [
        ("DELETE FROM lot_words", "is not all found by a search"),
        ("UPDATE lot_words SET words = 'nothing'", "is not all found by a search"),
        ("UPDATE lot_words_data SET block = x'00ff00' WHERE id > 1", "index of words is damaged"),
        ("DELETE FROM material_use", "took from the stock differs"),
        ("UPDATE material_use SET value = value + 1", "took from the stock differs"),
        ("DELETE FROM step", "steps"),
        ("DELETE FROM lot", "missing in the lists"),
        ("UPDATE lot SET last_number = 2", "older than its journal"),
    ],
)
def test_what_is_worked_out_from_the_journal_is_found_and_mended(
    shop: Workshop, code: str, statement: str, words: str
):
    spoil(shop, statement)
    found = shop.studio.check()
    assert any(words in one for one in found), found
    repaired(shop)
    assert shop.studio.ask(FindLots(find="hay")).codes == (code,)


def photo_file(shop: Workshop) -> Path:
    (found,) = (shop.studio.folder / "photos").glob("*.jpg")
    return found


def test_a_photo_that_no_row_knows_is_known_again(shop: Workshop, code: str):
    shop.do(AddPhoto(code, PICTURES / "plain.jpg"))
    spoil(shop, "DELETE FROM photo")
    assert any("not in the list of photos" in one for one in shop.studio.check())
    repaired(shop)
    (photo,) = shop.studio.ask(q.LotSheetFor(code)).data["photos"]
    assert (photo["width"], photo["height"]) == (64, 48)


@pytest.mark.parametrize("how", ["missing", "spoilt"])
def test_a_photo_that_is_lost_comes_from_the_copies(
    shop: Workshop, code: str, tmp_path: Path, how: str
):
    stick = tmp_path / "stick"
    stick.mkdir()
    shop.do(ChangePlaces(copies=str(stick)))
    shop.do(AddPhoto(code, PICTURES / "plain.jpg"))
    copy_elsewhere(shop.studio.store.path, stick, NINE)
    file = photo_file(shop)
    whole = file.read_bytes()
    if how == "missing":
        file.unlink()
    else:
        file.write_bytes(whole[:-1] + b"?")
    assert any(f"is {how}" in one for one in shop.studio.check())
    repaired(shop)
    assert file.read_bytes() == whole


def test_a_photo_that_is_lost_everywhere_stays_named(shop: Workshop, code: str):
    shop.do(AddPhoto(code, PICTURES / "plain.jpg"))
    photo_file(shop).write_bytes(b"no picture")
    shop.studio.check(repair=True)
    (left,) = shop.studio.check()
    last = shop.entries(code)[-1].number
    assert left.startswith(f"The photo of entry {last} of {code} is missing")
    kept = list((shop.studio.folder / "photos").glob("spoilt-*"))
    assert [one.read_bytes() for one in kept] == [b"no picture"], "nothing is thrown away"


def test_a_damaged_studio_is_repaired_by_command(
    shop: Workshop, code: str, capsys: pytest.CaptureFixture[str]
):
    """As a person does it: check says what is wrong and could be read, repair does it."""
    from studio_log.cli.main import run

    def line(*words: str) -> tuple[int, str]:
        ended = run([*words, "--studio", str(folder)], house=ProgramHouse(),
                    out=sys.stdout, err=sys.stderr)  # fmt: skip
        told = capsys.readouterr()
        assert "Traceback" not in told.out + told.err
        return ended, told.out + told.err

    folder = shop.studio.folder
    entries = shop.entries(code)
    shop.studio.close()
    path = folder / files.FILE_NAME
    path.write_bytes(b"\xff" * 200 + path.read_bytes()[200:])
    shutil.rmtree(folder / files.COPIES)
    ended, told = line("check")
    assert ended == 1
    assert f"{len(entries)} entries" in told
    ended, told = line("check", "--repair")
    assert ended == 0, told
    assert "The damaged file is kept" in told
    ended, told = line("lot", "show", code)
    assert ended == 0
    assert "Linen table runners" in told
    assert line("check") == (0, "All is well.\n")


def test_a_studio_that_is_open_elsewhere_is_not_repaired(shop: Workshop, code: str):
    folder = shop.studio.folder
    shop.studio.close()
    bell = FileBell(folder)
    assert bell.hold()
    path = folder / files.FILE_NAME
    damaged = path.read_bytes()[:50_000]
    path.write_bytes(damaged)
    with pytest.raises(Refusal, match="is open on this studio"):
        ProgramHouse().repair(str(folder))
    bell.release()
    assert path.read_bytes() == damaged
    assert code
