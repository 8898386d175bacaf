"""What a plan does otherwise than the one before: sentences, the weightiest first."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from PySide6.QtWidgets import QVBoxLayout, QWidget

from studio_log.language.words import tr, tr_later
from studio_log.ui.plan.flowing import Flowing
from studio_log.ui.widgets.parts import Tone, Words, emptied, scrolled

NOTHING: Final = tr_later(
    "Nothing to compare with: no lot follows a plan yet, and nothing else is tried."
)
UNCOMPARED: Final = tr_later(
    "This plan was taken before it was compared. Plan again to see what is otherwise."
)
TONES: Final[Mapping[str, Tone]] = {"late": "danger_ink", "stays": "soft", "gone": "danger_ink"}
"""Inks of what is good or bad to hear; the words say it too."""


class OtherwisePage(QWidget):
    """Shows the differences of two plans."""

    def __init__(self) -> None:
        super().__init__()
        inside = Flowing()
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(4, 4, 12, 4)
        self._column.setSpacing(8)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolled(inside, name=tr("What is otherwise")))
        self.show_rows(())

    def show_rows(self, rows: Sequence[Mapping[str, Any]], *, compared: bool = True) -> None:
        """Show differences as the planner's answer has them; False where it was ended before."""
        emptied(self._column)
        for one in rows:
            self._column.addWidget(Words(one["words"], tone=TONES.get(one["kind"], "ink")))
        if not rows:
            self._column.addWidget(Words(tr(NOTHING if compared else UNCOMPARED), tone="soft"))
        self._column.addStretch(1)
