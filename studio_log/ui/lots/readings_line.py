"""A line for readings that says beneath it what was understood, and asks where one looks wrong."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from studio_log.ui.lots.readings_text import LONGEST, Readings, read_readings
from studio_log.ui.widgets.parts import Tone, Words, mark

HINT = "71 F, pH 6.8, 160 g"
BLANK = "temperature, pH, weight, or name: value"


class ReadingsLine(QWidget):
    """Reads while it is typed; a doubt is asked beside the field and holds nothing up."""

    entered = Signal()
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.readings = Readings()
        self.line = QLineEdit()
        self.line.setMaxLength(LONGEST)
        self.line.setAccessibleName("Readings")
        self.line.setPlaceholderText(HINT)
        self.understood = Words(BLANK, tone="soft", size="small")
        self.doubt = Words(tone="ochre_ink", size="small")
        self.doubt.hide()
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
        return not self.readings.fault

    @property
    def values(self) -> dict[str, float | str]:
        """What is to be kept, by name."""
        return self.readings.values

    def clear(self) -> None:
        """Go back to blank."""
        self.line.clear()

    def show_values(self, values: dict[str, float | str]) -> None:
        """Fill the line with readings that were kept before."""
        self.line.setText("; ".join(_typed(name, value) for name, value in values.items()))

    def _typed(self, text: str) -> None:
        self.readings = read_readings(text)
        words, tone = self._said()
        self.understood.setText(words)
        self.understood.set_tone(tone)
        doubt = f"? {self.readings.doubt}" if self.readings.doubt else ""
        self.doubt.show_words(doubt)
        mark(self.line, "wrong", not self.ok)
        self.line.setAccessibleDescription(f"{words} {doubt}".strip())
        self.changed.emit()

    def _said(self) -> tuple[str, Tone]:
        if self.readings.fault:
            return self.readings.fault, "danger_ink"
        if self.readings.found:
            return f"Understood: {self.readings.understood}", "good_ink"
        return BLANK, "soft"

    def _entered(self) -> None:
        if self.ok:
            self.entered.emit()


def _typed(name: str, value: float | str) -> str:
    return f"{name}: {value:g}" if isinstance(value, float) else f"{name}: {value}"
