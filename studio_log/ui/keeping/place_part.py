"""A place that was chosen on this laptop: which it is, how it fares, choosing and giving it up."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtWidgets import QFileDialog, QPushButton, QVBoxLayout, QWidget

from studio_log.language.words import tr
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import Words, button

Pick = Callable[[QWidget], str]
"""Lets the dyer point at a place; "" where none was chosen."""


@dataclass(frozen=True)
class Way:
    """A button that chooses: its words, and how the place is pointed at."""

    words: str
    pick: Pick


class PlacePart(QWidget):
    """Shows one place; `chosen` is called with a path, or "" to give it up."""

    def __init__(
        self, heading: str, advice: str, ways: Sequence[Way], chosen: Callable[[str], None]
    ) -> None:
        super().__init__()
        self._chosen = chosen
        self.where = Words()
        self.fares = Words(tone="soft")
        self.fault = Words(tone="danger_ink")
        self.choose: list[QPushButton] = []
        self.drop = button(tr("&Give it up"), says=tr("Give up: {what}", what=heading))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(Words(heading, size="large", bold=True))
        column.addWidget(Words(advice, tone="soft"))
        for words in (self.where, self.fares, self.fault):
            column.addWidget(words)
        line = FlowLayout(gap=8)
        for way in ways:
            made = button(way.words)
            made.clicked.connect(partial(self._pick, way.pick))
            self.choose.append(made)
            line.addWidget(made)
        line.addWidget(self.drop)
        column.addLayout(line)
        self.drop.clicked.connect(self._drop)

    def show_place(self, where: str, fares: str, fault: str) -> None:
        """Show what is chosen; "" where nothing is."""
        self.where.show_words(where or tr("Nothing is chosen yet."))
        self.where.set_tone("ink" if where else "soft")
        self.fares.show_words(fares if where else "")
        self.fault.show_words(fault if where else "")
        self.drop.setVisible(bool(where))

    def _pick(self, pick: Pick) -> None:
        if where := pick(self):
            self._chosen(where)

    def _drop(self) -> None:
        self._chosen("")


def folder_of(words: str) -> Pick:
    """Give a way to point at a folder."""
    return lambda parent: QFileDialog.getExistingDirectory(parent, words)


def file_to_write(words: str, name: str, kinds: str) -> Pick:
    """Give a way to point at a file to write; whether it is replaced is asked there."""
    return lambda parent: QFileDialog.getSaveFileName(parent, words, name, kinds)[0]


def file_to_read(words: str, kinds: str) -> Pick:
    """Give a way to point at a file that is there."""
    return lambda parent: QFileDialog.getOpenFileName(parent, words, "", kinds)[0]
