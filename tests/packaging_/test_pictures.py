"""The pictures of README and help are made anew and compared by their large features.

A picture is boiled down to 32 × 20 grey cells: a moved letter changes none of them much, a
pane that is missing, shifted or cut changes many.
"""

import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPainter

from tests.support.tree import TREE

CELLS = (32, 20)
UNLIKE = 26
"""Levels of 255 by which a cell is another one."""
MOST_UNLIKE = 0.06
"""Share of cells that may be: other fonts and another minute."""
KEPT = TREE / "resources" / "pictures"


def cells(image: QImage) -> Sequence[int]:
    small = image.convertToFormat(QImage.Format.Format_Grayscale8).scaled(
        *CELLS,
        Qt.AspectRatioMode.IgnoreAspectRatio,
        Qt.TransformationMode.SmoothTransformation,
    )
    return [small.pixelColor(x, y).red() for y in range(CELLS[1]) for x in range(CELLS[0])]


def unlike(one: QImage, other: QImage) -> float:
    pairs = zip(cells(one), cells(other), strict=True)
    return sum(abs(a - b) > UNLIKE for a, b in pairs) / (CELLS[0] * CELLS[1])


def read(path: Path) -> QImage:
    image = QImage(str(path))
    assert not image.isNull(), path
    return image


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    to = tmp_path_factory.mktemp("pictures")
    command = [sys.executable, str(TREE / "packaging" / "pictures.py"), str(to)]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=240, check=False)
    assert ran.returncode == 0, ran.stderr
    return to


@pytest.mark.long
def test_every_picture_is_made_by_the_script_and_no_other_is_kept(made: Path) -> None:
    assert {path.name for path in made.iterdir()} == {path.name for path in KEPT.iterdir()}


@pytest.mark.long
@pytest.mark.parametrize("name", sorted(path.name for path in KEPT.iterdir()))
def test_a_picture_looks_as_the_one_that_is_kept(made: Path, name: str) -> None:
    fresh, kept = read(made / name), read(KEPT / name)
    assert fresh.size() == kept.size()
    assert unlike(fresh, kept) <= MOST_UNLIKE


@pytest.mark.parametrize("name", ["window-light.png", "window-dark.png", "methods.png"])
def test_a_broken_layout_does_not_pass(name: str) -> None:
    kept = read(KEPT / name)
    shifted = kept.copy(kept.width() // 5, 0, kept.width(), kept.height())
    assert unlike(shifted, kept) > MOST_UNLIKE, "a pane has gone"
    covered = kept.copy()
    painter = QPainter(covered)
    painter.fillRect(0, kept.height() // 6, kept.width(), kept.height() // 2, Qt.GlobalColor.gray)
    painter.end()
    assert unlike(covered, kept) > MOST_UNLIKE, "something lies over the middle"
