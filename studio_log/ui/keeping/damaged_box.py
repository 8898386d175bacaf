"""What is shown in the window's place where the studio's file is damaged: what can be done."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.keeping.copies_box import KINDS
from studio_log.ui.keeping.place_part import Pick, file_to_read
from studio_log.ui.widgets.long_work import LongRun
from studio_log.ui.widgets.parts import Words, button, em, scrolled

Told = Callable[[], Sequence[str]]
LOOKING: Final = tr_later("Looking at what can be read of it. Nothing is changed by that…")
MENDING: Final = tr_later("Reading it into a new file… The damaged one is kept.")
RESTORING: Final = tr_later("Putting the copy in its place… The damaged file is kept.")


@dataclass(frozen=True)
class Ways:
    """What can be done with a damaged studio; each says in sentences what it found or did."""

    look: Told
    """Says what could be read; changes nothing."""
    mend: Told
    """Reads it into a new file."""
    restore: Callable[[Path], Sequence[str]]
    """Puts a copy in its place."""


class DamagedBox(QDialog):
    """Says what is amiss and what can be read; reads it into a new file where that is wished."""

    def __init__(self, says: str, ways: Ways, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("The studio’s file is damaged — Studio Log"))
        self._ways = ways
        self.pick_copy: Pick = file_to_read(tr("A copy to put back"), tr(KINDS))
        self.run = LongRun(self)
        self._mending = False
        self.told = Words(tr(LOOKING))
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.mend = button(tr("&Put what can be read into a new file"), kind="primary")
        self.back = button(tr("Put a &copy back…"))
        self.go = button(tr("&Open the studio"), kind="primary")
        self.leave = button(tr("&Leave it as it is"))
        self.mend.setEnabled(False)
        self.go.hide()
        self._lay_out(says)
        self.mend.clicked.connect(lambda: self._begin(self._ways.mend, tr(MENDING)))
        self.back.clicked.connect(self._put_back)
        self.go.clicked.connect(self.accept)
        self.leave.clicked.connect(self.reject)
        self.run.done.connect(self._came)
        self.run.failed.connect(self._failed)
        self.run.start(lambda _progress: "\n".join(ways.look()))

    def _lay_out(self, says: str) -> None:
        page = QVBoxLayout(self)
        page.setContentsMargins(20, 18, 20, 14)
        page.setSpacing(10)
        page.addWidget(Words(tr("The studio’s file is damaged"), size="large", bold=True))
        page.addWidget(Words(says))
        page.addWidget(scrolled(self.told, name=tr("What can be read")), 1)
        foot = QHBoxLayout()
        foot.addStretch(1)
        for part in (self.mend, self.back, self.go, self.leave):
            foot.addWidget(part)
        page.addLayout(foot)
        self.resize(em(self, 46), em(self, 30))

    @override
    def closeEvent(self, event: QCloseEvent) -> None:
        self.run.end()
        super().closeEvent(event)

    def _came(self, words: str) -> None:
        if self._mending:
            self._mended(words)
            return
        self.told.setText(words)
        self.mend.setEnabled(True)
        self.mend.setFocus()

    def _put_back(self) -> None:
        if chosen := self.pick_copy(self):
            self._begin(partial(self._ways.restore, Path(chosen)), tr(RESTORING))

    def _begin(self, way: Told, says: str) -> None:
        for part in (self.mend, self.back, self.leave):
            part.setEnabled(False)
        self.told.set_tone("ink")
        self.told.setText(says)
        self._mending = True
        self.run.start(lambda _progress: "\n".join(way()))

    def _mended(self, words: str) -> None:
        self.told.setText(words)
        self.mend.hide()
        self.back.hide()
        self.go.show()
        self.go.setFocus()
        self.leave.setEnabled(True)

    def _failed(self, words: str) -> None:
        self.told.setText(words)
        self.told.set_tone("danger_ink")
        for part in (self.mend, self.back, self.leave):
            part.setEnabled(True)
