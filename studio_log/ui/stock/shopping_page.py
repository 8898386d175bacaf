"""What to buy for the days ahead, with why, to take along as text."""

from collections.abc import Sequence
from datetime import timedelta
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QSpinBox,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from studio_log.language.words import tr, tr_later
from studio_log.services.stock import ShoppingLine
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.parts import Words, button, em, roomy

COLUMNS: Final = (tr_later("What"), tr_later("How much"), tr_later("Why"))
NOTHING: Final = tr_later("Nothing is to be bought for these days.")
DAYS: Final = 14
MOST_DAYS: Final = 365


class ShoppingPage(QWidget):
    """Shows the list; asks anew when the days are changed."""

    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._lines: Sequence[ShoppingLine] = ()
        self.days = QSpinBox()
        self.days.setRange(1, MOST_DAYS)
        self.days.setValue(DAYS)
        self.days.setSuffix(tr(" days ahead"))
        self.days.setAccessibleName(tr("How many days ahead"))
        roomy(self.days)
        calm(self.days)
        self.tree = QTreeWidget()
        self.tree.setAccessibleName(tr("What to buy"))
        self.tree.setHeaderLabels([tr(title) for title in COLUMNS])
        self.tree.setRootIsDecorated(False)
        self.tree.setWordWrap(True)
        self.empty = Words(tr(NOTHING), tone="soft")
        self.copy = button(tr("Copy as &text"))
        self.said = Words(tone="soft")
        self._lay_out()
        self.days.valueChanged.connect(lambda _days: self.asked.emit())
        self.copy.clicked.connect(self.copy_text)

    @property
    def within(self) -> timedelta:
        """How far ahead is looked."""
        return timedelta(days=self.days.value())

    def show_lines(self, lines: Sequence[ShoppingLine]) -> None:
        """Show these."""
        self._lines = lines
        self.said.setText("")
        self.tree.clear()
        for line in lines:
            item = QTreeWidgetItem([line.title, line.buy_words, line.why])
            for at in range(len(COLUMNS)):
                item.setToolTip(at, item.text(at))
            self.tree.addTopLevelItem(item)
        for at in range(2):
            self.tree.resizeColumnToContents(at)
            self.tree.setColumnWidth(at, min(self.tree.columnWidth(at), em(self, 16)) + 16)
        self.empty.setVisible(not lines)
        self.tree.setVisible(bool(lines))
        self.copy.setEnabled(bool(lines))

    def copy_text(self) -> str:
        """Put the list on the clipboard, a line each, and give it."""
        text = "".join(f"{line.title}: {line.buy_words} ({line.why})\n" for line in self._lines)
        QGuiApplication.clipboard().setText(text)
        self.said.setText(tr("Copied. Paste it where it is wanted."))
        return text

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        label = QLabel(tr("&For the steps that begin within"))
        label.setBuddy(self.days)
        for widget in (label, self.days):
            head.addWidget(widget)
        head.addStretch(1)
        foot = QHBoxLayout()
        foot.addWidget(self.said, 1)
        foot.addWidget(self.copy, 0, Qt.AlignmentFlag.AlignRight)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addLayout(head)
        column.addWidget(self.empty)
        column.addWidget(self.tree, 1)
        column.addLayout(foot)
        column.addStretch(0)
