"""The bar in which the window says what was refused, asked, advised or broken.

Never a box in the way: the bar stays until it is answered or put away, and what was typed
stays where it is.
"""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.ui.bridge import Bridge, Doubt
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, mark

BROKEN: Final = tr_later(
    "Something in the program itself went wrong. What was confirmed "
    "before is kept; the last act may not have been. Try it again. The "
    "details can be copied for whoever mends it."
)


class MessageBar(QFrame):
    """Says one thing at a time and offers what can be done about it."""

    closed = Signal()

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self._bridge = bridge
        self._doubt: Doubt | None = None
        self._details = ""
        self.words = Words()
        self.yes = button(tr("&Yes, take it"), kind="primary")
        self.no = button(tr("&No"))
        self.copy = button(tr("&Copy the details"))
        self.close_it = button(tr("&Put away"), kind="quiet", says=tr("Put this message away"))
        self._lay_out()
        self.yes.clicked.connect(self._insist)
        self.no.clicked.connect(self.put_away)
        self.copy.clicked.connect(self._copy)
        self.close_it.clicked.connect(self.put_away)
        self.hide()

    def listen(self) -> None:
        """Say what the bridge brings home and no screen has asked to say itself."""
        self._bridge.refused.connect(self.refuse)
        self._bridge.questioned.connect(self.question)
        self._bridge.broke.connect(self.break_off)

    def refuse(self, words: str) -> None:
        """Say a refusal."""
        self._show(words, "now")

    def advise(self, words: str) -> None:
        """Say something worth knowing."""
        self._show(words, "calm")

    def question(self, doubt: Doubt) -> None:
        """Ask the plain question of a doubtful request."""
        self._show(doubt.words, "soon")
        self._doubt = doubt
        self._offer(asks=True)
        self.yes.setFocus(Qt.FocusReason.OtherFocusReason)

    def break_off(self, details: str) -> None:
        """Say that the program itself failed."""
        self._show(tr(BROKEN), "now")
        self._details = details
        self._offer(asks=False)

    def put_away(self) -> None:
        """Leave everything as it was."""
        self._doubt, self._details = None, ""
        self.hide()
        self.closed.emit()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        line = FlowLayout(gap=10)
        for widget in (growing(self.words), self.yes, self.no, self.copy, self.close_it):
            line.addWidget(widget)
        column.addLayout(line)

    def _show(self, words: str, urgency: str) -> None:
        self._doubt, self._details = None, ""
        mark(self, "urgency", urgency)
        self.words.setText(words)
        self.words.setAccessibleName(words)
        self._offer(asks=False)
        self.setVisible(bool(words))

    def _offer(self, *, asks: bool) -> None:
        self.yes.setVisible(asks)
        self.no.setVisible(asks)
        self.close_it.setVisible(not asks)
        self.copy.setVisible(bool(self._details))

    def _insist(self) -> None:
        doubt = self._doubt
        self.put_away()
        if doubt is not None:
            self._bridge.insist(doubt)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self._details)
