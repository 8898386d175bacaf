"""The page on which times from a card are entered, row by row."""

import pytest
from pytestqt.qtbot import QtBot

from studio_log.services.questions import LotSheetFor
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.moving.card_box import CardBox
from tests.support.builders import HOUR, MINUTE, NINE
from tests.support.fixtures import Workshop

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


def test_times_are_typed_doubted_and_written(shop: Workshop, qtbot: QtBot) -> None:
    code = shop.new("runners")
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    box = CardBox(bridge, shop.studio.ask(LotSheetFor(code)))
    qtbot.addWidget(box)
    box.show()
    begun, ended = box.lines[1]
    assert begun is not None
    assert ended is not None
    begun.setText("8/6 19:00")
    ended.setText("7:10")
    qtbot.waitUntil(box.write_button.isEnabled)
    assert box.said[1].text() == ""
    # A time alone is the first one after the time above it: the next morning.
    assert ended.at == NINE - HOUR - 50 * MINUTE
    ended.setText("8/6 19:30")
    qtbot.waitUntil(lambda: "the method says" in box.said[1].text().replace("\u200b", ""))
    assert "all the same" in box.write_button.text()
    ended.setText("31/2 7:10")
    qtbot.waitUntil(lambda: not box.write_button.isEnabled())
    assert not ended.ok
    ended.setText("7:10")
    qtbot.waitUntil(box.write_button.isEnabled)
    box.write_button.click()
    qtbot.waitUntil(lambda: not box.isVisible())
    assert shop.lot(code).steps[0].end == NINE - HOUR - 50 * MINUTE
