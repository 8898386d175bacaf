"""Moves the window on as time passes, as seldom as what it says allows.

While somebody is at the window, or something is due, it moves on each minute and asks for
everything anew. Once nobody has touched it for two minutes and nothing is due it rests: each
quarter of an hour the clock, the line of the present and the lengths of time are brought up to
date, all else only where a moment has passed at which it changes; the clock says as of when that
holds. The first key, move of the mouse, change or reminder brings everything up to date at once.

Why so seldom: the log is open for months. A stroke costs a wake-up of the window's thread, and
under X11 each painting costs two more, since Qt waits for the server to have read the picture
before it draws on it again. A caret that blinks costs six a second, so it stands still at rest.
"""

from datetime import timedelta
from typing import Final

from PySide6.QtCore import QEvent, QObject, Signal, Slot
from PySide6.QtGui import QWindow
from PySide6.QtWidgets import QApplication
from typing_extensions import override

from studio_log.services.questions import Bench
from studio_log.ui.bridge import Bridge
from studio_log.ui.freshness import Freshness
from studio_log.ui.minute import MINUTE, MinuteClock

AT_REST: Final = timedelta(minutes=15)
_USES: Final = frozenset(
    {
        QEvent.Type.KeyPress,
        QEvent.Type.MouseButtonPress,
        QEvent.Type.MouseMove,
        QEvent.Type.Wheel,
        QEvent.Type.TouchBegin,
        QEvent.Type.TabletPress,
        QEvent.Type.FocusIn,
    }
)


class Passing(QObject):
    """Says when the window is to move on, and with how much of it."""

    moved = Signal()
    """The clock and the line of the present are to move."""
    aged = Signal()
    """Only lengths of time may have changed."""
    stale = Signal()
    """Any words may have changed."""

    def __init__(self, bridge: Bridge, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._fresh = Freshness()
        self._clock = MinuteClock(bridge, self)
        self._clock.struck.connect(self.strike)
        self._blinks_ms = QApplication.cursorFlashTime()

    def start(self) -> None:
        """Follow the clock from now on; whoever opens a window is at it."""
        self._fresh.use(self._bridge.now())
        self._set_pace(MINUTE)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusWindowChanged.connect(self.watch)

    def stop(self) -> None:
        """Follow it no more."""
        self._clock.stop()
        self._let_blink(blink=True)

    @property
    def rests(self) -> bool:
        """Whether the window goes on slowly just now."""
        return self._clock.every == AT_REST

    @Slot(QWindow)
    def watch(self, window: QWindow | None) -> None:
        """Take keys and mouse in this window as a sign that somebody is there."""
        if window is not None:
            window.installEventFilter(self)

    def use(self) -> None:
        """Note that somebody is there; what has rested is brought up to date."""
        if self.rests:
            self.come_back()
        else:
            self._fresh.use(self._bridge.now())
            self._let_blink(blink=True)

    def come_back(self) -> None:
        """Bring everything up to date for somebody who comes to look."""
        self._fresh.use(self._bridge.now())
        self._let_blink(blink=True)
        if self.rests:
            self._set_pace(MINUTE)
        self.moved.emit()
        self.stale.emit()

    def learn(self, bench: Bench) -> None:
        """Take from the bench how long the words stay true."""
        now = self._bridge.now()
        self._fresh.learn(bench, now, self._bridge.zone())
        if self.rests:
            if bench.now:
                self._set_pace(MINUTE)
            self.moved.emit()

    @Slot()
    def strike(self) -> None:
        """Move on, by as much as time may have changed."""
        now = self._bridge.now()
        rests = self._fresh.resting(now)
        if rests != self.rests:
            self._set_pace(AT_REST if rests else MINUTE)
        self._let_blink(blink=not self._fresh.left(now))
        self.moved.emit()
        if rests and not self._fresh.turned(now):
            self.aged.emit()
        else:
            self.stale.emit()

    @override
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in _USES:
            self.use()
        return False

    def _set_pace(self, every: timedelta) -> None:
        self._clock.start(every)

    def _let_blink(self, *, blink: bool) -> None:
        wanted = self._blinks_ms if blink else 0
        if QApplication.cursorFlashTime() != wanted:
            QApplication.setCursorFlashTime(wanted)
