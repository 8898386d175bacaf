"""A method's page to a printer. Loaded only when asked for: it brings the print system in."""

from collections.abc import Callable

from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.method_page import MethodPage
from studio_log.ui.methods.paper import paint_pages, paper_layout, paper_title

NO_PRINTER = tr_later(
    "No printer is set up on this computer. Nothing was printed; save the page as a PDF."
)


def any_printer() -> bool:
    """Say whether a printer is set up; without one, Qt would quietly write a PDF instead."""
    return bool(QPrinterInfo.availablePrinters())


def print_page(parent: QWidget, page: MethodPage, said: Callable[[str], None]) -> None:
    """Open the system's print dialog beside the window; `said` is told how it went."""
    if not any_printer():
        said(tr(NO_PRINTER))
        return
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(paper_layout())
    printer.setDocName(paper_title(page))
    dialog = QPrintDialog(printer, parent)

    def accepted() -> None:
        try:
            paint_pages(printer, page)
        except Refusal as refusal:
            said(str(refusal))
        else:
            name = printer.printerName()
            said(tr("{title} is sent to {printer}.", title=page.title, printer=name))

    dialog.accepted.connect(accepted)
    dialog.finished.connect(dialog.deleteLater)
    QDialog.open(dialog)
