"""A method's page to a printer. Loaded only when asked for: it brings the print system in."""

from collections.abc import Callable

from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QWidget

from studio_log.language.words import tr, tr_later
from studio_log.services.method_page import MethodPage
from studio_log.ui.ink.printing import any_printer, print_by_dialog
from studio_log.ui.methods.paper import paint_pages, paper_layout, paper_title

NO_PRINTER = tr_later(
    "No printer is set up on this computer. Nothing was printed; save the page as a PDF."
)


def print_page(parent: QWidget, page: MethodPage, said: Callable[[str], None]) -> None:
    """Open the system's print dialog beside the window; `said` is told how it went."""
    if not any_printer():
        said(tr(NO_PRINTER))
        return

    def paint(printer: QPrinter) -> str:
        paint_pages(printer, page)
        name = printer.printerName()
        return tr("{title} is sent to {printer}.", title=page.title, printer=name)

    print_by_dialog(parent, paper_layout(), paper_title(page), paint, said)
