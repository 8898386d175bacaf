"""A small button with a menu above the list: its words, or its icon where room is short."""

from typing import Final

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QMenu, QPushButton
from typing_extensions import override

from studio_log.ui.theme.icons import icon
from studio_log.ui.theme.look import theme

_REDRAWN: Final = frozenset({QEvent.Type.PaletteChange, QEvent.Type.FontChange})


class ToolChip(QPushButton):
    """Words and a menu; `compact` shows its icon in their place, `brief` always does."""

    _words = _icon_name = ""
    _brief = _compact = False

    def __init__(self, words: str, icon_name: str, *, brief: bool = False) -> None:
        super().__init__()
        self._words, self._icon_name = words, icon_name
        self._brief, self._compact = brief, False
        self.setObjectName("chip")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setMenu(QMenu(self))
        self._dress()

    def call(self, words: str) -> None:
        """Give it other words."""
        self._words = words
        self._dress()

    def set_compact(self, *, compact: bool) -> None:
        """Show the icon, or the words."""
        if compact != self._compact:
            self._compact = compact
            self._dress()

    @override
    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in _REDRAWN:
            self._dress()

    def _dress(self) -> None:
        drawn = bool(self._icon_name) and (self._brief or self._compact)
        self.setText("" if drawn else self._words)
        if not drawn:
            self.setIcon(QIcon())
            return
        now = theme()
        side = round(now.metrics.line * 0.95)
        self.setIcon(icon(self._icon_name, now.colours.ink, now.colours.soft, side=side))
        self.setIconSize(QSize(side, side))
