"""Steps that are moved by hand: each planned in a process of its own, each taken back at once."""

from PySide6.QtCore import QObject, Signal, Slot

from studio_log.language.words import tr
from studio_log.planning.apart import Ask
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan import told
from studio_log.ui.plan.run import PlanRun
from studio_log.ui.plan.told import Drawn, Fields

Shown = tuple[Fields, Fields | None]
"""A plan, and the one that it was compared with."""


class Moves(QObject):
    """Plans one move at a time, and keeps the plans before the moves, the last on top."""

    moved = Signal(object, str)
    """The Fields of the plan with the move, and what there is to say of it."""
    stayed = Signal(str)
    """Nothing moved, and what there is to say of it."""
    refused = Signal(str)
    failed = Signal(str)

    def __init__(self, bridge: Bridge, parent: QObject) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self._run = PlanRun(self)
        self._drawn: Drawn | None = None
        self._was: Shown | None = None
        self._kept: list[Shown] = []
        self._run.done.connect(self._done)
        self._run.failed.connect(self.failed)

    def __bool__(self) -> bool:
        """Whether there is a move to take back."""
        return bool(self._kept)

    def start(self, ask: Ask, drawn: Drawn, was: Shown) -> None:
        """Plan a move from what is shown now."""
        self._drawn, self._was = drawn, was
        self._run.start(ask)

    def take_back(self) -> Shown | None:
        """Give what was shown before the last move; None where nothing was moved."""
        return self._kept.pop() if self._kept else None

    def forget(self) -> None:
        """Leave the move that is planned; those before it belong to a plan that is made anew."""
        self._run.close()
        self._kept.clear()

    @Slot(object)
    def _done(self, fields: Fields) -> None:
        if not fields["starts"]:
            self.refused.emit(" ".join(fields["why"]) or tr("It cannot be moved there."))
            return
        now, zone = self._bridge.now(), self._bridge.zone()
        if self._was is not None and fields["starts"] == self._was[0]["starts"]:
            self.stayed.emit(told.stayed_words(fields, self._drawn, now, zone))
            return
        if self._was is not None:
            self._kept.append(self._was)
        self.moved.emit(fields, told.elsewhere_words(fields, self._drawn, now, zone))
