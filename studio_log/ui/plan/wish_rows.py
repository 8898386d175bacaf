"""A headed list of wishes: each in words, with what can be done to it."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.ui.widgets.parts import Words, button, emptied


class WishRows(QWidget):
    """Shows wishes under a heading, and a button that adds one."""

    added = Signal()
    changed = Signal(int)
    removed = Signal(int)

    def __init__(self, heading: str, add: str, empty: str, *, change: bool = False) -> None:
        super().__init__()
        self._empty, self._change = empty, change
        self.add = button(add)
        self._rows = QVBoxLayout()
        self._rows.setSpacing(6)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(Words(heading, bold=True))
        column.addLayout(self._rows)
        line = QHBoxLayout()
        line.addWidget(self.add)
        line.addStretch(1)
        column.addLayout(line)
        self.add.clicked.connect(self.added)
        self.show_rows(())

    def show_rows(self, rows: Sequence[str]) -> None:
        """Show wishes as words; each can be taken out."""
        emptied(self._rows)
        if not rows:
            self._rows.addWidget(Words(self._empty, tone="soft", size="small"))
        for number, words in enumerate(rows):
            self._rows.addWidget(self._row(number, words))

    def _row(self, number: int, words: str) -> QWidget:
        row = QWidget()
        column = QVBoxLayout(row)
        column.setContentsMargins(0, 0, 0, 4)
        column.setSpacing(2)
        column.addWidget(Words(words, size="small"))
        acts = QHBoxLayout()
        acts.setSpacing(4)
        if self._change:
            change = button(tr("Change…"), kind="quiet", says=tr("Change: {words}", words=words))
            change.clicked.connect(partial(self.changed.emit, number))
            acts.addWidget(change)
        out = button(tr("Take out"), kind="quiet", says=tr("Take out: {words}", words=words))
        out.clicked.connect(partial(self.removed.emit, number))
        acts.addWidget(out)
        acts.addStretch(1)
        column.addLayout(acts)
        return row
