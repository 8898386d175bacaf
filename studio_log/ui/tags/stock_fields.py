"""What tags go on: the shipped stock, a single tag, a tape, a sheet by its measures."""

from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QComboBox, QDoubleSpinBox, QFormLayout, QSpinBox, QWidget

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr, tr_later
from studio_log.present.tag_stock import (
    LEAST_TAG,
    MOST_PAGE,
    SheetSizes,
    TagStock,
    all_stock,
    find_stock,
    own_sheet,
    single_tag,
    tape,
)

SINGLE, TAPE, SHEET = "own-tag", "own-tape", "own-sheet"
_OWN: Final = (
    (SINGLE, tr_later("Single tag, own size")),
    (TAPE, tr_later("Tape, cut where the words end")),
    (SHEET, tr_later("Sheet of labels, own measures")),
)
_LENGTHS: Final = (
    ("page_w", tr_later("Page, wide"), 210.0), ("page_h", tr_later("Page, high"), 297.0),
    ("label_w", tr_later("Label, wide"), 70.0), ("label_h", tr_later("Label, high"), 37.0),
    ("x", tr_later("First from the left"), 0.0), ("y", tr_later("First from the top"), 0.0),
    ("dx", tr_later("To the next across"), 70.0), ("dy", tr_later("To the next down"), 37.0),
)  # fmt: skip


class StockFields(QObject):
    """The fields, as rows of a form; only those that a choice needs are seen."""

    changed = Signal()

    def __init__(self, form: QFormLayout, parent: QWidget) -> None:
        super().__init__(parent)
        self._form = form
        self.choice = QComboBox(parent)
        adjust = QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        self.choice.setSizeAdjustPolicy(adjust)
        self.choice.setMinimumContentsLength(14)
        for stock in all_stock():
            self.choice.addItem(tr(stock.title), stock.slug)
        for slug, words in _OWN:
            self.choice.addItem(tr(words), slug)
        self.width = self._length(80.0, LEAST_TAG[1])
        self.height = self._length(50.0, LEAST_TAG[1])
        self.sheet = {name: self._length(value, 0.0) for name, _, value in _LENGTHS}
        self.across, self.down = (self._count(value) for value in (3, 8))
        self.dots = self._count(300, least=150, most=2400)
        self._rows()
        self._connect()
        self.show_rows()

    def _rows(self) -> None:
        add = self._form.addRow
        add(tr("&Stock"), self.choice)
        add(tr("&Width"), self.width)
        add(tr("&Height"), self.height)
        for name, words, _ in _LENGTHS[:4]:
            add(tr(words), self.sheet[name])
        add(tr("Labels across"), self.across)
        add(tr("Labels down"), self.down)
        for name, words, _ in _LENGTHS[4:]:
            add(tr(words), self.sheet[name])
        add(tr("Printer dots to the inch"), self.dots)

    def _connect(self) -> None:
        self.choice.currentIndexChanged.connect(self._tell)
        for box in (self.width, self.height, *self.sheet.values()):
            box.valueChanged.connect(self._tell)
        for count in (self.across, self.down, self.dots):
            count.valueChanged.connect(self._tell)

    def _tell(self) -> None:
        self.show_rows()
        self.changed.emit()

    def show_rows(self) -> None:
        """Show the rows that the choice needs."""
        kind = self.choice.currentData()
        shown = self._form.setRowVisible
        shown(self.width, kind in {SINGLE, TAPE})
        shown(self.height, kind == SINGLE)
        for box in (*self.sheet.values(), self.across, self.down):
            shown(box, kind == SHEET)
        shown(self.dots, kind in {SINGLE, TAPE, SHEET})

    def stock(self) -> TagStock:
        """Give what is chosen; Refusal where the measures do not go together."""
        kind = self.choice.currentData()
        dots = self.dots.value()
        if kind == SINGLE:
            return single_tag(self.width.value(), self.height.value(), dots)
        if kind == TAPE:
            return tape(self.width.value(), None, dots)
        if kind == SHEET:
            return own_sheet(self._sizes(dots))
        return find_stock(kind)

    def _sizes(self, dots: int) -> SheetSizes:
        told = {name: box.value() for name, box in self.sheet.items()}
        return SheetSizes(
            (told["page_w"], told["page_h"]), (told["label_w"], told["label_h"]),
            self.across.value(), self.down.value(), (told["x"], told["y"]),
            (told["dx"], told["dy"]), dots,
        )  # fmt: skip

    def choose(self, slug: str) -> None:
        """Choose what was printed on last; what is not known any more leaves it as it is."""
        at = self.choice.findData(slug)
        if at >= 0:
            self.choice.setCurrentIndex(at)
            return
        try:
            stock = find_stock(slug)
        except Refusal:
            return
        self.dots.setValue(stock.dots)
        if slug.startswith("sheet:"):
            self._show_sheet(stock)
        else:
            self.width.setValue(stock.page[1] if stock.fits else stock.page[0])
            self.height.setValue(stock.page[1])
            self.choice.setCurrentIndex(self.choice.findData(TAPE if stock.fits else SINGLE))

    def _show_sheet(self, stock: TagStock) -> None:
        wide, high = stock.tag
        first = stock.cell(0)
        values = (*stock.page, wide, high, first.x, first.y, wide + stock.gap[0],
                  high + stock.gap[1])  # fmt: skip
        for (name, _, _), value in zip(_LENGTHS, values, strict=True):
            self.sheet[name].setValue(value)
        self.across.setValue(stock.across)
        self.down.setValue(stock.down)
        self.choice.setCurrentIndex(self.choice.findData(SHEET))

    def _length(self, value: float, least: float) -> QDoubleSpinBox:
        box = QDoubleSpinBox(self.choice.parentWidget())
        box.setRange(least, MOST_PAGE)
        box.setDecimals(2)
        box.setSuffix(" mm")
        box.setValue(value)
        return box

    def _count(self, value: int, least: int = 1, most: int = 40) -> QSpinBox:
        box = QSpinBox(self.choice.parentWidget())
        box.setRange(least, most)
        box.setValue(value)
        return box
