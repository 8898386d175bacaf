"""A scanner types a code in one burst: the lot opens, and no field keeps the burst."""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from studio_log.services.commands import ChangeSettings
from studio_log.services.worker import InlineWorker
from studio_log.ui.bridge import Bridge
from studio_log.ui.main_window import MainWindow
from studio_log.ui.scanning import Scanner
from tests.support.fixtures import Workshop
from tests.ui.window_kit import HandTray, WrittenAsk

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
KEYS = {"-": Qt.Key.Key_Minus, "\r": Qt.Key.Key_Return, "\t": Qt.Key.Key_Tab}


class Bench(QWidget):
    """A field, a text, and what was scanned."""

    def __init__(self) -> None:
        super().__init__()
        self.line, self.text = QLineEdit(), QPlainTextEdit()
        column = QVBoxLayout(self)
        column.addWidget(self.line)
        column.addWidget(self.text)
        self.found: list[str] = []
        self.scanner = Scanner(self)
        self.scanner.scanned.connect(self.found.append)


@pytest.fixture
def bench(qtbot: QtBot) -> Bench:
    made = Bench()
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    made.scanner.watch(made.windowHandle())
    return made


def type_in(widget: QWidget, text: str, apart: int) -> None:
    """Type as a keyboard does, so many milliseconds apart."""
    window = widget.window().windowHandle()
    at = type_in.at = getattr(type_in, "at", 1_000) + 10_000  # type: ignore[attr-defined]
    for sign in text:
        key = KEYS.get(sign, Qt.Key(ord(sign.upper())))
        for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
            event = QKeyEvent(kind, key, Qt.KeyboardModifier.NoModifier, sign)
            event.setTimestamp(at)
            QCoreApplication.sendEvent(window, event)
        at += apart


@pytest.mark.parametrize("end", ["\r", "\t"])
def test_a_burst_is_a_scan_and_leaves_the_field_as_it_was(bench: Bench, end: str) -> None:
    bench.line.setText("a note")
    bench.line.setFocus()
    type_in(bench, f"26-031{end}", apart=8)
    assert bench.found == ["26-031"]
    assert bench.line.text() == "a note"
    assert bench.line.hasFocus()


def test_a_burst_into_a_long_text_is_taken_out_again(bench: Bench) -> None:
    bench.text.setPlainText("two\nlines")
    bench.text.setFocus()
    bench.text.moveCursor(bench.text.textCursor().MoveOperation.End)
    type_in(bench, "B26-001\r", apart=8)
    assert bench.found == ["B26-001"]
    assert bench.text.toPlainText() == "two\nlines"


@pytest.mark.parametrize(
    ("text", "apart"), [("26-031\r", 120), ("26-31\r", 8), ("hello\r", 8), ("26-0311234567\r", 8)]
)
def test_a_hand_and_other_words_pass(bench: Bench, text: str, apart: int) -> None:
    bench.line.setFocus()
    type_in(bench, text, apart)
    assert bench.found == []
    assert bench.line.text() == text.strip()


def test_a_scan_opens_its_lot_in_the_window(shop: Workshop, qtbot: QtBot) -> None:
    first, second = shop.new("first"), shop.new("second")
    shop.do(ChangeSettings({"welcomed": True}))
    bridge = Bridge(InlineWorker(), shop.studio, shop.clock)
    window = MainWindow(bridge, ask=WrittenAsk(), tray=HandTray(available=True))  # type: ignore[arg-type]
    qtbot.addWidget(window)
    window.start()
    window.show()
    qtbot.waitExposed(window)
    window.choose_lot(first)
    window.timeline.setFocus()
    type_in(window, f"{second}\r", apart=8)
    qtbot.waitUntil(lambda: window.sheet.code == second)
    type_in(window, "26-777\r", apart=8)
    qtbot.waitUntil(lambda: "There is no lot 26-777" in window.lots.said.text())
    assert window.sheet.code == second
    window.quit()
