"""PDFs and printers: pages to the very edge in their true size, with or without a window."""

from collections.abc import Callable, Sequence
from typing import Final, TypeVar

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QSizeF
from PySide6.QtGui import (
    QFontDatabase,
    QGuiApplication,
    QImage,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
)

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr

DOTS: Final = 1200
"""To the inch, in a PDF."""
MM_PER_INCH: Final = 25.4
_Page = TypeVar("_Page")
PaintPage = Callable[[QPainter, _Page, float], None]
"""Paints one page; the last value is dots of the device to the mm."""


def ensure_gui_app() -> QGuiApplication:
    """Give the running application, else one without a screen: fonts need one.

    A PDF needs no display, and a display that is named but does not answer would end the
    process; so none is asked. Keep what is returned for as long as pages are made.
    """
    running = QGuiApplication.instance()
    if running is None:
        return QGuiApplication(["studio-log", "-platform", "offscreen"])
    if not isinstance(running, QGuiApplication):
        raise Refusal(
            tr(
                "Nothing can be drawn: the program was started without its "
                "drawing part. No file was written; call the command by itself."
            )
        )
    return running


def need_fonts() -> None:
    """Refuse where there is no font: what is drawn would have no words."""
    if not QFontDatabase.families():
        raise Refusal(
            tr(
                "No font was found on this computer, so paper would have no "
                "words. Nothing was printed. Install a font such as DejaVu Sans "
                "and try again."
            )
        )


def page_layout(size: tuple[float, float], title: str) -> QPageLayout:
    """Give a page of a size in mm to its very edge; Portrait, since Landscape swaps its sides."""
    page = QPageSize(
        QSizeF(*size), QPageSize.Unit.Millimeter, title, QPageSize.SizeMatchPolicy.ExactMatch
    )
    nothing = QMarginsF(0, 0, 0, 0)
    return QPageLayout(page, QPageLayout.Orientation.Portrait, nothing, QPageLayout.Unit.Millimeter)


def pdf_of(
    pages: Sequence[_Page], size: tuple[float, float], title: str, paint: PaintPage[_Page]
) -> bytes:
    """Give the PDF of pages of a size in mm."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(DOTS)
    writer.setPageLayout(page_layout(size, title))
    writer.setTitle(title)
    writer.setCreator("Studio Log")
    paint_all(writer, pages, paint, DOTS / MM_PER_INCH)
    buffer.close()
    return bytes(buffer.data().data())


def png_of(image: QImage) -> bytes:
    """Give a picture as a PNG; Refusal where it could not be made."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not image.save(buffer, "PNG"):  # type: ignore[call-overload]
        raise Refusal(tr("There is too little memory for a picture. Nothing was written."))
    return bytes(buffer.data().data())


def paint_all(
    device: QPagedPaintDevice, pages: Sequence[_Page], paint: PaintPage[_Page], per_mm: float
) -> None:
    """Paint page after page; Refusal where the device does not take them."""
    painter = QPainter()
    if not painter.begin(device):
        raise Refusal(
            tr(
                "The printer or file did not take the pages. Nothing was printed. See "
                "that it is on, or save them as a PDF."
            )
        )
    try:
        for number, page in enumerate(pages):
            if number:
                device.newPage()
            paint(painter, page, per_mm)
    finally:
        painter.end()
