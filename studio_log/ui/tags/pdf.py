"""Tags into a PDF of vectors, with or without a window."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QSizeF
from PySide6.QtGui import (
    QFontDatabase,
    QGuiApplication,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
)

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts
from studio_log.language.words import tr
from studio_log.present.tag_layout import PlacedTag, lay_out_tag
from studio_log.present.tag_stock import Place, TagStock, cut_marks, find_stock, pages_of
from studio_log.services.whole_file import write_whole
from studio_log.ui.tags.tag_painter import FontMeasure, paint_tag

_DOTS = 1200
MM_PER_INCH = 25.4
_MOST_TAGS = 2000


def ensure_gui_app() -> QGuiApplication:
    """Give the running application, else one without a screen: fonts need one.

    A PDF needs no display, and a display that is named but does not answer would end the
    process; so none is asked. Keep what is returned for as long as tags are made.
    """
    running = QGuiApplication.instance()
    if running is None:
        return QGuiApplication(["studio-log", "-platform", "offscreen"])
    if not isinstance(running, QGuiApplication):
        raise Refusal(
            tr(
                "Tags cannot be drawn: the program was started without its "
                "drawing part. No file was written; call the command by itself."
            )
        )
    return running


def page_layout(stock: TagStock) -> QPageLayout:
    """Give the page of a stock to its very edge; Portrait, since Landscape swaps its sides."""
    size = QPageSize(
        QSizeF(*stock.page),
        QPageSize.Unit.Millimeter,
        stock.title,
        QPageSize.SizeMatchPolicy.ExactMatch,
    )
    nothing = QMarginsF(0, 0, 0, 0)
    return QPageLayout(size, QPageLayout.Orientation.Portrait, nothing, QPageLayout.Unit.Millimeter)


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
    if not QFontDatabase.families():
        raise Refusal(
            tr(
                "No font was found on this computer, so a tag would have no "
                "words. Nothing was printed. Install a font such as DejaVu Sans "
                "and try again."
            )
        )
    measure = FontMeasure()
    # Copies of one tag are laid out once.
    placed = {facts: lay_out_tag(facts, stock.tag, measure, stock.dots) for facts in set(tags)}
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


def pdf_bytes(tags: Sequence[TagFacts], stock: TagStock, *, start_at: int = 1) -> bytes:
    """Give the PDF; one page for every sheet, the first tag at place `start_at` from 1."""
    placed = lay_out_tags(tags, stock)
    pages = pages_of(len(placed), stock, start_at)
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(_DOTS)
    writer.setPageLayout(page_layout(stock))
    writer.setTitle(tr("Tags ") + ", ".join(dict.fromkeys(facts.code for facts in tags)))
    writer.setCreator(tr("Studio Log"))
    painter = QPainter()
    if not painter.begin(writer):
        raise Refusal(tr("The PDF could not be drawn. No file was written; try again."))
    try:
        for number, places in enumerate(pages):
            if number:
                writer.newPage()
            paint_page(painter, places, placed, stock, _DOTS / MM_PER_INCH)
    finally:
        painter.end()
    buffer.close()
    return bytes(buffer.data().data())


def write_pdf(path: Path, tags: Sequence[TagFacts], stock_slug: str, *, start_at: int = 1) -> None:
    """Write tags into a PDF, wholly or not at all: what stood at `path` stays until then.

    Makes an application without a screen where there is none.
    """
    app = ensure_gui_app()
    write_whole(Path(path), pdf_bytes(tags, find_stock(stock_slug), start_at=start_at))
    del app
