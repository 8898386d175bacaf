"""Where sheets go from a window: to a printer in their true size, or into a PDF."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final, Generic, TypeVar

from PySide6.QtWidgets import QFileDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.whole_file import write_whole
from studio_log.ui.ink.device import MM_PER_INCH, PaintPage, page_layout, paint_all

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

NO_PRINTER: Final = tr_later(
    "No printer is set up on this computer. Nothing was printed; save the pages as a PDF."
)
NO_PRINTING: Final = tr_later(
    "The printing part of the program cannot be loaded here. Nothing "
    "was printed. Save the pages as a PDF instead."
)
Said = Callable[[str], None]
Page = TypeVar("Page")


@dataclass(frozen=True)
class Sheets(Generic[Page]):
    """Pages of a size in mm, and what paints one of them."""

    size: tuple[float, float]
    title: str
    pages: Sequence[Page]
    paint: PaintPage[Page]


def print_sheets(parent: QWidget, sheets: Sheets[Page], said: Said) -> bool:
    """Print by the system's dialog; False, having said why, where no printer can be asked."""
    # Late: the print system takes its time and a library that may be missing.
    try:
        from studio_log.ui.ink import printing  # noqa: PLC0415
    except ImportError:
        said(tr(NO_PRINTING))
        return False
    if not printing.any_printer():
        said(tr(NO_PRINTER))
        return False

    def paint(printer: "QPrinter") -> str:
        printing.hold_to_size(printer, sheets.size, sheets.title)
        dots = printer.resolution() / MM_PER_INCH
        paint_all(printer, sheets.pages, sheets.paint, dots)
        return tr("Sent to {printer}.", printer=printer.printerName())

    layout = page_layout(sheets.size, sheets.title)
    printing.print_by_dialog(parent, layout, sheets.title, paint, said)
    return True


def ask_for_pdf(parent: QWidget, heading: str, name: str) -> Path | None:
    """Ask where a PDF is to go; None where the person thinks better of it."""
    chosen, _ = QFileDialog.getSaveFileName(parent, heading, name, tr("PDF (*.pdf)"))
    return Path(chosen) if chosen else None


def save_pdf(path: Path, make: Callable[[], bytes], said: Said) -> None:
    """Write a PDF, wholly or not at all, and say how it went."""
    try:
        write_whole(path, make())
    except Refusal as refusal:
        said(str(refusal))
    else:
        said(tr("Saved as {path}.", path=path))
