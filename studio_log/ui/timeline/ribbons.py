"""Lengths of cloth, drawn once: bars and their soft ends are cut from them.

A rounded rectangle drawn smooth costs twenty times as much as two pieces of a picture.
"""

from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPen, QPixmap

ROUND: Final = 4.0
"""Radius of rounded ends, in pixels."""
_LENGTH: Final = 660
_STEP: Final = 318
"""A whole number of the twill's repeats, so that hatching runs on from piece to piece."""
_PIECE: Final = _STEP + 1
"""Pieces lie over one another by a pixel, else a seam is seen at 150 %."""
_LEAST: Final = 12
"""Shorter bars have no room for two rounded ends."""


class Ribbon:
    """One dye with its edge, `high` pixels high and sharp at `ratio`."""

    def __init__(
        self, fill: QBrush, edge: QPen, high: float, ratio: float, round_by: float = ROUND
    ) -> None:
        self._fill, self._edge, self._round = fill, edge, round_by
        self._ratio, self._high = ratio, round(high * ratio)
        self._end = round(round_by) + 2
        self._least = _LEAST if round_by else self._end
        self._cloth = QPixmap(round(_LENGTH * ratio), self._high)
        self._cloth.setDevicePixelRatio(ratio)
        self._cloth.fill(Qt.GlobalColor.transparent)
        painter = QPainter(self._cloth)
        self._whole(painter, 0, _LENGTH, 0)
        painter.end()

    def draw(self, painter: QPainter, left: float, right: float, top: float) -> None:
        """Draw a bar from left to right, to whole pixels."""
        x, y, width = round(left), round(top), max(round(right) - round(left), 2)
        if width < self._least:
            self._whole(painter, x, width, y)
            return
        begin, cloth, ratio, high = 0, self._cloth, self._ratio, self._high
        while width > _PIECE + self._end:  # only the first piece has a left end
            painter.drawPixmap(x, y, cloth, round(begin * ratio), 0, round(_PIECE * ratio), high)
            x, width, begin = x + _STEP, width - _STEP, _STEP
        rest = round((width - self._end + 1) * ratio)
        painter.drawPixmap(x, y, cloth, round(begin * ratio), 0, rest, high)
        end = round(self._end * ratio)
        painter.drawPixmap(x + width - self._end, y, cloth, cloth.width() - end, 0, end, high)

    def _whole(self, painter: QPainter, left: float, width: float, top: float) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(self._edge)
        painter.setBrush(self._fill)
        high = self._high / self._ratio
        place = QRectF(left + 0.5, top + 0.5, max(width - 1, 1), high - 1)
        by = min(self._round, place.width() / 2)
        painter.drawRoundedRect(place, by, by)
