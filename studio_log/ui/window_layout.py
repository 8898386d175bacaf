"""Where the parts of the window stand."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QScreen
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from studio_log.ui.panes import Panes
from studio_log.ui.top_bar import TopBar

WISHED: Final = QSize(1440, 900)
FRAME: Final = QSize(8, 40)
"""What a desktop's frame and title take of the screen, at a guess: it is known only later."""


@dataclass(frozen=True)
class Parts:
    """What is laid out."""

    pages: QStackedWidget
    welcome: QWidget
    top_bar: TopBar
    bars: Sequence[QWidget]
    """Over the panes, from above down."""
    panes: Panes
    status_line: QWidget


def lay_out(parts: Parts) -> None:
    """Put welcome and work on two pages, the bars over the panes, the status below."""
    work = QWidget()
    column = QVBoxLayout(work)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    parts.top_bar.add(parts.panes.turner)
    for widget in (parts.top_bar, *parts.bars):
        column.addWidget(widget)
    column.addWidget(parts.panes, 1)
    column.addWidget(parts.status_line)
    parts.pages.addWidget(parts.welcome)
    parts.pages.addWidget(work)
    parts.pages.setCurrentIndex(1)


def first_size(screen: QScreen) -> QSize:
    """Give the size to open with: as wished, but never beyond the screen with its frame."""
    return WISHED.boundedTo(screen.availableGeometry().size() - FRAME)


def order_keys(walk: Sequence[QWidget]) -> None:
    """Let Tab walk in this order."""
    for one, other in pairwise(walk):
        QWidget.setTabOrder(one, other)
