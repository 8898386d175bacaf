"""The week with its lines: chips for what is in hand, a line to type beside each day."""

from collections.abc import Mapping
from functools import partial
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QGridLayout, QLabel, QLineEdit, QMenu, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.domain.hours_draft import (
    HoursDraft,
    Layer,
    copied,
    draft_values,
    typed,
    with_bars,
    with_typed,
)
from studio_log.language.calendar_words import long_weekday_name, weekday_name
from studio_log.language.region import week
from studio_log.language.words import tr, tr_later
from studio_log.present.hours_words import draft_doubts, draft_words
from studio_log.present.week_axis import Bars
from studio_log.ui.hours.week_view import WeekView
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button, em, mark, one_of

LAYERS: Final = (
    (Layer.WORKING, tr_later("&Working"), tr_later("Edit the working hours")),
    (Layer.QUIET, tr_later("&Quiet"), tr_later("Edit the quiet hours")),
    (Layer.WAKING, tr_later("W&aking"), tr_later("Edit the waking hours")),
)
LINE_NAMES: Final = {
    Layer.WORKING: tr_later("Working hours on {day}"),
    Layer.QUIET: tr_later("Quiet hours of the night after {day}"),
    Layer.WAKING: tr_later("Waking hours on {day}"),
}
HINTS: Final = {
    Layer.WORKING: tr_later("9-12:30, 13:30-17"),
    Layer.QUIET: tr_later("22-7"),
    Layer.WAKING: tr_later("7-22"),
}
ADVICE: Final = {
    Layer.WORKING: tr_later(
        "When somebody is in the workshop. Pull across a day to make a bar, pull its ends or "
        "move it, or type. The timeline shades the rest; no reminder goes by it."
    ),
    Layer.QUIET: tr_later(
        "In quiet hours nothing rings; it waits until they end. A line holds the night after its "
        "evening; without text that night is not quiet."
    ),
    Layer.WAKING: tr_later(
        "When somebody is up and could come in once. Without any bar it is all but the quiet "
        "hours; quiet hours are never waking."
    ),
}
WIDE_LINE: Final = 13.2
"""Of a line to type, in line heights."""


class WeekPane(QWidget):
    """Edits the week of a draft; asks with `edited`, shows what it is given."""

    edited = Signal(object, str)
    """The HoursDraft wanted, and what it came from."""

    def __init__(self) -> None:
        super().__init__()
        self.draft = HoursDraft()
        self.layer = Layer.WORKING
        self._days = week()
        self.half: dict[tuple[Layer, int], tuple[str, str]] = {}
        """What stands in a line and was not understood, and why; also of layers not in hand."""
        rows = ((n, tr(words), tr(says)) for n, (_, words, says) in enumerate(LAYERS))
        self.layers = one_of(self, rows, chosen=0)
        self.copy = button(tr("&Copy a day to…"))
        self.menu = QMenu(self)
        self.copy.setMenu(self.menu)
        self.advice = Words(tone="soft")
        # Two lines for all three, or the week would jump from one to another.
        self.advice.setMinimumHeight(em(self.advice, 2.1))
        self.advice.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.view = WeekView()
        self.lines: dict[int, QLineEdit] = {}
        self.fault = Words(tone="danger_ink")
        self.understood = Words()
        self.understood.setAccessibleName(tr("What was understood of the hours"))
        self.doubt = Words(tone="ochre_ink")
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._lay_out()
        self._connect()

    def show_draft(self, draft: HoursDraft) -> None:
        """Show a draft; a line that is being typed in keeps its letters."""
        self.draft = draft
        self.view.show_draft(draft, self.layer)
        for day, line in self.lines.items():
            if not (line.hasFocus() and self._means(line.text(), day)):
                self._fill(day)
        self._tell()

    def lead_to_fault(self) -> str:
        """Go to the first line that was not understood, and give why; "" where all were."""
        if not self.half:
            return ""
        (layer, day), (_, words) = next(iter(self.half.items()))
        self.choose(layer)
        self._to_line(day)
        return words

    def half_typed(self) -> dict[str, str]:
        """Give what was not understood, by layer and day, to be typed again."""
        return {f"{layer} {day}": text for (layer, day), (text, _) in self.half.items()}

    def type_again(self, texts: Mapping[str, str]) -> None:
        """Put such texts back into their lines."""
        for layer in Layer:
            for day in range(7):
                text = texts.get(f"{layer} {day}", "")
                if text:
                    self.choose(layer)
                    self.lines[day].setText(text)
                    self._typed(day, text)

    def choose(self, layer: Layer) -> None:
        """Take another layer in hand."""
        self.layers.button(list(Layer).index(layer)).click()

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in {QEvent.Type.Move, QEvent.Type.Resize}:
            self._soon.start()
        elif event.type() is QEvent.Type.FocusIn:
            self.view.take_day(next(day for day, line in self.lines.items() if line is watched))
        return super().eventFilter(watched, event)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(Words(tr("The week"), size="large", bold=True))
        head = QWidget()
        flow = FlowLayout(head, gap=8)
        for chip in self.layers.buttons():
            flow.addWidget(chip)
        flow.addWidget(self.copy)
        column.addWidget(head)
        column.addWidget(self.advice)
        column.addLayout(self._grid())
        for words in (self.fault, self.understood, self.doubt):
            column.addWidget(words)

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(1, 1)
        grid.setRowMinimumHeight(0, em(self, 1.5))
        grid.addWidget(self.view, 0, 1, 8, 1)
        for row, day in enumerate(self._days, 1):
            line = QLineEdit()
            line.setMaxLength(200)
            line.setFixedWidth(em(self, WIDE_LINE))
            name = QLabel(weekday_name(day))
            name.setToolTip(long_weekday_name(day))
            grid.addWidget(name, row, 0)
            grid.addWidget(line, row, 2)
            line.textEdited.connect(partial(self._typed, day))
            line.editingFinished.connect(partial(self._left, day))
            line.installEventFilter(self)
            self.lines[day] = line
        return grid

    def _connect(self) -> None:
        self.layers.idToggled.connect(self._layer_chosen)
        self.menu.aboutToShow.connect(self._fill_menu)
        self.view.edited.connect(self._pulled)
        self.view.shaped.connect(self._shaped)
        self.view.line_wanted.connect(self._to_line)
        self.view.copy_wanted.connect(self._copy_one)
        self._soon.timeout.connect(self._place_rows)
        self._follow_layer()

    @Slot()
    def _place_rows(self) -> None:
        top = self.view.y()
        self.view.show_rows(
            [(self.lines[day].y() - top, self.lines[day].height()) for day in self._days]
        )

    def _layer_chosen(self, number: int, chosen: bool) -> None:  # noqa: FBT001 - Qt's own signal
        if chosen:
            self.layer = LAYERS[number][0]
            self._follow_layer()

    def _follow_layer(self) -> None:
        self.advice.show_words(tr(ADVICE[self.layer]))
        for day, line in self.lines.items():
            line.setAccessibleName(tr(LINE_NAMES[self.layer], day=long_weekday_name(day)))
            line.setPlaceholderText(tr(HINTS[self.layer]))
            self._fill(day)
        self.view.show_draft(self.draft, self.layer)
        self._tell()

    def _typed(self, day: int, text: str) -> None:
        try:
            draft = with_typed(self.draft, self.layer, day, text)
        except Refusal as refusal:
            self.half[self.layer, day] = text, str(refusal)
            self._mark(day)
            self._tell()
        else:
            self.half.pop((self.layer, day), None)
            self._mark(day)
            self.edited.emit(draft, f"{self.layer} {day}")

    def _left(self, day: int) -> None:
        """Write a line that was understood as it is kept; one that was not stays as it is."""
        self._fill(day)

    def _pulled(self, day: int, bars: Bars) -> None:
        self.half.pop((self.layer, day), None)
        try:
            draft = with_bars(self.draft, self.layer, day, bars)
        except Refusal as refusal:
            self.view.show_draft(self.draft, self.layer)
            self._fill(day)
            self.fault.show_words(str(refusal))
        else:
            self.edited.emit(draft, "")

    def _shaped(self, day: int, bars: Bars | None) -> None:
        """Say in its line what a bar comes to while it is pulled."""
        draft = self.draft
        if bars is not None:
            try:
                draft = with_bars(self.draft, self.layer, day, bars)
            except Refusal as refusal:
                self.fault.show_words(str(refusal))
                return
        self.lines[day].setText(typed(draft, self.layer, day))
        self.understood.show_words(draft_words(draft))
        self.fault.show_words("")

    def _to_line(self, day: int) -> None:
        self.lines[day].setFocus(Qt.FocusReason.OtherFocusReason)
        self.lines[day].selectAll()

    def _copy_one(self, day: int, to: int) -> None:
        self._copy(day, (to,))

    def _copy(self, day: int, to: tuple[int, ...]) -> None:
        self.edited.emit(copied(self.draft, self.layer, day, to), "")

    @Slot()
    def _fill_menu(self) -> None:
        """Offer the day that was last in hand first."""
        self.menu.clear()
        day = self.view.weekday
        name = long_weekday_name(day)
        rows = (
            (tr("{day}, to Monday–Friday", day=name), tuple(range(5))),
            (tr("{day}, to every day", day=name), tuple(range(7))),
            *(
                (tr("{day}, to {other}", day=name, other=long_weekday_name(one)), (one,))
                for one in self._days
                if one != day
            ),
        )
        for words, to in rows:
            act = QAction(words, self.menu)
            act.triggered.connect(partial(self._copy, day, to))
            self.menu.addAction(act)

    def _fill(self, day: int) -> None:
        """Show a day as it is kept; what was not understood stays as it was typed."""
        text, _ = self.half.get((self.layer, day), (typed(self.draft, self.layer, day), ""))
        if self.lines[day].text() != text:
            self.lines[day].setText(text)
            if not self.lines[day].hasFocus():
                self.lines[day].setCursorPosition(0)
        self._mark(day)

    def _mark(self, day: int) -> None:
        words = self.half.get((self.layer, day), ("", ""))[1]
        mark(self.lines[day], "wrong", bool(words))
        self.lines[day].setAccessibleDescription(words)

    def _means(self, text: str, day: int) -> bool:
        """Say whether what is typed means what the draft has."""
        try:
            return with_typed(self.draft, self.layer, day, text) == self.draft
        except Refusal:
            return (self.layer, day) in self.half

    def _tell(self) -> None:
        """Say live what was understood, or what is wrong."""
        words = next((why for (layer, _), (_, why) in self.half.items() if layer is self.layer), "")
        if not words:
            try:
                draft_values(self.draft)
            except Refusal as refusal:
                words = str(refusal)
        self.fault.show_words(words)
        self.understood.show_words(draft_words(self.draft))
        self.doubt.show_words(draft_doubts(self.draft))
