"""A page of tags as it will come out, fitted to the room there is."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.tag_layout import PlacedTag
from studio_log.present.tag_stock import Place, TagStock
from studio_log.ui.tags.pdf import paint_page

_PAPER = QColor(255, 255, 255)
_ROOM = 12


class TagPreview(QWidget):
    """Shows one page; paper is white and ink black in the light and in the dark."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._places: Sequence[Place] = ()
        self._tags: Sequence[PlacedTag] = ()
        self._stock: TagStock | None = None
        self.setAccessibleName(tr("Preview of the tags"))

    def show_page(
        self, places: Sequence[Place], tags: Sequence[PlacedTag], stock: TagStock | None
    ) -> None:
        """Show these tags; no stock: an empty room."""
        self._places, self._tags, self._stock = places, tags, stock
        self.update()

    def page_rect(self) -> QRectF:
        """Give where the page lies in the widget, in its own pixels."""
        if self._stock is None:
            return QRectF()
        width, height = self._stock.page
        room = self.rect().adjusted(_ROOM, _ROOM, -_ROOM, -_ROOM)
        scale = max(0.1, min(room.width() / width, room.height() / height))
        page = QRectF(0, 0, width * scale, height * scale)
        page.moveCenter(QRectF(self.rect()).center())
        return page

    @override
    def sizeHint(self) -> QSize:
        return QSize(520, 380)

    @override
    def minimumSizeHint(self) -> QSize:
        return QSize(280, 200)

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        if self._stock is None:
            return
        page = self.page_rect()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(QPalette.ColorRole.Mid), 1))
        painter.setBrush(_PAPER)
        painter.drawRect(page)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setClipRect(page)
        painter.translate(page.topLeft())
        scale = page.width() / self._stock.page[0]
        paint_page(painter, self._places, self._tags, self._stock, scale)
        painter.end()
