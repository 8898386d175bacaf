"""Where the window stood is kept; a broken file or a screen that is gone does no harm."""

import json
from pathlib import Path

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget
from pytestqt.qtbot import QtBot

from studio_log.ui.panes import Panes
from studio_log.ui.theme.look import apply_theme
from studio_log.ui.window_place import (
    LARGEST_FILE,
    WindowPlace,
    keep_place,
    place_of,
    put_back,
    read_place,
)
from tests.ui.window_kit import settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture
def window(qtbot: QtBot, qapp: QApplication) -> QMainWindow:
    apply_theme(qapp, "light", 100, family="DejaVu Sans")
    made = QMainWindow()
    qtbot.addWidget(made)
    made.setCentralWidget(Panes(*(QWidget() for _ in range(4))))
    made.setGeometry(10, 10, 1000, 560)
    made.show()
    settle()
    return made


def panes_of(window: QMainWindow) -> Panes:
    found = window.centralWidget()
    assert isinstance(found, Panes)
    return found


def test_a_window_stands_again_where_it_stood(window: QMainWindow, tmp_path: Path) -> None:
    file = tmp_path / "window.json"
    keep_place(file, place_of(window, panes_of(window)))
    before = window.geometry()
    window.setGeometry(50, 50, 700, 500)
    kept = read_place(file)
    assert kept is not None
    put_back(window, panes_of(window), kept)
    assert window.geometry() == before


def test_shares_are_kept_only_where_a_hand_chose_them(window: QMainWindow) -> None:
    panes = panes_of(window)
    assert panes.shares() == ((), ())
    panes.share_as((), (300, 200))
    assert panes.shares()[1], "taken over as chosen by hand"
    panes.share_as((1, 2), (0, 5))
    assert panes.shares()[0] == (), "two widths are no three panes"


def test_a_place_on_a_screen_that_is_gone_is_passed_over(window: QMainWindow) -> None:
    before = window.geometry()
    put_back(window, panes_of(window), WindowPlace(20_000, 20_000, 800, 600))
    assert window.geometry() == before
    screen = QGuiApplication.primaryScreen().availableGeometry()
    assert screen.intersects(QRect(before))


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "null",
        "{",
        '{"left": 1}',
        '{"left": "1", "top": 1, "width": 1, "height": 1}',
        '{"left": true, "top": 1, "width": 1, "height": 1}',
        '{"left": 1e300, "top": 1, "width": 1, "height": 1}',
        '{"left": 99999999, "top": 1, "width": 1, "height": 1}',
        '{"left": 1, "top": 1, "width": 1, "height": 1, "panes": 7}',
        '{"left": 1, "top": 1, "width": 1, "height": 1, "panes": ["a"]}',
        "[" * 3_000,
        " " * (LARGEST_FILE + 1),
    ],
)
def test_a_broken_file_says_nothing(tmp_path: Path, text: str) -> None:
    file = tmp_path / "window.json"
    file.write_text(text, encoding="utf-8")
    assert read_place(file) is None


def test_a_folder_or_no_file_says_nothing_and_one_that_cannot_be_written_is_no_trouble(
    tmp_path: Path,
) -> None:
    assert read_place(tmp_path) is None
    assert read_place(tmp_path / "none") is None
    keep_place(tmp_path / "no" / "folder.json", WindowPlace(1, 1, 800, 600))
    assert list(tmp_path.iterdir()) == []
    keep_place(tmp_path / "window.json", WindowPlace(1, 2, 800, 600, panes=(200, 300, 280)))
    told = json.loads((tmp_path / "window.json").read_text(encoding="utf-8"))
    assert told["panes"] == [200, 300, 280]
