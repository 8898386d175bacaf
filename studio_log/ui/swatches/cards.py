"""Swatch cards into a PDF or to a printer, true in millimetres."""

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from PySide6.QtGui import QPainter

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.present.swatch_card import CardFacts, PlacedCard, lay_out_card
from studio_log.present.tag_stock import Place, TagStock, cut_marks, find_stock, pages_of
from studio_log.services.whole_file import write_whole
from studio_log.ui.ink.device import PaintPage, ensure_gui_app, need_fonts, pdf_of
from studio_log.ui.ink.marks import FontMeasure, paint_tag

MOST: Final = 2000


def lay_out_cards(facts: Sequence[CardFacts], stock: TagStock) -> list[PlacedCard]:
    """Lay out every card; Refusal where there is none, or nothing to draw them with."""
    if not facts:
        raise Refusal(tr("There is no swatch to make a card for. Nothing was printed."))
    if len(facts) > MOST:
        raise Refusal(
            tr("{count} cards at once are too many. Nothing was printed; make up to {most} at a "
               "time.", count=len(facts), most=MOST)
        )  # fmt: skip
    need_fonts()
    measure = FontMeasure()
    return [lay_out_card(one, stock.tag, measure, stock.dots) for one in facts]


def card_painter(cards: Sequence[PlacedCard], stock: TagStock) -> PaintPage[Sequence[Place]]:
    """Give what paints a page of these cards, with the ticks to cut along."""

    def paint(painter: QPainter, places: Sequence[Place], per_mm: float) -> None:
        paint_tag(painter, cut_marks(stock), per_mm)
        for one in places:
            paint_tag(painter, cards[one.index].marks, per_mm, (one.cell.x, one.cell.y))

    return paint


def cards_pdf(facts: Sequence[CardFacts], stock: TagStock, *, start_at: int = 1) -> bytes:
    """Give the PDF; the first card stands at place `start_at` of its sheet, from 1."""
    cards = lay_out_cards(facts, stock)
    pages = pages_of(len(cards), stock, start_at)
    title = tr("Swatch cards") + " " + ", ".join(one.code for one in facts[:12])
    return pdf_of(pages, stock.page, title, card_painter(cards, stock))


def write_cards(path: Path, facts: Sequence[CardFacts], stock: str, *, start_at: int = 1) -> None:
    """Write cards into a PDF, wholly or not at all; makes an application where there is none."""
    app = ensure_gui_app()
    write_whole(path, cards_pdf(facts, find_stock(stock), start_at=start_at))
    del app
