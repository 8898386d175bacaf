"""Where lots are looked for, and what was understood of it as chips that can be taken away."""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.theme.dress import dress_button
from studio_log.ui.widgets.find_line import FindLine
from studio_log.ui.widgets.flow_layout import FlowLayout

HINT: Final = tr_later(
    "Any word that was typed, and: cotton · over 400 g · soyed twice · cured over 30 days · "
    "curing · since June · at shelf 3 · by weight. "
    "In quotation marks it is only looked for as words."
)
CROSS: Final = "\N{MULTIPLICATION SIGN}"
LONGEST_CHIP: Final = 40
"""Letters of a part that its chip shows; the whole is in its tip."""


class SearchField(FindLine):
    """What may be typed stands in its tip."""

    def __init__(self) -> None:
        super().__init__(tr("Find a lot or cloth — or scan a tag"), tr("Find a lot"))
        self.setToolTip(tr(HINT))


class PartChip(QPushButton):
    """One part of a search. A click, Enter, Delete or Backspace takes it away."""

    stepped = Signal(int)
    """The keyboard goes to the chip before (-1) or after (1)."""

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.stepped.emit(1 if key == Qt.Key.Key_Right else -1)
        else:
            super().keyPressEvent(event)


class PartChips(QWidget):
    """What was understood, part by part; chips are kept, not made anew with each letter typed.

    Tab reaches them from the field `after` which they stand.
    """

    taken_away = Signal(str)
    left = Signal()
    """The keyboard left the last chip there was."""

    def __init__(self, after: QWidget) -> None:
        super().__init__()
        self._after = after
        self.parts: tuple[str, ...] = ()
        self.chips: list[PartChip] = []
        self._flow = FlowLayout(self, gap=6)
        self.setAccessibleName(tr("Understood"))
        self.hide()

    def show_parts(self, parts: tuple[str, ...]) -> None:
        """Show these parts; where the keyboard is on one of them it stays near."""
        if parts == self.parts:
            return
        here = next((at for at, chip in enumerate(self.chips) if chip.hasFocus()), None)
        self.parts = parts
        while len(self.chips) < len(parts):
            self._add()
        for chip, part in zip(self.chips, parts, strict=False):
            shown = part if len(part) <= LONGEST_CHIP else f"{part[: LONGEST_CHIP - 1]}…"
            chip.setText(f"{shown} {CROSS}".replace("&", "&&"))
            chip.setAccessibleName(tr("Take away: {part}", part=part))
            chip.setToolTip(tr("Understood: {part}. Press it to take it away.", part=part))
            chip.show()
        for chip in self.chips[len(parts) :]:
            chip.hide()
        self.setVisible(bool(parts))
        if here is not None:
            self._to(min(here, len(parts) - 1))

    def _add(self) -> None:
        chip = PartChip()
        chip.setObjectName("chip")
        dress_button(chip, "plain")
        chip.setAutoDefault(False)
        chip.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        chip.clicked.connect(self._clicked)
        chip.stepped.connect(self._stepped)
        self._flow.addWidget(chip)
        # What is made late would else be reached last of all.
        QWidget.setTabOrder(self.chips[-1] if self.chips else self._after, chip)
        self.chips.append(chip)

    def _place(self) -> int:
        sender = self.sender()
        return self.chips.index(sender) if isinstance(sender, PartChip) else 0

    def _clicked(self) -> None:
        self.taken_away.emit(self.parts[self._place()])

    def _stepped(self, by: int) -> None:
        self._to(min(max(self._place() + by, 0), len(self.parts) - 1))

    def _to(self, at: int) -> None:
        if at < 0:
            self.left.emit()
        else:
            self.chips[at].setFocus(Qt.FocusReason.OtherFocusReason)
