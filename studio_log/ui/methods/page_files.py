"""The page that is read, written out: its method as a file, itself as a PDF and on paper."""

from collections.abc import Callable
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QFileDialog, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.services.method_page import MethodPage
from studio_log.services.whole_file import write_whole
from studio_log.ui.methods.page_view import PageView
from studio_log.ui.methods.paper import write_pdf

FILES: Final = tr_later("Methods (*.toml)")
WRITTEN: Final = tr_later("{title} is written to {file}.")
Writing = Callable[[Path, MethodPage], None]


class PageFiles:
    """Asks where to, writes, and has it said how that went."""

    def __init__(self, box: QWidget, view: PageView, said: Callable[[str], None]) -> None:
        self._box, self._view, self._said = box, view, said

    def export(self) -> None:
        """Ask for a file and write the method's text into it."""
        self._ask(tr("Export the method"), "toml", tr(FILES), self.write_to)

    def save_pdf(self) -> None:
        """Ask for a file and write the page into it."""
        self._ask(tr("Save the page as a PDF"), "pdf", "PDF (*.pdf)", self.write_pdf_to)

    def print(self) -> None:
        """Open the system's print dialog for the page."""
        from studio_log.ui.methods.printing import print_page  # noqa: PLC0415 - brings a lot in

        if self._view.page is not None:
            print_page(self._box, self._view.page, self._said)

    def write_to(self, path: Path) -> None:
        """Write the method's text to a file; say how it went."""
        self._write(path, lambda to, page: write_whole(to, page.text.encode()))

    def write_pdf_to(self, path: Path) -> None:
        """Write the page as a PDF; say how it went."""
        self._write(path, write_pdf)

    def _ask(self, title: str, kind: str, kinds: str, write: Callable[[Path], None]) -> None:
        page = self._view.page
        if page is None:
            return
        name = f"{page.slug}-{page.version}.{kind}"
        path, _ = QFileDialog.getSaveFileName(self._box, title, name, kinds)
        if path:
            write(Path(path))

    def _write(self, path: Path, write: Writing) -> None:
        page = self._view.page
        if page is None:
            return
        try:
            write(path, page)
        except Refusal as refusal:
            self._said(str(refusal))
        else:
            self._said(tr(WRITTEN, title=page.title, file=path))
