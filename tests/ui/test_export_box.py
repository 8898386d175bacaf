"""Everything exported from the window: written, stopped, refused."""

import threading
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.services.shelf import Shelf
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.moving.export_box import ExportBox
from studio_log.ui.widgets.long_work import LongRun, Progress
from tests.support.fixtures import Workshop
from tests.support.tree import TREE

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(shop: Workshop, qtbot: QtBot) -> ExportBox:
    shop.new("runners")
    shop.studio.shelf = Shelf(lambda name: (TREE / "resources" / name).read_text("utf-8"))
    made = ExportBox(Bridge(InlineWorker(), shop.studio, shop.clock))
    qtbot.addWidget(made)
    made.show()
    return made


def test_a_folder_is_written_and_said(box: ExportBox, qtbot: QtBot, tmp_path: Path) -> None:
    to = tmp_path / "out"
    box.place.setText(str(to))
    with qtbot.waitSignal(box.run.done):
        box.go_button.click()
    assert (to / "studio.json").is_file()
    # A long word may break anywhere: signs of no width stand in it.
    assert str(to) in box.said.text().replace("\u200b", "")
    assert not box.bar.isVisible()
    box.go_button.click()
    qtbot.waitUntil(lambda: "already" in box.said.text())


def test_the_archive_has_its_ending(box: ExportBox) -> None:
    before = box.place.text()
    box.zip_box.click()
    assert box.place.text() == f"{before}.zip"
    box.zip_box.click()
    assert box.place.text() == before
    box.place.clear()
    box.go_button.click()
    assert "Nothing was written" in box.said.text()


def test_long_work_stops_when_told_and_when_its_box_closes(qtbot: QtBot) -> None:
    under_way = threading.Event()

    def endless(tell: Progress) -> str:
        while tell(1, 2):
            under_way.set()
        raise Refusal("It was stopped. Nothing was written.")

    run = LongRun()
    run.start(endless)
    assert under_way.wait(10)
    with qtbot.waitSignal(run.failed) as said:
        run.stop()
    assert said.args == ["It was stopped. Nothing was written."]
    under_way.clear()
    run.start(endless)
    assert under_way.wait(10)
    run.end()
    assert not run.running


def test_a_fault_of_long_work_is_said(qtbot: QtBot, caplog: pytest.LogCaptureFixture) -> None:
    def broken(_tell: Progress) -> str:
        raise ZeroDivisionError

    run = LongRun()
    with qtbot.waitSignal(run.failed) as said:
        run.start(broken)
    run.end()
    assert "mistake of its own" in said.args[0]
    assert "long work failed" in caplog.text
