"""A pane of a small box: as high as its content, and scrolling where the screen is not."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QSize, Qt, QTimer
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget
from typing_extensions import override

from studio_log.ui.widgets.parts import em

FOOT: Final = 7
"""Line heights kept for the buttons of a box, what is said above them, and its frame."""
BESIDE: Final = 40
"""Pixels that a box leaves of the width of the screen."""


class FittingArea(QScrollArea):
    """Lets a box grow with its content up to the screen, so that its buttons stay seen."""

    def __init__(self, content: QWidget, *, name: str) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(name)
        self.setWidget(content)
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._grow)
        content.installEventFilter(self)

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self._soon.start()
        return super().eventFilter(watched, event)

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._soon.start()

    def grow_soon(self) -> None:
        """Look once more whether there is room enough: something else of the box has come."""
        self._soon.start()

    def _grow(self) -> None:
        """Let the box follow where its content needs more room; it never shrinks by itself."""
        self.updateGeometry()
        box = self.window()
        lacking = self._high(self.viewport().width()) - self.viewport().height()
        if lacking > 0 and box.isVisible():
            room = box.screen().availableGeometry().height() - em(self, 3)
            box.resize(box.width(), max(min(box.height() + lacking, room), box.height()))

    @override
    def sizeHint(self) -> QSize:
        content, room = self.widget(), self.screen().availableGeometry()
        if content is None:
            return super().sizeHint()
        wide = max(content.sizeHint().width(), content.minimumSizeHint().width())
        wide = min(max(wide, self.window().minimumWidth()), room.width() - BESIDE)
        return QSize(wide, min(self._high(wide), room.height() - em(self, FOOT)))

    def _high(self, wide: int) -> int:
        """Give the height that the content needs at a width; words wrap."""
        content = self.widget()
        layout = content.layout() if content is not None else None
        if content is None or layout is None:
            return 0
        high = layout.totalHeightForWidth(wide) if layout.hasHeightForWidth() else -1
        return max(high, layout.totalMinimumSize().height())

    @override
    def minimumSizeHint(self) -> QSize:
        content = self.widget()
        wide = content.minimumSizeHint().width() if content is not None else 0
        return QSize(wide, min(self.sizeHint().height(), em(self, 4)))
