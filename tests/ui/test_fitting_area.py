"""A box that grows with its content up to the screen, its buttons in sight all the while."""

import pytest
from PySide6.QtWidgets import QDialog, QLabel, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from studio_log.ui.widgets.fitting_area import FittingArea
from studio_log.ui.widgets.parts import Words

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


class Box(QDialog):
    """Lines of words above one button."""

    def __init__(self, lines: int) -> None:
        super().__init__()
        self.body = QWidget()
        self.lines = QVBoxLayout(self.body)
        for number in range(lines):
            self.lines.addWidget(Words(f"line {number}, long enough to wrap in a narrow box"))
        self.yes = QPushButton("Take it")
        self.area = FittingArea(self.body, name="lines")
        whole = QVBoxLayout(self)
        whole.addWidget(self.area, 1)
        whole.addWidget(self.yes)

    @property
    def scrolls(self) -> bool:
        return self.area.verticalScrollBar().maximum() > 0


def shown(qtbot: QtBot, lines: int) -> Box:
    box = Box(lines)
    qtbot.addWidget(box)
    box.show()
    return box


def test_few_lines_do_not_scroll(qtbot: QtBot) -> None:
    box = shown(qtbot, 6)
    qtbot.waitUntil(lambda: not box.scrolls)
    assert box.height() < box.screen().availableGeometry().height() / 2


def test_many_lines_scroll_and_the_button_stays_on_the_screen(qtbot: QtBot) -> None:
    box = shown(qtbot, 200)
    qtbot.waitUntil(lambda: box.scrolls)
    assert box.height() <= box.screen().availableGeometry().height()
    assert box.rect().contains(box.yes.geometry())
    assert not box.area.geometry().intersects(box.yes.geometry())


def test_the_box_follows_when_something_more_is_said_in_it(qtbot: QtBot) -> None:
    box = shown(qtbot, 4)
    qtbot.waitUntil(lambda: not box.scrolls)
    before = box.height()
    for number in range(4):
        box.lines.addWidget(QLabel(f"understood: {number}"))
    qtbot.waitUntil(lambda: box.height() > before)
    qtbot.waitUntil(lambda: not box.scrolls)
