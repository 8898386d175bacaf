"""A line in which something is looked for, with a cross that empties it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QToolButton
from typing_extensions import override

LONGEST = 200


class FindLine(QLineEdit):
    """Down goes on to what was found, Escape empties it."""

    down = Signal()

    def __init__(self, hint: str, says: str) -> None:
        super().__init__()
        self.setPlaceholderText(hint)
        self.setAccessibleName(says)
        self.setClearButtonEnabled(True)
        self.setMaxLength(LONGEST)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        for cross in self.findChildren(QToolButton):  # Qt forgets the padding of the style
            cross.move(cross.x(), (self.height() - cross.height()) // 2)

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Down:
            self.down.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)
