"""The window “Several laptops”: where the studio lies, moving it to a server, and back."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QFormLayout,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import Command, Outcome
from studio_log.services.shared import (
    JoinStudio,
    RingHere,
    SharedFor,
    SharedSeen,
    ShareStudio,
    UnshareStudio,
)
from studio_log.services.sharing_words import waiting_words
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.errors import MessageBar
from studio_log.ui.settings_parts import flowing
from studio_log.ui.sharing.password_box import password_line
from studio_log.ui.widgets.paged import paged
from studio_log.ui.widgets.parts import Words, button

WHAT: Final = tr_later(
    "Two or three laptops can work on one studio. It lies in an empty database on a PostgreSQL "
    "server then; each laptop keeps a whole copy that follows within a second, goes on without the "
    "network, and sends what was done meanwhile."
)
ALONE: Final = tr_later("This studio is on this laptop alone.")
FORM: Final = "postgresql://name@host/studio"
MOVING: Final = tr_later("Carrying everything there and counting it… This can take a minute.")
LOOKING: Final = tr_later("Asking the server…")


class SharingBox(QDialog):
    """Says how the studio is shared, and changes it."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Several laptops — Studio Log"))
        self._bridge = bridge
        self.where = Words(size="large", bold=True)
        self.fares = Words(tone="soft")
        self.fault = Words(tone="danger_ink")
        self.address = QLineEdit()
        self.address.setPlaceholderText(FORM)
        self.password = password_line()
        self.move_there = button(tr("&Move this studio there"), kind="primary")
        self.open_there = button(tr("&Open the studio that is there"))
        self.rings = QCheckBox(tr("Reminders &ring on this laptop"))
        self.back = button(tr("Take it &back to this laptop…"))
        self.message = MessageBar(bridge)
        self.leave = button(tr("&Close"))
        self.alone, self.shared = QWidget(), QWidget()
        self._lay_out()
        self._connect()
        self.refresh()

    def refresh(self) -> None:
        """Ask where the studio lies."""
        self._bridge.ask(SharedFor(), self.show_seen)

    def show_seen(self, seen: SharedSeen) -> None:
        """Show it."""
        self.where.show_words(
            tr("This studio lies on {where}.", where=seen.address) if seen.address else tr(ALONE)
        )
        self.alone.setVisible(not seen.address)
        self.shared.setVisible(bool(seen.address))
        waits = waiting_words(seen.unsent) if seen.unsent else ""
        answers = tr("The server answers; this laptop’s copy follows it.")
        self.fares.show_words(waits or (answers if seen.address and not seen.away else ""))
        self.fault.show_words("\n".join(filter(None, (seen.away, seen.aside))))
        self.rings.blockSignals(True)
        self.rings.setChecked(seen.rings)
        self.rings.blockSignals(False)

    def _lay_out(self) -> None:
        page = paged(self, tr("Several laptops"), self.message, leave=self.leave, wide=44)
        for words in (self.where, self.fares, self.fault, Words(tr(WHAT), tone="soft")):
            page.addWidget(words)
        fields = QFormLayout(self.alone)
        fields.setContentsMargins(0, 8, 0, 0)
        fields.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        fields.addRow(tr("&Address"), self.address)
        fields.addRow(tr("&Password"), self.password)
        fields.addRow(
            Words(
                tr("The password goes into this system’s keyring, and into no file."), tone="soft"
            )
        )
        fields.addRow(flowing(self.move_there, self.open_there))
        both = QVBoxLayout(self.shared)
        both.setContentsMargins(0, 8, 0, 0)
        both.setSpacing(10)
        both.addWidget(self.rings, 0, Qt.AlignmentFlag.AlignLeft)
        both.addWidget(flowing(self.back))
        page.addWidget(self.alone)
        page.addWidget(self.shared)
        page.addStretch(1)

    def _connect(self) -> None:
        self.move_there.clicked.connect(self._move)
        self.open_there.clicked.connect(self._join)
        self.back.clicked.connect(self._take_back)
        self.rings.toggled.connect(self._ring)
        self.leave.clicked.connect(self.reject)
        self._bridge.changed.connect(self._note_change)

    def _move(self) -> None:
        if self._has_address():
            self.message.advise(tr(MOVING))
            self._send(ShareStudio(self.address.text(), self.password.text()))

    def _join(self) -> None:
        if self._has_address():
            self.message.advise(tr(LOOKING))
            self._send(JoinStudio(self.address.text(), self.password.text()))

    def _has_address(self) -> bool:
        if self.address.text().strip():
            return True
        self.message.refuse(tr("Type the server’s address first. It reads {form}.", form=FORM))
        self.address.setFocus()
        return False

    def _take_back(self) -> None:
        self._send(UnshareStudio())

    def _ring(self, rings: bool) -> None:  # noqa: FBT001 - as Qt sends it
        self._send(RingHere(rings))

    def _send(self, command: Command) -> None:
        self._busy(True)
        self._bridge.do(command, self._done, failed=self._refused, asked=self._doubted)

    def _busy(self, busy: bool) -> None:  # noqa: FBT001 - one of two states
        for part in (self.move_there, self.open_there, self.back, self.rings):
            part.setEnabled(not busy)

    def _done(self, outcome: Outcome) -> None:
        self._busy(False)
        self.password.clear()
        self.message.advise(outcome.words)
        self.refresh()

    def _refused(self, words: str) -> None:
        self._busy(False)
        self.message.refuse(words)
        self.refresh()

    def _doubted(self, doubt: Doubt) -> None:
        self._busy(False)
        self.message.question(doubt)

    def _note_change(self, _outcome: Outcome) -> None:
        if self.isVisible():
            self.refresh()
