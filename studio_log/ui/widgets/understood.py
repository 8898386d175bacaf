"""A line that says beneath itself what was understood of it, and offers what was typed last."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, Generic, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.parts import Tone, Words, mark

LONGEST: Final = 200
Value = TypeVar("Value")


@dataclass(frozen=True)
class Understood(Generic[Value]):
    """What a text means: its value, None where it is blank or cannot be read.

    `fault` says why it cannot; `doubt` asks about what looks wrong and holds nothing up.
    """

    value: Value | None = None
    words: str = ""
    fault: str = ""
    doubt: str = ""

    @property
    def tone(self) -> Tone:
        """The ink in which it is said."""
        if self.fault:
            return "danger_ink"
        return "good_ink" if self.words else "soft"


class UnderstoodLine(QWidget, Generic[Value]):
    """Reads while it is typed. A mistake is said beneath the line; nothing typed is taken away."""

    entered = Signal()
    """Enter was pressed while the line can be read."""
    changed = Signal()

    def __init__(
        self,
        read: Callable[[str], Understood[Value]],
        *,
        name: str,
        hint: str = "",
        blank: str = "",
        slug: str = "",
    ) -> None:
        super().__init__()
        self._read = read
        self._blank = blank
        self.reading: Understood[Value] = Understood()
        self.line = QLineEdit()
        self.line.setMaxLength(LONGEST)
        self.line.setAccessibleName(name)
        self.line.setPlaceholderText(hint)
        self.understood = Words(blank, tone="soft", size="small")
        self.understood.setVisible(bool(blank))
        self.doubt = Words(tone="ochre_ink", size="small")
        self.doubt.hide()
        self.last = LastValues(self.line, slug)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for widget in (self.line, self.understood, self.doubt):
            column.addWidget(widget)
        self.setFocusProxy(self.line)
        self.line.textChanged.connect(self._typed)
        self.line.returnPressed.connect(self._entered)

    @property
    def ok(self) -> bool:
        """Whether the line is blank or was understood."""
        return not self.reading.fault

    @property
    def fault(self) -> str:
        """Why the line was not understood, "" where it was."""
        return self.reading.fault

    @property
    def value(self) -> Value | None:
        """What was understood, None for a blank line."""
        return self.reading.value

    def text(self) -> str:
        """Give what is typed, without blanks around."""
        return self.line.text().strip()

    def setText(self, text: str) -> None:  # noqa: N802 - as Qt's own fields have it
        """Type a text in place of what stands there."""
        self.line.setText(text)

    @property
    def blank(self) -> bool:
        """Whether nothing is typed."""
        return not self.text()

    def clear(self) -> None:
        """Go back to blank."""
        self.line.clear()

    def read_again(self) -> None:
        """Read the line once more: what it is read against may have moved."""
        text = self.text()
        self.reading = self._read(text) if text else Understood()
        said = self.reading.fault or self.reading.words or ("" if text else self._blank)
        self.understood.set_tone(self.reading.tone)
        self.understood.show_words(said)
        doubt = f"? {self.reading.doubt}" if self.reading.doubt else ""
        self.doubt.show_words(doubt)
        mark(self.line, "wrong", bool(self.reading.fault))
        self.line.setAccessibleDescription(f"{said} {doubt}".strip())

    def remember(self) -> None:
        """Offer what stands here another time: it was taken."""
        self.last.remember()

    def _typed(self, _text: str) -> None:
        self.read_again()
        self.changed.emit()

    def _entered(self) -> None:
        self.read_again()
        if self.ok:
            self.entered.emit()
