"""A list to choose from whose closed box says the short form, so that nothing is cut."""

from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QComboBox, QStyleOptionComboBox
from typing_extensions import override

from studio_log.ui.widgets.parts import em

SHORT: Final = int(Qt.ItemDataRole.UserRole) + 1
ROOM: Final = 4
"""Line heights that frame and arrow of a box take beside its words."""


class ShortBox(QComboBox):
    """Open it tells each choice at length, wrapped where that is wide; closed in few words."""

    def __init__(self) -> None:
        super().__init__()
        self.view().setTextElideMode(Qt.TextElideMode.ElideNone)

    def offer(self, words: str, short: str, value: object) -> None:
        """Add a choice."""
        self.addItem(words, value)
        row = self.count() - 1
        self.setItemData(row, short, SHORT)
        self.setItemData(row, words, int(Qt.ItemDataRole.ToolTipRole))

    @override
    def initStyleOption(self, option: QStyleOptionComboBox) -> None:
        super().initStyleOption(option)
        option.currentText = self.currentData(SHORT) or self.currentText()

    @override
    def showPopup(self) -> None:
        words = [self.itemText(row) for row in range(self.count())]
        widest = max((self.fontMetrics().horizontalAdvance(text) for text in words), default=0)
        room = self.window().width() - self.mapTo(self.window(), self.rect().topLeft()).x()
        self.view().setMinimumWidth(min(widest + em(self, ROOM), max(room, self.width())))
        super().showPopup()

    @override
    def sizeHint(self) -> QSize:
        return self._for_short(super().sizeHint())

    @override
    def minimumSizeHint(self) -> QSize:
        return self._for_short(super().minimumSizeHint())

    def _for_short(self, hint: QSize) -> QSize:
        texts = [str(self.itemData(row, SHORT) or "") for row in range(self.count())]
        wide = max((self.fontMetrics().horizontalAdvance(text) for text in texts), default=0)
        return QSize(wide + em(self, ROOM), hint.height())
