"""What a draft comes to: its name, how long it takes, and its steps drawn as they now are."""

from typing import Final

from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import QImage, QMouseEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.domain.method_text import MethodDraft
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.method_drawing import DrawnStep, drawn_steps
from studio_log.services.method_page import time_words
from studio_log.ui.methods.drawing import drawing, row_at
from studio_log.ui.widgets.parts import Words, button

TIMES: Final = frozenset({"lasts", "gap", "tending", "kind", "ask_dry"})
"""Fields without which a step cannot be drawn."""
WAITS: Final = tr_later("The drawing waits until the times are mended.")
TO_MEND: Final = (tr_later("{n} thing to mend"), tr_later("{n} things to mend"))
RESIZED_MS: Final = 40


def named(title: str, version: int) -> str:
    """Say which method and which version."""
    return tr("{title}, version {n}", title=title or tr("No name"), n=version)


class Picture(QWidget):
    """The drawing, as wide as there is room; a click on a row chooses its step."""

    chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Drawing of the method"))
        self._rows: tuple[DrawnStep, ...] = ()
        self._chosen = -1
        self._image = QImage()
        self._soon = QTimer(self, singleShot=True, interval=RESIZED_MS)
        self._soon.timeout.connect(self._draw)

    def show_rows(self, rows: tuple[DrawnStep, ...]) -> None:
        """Draw these steps."""
        self._rows = rows
        self._draw()

    def choose(self, step: int) -> None:
        """Show which step is being edited."""
        self._chosen = step
        self._draw()

    @override
    def sizeHint(self) -> QSize:
        return QSize(self.width(), round(self._image.height() / self.devicePixelRatioF()))

    @override
    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.drawImage(0, 0, self._image)
        painter.end()

    @override
    def mousePressEvent(self, event: QMouseEvent) -> None:
        row = row_at(self._rows, self.width(), event.position().y())
        if row is not None and event.button() is Qt.MouseButton.LeftButton:
            self.chosen.emit(row)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._soon.start()

    def _draw(self) -> None:
        if not self._rows or self.width() < 40:
            return
        ratio = self.devicePixelRatioF()
        self._image = drawing(self._rows, self.width(), ratio=ratio, chosen=self._chosen)
        self.setMinimumHeight(self.sizeHint().height())
        self.update()


class Preview(QWidget):
    """Words and drawing beside the form."""

    mend_wanted = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.understood = Words(bold=True)
        self.time = Words(tone="soft", size="small")
        self.faults = Words(tone="danger_ink", size="small")
        self.mend = button(tr("Go to what is to &mend"))
        self.picture = Picture()
        self.waits = Words(tr(WAITS), tone="soft", size="small")
        self.mend.clicked.connect(self.mend_wanted)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 10, 12, 10)
        column.addWidget(self.understood)
        column.addWidget(self.time)
        column.addWidget(self.mend, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.faults)
        column.addSpacing(6)
        column.addWidget(self.waits)
        column.addWidget(self.picture)
        column.addStretch()

    def tell(self, *, in_full: bool) -> None:
        """Tell every fault with its line, or only how many there are."""
        self.faults.setVisible(in_full and bool(self.faults.text()))

    def show_draft(self, draft: MethodDraft) -> None:
        """Say what is understood, draw it, and tell every fault."""
        count = len(draft.said)
        self.faults.setText("\n".join(draft.said))
        self.mend.setVisible(bool(count))
        tally = counted(count, *TO_MEND) if count else ""
        method = draft.method
        name = named(method.title, method.version) if method else ""
        self.understood.setText(" — ".join(part for part in (name, tally) if part))
        drawable = method is not None and not any(
            fault.path[:1] == ("steps",) and (len(fault.path) < 3 or fault.path[2] in TIMES)
            for fault in draft.faults
        )
        self.waits.setVisible(not drawable)
        if method is not None and drawable:
            self.time.show_words(time_words(method))
            self.picture.show_rows(drawn_steps(method))
