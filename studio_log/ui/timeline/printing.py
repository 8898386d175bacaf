"""The sheet to a printer. Loaded only when asked for: it brings the print system in."""

from collections.abc import Callable

from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QGuiApplication, QPageLayout, QPageSize
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.ui.theme import theme
from studio_log.ui.timeline.paper import Stretch, light_of, print_on

NO_PRINTER = tr_later(
    "No printer is set up on this computer. Nothing was printed; save the steps as a picture."
)
_MARGIN = 12.0
"""Millimetres on every side."""


def any_printer() -> bool:
    """Say whether a printer is set up; without one, Qt would quietly write a PDF instead."""
    return bool(QPrinterInfo.availablePrinters())


def sheet_layout() -> QPageLayout:
    """Give A4 lying on its side, with margins; the dialog may choose another paper."""
    margins = QMarginsF(_MARGIN, _MARGIN, _MARGIN, _MARGIN)
    size = QPageSize(QPageSize.PageSizeId.A4)
    lying = QPageLayout.Orientation.Landscape
    return QPageLayout(size, lying, margins, QPageLayout.Unit.Millimeter)


def dots() -> int:
    """Give the screen's dots an inch: counted so, text on paper has the size it is laid out for."""
    return round(QGuiApplication.primaryScreen().logicalDotsPerInchX())


def print_stretch(parent: QWidget, stretch: Stretch, said: Callable[[str], None]) -> None:
    """Open the system's print dialog beside the window; `said` is told how it went."""
    if not any_printer():
        raise Refusal(tr(NO_PRINTER))
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(sheet_layout())
    printer.setDocName(stretch.title)
    dialog = QPrintDialog(printer, parent)

    def accepted() -> None:
        printer.setResolution(dots())
        try:
            pages = print_on(printer, stretch, light_of(theme()))
        except Refusal as refusal:
            said(str(refusal))
        else:
            name = printer.printerName() or tr("the printer")
            said(tr("{pages} sent to {printer}.", pages=_count(pages), printer=name))

    dialog.accepted.connect(accepted)
    dialog.finished.connect(dialog.deleteLater)
    QDialog.open(dialog)


def _count(pages: int) -> str:
    return tr("1 page") if pages == 1 else tr("{pages} pages", pages=pages)
