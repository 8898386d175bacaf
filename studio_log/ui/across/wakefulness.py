"""Asks for a screen that stays on, without waiting: a stuck service holds nobody up."""

import threading
from typing import Final, Protocol

from PySide6.QtCore import QObject, Qt, Signal, Slot

from studio_log.language.words import tr, tr_later

CANNOT: Final = tr_later(
    "The screen cannot be kept on from here. Its rest is set in the system’s settings."
)


class Awake(Protocol):
    """What keeps a screen from going dark; a call may take a second, from any thread."""

    @property
    def on(self) -> bool:
        """Whether it is kept on just now."""
        ...

    def keep(self, on: bool) -> str:  # noqa: FBT001 - the one thing that it is told
        """Keep the screen on, or let it rest again; gives words for the person."""
        ...


class Wakefulness(QObject):
    """Switches it on and off in a short-lived thread, one switch at a time."""

    said = Signal(str)
    """What became of a switch that was asked for."""
    _done = Signal(str)

    def __init__(self, awake: Awake | None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._awake = awake
        self._thread: threading.Thread | None = None
        self._wanted = False
        self._done.connect(self._came, Qt.ConnectionType.QueuedConnection)

    @property
    def on(self) -> bool:
        """Whether the screen is kept on."""
        return self._awake is not None and self._awake.on

    def toggle(self) -> None:
        """Keep the screen on, or let it rest again."""
        if self._awake is None:
            self.said.emit(tr(CANNOT))
        elif self._thread is None:
            self._wanted = not self.on
            self._switch()

    def release(self) -> None:
        """Let the screen rest again; what is under way is followed by it."""
        self._wanted = False
        if self.on and self._thread is None:
            self._switch()

    def wait(self) -> None:
        """Wait for a switch that is under way; for the end of the program."""
        if self._thread is not None:
            self._thread.join()

    def _switch(self) -> None:
        self._thread = threading.Thread(target=self._run, args=(self._wanted,), daemon=True)
        self._thread.start()

    def _run(self, wanted: bool) -> None:  # noqa: FBT001
        words = self._awake.keep(wanted) if self._awake is not None else tr(CANNOT)
        self._done.emit(words)

    @Slot(str)
    def _came(self, words: str) -> None:
        if self._thread is not None:
            self._thread.join()
        self._thread = None
        if self.on and not self._wanted:
            self._switch()
        else:
            self.said.emit(words)
