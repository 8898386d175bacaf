"""Tags into a PDF of vectors, with or without a window."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from PySide6.QtGui import QPainter

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr
from studio_log.present.label_layout import tape_length
from studio_log.present.tag_layout import PlacedTag, lay_out_any
from studio_log.present.tag_stock import Place, TagStock, cut_marks, find_stock, pages_of
from studio_log.services.whole_file import write_whole
from studio_log.ui.ink.device import PaintPage, ensure_gui_app, need_fonts, pdf_of
from studio_log.ui.ink.marks import FontMeasure, paint_tag

_MOST_TAGS = 2000


def lay_out_tags(tags: Sequence[TagFacts], stock: TagStock) -> list[PlacedTag]:
    """Lay out every tag for a stock; Refusal where there is nothing to draw them with."""
    if not tags:
        raise Refusal(tr("There is no lot to make a tag for. Nothing was printed; choose a lot."))
    if len(tags) > _MOST_TAGS:
        raise Refusal(
            tr(
                "{count} tags at once are too many. Nothing was printed; make up "
                "to {MOST_TAGS} at a time.",
                count=len(tags),
                MOST_TAGS=_MOST_TAGS,
            )
        )
    need_fonts()
    measure = FontMeasure()
    # Copies of one tag are laid out once.
    placed = {facts: lay_out_any(facts, stock.tag, measure, stock.dots) for facts in set(tags)}
    return [placed[facts] for facts in tags]


def paint_page(
    painter: QPainter,
    places: Sequence[Place],
    tags: Sequence[PlacedTag],
    stock: TagStock,
    device_per_mm: float,
) -> None:
    """Paint one page of tags and the ticks to cut along."""
    paint_tag(painter, cut_marks(stock), device_per_mm)
    for place in places:
        at = (place.cell.x, place.cell.y)
        paint_tag(painter, tags[place.index].marks, device_per_mm, at)


def cut_to_fit(tags: Sequence[TagFacts], stock: TagStock) -> TagStock:
    """Give a tape its length, that of the longest label; every other stock as it is."""
    if not stock.fits or not tags:
        return stock
    need_fonts()
    measure, width = FontMeasure(), stock.page[1]
    length = max(tape_length(facts, width, measure, stock.dots) for facts in set(tags))
    return replace(stock, page=(length, width))


def pdf_bytes(tags: Sequence[TagFacts], stock: TagStock, *, start_at: int = 1) -> bytes:
    """Give the PDF; one page for every sheet, the first tag at place `start_at` from 1."""
    stock = cut_to_fit(tags, stock)
    placed = lay_out_tags(tags, stock)
    pages = pages_of(len(placed), stock, start_at)
    title = tr("Tags ") + ", ".join(dict.fromkeys(facts.code for facts in tags))
    return pdf_of(pages, stock.page, title, page_painter(placed, stock))


def page_painter(placed: Sequence[PlacedTag], stock: TagStock) -> PaintPage[Sequence[Place]]:
    """Give what paints a page of these tags."""

    def paint(painter: QPainter, places: Sequence[Place], per_mm: float) -> None:
        paint_page(painter, places, placed, stock, per_mm)

    return paint


def write_pdf(path: Path, tags: Sequence[TagFacts], stock_slug: str, *, start_at: int = 1) -> None:
    """Write tags into a PDF, wholly or not at all: what stood at `path` stays until then.

    Makes an application without a screen where there is none.
    """
    app = ensure_gui_app()
    write_whole(Path(path), pdf_bytes(tags, find_stock(stock_slug), start_at=start_at))
    del app
