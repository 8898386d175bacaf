"""The shelf as a list, and all about the chosen material below it."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QTextEdit, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.stock import StockLine
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.parts import Words, em

COLUMNS: Final = (
    (tr_later("Material"), 9),
    (tr_later("There"), 4),
    (tr_later("State"), 8),
    (tr_later("Price"), 5),
    (tr_later("Place"), 4),
)
"""Heading, and share of the room that is left over."""
GIVE_WAY: Final = (4, 3, 0, 2)
"""The columns that are cut where it is narrow, the first of them first; how much is there never."""
LEAST: Final = 5
"""Least width of a column that gives way, in letters."""
EMPTY: Final = tr_later(
    "Nothing is in the stock yet. “New material…” takes in the first: soda ash, alum, beans. Steps "
    "that begin then draw on it, and the list of what to buy knows what is there."
)
STATE: Final = 2
CODE: Final = Qt.ItemDataRole.UserRole


class ShelfPage(QWidget):
    """Shows the materials; says which is chosen."""

    chosen = Signal(object)
    """The StockLine chosen, None for none."""

    def __init__(self) -> None:
        super().__init__()
        self._lines: Sequence[StockLine] = ()
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(tr("Materials"))
        self.tree.setHeaderLabels([tr(title) for title, _ in COLUMNS])
        self.tree.setRootIsDecorated(False)
        self.tree.setUniformRowHeights(True)
        self.tree.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.empty = Words(tr(EMPTY), tone="soft")
        self.words = QTextEdit()
        self.words.setReadOnly(True)
        self.words.setTabChangesFocus(True)
        self.words.setFrameShape(QFrame.Shape.NoFrame)
        self.words.setAccessibleName(tr("The chosen material"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(self.empty)
        column.addWidget(self.tree, 3)
        column.addWidget(self.words, 2)
        self.tree.currentItemChanged.connect(self._choose)

    @property
    def line(self) -> StockLine | None:
        """The material chosen."""
        item = self.tree.currentItem()
        code = item.data(0, CODE) if item is not None else None
        return next((one for one in self._lines if one.code == code), None)

    def show_lines(self, lines: Sequence[StockLine], choose: str = "") -> None:
        """Show these, and keep to the chosen one where it is still there."""
        wanted = choose or (self.line.code if self.line else "")
        self._lines = lines
        self.tree.blockSignals(True)
        self.tree.clear()
        for line in lines:
            self.tree.addTopLevelItem(_item(line))
        codes = [line.code for line in lines]
        row = codes.index(wanted) if wanted in codes else 0
        if (item := self.tree.topLevelItem(row)) is not None:
            self.tree.setCurrentItem(item)
        self.tree.blockSignals(False)
        self.empty.setVisible(not lines)
        self.tree.setVisible(bool(lines))
        self._share_out()
        self._choose()

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_out()

    def _share_out(self) -> None:
        """Give every column what it holds; what is left over is shared, what lacks is given up."""
        header = self.tree.header()
        header.setStretchLastSection(True)
        widths = [
            max(self.tree.sizeHintForColumn(at), header.sectionSizeHint(at))
            for at in range(len(COLUMNS))
        ]
        spare = self.tree.viewport().width() - sum(widths)
        whole = sum(share for _, share in COLUMNS)
        if spare > 0:
            widths = [
                width + spare * share // whole
                for width, (_, share) in zip(widths, COLUMNS, strict=True)
            ]
        for at in GIVE_WAY:
            less = min(max(-spare, 0), max(widths[at] - em(self, LEAST), 0))
            widths[at] -= less
            spare += less
        for at, width in enumerate(widths[:-1]):
            self.tree.setColumnWidth(at, width)

    @Slot()
    def _choose(self) -> None:
        line = self.line
        self.words.setVisible(line is not None)
        self.words.setPlainText(_told(line) if line is not None else "")
        self.chosen.emit(line)


def _item(line: StockLine) -> QTreeWidgetItem:
    cells = [line.title, line.left_words, line.state, line.price_words, line.place]
    item = QTreeWidgetItem(cells)
    item.setData(0, CODE, line.code)
    for at, cell in enumerate(cells):
        item.setToolTip(at, cell)
        item.setData(at, Qt.ItemDataRole.AccessibleTextRole, f"{tr(COLUMNS[at][0])}: {cell}")
    if line.is_low or line.left <= 0:
        item.setForeground(STATE, theme().colours.danger_ink)
    return item


def _told(line: StockLine) -> str:
    """Give all about a material: who it is, which lots drew on it, what happened to it."""
    head = [f"{line.code} · {line.title}"]
    head.append(
        " · ".join(filter(None, (line.left_words, line.state, line.price_words, line.place)))
    )
    head.append(tr("Methods call it {name}.", name=line.material))
    if line.batch:
        head.append(tr("Batch {batch}.", batch=line.batch))
    if line.used_by:
        head.append(tr("Drawn on by {lots}.", lots=", ".join(line.used_by)))
    return "\n".join([*head, "", *line.history])
