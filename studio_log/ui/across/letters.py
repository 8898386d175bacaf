"""Letters by the height of the screen, not by the size of text: what is read at five metres.

A size here is the height of a capital as a share of the screen's height.
"""

import math
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QTextLayout, QTextOption

LEAST: Final = 1 / 40
"""No letter is smaller."""
COUNTDOWN: Final = 1 / 8
_PROBE_PX: Final = 200
DIGIT_ROOM: Final = 0.08
"""Kept above and below digits, as a share of their height."""
_USUAL_CAP: Final = 0.7
"""Taken where a font does not tell the height of its capitals."""


class Letters:
    """Makes fonts for a screen of so many pixels in height."""

    def __init__(self, family: QFont, height: float) -> None:
        self.height = height
        self._family = QFont(family)
        probe = QFont(family)
        probe.setPixelSize(_PROBE_PX)
        cap = QFontMetricsF(probe).capHeight() / _PROBE_PX
        self._cap = cap if cap > 0 else _USUAL_CAP

    def font(self, share: float, *, bold: bool = False) -> QFont:
        """Give a font whose capitals take this share of the height, never less than LEAST."""
        made = QFont(self._family)
        made.setPixelSize(math.ceil(max(share, LEAST) * self.height / self._cap))
        made.setBold(bold)
        return made


@dataclass
class Text:
    """Words that are broken into lines, with where they stand once they are placed."""

    words: str
    layout: QTextLayout
    role: str
    rect: QRectF
    lift: float = 0.0
    """Pixels of empty height above digits that are not kept."""

    @property
    def height(self) -> float:
        """Pixels from the top of the first line to the foot of the last."""
        return self.rect.height()

    def place(self, left: float, top: float) -> float:
        """Put it here; gives where it ends below."""
        self.rect.moveTo(left, top)
        return self.rect.bottom()

    def draw(self, painter: QPainter, colour: str) -> None:
        """Draw it where it stands."""
        painter.setPen(QColor(colour))
        self.layout.draw(painter, self.rect.topLeft() - QPointF(0, self.lift))

    @property
    def drop(self) -> float:
        """Pixels from the top down to the first baseline."""
        return self.layout.lineAt(0).ascent() - self.lift if self.layout.lineCount() else 0.0

    def tighten(self) -> None:
        """Keep no more height than digits need: nothing of them is above capitals or below."""
        cap = QFontMetricsF(self.layout.font()).capHeight()
        self.lift = max(self.layout.lineAt(0).ascent() - cap * (1 + DIGIT_ROOM), 0.0)
        self.rect.setHeight(cap * (1 + 2 * DIGIT_ROOM))


def lay_out(words: str, font: QFont, width: float, role: str, *, right: bool = False) -> Text:
    """Break words into lines of this width in pixels; a word too long for one breaks inside."""
    layout = QTextLayout(words, font)
    option = QTextOption()
    option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
    if right:
        option.setAlignment(Qt.AlignmentFlag.AlignRight)
    layout.setTextOption(option)
    layout.beginLayout()
    bottom = 0.0
    widest = 0.0
    while (line := layout.createLine()).isValid():
        line.setLineWidth(width)
        line.setPosition(QPointF(0, bottom))
        bottom += line.height()
        widest = max(widest, line.naturalTextWidth())
    layout.endLayout()
    return Text(words, layout, role, QRectF(0, 0, width if right else widest, bottom))


def in_one_line(words: str, font: QFont, width: float) -> bool:
    """Say whether the words need no second line."""
    return QFontMetricsF(font).horizontalAdvance(words) <= width
