"""A method of the studio's own, edited in a form or as its text beside a live drawing."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontDatabase, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QPlainTextEdit,
    QSplitter,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.cautions import Caution
from studio_log.domain.method_text import MethodDraft
from studio_log.language.words import tr, tr_later
from studio_log.ui.methods.draft import DraftText
from studio_log.ui.methods.form import MethodForm
from studio_log.ui.methods.preview import Preview
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

FORM, TEXT = 0, 1
NARROW: Final = 50
"""Below so many line heights of width the drawing stands under the form."""
NO_FORM: Final = tr_later(
    "The text cannot be shown as a form until it is mended. Nothing is lost: it is under “Text”."
)


class MethodEditor(QWidget):
    """Form and text of one draft; what it comes to stands beside them."""

    saved = Signal(str)
    """The text that is to be taken into the studio."""
    left = Signal()
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.text = QPlainTextEdit()
        self.text.setAccessibleName(tr("The method as text"))
        self.text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        self.draft = DraftText(self.text)
        self.form = MethodForm()
        self.preview = Preview()
        self.refused = Words(tone="danger_ink")
        self.refused.hide()
        self.undo = button(tr("Undo"), says=tr("Take the last change back"))
        self.redo = button(tr("Redo"), says=tr("Do again what was taken back"))
        self.save = button(tr("&Save as the studio’s own"), kind="primary")
        self.leave = button(tr("&Back to the page"), says=tr("Back to the page; the draft is kept"))
        self.give_up = button(tr("&Give the draft up"), kind="quiet")
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        self._halves = QSplitter()
        self.undo.setToolTip(tr("Ctrl+Z, in the form as in the text"))
        self.redo.setToolTip("Ctrl+Shift+Z")
        self._lay_out()
        self._connect()

    def edit(self, text: str) -> None:
        """Begin with a text; what was typed before is kept by the box."""
        self.tabs.setCurrentIndex(FORM)
        self.form.steps.list.setCurrentRow(0)
        self.draft.begin(text)
        if self.draft.reading().method is None:
            self.tabs.setCurrentIndex(TEXT)
        else:
            self.form.steps.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def know_cautions(self, cautions: Sequence[Caution]) -> None:
        """Take the cautions that a step may name."""
        self.draft.cautions = tuple(one.slug for one in cautions) or None
        self.form.offer_cautions(cautions)

    def check(self) -> None:
        """Say what is understood; draw it, or tell every fault."""
        self.draft.read_now()

    def refuse(self, words: str) -> None:
        """Say why it was not saved; the draft stays."""
        self.refused.show_words(words)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.matches(QKeySequence.StandardKey.Undo):
            self.draft.turn_back(back=True)
        elif event.matches(QKeySequence.StandardKey.Redo):
            self.draft.turn_back(back=False)
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()  # the draft is kept; the window stays
        else:
            super().keyPressEvent(event)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        narrow = self.width() < em(self, NARROW)
        way = Qt.Orientation.Vertical if narrow else Qt.Orientation.Horizontal
        if self._halves.orientation() is not way:
            self._halves.setOrientation(way)
            self._halves.setSizes([3, 1] if narrow else [em(self, 34), em(self, 20)])

    def _read(self, draft: MethodDraft) -> None:
        self.preview.show_draft(draft)
        self._tell_faults()
        self.save.setEnabled(not draft.said)
        self.undo.setEnabled(self.text.document().isUndoAvailable())
        self.redo.setEnabled(self.text.document().isRedoAvailable())
        self.form.setEnabled(draft.method is not None)
        if draft.method is not None:
            self.form.show_draft(draft)
            self._no_form.show_words("")
        else:
            self._no_form.show_words(f"{tr(NO_FORM)}\n{draft.said[0]}")

    def _tell_faults(self) -> None:
        """Tell every fault with its line beside the text; the form has each beside its field."""
        self.preview.tell(in_full=self.tabs.currentIndex() == TEXT)

    def _mend(self) -> None:
        """Go to the first thing to mend: in the form, or on its line of the text."""
        draft = self.draft.reading()
        if draft.method is not None and self.tabs.currentIndex() == FORM:
            self.form.to_fault()
        elif draft.said:
            self.tabs.setCurrentIndex(TEXT)
            self.draft.go_to(draft.first_line)
            self.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def _save(self) -> None:
        draft = self.draft.reading()
        if draft.said:
            self.check()
        else:
            self.saved.emit(self.draft.text)

    def _connect(self) -> None:
        self.draft.read.connect(self._read)
        self.tabs.currentChanged.connect(self._tell_faults)
        self.draft.refused.connect(self.refused.show_words)
        self.form.wanted.connect(self.draft.change)
        self.form.undo_wanted.connect(self.draft.turn_back)
        self.form.chosen.connect(self.preview.picture.choose)
        self.preview.picture.chosen.connect(self.form.steps.choose)
        self.preview.mend_wanted.connect(self._mend)
        self.undo.clicked.connect(lambda: self.draft.turn_back(back=True))
        self.redo.clicked.connect(lambda: self.draft.turn_back(back=False))
        self.save.clicked.connect(self._save)
        self.leave.clicked.connect(self.left)
        self.give_up.clicked.connect(self.given_up)

    def _lay_out(self) -> None:
        formed = QWidget()
        self._no_form = Words(tone="danger_ink")
        self._no_form.hide()
        column = QVBoxLayout(formed)
        column.setContentsMargins(0, 6, 0, 0)
        column.addWidget(self._no_form)
        column.addWidget(self.form, 1)
        self.tabs.addTab(formed, tr("&Form"))
        self.tabs.addTab(self.text, tr("&Text"))
        self._halves.setChildrenCollapsible(False)
        self._halves.addWidget(self.tabs)
        self._halves.addWidget(scrolled(self.preview, name=tr("What it comes to")))
        self._halves.setSizes([em(self, 34), em(self, 20)])
        foot = FlowLayout(gap=8)
        for widget in (
            self.undo, self.redo, growing(QWidget()), self.give_up, self.leave, self.save,
        ):  # fmt: skip
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._halves, 1)
        whole.addWidget(self.refused)
        whole.addLayout(foot)
