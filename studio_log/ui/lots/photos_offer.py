"""A picture that was dropped, pasted or chosen: what it is, its step, its time, a note."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QCheckBox, QComboBox, QFrame, QLabel, QLineEdit, QVBoxLayout

from studio_log.language.words import tr, tr_later
from studio_log.services.pictures import AddPhoto, Picture
from studio_log.services.questions import StepLine
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.last_values import LastValues
from studio_log.ui.widgets.parts import Words, button, em

WHOLE = tr_later("the whole lot")


@dataclass(frozen=True)
class Incoming:
    """A picture on its way to a lot."""

    code: str
    path: Path | None = None
    content: bytes = b""
    name: str = ""


class PhotoOffer(QFrame):
    """Asks once, beside the picture, before it is kept."""

    keep = Signal(object)
    """An AddPhoto."""
    leave = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("stepdetail")
        self._coming: Incoming | None = None
        self._picture: Picture | None = None
        self.look = QLabel()
        self.words = Words(bold=True)
        self.size_words = Words(tone="soft", size="small")
        self.step = QComboBox()
        self.step.setAccessibleName(tr("The photo belongs to"))
        self.taken = QCheckBox()
        self.note = QLineEdit()
        self.note.setMaxLength(1000)
        self.note.setAccessibleName(tr("Note to the photo"))
        self.note.setPlaceholderText(tr("a note, if any"))
        self.last_notes = LastValues(self.note, "note")
        self.keep_button = button(tr("&Keep this photo"), kind="primary")
        self.leave_button = button(tr("Lea&ve it"))
        acts = FlowLayout(gap=8)
        acts.addWidget(self.keep_button)
        acts.addWidget(self.leave_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 12, 14, 12)
        column.setSpacing(8)
        for widget in (self.words, self.look, self.size_words, self.step, self.taken, self.note):
            column.addWidget(widget)
        column.addLayout(acts)
        self.look.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.keep_button.clicked.connect(self._keep)
        self.note.returnPressed.connect(self._keep)
        self.leave_button.clicked.connect(self.leave)
        self.hide()

    def offer(
        self, coming: Incoming, picture: Picture, steps: Sequence[StepLine], step: int | None
    ) -> None:
        """Show a picture; `step` is the one proposed."""
        self._coming, self._picture = coming, picture
        self.words.setText(tr("{name}, for {code}", name=picture.name, code=coming.code))
        self.size_words.setText(picture.words)
        self.look.setFixedHeight(em(self, 8))
        self.look.clear()
        self.step.clear()
        self.step.addItem(tr(WHOLE), None)
        for line in steps:
            self.step.addItem(line.title, line.number)
        self.step.setCurrentIndex(max(self.step.findData(step), 0))
        self.taken.setText(tr("taken {when}: use that time", when=picture.taken_words))
        self.taken.setVisible(picture.taken_at is not None)
        self.taken.setChecked(picture.taken_at is not None)
        self.note.clear()
        self.show()
        self.note.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_look(self, image: QImage) -> None:
        """Show the picture once it is made small."""
        small = QPixmap.fromImage(image)
        self.look.setPixmap(
            small.scaledToHeight(em(self, 8), Qt.TransformationMode.SmoothTransformation)
        )
        self.look.setAccessibleName(self.words.text())

    def _keep(self) -> None:
        coming, picture = self._coming, self._picture
        if coming is None or picture is None:
            return
        self.last_notes.remember()
        self.keep.emit(
            AddPhoto(
                coming.code,
                path=coming.path,
                content=coming.content,
                name=coming.name,
                step=self.step.currentData(),
                at=picture.taken_at if self.taken.isChecked() else None,
                note=self.note.text().strip(),
            )
        )
