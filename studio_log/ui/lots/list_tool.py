"""A small button with a menu above the list; where the pane is narrow its icon is all of it."""

from typing import Final

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtWidgets import QMenu, QPushButton
from typing_extensions import override

from studio_log.ui.theme.icons import icon
from studio_log.ui.theme.look import theme

_REDRAWN: Final = frozenset({QEvent.Type.PaletteChange, QEvent.Type.FontChange})


class ToolChip(QPushButton):
    """Words with an icon and a menu; `compact` leaves the icon only."""

    def __init__(self, words: str, icon_name: str) -> None:
        super().__init__(words)
        self._words, self._icon_name = words, icon_name
        self._compact = False
        self.setObjectName("chip")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setMenu(QMenu(self))
        self._dress()

    def call(self, words: str) -> None:
        """Give it other words."""
        self._words = words
        self.setText("" if self._compact else words)

    def set_compact(self, *, compact: bool) -> None:
        """Show the icon only, or the words as well."""
        if compact != self._compact:
            self._compact = compact
            self.setText("" if compact else self._words)

    @override
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in _REDRAWN:
            self._dress()

    def _dress(self) -> None:
        now = theme()
        side = round(now.metrics.line * 0.95)
        self.setIcon(icon(self._icon_name, now.colours.ink, now.colours.soft, side=side))
        self.setIconSize(QSize(side, side))
