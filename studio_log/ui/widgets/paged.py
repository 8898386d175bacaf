"""A box that is a page: it scrolls where there is little room, above the button that closes it."""

from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from studio_log.ui.widgets.fitting_area import FittingArea
from studio_log.ui.widgets.parts import em

HIGH = 20
"""Height of such a box, in line heights, where its page asks for no more."""


def paged(box: QDialog, name: str, *below: QWidget, leave: QWidget, wide: int) -> QVBoxLayout:
    """Lay a box out and give the column of its page, to be filled.

    `name` is what screen readers call the page, `wide` is in line heights; what is `below` stands
    always, above the button that leaves.
    """
    body = QWidget()
    page = QVBoxLayout(body)
    page.setContentsMargins(20, 18, 20, 18)
    page.setSpacing(10)
    whole = QVBoxLayout(box)
    whole.setContentsMargins(0, 0, 0, 0)
    whole.addWidget(FittingArea(body, name=name), 1)
    for widget in below:
        whole.addWidget(widget)
    foot = QHBoxLayout()
    foot.setContentsMargins(20, 0, 20, 14)
    foot.addStretch(1)
    foot.addWidget(leave)
    whole.addLayout(foot)
    room = box.screen().availableSize()
    box.resize(min(em(box, wide), room.width() - 40), min(em(box, HIGH), room.height() - 60))
    return page
