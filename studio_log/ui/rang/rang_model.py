"""The rows of “What rang” as Qt asks for them: words are made for what is seen only."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.rang import NOT_NEEDED, OPEN, WAITS, Rang
from studio_log.services.rang_words import (
    answer_words,
    due_words,
    how_words,
    late_words,
    lot_words,
    rang_words,
    tame,
    what_words,
)
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import URGENT_INK, Tone, breakable

Index = QModelIndex | QPersistentModelIndex
ROW_ROLE: Final = int(Qt.ItemDataRole.UserRole) + 1
"""Role under which a cell gives its whole Rang."""


@dataclass(frozen=True)
class Column:
    """One column: its title, its words, their ink, and its share of the width in line heights."""

    title: str
    words: Callable[[Rang, datetime], str]
    wide: float
    tone: Callable[[Rang], Tone] = lambda _row: "ink"


def _rang_tone(row: Rang) -> Tone:
    if not row.rings:
        return "soft"
    return "danger_ink" if late_words(row) and row.quiet_until is None else "ink"


def _answer_tone(row: Rang) -> Tone:
    if row.state == OPEN:
        return URGENT_INK.get(row.urgency, "accent_ink")
    return _ANSWER_TONES.get(row.state, "ink")


_ANSWER_TONES: Final[dict[str, Tone]] = {WAITS: "ochre_ink", NOT_NEEDED: "soft"}
DUE, LOT, WHAT, RANG, HOW, ANSWER = range(6)
COLUMNS: Final = (
    Column(tr_later("Due"), due_words, 7.0),
    Column(tr_later("Lot"), lambda row, _now: lot_words(row), 9.0),
    Column(tr_later("What"), lambda row, _now: what_words(row), 11.0),
    Column(tr_later("Rang"), lambda row, _now: rang_words(row), 9.0, _rang_tone),
    Column(tr_later("How"), lambda row, _now: how_words(row), 9.0, lambda _row: "soft"),
    Column(tr_later("Answer"), lambda row, _now: answer_words(row), 8.0,
           _answer_tone),
)  # fmt: skip


def _ink(row: Rang, column: int) -> QColor:
    return QColor(getattr(theme().colours, COLUMNS[column].tone(row)))


class RangModel(QAbstractTableModel):
    """Reminders in the order given."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: Sequence[Rang] = ()
        self._now: datetime | None = None
        self._narrow = False
        self._roles: dict[int, Callable[[Rang, int], Any]] = {
            Qt.ItemDataRole.DisplayRole: self._shown,
            Qt.ItemDataRole.ToolTipRole: self._spoken,
            Qt.ItemDataRole.AccessibleTextRole: self._spoken,
            Qt.ItemDataRole.ForegroundRole: _ink,
        }

    @property
    def rows(self) -> Sequence[Rang]:
        """The rows shown now."""
        return self._rows

    def show_rows(self, rows: Sequence[Rang], now: datetime) -> None:
        """Show these instead, as seen from `now`."""
        if rows == self._rows and self._now is not None and now.date() == self._now.date():
            return
        self.beginResetModel()
        self._rows, self._now = rows, now
        self.endResetModel()

    def set_narrow(self, *, narrow: bool) -> None:
        """Say the lot with the act, where it has no column of its own."""
        if narrow != self._narrow:
            self._narrow = narrow
            if self._rows:
                last = len(self._rows) - 1
                self.dataChanged.emit(self.index(0, WHAT), self.index(last, WHAT))

    def row_of(self, key: str) -> int:
        """Give the row of a reminder, -1 where it is not shown."""
        return next((at for at, row in enumerate(self._rows) if row.key == key), -1)

    @override
    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    @override
    def columnCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(COLUMNS)

    @override
    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        if orientation is not Qt.Orientation.Horizontal or not 0 <= section < len(COLUMNS):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return tr(COLUMNS[section].title)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        return None

    @override
    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if not index.isValid() or index.row() >= len(self._rows) or self._now is None:
            return None
        row = self._rows[index.row()]
        if role == ROW_ROLE:
            return row
        made = self._roles.get(role)
        return None if made is None else made(row, index.column())

    def _shown(self, row: Rang, column: int) -> str:
        return breakable(self._words(row, column))

    def _spoken(self, row: Rang, column: int) -> str:
        return f"{tr(COLUMNS[column].title)}: {self._words(row, column)}"

    def _words(self, row: Rang, column: int) -> str:
        if self._now is None:
            return ""
        if column == WHAT and self._narrow:
            return tame(row.title)
        return COLUMNS[column].words(row, self._now)
