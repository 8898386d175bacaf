"""A tab at the edge of the sheet that says where now lies, and leads back to it."""

from typing import Final

from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QPushButton, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.ui.theme import theme
from studio_log.ui.timeline.sheet_painter import Place

_BEFORE: Final = (
    tr_later("◂ now {clock}"),
    tr_later("Find now: {clock}, earlier than what is seen"),
)
_AFTER: Final = (tr_later("now {clock} ▸"), tr_later("Find now: {clock}, later than what is seen"))


class NowTab(QPushButton):
    """Shows itself only while now is out of sight; a plain button for keys and screen readers."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setToolTip(tr("Now is out of sight. Click or press N to find it."))
        self.hide()

    def show_for(self, place: Place, x: float, clock: str) -> None:
        """Stand at the edge beyond which now lies, at x of the viewport; hide while it is seen."""
        before = x < place.gutter
        if not before and x <= place.width:
            self.hide()
            return
        self._dress()
        words, name = _BEFORE if before else _AFTER
        self.setText(tr(words, clock=clock))
        self.setAccessibleName(tr(name, clock=clock))
        width = self.sizeHint().width()
        left = place.gutter if before else place.width - width - 1
        top = place.days + place.hours
        self.setGeometry(QRect(round(left), round(top), width, round(place.flag - 4)))
        self.show()

    def _dress(self) -> None:
        in_force = theme()
        colours, pad = in_force.colours, in_force.metrics.m
        self.setFont(in_force.font("small", bold=True))
        look = (
            f"QPushButton {{ background: {colours.danger.name()};"
            f" color: {colours.on_danger.name()}; border: 2px solid {colours.danger.name()};"
            f" border-radius: 4px; padding: 0 {pad}px; min-height: 0; min-width: 0; }}"
            f" QPushButton:focus {{ border: 2px solid {colours.ink.name()}; }}"
        )
        if look != self.styleSheet():
            self.setStyleSheet(look)
