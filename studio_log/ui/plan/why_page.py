"""Why the plan is no better: what is odd, what cannot be, and the ways out, each one click."""

from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.ui.plan.flowing import Flowing
from studio_log.ui.plan.told import Group
from studio_log.ui.widgets.parts import Words, button, em, emptied, scrolled

NOTHING: Final = tr_later("Nothing stands in the way of this plan.")
LOOKING: Final = tr_later("Looking for ways out; each is planned before it stands here.")
NO_WAY: Final = tr_later("No way out was found in this time; that proves nothing.")


class WhyPage(QWidget):
    """Shows reasons and ways out; says which way is taken."""

    taken = Signal(object)
    """A way out, as the planner's answer has it."""

    def __init__(self) -> None:
        super().__init__()
        self._inside = Flowing()
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(4, 4, 12, 4)
        self._column.setSpacing(8)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolled(self._inside, name=tr("Why not better")))
        self.ways: list[Mapping[str, Any]] = []
        self.show_groups((), looking=False)

    def show_groups(self, groups: Sequence[Group], *, looking: bool, stuck: bool = False) -> None:
        """Show sentences, each with its ways out; `stuck` where a way out would be wanted."""
        self.ways = [way for group in groups for way in group.ways]
        emptied(self._column)
        for group in groups:
            for one in group.words:
                self._column.addWidget(Words(one))
            for way in group.ways:
                self._column.addWidget(self._way(way))
        if not groups:
            self._column.addWidget(Words(tr(NOTHING), tone="soft"))
        if looking:
            self._column.addWidget(Words(tr(LOOKING), tone="soft", size="small"))
        elif stuck and not self.ways:
            self._column.addWidget(Words(tr(NO_WAY), tone="soft", size="small"))
        self._column.addStretch(1)

    def _way(self, way: Mapping[str, Any]) -> QWidget:
        card = QWidget()
        column = QVBoxLayout(card)
        column.setContentsMargins(em(self, 1), 0, 0, 6)
        column.setSpacing(4)
        said = str(way.get("sentence", ""))
        column.addWidget(Words(tr("Way out: {words}", words=said)))
        take = button(tr("Plan with it"), says=tr("Plan with it: {words}", words=said))
        take.clicked.connect(partial(self.taken.emit, way))
        column.addWidget(take, alignment=Qt.AlignmentFlag.AlignLeft)
        return card
