"""The hand that takes the cloth itself and draws it along."""

from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QScrollBar

from studio_log.present.timeline_hits import Hit

SLACK: Final = 5.0
"""Pixels a pressed pointer may tremble and still be a click."""


class PanHand:
    """Moves two scroll bars with the pointer; a press that only trembles stays a click."""

    def __init__(self, across: QScrollBar, down: QScrollBar) -> None:
        self._bars = across, down
        self._from: QPointF | None = None
        self._began = (0, 0)
        self._hit: Hit | None = None
        self.moving = False

    @property
    def pressed(self) -> bool:
        """Whether the cloth is held."""
        return self._from is not None

    def press(self, point: QPointF, hit: Hit | None) -> None:
        """Take the cloth; `hit` is what a click there means."""
        across, down = self._bars
        self._from, self._hit, self.moving = point, hit, False
        self._began = (across.value(), down.value())

    def drag(self, point: QPointF) -> bool:
        """Draw the cloth along with the pointer; False while it only trembles."""
        if self._from is None:
            return False
        went = point - self._from
        if not self.moving and abs(went.x()) < SLACK and abs(went.y()) < SLACK:
            return False
        self.moving = True
        for bar, began, by in zip(self._bars, self._began, (went.x(), went.y()), strict=True):
            bar.setValue(began - round(by))
        return True

    def release(self) -> Hit | None:
        """Let go; gives what was clicked, or None where the cloth was moved."""
        clicked = None if self.moving else self._hit
        self._from, self._hit, self.moving = None, None, False
        return clicked
