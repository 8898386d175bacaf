"""A window beside the main one is there once: asked for again, it comes forward."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QDialog
from pytestqt.qtbot import QtBot

from studio_log.services.commands import ChangeSettings
from studio_log.services.swatches import NewSwatch
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.swatches.swatch_box import SwatchBox
from tests.support.fixtures import Workshop
from tests.ui.window_kit import HandTray, WrittenAsk, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints|does not support raise")


@pytest.fixture
def window(shop: Workshop, qtbot: QtBot) -> Iterator[MainWindow]:
    shop.do(ChangeSettings({"welcomed": True}))
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    made = MainWindow(bridge, ask=WrittenAsk(), tray=HandTray(available=True))  # type: ignore[arg-type]
    qtbot.addWidget(made)
    made.start()
    made.show()
    settle()
    yield made
    bridge.close()


def boxes(window: MainWindow) -> list[QDialog]:
    return [one for one in window.findChildren(QDialog) if one.isVisible()]


@pytest.mark.parametrize(
    "slug", ["hours", "calendar", "import", "copies", "stock", "dyes", "baths", "swatches",
             "trials", "what_rang"],
)  # fmt: skip
def test_asked_for_twice_it_is_there_once(window: MainWindow, slug: str) -> None:
    window.menu_acts.do(slug)
    settle()
    (first,) = boxes(window)
    first.showMinimized()
    window.menu_acts.do(slug)
    settle()
    assert boxes(window) == [first]
    assert not first.isMinimized()
    first.close()
    settle()
    assert boxes(window) == []
    window.menu_acts.do(slug)
    settle()
    assert len(boxes(window)) == 1


def test_the_swatches_that_are_open_turn_to_the_one_that_was_scanned(
    window: MainWindow, shop: Workshop
) -> None:
    lot = shop.new()
    first, second = (shop.do(NewSwatch(lot, name=name)).code for name in ("one", "two"))
    window.menu_acts.open_swatches(first)
    settle()
    (box,) = boxes(window)
    assert isinstance(box, SwatchBox)
    assert box.code == first
    window.menu_acts.open_swatches(second)
    settle()
    assert boxes(window) == [box]
    assert box.code == second
