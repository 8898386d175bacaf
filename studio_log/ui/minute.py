"""The window's clock: strikes as each minute turns, faster where the clock is hurried."""

from datetime import timedelta
from typing import Final

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from studio_log.ui.bridge import Bridge

MINUTE: Final = timedelta(minutes=1)
LEAST_MS: Final = 400
"""A hurried clock strikes no oftener than this, in real milliseconds."""


class MinuteClock(QObject):
    """One timer, set anew at each stroke; it never drifts from the wall."""

    struck = Signal()

    def __init__(self, bridge: Bridge, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._timer = QTimer(self, singleShot=True, timerType=Qt.TimerType.CoarseTimer)
        self._timer.timeout.connect(self._strike)

    def start(self) -> None:
        """Strike at the next full minute."""
        now = self._bridge.now()
        into = timedelta(seconds=now.second, microseconds=now.microsecond)
        left = self._bridge.real(MINUTE - into)
        self._timer.start(max(round(left.total_seconds() * 1000) + 20, LEAST_MS))

    def stop(self) -> None:
        """Strike no more."""
        self._timer.stop()

    def _strike(self) -> None:
        self.start()
        self.struck.emit()
