"""What the settings page is made of: headed sections, rows, and faults said beside a field."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt, QTime
from PySide6.QtWidgets import (
    QComboBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QTimeEdit,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, em, mark, roomy

GAP: Final = 10
"""Pixels between two rows."""
INDENT: Final = 6
"""Pixels that a check box keeps at its left for its ring; labels keep them too, to line up."""
TIME_WIDTH: Final = 5.4
"""Of a time field, in heights of a line."""


def choice(rows: tuple[tuple[str, str], ...], value: str) -> QComboBox:
    """Give a box to choose from; each row is its words, still in English, and what is kept."""
    box = QComboBox()
    for words, slug in rows:
        box.addItem(tr(words), slug)
    box.setCurrentIndex(max(box.findData(value), 0))
    calm(box)
    return box


def time_field(text: str, name: str = "") -> QTimeEdit:
    """Give a field for a time of the day, from a text such as "22:00"."""
    field = QTimeEdit(QTime.fromString(text, "HH:mm"))
    field.setDisplayFormat("HH:mm")
    field.setAccessibleName(name)
    roomy(field)
    field.setMinimumWidth(em(field, TIME_WIDTH))
    calm(field)
    return field


def time_text(field: QTimeEdit) -> str:
    """Give a field's time as it is kept: "22:00"."""
    return field.time().toString("HH:mm")


def label_for(words: str, field: QWidget) -> QLabel:
    """Give a label whose letter leads to the field, and name the field after it."""
    label = QLabel(words)
    label.setBuddy(field)
    if not field.accessibleName():
        field.setAccessibleName(words.replace("&", ""))
    return label


def soft(words: str) -> Words:
    """Give words of advice that line up with the labels."""
    made = Words(words, tone="soft")
    made.setContentsMargins(INDENT, 0, 0, 0)
    return made


def together(*widgets: QWidget) -> QWidget:
    """Give widgets side by side that are never parted."""
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(GAP)
    for widget in widgets:
        line.addWidget(widget)
    return row


def flowing(*widgets: QWidget) -> QWidget:
    """Give widgets side by side, on further lines where the width is used up."""
    row = QWidget()
    flow = FlowLayout(row, gap=GAP)
    for widget in widgets:
        flow.addWidget(widget)
    return row


class Fault(Words):
    """Says beside a field what is wrong with it; hidden while nothing is."""

    def __init__(self, field: QWidget) -> None:
        super().__init__(tone="danger_ink")
        self.setContentsMargins(INDENT, 0, 0, 0)
        self.field = field
        self.hide()

    def say(self, words: str) -> None:
        """Say it, and have whoever reads the screen aloud find it at the field too."""
        self.show_words(words)
        self.field.setAccessibleDescription(words)
        mark(self.field, "wrong", bool(words))


class Section(QWidget):
    """A heading and its rows: labels at the left, fields beside them."""

    def __init__(self, heading: str, advice: str = "") -> None:
        super().__init__()
        self.labels: list[QLabel] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(GAP)
        column.addWidget(Words(heading, size="large", bold=True))
        if advice:
            column.addWidget(soft(advice))
        self.form = QFormLayout()
        self.form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.ExpandingFieldsGrow)
        self.form.setLabelAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.form.setVerticalSpacing(GAP)
        self.form.setHorizontalSpacing(GAP)
        column.addLayout(self.form)

    def row(self, words: str, field: QWidget, *, leads_to: QWidget | None = None) -> None:
        """Add a labelled field; the label's letter leads to it, or to a part of it."""
        label = label_for(words, leads_to or field)
        label.setContentsMargins(INDENT, 0, 0, 0)
        # The form puts a label at the top of its row; its words stand beside those of the field.
        label.setMinimumHeight(field.sizeHint().height())
        self.labels.append(label)
        self.form.addRow(label, field)

    def wide(self, widget: QWidget) -> None:
        """Add something that takes the whole width."""
        if not isinstance(widget, Words) and widget.layout() is None:
            # Beside words that wrap a form takes height away from what does not.
            widget.setMinimumHeight(widget.sizeHint().height())
        self.form.addRow(widget)


class Checked:
    """A field whose text is read when it is left, with its fault beside it."""

    def __init__(self, field: QWidget, check: Callable[[], str]) -> None:
        self.fault = Fault(field)
        self._check = check

    def read(self) -> bool:
        """Say what is wrong, or that nothing is: True."""
        words = self._check()
        self.fault.say(words)
        return not words
