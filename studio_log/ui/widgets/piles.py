"""Two piles of pieces: drag them across, or move them by key."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QItemSelectionModel, Qt, Signal
from PySide6.QtGui import QDropEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.number_text import plain
from studio_log.domain.pieces import Piece
from studio_log.language.words import tr, tr_later
from studio_log.ui.widgets.parts import Words, button, em
from studio_log.ui.widgets.wrapped_items import fit_item

NUMBER: Final = int(Qt.ItemDataRole.UserRole)
LINES: Final = 7
"""So many line heights of a pile are seen at least; more pieces scroll."""
HOW: Final = tr_later(
    "Drag pieces across, or choose them and press Enter or the arrow towards the other pile."
)


def piece_words(piece: Piece) -> str:
    """Say a piece in one line: "2: linen runner, 1.8 × 0.45 m, 150 g"."""
    size = ""
    if piece.length_m is not None and piece.width_m is not None:
        size = f", {plain(piece.length_m, 2)} × {plain(piece.width_m, 2)} m"
    weight = f", {plain(piece.grams, 0)} g" if piece.grams is not None else ""
    return f"{piece.number}: {piece.title}{size}{weight}"


class _Pile(QListWidget):
    """One pile, kept in order of number; takes pieces from the other one only."""

    sent = Signal()
    """What is chosen here is to go over."""

    def __init__(self, name: str, over: Qt.Key) -> None:
        super().__init__()
        self.other: _Pile | None = None
        self._over = over
        self.setAccessibleName(name)
        self.setAccessibleDescription(tr(HOW))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragDrop)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setWordWrap(True)
        self.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.setDropIndicatorShown(False)
        self.setMinimumWidth(em(self, 9))
        self.setMinimumHeight(em(self, LINES))
        self.itemDoubleClicked.connect(self._send)

    @property
    def numbers(self) -> tuple[int, ...]:
        """Numbers of the pieces in it, in order."""
        return tuple(self._number(row) for row in range(self.count()))

    def put(self, number: int, words: str) -> QListWidgetItem:
        """Lay a piece in its place."""
        item = QListWidgetItem(words)
        item.setData(NUMBER, number)
        row = next((row for row in range(self.count()) if self._number(row) > number), self.count())
        self.insertItem(row, item)
        fit_item(self, item)
        return item

    @override
    def dropEvent(self, event: QDropEvent) -> None:
        other = self.other
        if other is None or event.source() is not other:
            event.ignore()
            return
        # The piece is moved here and now: a drag that ends as a move (with Shift) would take
        # whatever is chosen by then away from the pile it came from.
        event.setDropAction(Qt.DropAction.CopyAction)
        event.accept()
        other.sent.emit()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        for row in range(self.count()):
            fit_item(self, self.item(row))

    @override
    def keyPressEvent(self, event: QKeyEvent) -> None:
        keys = (Qt.Key.Key_Return, Qt.Key.Key_Enter, self._over)
        if Qt.Key(event.key()) in keys and self.selectedItems():
            self.sent.emit()
            return
        super().keyPressEvent(event)

    def _send(self, _item: QListWidgetItem) -> None:
        self.sent.emit()

    def _number(self, row: int) -> int:
        return int(self.item(row).data(NUMBER))


class Piles(QWidget):
    """What stays at the left, what leaves at the right."""

    changed = Signal()

    def __init__(self, pieces: Sequence[Piece]) -> None:
        super().__init__()
        self._pieces = {piece.number: piece_words(piece) for piece in pieces}
        self.stays = _Pile(tr("Pieces that stay"), Qt.Key.Key_Right)
        self.leaves = _Pile(tr("Pieces that leave"), Qt.Key.Key_Left)
        self.stays.other, self.leaves.other = self.leaves, self.stays
        self.stay_words, self.leave_words = Words(bold=True), Words(bold=True)
        self.over = button(tr("&Leave →"), says=tr("The chosen pieces leave"))
        self.back = button(tr("← Sta&y"), says=tr("The chosen pieces stay"))
        for number, words in self._pieces.items():
            self.stays.put(number, words)
        columns = QHBoxLayout()
        columns.setSpacing(10)
        columns.addLayout(_column(self.stay_words, self.stays, self.over), 1)
        columns.addLayout(_column(self.leave_words, self.leaves, self.back), 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addLayout(columns)
        whole.addWidget(Words(tr(HOW), tone="soft", size="small"))
        for pile, act in ((self.stays, self.over), (self.leaves, self.back)):
            pile.sent.connect(self._sent)
            pile.itemSelectionChanged.connect(self._tell)
            act.clicked.connect(pile.sent)
        self.setFocusProxy(self.stays)
        self.stays.setCurrentRow(0, QItemSelectionModel.SelectionFlag.Current)
        self._tell()

    @property
    def leaving(self) -> tuple[int, ...]:
        """Numbers of the pieces that leave."""
        return self.leaves.numbers

    def carry(self, numbers: Sequence[int], *, leave: bool) -> None:
        """Lay pieces on the other pile and keep them chosen there."""
        source, target = (self.stays, self.leaves) if leave else (self.leaves, self.stays)
        target.clearSelection()
        for number in numbers:
            row = source.numbers.index(number)
            source.takeItem(row)
            target.put(number, self._pieces[number]).setSelected(True)
        self._tell()
        self.changed.emit()

    def _sent(self) -> None:
        source = self.sender()
        pile = self.stays if source is self.stays else self.leaves
        chosen = [int(item.data(NUMBER)) for item in pile.selectedItems()]
        if not chosen:
            return
        row = pile.currentRow()
        self.carry(sorted(chosen), leave=pile is self.stays)
        # The keyboard stays on the pile it was on, so that the next piece can follow.
        pile.setCurrentRow(min(row, pile.count() - 1))

    def _tell(self) -> None:
        self.stay_words.setText(tr("Stay ({n})", n=self.stays.count()))
        self.leave_words.setText(tr("Leave ({n})", n=self.leaves.count()))
        self.over.setEnabled(bool(self.stays.selectedItems()))
        self.back.setEnabled(bool(self.leaves.selectedItems()))


def _column(*widgets: QWidget) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(4)
    for widget in widgets:
        column.addWidget(widget)
    return column
