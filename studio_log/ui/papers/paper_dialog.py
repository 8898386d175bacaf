"""A paper before it is printed: its pages, the size of the paper, a printer or a file."""

from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.present.paper.blocks import PAGES, PageName
from studio_log.services.papers import Paper
from studio_log.ui.ink.device import pdf_of
from studio_log.ui.ink.outlet import Sheets, ask_for_pdf, print_sheets, save_pdf
from studio_log.ui.papers.page_roll import PageRoll
from studio_log.ui.papers.painting import PagePainter, lay_out

if TYPE_CHECKING:
    from studio_log.present.paper.setting import Page

_SIZES: Final[dict[PageName, str]] = {
    "a4": tr_later("A4, 210 × 297 mm"),
    "letter": tr_later("Letter, 8½ × 11 in"),
}


class PaperDialog(QDialog):
    """Shows one paper and prints it or saves it as a PDF."""

    def __init__(self, paper: Paper, page: PageName = "a4", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.paper = paper
        self._paint = PagePainter(paper)
        self._pages: tuple[Page, ...] = ()
        self._title = paper.document.title.replace("  ", " ")
        self.setWindowTitle(tr("To print: {title}", title=self._title))
        self.setModal(True)
        self._build()
        self.size_box.setCurrentIndex(self.size_box.findData(page))
        self.size_box.currentIndexChanged.connect(self._lay_out)
        self._lay_out()
        self.resize(860, 760)

    @property
    def page(self) -> PageName:
        """The size of paper chosen."""
        chosen: PageName = self.size_box.currentData()
        return chosen

    def _build(self) -> None:
        self.roll = PageRoll(self)
        self.size_box = QComboBox(self)
        for name, words in _SIZES.items():
            self.size_box.addItem(tr(words), name)
        self.status = QLabel(self)
        self.status.setWordWrap(True)
        self.status.setAccessibleName(tr("What became of the pages"))
        form = QFormLayout()
        form.addRow(tr("Pape&r"), self.size_box)
        whole = QVBoxLayout(self)
        whole.addLayout(form)
        whole.addWidget(self.roll, 1)
        whole.addWidget(self.status)
        whole.addWidget(self._buttons())

    def _buttons(self) -> QDialogButtonBox:
        buttons = QDialogButtonBox(self)
        role = QDialogButtonBox.ButtonRole
        self.print_button = QPushButton(tr("&Print…"), self)
        self.pdf_button = QPushButton(tr("Save as P&DF…"), self)
        self.close_button = QPushButton(tr("&Close"), self)
        buttons.addButton(self.print_button, role.ActionRole)
        buttons.addButton(self.pdf_button, role.ActionRole)
        buttons.addButton(self.close_button, role.RejectRole)
        buttons.rejected.connect(self.reject)
        self.print_button.clicked.connect(self._print)
        self.pdf_button.clicked.connect(self._save)
        self.print_button.setDefault(True)
        return buttons

    def _lay_out(self) -> None:
        try:
            self._pages, words = lay_out(self.paper, self.page), ""
        except Refusal as refusal:
            self._pages, words = (), str(refusal)
        self.roll.show_pages(self._pages, self._paint)
        count = len(self._pages)
        self.say(words or (tr("1 page") if count == 1 else tr("{count} pages", count=count)))
        self.print_button.setEnabled(bool(self._pages))
        self.pdf_button.setEnabled(bool(self._pages))

    def say(self, words: str) -> None:
        """Say below the pages what became of them."""
        self.status.setText(words)

    def _print(self) -> None:
        sheets = Sheets(PAGES[self.page], self._title, self._pages, self._paint)
        if not print_sheets(self, sheets, self.say):
            self.pdf_button.setFocus()

    def _save(self) -> None:
        name = f"{self.paper.name}.pdf"
        if path := ask_for_pdf(self, tr("Save the pages as a PDF"), name):
            self.save_to(path)

    def save_to(self, path: Path) -> None:
        """Write the PDF, wholly or not at all, and say how it went."""
        size = PAGES[self.page]
        save_pdf(path, lambda: pdf_of(self._pages, size, self._title, self._paint), self.say)
