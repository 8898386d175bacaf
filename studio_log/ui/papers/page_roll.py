"""The pages of a paper below each other, as wide as there is room: what will come out."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPixmap, QResizeEvent
from PySide6.QtWidgets import QScrollArea, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.paper.setting import Page
from studio_log.ui.papers.painting import PagePainter

_PAPER: Final = QColor(255, 255, 255)
_GAP: Final = 14
_WIDEST: Final = 1100
"""Pixels: on a wide screen a page need not be larger than life."""
_KEPT: Final = 6


class _Roll(QWidget):
    """Paints the pages that are in sight; a page once painted is kept as a picture."""

    def __init__(self) -> None:
        super().__init__()
        self._pages: Sequence[Page] = ()
        self._paint: PagePainter | None = None
        self._made: dict[int, QPixmap] = {}

    def show_pages(self, pages: Sequence[Page], paint: PagePainter | None) -> None:
        self._pages, self._paint = pages, paint
        self._made.clear()
        self.fit(self.width())
        self.update()

    def fit(self, width: int) -> None:
        """Take a width; the height follows from the pages."""
        self._made.clear()
        page = self._page_size(width)
        self.setFixedHeight(max(1, len(self._pages)) * (page.height() + _GAP) + _GAP)

    def _page_size(self, width: int) -> QSize:
        if not self._pages:
            return QSize(width, 0)
        wide, tall = self._pages[0].size
        shown = max(120, min(_WIDEST, width - 2 * _GAP))
        return QSize(shown, round(shown * tall / wide))

    def _place(self, number: int) -> QRect:
        size = self._page_size(self.width())
        left = (self.width() - size.width()) // 2
        return QRect(left, _GAP + number * (size.height() + _GAP), size.width(), size.height())

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        for number in range(len(self._pages)):
            place = self._place(number)
            if place.intersects(event.rect()):
                painter.drawPixmap(place.topLeft(), self._picture(number, place.size()))
                painter.setPen(self.palette().color(QPalette.ColorRole.Mid))
                painter.drawRect(place)
        painter.end()

    def _picture(self, number: int, size: QSize) -> QPixmap:
        made = self._made.get(number)
        if made is None:
            ratio = self.devicePixelRatioF()
            made = QPixmap(size * ratio)
            made.fill(_PAPER)
            painter = QPainter(made)
            page = self._pages[number]
            if self._paint is not None:
                self._paint(painter, page, size.width() * ratio / page.size[0])
            painter.end()
            made.setDevicePixelRatio(ratio)
            while len(self._made) >= _KEPT:
                del self._made[next(iter(self._made))]
            self._made[number] = made
        return made


class PageRoll(QScrollArea):
    """Shows the pages of a paper, scrolled."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._roll = _Roll()
        self.setWidget(self._roll)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(tr("Preview of the pages"))

    def show_pages(self, pages: Sequence[Page], paint: PagePainter | None) -> None:
        """Show these pages; none: an empty room."""
        self._roll.show_pages(pages, paint)
        self.verticalScrollBar().setValue(0)

    def page_rect(self, number: int) -> QRectF:
        """Give where a page lies in the roll, in pixels."""
        return QRectF(self._roll._place(number))  # noqa: SLF001 - one view of two classes

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._roll.fit(self.viewport().width())

    @override
    def sizeHint(self) -> QSize:
        return QSize(760, 620)
