"""One step of the lot sheet: mark, title, planned, actual, amounts; all of it wraps."""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.questions import StepLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import Words, em, mark

MARKS: Final = {"done": "✓", "running": "●", "open": "○", "ahead": "○", "skipped": "–"}
STATE_WORDS: Final = {
    "done": tr_later("done"),
    "running": tr_later("running"),
    "open": tr_later("may begin"),
    "ahead": tr_later("ahead"),
    "skipped": tr_later("skipped"),
}
SHARES: Final = (22, 20, 26, 32)
"""Widths of title, planned, actual and amounts, in hundredths."""
OPTIONAL: Final = {
    "open": tr_later("{step} — another coat, if wanted"),
    "ahead": tr_later("{step} — if wanted"),
}
"""What the title of a step of an optional coat ends with, by its state."""
NARROW: Final = 38
"""Below so many line heights the columns stand two and two."""


def mark_width() -> int:
    """Give the width kept for the mark before a step, in pixels."""
    return round(theme().metrics.line * 1.2)


def amounts_words(step: StepLine) -> str:
    """Say amounts and details in one run of words."""
    if step.details:
        return step.details
    parts = []
    for amount in step.amounts:
        kitchen = f" ({amount.kitchen})" if amount.kitchen else ""
        parts.append(f"{amount.shown} {amount.title}{kitchen}")
    return "; ".join(parts)


def amiss(step: StepLine) -> list[str]:
    """Give the limit that cannot be kept and what would spoil, each in words."""
    return [words for words in (step.broken, *(one.words for one in step.warned)) if words]


def actual_words(step: StepLine) -> str:
    """Say when it was, or when it is best done."""
    return step.actual or step.when


class Columns(QWidget):
    """Four cells in fixed shares of the width; two over two where it is narrow."""

    def __init__(self, cells: tuple[QWidget, QWidget, QWidget, QWidget]) -> None:
        super().__init__()
        self._narrow = False
        self._left = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._right = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        for at, cell in enumerate(cells):
            policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
            policy.setHeightForWidth(True)
            cell.setSizePolicy(policy)
            box = self._left if at < 2 else self._right
            box.addWidget(cell, SHARES[at])
        for box in (self._left, self._right):
            box.setContentsMargins(0, 0, 0, 0)
            box.setSpacing(10)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(10)
        whole.addLayout(self._left, SHARES[0] + SHARES[1])
        whole.addLayout(self._right, SHARES[2] + SHARES[3])

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        narrow = self.width() < em(self, NARROW)
        if narrow != self._narrow:
            self._narrow = narrow
            way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
            for box in (self._left, self._right):
                box.setDirection(way)
                box.setSpacing(2 if narrow else 10)
            # One over the other, the second takes what is left: both begin at the top.
            for at, share in enumerate(SHARES):
                box = self._left if at < 2 else self._right
                box.setStretch(at % 2, at % 2 if narrow else share)


class StepRow(QFrame):
    """A row that is chosen by a click or Enter; arrows walk from row to row."""

    chosen = Signal(int)
    walked = Signal(int)
    """The arrow keys: -1 up, 1 down."""

    def __init__(self, step: StepLine) -> None:
        super().__init__()
        self.setObjectName("steprow")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.step = step
        self.mark = Words(bold=True)
        self.mark.setWordWrap(False)
        self.mark.setFixedWidth(mark_width())
        self.title = Words()
        self.planned = Words(tone="soft")
        self.actual = Words()
        self.amounts = Words(tone="soft")
        self.why = Words(tone="soft", size="small")
        self.broken = Words(tone="danger_ink", size="small")
        self._lay_out()
        self.show_step(step)

    def show_step(self, step: StepLine) -> None:
        """Show the step as it is now."""
        self.step = step
        self.mark.setText(MARKS.get(step.state, "○"))
        wanted = OPTIONAL.get(step.state) if step.optional else None
        self.title.setText(tr(wanted, step=step.title) if wanted else step.title)
        mark(self.title, "bold", step.state in ("running", "open"))
        quiet = step.state in ("ahead", "skipped") or bool(step.optional)
        self.title.set_tone("soft" if quiet and step.state != "open" else "ink")
        self.planned.setText(step.planned)
        self.actual.setText(actual_words(step))
        self.actual.set_tone("ink" if step.actual else "soft")
        self.amounts.setText(amounts_words(step))
        self.why.show_words("" if step.state in ("done", "skipped") else step.why)
        self.broken.show_words("\n".join(amiss(step)))
        self.setAccessibleName(spoken(step))

    def set_chosen(self, *, chosen: bool) -> None:
        """Mark the row whose details are open."""
        mark(self, "chosen", chosen)

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.LeftButton:
            self.chosen.emit(self.step.number)
        super().mousePressEvent(event)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        way = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        if way is not None:
            self.walked.emit(way)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.chosen.emit(self.step.number)
        else:
            super().keyPressEvent(event)

    def _lay_out(self) -> None:
        line = QHBoxLayout()
        line.setSpacing(6)
        line.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        cells = (self.title, self.planned, self.actual, self.amounts)
        for cell in cells:
            cell.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        line.addWidget(Columns(cells), 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 5, 8, 5)
        column.setSpacing(2)
        column.addLayout(line)
        for words in (self.why, self.broken):
            words.setContentsMargins(mark_width() + 6, 0, 0, 0)
            column.addWidget(words)


def spoken(step: StepLine) -> str:
    """Say a step in one sentence, as a screen reader reads it."""
    parts = (
        tr("Step {title}, {state}", title=step.title, state=tr(STATE_WORDS[step.state])),
        step.planned and tr("planned {when}", when=step.planned),
        actual_words(step),
        amounts_words(step),
        *amiss(step),
    )
    return ", ".join(part for part in parts if part)
