"""When, readings and a note: what an entry of the journal is made of, or put right with."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.present.words import moment
from studio_log.ui.bridge import Bridge
from studio_log.ui.errors import MessageBar
from studio_log.ui.lots.readings_line import ReadingsLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.draft_keeper import DraftKeeper
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.moment_line import MomentLine
from studio_log.ui.widgets.parts import Words, button

Readings = Mapping[str, float | str]


@dataclass(frozen=True)
class Typed:
    """What stands in the form; `at` None where the time is left blank."""

    at: datetime | None
    readings: Readings
    note: str

    @property
    def blank(self) -> bool:
        """Whether nothing is typed at all."""
        return self.at is None and not self.readings and not self.note


class EntryForm(QWidget):
    """Three fields and one act. A mistake is said beneath its field, a refusal beneath the act."""

    sent = Signal(object)
    """A Typed, once every field is understood."""
    left = Signal()

    def __init__(
        self, bridge: Bridge, act: str, *, blank: str = "", leave: str = "", nothing: str = ""
    ) -> None:
        super().__init__()
        self._bridge = bridge
        self._nothing = nothing
        self.moment = MomentLine(bridge, name=tr("When"), blank=blank)
        self.readings = ReadingsLine()
        self.note = QLineEdit()
        self.note.setMaxLength(1000)
        self.note.setAccessibleName(tr("Note"))
        self.note.setPlaceholderText(tr("a note, if any"))
        self.last_notes = LastValues(self.note, "note")
        self.put_back = Words(tone="ochre_ink", size="small")
        self.put_back.hide()
        self.act = button(act, kind="primary")
        self.leave = button(leave, kind="quiet")
        self.leave.setVisible(bool(leave))
        self.said = MessageBar(bridge)
        self.draft = DraftKeeper(
            {"moment": self.moment.line, "readings": self.readings.line, "note": self.note},
            bridge.now,
            count=("moment", "readings", "note"),
            parent=self,
        )
        self._lay_out()
        self.moment.entered.connect(self.send)
        self.readings.entered.connect(self.send)
        self.note.returnPressed.connect(self.send)
        self.act.clicked.connect(self.send)
        self.leave.clicked.connect(self.left)

    def belong_to(self, key: str) -> bool:
        """Keep what is typed under a key; True where something was left half typed there."""
        draft = self.draft.turn_to(key)
        if draft is not None:
            when = moment(draft.at, self._bridge.now(), self._bridge.zone())
            self.put_back.show_words(tr("Typed {when}, not written down yet.", when=when))
        else:
            self.put_back.hide()
        return draft is not None

    def send(self) -> None:
        """Hand on what is typed, or lead to the field that is not understood."""
        self.moment.read_again()
        wrong = next((one.line for one in (self.moment, self.readings) if not one.ok), None)
        if wrong is not None:
            wrong.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        typed = Typed(self.moment.at, self.readings.values, self.note.text().strip())
        if typed.blank or (self._nothing and not typed.readings and not typed.note):
            self.said.refuse(self._nothing)
            self.note.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self.said.put_away()
        self.sent.emit(typed)

    def done(self, key: str) -> None:
        """Forget what was written down, and offer it another time."""
        if key == self.draft.key:
            self.moment.remember()
            self.readings.remember()
            self.last_notes.remember()
            self.put_back.hide()
        self.draft.forget(key)

    def _lay_out(self) -> None:
        blocks, acts = FlowLayout(gap=12), FlowLayout(gap=8)
        for words, field in (
            (tr("When"), self.moment),
            (tr("Readings"), self.readings),
            (tr("Note"), self.note),
        ):
            blocks.addWidget(block(words, field))
        acts.addWidget(self.act)
        acts.addWidget(self.leave)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(blocks)
        column.addWidget(self.put_back)
        column.addLayout(acts)
        column.addWidget(self.said)


def block(words: str, field: QWidget) -> QWidget:
    """Put a small heading over a field; blocks share a line where there is room."""
    made = QWidget()
    made.setMinimumWidth(round(theme().metrics.line * 14))
    column = QVBoxLayout(made)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    column.addWidget(Words(words, tone="soft", size="small"))
    column.addWidget(field)
    column.addStretch()
    return growing(made)
