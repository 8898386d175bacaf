"""The buttons of a page about a bath, a swatch or a trial: each wishes for one act by its slug."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal, Slot
from PySide6.QtWidgets import QPushButton

from studio_log.language.words import tr
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import ButtonKind, button

ActRow = tuple[str, str, ButtonKind]
"""Slug, words not translated yet, look."""


class ActButtons(QObject):
    """Makes the buttons and their layout; which of them are seen is the page's."""

    wanted = Signal(str)

    def __init__(self, rows: Iterable[ActRow], parent: QObject) -> None:
        super().__init__(parent)
        self.layout = FlowLayout(gap=8)
        self.by_slug: dict[str, QPushButton] = {}
        for slug, words, kind in rows:
            made = button(tr(words), kind=kind)
            made.setProperty("act", slug)
            made.clicked.connect(self._pressed)
            self.by_slug[slug] = made
            self.layout.addWidget(made)

    @Slot()
    def _pressed(self) -> None:
        sender = self.sender()
        if isinstance(sender, QPushButton):
            self.wanted.emit(str(sender.property("act")))
