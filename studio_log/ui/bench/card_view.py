"""One reminder on the bench, with its one big answer."""

from datetime import datetime, timedelta
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QMenu, QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.present.words import countdown
from studio_log.services.questions import Card
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import (
    URGENT_CARD,
    URGENT_INK,
    URGENT_WORDS,
    Words,
    button,
    mark,
)
from studio_log.ui.widgets.wrap_button import WrapButton

PUT_OFFS: Final = (
    (tr_later("10 min"), timedelta(minutes=10)),
    (tr_later("30 min"), timedelta(minutes=30)),
    ("1 h", timedelta(hours=1)),
    (tr_later("Next morning"), None),
)
TIMES: Final = "\N{NO-BREAK SPACE}×\N{NO-BREAK SPACE}"
"""A count stays with what it counts where a line breaks."""
SENTENCES: Final = "T"
"""What the codes of trials begin with: their titles are sentences, with no name behind the code."""
URGENT_LOOK: Final = {"soon": "ochre", "now": "danger", "spoiling": "danger"}
"""Look of the big answer by urgency."""


def headed(card: Card) -> str:
    """Give the act and its lot set apart: "Stir · 26-031 Linen runners × 2"."""
    act, found, name = card.title.partition(f" {card.lot} ")
    if found and act and not card.lot.startswith(SENTENCES):
        between = " " if act.endswith(":") else " · "
        return f"{act}{between}{card.lot} {name}".replace(" × ", TIMES)
    return card.title if card.lot in card.title else f"{card.lot} · {card.title}"


class CardView(QFrame):
    """Says lot, act, urgency, due and why, and offers every answer."""

    done = Signal(str)
    second = Signal(str)
    put_off = Signal(str, object)
    """Key, and the span; None for the next morning."""
    timed = Signal(str)
    """Done, at a time still to be stated."""
    skipped = Signal(str)
    lot_wanted = Signal(str, object)
    """Code and step of the lot to show."""

    def __init__(self, card: Card, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.card = card
        self._waiting = False
        self.title = Words(size="large", bold=True)
        self.due = Words(bold=True, size="small")
        self.why = Words(tone="ink", size="small")
        self.late = Words(tone="soft", size="small")
        self.digits = Words(size="digits", bold=True)
        self.digits.setWordWrap(False)
        self.answer = WrapButton(kind="primary", big=True)
        self.second_answer = WrapButton(big=True)
        self.warning = Words(tone="ochre_ink", size="small")
        self.later = button(tr("Put off"), kind="quiet")
        self.more = button(tr("More"), kind="quiet")
        self._lay_out()
        self._fill_menus()
        self.answer.clicked.connect(self._answer)
        self.second_answer.clicked.connect(self._second)
        self.show_card(card)

    def show_card(self, card: Card) -> None:
        """Show the card as it is now."""
        self.card = card
        words = tr(URGENT_WORDS.get(card.urgency, ""))
        mark(self, "card", URGENT_CARD.get(card.urgency, "indigo"))
        named = headed(card)
        self.title.setText(named)
        self.due.setText(" · ".join(part for part in (words, card.due_words) if part))
        self.due.set_tone(URGENT_INK.get(card.urgency, "accent_ink"))
        self.why.show_words(card.why)
        self.late.show_words(card.if_late)
        self.digits.setVisible(card.countdown_to is not None)
        mark(self.answer, "look", URGENT_LOOK.get(card.urgency, "primary"))
        self.answer.setText(card.answer)
        self.answer.setAccessibleName(f"{card.answer}: {named}")
        self.second_answer.setText(card.second)
        self.second_answer.setAccessibleName(f"{card.second}: {named}")
        self.second_answer.setVisible(bool(card.second))
        # What happens if it waits stands above already.
        warning = card.put_off_warning.removesuffix(card.if_late).strip()
        self.warning.show_words(warning and tr("If put off: {warning}", warning=warning))
        self.later.setAccessibleName(tr("Put off: {named}", named=named))
        self.more.setAccessibleName(tr("More answers: {named}", named=named))
        self.setAccessibleName(f"{named}. {self.due.text()}. {card.why}")
        self.set_waiting(waiting=False)

    def set_waiting(self, *, waiting: bool) -> None:
        """Take no second answer while one is on its way."""
        self._waiting = waiting
        for widget in (self.answer, self.second_answer, self.later, self.more):
            widget.setEnabled(not waiting)

    @property
    def waiting(self) -> bool:
        """Whether an answer is on its way."""
        return self._waiting

    def tick(self, now: datetime) -> bool:
        """Count down; gives whether the end is reached."""
        if self.card.countdown_to is None:
            return False
        left = self.card.countdown_to - now
        self.digits.setText(countdown(left))
        return left <= timedelta(0)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 12, 8)
        column.setSpacing(4)
        for words in (self.title, self.due, self.why, self.late, self.digits):
            column.addWidget(words)
        answers = FlowLayout(gap=8)
        answers.addWidget(self.answer)
        answers.addWidget(self.second_answer)
        column.addSpacing(6)
        column.addLayout(answers)
        rest = FlowLayout(gap=8)
        rest.addWidget(self.later)
        rest.addWidget(self.more)
        column.addWidget(self.warning)
        column.addLayout(rest)

    def _fill_menus(self) -> None:
        later = QMenu(self)
        for words, span in PUT_OFFS:
            later.addAction(tr(words)).setData(span)
        later.triggered.connect(self._put_off)
        self.later.setMenu(later)
        more = QMenu(self)
        self.at_action = more.addAction(tr("Done at a stated &time…"))
        self.skip_action = more.addAction(tr("&Skip with a reason…"))
        self.open_action = more.addAction(tr("&Open the lot"))
        self.at_action.triggered.connect(self._timed)
        self.skip_action.triggered.connect(self._skip)
        self.open_action.triggered.connect(self._open)
        self.more.setMenu(more)

    def _answer(self) -> None:
        self.done.emit(self.card.key)

    def _second(self) -> None:
        self.second.emit(self.card.key)

    def _put_off(self, action: object) -> None:
        self.put_off.emit(self.card.key, action.data())  # type: ignore[attr-defined]

    def _timed(self) -> None:
        self.timed.emit(self.card.key)

    def _skip(self) -> None:
        self.skipped.emit(self.card.key)

    def _open(self) -> None:
        self.lot_wanted.emit(self.card.lot, self.card.step)
