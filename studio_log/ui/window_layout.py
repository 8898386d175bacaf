"""Where the parts of the window stand."""

from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

if TYPE_CHECKING:
    from studio_log.ui.main_window import MainWindow


def lay_out(window: "MainWindow") -> None:
    """Put welcome and work on two pages, the bars over the panes, the status below."""
    work = QWidget()
    column = QVBoxLayout(work)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    window.top_bar.add_chips(window.panes.chips.buttons())
    for widget in (window.top_bar, window.reminder_bar, window.message):
        column.addWidget(widget)
    column.addWidget(window.panes, 1)
    column.addWidget(window.status_line)
    window.pages.addWidget(window.welcome)
    window.pages.addWidget(work)
    window.pages.setCurrentIndex(1)
    window.setCentralWidget(window.pages)
    _order_keys(window)


def _order_keys(window: "MainWindow") -> None:
    """Let Tab walk from the left to the right: lots, time, steps, bench."""
    walk = (
        window.lots.search,
        *window.lots.chips.buttons(),
        window.lots.view,
        window.timeline.view,
        window.sheet.steps_tab,
        window.sheet.journal_tab,
    )
    for one, other in pairwise(walk):
        QWidget.setTabOrder(one, other)
