"""The rows of the lot list as Qt asks for them; only rows near those in sight are kept."""

from collections.abc import Iterable, Sequence
from typing import Any, Final

from PySide6.QtCore import (
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QStringListModel,
    Qt,
    QTimer,
    Signal,
)
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.questions import LotLine

Index = QModelIndex | QPersistentModelIndex
LINE_ROLE = int(Qt.ItemDataRole.UserRole) + 1
"""Role under which a row gives its whole LotLine."""
MOST_KEPT: Final = 300
"""Rows kept; those longest out of sight go first."""
WINDOW: Final = 20
"""Rows asked for at once at most, so that an answer is never long under way."""

MOST_WANTED: Final = 200


class LotModel(QStringListModel):
    """Lots in the order given; a row is asked for when it comes into sight.

    Qt holds the codes and counts them itself: a view that lays out 20,000 rows asks thrice for
    each how many there are.
    """

    rows_wanted = Signal(tuple)
    """Codes of rows in sight that are not known, or known from before a change."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._codes: tuple[str, ...] = ()
        self._rows: dict[str, int] = {}
        self._kept: dict[str, LotLine] = {}
        self._stale: set[str] = set()
        self._wanted: dict[str, None] = {}
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._soon.timeout.connect(self._ask)

    @property
    def lines(self) -> Sequence[LotLine]:
        """The rows that are known now, in order."""
        return [self._kept[code] for code in self._codes if code in self._kept]

    def show_lots(self, codes: Sequence[str], lines: Iterable[LotLine]) -> None:
        """Show these lots instead; rows known from before stay until they are known anew."""
        self._stale |= set(self._kept)
        self._wanted.clear()
        if tuple(codes) == self._codes:
            self.take(lines)
            self.dataChanged.emit(self.index(0), self.index(len(codes) - 1))
            return
        self._codes = tuple(codes)
        self._rows = {code: row for row, code in enumerate(codes)}
        self._keep(lines)
        self.setStringList(self._codes)

    def take(self, lines: Iterable[LotLine]) -> None:
        """Take rows that were asked for."""
        came = tuple(lines)
        changed = [line.code for line in came if self._kept.get(line.code) != line]
        self._keep(came)
        if self._wanted:
            self._soon.start()
        for code in changed:
            if code in self._rows:
                index = self.index(self._rows[code])
                self.dataChanged.emit(index, index)

    def row_of(self, code: str) -> int:
        """Give the row of a lot, -1 where it is not shown."""
        return self._rows.get(code, -1)

    @override
    def flags(self, index: Index) -> Qt.ItemFlag:
        return Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable

    @override
    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:
        if not index.isValid() or index.row() >= len(self._codes):
            return None
        line = self.line_at(index.row())
        if role == LINE_ROLE:
            return line
        if role == Qt.ItemDataRole.DisplayRole:
            return f"{line.code} {line.name}"
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return spoken(line)
        return None

    def line_at(self, row: int) -> LotLine:
        """Give what is known of a row that is there; what is not is asked for."""
        code = self._codes[row]
        kept = self._kept.get(code)
        if kept is None or code in self._stale:
            self._wanted[code] = None
            if not self._soon.isActive():
                self._soon.start()
        return kept or LotLine(code, "…", "", "", "", None, "calm", ())

    def _ask(self) -> None:
        # The last ones asked for are in sight; those before may have been scrolled past.
        wanted = list(self._wanted)[-MOST_WANTED:]
        now, later = wanted[-WINDOW:], wanted[:-WINDOW]
        self._wanted = dict.fromkeys(later)
        if now:
            self.rows_wanted.emit(tuple(now))

    def _keep(self, lines: Iterable[LotLine]) -> None:
        for line in lines:
            self._kept.pop(line.code, None)
            self._kept[line.code] = line
            self._stale.discard(line.code)
        while len(self._kept) > MOST_KEPT:
            gone = next(iter(self._kept))
            del self._kept[gone]
            self._stale.discard(gone)


def spoken(line: LotLine) -> str:
    """Say a row in one sentence, as a screen reader reads it."""
    done = sum(state in ("done", "skipped") for _kind, state in line.strip)
    of = len(line.strip)
    steps = tr("{n} of {of} steps done", n=done, of=of) if line.strip else ""
    parts = (f"{line.code} {line.name}", line.doing, line.need, steps)
    return ", ".join(part for part in parts if part)
