"""Lines of a list whose words wrap whole: the style's own reckoning leaves out its padding."""

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QListWidget, QListWidgetItem

PADS: Final = 32
"""Pixels that padding and focus take of the width of a line, with some to spare."""
ABOVE_AND_BELOW: Final = 14


def fit_item(of: QListWidget, item: QListWidgetItem) -> None:
    """Give a line the height of its words, wrapped at the width there is."""
    room = QRect(0, 0, max(of.viewport().width() - PADS, PADS), 100_000)
    words = of.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, item.text())
    item.setSizeHint(QSize(0, words.height() + ABOVE_AND_BELOW))
