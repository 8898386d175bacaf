"""A window with the list of kept things at its left, the chosen one beside it."""

from collections.abc import Sequence
from typing import Any, Final

from PySide6.QtCore import QRect, QSize, Qt, QTimer, Slot
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.services.questions import Question
from studio_log.ui.bridge import Bridge
from studio_log.ui.kept.kept_box import KeptBox, PageT
from studio_log.ui.widgets.parts import Words, button, em, scrolled

STALE_MS: Final = 60_000
CODE: Final = Qt.ItemDataRole.UserRole


class ListedBox(KeptBox[PageT]):
    """Keeps list and page in step; a window says what is asked and how a line reads."""

    name: str
    """Of the list as it is read aloud; this and the others are in English."""
    new_words: str
    ended_words: str
    view_name: str
    nothing: str
    """What stands where the list is empty."""
    wide: int = 20
    """Of the list, in line heights; it never takes more than a third."""

    def __init__(self, bridge: Bridge, parent: QWidget | None, code: str) -> None:
        super().__init__(bridge, parent, code)
        self.list = QListWidget()
        self.list.setAccessibleName(tr(self.name))
        self.list.setWordWrap(True)
        self.list.setTextElideMode(Qt.TextElideMode.ElideNone)
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.new = button(tr(self.new_words), kind="primary")
        self.ended_too = QCheckBox(tr(self.ended_words))
        self.empty = Words(tr(self.nothing), tone="soft")
        self._pages, self._side = QStackedWidget(), QWidget()
        self._stale = QTimer(self, interval=STALE_MS)
        self.list.currentRowChanged.connect(self._turned)
        self.ended_too.toggled.connect(self.refresh)
        self._stale.timeout.connect(self.refresh)

    def list_question(self) -> Question:
        """Give what is asked for the list; answered with lines that have a `code`."""
        raise NotImplementedError

    def page_question(self, code: str) -> Question:
        """Give what is asked for the chosen one."""
        raise NotImplementedError

    def line_words(self, line: Any) -> str:
        """Give how one line of the list reads."""
        raise NotImplementedError

    def show_page(self, page: PageT) -> None:
        """Show the chosen one."""
        raise NotImplementedError

    @property
    @override
    def code(self) -> str:
        item = self.list.currentItem()
        return "" if self.list.currentRow() < 0 else str(item.data(CODE))

    @Slot()
    @override
    def refresh(self) -> None:
        self._bridge.ask(self.list_question(), self._show_list)

    @override
    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._stale.start()
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._side.setFixedWidth(min(em(self, self.wide), self.width() // 3))
        self._fit_lines()

    def lay_out_halves(self, view: QWidget, size: QSize) -> None:
        """Set list and page side by side; a window `size` em large at first."""
        side = QVBoxLayout(self._side)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(8)
        for widget in (self.new, self.list, self.ended_too):
            side.addWidget(widget)
        blank = QWidget()
        column = QVBoxLayout(blank)
        column.setContentsMargins(8, 8, 8, 8)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._pages.addWidget(blank)
        self._pages.addWidget(scrolled(view, name=tr(self.view_name)))
        halves = QHBoxLayout()
        halves.setSpacing(12)
        halves.addWidget(self._side)
        halves.addWidget(self._pages, 1)
        self.lay_out([halves], size)

    def _show_list(self, lines: Sequence[Any]) -> None:
        wanted = self._wanted or self.code
        codes = [one.code for one in lines]
        if self._wanted and self._wanted not in codes and not self.ended_too.isChecked():
            self.ended_too.setChecked(True)  # asks again, with those that are over
            return
        self._wanted = ""
        self.list.blockSignals(True)
        self.list.clear()
        for one in lines:
            item = QListWidgetItem(self.line_words(one), self.list)
            item.setData(CODE, one.code)
        if codes:
            self.list.setCurrentRow(codes.index(wanted) if wanted in codes else 0)
        self.list.blockSignals(False)
        self._fit_lines()
        if codes:
            self._turned()
        else:
            self.page = None
            self._pages.setCurrentIndex(0)
            self._offer_back()

    def _fit_lines(self) -> None:
        """Make each line of the list as high as its words need: a list view cuts the last ones."""
        room = QRect(0, 0, self._side.width() - em(self, 2), 10_000)
        metrics, wrap = self.list.fontMetrics(), int(Qt.TextFlag.TextWordWrap)
        for row in range(self.list.count()):
            item = self.list.item(row)
            high = metrics.boundingRect(room, wrap, item.text()).height()
            item.setSizeHint(QSize(room.width() // 2, high + em(self, 1)))

    @Slot()
    def _turned(self) -> None:
        if self.code:
            question = self.page_question(self.code)
            self._bridge.ask(question, self._show_page, failed=self.message.refuse)

    def _show_page(self, page: PageT) -> None:
        if page.line.code != self.code:
            return  # another one has been chosen since
        self.page = page
        self.show_page(page)
        self._pages.setCurrentIndex(1)
        self._offer_back()
