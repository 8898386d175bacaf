"""Pages to a printer. Loaded only when one is asked for: it brings the print system in."""

from collections.abc import Callable
from typing import Final

from PySide6.QtGui import QPageLayout
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo
from PySide6.QtWidgets import QDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.ui.ink.device import page_layout

_STRAY: Final = 1.0
"""How far, in mm, a printer's idea of the page may differ: whole points and its own steps."""


def any_printer() -> bool:
    """Say whether a printer is set up; without one, Qt would quietly write a PDF instead."""
    return bool(QPrinterInfo.availablePrinters())


def print_by_dialog(
    parent: QWidget,
    layout: QPageLayout,
    title: str,
    paint: Callable[[QPrinter], str],
    said: Callable[[str], None],
) -> None:
    """Open the system's dialog beside the window; where the person goes on, `paint` prints.

    `said` is told what `paint` gives, or why it refused.
    """
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageLayout(layout)
    printer.setDocName(title)
    dialog = QPrintDialog(printer, parent)

    def accepted() -> None:
        try:
            words = paint(printer)
        except Refusal as refusal:
            words = str(refusal)
        said(words)

    dialog.accepted.connect(accepted)
    dialog.finished.connect(dialog.deleteLater)
    QDialog.open(dialog)


def hold_to_size(printer: QPrinter, size: tuple[float, float], title: str) -> None:
    """Give the printer the page in its true size; Refusal where it swaps it for its own."""
    printer.setFullPage(True)
    printer.setPageLayout(page_layout(size, title))
    page = printer.paperRect(QPrinter.Unit.Millimeter)
    if abs(page.width() - size[0]) > _STRAY or abs(page.height() - size[1]) > _STRAY:
        raise Refusal(
            tr(
                "This printer has no page of {wide:g} × {high:g} mm; it offered "
                "{width:.0f} × {height:.0f} mm. Nothing was printed. Choose a "
                "sheet that it takes, or save as a PDF.",
                wide=size[0],
                high=size[1],
                width=page.width(),
                height=page.height(),
            )
        )
