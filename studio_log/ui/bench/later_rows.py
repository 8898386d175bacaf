"""What comes later, one line each: when, which lot, what."""

from collections.abc import Sequence
from datetime import datetime
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from studio_log.language.calendar_words import date_words, weekday_name
from studio_log.present.words import clock
from studio_log.services.questions import Card
from studio_log.ui.bench.card_view import headed
from studio_log.ui.widgets.parts import Words, emptied

WEEK: Final = 7
"""From so many days on a date says more than a weekday."""


def clock_words(at: datetime, now: datetime, zone: str) -> str:
    """Say a moment by the wall clock: "16:00", in a week "Wed 07:00", then "27 Aug"."""
    there, here = (one.astimezone(ZoneInfo(zone)) for one in (at, now))
    away = (there.date() - here.date()).days
    if away >= WEEK:
        return date_words(there.date(), short=True)
    return clock(at, zone) if away == 0 else f"{weekday_name(there.weekday())} {clock(at, zone)}"


class LaterRows(QWidget):
    """A headed list of cards that are not due yet; hidden while there are none."""

    def __init__(self, heading: str) -> None:
        super().__init__()
        self._cards: tuple[Card, ...] = ()
        self._shown: tuple[str, ...] = ()
        self._rows = QGridLayout()
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setHorizontalSpacing(10)
        self._rows.setVerticalSpacing(7)
        self._rows.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(2, 10, 2, 0)
        column.setSpacing(8)
        column.addWidget(Words(heading, tone="soft", bold=True))
        column.addLayout(self._rows)

    def show_cards(self, cards: Sequence[Card], now: datetime, zone: str) -> None:
        """Show these."""
        self.setVisible(bool(cards))
        times = tuple(clock_words(card.due, now, zone) for card in cards)
        if tuple(cards) == self._cards and times == self._shown:
            return
        self._cards, self._shown = tuple(cards), times
        emptied(self._rows)
        for row, (card, when) in enumerate(zip(cards, times, strict=True)):
            time = Words(when, bold=True)
            time.setWordWrap(False)
            words = Words(headed(card))
            words.setToolTip(card.why)
            self._rows.addWidget(time, row, 0, Qt.AlignmentFlag.AlignTop)
            self._rows.addWidget(words, row, 1)
