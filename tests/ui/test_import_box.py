"""The page on which an old notebook is taken in."""

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio_log.services.questions import LotLinesFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.moving.import_box import ImportBox
from tests.support.fixtures import Workshop

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


def test_a_table_is_mapped_tried_taken_in_and_back(
    shop: Workshop, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "old.csv"
    path.write_text("What,Grams,Remark\nRunners,300,pale\nScarf,,\n")
    box = ImportBox(Bridge(InlineWorker(), shop.studio, shop.clock))
    qtbot.addWidget(box)
    box.show()
    assert not box.back_button.isVisible()
    box.open_file(path)
    qtbot.waitUntil(lambda: len(box.rows.toPlainText().splitlines()) == 2)
    assert [one.currentData() for one in box.columns] == ["name", "weight", "note"]
    assert box.rows.toPlainText().splitlines()[0].startswith("✓ 2: Runners")
    assert box.rows.toPlainText().splitlines()[1].startswith("✗ 3: its weight is not known")
    assert not box.take_button.isEnabled()
    box.leave_out.setChecked(True)
    qtbot.waitUntil(box.take_button.isEnabled)
    box.take_button.click()
    qtbot.waitUntil(box.back_button.isVisible)
    assert len(shop.studio.ask(LotLinesFor("all")).lines) == 1
    box.back_button.click()
    qtbot.waitUntil(lambda: not box.back_button.isVisible())
    assert shop.lot("26-001").voided
    box.columns[0].setCurrentIndex(0)
    qtbot.waitUntil(lambda: "No column is the name" in box.said.text())
    box.open_file(tmp_path / "missing.csv")
    qtbot.waitUntil(lambda: "cannot be read" in box.said.text())
