"""A method of the studio's own, edited as its text beside a live drawing and its faults."""

from typing import Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QFontDatabase
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.errors import Refusal
from studio_log.domain.method_text import check_method, read_method
from studio_log.present.method_drawing import drawn_steps
from studio_log.services.method_page import time_words
from studio_log.ui.methods.drawing import drawing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

TYPED_MS: Final = 350


class MethodEditor(QWidget):
    """The text at the left; its drawing, or what is amiss with line and field, at the right."""

    saved = Signal(str)
    """The text that is to be taken into the studio."""
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.text = QPlainTextEdit()
        self.text.setAccessibleName("The method as text")
        self.text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        self.understood = Words(bold=True)
        self.faults = Words(tone="danger_ink")
        self.picture = QLabel()
        self.picture.setAccessibleName("Drawing of the method")
        self.save = button("&Save as the studio’s own", kind="primary")
        self.leave = button("&Back to the page")
        self._soon = QTimer(self, singleShot=True, interval=TYPED_MS)
        self._lay_out()
        self._soon.timeout.connect(self.check)
        self.text.textChanged.connect(self._soon.start)
        self.save.clicked.connect(self._save)
        self.leave.clicked.connect(self.left)

    def edit(self, text: str) -> None:
        """Begin with a text; what was typed before under the same head is kept by the box."""
        self.text.setPlainText(text)
        self.check()
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def check(self) -> None:
        """Say what is understood; draw it, or tell every fault."""
        self._soon.stop()
        text = self.text.toPlainText()
        faults = check_method(text, name="the text")
        self.faults.show_words("\n".join(faults))
        self.save.setEnabled(not faults)
        if faults:
            count = len(faults)
            self.understood.setText(f"{count} thing{'s' if count > 1 else ''} to mend")
            return
        method = read_method(text, name="the text")
        self.understood.setText(f"{method.title}, version {method.version}: {time_words(method)}")
        room = self._side.viewport().width() - 8
        ratio = self.devicePixelRatioF()
        image = drawing(drawn_steps(method), max(room, 120), ratio=ratio)
        self.picture.setPixmap(self.picture.pixmap().fromImage(image))

    def refuse(self, words: str) -> None:
        """Say why it was not saved; the text stays."""
        self.faults.show_words(words)

    def _save(self) -> None:
        try:
            read_method(self.text.toPlainText(), name="the text")
        except Refusal:
            self.check()
            return
        self.saved.emit(self.text.toPlainText())

    def _lay_out(self) -> None:
        body = QWidget()
        column = QVBoxLayout(body)
        for widget in (self.understood, self.faults, self.picture):
            column.addWidget(widget)
        column.addStretch()
        self._side: QScrollArea = scrolled(body, name="What is understood")
        halves = QSplitter()
        halves.setChildrenCollapsible(False)
        halves.addWidget(self.text)
        halves.addWidget(self._side)
        halves.setSizes([em(self, 30), em(self, 30)])
        foot = QHBoxLayout()
        foot.addStretch()
        foot.addWidget(self.leave)
        foot.addWidget(self.save)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(halves, 1)
        whole.addLayout(foot)
