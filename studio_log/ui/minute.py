"""The window's clock: strikes as each minute turns, faster where the clock is hurried."""

from datetime import UTC, datetime, timedelta
from typing import Final

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from studio_log.ui.bridge import Bridge

MINUTE: Final = timedelta(minutes=1)
LEAST_MS: Final = 400
"""A hurried clock strikes no oftener than this, in real milliseconds."""
_AFTER_MS: Final = 20
_DAY_ONE: Final = datetime(1970, 1, 1, tzinfo=UTC)


class MinuteClock(QObject):
    """One timer, set anew at each stroke; it never drifts from the wall.

    A precise timer: a coarse one may strike before its minute and then has to strike again.
    """

    struck = Signal()

    def __init__(self, bridge: Bridge, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._timer = QTimer(self, singleShot=True, timerType=Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._strike)
        self._every = MINUTE

    def start(self, every: timedelta = MINUTE) -> None:
        """Strike whenever so much time is full from now on: each minute, each ten minutes."""
        self._every = every
        left = self._bridge.real(every - (self._bridge.now() - _DAY_ONE) % every)
        self._timer.start(max(round(left.total_seconds() * 1000) + _AFTER_MS, LEAST_MS))

    def stop(self) -> None:
        """Strike no more."""
        self._timer.stop()

    @property
    def every(self) -> timedelta:
        """How much time passes from stroke to stroke."""
        return self._every

    def _strike(self) -> None:
        self.start(self._every)
        self.struck.emit()
