"""Tags to a printer. Loaded only when one is asked for: it brings the print system in."""

from collections.abc import Sequence

from PySide6.QtGui import QPainter
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr
from studio_log.present.tag_stock import TagStock, pages_of
from studio_log.ui.tags.pdf import MM_PER_INCH, lay_out_tags, page_layout, paint_page

_STRAY = 1.0
"""How far, in mm, a printer's idea of the page may differ: whole points and its own steps."""


def any_printer() -> bool:
    """Say whether a printer is set up; without one, Qt would quietly write a PDF instead."""
    return bool(QPrinterInfo.availablePrinters())


def choose_printer(parent: QWidget, stock: TagStock) -> QPrinter | None:
    """Let the person choose by the system's dialog; None where they change their mind."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(page_layout(stock))
    dialog = QPrintDialog(printer, parent)
    chosen = dialog.exec() == QDialog.DialogCode.Accepted
    dialog.deleteLater()
    return printer if chosen else None


def print_tags(
    printer: QPrinter, tags: Sequence[TagFacts], stock: TagStock, *, start_at: int = 1
) -> None:
    """Print tags in their true size; Refusal where the printer cannot take the page."""
    placed = lay_out_tags(tags, stock)
    pages = pages_of(len(placed), stock, start_at)
    printer.setFullPage(True)
    printer.setPageLayout(page_layout(stock))
    _check_page(printer, stock)
    painter = QPainter()
    if not painter.begin(printer):
        raise Refusal(
            tr(
                "The printer did not take the tags. Nothing was printed. See "
                "that it is on, or save the tags as a PDF."
            )
        )
    try:
        for number, places in enumerate(pages):
            if number:
                printer.newPage()
            paint_page(painter, places, placed, stock, printer.resolution() / MM_PER_INCH)
    finally:
        painter.end()


def _check_page(printer: QPrinter, stock: TagStock) -> None:
    """Refuse when the printer swapped the page for one of its own."""
    page = printer.paperRect(QPrinter.Unit.Millimeter)
    if abs(page.width() - stock.page[0]) > _STRAY or abs(page.height() - stock.page[1]) > _STRAY:
        raise Refusal(
            tr(
                "This printer has no page of {wide:g} × {high:g} mm; it offered "
                "{width:.0f} × {height:.0f} mm. Nothing was printed. Choose a "
                "sheet that it takes, or save the tags as a PDF.",
                wide=stock.page[0],
                high=stock.page[1],
                width=page.width(),
                height=page.height(),
            )
        )
