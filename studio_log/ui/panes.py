"""The panes of the window: side by side where there is room, else one at a time."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QPushButton, QSplitter, QWidget
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.ui.theme.look import theme
from studio_log.ui.widgets.flow_layout import FlowLayout
from studio_log.ui.widgets.parts import chip

PAGES: Final = (
    ("lots", tr_later("Lots")),
    ("time", tr_later("Time")),
    ("lot", tr_later("The lot")),
    ("bench", tr_later("Bench")),
)
NARROW: Final = 52
"""Below so many line heights of width the panes take turns."""
MOST_TIME: Final = 0.52
"""The share of the middle that many lots' time may take; the chosen lot has the rest."""
MOST_LOTS: Final = 0.45
"""The share of the width that a table of lots may take."""
LOW: Final = 48
"""Below so many line heights the sheet needs the room of the legend and of the bar that rings."""


class Panes(QSplitter):
    """Lots, time over the chosen lot, bench. The dyer's own widths are kept."""

    turned = Signal(str)
    """The page shown alone, in a narrow window."""
    narrowed = Signal()
    """Whether the panes take turns has changed."""

    def __init__(self, lots: QWidget, time: QWidget, lot: QWidget, bench: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.middle = QSplitter(Qt.Orientation.Vertical)
        self._parts = {"lots": lots, "time": time, "lot": lot, "bench": bench}
        self._page = "lots"
        self._narrow = False
        self._moved = False
        self._middle_moved = False
        self._lots_wish = 0
        self.chips = QButtonGroup(self)
        self.turner = QWidget()
        row = FlowLayout(self.turner, gap=6)
        for at, (slug, words) in enumerate(PAGES):
            chip = self._chip(slug, tr(words))
            self.chips.addButton(chip, at)
            row.addWidget(chip)
        self.turner.hide()
        for part in (time, lot):
            self.middle.addWidget(part)
        for part in (lots, self.middle, bench):
            self.addWidget(part)
        for splitter in (self, self.middle):
            splitter.setChildrenCollapsible(False)
            splitter.setHandleWidth(1)
        self.middle.setSizes([430, 400])
        self.splitterMoved.connect(self._note_moved)
        self.middle.splitterMoved.connect(self._note_middle_moved)
        self.chips.idClicked.connect(self._chosen)

    @property
    def page(self) -> str:
        """The page shown where they take turns."""
        return self._page

    @property
    def narrow(self) -> bool:
        """Whether the panes take turns."""
        return self._narrow

    def go(self, page: str) -> None:
        """Show a page where they take turns; elsewhere all stand there already."""
        self._page = page
        self._show()
        self.turned.emit(page)

    def fit(self) -> None:
        """Take turns or stand side by side, by the width and the size of the text."""
        line = theme().metrics.line
        was, self._narrow = self._narrow, self.width() < NARROW * line
        self._show()
        if self._narrow != was:
            self.narrowed.emit()
        if not self._narrow and not self._moved:
            left = min(max(round(self.width() * 0.228), round(line * 14)), round(line * 21))
            right = min(max(round(self.width() * 0.26), round(line * 16)), round(line * 24))
            others = right + self.middle.minimumSizeHint().width() + 2
            most = min(round(self.width() * MOST_LOTS), self.width() - others)
            left = max(left, min(self._lots_wish, most))
            self.setSizes([left, self.width() - left - right - 2, right])

    def give_lots(self, wide: int) -> None:
        """Give the lots so many pixels of width, within reason; nought for what they had before."""
        self._lots_wish = wide
        self.fit()

    def share(self, time: int) -> None:
        """Give time the height in pixels that it wants, within reason, and the lot the rest."""
        whole = self.middle.height() - self.middle.handleWidth()
        if not (self._narrow or self._middle_moved):
            top = min(time, round(whole * MOST_TIME))
            self.middle.setSizes([top, whole - top])

    def shares(self) -> tuple[tuple[int, ...], tuple[int, ...]]:
        """Give the widths and the heights that were chosen by hand; empty where none were."""
        wide = tuple(self.sizes()) if self._moved and not self._narrow else ()
        high = tuple(self.middle.sizes()) if self._middle_moved and not self._narrow else ()
        return wide, high

    def share_as(self, widths: Sequence[int], heights: Sequence[int]) -> None:
        """Take over what was chosen by hand before; what does not fit is passed over."""
        if len(widths) == self.count() and min(widths) > 0:
            self._moved = True
            self.setSizes(widths)
        if len(heights) == self.middle.count() and min(heights) > 0:
            self._middle_moved = True
            self.middle.setSizes(heights)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    def _chip(self, slug: str, words: str) -> QPushButton:
        return chip(words, says=tr("Go to: {words}", words=words), checked=slug == self._page)

    def _show(self) -> None:
        for slug, part in self._parts.items():
            part.setVisible(not self._narrow or slug == self._page)
        self.middle.setVisible(not self._narrow or self._page in ("time", "lot"))
        for at, (slug, _words) in enumerate(PAGES):
            self.chips.button(at).setChecked(slug == self._page)
        self.turner.setVisible(self._narrow)

    def _chosen(self, at: int) -> None:
        self.go(PAGES[at][0])

    def _note_moved(self) -> None:
        self._moved = True

    def _note_middle_moved(self) -> None:
        self._middle_moved = True
