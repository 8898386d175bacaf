"""The chosen step opened: how it is done, cautions, amounts, the entry line and its acts."""

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QLineEdit, QPushButton, QVBoxLayout, QWidget

from studio_log.domain.journal import Act
from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.services.questions import StepLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.amount_rows import AmountRows
from studio_log.ui.lots.entry_form import block
from studio_log.ui.lots.readings_line import ReadingsLine
from studio_log.ui.widgets.draft_keeper import DraftKeeper
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.last_values import LastValues
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
        self._bridge = bridge
        self._step: StepLine | None = None
        self._lot = ""
        self._acts: tuple[tuple[str, str], ...] = ()
        self.do_words = Words()
        self.cautions = Words(tone="danger_ink", size="small")
        self.amounts = AmountRows()
        self.moment = MomentLine(bridge, name=tr("When it happened"))
        self.note = QLineEdit()
        self.note.setMaxLength(1000)
        self.note.setAccessibleName(tr("Note"))
        self.note.setPlaceholderText(tr("a note, if any"))
        self.last_notes = LastValues(self.note, "note")
        self.readings = ReadingsLine()
        self.left = Words(tone="ochre_ink", size="small")
        self.left.hide()
        self.draft = DraftKeeper(
            {"moment": self.moment.line, "readings": self.readings.line, "note": self.note},
            bridge.now,
            count=("moment", "readings", "note"),
            parent=self,
        )
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

    @property
    def entry_key(self) -> str:
        """The name under which what is typed here is kept half typed."""
        return f"entry/{self._lot}/{self._step.number}" if self._step is not None else ""

    def belong_to(self, lot: str) -> None:
        """Say whose steps are shown from now on."""
        self._lot = lot

    def show_step(self, step: StepLine) -> None:
        """Show a step with what was left half typed for it; the same one keeps what is typed."""
        self._step = step
        before = self.draft.key
        left = self.draft.turn_to(self.entry_key)
        if left is not None:
            when = moment(left.at, self._bridge.now(), self._bridge.zone())
            self.left.show_words(tr("Typed {when}, not written down yet.", when=when))
        elif before != self.draft.key:
            self.left.hide()
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

    def written(self, key: str) -> None:
        """Empty the fields of what was written down; another step keeps what stands in its own."""
        if key == self.entry_key:
            self.moment.remember()
            self.readings.remember()
            self.last_notes.remember()
            self.left.hide()
        self.draft.forget(key)

    def _lay_out(self) -> None:
        self._entry = QWidget()
        entry = QVBoxLayout(self._entry)
        entry.setContentsMargins(0, 0, 0, 0)
        entry.setSpacing(8)
        blocks = FlowLayout(gap=12)
        blocks.addWidget(block(tr("When"), self.moment))
        blocks.addWidget(block(tr("Readings"), self.readings))
        blocks.addWidget(block(tr("Note"), self.note))
        entry.addLayout(blocks)
        entry.addWidget(self.left)
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
