"""The draft of a method: one text, changed by hand or by the form, with one history."""

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QTextCursor
from PySide6.QtWidgets import QPlainTextEdit

from studio_log.domain.errors import Refusal
from studio_log.domain.method_text import MethodDraft, read_draft
from studio_log.ui.methods.form_page import Change

TYPED_MS = 250
FORM_MS = 60
"""A letter typed into the form stands in the text at once, and is read a moment later."""
NAME = "the text"


class DraftText(QObject):
    """Holds the text in its field; says anew what it means a moment after a change."""

    read = Signal(object)
    """The MethodDraft as it stands now."""
    refused = Signal(str)

    def __init__(self, field: QPlainTextEdit) -> None:
        super().__init__(field)
        self._field = field
        self._joins = ""
        self._ours = False
        self.cautions: tuple[str, ...] | None = None
        self._soon = QTimer(self, singleShot=True, interval=TYPED_MS)
        self._soon.timeout.connect(self.read_now)
        self._typing = QTimer(self, singleShot=True, interval=FORM_MS)
        self._typing.timeout.connect(self.read_now)
        field.textChanged.connect(self._changed)

    @property
    def text(self) -> str:
        """The whole text, no-break spaces and all."""
        return self._field.document().toRawText().replace("\u2029", "\n").replace("\u2028", "\n")

    def begin(self, text: str) -> None:
        """Begin with another text and no history."""
        self._field.setPlainText(text)
        self.read_now()

    def change(self, change: Change, joins: str = "") -> bool:
        """Change the text by the form; what joins with the change before is one step back."""
        before = self.text
        try:
            after = change(before)
        except Refusal as refusal:
            self.refused.emit(str(refusal))
            return False
        self.refused.emit("")
        if after != before:
            self._write(before, after, joined=bool(joins) and joins == self._joins)
            self._joins = joins
        if joins:
            self._typing.start()
        else:
            self.read_now()
        return True

    def turn_back(self, back: bool) -> None:  # noqa: FBT001 - a signal hands it on so
        """Take the last change back, or do again what was taken back."""
        self._joins = ""
        if back:
            self._field.undo()
        else:
            self._field.redo()
        self.read_now()

    def read_now(self) -> None:
        """Say what the text means, faults and all."""
        self._soon.stop()
        self._typing.stop()
        self.read.emit(self.reading())

    def reading(self) -> MethodDraft:
        """Give what the text means."""
        return read_draft(self.text, name=NAME, cautions=self.cautions)

    def go_to(self, line: int) -> None:
        """Put the cursor on a line of the text, counted from 1."""
        block = self._field.document().findBlockByNumber(max(line - 1, 0))
        self._field.setTextCursor(QTextCursor(block))
        self._field.centerCursor()

    def _changed(self) -> None:
        if not self._ours:
            self._joins = ""
            self._soon.start()

    def _write(self, before: str, after: str, *, joined: bool) -> None:
        """Write only what differs, so that cursor and history keep their places."""
        start = _same_start(before, after)
        end = _same_start(before[start:][::-1], after[start:][::-1])
        cursor = QTextCursor(self._field.document())
        cursor.setPosition(_units(before[:start]))
        cursor.setPosition(_units(before[: len(before) - end]), QTextCursor.MoveMode.KeepAnchor)
        self._ours = True
        if joined:
            cursor.joinPreviousEditBlock()
        else:
            cursor.beginEditBlock()
        cursor.insertText(after[start : len(after) - end])
        cursor.endEditBlock()
        self._ours = False


def _same_start(one: str, other: str) -> int:
    """Give how many letters two texts have in common from their start."""
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        if one[:middle] == other[:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _units(text: str) -> int:
    """Give the length as Qt counts it, in UTF-16 units."""
    return len(text.encode("utf-16-le", "surrogatepass")) // 2
