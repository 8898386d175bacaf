"""A line for a moment in plain words, saying beside it what was understood."""

from datetime import datetime, timedelta
from typing import Protocol

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from studio_log.domain.day_text import Prefer
from studio_log.domain.errors import Refusal
from studio_log.domain.moment_text import MomentReading, read_moment
from studio_log.language.words import tr
from studio_log.ui.widgets.parts import Words

AHEAD_LIMIT = timedelta(minutes=2)
"""Further ahead than this nothing can have happened; the studio refuses it likewise."""


class WallClock(Protocol):
    """What a moment is read against."""

    def now(self) -> datetime:
        """Give the present, aware."""
        ...

    def zone(self) -> str:
        """Give the zone in force."""
        ...


class MomentLine(QWidget):
    """Reads "at eight last night", "13:08" or "-3h" while it is typed; blank means now."""

    entered = Signal()
    """Enter was pressed while the line can be read."""
    changed = Signal()

    def __init__(
        self,
        clock: WallClock,
        *,
        name: str,
        blank: str = "blank means now",
        prefer: Prefer = "past",
    ) -> None:
        super().__init__()
        self._clock = clock
        self._blank = blank
        self._prefer: Prefer = prefer
        self._reading: MomentReading | None = None
        self._fault = ""
        self.line = QLineEdit()
        self.line.setMaxLength(200)
        self.line.setAccessibleName(name)
        self.line.setPlaceholderText(tr("13:08, -3h, at eight last night"))
        self.understood = Words(blank, tone="soft", size="small")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.line)
        column.addWidget(self.understood)
        self.setFocusProxy(self.line)
        self.line.textChanged.connect(self._typed)
        self.line.returnPressed.connect(self._entered)

    @property
    def ok(self) -> bool:
        """Whether the line is blank or was understood."""
        return not self._fault

    @property
    def fault(self) -> str:
        """Why the line was not understood, "" where it was."""
        return self._fault

    @property
    def at(self) -> datetime | None:
        """The moment understood, aware UTC; None where the line is blank."""
        return self._reading.at if self._reading is not None else None

    @property
    def blank(self) -> bool:
        """Whether nothing is typed."""
        return not self.line.text().strip()

    def read_again(self) -> None:
        """Read the line against the present: what is ahead or ago has moved."""
        text = self.line.text().strip()
        self._reading, self._fault = None, ""
        words, tone = self._blank, "soft"
        if text:
            words, tone = self._read(text)
        self.understood.setText(words)
        self.understood.set_tone(tone)  # type: ignore[arg-type]
        self.line.setAccessibleDescription(words)

    def clear(self) -> None:
        """Go back to blank."""
        self.line.clear()

    def _read(self, text: str) -> tuple[str, str]:
        try:
            reading = read_moment(
                text, now=self._clock.now(), zone=self._clock.zone(), prefer=self._prefer
            )
        except Refusal as refusal:
            self._fault = str(refusal)
            return self._fault, "danger_ink"
        if self._prefer == "past" and reading.at > self._clock.now() + AHEAD_LIMIT:
            self._fault = tr(
                "{understood}: still ahead. Enter it once it has happened.",
                understood=reading.understood,
            )
            return self._fault, "danger_ink"
        self._reading = reading
        if reading.doubt:
            return f"{reading.understood}. {reading.doubt}", "ochre_ink"
        return tr("Understood: {understood}", understood=reading.understood), "good_ink"

    def _typed(self, _text: str) -> None:
        self.read_again()
        self.changed.emit()

    def _entered(self) -> None:
        self.read_again()
        if self.ok:
            self.entered.emit()
