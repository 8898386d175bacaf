"""The dialog that puts tags on paper."""

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
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
from studio_log.present.printer_stocks import (
    InPrinter,
    place_after,
    read_stocks,
    stocks_text,
    with_stock,
)
from studio_log.present.tag_layout import PlacedTag
from studio_log.present.tag_stock import TagStock, pages_of
from studio_log.services.whole_file import write_whole
from studio_log.ui.tags.pdf import cut_to_fit, lay_out_tags, pdf_bytes
from studio_log.ui.tags.stock_fields import StockFields
from studio_log.ui.tags.tag_preview import TagPreview
from studio_log.ui.widgets.parts import scrolled

_MOST_COPIES = 50


class TagDialog(QDialog):
    """Shows the tags of some lots and prints them or saves them as a PDF."""

    printed = Signal(list)
    """The codes whose tags went to a printer or into a PDF."""

    def __init__(self, tags: Sequence[TagFacts], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._facts = tuple(tags)
        self._placed: list[PlacedTag] = []
        self._stock: TagStock | None = None
        self._stocks: dict[str, InPrinter] = {}
        """What lies in which printer, the one used last at the end."""
        self.chosen: dict[str, QCheckBox] = {}
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
        panel = self._side = QWidget()
        side = QVBoxLayout(panel)
        side.setContentsMargins(0, 0, 0, 0)
        side.addLayout(self._form())
        side.addWidget(self.status)
        side.addStretch(1)
        middle = QHBoxLayout()
        middle.addWidget(self.preview, 1)
        self._panel = scrolled(panel, name=tr("What tags are printed on, and what they say"))
        middle.addWidget(self._panel)
        whole = QVBoxLayout(self)
        whole.addLayout(middle, 1)
        whole.addWidget(self._buttons())

    def _form(self) -> QFormLayout:
        self._lines = QFormLayout()
        self.fields = StockFields(self._lines, self)
        self.stock_box = self.fields.choice
        self.width_box, self.height_box = self.fields.width, self.fields.height
        self.printer_box = QComboBox(self)
        self._lines.insertRow(0, tr("P&rinter"), self.printer_box)
        self._lines.setRowVisible(self.printer_box, False)
        self.copies_box = QSpinBox(self)
        self.copies_box.setRange(1, _MOST_COPIES)
        self.start_box = QSpinBox(self)
        self.start_box.setMinimum(1)
        self.page_box = QSpinBox(self)
        self.page_box.setMinimum(1)
        for words, field in (
            (tr("How &many of each"), self.copies_box),
            (tr("Start at p&lace"), self.start_box),
            (tr("Sho&w page"), self.page_box),
        ):
            self._lines.addRow(words, field)
        said = QVBoxLayout()
        for name, words in FIELDS.items():
            box = self.chosen[name] = QCheckBox(tr(words), self)
            box.setChecked(True)
            said.addWidget(box)
        self._lines.addRow(tr("It says"), said)
        return self._lines

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
        self.fields.changed.connect(self._relay)
        self.printer_box.activated.connect(self._take_stock_of)
        for box in self.chosen.values():
            box.toggled.connect(self._relay)
        self.copies_box.valueChanged.connect(self._relay)
        self.start_box.valueChanged.connect(self._relay)
        self.page_box.valueChanged.connect(self._show_page)
        self.print_button.clicked.connect(self._print)
        self.pdf_button.clicked.connect(self._save)

    def stock(self) -> TagStock:
        """Give the stock chosen, a tape cut to its words; Refusal where there is none such."""
        return cut_to_fit(self._said(), self.fields.stock())

    def choose(self, stock: str, fields: str, printers: str = "") -> None:
        """Choose what was printed on last, what tags said then, and what lies in which printer."""
        self._stocks = read_stocks(printers)
        self.printer_box.clear()
        self.printer_box.addItems([*reversed(self._stocks)])
        self.printer_box.addItem(tr("Another one, or a PDF"))
        last = next(iter(reversed(self._stocks.values())), None)
        there = last is not None and last.stock == stock
        self.printer_box.setCurrentIndex(0 if there else self.printer_box.count() - 1)
        self._lines.setRowVisible(self.printer_box, bool(self._stocks))
        named = fields.split(",")
        for name, box in self.chosen.items():
            box.setChecked(name in named)
        self.fields.choose(stock)
        self._relay()
        if there:
            self._take_stock_of(0)

    @property
    def choices(self) -> dict[str, str]:
        """What is chosen, as settings keep it."""
        fields = ",".join(name for name, box in self.chosen.items() if box.isChecked())
        stock = self.fields.stock().slug
        printers = stocks_text(self._stocks)
        return {"tag_stock": stock, "tag_fields": fields, "tag_printers": printers}

    def _take_stock_of(self, row: int) -> None:
        """Lay out for what lies in the printer that was chosen, from its next free label."""
        laid = self._stocks.get(self.printer_box.itemText(row))
        if laid is not None:
            self.fields.choose(laid.stock)
            self._relay()
            self.start_box.setValue(laid.place)

    def _said(self) -> list[TagFacts]:
        """Give one tag of each lot, with the fields that are chosen."""
        chosen = [name for name, box in self.chosen.items() if box.isChecked()]
        return [facts.only(chosen) for facts in self._facts]

    def tags(self) -> list[TagFacts]:
        """Give every tag to be printed, copies side by side."""
        return [facts for facts in self._said() for _ in range(self.copies_box.value())]

    def _relay(self) -> None:
        """Lay the tags out anew after a choice, and say what had to be left out."""
        # The rows that scroll beside the preview are never narrower than they ask for.
        bar = self._panel.verticalScrollBar().sizeHint().width() + 4
        self._panel.setMinimumWidth(self._side.minimumSizeHint().width() + bar)
        self._stock = None
        try:
            stock = self._stock = self.stock()
            self._lines.setRowVisible(self.start_box, stock.count > 1)
            self.start_box.setMaximum(stock.count)
            self._placed = lay_out_tags(self.tags(), stock)
            words = _shortfall(self._said(), self._placed[:: self.copies_box.value()])
        except Refusal as refusal:
            self._placed, words = [], str(refusal)
        self.status.setText(words)
        self.print_button.setEnabled(bool(self._placed))
        self.pdf_button.setEnabled(bool(self._placed))
        self._show_page()

    def _show_page(self) -> None:
        stock = self._stock if self._placed else None
        pages = pages_of(len(self._placed), stock, self.start_box.value()) if stock else ()
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
        wanted = self.printer_box.currentText()
        printer = printing.choose_printer(self, stock, wanted if wanted in self._stocks else "")
        if printer is None:
            return
        try:
            printing.print_tags(printer, self.tags(), stock, start_at=start_at)
        except Refusal as refusal:
            self.status.setText(str(refusal))
            return
        # The next tags go on the labels that are still free; said before the words, which stay.
        place = place_after(stock, start_at, len(self.tags()))
        self.start_box.setValue(place)
        name = printer.printerName()
        laid = InPrinter(self.fields.stock().slug, place)
        self._stocks = with_stock(self._stocks, name, laid)
        self._done(tr("Sent to {printer}.", printer=name or tr("the printer")))

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


FIELDS: Final = {
    "name": tr_later("Name"),
    "weight": tr_later("Weight"),
    "method": tr_later("Method"),
    "begun": tr_later("Day it was begun"),
    "rows": tr_later("Times to write in"),
    "studio": tr_later("Studio"),
}
"""What a tag says beside code and caution."""
_LEFT_OUT: Final = {
    **FIELDS,
    "caution": tr_later("Caution"),
    "QR code": tr_later("QR code"),
}
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
        if tag.left_out:
            names = ", ".join(tr(_LEFT_OUT.get(what, what)) for what in tag.left_out)
            parts.append(tr("no room for: {names}", names=names))
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
