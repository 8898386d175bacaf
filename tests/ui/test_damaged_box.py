"""In the window's place where the file is damaged: looked at, mended, or a copy put back."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.app import mending
from studio_log.domain.journal import Act
from studio_log.services.copies import TakeCopy
from studio_log.ui.keeping.damaged_box import DamagedBox, Ways
from tests.support.builders import NINE
from tests.support.fixtures import open_workshop
from tests.support.hand_clock import HandClock
from tests.ui.window_kit import text

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A studio whose file was overwritten in its middle; a copy of the day lies beside it."""
    shop = open_workshop(tmp_path / "studio", HandClock(NINE))
    code = shop.new("runners")
    shop.do(TakeCopy())
    shop.mark(code, "1", Act.START)
    shop.studio.close()
    path = tmp_path / "studio" / "studio.sqlite3"
    content = bytearray(path.read_bytes())
    content[4096:9000] = b"\x5a" * (9000 - 4096)
    path.write_bytes(content)
    return tmp_path / "studio"


@pytest.fixture
def box(qtbot: QtBot, folder: Path) -> Iterator[DamagedBox]:
    ways = Ways(
        lambda: mending.could_be_read(folder),
        lambda: mending.mended(folder),
        lambda source: mending.restored(folder, source),
    )
    made = DamagedBox("The file is damaged.", ways)
    qtbot.addWidget(made)
    with qtbot.waitSignal(made.run.done, timeout=20_000):
        made.show()
    yield made
    made.close()


def test_it_is_read_into_a_new_file_and_opened(box: DamagedBox, folder: Path, qtbot: QtBot) -> None:
    assert mending.needs_mending(folder), "looking changed nothing"
    assert text(box.told)
    with qtbot.waitSignal(box.run.done, timeout=20_000):
        box.mend.click()
    assert "The damaged file is kept" in text(box.told)
    assert box.go.isVisible()
    assert not box.mend.isVisible()
    assert not mending.needs_mending(folder)
    box.go.click()
    assert box.result() == 1
    shop = open_workshop(folder, HandClock(NINE))
    assert shop.lot("26-001").name == "runners"
    assert list((folder / "copies").glob("damaged-*"))
    shop.studio.close()


def test_a_copy_is_put_back(box: DamagedBox, folder: Path, qtbot: QtBot) -> None:
    (copy,) = (folder / "copies").glob("day-*.sqlite3")
    box.pick_copy = lambda _parent: str(copy)
    with qtbot.waitSignal(box.run.done, timeout=20_000):
        box.back.click()
        assert text(box.told).startswith("Putting the copy in its place")
    assert "restored from" in text(box.told)
    assert box.go.isVisible()
    shop = open_workshop(folder, HandClock(NINE))
    assert not shop.lot("26-001").step(1).running, "as it was when the copy was taken"
    shop.studio.close()


def test_what_is_no_copy_is_said_and_all_can_be_tried_again(
    box: DamagedBox, folder: Path, tmp_path: Path, qtbot: QtBot
) -> None:
    (tmp_path / "letter.sqlite3").write_text("dear all")
    box.pick_copy = lambda _parent: str(tmp_path / "letter.sqlite3")
    before = (folder / "studio.sqlite3").read_bytes()
    with qtbot.waitSignal(box.run.failed, timeout=20_000):
        box.back.click()
    assert "not a whole copy" in text(box.told)
    assert (folder / "studio.sqlite3").read_bytes() == before
    assert box.mend.isEnabled()
    assert box.leave.isEnabled()


def test_it_is_left_as_it_is(box: DamagedBox, folder: Path) -> None:
    before = (folder / "studio.sqlite3").read_bytes()
    box.leave.click()
    assert box.result() == 0
    assert (folder / "studio.sqlite3").read_bytes() == before
