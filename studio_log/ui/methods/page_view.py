"""One method's page, with its drawing as wide as the page."""

from PySide6.QtCore import QTimer, QUrl
from PySide6.QtGui import QResizeEvent, QTextDocument
from PySide6.QtWidgets import QTextBrowser, QWidget
from typing_extensions import override

from studio_log.language.words import tr
from studio_log.present.method_drawing import whole_hours
from studio_log.services.method_page import MethodPage
from studio_log.ui.methods.drawing import drawing
from studio_log.ui.methods.page_html import DRAWING, page_html
from studio_log.ui.widgets.parts import em

RESIZED_MS = 40


class PageView(QTextBrowser):
    """Shows a page; words can be chosen and copied, links are not followed."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setOpenLinks(False)
        self.setMinimumWidth(em(self, 16))
        self.page: MethodPage | None = None
        self._hours: float | None = None
        self._soon = QTimer(self, singleShot=True, interval=RESIZED_MS)
        self._soon.timeout.connect(self._draw)

    def show_page(self, page: MethodPage, hours: float | None = None) -> None:
        """Show a page; `hours` is the scale where it is compared with another."""
        same = self.page is not None and self.page.slug == page.slug
        place = self.verticalScrollBar().value() if same else 0
        self.page, self._hours = page, hours
        self.setAccessibleName(tr("Method: {title}", title=page.title))
        self._draw()
        self.verticalScrollBar().setValue(place)

    def hours(self) -> float:
        """Give how long the page's drawing is by itself, in hours."""
        return whole_hours(self.page.drawn) if self.page is not None else 0.0

    def _draw(self) -> None:
        if self.page is None:
            return
        place = self.verticalScrollBar().value()
        room = self.viewport().width() - round(2 * self.document().documentMargin()) - 4
        picture = drawing(
            self.page.drawn, max(room, 120), hours=self._hours, ratio=self.devicePixelRatioF()
        )
        self.document().clear()
        self.document().addResource(
            QTextDocument.ResourceType.ImageResource.value, QUrl(DRAWING), picture
        )
        self.setHtml(page_html(self.page))
        self.verticalScrollBar().setValue(place)

    @override
    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._soon.start()
