"""Papers laid out and painted: pages of marks, the drawing of steps over time, photos."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final
from zoneinfo import ZoneInfo

from PySide6.QtCore import QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QImage, QImageReader, QPainter, QPen

from studio_log.language.words import tr
from studio_log.present.paper.blocks import PAGES, PageName
from studio_log.present.paper.setting import Page, set_document
from studio_log.present.timeline_layout import kinds_of
from studio_log.services.papers import DRAWING, Drawn, Paper
from studio_log.services.whole_file import write_whole
from studio_log.ui.ink.device import ensure_gui_app, need_fonts, pdf_of
from studio_log.ui.ink.marks import FontMeasure, paint_tag
from studio_log.ui.theme import Theme
from studio_log.ui.timeline.legend_rows import SIGNS
from studio_log.ui.timeline.paper import Paper as TimePaper
from studio_log.ui.timeline.paper import Stretch
from studio_log.ui.timeline.sheet_state import SheetState

PaintPicture = Callable[[QPainter, QRectF], None]
_WIDE: Final = 900.0
"""Width of the drawing in its own pixels: its letters come out at 8 points on A4."""
_DENSE: Final = 4.0
"""Dots to such a pixel: about 500 to the inch on A4."""
_PHOTO_DPI: Final = 300
_LIGHT: Final = QColor("#767676")


def lay_out(paper: Paper, page: PageName) -> tuple[Page, ...]:
    """Lay a paper out; Refusal where nothing can be drawn."""
    need_fonts()
    return set_document(paper.document, FontMeasure(), page)


class PagePainter:
    """Paints the pages of one paper; its pictures are made once."""

    def __init__(self, paper: Paper) -> None:
        self._pictures: Mapping[str, PaintPicture] = {
            **({DRAWING: _drawing(paper.drawn)} if paper.drawn else {}),
            **{key: _photo(Path(path)) for key, path in paper.photos},
        }

    def __call__(self, painter: QPainter, page: Page, per_mm: float) -> None:
        """Paint one page; `per_mm` is dots of the device to the mm."""
        paint_tag(painter, page.marks, per_mm)
        for one in page.pictures:
            box = one.box
            where = QRectF(box.x * per_mm, box.y * per_mm, box.width * per_mm, box.height * per_mm)
            painter.save()
            self._pictures.get(one.key, _missing)(painter, where)
            painter.restore()


def pdf_bytes(paper: Paper, page: PageName) -> bytes:
    """Give a paper as a PDF."""
    pages = lay_out(paper, page)
    return pdf_of(pages, PAGES[page], paper.document.title, PagePainter(paper))


def write_pdf(path: Path, paper: Paper, page: PageName) -> int:
    """Write a paper as a PDF, wholly or not at all; gives the number of its pages.

    Makes an application without a screen where there is none.
    """
    app = ensure_gui_app()
    pages = lay_out(paper, page)
    write_whole(path, pdf_of(pages, PAGES[page], paper.document.title, PagePainter(paper)))
    del app
    return len(pages)


def _drawing(drawn: Drawn) -> PaintPicture:
    """Give a painter of the steps over time: dark on white, as wide as its place."""
    font = QFont()
    font.setPointSizeF(10.0)
    look = Theme("strong-light", font)
    state = SheetState()
    state.show(drawn.lanes, drawn.nights, drawn.now, ZoneInfo(drawn.zone))
    seen = {"planned": any(bar.planned for lane in state.lanes for bar in lane.bars),
            "quiet": bool(state.nights), "closed": False, "meet": False}  # fmt: skip
    signs = (*kinds_of(state.lanes), *(sign for sign in SIGNS if seen.get(sign, True)))
    scale = state.scale
    stretch = Stretch(state, scale.start, scale.end, "", signs)

    def paint(painter: QPainter, where: QRectF) -> None:
        # Letters have their size where a device counts its dots as the screen does: a
        # picture does, whatever printer it goes to.
        paper = TimePaper(stretch, look, _WIDE, _DENSE)
        rows = range(paper.rows)
        high = paper.height(len(rows))
        image = QImage(round(_WIDE * _DENSE), round(high * _DENSE), QImage.Format.Format_RGB32)
        image.setDevicePixelRatio(_DENSE)
        image.fill(look.colours.panel)
        inner = QPainter(image)
        paper.paint(inner, rows)
        inner.end()
        fits = min(where.width() / _WIDE, where.height() / high)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(QRectF(where.topLeft(), QSizeF(_WIDE * fits, high * fits)), image)

    return paint


def _photo(path: Path) -> PaintPicture:
    """Give a painter of a photo, no finer than paper shows it."""

    def paint(painter: QPainter, where: QRectF) -> None:
        dots = painter.device().logicalDpiX()
        wide = min(where.width(), where.width() / dots * _PHOTO_DPI)
        reader = QImageReader(str(path))
        reader.setAutoTransform(True)
        size = reader.size()
        turned = reader.transformation().value & 4
        if size.isValid():
            wanted = QSize(round(wide), round(wide * where.height() / where.width()))
            reader.setScaledSize(wanted.transposed() if turned else wanted)
        image = reader.read()
        if image.isNull():
            _missing(painter, where)
        else:
            painter.drawImage(where, image)

    return paint


def _missing(painter: QPainter, where: QRectF) -> None:
    """Say that a picture cannot be shown."""
    size = where.width() / 22
    painter.setPen(QPen(_LIGHT, size / 20))
    painter.drawRect(where)
    font = QFont()
    font.setPixelSize(max(1, round(size)))
    painter.setFont(font)
    flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
    painter.drawText(where, flags, tr("This photo cannot be read."))
