"""Lots follow a plan, are taken off it again at once, and follow it once more."""

from functools import partial

from PySide6.QtCore import QObject, Signal, Slot

from studio_log.services.commands import Outcome, Redo, Undo
from studio_log.services.plan import PLAN, AcceptPlan
from studio_log.ui.bridge import Bridge
from studio_log.ui.plan import told
from studio_log.ui.plan.told import Fields
from studio_log.ui.plan.what_if import Change


class Following(QObject):
    """Sends what is done with a plan as a whole; says what became of it."""

    followed = Signal(object)
    """The changes that the plan counted on and the studio has now."""
    back = Signal(bool)
    """Whether a plan was taken back that can be followed again."""
    said = Signal(str)
    refused = Signal(str)

    def __init__(self, bridge: Bridge, parent: QObject) -> None:
        super().__init__(parent)
        self._bridge = bridge

    def follow(self, fields: Fields, codes: tuple[str, ...], changes: tuple[Change, ...]) -> None:
        """Let lots follow a plan."""
        starts, ends = told.moments(fields, "starts"), told.moments(fields, "ends")
        accept = AcceptPlan(starts, ends, codes, changes)
        self._bridge.do(accept, partial(self._followed, changes), failed=self.refused.emit)

    @Slot()
    def take_back(self) -> None:
        """Take all lots off the plan that was accepted last."""
        self._bridge.do(Undo(PLAN), partial(self._turned, True), failed=self.refused.emit)

    @Slot()
    def again(self) -> None:
        """Let them follow what was taken back last."""
        self._bridge.do(Redo(PLAN), partial(self._turned, False), failed=self.refused.emit)

    def _followed(self, changes: tuple[Change, ...], outcome: Outcome) -> None:
        self.followed.emit(changes)
        self.back.emit(False)
        self.said.emit(" ".join([outcome.words, *outcome.advice]))

    def _turned(self, gone: bool, outcome: Outcome) -> None:  # noqa: FBT001 - bound by `partial`
        self.back.emit(gone)
        self.said.emit(outcome.words)
