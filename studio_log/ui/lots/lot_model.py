"""The rows of the lot list as Qt asks for them."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from typing_extensions import override

from studio_log.services.questions import LotLine

Index = QModelIndex | QPersistentModelIndex
LINE_ROLE = int(Qt.ItemDataRole.UserRole) + 1
"""Role under which a row gives its whole LotLine."""


class LotModel(QAbstractListModel):
    """Lot lines in the order given; only rows that changed are painted again."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._lines: list[LotLine] = []

    @property
    def lines(self) -> Sequence[LotLine]:
        """The rows shown now."""
        return self._lines

    def show_lines(self, lines: Sequence[LotLine]) -> None:
        """Show these rows instead."""
        if [line.code for line in lines] == [line.code for line in self._lines]:
            self._update(lines)
            return
        self.beginResetModel()
        self._lines = list(lines)
        self.endResetModel()

    def row_of(self, code: str) -> int:
        """Give the row of a lot, -1 where it is not shown."""
        return next((row for row, line in enumerate(self._lines) if line.code == code), -1)

    @override
    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self._lines)

    @override
    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        if not index.isValid() or index.row() >= len(self._lines):
            return None
        line = self._lines[index.row()]
        if role == LINE_ROLE:
            return line
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{line.code} {line.name}"
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return spoken(line)
        return None

    def _update(self, lines: Sequence[LotLine]) -> None:
        for row, line in enumerate(lines):
            if line != self._lines[row]:
                self._lines[row] = line
                index = self.index(row)
                self.dataChanged.emit(index, index)


def spoken(line: LotLine) -> str:
    """Say a row in one sentence, as a screen reader reads it."""
    done = sum(state in ("done", "skipped") for _kind, state in line.strip)
    steps = f"{done} of {len(line.strip)} steps done" if line.strip else ""
    parts = (f"{line.code} {line.name}", line.doing, line.need, steps)
    return ", ".join(part for part in parts if part)
