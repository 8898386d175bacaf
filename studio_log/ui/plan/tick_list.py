"""A list of lots, each with a tick."""

from collections.abc import Collection, Iterable
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget, QListWidgetItem

CODE: Final = Qt.ItemDataRole.UserRole


class TickList(QListWidget):
    """Shows words and knows the codes behind them."""

    def __init__(self, says: str) -> None:
        """Name it for screen readers."""
        super().__init__()
        self.setAccessibleName(says)
        self.setWordWrap(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def show_lots(self, lots: Iterable[tuple[str, str]], ticked: Collection[str]) -> None:
        """Show other lots, as codes and words; those with a code of `ticked` have their tick."""
        self.clear()
        for code, words in lots:
            item = QListWidgetItem(words)
            item.setData(CODE, code)
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            state = Qt.CheckState.Checked if code in ticked else Qt.CheckState.Unchecked
            item.setCheckState(state)
            self.addItem(item)

    @property
    def ticked(self) -> tuple[str, ...]:
        """The codes of the lots that are ticked, in order."""
        items = (self.item(row) for row in range(self.count()))
        return tuple(
            str(one.data(CODE)) for one in items if one.checkState() is Qt.CheckState.Checked
        )
