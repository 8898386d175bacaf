"""The chosen step opened: how it is done, cautions, amounts, the entry line and its acts."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QLineEdit, QPushButton, QVBoxLayout, QWidget

from studio_log.domain.journal import Act
from studio_log.services.questions import StepLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.amount_rows import AmountRows
from studio_log.ui.lots.readings_line import ReadingsLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, button, emptied

LEFT_TO_BENCH: Final = frozenset({"putoff"})


class StepDetail(QFrame):
    """Where the dyer marks what happened: when, readings, a note, and the act."""

    acted = Signal(str, object, str)
    """Act, the moment (None: now) and the note; the readings stand in `readings`."""
    amount_changed = Signal(str, float)

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("stepdetail")
        self._step: StepLine | None = None
        self._acts: tuple[tuple[str, str], ...] = ()
        self.do_words = Words()
        self.cautions = Words(tone="danger_ink", size="small")
        self.amounts = AmountRows()
        self.moment = MomentLine(bridge, name="When it happened")
        self.note = QLineEdit()
        self.note.setMaxLength(1000)
        self.note.setAccessibleName("Note")
        self.note.setPlaceholderText("a note, if any")
        self.readings = ReadingsLine()
        self._buttons = FlowLayout(gap=8)
        self.act_buttons: dict[str, QPushButton] = {}
        self._lay_out()
        self.moment.entered.connect(self._chief)
        self.note.returnPressed.connect(self._chief)
        self.readings.entered.connect(self._chief)
        self.amounts.changed.connect(self.amount_changed)

    @property
    def step(self) -> StepLine | None:
        """The step shown."""
        return self._step

    def show_step(self, step: StepLine) -> None:
        """Show a step; what is typed stays while it is the same one."""
        if self._step is None or self._step.number != step.number:
            self.clear_entry()
        self._step = step
        self.do_words.show_words(step.do)
        self.cautions.show_words("\n".join(f"⚠ {words}" for words in step.cautions))
        self.amounts.setVisible(bool(step.amounts))
        self.amounts.show_amounts(step.amounts)
        acts = tuple(act for act in step.acts if act[0] not in LEFT_TO_BENCH)
        if acts != self._acts:
            self._acts = acts
            self._build_buttons()
        self._entry.setVisible(bool(acts))

    def add_message(self, bar: QWidget) -> None:
        """Take in the bar that says what was refused or asked, under the buttons."""
        layout = self.layout()
        if layout is not None:
            layout.addWidget(bar)

    def clear_entry(self) -> None:
        """Empty the entry line, the readings and the note."""
        self.moment.clear()
        self.readings.clear()
        self.note.clear()

    def _lay_out(self) -> None:
        self._entry = QWidget()
        entry = QVBoxLayout(self._entry)
        entry.setContentsMargins(0, 0, 0, 0)
        entry.setSpacing(8)
        blocks = FlowLayout(gap=12)
        blocks.addWidget(_block("When", self.moment))
        blocks.addWidget(_block("Readings", self.readings))
        blocks.addWidget(_block("Note", self.note))
        entry.addLayout(blocks)
        entry.addLayout(self._buttons)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(10)
        for widget in (self.do_words, self.cautions, self.amounts, self._entry):
            column.addWidget(widget)

    def _build_buttons(self) -> None:
        emptied(self._buttons)
        self.act_buttons.clear()
        for at, (act, words) in enumerate(self._acts):
            made = button(words, kind="primary" if at == 0 else "plain")
            made.setProperty("act", act)
            made.clicked.connect(self._clicked)
            self.act_buttons[act] = made
            self._buttons.addWidget(made)

    def _clicked(self) -> None:
        self._act(str(self.sender().property("act")))

    def _chief(self) -> None:
        if self._acts:
            self._act(self._acts[0][0])

    def _act(self, act: str) -> None:
        self.moment.read_again()
        if not self.moment.ok:
            self.moment.line.setFocus()
            return
        if not self.readings.ok:
            self.readings.line.setFocus()
            return
        self.acted.emit(Act(act).value, self.moment.at, self.note.text().strip())


def _block(words: str, field: QWidget) -> QWidget:
    """Put a small heading over a field; blocks share a line where there is room."""
    block = QWidget()
    block.setMinimumWidth(round(theme().metrics.line * 14))
    column = QVBoxLayout(block)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    column.addWidget(Words(words, tone="soft", size="small"))
    column.addWidget(field)
    column.addStretch()
    return growing(block)
