"""Single days: a month to choose one in, its hours and why, and all that were said."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Final

from PySide6.QtCore import QDate, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QGridLayout,
    QLabel,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.day_text import take_day
from studio_log.domain.errors import Refusal
from studio_log.domain.hours_draft import HoursDraft, openings_of
from studio_log.domain.single_days import SingleDay, read_single_days, with_day, without_day
from studio_log.domain.stretch_text import read_stretches, stretch_words
from studio_log.domain.studio_hours import Cause, StudioHours
from studio_log.language.words import tr, tr_later
from studio_log.present.hours_words import day_with_year, single_words
from studio_log.ui.hours.month import mark_month
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.month import month_of
from studio_log.ui.widgets.parts import Words, button, em, mark

ADVICE: Final = tr_later(
    "A day on which the studio works otherwise: choose it, type its hours, and put it in."
)
NO_DAY: Final = tr_later("“{text}” is no day. Write it as 14 August, Fri, or 2026-08-14.")
CLOSED_WORDS: Final = {"", "closed", "geschlossen", "zu"}
_ROW: Final = Qt.ItemDataRole.UserRole


class DaysPane(QWidget):
    """Edits the single days of a draft."""

    edited = Signal(object, str)

    def __init__(self, today: date) -> None:
        super().__init__()
        self._today = today
        self.draft = HoursDraft()
        self.holidays: Mapping[date, str] = {}
        self.month = month_of(today)
        self.chosen = Words(bold=True)
        self.last = _line(tr("Up to and with"), tr("the same day, or 14 August"))
        self.hours = _line(tr("Hours of the day"), tr("closed, or 10-12"))
        self.why = _line(tr("Why, in a word"), tr("fair"))
        self.understood = Words(tone="soft")
        self.put = button(tr("&Put it in"), kind="primary")
        self.usual = button(tr("As its w&eekday"))
        self.take = button(tr("Ta&ke it out"))
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Single days"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setMinimumHeight(em(self, 6))
        self._lay_out()
        self._connect()
        self._read()

    @property
    def day(self) -> date:
        """The day chosen in the month."""
        chosen = self.month.selectedDate()
        return date(chosen.year(), chosen.month(), chosen.day())

    def show_draft(self, draft: HoursDraft, holidays: Mapping[date, str]) -> None:
        """Show a draft's single days, and mark them and the holidays in the month."""
        self.draft, self.holidays = draft, holidays
        self.list.blockSignals(True)
        self.list.clear()
        for one in sorted(draft.singles, key=lambda one: (one.last < self._today, one.first)):
            item = QListWidgetItem(single_words(one))
            item.setData(_ROW, one)
            self.list.addItem(item)
        self.list.blockSignals(False)
        self.list.setVisible(bool(draft.singles))
        mark_month(self.month, holidays, draft.singles)
        self._read()

    def pending(self) -> bool:
        """Say whether something is typed that was not put in."""
        return bool(self.half_typed())

    def half_typed(self) -> dict[str, str]:
        """Give what is typed and not put in, with its day."""
        texts = {name: line.text() for name, line in self._lines().items() if line.text().strip()}
        return {**texts, "day": f"{self.day}"} if texts else {}

    def type_again(self, texts: Mapping[str, str]) -> None:
        """Put such texts back into their lines."""
        for name, line in self._lines().items():
            line.setText(texts.get(name, ""))
        day = QDate.fromString(texts.get("day", ""), Qt.DateFormat.ISODate)
        if day.isValid():
            self.month.setSelectedDate(day)

    def _lines(self) -> dict[str, QLineEdit]:
        return {"day hours": self.hours, "day why": self.why, "day last": self.last}

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(Words(tr("Single days"), size="large", bold=True))
        column.addWidget(Words(tr(ADVICE), tone="soft"))
        column.addWidget(self.month)
        column.addWidget(self.chosen)
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        rows = (
            (tr("Hour&s"), self.hours), (tr("Wh&y"), self.why), (tr("Up t&o"), self.last)
        )  # fmt: skip
        for row, (words, line) in enumerate(rows):
            label = QLabel(words)
            label.setBuddy(line)
            grid.addWidget(label, row, 0)
            grid.addWidget(line, row, 1)
        column.addLayout(grid)
        column.addWidget(self.understood)
        acts = QWidget()
        flow = FlowLayout(acts, gap=8)
        for one in (self.put, self.usual, self.take):
            flow.addWidget(one)
        column.addWidget(acts)
        column.addWidget(self.list, 100)
        column.addStretch(1)

    def _connect(self) -> None:
        self.month.selectionChanged.connect(self._day_chosen)
        self.month.activated.connect(self._to_hours)
        for line in (self.hours, self.why, self.last):
            line.textChanged.connect(self._read)
            line.returnPressed.connect(self._put_in)
        self.put.clicked.connect(self._put_in)
        self.usual.clicked.connect(self._put_usual)
        self.take.clicked.connect(self._take_out)
        self.list.itemActivated.connect(self._row_chosen)
        self.list.itemClicked.connect(self._row_chosen)

    def _single(self) -> SingleDay:
        """Give what is typed; Refusal in words where it is not understood."""
        text = self.hours.text().strip()
        working = () if text.casefold() in CLOSED_WORDS else read_stretches(text)
        return SingleDay(self.day, self._last(), working, self._why())

    def _why(self) -> str:
        """Give why; what parts the entries of the setting cannot stand in it."""
        why = " ".join(self.why.text().replace(";", ",").split())
        if not why.isprintable():
            raise Refusal(tr("Why it differs holds signs that cannot be kept. Type it again."))
        return why

    def _last(self) -> date:
        text = self.last.text().strip()
        if not text:
            return self.day
        found = take_day(" ".join(text.casefold().split()), self.day)
        if found is None or found[1].strip():
            raise Refusal(tr(NO_DAY, text=text[:40]))
        day, reading = found[0].day, found[0]
        while day < self.day and (later := reading.moved(prefer="next")) is not None:
            day, reading = later, replace(reading, day=later)
        return read_single_days(f"{self.day} to {day} closed")[0].last

    @Slot()
    def _read(self) -> None:
        """Say live what was understood."""
        hours = StudioHours(openings_of(self.draft.working), self.draft.singles, self.holidays)
        now = hours.on(self.day)
        told = now.words or stretch_words(now.working) or tr("closed")
        self.chosen.show_words(tr("{day}: now {hours}", day=day_with_year(self.day), hours=told))
        self.take.setEnabled(now.cause is Cause.SINGLE)
        words, fault = "", ""
        try:
            words = tr("To put in: {words}", words=single_words(self._single()))
        except Refusal as refusal:
            fault = str(refusal)
        self.understood.set_tone("danger_ink" if fault else "soft")
        self.understood.show_words(fault or words)
        mark(self.hours, "wrong", bool(fault))
        self.put.setEnabled(not fault)

    @Slot()
    def _day_chosen(self) -> None:
        self._read()

    @Slot()
    def _to_hours(self) -> None:
        self.hours.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _put_in(self) -> None:
        try:
            one = self._single()
        except Refusal:
            return
        self._ask(with_day(self.draft.singles, one), typed=True)

    @Slot()
    def _put_usual(self) -> None:
        try:
            one = replace(self._single(), working=None)
        except Refusal:
            one = SingleDay(self.day, self.day, None)
        self._ask(with_day(self.draft.singles, one), typed=True)

    @Slot()
    def _take_out(self) -> None:
        self._ask(without_day(self.draft.singles, self.day))

    def _row_chosen(self, item: QListWidgetItem) -> None:
        """Show a single day in the lines, to be changed."""
        one: SingleDay = item.data(_ROW)
        self.month.setSelectedDate(QDate(one.first.year, one.first.month, one.first.day))
        self.hours.setText(tr("closed") if one.working == () else stretch_words(one.working or ()))
        self.why.setText(one.why)
        self.last.setText("" if one.last == one.first else f"{one.last}")

    def _ask(self, singles: tuple[SingleDay, ...], *, typed: bool = False) -> None:
        if typed:
            for line in (self.hours, self.why, self.last):
                line.clear()
        made = replace(self.draft, singles=singles)
        if made != self.draft:
            self.edited.emit(made, "")


def _line(name: str, hint: str) -> QLineEdit:
    line = QLineEdit()
    line.setMaxLength(80)
    line.setAccessibleName(name)
    line.setPlaceholderText(hint)
    return line
