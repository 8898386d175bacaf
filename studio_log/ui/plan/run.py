"""Planning under way, in a process of its own; what it says comes home in the GUI thread."""

from functools import partial

from PySide6.QtCore import QObject, Qt, Signal, Slot

from studio_log.language.tongue import tongue
from studio_log.planning.apart import Apart, Ask
from studio_log.ui.plan.told import Fields


def ask_of(
    problem: Fields, do: str, seconds: float, tries: int | None, keep: Fields | None, more: Fields
) -> Ask:
    """Give what is asked of the planner; with `tries` it does so many and the same each time."""
    return Ask(
        problem,
        do=do,
        # The optimizer's work is counted by time, which is never the same twice.
        engine="auto" if tries is None else "own",
        seconds=seconds,
        tries=tries,
        keep=keep,
        more=more,
        tongue=tongue().fields,
    )


class PlanRun(QObject):
    """One planning at a time: a new one ends the one before, whose words then count no more."""

    better = Signal(object)
    """The Fields of a better plan; it may still improve."""
    done = Signal(object)
    """The Fields of the answer."""
    failed = Signal(str)

    _heard = Signal(int, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._apart: Apart | None = None
        self._number = 0
        self._heard.connect(self._take, Qt.ConnectionType.QueuedConnection)

    @property
    def running(self) -> bool:
        """Whether an answer is still to come."""
        return self._apart is not None

    def start(self, ask: Ask) -> None:
        """Begin to plan."""
        self.close()
        self._apart = Apart(ask, partial(self._heard.emit, self._number))

    def end(self) -> None:
        """End the search: the best plan so far is the answer, at once."""
        if self._apart is not None:
            self._apart.end()

    def close(self) -> None:
        """Leave the search; nothing more is told of it."""
        self._number += 1
        if self._apart is not None:
            self._apart.kill()
            self._apart = None

    @Slot(int, object)
    def _take(self, number: int, message: Fields) -> None:
        if number != self._number:
            return
        if "better" in message:
            self.better.emit(message["better"])
            return
        self._apart = None
        if "done" in message:
            self.done.emit(message["done"])
        else:
            self.failed.emit(str(message["failed"]))
