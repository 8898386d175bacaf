"""The sheet to a printer. Loaded only when asked for: it brings the print system in."""

from collections.abc import Callable

from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QGuiApplication, QPageLayout, QPageSize
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.ui.ink.printing import any_printer, print_by_dialog
from studio_log.ui.theme import theme
from studio_log.ui.timeline.paper import Stretch, light_of, print_on

NO_PRINTER = tr_later(
    "No printer is set up on this computer. Nothing was printed; save the steps as a picture."
)
_MARGIN = 12.0
"""Millimetres on every side."""


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

    def paint(printer: QPrinter) -> str:
        printer.setResolution(dots())
        pages = print_on(printer, stretch, light_of(theme()))
        name = printer.printerName() or tr("the printer")
        return tr("{pages} sent to {printer}.", pages=_count(pages), printer=name)

    print_by_dialog(parent, sheet_layout(), stretch.title, paint, said)


def _count(pages: int) -> str:
    return tr("1 page") if pages == 1 else tr("{pages} pages", pages=pages)
