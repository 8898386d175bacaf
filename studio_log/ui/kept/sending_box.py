"""A box that sends one command: it waits for the answer, and closes only on a good one."""

from typing import Any, Final

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Command, Outcome
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.errors import MessageBar
from studio_log.ui.widgets.answers import Answers
from studio_log.ui.widgets.parts import Words, em, scrolled
from studio_log.ui.widgets.understood import UnderstoodLine

WRITE: Final = tr_later("&Write it down")


class SendingBox(QDialog):
    """Asks for one thing and sends it; nothing typed is lost by a refusal."""

    done_with = Signal(object)
    """The Outcome of what was done."""

    def __init__(self, bridge: Bridge, accept: str, parent: QWidget | None = None) -> None:
        """Make its message and its buttons; `accept` names the one that sends."""
        super().__init__(parent)
        self._bridge = bridge
        self.message = MessageBar(bridge)
        self.buttons = Answers(accept, tr("Lea&ve it"))
        self.keep = self.buttons.do
        self.buttons.accepted.connect(self.submit)
        self.buttons.rejected.connect(self.reject)

    @Slot()
    def submit(self) -> None:
        """Send what is typed; once more only when the last answer has come."""
        if not self.keep.isEnabled():
            return
        self.message.put_away()
        command = self.command()
        if command is not None:
            self.keep.setEnabled(False)
            self._bridge.do(command, self._done, failed=self._refused, asked=self._doubted)

    def command(self) -> Command | None:
        """Give what is asked for; None where something is amiss, having led to it."""
        raise NotImplementedError

    def stands(self, field: UnderstoodLine[Any], label: str, *, needed: bool) -> bool:
        """Say whether a line is understood and filled where it must be; else lead to it."""
        field.read_again()
        if field.ok and not (needed and field.blank):
            return True
        if field.ok:
            self.message.refuse(tr("Fill in: {label}", label=label))
        field.line.setFocus(Qt.FocusReason.OtherFocusReason)
        return False

    def lay_out(self, title: str, says: str, fields: QWidget, lines: float, wide: float = 40,
                below: tuple[QWidget, ...] = ()) -> None:  # fmt: skip
        """Set words, fields (they scroll), message and buttons in a column, `lines` em high."""
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 14)
        column.setSpacing(10)
        column.addWidget(Words(title, size="large", bold=True))
        if says:
            column.addWidget(Words(says, tone="soft"))
        column.addWidget(scrolled(fields, name=tr("Fields")), 1)
        for part in (*below, self.message, self.buttons):
            column.addWidget(part)
        room = self.screen().availableGeometry().size()
        high = min(em(self, lines), room.height() - 80)
        self.resize(min(em(self, wide), room.width() - 40), high)

    def _done(self, outcome: Outcome) -> None:
        self.done_with.emit(outcome)
        self.accept()

    def _refused(self, words: str) -> None:
        self.keep.setEnabled(True)
        self.message.refuse(words or tr("That did not work. What you typed is kept; try again."))

    def _doubted(self, doubt: Doubt) -> None:
        self.keep.setEnabled(True)
        self.message.question(doubt)
