"""The first start: the studio's name, its units, its quiet hours; nothing else."""

from PySide6.QtCore import Qt, QTime, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QTimeEdit,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.commands import ChangeSettings, Outcome
from studio_log.services.settings import Settings
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, button, em, roomy, scrolled

DEFAULT_NAME = tr_later("My studio")
UNITS = (
    (tr_later("metric: grams, litres, metres"), "metric"),
    (tr_later("US: ounces, cups, yards"), "us"),
)


class WelcomePage(QWidget):
    """Everything is filled in already; Enter accepts."""

    done = Signal()

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("sheet")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._bridge = bridge
        self.name = QLineEdit(tr(DEFAULT_NAME))
        self.name.setMaxLength(120)
        self.units = QComboBox()
        for words, value in UNITS:
            self.units.addItem(tr(words), value)
        self.quiet_start = self._time_field(tr("Quiet hours begin"))
        self.quiet_end = self._time_field(tr("Quiet hours end"))
        self.said = Words(tone="danger_ink")
        self.said.hide()
        self.begin = button(tr("&Begin"), kind="primary")
        self._lay_out()
        for field in (self.units, self.quiet_start, self.quiet_end):
            calm(field)
        self.begin.clicked.connect(self.accept)

    def show_settings(self, settings: Settings) -> None:
        """Fill the fields with what is set, so that nothing needs to be typed."""
        self.name.setText(settings.studio or tr(DEFAULT_NAME))
        self.units.setCurrentIndex(max(self.units.findData(settings.units), 0))
        self.quiet_start.setTime(QTime.fromString(settings.quiet_start, "HH:mm"))
        self.quiet_end.setTime(QTime.fromString(settings.quiet_end, "HH:mm"))
        self.name.setFocus()
        self.name.selectAll()

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        # Fields hand Enter on to the page they stand on.
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.accept()
        else:
            super().keyPressEvent(event)

    def accept(self) -> None:
        """Keep what stands in the fields and begin."""
        if not self.begin.isEnabled():
            return
        values: dict[str, object] = {
            "studio": self.name.text().strip() or tr(DEFAULT_NAME),
            "units": self.units.currentData(),
            "quiet_start": self.quiet_start.time().toString("HH:mm"),
            "quiet_end": self.quiet_end.time().toString("HH:mm"),
            "welcomed": True,
        }
        self.begin.setEnabled(False)
        self._bridge.do(ChangeSettings(values), self._accepted, failed=self._refused)

    def _time_field(self, name: str) -> QTimeEdit:
        field = QTimeEdit()
        field.setDisplayFormat("HH:mm")
        field.setAccessibleName(name)
        roomy(field)
        return field

    def _lay_out(self) -> None:
        card = QWidget()
        card.setMaximumWidth(em(self, 34))
        column = QVBoxLayout(card)
        column.setSpacing(8)
        column.addWidget(Words(tr("Welcome to Studio Log"), size="title", bold=True))
        column.addWidget(
            Words(tr("A dyer’s logbook that rings at the right moment. Three things, "
               "and it begins; each can be changed later under File, Settings."), tone="soft")
        )  # fmt: skip
        column.addSpacing(10)
        self._add(column, tr("&Name of the studio"), self.name)
        self._add(column, tr("&Units (any may be typed)"), self.units)
        self._add(column, tr("&Quiet hours, in which nothing rings: from"), self.quiet_start)
        self._add(column, tr("un&til"), self.quiet_end)
        column.addWidget(self.said)
        column.addSpacing(10)
        column.addWidget(self.begin, 0, Qt.AlignmentFlag.AlignLeft)
        middle = QWidget()
        middle.setObjectName("sheet")
        row = QHBoxLayout(middle)
        row.addStretch(1)
        stack = QVBoxLayout()
        stack.addStretch(1)
        stack.addWidget(card)
        stack.addStretch(2)
        row.addLayout(stack, 6)
        row.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolled(middle, name=tr("Welcome")))

    def _add(self, column: QVBoxLayout, words: str, field: QWidget) -> None:
        label = QLabel(words)
        label.setWordWrap(True)
        label.setBuddy(field)
        if not field.accessibleName():
            field.setAccessibleName(words.replace("&", ""))
        column.addWidget(label)
        column.addWidget(field)

    def _accepted(self, _outcome: Outcome) -> None:
        self.begin.setEnabled(True)
        self.done.emit()

    def _refused(self, words: str) -> None:
        self.begin.setEnabled(True)
        self.said.show_words(words)
