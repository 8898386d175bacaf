"""The dialog that puts swatch cards on paper."""

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFormLayout,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.domain.errors import Refusal
from studio_log.language.words import counted, tr, tr_later
from studio_log.present.swatch_card import CardFacts, PlacedCard
from studio_log.present.tag_stock import Place, TagStock, all_stock, pages_of
from studio_log.ui.ink.outlet import Sheets, ask_for_pdf, print_sheets, save_pdf
from studio_log.ui.swatches.cards import card_painter, cards_pdf, lay_out_cards
from studio_log.ui.widgets.calm import calm
from studio_log.ui.widgets.flow_layout import FlowLayout, growing
from studio_log.ui.widgets.parts import Words, button, em, roomy

PAPER: Final = QColor(255, 255, 255)


class CardPreview(QWidget):
    """Shows the first page as it will come out: white paper, black ink."""

    def __init__(self) -> None:
        super().__init__()
        self._places: Sequence[Place] = ()
        self._cards: Sequence[PlacedCard] = ()
        self._stock: TagStock | None = None
        self.setAccessibleName(tr("Preview of the cards"))
        self.setMinimumSize(em(self, 16), em(self, 12))

    def show_page(
        self, places: Sequence[Place], cards: Sequence[PlacedCard], stock: TagStock | None
    ) -> None:
        """Show these cards; no stock: an empty room."""
        self._places, self._cards, self._stock = places, cards, stock
        self.update()

    @override
    def sizeHint(self) -> QSize:
        return QSize(em(self, 30), em(self, 22))

    @override
    def paintEvent(self, event: QPaintEvent) -> None:
        if self._stock is None:
            return
        width, height = self._stock.page
        room = self.rect().adjusted(8, 8, -8, -8)
        scale = max(0.1, min(room.width() / width, room.height() / height))
        page = QRectF(0, 0, width * scale, height * scale)
        page.moveCenter(QRectF(self.rect()).center())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(QPalette.ColorRole.Mid), 1))
        painter.setBrush(PAPER)
        painter.drawRect(page)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setClipRect(page)
        painter.translate(page.topLeft())
        card_painter(self._cards, self._stock)(painter, self._places, scale)
        painter.end()


class CardDialog(QDialog):
    """Shows the cards of some swatches and prints them or saves them as a PDF."""

    def __init__(self, facts: Sequence[CardFacts], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._facts = tuple(facts)
        self._cards: list[PlacedCard] = []
        self.setWindowTitle(tr("Swatch cards"))
        self.setModal(True)
        self.preview = CardPreview()
        self.stock_box = QComboBox()
        self.stock_box.setAccessibleName(tr("Paper of the cards"))
        for stock in all_stock():
            self.stock_box.addItem(stock.title, stock.slug)
        calm(self.stock_box)
        self.start = QSpinBox()
        self.start.setRange(1, 60)
        self.start.setAccessibleName(tr("First place on the sheet"))
        roomy(self.start)
        calm(self.start)
        self.status = Words(tone="soft")
        self.print_it = button(tr("&Print…"), kind="primary")
        self.save_it = button(tr("Save as P&DF…"))
        self.leave = button(tr("&Close"))
        self._lay_out()
        self.stock_box.currentIndexChanged.connect(self._relay)
        self.start.valueChanged.connect(self._relay)
        self.print_it.clicked.connect(self._print)
        self.save_it.clicked.connect(self._save)
        self.leave.clicked.connect(self.reject)
        self._relay()

    @property
    def stock(self) -> TagStock:
        """What the cards are printed on."""
        return all_stock()[self.stock_box.currentIndex()]

    def save_to(self, path: Path) -> None:
        """Write the PDF, wholly or not at all, and say how it went."""
        start_at = self._start()
        save_pdf(
            path,
            lambda: cards_pdf(self._facts, self.stock, start_at=start_at),
            self.status.setText,
        )

    def _start(self) -> int:
        return min(self.start.value(), self.stock.count)

    def _relay(self) -> None:
        stock = self.stock
        self.start.setMaximum(stock.count)
        try:
            self._cards = lay_out_cards(self._facts, stock)
            pages = pages_of(len(self._cards), stock, self._start())
        except Refusal as refusal:
            self.preview.show_page((), (), None)
            self.status.setText(str(refusal))
            self.print_it.setEnabled(False)
            self.save_it.setEnabled(False)
            return
        self.preview.show_page(pages[0], self._cards, stock)
        for made in (self.print_it, self.save_it):
            made.setEnabled(True)
        short = [one.code for one, card in zip(self._facts, self._cards, strict=True) if card.cut]
        words = counted(len(pages), tr_later("{n} page"), tr_later("{n} pages"))
        if short:
            words += ". " + tr("Not all words fit on {codes}.", codes=", ".join(short[:4]))
        self.status.setText(words)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        form.addRow(tr("Pape&r"), self.stock_box)
        form.addRow(tr("&Begin at place"), self.start)
        foot = FlowLayout(gap=10)
        for part in (growing(Words()), self.print_it, self.save_it, self.leave):
            foot.addWidget(part)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(16, 14, 16, 12)
        whole.setSpacing(10)
        whole.addLayout(form)
        whole.addWidget(self.preview, 1)
        whole.addWidget(self.status)
        whole.addLayout(foot)
        room = self.screen().availableGeometry().size() - QSize(60, 80)
        self.resize(QSize(em(self, 40), em(self, 38)).boundedTo(room))

    def _print(self) -> None:
        stock = self.stock
        pages = pages_of(len(self._cards), stock, self._start())
        sheets = Sheets(stock.page, tr("Swatch cards"), pages, card_painter(self._cards, stock))
        if not print_sheets(self, sheets, self.status.setText):
            self.save_it.setFocus()

    def _save(self) -> None:
        name = f"{self._facts[0].code}-card.pdf" if self._facts else "cards.pdf"
        if path := ask_for_pdf(self, tr("Save the cards as a PDF"), name):
            self.save_to(path)
