"""Holds keys back for a moment, so that a foot that slips answers nothing twice."""

from typing import Final

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal

AFTER_MS: Final = 1_000
"""After an answer, in milliseconds."""
TURNED_MS: Final = 700
"""After another thing has come first by itself: nobody can have read it sooner."""


class Guard(QObject):
    """Knows which acts are held; one that is held is neither done nor kept for later."""

    freed = Signal()
    """Something that was held is so no more."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._since = QElapsedTimer()
        self._since.start()
        self._until: dict[str, int] = {}
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self.freed)

    def hold(self, act: str, ms: int) -> None:
        """Hold an act from now on for so many milliseconds."""
        self._until[act] = max(self._since.elapsed() + ms, self._until.get(act, 0))
        self._timer.start(max(self._until.values()) - self._since.elapsed() + 1)

    def holds(self, act: str) -> bool:
        """Say whether it is held just now."""
        return self._since.elapsed() < self._until.get(act, 0)

    def let_go(self) -> None:
        """Hold nothing any more."""
        self._until.clear()
        self._timer.stop()
        self.freed.emit()
