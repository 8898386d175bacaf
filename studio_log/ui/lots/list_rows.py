"""The lots as rows, each with the strip of its steps."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QListView
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.questions import LotLine
from studio_log.ui.lots.lot_delegate import LotDelegate
from studio_log.ui.lots.lot_model import LotModel


class LotView(QListView):
    """The rows; Space is left to the bench."""

    opened = Signal()
    """Enter was pressed on a row."""

    def __init__(self) -> None:
        super().__init__()
        self.arriving = False
        """Whether the keyboard is just coming, with no lot chosen."""
        self.setObjectName("lots")
        self.setAccessibleName(tr("Lots"))
        self.setUniformItemSizes(False)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setItemDelegate(LotDelegate(self))

    def known_lines(self) -> Sequence[LotLine]:
        """Give the rows that are known now."""
        model = self.model()
        return model.lines if isinstance(model, LotModel) else ()

    @override
    def focusInEvent(self, event: QFocusEvent) -> None:
        # Qt makes the first row current when the keyboard comes; nobody has chosen that lot.
        none = not self.currentIndex().isValid()
        self.arriving = none
        super().focusInEvent(event)
        if none:
            self.selectionModel().clear()
        self.arriving = False

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space:
            event.ignore()
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
            return
        super().keyPressEvent(event)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()
