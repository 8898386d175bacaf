"""A method's page on paper: the same words and drawing, dark on white, page by page."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QRectF, QSizeF, QUrl
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QColor,
    QFont,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPalette,
    QPdfWriter,
    QTextDocument,
)

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.services.method_page import MethodPage
from studio_log.services.whole_file import write_whole
from studio_log.ui.methods.drawing import drawing
from studio_log.ui.methods.page_html import DRAWING, page_html
from studio_log.ui.theme.state import Theme

DOTS: Final = 600
WIDE: Final = 660.0
"""Width of the text in the document's own pixels; paper of any width scales it."""
LETTERS: Final = 10.0
"""Size of the text in points on A4."""
INK: Final = QColor("#000000")
STEP_LEVEL: Final = 4
"""Level of the headings of steps."""
MARGIN: Final = 18.0
"""Millimetres on every side."""
FOOT: Final = 26.0
"""Height of the line at the foot, in the document's pixels."""


def paper_layout() -> QPageLayout:
    """Give an upright A4 page with its margins."""
    margins = QMarginsF(MARGIN, MARGIN, MARGIN, MARGIN)
    size = QPageSize(QPageSize.PageSizeId.A4)
    return QPageLayout(size, QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)


def paper_title(page: MethodPage) -> str:
    """Say which method and which version it is."""
    return tr("{title}, version {n}", title=page.title, n=page.version)


def pdf_bytes(page: MethodPage) -> bytes:
    """Give the page as a PDF, its words as letters and not as dots."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(DOTS)
    writer.setPageLayout(paper_layout())
    writer.setTitle(paper_title(page))
    writer.setCreator("Studio Log")
    paint_pages(writer, page)
    buffer.close()
    return bytes(buffer.data().data())


def write_pdf(path: Path, page: MethodPage) -> None:
    """Write the PDF, wholly or not at all; Refusal where it cannot be written."""
    write_whole(path, pdf_bytes(page))


def paint_pages(device: QPagedPaintDevice, page: MethodPage) -> None:
    """Paint the page on paper, a line with name and number at each foot; Refusal if refused."""
    painter = QPainter()
    if not painter.begin(device):
        raise Refusal(
            tr(
                "The printer did not take the page. Nothing was printed. "
                "See that it is on, or save the page as a PDF."
            )
        )
    try:
        area = painter.viewport()
        scale = area.width() / WIDE
        tall = area.height() / scale - FOOT
        document = paper_document(page, tall)
        painter.scale(scale, scale)
        count = document.pageCount()
        for number in range(count):
            if number:
                device.newPage()
            _paint_one(painter, document, number, tall)
            place = tr("page {n} of {count}", n=number + 1, count=count)
            said = f"{paper_title(page)} · {place}"
            painter.setPen(INK)
            painter.setFont(document.defaultFont())
            painter.drawText(QRectF(0, tall + 6, WIDE, FOOT - 6), said)
    finally:
        painter.end()


def paper_document(page: MethodPage, tall: float) -> QTextDocument:
    """Give the document in pages of `WIDE` by `tall`, in the light colours; no step is torn."""
    font = QFont()
    font.setPixelSize(round(LETTERS * 96 / 72))
    look = Theme("light", _pointed(font))
    picture = drawing(page.drawn, round(WIDE) - 8, ratio=4.0, look=look)
    breaks: frozenset[int] = frozenset()
    while True:
        document = QTextDocument()
        document.setDocumentMargin(0)
        document.setDefaultFont(font)
        image = QTextDocument.ResourceType.ImageResource.value
        document.addResource(image, QUrl(DRAWING), picture)
        document.setHtml(page_html(page, look, breaks))
        document.setPageSize(QSizeF(WIDE, tall))
        torn = _first_torn(document, tall, breaks)
        if torn is None:
            return document
        breaks |= {torn}


def _first_torn(document: QTextDocument, tall: float, breaks: frozenset[int]) -> int | None:
    """Give the number of the first step that lies on two pages and would fit on one."""
    layout, step = document.documentLayout(), 0
    lies: dict[int, QRectF] = {}
    block = document.begin()
    while block.isValid():
        level = block.blockFormat().headingLevel()
        step += level == STEP_LEVEL
        if step and level not in (0, STEP_LEVEL):
            break  # what comes after the last step
        lies[step] = lies.get(step, QRectF()).united(layout.blockBoundingRect(block))
        block = block.next()
    for number, place in lies.items():
        torn = int(place.top() // tall) != int((place.bottom() - 1) // tall)
        if number and torn and place.height() < tall and number not in breaks:
            return number
    return None


def _pointed(font: QFont) -> QFont:
    made = QFont(font)
    made.setPointSizeF(LETTERS)
    return made


def _paint_one(painter: QPainter, document: QTextDocument, number: int, tall: float) -> None:
    painter.save()
    top = number * tall
    painter.translate(0, -top)
    view = QRectF(0, top, WIDE, tall)
    painter.setClipRect(view)
    context = QAbstractTextDocumentLayout.PaintContext()
    context.clip = view
    context.palette.setColor(QPalette.ColorRole.Text, INK)  # the window may be dark
    document.documentLayout().draw(painter, context)
    painter.restore()
