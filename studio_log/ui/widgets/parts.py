"""Labels, buttons and colours as every screen makes them."""

import re
from collections.abc import Iterable
from typing import Final, Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QButtonGroup,
    QFrame,
    QLabel,
    QLayout,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr_later
from studio_log.ui.theme.dress import CardGround, dress_button, repolish

Tone = Literal["ink", "soft", "accent_ink", "danger_ink", "ochre_ink", "good_ink"]
Size = Literal["small", "body", "large", "title", "digits"]
ButtonKind = Literal["plain", "primary", "quiet", "danger"]

URGENT_INK: Final[dict[str, Tone]] = {
    "calm": "accent_ink",
    "soon": "ochre_ink",
    "now": "danger_ink",
    "spoiling": "danger_ink",
}
"""Colour of words by urgency; the words say it too."""

URGENT_CARD: Final[dict[str, CardGround]] = {
    "calm": "indigo",
    "soon": "ochre",
    "now": "danger",
    "spoiling": "danger",
}
"""Ground of a card by urgency."""

URGENT_WORDS: Final[dict[str, str]] = {
    "calm": tr_later("When it suits"),
    "soon": tr_later("Soon"),
    "now": tr_later("Now"),
    "spoiling": tr_later("Spoiling"),
}

BREAK: Final = "\N{ZERO WIDTH SPACE}"
PART: Final = 8
LONG_WORD: Final = re.compile(r"[^\s\u200b]{25,}")


def em(widget: QWidget, count: float = 1.0) -> int:
    """Give so many line heights in pixels: what grows with the size of the text."""
    return round(widget.fontMetrics().height() * count)


def sized(font: QFont, factor: float, *, bold: bool = False) -> QFont:
    """Give a font so many times as large."""
    made = QFont(font)
    if font.pixelSize() > 0:
        made.setPixelSize(max(round(font.pixelSize() * factor), 1))
    else:
        made.setPointSizeF(font.pointSizeF() * factor)
    made.setBold(bold)
    return made


def mark(widget: QWidget, name: str, value: object) -> None:
    """Set a property that the style goes by, and show it at once."""
    if widget.property(name) != value:
        widget.setProperty(name, value)
        repolish(widget)


def breakable(text: str) -> str:
    """Let over-long words break inside, so that no name makes the window wide."""
    return LONG_WORD.sub(_with_breaks, text)


def _with_breaks(word: re.Match[str]) -> str:
    letters = word.group()
    return BREAK.join(letters[at : at + PART] for at in range(0, len(letters), PART))


class Words(QLabel):
    """Words for reading: plain text, wrapped, in one of the studio's inks."""

    def __init__(
        self,
        text: str = "",
        *,
        tone: Tone = "ink",
        size: Size = "body",
        bold: bool = False,
    ) -> None:
        super().__init__(breakable(text))
        self.setProperty("tone", tone)
        self.setProperty("letters", size)
        self.setProperty("bold", bold)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @override
    def setText(self, text: str, /) -> None:
        super().setText(breakable(text))

    def set_tone(self, tone: Tone) -> None:
        """Change the ink."""
        mark(self, "tone", tone)

    def show_words(self, text: str) -> None:
        """Show the words, and nothing at all where there are none."""
        if breakable(text) != self.text():
            self.setText(text)
        self.setVisible(bool(text))


def button(text: str, *, kind: ButtonKind = "plain", says: str = "") -> QPushButton:
    """Give a button; a click leaves the keyboard where it was, Tab reaches it."""
    made = QPushButton(text)
    made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    dress_button(made, kind)
    if says:
        made.setAccessibleName(says)
    made.setAutoDefault(False)
    return made


def chip(text: str, *, says: str = "", checked: bool = False) -> QPushButton:
    """Give a small button that stays pressed."""
    made = button(text, says=says)
    made.setObjectName("chip")
    made.setCheckable(True)
    made.setChecked(checked)
    return made


def one_of(parent: QWidget, rows: Iterable[tuple[int, str, str]], *, chosen: int) -> QButtonGroup:
    """Give chips of which one is pressed; a row is its number, its words and what is read aloud."""
    group = QButtonGroup(parent)
    for number, words, says in rows:
        group.addButton(chip(words, says=says, checked=number == chosen), number)
    return group


def roomy(field: QAbstractSpinBox) -> None:
    """Give the figures of a spin box the room at their left that other fields have."""
    field.lineEdit().setTextMargins(6, 0, 0, 0)
    field.setMinimumWidth(em(field, 6))


def scrolled(content: QWidget, *, name: str) -> QScrollArea:
    """Give a pane that scrolls up and down only; its content takes the width there is."""
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(content)
    area.setAccessibleName(name)
    return area


def emptied(layout: QLayout) -> None:
    """Take every widget out of a layout and let it go."""
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
