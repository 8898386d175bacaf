"""Reading blind: one tag after the other in random order, and nothing else to be seen."""

from typing import Any

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from studio_log.domain.trials import MEASURES
from studio_log.language.words import counted, tr, tr_later
from studio_log.services.commands import Outcome
from studio_log.services.trials import ReadTag, TrialFor, TrialPage
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.errors import MessageBar
from studio_log.ui.trials.readers import reading_of
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button, em
from studio_log.ui.widgets.understood import Understood, UnderstoodLine


class ReadDialog(QDialog):
    """Shows a tag, takes what was read of it, and goes on to the next."""

    done_with = Signal(object)
    """The Outcome of each reading."""

    def __init__(self, bridge: Bridge, page: TrialPage, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bridge, self.page = bridge, page
        measure = page.trial.measure
        self.setWindowTitle(tr("Read blind — {code}", code=page.line.code))
        self.asks = Words(tr("Take the piece with this tag:"), tone="soft")
        self.tag = Words(size="digits", bold=True)
        self.tag.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        self.left = Words(tone="soft")
        self.by = Words(tr("Read its {measure}.", measure=tr(MEASURES[measure].words)))
        colour = measure in {"chroma", "lightness"}
        hint = tr("34.2, or L*, a*, b*: 52.1, 31.8, 24.0") if colour else "7"
        self.value: UnderstoodLine[Any] = UnderstoodLine(
            reading_of(measure), name=tr("What was read"), hint=hint
        )
        self.note: UnderstoodLine[str] = UnderstoodLine(
            Understood, name=tr("Note"), hint=tr("a note, if any")
        )
        self.message = MessageBar(bridge)
        self.keep = button(tr("&Write it down"), kind="primary")
        self.lost = button(tr("The piece is &lost"))
        self.leave = button(tr("&Pause"))
        self._lay_out()
        self.value.entered.connect(self.submit)
        self.note.entered.connect(self.submit)
        self.keep.clicked.connect(self.submit)
        self.lost.clicked.connect(self._lose)
        self.leave.clicked.connect(self.reject)
        self.show_page(page)

    def show_page(self, page: TrialPage) -> None:
        """Show the next tag, or that all are read."""
        self.page = page
        there = bool(page.next_tag)
        self.tag.setText(page.next_tag or tr("All are read"))
        self.tag.setAccessibleName(tr("Tag {tag}", tag=page.next_tag) if there else "")
        self.left.setText(
            counted(page.left, tr_later("{n} tag left"), tr_later("{n} tags left"))
            if there
            else tr("Now the trial can be unveiled.")
        )
        for widget in (self.asks, self.by, self.value, self.note, self.keep, self.lost):
            widget.setVisible(there)
        self.leave.setText(tr("&Pause") if there else tr("C&lose"))
        self.value.setText("")
        self.note.setText("")
        self.value.line.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def submit(self) -> None:
        """Write down what was read."""
        if not self.keep.isEnabled():
            return  # the last reading is still on its way
        self.message.put_away()
        self.value.read_again()
        if not self.value.ok or self.value.blank:
            if self.value.ok:
                self.message.refuse(tr("Type what was read, or say that the piece is lost."))
            self.value.line.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        found = self.value.value
        figure = isinstance(found, float)
        self._send(ReadTag(self.page.line.code, self.page.next_tag,
                           value=found if figure else None, lab=None if figure else found,
                           note=self.note.text()))  # fmt: skip

    def _lose(self) -> None:
        self._send(
            ReadTag(self.page.line.code, self.page.next_tag, lost=True, note=self.note.text())
        )

    def _send(self, command: ReadTag) -> None:
        self.message.put_away()
        self._wait(waits=True)
        self._bridge.do(command, self._done, failed=self._refused, asked=self._doubted)

    def _wait(self, *, waits: bool) -> None:
        for one in (self.keep, self.lost):
            one.setEnabled(not waits)

    def _done(self, outcome: Outcome) -> None:
        self._wait(waits=False)
        self.done_with.emit(outcome)
        self._bridge.ask(TrialFor(self.page.line.code), self.show_page)

    def _refused(self, said: str) -> None:
        self._wait(waits=False)
        self.message.refuse(said)

    def _doubted(self, doubt: Doubt) -> None:
        self._wait(waits=False)
        self.message.question(doubt)

    def _lay_out(self) -> None:
        foot = FlowLayout(gap=10)
        for one in (self.keep, self.lost, self.leave):
            foot.addWidget(one)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 18, 24, 16)
        column.setSpacing(10)
        for widget in (self.asks, self.tag, self.left, self.by, self.value, self.note,
                       self.message):  # fmt: skip
            column.addWidget(widget)
        column.addStretch(1)
        column.addLayout(foot)
        room = self.screen().availableGeometry().size()
        self.resize(min(em(self, 32), room.width() - 40), min(em(self, 22), room.height() - 80))
