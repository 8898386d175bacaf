"""A tag read by a scanner that types, or a code typed by hand: its lot opens from anywhere.

Such a scanner is a keyboard: it types the code in one burst, faster than any hand, and ends it
with Enter or Tab. A burst that went into a field is taken out of it again.
"""

import re
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QWindow
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit, QTextEdit, QWidget
from typing_extensions import override

APART: Final = 50
"""Milliseconds between two letters of a scanner at most; a hand takes 100 and more (common
practice, no source)."""
CODE: Final = re.compile(r"(?:[BW]?\d{2}-\d{3,6})", re.ASCII)
_LONGEST: Final = 12
_ENDS: Final = frozenset({Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Tab})


class Scanner(QObject):
    """Looks at the keys of one window; everything that is no scanned code passes."""

    scanned = Signal(str)
    """The code of a lot, a bath or a swatch."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._typed = ""
        self._last = 0
        self._field: QWidget | None = None
        self._before = ""

    def watch(self, window: QWindow | None) -> None:
        """Look at the keys that come to a window, before its parts see them."""
        if window is not None:
            window.removeEventFilter(self)
            window.installEventFilter(self)

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is not QEvent.Type.KeyPress or not isinstance(event, QKeyEvent):
            return False
        at = event.timestamp()
        fast = 0 <= at - self._last <= APART
        self._last = at
        if event.key() in _ENDS:
            return self._ended(fast=fast)
        text = event.text()
        if len(text) != 1 or not text.isprintable() or event.isAutoRepeat():
            if text:
                self._typed = ""
            return False
        if not fast or len(self._typed) >= _LONGEST:
            self._begin()
        self._typed += text
        return False

    def _begin(self) -> None:
        """Remember what stood in the field, in case a burst begins here."""
        self._typed = ""
        self._field = QApplication.focusWidget()
        self._before = self._field.text() if isinstance(self._field, QLineEdit) else ""

    def _ended(self, *, fast: bool) -> bool:
        code, self._typed = self._typed.upper(), ""
        if not fast or not CODE.fullmatch(code):
            return False
        self._take_out(len(code))
        self.scanned.emit(code)
        return True

    def _take_out(self, count: int) -> None:
        """Give the field back what stood in it before the burst."""
        if self._field is None or self._field is not QApplication.focusWidget():
            return
        if isinstance(self._field, QLineEdit):
            self._field.setText(self._before)
        elif isinstance(self._field, QPlainTextEdit | QTextEdit) and not self._field.isReadOnly():
            cursor = self._field.textCursor()
            for _ in range(count):
                cursor.deletePreviousChar()
