"""Tags to a printer. Loaded only when one is asked for: it brings the print system in."""

from collections.abc import Sequence

from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QDialog, QWidget

from studio_log.domain.tags import TagFacts
from studio_log.present.tag_stock import TagStock, pages_of
from studio_log.ui.ink.device import MM_PER_INCH, page_layout, paint_all
from studio_log.ui.ink.printing import any_printer, hold_to_size
from studio_log.ui.tags.pdf import cut_to_fit, lay_out_tags, page_painter

__all__ = ["any_printer", "choose_printer", "print_tags"]


def choose_printer(parent: QWidget, stock: TagStock, wanted: str = "") -> QPrinter | None:
    """Let the person choose by the system's dialog; None where they change their mind.

    `wanted` names the printer that is offered first, where it is there.
    """
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    if wanted in QPrinterInfo.availablePrinterNames():
        printer.setPrinterName(wanted)
    printer.setPageLayout(page_layout(stock.page, stock.title))
    dialog = QPrintDialog(printer, parent)
    chosen = dialog.exec() == QDialog.DialogCode.Accepted
    dialog.deleteLater()
    return printer if chosen else None


def print_tags(
    printer: QPrinter, tags: Sequence[TagFacts], stock: TagStock, *, start_at: int = 1
) -> None:
    """Print tags in their true size; Refusal where the printer cannot take the page."""
    stock = cut_to_fit(tags, stock)
    placed = lay_out_tags(tags, stock)
    pages = pages_of(len(placed), stock, start_at)
    hold_to_size(printer, stock.page, stock.title)
    paint_all(printer, pages, page_painter(placed, stock), printer.resolution() / MM_PER_INCH)
