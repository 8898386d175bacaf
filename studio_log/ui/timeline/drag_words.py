"""A slip of words that stands on the timeline: what a move does, or what the keyboard is on."""

from html import escape
from typing import Final

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QLabel, QWidget

from studio_log.ui.theme import theme

_EDGE: Final = 8
_WIDTH: Final = 46
"""Letters a line, as far as the timeline is wide enough."""


class WordSlip(QLabel):
    """Wraps its words, grows with the text, and keeps clear of the thing it speaks of."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._sheet = parent
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.RichText)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def say(self, words: str, about: QRect, *, strong: bool = False) -> None:
        """Show words beside a place of the sheet; "" hides it."""
        if not words:
            self.hide()
            return
        window = self._sheet.window()
        if self.parentWidget() is not window:  # a low timeline has no room for a whole story
            self.setParent(window)
        in_force = theme()
        colours, metrics = in_force.colours, in_force.metrics
        edge = colours.accent if strong else colours.outline
        self.setStyleSheet(
            f"QLabel {{ background: {colours.panel.name()}; color: {colours.ink.name()};"
            f" border: {2 if strong else 1}px solid {edge.name()}; border-radius: 5px;"
            f" padding: {metrics.m}px; }}"
        )
        # Names are the dyer's own and may hold anything: never let them be read as markup.
        self.setText(f"<qt>{escape(words)}</qt>")
        self._place(about)
        self.show()
        self.raise_()

    def _place(self, about: QRect) -> None:
        window = self._sheet.window()
        room = window.rect()
        about = about.translated(self._sheet.mapTo(window, QPoint()))
        letters = self.fontMetrics().averageCharWidth() * _WIDTH
        width = max(min(letters, room.width() - 2 * _EDGE), 80)
        height = self.heightForWidth(width)
        left = min(max(about.left(), _EDGE), max(room.width() - width - _EDGE, _EDGE))
        top = about.bottom() + _EDGE
        if top + height > room.height() and about.top() - _EDGE - height >= 0:
            top = about.top() - _EDGE - height
        self.setGeometry(QRect(QPoint(left, top), QPoint(left + width, top + height)))
