"""The big answer: a button that paints itself at the size of the screen."""

from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QWidget
from typing_extensions import override

from studio_log.ui.across.letters import LEAST, Letters, Text, lay_out

LARGEST: Final = 0.065
SHRINK: Final = 0.92
FILLED: Final = 0.88
"""Share of its height that its words may take."""
PAD: Final = 0.06
"""Room at its sides, as a share of its width."""


class AnswerButton(QAbstractButton):
    """Says the answer and its key; the keyboard stays with the view."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._texts: list[Text] = []
        self._colours = ("#000000", "#ffffff")

    @property
    def texts(self) -> list[Text]:
        """Its words and its key as they are placed inside it."""
        return self._texts

    def dress(self, words: str, key: str, letters: Letters, colours: tuple[str, str]) -> None:
        """Show these words and this key in (ground, words); it has its size already."""
        self._colours = colours
        self.setText(words)
        self.setAccessibleName(f"{words}: {key}")
        self._texts = _placed(words, key, letters, self.width(), self.height())
        self.update()

    @override
    def paintEvent(self, _event: QPaintEvent) -> None:
        ground, ink = self._colours
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(ground))
        corner = self.height() * 0.1
        painter.drawRoundedRect(QRectF(self.rect()), corner, corner)
        for text in self._texts:
            text.draw(painter, ink)
        painter.end()


def _placed(words: str, key: str, letters: Letters, width: float, height: float) -> list[Text]:
    """Centre the words with their key below them, as large as fits whole."""
    inner = width * (1 - 2 * PAD)
    share = LARGEST
    while True:
        placed = [
            lay_out(words, letters.font(share, bold=True), inner, "on"),
            lay_out(key, letters.font(LEAST), inner, "on"),
        ]
        used = sum(text.height for text in placed)
        if used <= height * FILLED or share <= LEAST:
            break
        share = max(share * SHRINK, LEAST)
    if used > height:  # the foot of the screen names the key as well
        placed.pop()
        used = placed[0].height
    top = (height - used) / 2
    for text in placed:
        top = text.place((width - text.rect.width()) / 2, top)
    return placed
