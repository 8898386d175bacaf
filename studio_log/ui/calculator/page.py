"""One sum on its page: what is asked, what was understood, what comes out, a drawing."""

from typing import Final

from PySide6.QtCore import Slot
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QComboBox,
    QFrame,
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.calculator.parts import (
    Answer,
    Calculation,
    Input,
    Understood,
    as_text,
    understood,
    worked,
)
from studio_log.ui.calculator.curve_view import CurveView
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, em

LONGEST: Final = 60
SIDE_BY_SIDE: Final = 50
"""From so many line heights of width on the answer stands beside what is asked."""
NARROW: Final = 30
"""Below so many, everything stands below one another."""
_Place = tuple[int, int, int]
_BESIDE: Final[tuple[_Place, ...]] = ((0, 0, 1), (0, 1, 1), (0, 2, 1), (1, 1, 2))
_BELOW: Final[tuple[_Place, ...]] = ((0, 0, 1), (1, 0, 1), (2, 0, 1), (3, 0, 1))
"""Line, column and width of label, field, what was understood, what it is."""


class InputRow:
    """A label, a field, what it is for, and what was understood."""

    def __init__(self, of: Input, typed: str) -> None:
        self.of = of
        self.field = _field(of, typed)
        self.label = QLabel(tr(of.label))
        self.label.setBuddy(self.field)
        self.field.setAccessibleName(tr(of.label).replace("&", ""))
        self.says = Words(tr(of.says), tone="soft", size="small")
        self.heard = Words(tone="soft", size="small")

    @property
    def text(self) -> str:
        """What is typed, or the slug of what is chosen."""
        if isinstance(self.field, QComboBox):
            return str(self.field.currentData())
        return self.field.text()

    def read(self) -> Understood:
        """Read it and say beside it what was understood."""
        heard = understood(self.of, self.text)
        self.heard.show_words(heard.words)
        self.heard.set_tone("danger_ink" if heard.fault else "good_ink")
        self.field.setAccessibleDescription(f"{tr(self.of.says)} {heard.words}")
        return heard

    def said(self) -> str:
        """Give what was understood in words, for paper."""
        if isinstance(self.field, QComboBox):
            return self.field.currentText()
        return self.heard.text() or self.text


class CalculationPage(QWidget):
    """Works it out anew with every letter that is typed."""

    def __init__(self, of: Calculation) -> None:
        super().__init__()
        self.of = of
        self.rows = [InputRow(one, one.offered) for one in of.inputs]
        self.answer = Answer("")
        self.figure = Words(size="title", bold=True)
        self.lines = Words()
        self.source = Words(tone="soft", size="small")
        self.curve = CurveView()
        self._narrow: bool | None = None
        self._lay_out()
        self._arrange(narrow=False)
        for row in self.rows:
            if isinstance(row.field, QComboBox):
                row.field.currentIndexChanged.connect(self.work_out)
            else:
                row.field.textChanged.connect(self.work_out)
        self.work_out()

    @Slot()
    def work_out(self) -> None:
        """Read every field and show the answer, or that one is not understood."""
        heard = {row.of.slug: row.read() for row in self.rows}
        values = {slug: one.value for slug, one in heard.items() if one.value is not None}
        whole = len(values) == len(heard)
        self.answer = worked(self.of, values) if whole else Answer("—")
        self.figure.show_words(self.answer.figure)
        self.lines.show_words("\n".join(self.answer.lines))
        source = tr("Source: {source}", source=self.answer.source)
        self.source.show_words(source if self.answer.source else "")
        drawn = self.of.draw(values) if whole and self.of.draw and self.answer.figure else None
        self.curve.show_curve(drawn)

    def copy(self) -> str:
        """Put the sum on the clipboard as text, and give it."""
        text = as_text(self.of, {row.of.slug: row.said() for row in self.rows}, self.answer)
        QGuiApplication.clipboard().setText(text)
        return text

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        wide = self.width() >= em(self, SIDE_BY_SIDE)
        way = QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom
        self._halves.setDirection(way)
        self._halves.setStretch(0, 1 if wide else 0)
        self._arrange(narrow=self.width() < em(self, NARROW))

    def _lay_out(self) -> None:
        asked, answered = QVBoxLayout(), QVBoxLayout()
        self._form = QGridLayout()
        self._form.setHorizontalSpacing(14)
        self._form.setVerticalSpacing(3)
        asked.addLayout(self._form)
        asked.addStretch(1)
        answered.setSpacing(14)
        answered.addWidget(self._card())
        answered.addWidget(self.curve, 1)
        answered.addStretch(1)
        self._halves = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        self._halves.setSpacing(24)
        self._halves.addLayout(asked, 1)
        self._halves.addLayout(answered, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(18, 8, 18, 12)
        column.setSpacing(6)
        column.addWidget(Words(tr(self.of.title), size="title", bold=True))
        column.addWidget(Words(tr(self.of.says), tone="soft"))
        column.addSpacing(8)
        column.addLayout(self._halves, 1)

    def _arrange(self, *, narrow: bool) -> None:
        """Set each row: beside one another, or one below the other where there is no width."""
        if narrow is self._narrow:
            return
        self._narrow = narrow
        form = self._form
        places = _BELOW if narrow else _BESIDE
        for at, row in enumerate(self.rows):
            parts = (row.label, row.field, row.heard, row.says)
            for widget, (line, column, wide) in zip(parts, places, strict=True):
                form.removeWidget(widget)
                fills = widget is row.field and isinstance(row.field, QComboBox) and not narrow
                form.addWidget(widget, 5 * at + line, column, 1, 2 if fills else wide)
            form.setRowMinimumHeight(5 * at + 4, 10)
        form.setColumnStretch(1, 0 if narrow else 3)
        form.setColumnStretch(2, 0 if narrow else 2)
        form.setColumnStretch(0, 1 if narrow else 0)

    def _card(self) -> QFrame:
        card = QFrame()
        card.setProperty("card", "indigo")
        card.setAccessibleName(tr("What comes out"))
        inner = QVBoxLayout(card)
        inner.setContentsMargins(16, 12, 16, 12)
        inner.setSpacing(6)
        for words in (self.figure, self.lines, self.source):
            inner.addWidget(words)
        return card


def _field(of: Input, typed: str) -> QLineEdit | QComboBox:
    if of.kind != "choice":
        line = QLineEdit(typed)
        line.setMaxLength(LONGEST)
        return line
    box = QComboBox()
    for slug, words in of.choices:
        box.addItem(tr(words), slug)
    box.setCurrentIndex(max(box.findData(typed), 0))
    calm(box)
    return box
