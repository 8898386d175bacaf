"""The sheet as a picture and on paper: what is on it, how it is shared out, what is refused.

PDFs are read back by pdftoppm and pdftotext (poppler), which know nothing of this project.
"""

import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QGuiApplication, QImage, QPageLayout, QPageSize, QPdfWriter
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from studio_log.domain.errors import Refusal
from studio_log.domain.methods import StepKind
from studio_log.present.lanes import Lane
from studio_log.ui.ink import printing as device_printing
from studio_log.ui.theme import apply_theme, theme
from studio_log.ui.timeline import printing
from studio_log.ui.timeline.paper import MOST_ROWS, Paper, light_of, picture_of, print_on
from studio_log.ui.timeline.printing import dots, sheet_layout
from studio_log.ui.timeline.sheet_out import copy_picture, print_sheet, save_picture, title_of
from studio_log.ui.timeline.timeline_view import TimelineView
from tests.ui.timeline_lots import NOW, ZONE, h, lots, nights

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
STUDIO = "Harbour Lane Cloth Studio"


@pytest.fixture
def view(qtbot: QtBot, qapp: QApplication) -> Iterator[TimelineView]:
    apply_theme(qapp, "light", family="DejaVu Sans")
    made = TimelineView()
    qtbot.addWidget(made)
    made.resize(1100, 300)  # of eight lots four are in sight
    made.show_lanes(lots(), nights(), NOW, ZONE)
    made.show()
    yield made
    QGuiApplication.clipboard().clear()


def many(count: int) -> list[Lane]:
    return [Lane(f"26-{n:03d}", f"Lot {n}", lots()[0].bars) for n in range(count)]


def row_middle(paper: Paper, row: int) -> float:
    sizes = paper._pencils.sizes
    return paper._top() + paper._place().header + row * sizes.row + sizes.bar_top + sizes.bar / 2


def test_a_picture_holds_every_lot_and_the_time_that_is_seen(view: TimelineView) -> None:
    stretch = view.stretch(title_of(STUDIO))
    picture = picture_of(stretch, theme(), 1000, 1)
    rim = theme().metrics.xl
    paper = Paper(stretch, theme(), 1000, 1)
    assert picture.width() == 1000 + 2 * rim
    assert picture.height() == round(paper.height(8) + 2 * rim)
    scale, place = paper._state.scale, paper._place()
    edge = place.to_view(scale.x(stretch.last))
    assert edge == pytest.approx(1000, abs=2)  # to the very edge, folds and all
    # The cure of the sixth lot is dyed up to now and pale behind it.
    cure, y = theme().kind(StepKind.CURE), round(rim + row_middle(paper, 5)) - 7
    now = rim + place.to_view(scale.x(NOW))
    assert picture.pixelColor(round(now) - 40, y) == cure.fill
    assert picture.pixelColor(round(now) + 40, y) == cure.tint


def test_a_picture_is_as_sharp_as_is_asked_for(view: TimelineView) -> None:
    stretch = view.stretch("x")
    once, twice = (picture_of(stretch, theme(), 800, ratio) for ratio in (1, 2))
    assert twice.width() == 2 * once.width()
    assert twice.height() == pytest.approx(2 * once.height(), abs=1)


def test_of_very_many_lots_a_picture_holds_the_first_and_says_so(view: TimelineView) -> None:
    view.show_lanes(many(200), nights(), NOW, ZONE)
    stretch = view.stretch("x")
    paper = Paper(stretch, theme(), 900, 1)
    picture = picture_of(stretch, theme(), 900, 1)
    assert picture.height() == round(paper.height(MOST_ROWS) + 2 * theme().metrics.xl)


def test_taking_a_picture_moves_nothing_on_the_screen(view: TimelineView) -> None:
    before = view.viewport().grab().toImage()
    picture_of(view.stretch("x"), light_of(theme()), 640, 1)
    assert view.viewport().grab().toImage() == before


def test_copied_it_is_on_the_clipboard(view: TimelineView) -> None:
    assert "copied as a picture" in copy_picture(view, STUDIO)
    assert QGuiApplication.clipboard().image().width() > 1000


def test_saved_it_is_a_png_that_is_read_again(
    view: TimelineView, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def chosen(*_args: object) -> tuple[str, str]:
        return str(tmp_path / "week"), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    assert save_picture(view, view, STUDIO) == f"Saved as {tmp_path / 'week.png'}."
    data = (tmp_path / "week.png").read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"  # W3C PNG specification, 5.2
    assert QImage.fromData(data).height() > 400
    missing = str(tmp_path / "no" / "such" / "week.png")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (missing, ""))
    with pytest.raises(Refusal, match="could not be written"):
        save_picture(view, view, STUDIO)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: ("", ""))
    assert save_picture(view, view, STUDIO) == ""


def test_without_lots_nothing_is_made_and_it_is_said(view: TimelineView) -> None:
    view.show_lanes([], [], NOW, ZONE)
    for act in (
        lambda: copy_picture(view, STUDIO),
        lambda: save_picture(view, view, STUDIO),
        lambda: print_sheet(view, view, STUDIO, print),
    ):
        with pytest.raises(Refusal, match="No lots are in work"):
            act()


def test_without_a_printer_it_is_said(view: TimelineView, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(printing, "any_printer", lambda: False)
    with pytest.raises(Refusal, match="No printer is set up"):
        print_sheet(QWidget(), view, STUDIO, print)


def printed(view: TimelineView, to: Path, size: QPageSize.PageSizeId | None = None) -> int:
    writer = QPdfWriter(str(to))
    writer.setResolution(dots())
    layout = sheet_layout()
    if size is not None:
        layout = QPageLayout(
            QPageSize(size), QPageLayout.Orientation.Portrait, QMarginsF(12, 12, 12, 12),
            QPageLayout.Unit.Millimeter,
        )  # fmt: skip
    writer.setPageLayout(layout)
    return print_on(writer, view.stretch(title_of(STUDIO)), light_of(theme()))


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="needs pdftotext (poppler-utils)")
@pytest.mark.parametrize("size", [None, QPageSize.PageSizeId.A5])
def test_on_paper_each_page_has_title_date_hours_and_legend(
    view: TimelineView, tmp_path: Path, size: QPageSize.PageSizeId | None
) -> None:
    view.show_lanes(many(40), nights(), NOW, ZONE)
    path = tmp_path / "steps.pdf"
    pages = printed(view, path, size)
    assert pages > 2
    told = subprocess.run(
        ["pdftotext", "-raw", str(path), "-"], capture_output=True, text=True, check=True
    ).stdout
    sheets = told.split("\f")[:-1]
    assert len(sheets) == pages
    for number, sheet in enumerate(sheets, 1):
        assert STUDIO in sheet
        assert f"as of Tue 9 June 2026, 13:08, page {number} of {pages}" in sheet
        assert "Tue 9" in sheet
        assert "may end here" in sheet
    codes = [f"26-{n:03d}" for n in range(40)]
    assert all(sum(code in sheet for sheet in sheets) == 1 for code in codes)


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="needs pdftoppm (poppler-utils)")
def test_on_paper_it_is_dark_on_white_whatever_the_window_wears(
    view: TimelineView, tmp_path: Path, qapp: QApplication
) -> None:
    apply_theme(qapp, "dark", family="DejaVu Sans")
    path = tmp_path / "steps.pdf"
    assert printed(view, path) == 1
    subprocess.run(
        ["pdftoppm", "-r", "60", "-png", "-singlefile", str(path), str(tmp_path / "page")],
        check=True,
    )
    page = QImage(str(tmp_path / "page.png"))
    shades = [
        page.pixelColor(x, y).lightness()
        for x in range(0, page.width(), 3)
        for y in range(0, page.height(), 3)
    ]
    assert sorted(shades)[len(shades) // 2] > 245
    assert min(shades) < 90


def test_a_page_too_low_still_holds_a_lot(view: TimelineView) -> None:
    paper = Paper(view.stretch("x"), theme(), 900, 1)
    assert [len(rows) for rows in paper.pages(10)] == [1] * 8
    assert paper.pages(10_000) == [range(8)]


def test_an_opened_fold_is_open_on_paper_too(view: TimelineView) -> None:
    view.toggle_pleat(next(pleat for pleat in view.pleats if pleat.start > h(0)))
    view.horizontalScrollBar().setValue(view.horizontalScrollBar().value() + 300)
    stretch = view.stretch("x")
    paper = Paper(stretch, theme(), 900, 1)
    assert [p.opened for p in paper._state.pleats] == [p.opened for p in view.pleats]
    scale, place = paper._state.scale, paper._place()
    assert place.to_view(scale.x(stretch.last)) == pytest.approx(900, abs=2)
    apply_theme(QApplication.instance(), "light", family="DejaVu Sans")  # type: ignore[arg-type]


class Dialog(QDialog):
    """Stands for the system's print dialog; whoever accepts it prints into a file."""

    to = Path()
    last: "Dialog | None" = None

    def __init__(self, printer: QPrinter, parent: QWidget) -> None:
        super().__init__(parent)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(Dialog.to))
        Dialog.last = self


@pytest.mark.qt_log_ignore("Returned false", extend=True)  # a folder that is not there
def test_accepted_the_dialog_prints_and_says_how_many_pages(
    view: TimelineView, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(printing, "any_printer", lambda: True)
    monkeypatch.setattr(device_printing, "QPrintDialog", Dialog)
    Dialog.to = tmp_path / "steps.pdf"
    view.show_lanes(many(40), nights(), NOW, ZONE)
    heard: list[str] = []
    print_sheet(view, view, STUDIO, heard.append)
    assert heard == []
    assert Dialog.last is not None
    Dialog.last.accept()
    assert heard[0].endswith(" pages sent to the printer.")
    assert Dialog.to.read_bytes()[:5] == b"%PDF-"  # ISO 32000-1, 7.5.2
    Dialog.to = tmp_path / "no" / "such" / "folder" / "steps.pdf"
    print_sheet(view, view, STUDIO, heard.append)
    assert Dialog.last is not None
    Dialog.last.accept()
    assert "did not take the sheet" in heard[1]
