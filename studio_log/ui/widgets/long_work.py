"""Work that takes a while, in a thread of its own: how far it is, and a way to stop it."""

import logging
import threading
from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal, Slot

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr

_log = logging.getLogger(__name__)
Progress = Callable[[int, int], bool]
_PARTS: Final = 200


class LongRun(QObject):
    """Runs one piece of work at a time; signals come to the window's thread."""

    progressed = Signal(int, int)
    done = Signal(str)
    """It is done; what to say."""
    failed = Signal(str)
    """It was refused, stopped or broke; what to say."""

    _far = Signal(int, int)
    _good = Signal(str)
    _bad = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._stop = threading.Event()
        self._thread: threading.Thread | None = None
        self._told = -1
        self.running = False
        """Whether work is under way, as the window has heard of it."""
        queued = Qt.ConnectionType.QueuedConnection
        self._far.connect(self.progressed, queued)
        self._good.connect(self._came_well, queued)
        self._bad.connect(self._came_badly, queued)

    def start(self, run: Callable[[Progress], str]) -> None:
        """Begin; what runs already is stopped first."""
        self.end()
        self._stop.clear()
        self._told, self.running = -1, True
        self._thread = threading.Thread(target=self._run, args=(run,), name="long work")
        self._thread.start()

    def stop(self) -> None:
        """Ask the work to stop; it says so by `failed`."""
        self._stop.set()

    def end(self) -> None:
        """Stop the work and wait until it has."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join()
            self._thread = None
        self.running = False

    def _run(self, run: Callable[[Progress], str]) -> None:
        try:
            said = run(self._tell)
        except Refusal as refusal:
            self._bad.emit(str(refusal))
        except Exception:  # noqa: BLE001 - told to the person, written in the log
            _log.exception("long work failed")
            self._bad.emit(
                tr("The program made a mistake of its own. The studio was not changed; try again.")
            )
        else:
            self._good.emit(said)

    def _tell(self, done: int, every: int) -> bool:
        share = _PARTS * done // max(1, every)
        if share != self._told:  # a window that is told of each row would do nothing else
            self._told = share
            self._far.emit(done, every)
        return not self._stop.is_set()

    @Slot(str)
    def _came_well(self, words: str) -> None:
        self.running = False
        self.done.emit(words)

    @Slot(str)
    def _came_badly(self, words: str) -> None:
        self.running = False
        self.failed.emit(words)
