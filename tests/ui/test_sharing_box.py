"""The window of several laptops: moved to a server, opened there, rung here or not, taken back."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from studio_log.domain.journal import Act
from studio_log.ui.bridge import Bridge
from studio_log.ui.sharing.password_box import PasswordBox
from studio_log.ui.sharing.sharing_box import SharingBox
from tests.support.fixtures import Workshop
from tests.support.servers import Databases, Known, databases, typed
from tests.ui.window_kit import press, settle, text

__all__ = ["databases"]

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge) -> Iterator[SharingBox]:
    made = SharingBox(bridge)
    qtbot.addWidget(made)
    made.show()
    settle()
    yield made
    made.close()


def test_there_and_back(
    box: SharingBox, shop: Workshop, qtbot: QtBot, databases: Databases
) -> None:
    shop.studio.secret = Known("")
    code = shop.new("runners")
    address = databases.new()
    assert "on this laptop alone" in text(box.where)
    assert box.alone.isVisible()
    box.address.setText(typed(address).address.text)
    box.password.setText(typed(address).password)
    press(qtbot, box.move_there)
    assert "Carried there and counted" in text(box.message.words)
    assert box.password.text() == "", "nobody reads it later"
    assert "This studio lies on postgresql://" in text(box.where)
    assert not box.alone.isVisible()
    assert "The server answers" in text(box.fares)
    assert box.rings.isChecked()
    box.rings.click()
    settle()
    assert "another one has to" in text(box.message.words)
    shop.mark(code, "1", Act.START)
    press(qtbot, box.back)
    assert "two studios" in text(box.message.words)
    press(qtbot, box.message.yes)
    assert "compared with the server" in text(box.message.words)
    assert "on this laptop alone" in text(box.where)
    assert shop.lot(code).step(1).running


def test_what_is_amiss_is_said_and_what_was_typed_stays(
    box: SharingBox, shop: Workshop, qtbot: QtBot
) -> None:
    press(qtbot, box.move_there)
    assert "Type the server’s address first" in text(box.message.words)
    box.address.setText("http://server/studio")
    press(qtbot, box.move_there)
    assert "no address of a studio" in text(box.message.words)
    assert box.address.text() == "http://server/studio"
    box.address.setText("postgresql://dyer@127.0.0.1:1/studio")
    press(qtbot, box.open_there)
    assert "cannot be reached" in text(box.message.words)
    assert not shop.studio.store.address
    assert box.move_there.isEnabled()


def test_the_password_is_asked_for_behind_dots(qtbot: QtBot) -> None:
    box = PasswordBox("The server does not let this user in.")
    qtbot.addWidget(box)
    box.show()
    assert box.line.echoMode() is QLineEdit.EchoMode.Password
    assert not box.go.isEnabled()
    qtbot.keyClicks(box.line, "s@lt")
    press(qtbot, box.go)
    assert box.result() == 1
    assert box.password == "s@lt"
