"""The welcome asks three things, all filled in; Enter accepts them."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.services.commands import ChangeSettings
from studio_log.services.settings import Settings
from studio_log.ui.welcome.welcome_page import WelcomePage
from tests.ui.fake_studio import FakeStudio
from tests.ui.window_kit import bridge_over, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


def page_over(qtbot: QtBot, studio: FakeStudio) -> WelcomePage:
    """Give the page with the settings of a studio never opened before."""
    page = WelcomePage(bridge_over(studio))
    qtbot.addWidget(page)
    page.show_settings(Settings())
    page.show()
    return page


def test_enter_accepts_the_defaults_once(qtbot: QtBot) -> None:
    studio = FakeStudio()
    page = page_over(qtbot, studio)
    with qtbot.waitSignal(page.done):
        qtbot.keyClick(page.name, Qt.Key.Key_Return)
    assert studio.done == [
        ChangeSettings({
            "studio": "My studio",
            "units": "metric",
            "quiet_start": "22:00",
            "quiet_end": "07:00",
            "welcomed": True,
        })
    ]  # fmt: skip


def test_what_is_typed_is_sent(qtbot: QtBot) -> None:
    studio = FakeStudio()
    page = page_over(qtbot, studio)
    page.name.setText("  Harbour Lane Cloth Studio ")
    page.units.setCurrentIndex(page.units.findData("us"))
    qtbot.keyClick(page.units, Qt.Key.Key_Return)
    settle()
    (sent,) = studio.done
    assert sent.values["studio"] == "Harbour Lane Cloth Studio"
    assert sent.values["units"] == "us"


def test_a_refusal_is_said_and_keeps_the_fields(qtbot: QtBot) -> None:
    studio = FakeStudio(refusals=[Refusal("The folder is read-only. Nothing was changed.")])
    page = page_over(qtbot, studio)
    page.name.setText("Harbour Lane")
    page.accept()
    settle()
    assert page.said.text() == "The folder is read-only. Nothing was changed."
    assert page.name.text() == "Harbour Lane"
    assert page.begin.isEnabled()
