"""How the new-lot form is laid out: fields at the left, amounts at the right."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QBoxLayout, QDialog, QLabel, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.ui.theme.dress import dress_label
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, em, mark, scrolled

NARROW: Final = 38
"""Below so many line heights of width the two halves stand one above the other."""


class Field(QWidget):
    """A named field with what was understood, or what is wrong, right beneath it."""

    def __init__(self, name: str, target: QWidget, beside: QWidget | None = None) -> None:
        super().__init__()
        self.target = target
        self.fault = ""
        self.label = QLabel(name)
        dress_label(self.label, "body")
        self.label.setWordWrap(True)
        self.label.setBuddy(target)
        self.said = Words(tone="soft", size="small")
        self.wrong = Words(tone="danger_ink", size="small")
        self.said.hide()
        self.wrong.hide()
        target.setAccessibleName(name.replace("&", ""))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        for widget in (self.label, target, self.said, self.wrong):
            column.addWidget(widget)
        if beside is not None:
            column.addWidget(beside, 0, Qt.AlignmentFlag.AlignLeft)

    def name(self, words: str) -> None:
        """Call the field something else."""
        self.label.setText(words)
        self.target.setAccessibleName(words.replace("&", ""))

    def understand(self, understood: str, fault: str) -> None:
        """Say what was understood, and what was not."""
        self.fault = fault
        self.said.show_words(understood)
        self.wrong.show_words(fault)
        mark(self.target, "wrong", bool(fault))
        self.target.setAccessibleDescription(f"{understood} {fault}".strip())


@dataclass(frozen=True)
class FormParts:
    """What the form consists of."""

    dialog: QDialog
    halves: QBoxLayout
    fields: Mapping[str, Field]
    amounts: Sequence[QWidget]
    message: QWidget
    buttons: QWidget
    left: tuple[QWidget, QWidget]
    """What tells that something typed before was put back, and the way to start afresh."""


def lay_out(form: FormParts) -> None:
    """Put the form's parts in their places; all of it scrolls where room is short."""
    line = em(form.dialog)
    form.fields["pieces"].target.setFixedHeight(round(line * 4.6))
    body = QWidget()
    form.halves.setSpacing(0)
    form.halves.setContentsMargins(0, 0, 0, 0)
    form.halves.addWidget(_fields(form), 1)
    form.halves.addWidget(_amounts(form), 1)
    body.setLayout(form.halves)
    foot = QVBoxLayout()
    foot.setContentsMargins(20, 10, 20, 14)
    foot.addWidget(form.buttons)
    whole = QVBoxLayout(form.dialog)
    whole.setContentsMargins(0, 0, 0, 0)
    whole.setSpacing(0)
    whole.addWidget(scrolled(body, name=tr("New lot")), 1)
    whole.addWidget(form.message)
    whole.addLayout(foot)
    room = form.dialog.screen().availableGeometry()
    form.dialog.resize(
        min(round(line * 52), room.width() - 40), min(round(line * 52), room.height() - 60)
    )


def turn(form: FormParts) -> None:
    """Put the amounts below the fields where the form is narrow."""
    narrow = form.dialog.width() < em(form.dialog, NARROW)
    way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
    form.halves.setDirection(way)


def _fields(form: FormParts) -> QWidget:
    fields = QWidget()
    fields.setObjectName("side")
    column = QVBoxLayout(fields)
    column.setContentsMargins(20, 16, 16, 16)
    column.setSpacing(12)
    line = FlowLayout(gap=10)
    words, afresh = form.left
    line.addWidget(growing(words))
    line.addWidget(afresh)
    for widget in form.left:
        widget.hide()
    column.addLayout(line)
    for field in form.fields.values():
        column.addWidget(field)
    column.addStretch()
    return fields


def _amounts(form: FormParts) -> QWidget:
    side = QWidget()
    side.setObjectName("sheet")
    column = QVBoxLayout(side)
    column.setContentsMargins(20, 16, 20, 16)
    column.setSpacing(10)
    column.addWidget(Words(tr("Amounts"), size="large", bold=True))
    for widget in form.amounts:
        column.addWidget(widget)
    column.addStretch()
    return side
