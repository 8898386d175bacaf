"""The window “Calculator”: the sums of the trade in a list, the chosen one beside it."""

from typing import Final

from PySide6.QtCore import QSize, Qt, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.calculator.table import CALCULATIONS
from studio_log.ui.calculator.page import CalculationPage
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, scrolled

WIDE: Final = 19
"""Of the list, in line heights; it never takes more than a third."""


class CalculatorBox(QDialog):
    """Keeps what was typed on every page while the window stands."""

    def __init__(self, parent: QWidget | None = None, slug: str = "") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Calculator — Studio Log"))
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Calculations"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.turns = QStackedWidget()
        self.said = Words(tone="soft")
        self.copy = button(tr("Copy as &text"))
        self.close_it = button(tr("C&lose"))
        for one in CALCULATIONS:
            QListWidgetItem(tr(one.title), self.list).setData(Qt.ItemDataRole.UserRole, one.slug)
            self.turns.addWidget(_in_scroll(CalculationPage(one), tr(one.title)))
        self._lay_out()
        self.list.currentRowChanged.connect(self._turn)
        self.copy.clicked.connect(self._copy)
        self.close_it.clicked.connect(self.reject)
        self.choose(slug or CALCULATIONS[0].slug)

    @property
    def page(self) -> CalculationPage:
        """The page that is shown."""
        return self.pages()[self.turns.currentIndex()]

    def pages(self) -> list[CalculationPage]:
        """Every page, in the order of the list."""
        areas = (self.turns.widget(at) for at in range(self.turns.count()))
        found = (area.widget() for area in areas if isinstance(area, QScrollArea))
        return [page for page in found if isinstance(page, CalculationPage)]

    def choose(self, slug: str) -> None:
        """Turn to one calculation."""
        slugs = [one.slug for one in CALCULATIONS]
        self.list.setCurrentRow(slugs.index(slug))

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.list.setFixedWidth(min(em(self, WIDE), self.width() // 3))

    def _lay_out(self) -> None:
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self.list)
        halves.addWidget(self.turns, 1)
        foot = FlowLayout(gap=10)
        for widget in (growing(self.said), self.copy, self.close_it):
            foot.addWidget(widget)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 12, 16, 12)
        whole.addLayout(halves, 1)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 92), em(self, 50)).boundedTo(room))

    @Slot(int)
    def _turn(self, row: int) -> None:
        self.turns.setCurrentIndex(row)
        self.said.setText("")

    @Slot()
    def _copy(self) -> None:
        self.page.copy()
        self.said.setText(tr("Copied. Paste it where it is wanted."))


def _in_scroll(page: QWidget, name: str) -> QScrollArea:
    return scrolled(page, name=name)
