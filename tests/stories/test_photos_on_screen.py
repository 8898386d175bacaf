"""On a real X server: a photo is dragged from another program, and one is pasted from it."""

import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from studio_log.app.compose import open_studio
from studio_log.domain.pieces import Piece
from studio_log.services.commands import ChangeSettings, NewLot
from studio_log.services.questions import LotSheetFor
from tests.support.tree import TREE

pytestmark = [pytest.mark.screen, pytest.mark.story]
PATIENCE = 30.0
PICTURE = TREE / "tests" / "reference" / "pictures" / "turned.jpg"
PLACE = {"left": 0, "top": 0, "width": 1150, "height": 900}
"""Where our window stands; the other program stands at its right."""
SHEET = (560, 600)
"""A place on the page of the lot, on the screen."""
HANDLE = (1300, 160)

OTHER = """
import sys
from PySide6.QtCore import QMimeData, Qt, QUrl
from PySide6.QtGui import QDrag, QGuiApplication, QImage
from PySide6.QtWidgets import QApplication, QLabel

class Handle(QLabel):
    def mouseMoveEvent(self, event):
        mime = QMimeData()
        mime.setUrls([QUrl.fromLocalFile(sys.argv[1])])
        drag = QDrag(self)
        drag.setMimeData(mime)
        print("taken", drag.exec(Qt.DropAction.CopyAction).name, flush=True)

app = QApplication([])
handle = Handle("a picture")
handle.setWindowTitle("another program")
handle.setGeometry(1200, 60, 200, 200)
handle.show()
QGuiApplication.clipboard().setImage(QImage(sys.argv[1]))
print("ready", flush=True)
app.exec()
"""


def eventually(look: Callable[[], bool], what: str) -> None:
    end = time.monotonic() + PATIENCE
    while not look():
        assert time.monotonic() < end, f"still not so: {what}"
        time.sleep(0.2)  # waits for another process, which tells nobody


def xdotool(*words: object) -> str:
    return subprocess.run(
        ["xdotool", *map(str, words)], capture_output=True, text=True, check=False, timeout=10
    ).stdout.strip()


def give_keyboard() -> None:
    """Do what a window manager does, which this screen has none of."""
    windows = xdotool("search", "--onlyvisible", "--name", "Studio Log").split()
    xdotool("windowfocus", windows[-1])
    pause()


def pause() -> None:
    time.sleep(0.15)  # waits as a hand does: X tells a program of moves one by one


@contextmanager
def program(*words: str) -> Iterator["subprocess.Popen[str]"]:
    process = subprocess.Popen(
        [sys.executable, *words],
        env={**os.environ, "PYTHONPATH": str(TREE), "QT_QPA_PLATFORM": "xcb"},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        yield process
    finally:
        process.send_signal(signal.SIGTERM)
        process.wait(15)
        if process.stdout is not None:
            process.stdout.close()


@pytest.fixture
def studio_folder(tmp_path: Path) -> Path:
    folder = tmp_path / "studio"
    studio = open_studio(folder)
    studio.do(ChangeSettings({"welcomed": True, "quiet_start": "00:00", "quiet_end": "00:00"}))
    studio.do(NewLot("soy-immersion-long", "Runners", (Piece(1, "linen", given_grams=150.0),)))
    studio.close()
    (folder / "window.json").write_text(json.dumps(PLACE))
    return folder


@pytest.fixture
def side_by_side(studio_folder: Path) -> Iterator["subprocess.Popen[str]"]:
    """Our window and another program's; the lot's page is under SHEET."""
    with program("-m", "studio_log", "--studio", str(studio_folder)):
        eventually(
            lambda: bool(xdotool("search", "--onlyvisible", "--name", "Studio Log")), "our window"
        )
        with program("-c", OTHER, str(PICTURE)) as other:
            assert other.stdout is not None
            assert other.stdout.readline() == "ready\n"
            time.sleep(2)  # waits for both to be painted, which X tells nobody
            yield other


def photos(folder: Path) -> list[dict[str, Any]]:
    studio = open_studio(folder)
    try:
        code = studio.ask(LotSheetFor(next(iter(_codes(studio))))).data["photos"]
    finally:
        studio.close()
    return list(code)


def _codes(studio: Any) -> list[str]:
    with studio.store.reading() as look:
        return list(look.lots.codes())


def test_a_photo_dragged_from_another_program_is_offered_and_kept(
    side_by_side: "subprocess.Popen[str]", studio_folder: Path
) -> None:
    xdotool("mousemove", *HANDLE)
    pause()
    xdotool("mousedown", 1)
    steps = 12
    for step in range(1, steps + 1):
        x, y = (round(a + (b - a) * step / steps) for a, b in zip(HANDLE, SHEET, strict=True))
        xdotool("mousemove", x, y)
        pause()
    xdotool("mouseup", 1)
    assert side_by_side.stdout is not None
    assert side_by_side.stdout.readline() == "taken CopyAction\n"
    give_keyboard()
    time.sleep(2)  # waits for the offer, whose note has the keyboard
    xdotool("type", "a fold at the hem")
    xdotool("key", "Return")
    eventually(lambda: bool(photos(studio_folder)), "the photo is kept")
    (kept,) = photos(studio_folder)
    assert (kept["name"], kept["note"]) == ("turned.jpg", "a fold at the hem")
    assert Path(kept["file"]).read_bytes() == PICTURE.read_bytes()


def test_a_picture_copied_in_another_program_is_pasted_by_its_key(
    side_by_side: "subprocess.Popen[str]", studio_folder: Path
) -> None:
    assert side_by_side.poll() is None
    xdotool("mousemove", *SHEET)
    xdotool("click", 1)
    give_keyboard()
    xdotool("key", "ctrl+v")
    time.sleep(2)  # waits for the offer, whose note has the keyboard
    xdotool("type", "from the other program")
    xdotool("key", "Return")
    eventually(lambda: bool(photos(studio_folder)), "the photo is kept")
    (kept,) = photos(studio_folder)
    assert kept["note"] == "from the other program"
    assert Path(kept["file"]).read_bytes().startswith(b"\x89PNG")
