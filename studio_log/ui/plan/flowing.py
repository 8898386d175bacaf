"""What is read from top to bottom and scrolls: as high as its words need, and no higher."""

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QWidget
from typing_extensions import override


class Flowing(QWidget):
    """A widget for a pane that scrolls; at the width it has there is no void below its words."""

    @override
    def minimumSizeHint(self) -> QSize:
        """Ask for no height: words hint at a narrow column's, the layout knows the true one."""
        return QSize(super().minimumSizeHint().width(), 0)
