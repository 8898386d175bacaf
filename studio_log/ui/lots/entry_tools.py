"""What can be done with the chosen entry of a journal; it stands right under that entry."""

from functools import partial

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QFrame, QVBoxLayout
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.commands import Correct, Outcome
from studio_log.services.questions import EntryLine
from studio_log.ui.bridge import Bridge
from studio_log.ui.lots.entry_form import EntryForm, Typed
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button


class EntryTools(QFrame):
    """Take it back, or put right its time, readings and note; what was stays to be read."""

    take_back = Signal(int)
    resized = Signal()
    """It needs more or less room than before."""

    def __init__(self, bridge: Bridge, lot: str, entry: EntryLine) -> None:
        super().__init__()
        self.setObjectName("stepdetail")
        self._bridge = bridge
        self._lot = lot
        self.entry = entry
        self.back = button(tr("&Take this entry back"))
        self.correct = button(tr("&Correct it…"))
        self.form: EntryForm | None = None
        self._words = Words(tr("What stood there stays, struck through."), tone="soft")
        self._words.hide()
        free = not entry.taken_back
        self.back.setEnabled(free)
        self.correct.setEnabled(free and entry.act not in FIXED)
        line = FlowLayout(gap=8)
        line.addWidget(self.back)
        line.addWidget(self.correct)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(12, 8, 12, 8)
        self._column.setSpacing(8)
        self._column.addLayout(line)
        self._column.addWidget(self._words)
        self.back.clicked.connect(self._take_back)
        self.correct.clicked.connect(self.begin)

    @property
    def key(self) -> str:
        """The name under which a correction is kept half typed."""
        return f"correct/{self._lot}/{self.entry.number}"

    @override
    def event(self, event: QEvent) -> bool:
        # What is said beneath a field comes and goes: the room is asked for anew.
        if event.type() is QEvent.Type.LayoutRequest:
            self.resized.emit()
        return super().event(event)

    def begin(self) -> None:
        """Open the form, filled with the readings that stand; the time and note left blank stay."""
        if self.form is None and self.correct.isEnabled():
            self._open_form()
        if self.form is not None:
            self.form.readings.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def bring_back(self, *, half_typed: bool) -> None:
        """Open the form again where a correction was left half typed."""
        if half_typed and self.correct.isEnabled():
            self._open_form()

    def _open_form(self) -> None:
        self.form = EntryForm(
            self._bridge,
            tr("&Put it right"),
            blank=tr("blank leaves the time as it is"),
            leave=tr("&Leave it"),
            nothing="",
        )
        self.form.readings.show_values(self.entry.readings)
        self.form.note.setPlaceholderText(self.entry.note or tr("blank leaves the note as it is"))
        self.form.belong_to(self.key)
        self.form.sent.connect(self._send)
        self.form.left.connect(self._leave)
        self._words.show()
        self._column.addWidget(self.form)
        self.resized.emit()

    def _send(self, typed: Typed) -> None:
        form = self.form
        if form is None:
            return
        changed = {
            name: value
            for name, value in typed.readings.items()
            if self.entry.readings.get(name) != value
        }
        note = typed.note if typed.note != self.entry.note else ""
        if typed.at is None and not changed and not note:
            form.said.refuse(tr("Nothing is changed yet. Type a time, a reading or a note."))
            return
        command = Correct(
            self._lot,
            self.entry.number,
            typed.at,
            note or None,
            changed,
            seen=self.entry.corrected_by or self.entry.number,
        )
        self._bridge.do(
            command,
            partial(self._done, form),
            failed=form.said.refuse,
            asked=form.said.question,
        )

    def _done(self, form: EntryForm, _outcome: Outcome) -> None:
        form.done(self.key)

    def _leave(self) -> None:
        if self.form is not None:
            self.form.draft.forget(self.key)
            self.form.hide()
            self.form.deleteLater()
            self.form = None
            self._words.hide()
        self.correct.setFocus(Qt.FocusReason.OtherFocusReason)
        self.resized.emit()

    def _take_back(self) -> None:
        self.take_back.emit(self.entry.number)


FIXED = frozenset({"undo", "redo", "correct", "void", "printed"})
"""Entries about others, and those in which there is nothing to put right."""
