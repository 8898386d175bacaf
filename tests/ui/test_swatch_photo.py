"""Colour from a photo in the window: guessed, dragged, measured off its thread, written down."""

import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from pytestqt.qtbot import QtBot

from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.lab import Lab
from studio_log.services.swatches import NewSwatch, SwatchFor, SwatchPage
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.swatches import photo_job
from studio_log.ui.swatches.photo_box import PhotoBox
from studio_log.ui.swatches.photo_side import CARD
from tests.science.colour import made_photos as made
from tests.science.colour.made_photos import CLOTH
from tests.support.fixtures import Workshop

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")


@pytest.fixture(scope="module")
def photo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("photos") / "cloth.png"
    path.write_bytes(made.saved(made.photo(made.scene())))
    return path


@pytest.fixture
def code(shop: Workshop) -> str:
    return shop.do(NewSwatch(shop.new(), test_place="window")).code


@pytest.fixture
def box(qtbot: QtBot, bridge: Bridge, code: str) -> Iterator[PhotoBox]:
    made_box = PhotoBox(bridge, code)
    qtbot.addWidget(made_box)
    made_box.resize(1200, 800)
    made_box.show()
    yield made_box
    made_box.close()


def opened(box: PhotoBox, qtbot: QtBot, path: Path) -> None:
    box.open_photo(path)
    qtbot.waitUntil(lambda: box.found is not None, timeout=20_000)


def page(shop: Workshop, code: str) -> SwatchPage:
    return shop.studio.ask(SwatchFor(code))


def test_a_photo_is_guessed_measured_and_written_into_the_swatch(
    box: PhotoBox, qtbot: QtBot, shop: Workshop, code: str, photo: Path
) -> None:
    """The colour that was put into the photo comes out, within its own uncertainty."""
    assert not box.write.isEnabled()
    opened(box, qtbot, photo)
    assert "A target was seen" in box.side.said.text()
    assert box.found is not None
    assert box.found.two_u is not None
    assert ciede2000(box.found.lab, CLOTH) < box.found.two_u.ciede2000
    assert box.side.warned.text() == ""
    sure = box.found.two_u
    assert f"C* {box.found.lab.chroma:.1f} ± {sure.chroma:.1f}" in box.side.round.text()
    assert f"h {box.found.lab.hue:.0f}° ± {sure.hue:.0f}°" in box.side.round.text()
    box.side.keep_photo.setChecked(True)
    box.side.half.setCurrentIndex(1)
    qtbot.mouseClick(box.write, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not box.isVisible())
    found = page(shop, code)
    (reading,) = found.swatch.readings
    assert (reading.source, reading.half, reading.note) == ("photo", "test", "cloth.png")
    assert reading.two_u == pytest.approx(box.found.two_u.ciede2000, abs=1e-3)
    assert Path(found.photos[0]["file"]).read_bytes() == photo.read_bytes()


def test_corners_that_are_dragged_away_are_refused_with_words_and_come_back(
    box: PhotoBox, qtbot: QtBot, photo: Path
) -> None:
    opened(box, qtbot, photo)
    target = box.canvas.target
    assert target is not None
    handle = box.canvas.seen(QPointF(*target[0])).toPoint()
    drag(box, qtbot, handle, handle + QPoint(150, 160))
    qtbot.waitUntil(lambda: bool(box.message.words.text()), timeout=20_000)
    assert not box.write.isEnabled()
    moved = box.canvas.target
    assert moved is not None
    assert moved[0] != target[0]
    assert moved[1:] == target[1:]
    back = box.canvas.seen(QPointF(*moved[0])).toPoint()
    drag(box, qtbot, back, handle)
    qtbot.waitUntil(lambda: box.found is not None, timeout=20_000)
    assert box.write.isEnabled()
    assert not box.message.isVisible()


def drag(box: PhotoBox, qtbot: QtBot, start: QPoint, end: QPoint) -> None:
    canvas = box.canvas
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(canvas, pos=(start + end) / 2)
    canvas.grab()
    qtbot.mouseMove(canvas, pos=end)
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)


def test_the_keyboard_moves_a_handle_and_nothing_leaves_the_photo(
    box: PhotoBox, qtbot: QtBot, photo: Path
) -> None:
    opened(box, qtbot, photo)
    before = box.canvas.rects["swatch"]
    qtbot.keyClick(box.canvas, Qt.Key.Key_Right)
    after = box.canvas.rects["swatch"]
    assert after[0] > before[0]
    assert after[2:] == pytest.approx(before[2:])
    for _ in range(200):
        qtbot.keyClick(box.canvas, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert box.canvas.rects["swatch"][0] == 0.0
    qtbot.keyClick(box.canvas, Qt.Key.Key_Space)  # its first corner
    for _ in range(200):
        qtbot.keyClick(box.canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    left, _top, wide, _high = box.canvas.rects["swatch"]
    assert wide == pytest.approx(4.0), "a box does not turn inside out"
    assert left + wide <= made.SIZE[0]
    box.side.turn.click()
    assert box.canvas.target is not None


def test_beside_a_card_it_is_relative_only(box: PhotoBox, qtbot: QtBot, photo: Path) -> None:
    opened(box, qtbot, photo)
    box.side.way.setCurrentIndex(box.side.way.findData(CARD))
    qtbot.waitUntil(lambda: box.found is not None and box.found.relative, timeout=20_000)
    assert "Relative only" in box.side.warned.text()
    assert "relative only" in box.side.colour.text()
    before = box.found
    box.side.reflectance.setValue(90)
    qtbot.waitUntil(lambda: box.found not in (None, before), timeout=20_000)
    assert box.found is not None
    assert before is not None
    assert box.found.lab.lightness > before.lab.lightness + 20, "a white card is lighter"
    box.side.add_card.click()
    assert len([one for one in box.canvas.rects if one.startswith(CARD)]) == 2


@pytest.mark.parametrize("content", [b"\xff\xd8\xff\xe0nothing", b"", b"hello"])
def test_a_hostile_file_is_refused_and_the_box_goes_on(
    box: PhotoBox, qtbot: QtBot, tmp_path: Path, photo: Path, content: bytes
) -> None:
    bad = tmp_path / "bad.jpg"
    bad.write_bytes(content)
    box.open_photo(bad)
    qtbot.waitUntil(lambda: "as a photo" in box.message.words.text(), timeout=20_000)
    assert not box.write.isEnabled()
    box.open_photo(tmp_path / "gone.jpg")
    qtbot.waitUntil(lambda: "No such file" in box.message.words.text(), timeout=20_000)
    opened(box, qtbot, photo)
    assert box.write.isEnabled()


def test_a_dropped_file_is_opened_and_what_is_none_is_refused(
    box: PhotoBox, qtbot: QtBot, photo: Path
) -> None:
    words = QMimeData()
    words.setText("hello")
    box.take(words)
    assert "no photo" in box.message.words.text()
    files = QMimeData()
    files.setUrls([QUrl.fromLocalFile(str(photo))])
    box.take(files)
    qtbot.waitUntil(lambda: box.found is not None, timeout=20_000)


def test_the_window_goes_on_while_a_photo_is_read_and_it_can_be_stopped(
    box: PhotoBox, qtbot: QtBot, photo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    where: list[threading.Thread] = []
    heard: list[str] = []
    box.job.opened.connect(lambda one: heard.append(one.name))
    gate = threading.Event()
    real = photo_job._open

    def slow(*args: Any) -> Any:
        where.append(threading.current_thread())
        gate.wait(10)
        return real(*args)

    monkeypatch.setattr(photo_job, "_open", slow)
    box.open_photo(photo)
    qtbot.waitUntil(lambda: bool(where))
    assert where[0] is not threading.main_thread()
    assert box.side.busy.isVisible()
    assert "Reading" in box.side.doing.text()
    box.side.stop.click()
    assert not box.side.busy.isVisible()
    gate.set()
    opened(box, qtbot, photo)  # one after the other: the first has come home by then
    assert len(where) == 2
    assert heard == [photo.name], "what was stopped is not heard of"


def test_without_a_swatch_the_colour_goes_to_the_search(
    qtbot: QtBot, shop: Workshop, photo: Path
) -> None:
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    box = PhotoBox(bridge)
    qtbot.addWidget(box)
    box.show()
    opened(box, qtbot, photo)
    with qtbot.waitSignal(box.colour_found) as heard:
        qtbot.mouseClick(box.write, Qt.MouseButton.LeftButton)
    assert isinstance(heard.args[0], Lab)
    bridge.close()


def test_nine_spots_of_the_photo_say_how_even_the_cloth_is(
    box: PhotoBox, qtbot: QtBot, shop: Workshop, code: str, photo: Path
) -> None:
    opened(box, qtbot, photo)
    box.side.spots.setChecked(True)
    assert "Even over 9 spots" in box.side.even.text()
    with qtbot.waitSignal(box.read):
        qtbot.mouseClick(box.write, Qt.MouseButton.LeftButton)
    found = page(shop, code)
    assert len(found.swatch.readings[0].spots) == 9
    assert found.even_words.casefold() + "." == box.side.even.text().casefold()
    assert ciede2000(found.swatch.readings[0].lab, CLOTH) < 2.0
