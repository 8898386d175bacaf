"""A trial's report taken elsewhere: its drawing as PDF, SVG or PNG, its pieces as CSV."""

import csv
import io
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QRect, QRectF, QSize
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgGenerator

from studio_log.domain.errors import Refusal
from studio_log.language.words import tr
from studio_log.present.trial_plot import csv_rows
from studio_log.services.trials import TrialReport
from studio_log.services.whole_file import write_whole
from studio_log.ui.ink.device import need_fonts, pdf_of, png_of
from studio_log.ui.ink.marks import tag_font
from studio_log.ui.trials.plot import PAPER_INK, Drawing

PAGE: Final = (297.0, 210.0)
"""A4 across, mm."""
MARGIN: Final = 15.0
LETTERS: Final = 3.6
"""Height of the letters, mm."""
PICTURE_DOTS: Final = 6.0
"""To the mm, in a PNG: about 150 to the inch."""
SVG_DOTS: Final = 4.0
HEADS: Final = (
    "tag", "arm", "batch", "age_days", "value", "two_u", "L", "a", "b", "blind", "source",
)  # fmt: skip
KINDS: Final = ".pdf, .svg, .png, .csv"


def write_report(path: Path, report: TrialReport) -> None:
    """Write it by the end of the file's name, wholly or not at all."""
    make = _MAKERS.get(path.suffix.lower())
    if make is None:
        raise Refusal(
            tr("{name} does not say what it is to be. Nothing was written; end the name in one of "
               "{kinds}.", name=path.name, kinds=KINDS)
        )  # fmt: skip
    write_whole(path, make(report))


def csv_of(report: TrialReport) -> bytes:
    """Give the pieces as a table: UTF-8, commas, figures with a point."""
    out = io.StringIO(newline="")
    rows = [
        (
            one.tag, one.arm, one.block, _figure(one.age_d), _figure(one.value),
            _figure(one.two_u), *(_colour(report, place)), str(one.blind).lower(), one.source,
        )
        for place, one in enumerate(report.results)
    ]  # fmt: skip
    csv_rows(HEADS, rows, csv.writer(out, lineterminator="\n").writerow)
    return out.getvalue().encode()


def _figure(value: float | None) -> str:
    return "" if value is None else f"{value:.6g}"


def _colour(report: TrialReport, place: int) -> tuple[str, str, str]:
    lab = report.results[place].lab
    if lab is None:
        return "", "", ""
    return _figure(lab.lightness), _figure(lab.a), _figure(lab.b)


def pdf_of_report(report: TrialReport) -> bytes:
    """Give the drawing with what it says on one page."""
    need_fonts()

    def paint(painter: QPainter, page: TrialReport, per_mm: float) -> None:
        paint_report(painter, page, per_mm)

    return pdf_of([report], PAGE, report.plot.title, paint)


def png_of_report(report: TrialReport) -> bytes:
    """Give the page as a picture."""
    need_fonts()
    image = QImage(
        round(PAGE[0] * PICTURE_DOTS), round(PAGE[1] * PICTURE_DOTS), QImage.Format.Format_RGB32
    )
    image.fill(QColor("white"))
    painter = QPainter(image)
    paint_report(painter, report, PICTURE_DOTS)
    painter.end()
    return png_of(image)


def svg_of(report: TrialReport) -> bytes:
    """Give the page as SVG."""
    need_fonts()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    made = QSvgGenerator()
    made.setOutputDevice(buffer)
    width, height = round(PAGE[0] * SVG_DOTS), round(PAGE[1] * SVG_DOTS)
    made.setSize(QSize(width, height))
    made.setViewBox(QRect(0, 0, width, height))
    made.setTitle(report.plot.title)
    painter = QPainter(made)
    paint_report(painter, report, SVG_DOTS)
    painter.end()
    return bytes(buffer.data().data())


def paint_report(painter: QPainter, report: TrialReport, per_mm: float) -> None:
    """Paint title, drawing and sentences on a page of `PAGE` mm."""
    left, top = MARGIN * per_mm, MARGIN * per_mm
    width = (PAGE[0] - 2 * MARGIN) * per_mm
    title = tag_font(bold=True)
    title.setPixelSize(max(1, round(LETTERS * 1.5 * per_mm)))
    painter.setFont(title)
    painter.setPen(PAPER_INK.ink)
    head = QRectF(left, top, width, LETTERS * 3.6 * per_mm)
    taken = painter.boundingRect(head, _WRAP, report.plot.title)
    painter.drawText(head, _WRAP, report.plot.title)
    words = tag_font(bold=False)
    words.setPixelSize(max(1, round(LETTERS * per_mm)))
    painter.setFont(words)
    said = "\n".join(report.words)
    room = QRectF(left, 0, width, PAGE[1] * per_mm)
    high = painter.boundingRect(room, _WRAP, said).height()
    below = PAGE[1] * per_mm - top - high
    plot_top = taken.bottom() + LETTERS * per_mm
    plot = QRectF(left, plot_top, width, max(below - plot_top - LETTERS * per_mm, 40 * per_mm))
    Drawing(report.plot, plot, LETTERS * per_mm, PAPER_INK).paint(painter)
    painter.setFont(words)
    painter.setPen(PAPER_INK.ink)
    painter.drawText(QRectF(left, plot.bottom() + LETTERS * per_mm, width, high), _WRAP, said)


_WRAP: Final = 0x1000 | 0x0001
"""Qt.TextFlag.TextWordWrap with Qt.AlignmentFlag.AlignLeft: QPainter takes an int here."""
_MAKERS: Final[Mapping[str, Callable[[TrialReport], bytes]]] = {
    ".pdf": pdf_of_report,
    ".svg": svg_of,
    ".png": png_of_report,
    ".csv": csv_of,
}
