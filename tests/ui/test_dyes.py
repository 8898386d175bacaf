"""Dyes, materials and ways to a colour as they are looked up, copied and printed for the wall."""

import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from studio_log.ui.dyes.dyes_box import AIM, DYES, MATERIALS, DyesBox
from tests.ui.demo_pages import House, house, opened, settle

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture(scope="module")
def demo() -> Iterator[House]:
    with house() as made:
        yield made


@pytest.fixture
def box(qtbot: QtBot, demo: House) -> Iterator[DyesBox]:
    assert qtbot is not None
    with opened("dyes", demo) as made:
        assert isinstance(made, DyesBox)
        yield made


def turn(box: DyesBox, page: int) -> None:
    box.chips.button(page).click()
    settle()


def test_a_dye_is_found_by_its_latin_name(box: DyesBox, qtbot: QtBot) -> None:
    assert box.list.count() == 44  # as many as the handbook lists
    qtbot.keyClicks(box.finder, "rubia tinct")
    assert box.list.count() == 1
    text = box.sheet.toPlainText()
    assert "madder" in text
    assert "60 to 70 °C" in text  # clear red below 72 °C: common practice, no source
    qtbot.keyClicks(box.finder, " zzz")
    assert "Nothing is found" in box.sheet.toPlainText()


def test_a_material_shows_what_to_heed(box: DyesBox, qtbot: QtBot) -> None:
    turn(box, MATERIALS)
    qtbot.keyClicks(box.finder, "soda ash")
    settle()
    text = box.sheet.toPlainText()
    assert "Heed" in text
    assert "safety data sheet" in text


def test_a_way_begins_a_lot(box: DyesBox, qtbot: QtBot) -> None:
    turn(box, AIM)
    assert "Soy alone" in box.sheet.toPlainText()
    assert box.aim is not None
    first = box.starts.findChildren(type(box.copy))[0]
    with qtbot.waitSignal(box.lot_wanted) as wanted:
        qtbot.mouseClick(first, Qt.MouseButton.LeftButton)
    assert wanted.args == [box.aim.ways[0].methods[0]]
    box.fibre.setCurrentIndex(1)
    assert "Soy alone" not in box.sheet.toPlainText()
    turn(box, DYES)
    assert not box.starts.isVisible()


def test_a_sheet_is_copied(box: DyesBox, qtbot: QtBot) -> None:
    qtbot.mouseClick(box.copy, Qt.MouseButton.LeftButton)
    assert QGuiApplication.clipboard().text() == box.sheet.toPlainText()


def test_the_sheet_for_the_wall_names_every_material(box: DyesBox, tmp_path: Path) -> None:
    turn(box, MATERIALS)
    to = tmp_path / "wall.pdf"
    box.save_wall(to)
    assert "Saved" in box.said.text()
    if shutil.which("pdftotext") is None:
        pytest.skip("needs pdftotext: apt-get install poppler-utils")
    text = subprocess.run(
        ["pdftotext", "-layout", str(to), "-"], capture_output=True, text=True, check=True
    ).stdout
    words = " ".join(text.split())
    assert "safety data sheet" in words
    for title in ("alum", "soda ash", "slaked lime"):
        assert title in words
    box.save_wall(tmp_path / "nowhere" / "wall.pdf")
    assert "could not be written" in box.said.text()
