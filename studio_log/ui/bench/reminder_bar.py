"""The bar above everything: what rings, or that desktop notices do not work."""

from datetime import timedelta
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.services.questions import Bench, Card, Status
from studio_log.ui.bench.card_view import URGENT_LOOK, headed
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, mark
from studio_log.ui.widgets.wrap_button import WrapButton

TEN_MINUTES: Final = timedelta(minutes=10)


class ReminderBar(QFrame):
    """Shows the reminder that rings with its one big answer; else the channels' trouble."""

    answered = Signal(str)
    put_off = Signal(str, object)
    test_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self._card: Card | None = None
        self._trouble = ""
        self._rest = ""
        self._hidden = ""
        self._covered = False
        self._tops_bench = False
        self.words = Words(size="large", bold=True)
        self.why = Words(size="small")
        self.answer = WrapButton(kind="danger", big=True, grows=False)
        self.later = button(tr("Put off 10 min"))
        self.test = button(tr("Ring a test"))
        self.away = button(tr("Hide"), kind="quiet", says=tr("Hide this until it changes"))
        self._lay_out()
        self.answer.clicked.connect(self._answer)
        self.later.clicked.connect(self._later)
        self.test.clicked.connect(self.test_wanted)
        self.away.clicked.connect(self._put_away)
        self.hide()

    @property
    def card(self) -> Card | None:
        """The reminder shown, None while nothing rings."""
        return self._card

    def show_bench(self, bench: Bench) -> None:
        """Show the first reminder that rings."""
        ringing = [card for card in bench.now if card.raised]
        self._card = ringing[0] if ringing else None
        self._tops_bench = bool(ringing) and bench.now[0] is ringing[0]
        others = len(ringing) - 1
        self._rest = tr("{others} more on the bench.", others=others) if others > 0 else ""
        self._show()

    def cover(self, *, covered: bool) -> None:
        """Leave what rings to the bench where a small window shows it there already, on top."""
        if covered != self._covered:
            self._covered = covered
            self._show()

    def show_status(self, status: Status) -> None:
        """Note whether desktop notices work."""
        self._trouble = "" if status.channels_ok else status.channels
        if not self._trouble:
            self._hidden = ""
        self._show()

    def _lay_out(self) -> None:
        said = QWidget()
        column = QVBoxLayout(said)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addStretch(1)
        column.addWidget(self.words)
        column.addWidget(self.why)
        column.addStretch(1)
        line = FlowLayout(gap=10)
        for widget in (growing(said), self.answer, self.later, self.test, self.away):
            line.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 8, 16, 8)
        whole.addLayout(line)

    def _show(self) -> None:
        card = self._card
        trouble = bool(self._trouble) and self._trouble != self._hidden
        for widget in (self.answer, self.later):
            widget.setVisible(card is not None)
        for widget in (self.test, self.away):
            widget.setVisible(card is None)
        if card is not None:
            self._show_card(card)
        else:
            mark(self, "urgency", "soon")
            self.words.setText(f"{self._trouble[:1].upper()}{self._trouble[1:]}")
            self.why.show_words("")
        told = self._covered and self._tops_bench
        self.setVisible(not told if card is not None else trouble)

    def _show_card(self, card: Card) -> None:
        mark(self, "urgency", card.urgency)
        named = headed(card)
        self.words.setText(named)
        self.why.show_words(" ".join(part for part in (card.why, self._rest) if part))
        mark(self.answer, "look", URGENT_LOOK.get(card.urgency, "primary"))
        self.answer.setText(card.answer)
        self.answer.setAccessibleName(f"{card.answer}: {named}")
        self.later.setAccessibleName(tr("Put off 10 minutes: {named}", named=named))
        self.setAccessibleName(tr("Rings: {named}", named=named))

    def _answer(self) -> None:
        if self._card is not None:
            self.answered.emit(self._card.key)

    def _later(self) -> None:
        if self._card is not None:
            self.put_off.emit(self._card.key, TEN_MINUTES)

    def _put_away(self) -> None:
        self._hidden = self._trouble
        self._show()
