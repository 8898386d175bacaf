"""The dialog that puts tags on paper."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QFileDialog,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr, tr_later
from studio_log.present.tag_layout import PlacedTag
from studio_log.present.tag_stock import (
    LEAST_TAG,
    MOST_PAGE,
    TagStock,
    all_stock,
    pages_of,
    single_tag,
)
from studio_log.services.whole_file import write_whole
from studio_log.ui.tags.pdf import lay_out_tags, pdf_bytes
from studio_log.ui.tags.tag_preview import TagPreview

_MOST_COPIES = 50


class TagDialog(QDialog):
    """Shows the tags of some lots and prints them or saves them as a PDF."""

    printed = Signal(list)
    """The codes whose tags went to a printer or into a PDF."""

    def __init__(self, tags: Sequence[TagFacts], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._facts = tuple(tags)
        self._placed: list[PlacedTag] = []
        self.setWindowTitle(tr("Tags"))
        self.setModal(True)
        self._build()
        self._connect()
        self._relay()

    def _build(self) -> None:
        self.preview = TagPreview(self)
        self.status = QLabel(self)
        self.status.setWordWrap(True)
        self.status.setMinimumWidth(240)
        self.status.setAccessibleName(tr("What became of the tags"))
        side = QVBoxLayout()
        side.addLayout(self._form())
        side.addWidget(self.status)
        side.addStretch(1)
        middle = QHBoxLayout()
        middle.addWidget(self.preview, 1)
        middle.addLayout(side)
        whole = QVBoxLayout(self)
        whole.addLayout(middle, 1)
        whole.addWidget(self._buttons())

    def _form(self) -> QFormLayout:
        self.stock_box = QComboBox(self)
        for stock in all_stock():
            self.stock_box.addItem(stock.title, stock.slug)
        self.stock_box.addItem(tr("Single tag, own size"), None)
        self.width_box = self._length(80.0, LEAST_TAG[0])
        self.height_box = self._length(50.0, LEAST_TAG[1])
        self.copies_box = QSpinBox(self)
        self.copies_box.setRange(1, _MOST_COPIES)
        self.start_box = QSpinBox(self)
        self.start_box.setMinimum(1)
        self.page_box = QSpinBox(self)
        self.page_box.setMinimum(1)
        self._lines = QFormLayout()
        for words, field in (
            (tr("&Stock"), self.stock_box),
            (tr("&Width"), self.width_box),
            (tr("&Height"), self.height_box),
            (tr("How &many of each"), self.copies_box),
            (tr("Start at p&lace"), self.start_box),
            (tr("Sho&w page"), self.page_box),
        ):
            self._lines.addRow(words, field)
        return self._lines

    def _length(self, value: float, least: float) -> QDoubleSpinBox:
        box = QDoubleSpinBox(self)
        box.setRange(least, MOST_PAGE)
        box.setDecimals(1)
        box.setSuffix(" mm")
        box.setValue(value)
        return box

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
        return buttons

    def _connect(self) -> None:
        self.stock_box.currentIndexChanged.connect(self._relay)
        self.width_box.valueChanged.connect(self._relay)
        self.height_box.valueChanged.connect(self._relay)
        self.copies_box.valueChanged.connect(self._relay)
        self.start_box.valueChanged.connect(self._relay)
        self.page_box.valueChanged.connect(self._show_page)
        self.print_button.clicked.connect(self._print)
        self.pdf_button.clicked.connect(self._save)

    def stock(self) -> TagStock:
        """Give the stock chosen."""
        slug = self.stock_box.currentData()
        if slug is None:
            return single_tag(self.width_box.value(), self.height_box.value())
        return next(stock for stock in all_stock() if stock.slug == slug)

    def tags(self) -> list[TagFacts]:
        """Give every tag to be printed, copies side by side."""
        return [facts for facts in self._facts for _ in range(self.copies_box.value())]

    def _relay(self) -> None:
        """Lay the tags out anew after a choice, and say what had to be left out."""
        stock = self.stock()
        own = self.stock_box.currentData() is None
        self._lines.setRowVisible(self.width_box, own)
        self._lines.setRowVisible(self.height_box, own)
        self._lines.setRowVisible(self.start_box, stock.count > 1)
        self.start_box.setMaximum(stock.count)
        try:
            self._placed = lay_out_tags(self.tags(), stock)
            words = _shortfall(self._facts, self._placed[:: self.copies_box.value()])
        except Refusal as refusal:
            self._placed, words = [], str(refusal)
        self.status.setText(words)
        self.print_button.setEnabled(bool(self._placed))
        self.pdf_button.setEnabled(bool(self._placed))
        self._show_page()

    def _show_page(self) -> None:
        stock = self.stock()
        pages = pages_of(len(self._placed), stock, self.start_box.value())
        self.page_box.setMaximum(max(1, len(pages)))
        self.page_box.setSuffix(tr(" of {count}", count=len(pages)))
        self._lines.setRowVisible(self.page_box, len(pages) > 1)
        places = pages[self.page_box.value() - 1] if pages else ()
        self.preview.show_page(places, self._placed, stock if pages else None)

    def _print(self) -> None:
        # Late: the print system takes its time and a library that may be missing.
        try:
            from studio_log.ui.tags import printing  # noqa: PLC0415
        except ImportError:
            self.status.setText(tr(_NO_PRINTING))
            return
        if not printing.any_printer():
            self.status.setText(tr(_NO_PRINTER))
            self.pdf_button.setFocus()
            return
        stock, start_at = self.stock(), self.start_box.value()
        printer = printing.choose_printer(self, stock)
        if printer is None:
            return
        try:
            printing.print_tags(printer, self.tags(), stock, start_at=start_at)
        except Refusal as refusal:
            self.status.setText(str(refusal))
            return
        self._done(tr("Sent to {printer}.", printer=printer.printerName() or tr("the printer")))

    def _save(self) -> None:
        name = (
            tr("tag-{code}.pdf", code=self._facts[0].code) if len(self._facts) == 1 else "tags.pdf"
        )
        chosen, _ = QFileDialog.getSaveFileName(
            self, tr("Save the tags as a PDF"), name.replace("/", "-"), tr("PDF (*.pdf)")
        )
        if not chosen:
            return
        path = Path(chosen)
        try:
            content = pdf_bytes(self.tags(), self.stock(), start_at=self.start_box.value())
            write_whole(path, content)
        except Refusal as refusal:
            self.status.setText(str(refusal))
            return
        self._done(tr("Saved as {path}.", path=path))

    def _done(self, words: str) -> None:
        self.status.setText(words)
        self.printed.emit([facts.code for facts in self._facts])


_NO_PRINTER = tr_later(
    "No printer is set up on this computer. Nothing was printed. Save "
    "the tags as a PDF and print that elsewhere, at 100 % and not "
    "fitted to the page."
)
_NO_PRINTING = tr_later(
    "The printing part of the program cannot be loaded here. Nothing "
    "was printed. Save the tags as a PDF instead."
)


def _shortfall(facts: Sequence[TagFacts], placed: Sequence[PlacedTag]) -> str:
    """Say what does not fit on the tags, lot by lot."""
    found = []
    for one, tag in zip(facts, placed, strict=True):
        parts = [tr("{what} shortened", what=what) for what in tag.cut if what != "rows"]
        if tag.rows_left_out:
            parts.append(
                tr(
                    "{rows_left_out} of {count} rows left out",
                    rows_left_out=tag.rows_left_out,
                    count=len(one.rows),
                )
            )
        elif "rows" in tag.cut:
            parts.append(tr("a row shortened"))
        if parts:
            found.append(f"{one.code}: {', '.join(parts)}.")
    most = 4
    more = [tr("So with {rest} more.", rest=len(found) - most)] if len(found) > most else []
    return "\n".join(found[:most] + more)
