"""Papers in a PDF: true to the millimetre, read by other people's readers, shown and saved."""

import io
import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image, ImageChops
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from studio_log.app.commands import ProgramHouse
from studio_log.domain.journal import Act
from studio_log.present.paper.blocks import PAGES
from studio_log.present.tag_marks import QrMark
from studio_log.services.papers import CardFor, DaySheetFor, Paper, RecordFor
from studio_log.services.pictures import AddPhoto
from studio_log.ui.papers.painting import lay_out, write_pdf
from studio_log.ui.papers.paper_dialog import PaperDialog
from tests.support.fixtures import Workshop
from tests.ui.test_tag_pdf import needs

pytestmark = [
    pytest.mark.usefixtures("qapp"),
    pytest.mark.qt_log_ignore(r"does not support propagateSizeHints\(\)"),
]
DPI = 200


@pytest.fixture
def code(shop: Workshop) -> str:
    code = shop.new("Linen table runners × 2")
    shop.mark(code, "bean-soak", Act.START)
    picture = io.BytesIO()
    Image.new("RGB", (600, 300), (200, 30, 30)).save(picture, "PNG")
    shop.do(AddPhoto(code, content=picture.getvalue(), name="cloth.png", note="red all over"))
    return code


def rendered(path: Path) -> list[Image.Image]:
    """Render a PDF by poppler, which is none of ours."""
    stem = path.parent / f"page-of-{path.stem}"
    subprocess.run([needs("pdftoppm"), "-r", str(DPI), "-png", path, stem], check=True)
    return [Image.open(one).copy() for one in sorted(path.parent.glob(f"{stem.name}-*.png"))]


def words_of(path: Path) -> str:
    done = subprocess.run([needs("pdftotext"), path, "-"], capture_output=True, check=True)
    return " ".join(done.stdout.decode().split())


@pytest.mark.parametrize("page", PAGES)
def test_the_page_and_its_code_are_true_to_the_millimetre(
    shop: Workshop, code: str, tmp_path: Path, page: str
) -> None:
    paper = shop.studio.ask(CardFor(code))
    path = tmp_path / "card.pdf"
    write_pdf(path, paper, page)  # type: ignore[arg-type]
    told = subprocess.run([needs("pdfinfo"), path], capture_output=True, check=True).stdout.decode()
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", told)
    assert size is not None
    for points, mm in zip(size.groups(), PAGES[page], strict=True):  # type: ignore[index]
        # A PDF page is a whole number of points here: half a point astray at most.
        assert float(points) * 25.4 / 72 == pytest.approx(mm, abs=0.18)
    first = rendered(path)[0].convert("L")
    (qr,) = (mark for mark in lay_out(paper, page)[0].marks if isinstance(mark, QrMark))  # type: ignore[arg-type]
    edges = (qr.quiet.x, qr.quiet.y, qr.quiet.right, qr.quiet.bottom)
    part = first.crop(tuple(round(edge * DPI / 25.4) for edge in edges))  # type: ignore[arg-type]
    ink = ImageChops.invert(part).point(lambda value: 255 * (value > 127)).getbbox()
    assert ink is not None
    assert (ink[2] - ink[0]) * 25.4 / DPI == pytest.approx(qr.box.width, abs=0.2)
    assert (ink[3] - ink[1]) * 25.4 / DPI == pytest.approx(qr.box.height, abs=0.2)


def test_a_reader_reads_the_code_of_card_and_record(
    shop: Workshop, code: str, tmp_path: Path
) -> None:
    for question in (CardFor(code), RecordFor(code)):
        path = tmp_path / f"{type(question).__name__}.pdf"
        write_pdf(path, shop.studio.ask(question), "a4")
        found = [one.text for page in rendered(path) for one in zxingcpp.read_barcodes(page)]
        assert found == [code]


def test_the_record_is_whole(shop: Workshop, code: str, tmp_path: Path) -> None:
    path = tmp_path / "record.pdf"
    count = write_pdf(path, shop.studio.ask(RecordFor(code)), "a4")
    words = words_of(path)
    for wanted in ("Linen table runners", "Bean soak", "Journal", "red all over",
                   "Where the figures come from", f"page {count} of {count}"):  # fmt: skip
        assert wanted in words
    pages = rendered(path)
    assert len(pages) == count > 2

    # The photo is there, twice as wide as high: red is used by nothing else on paper.
    def red(page: Image.Image) -> tuple[int, int, int, int] | None:
        channels = page.convert("RGB").split()
        mask = ImageChops.darker(
            channels[0].point(lambda value: 255 * (180 < value < 220)),
            channels[1].point(lambda value: 255 * (10 < value < 60)),
        )
        return mask.getbbox()

    (box,) = (found for found in map(red, pages[1:]) if found is not None)
    assert (box[2] - box[0]) / (box[3] - box[1]) == pytest.approx(2, abs=0.02)


def test_a_lost_photo_leaves_its_place_and_the_rest(
    shop: Workshop, code: str, tmp_path: Path
) -> None:
    paper = shop.studio.ask(RecordFor(code))
    Path(paper.photos[0][1]).unlink()
    path = tmp_path / "record.pdf"
    write_pdf(path, paper, "a4")
    assert "This photo cannot be read." in words_of(path)


def test_the_command_line_s_house_writes_a_day_sheet(shop: Workshop, tmp_path: Path) -> None:
    path = tmp_path / "day.pdf"
    said = ProgramHouse().write_paper(path, shop.studio.ask(DaySheetFor()), "a4")
    assert said == f"Day sheet, Tue 9 June: 1 page written to {path}."
    assert "Nothing is due." in words_of(path)


@pytest.fixture
def show(qtbot: QtBot) -> Callable[[Paper], PaperDialog]:
    def shown(paper: Paper) -> PaperDialog:
        dialog = PaperDialog(paper)
        qtbot.addWidget(dialog)
        dialog.show()
        qtbot.waitExposed(dialog)
        return dialog

    return shown


def test_the_dialog_shows_every_page_and_saves_what_it_shows(
    shop: Workshop,
    code: str,
    tmp_path: Path,
    show: Callable[[Paper], PaperDialog],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    dialog = show(shop.studio.ask(RecordFor(code)))
    count = int(dialog.status.text().split()[0])
    picture = dialog.roll.grab().toImage()
    place = dialog.roll.page_rect(0)
    assert picture.pixelColor(int(place.center().x()), int(place.top()) + 6).name() == "#ffffff"
    path = tmp_path / "out.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    dialog.pdf_button.click()
    assert str(path) in dialog.status.text()
    assert len(rendered(path)) == count
    dialog.size_box.setCurrentIndex(1)
    assert dialog.page == "letter"


def test_a_file_that_cannot_be_written_is_said(
    shop: Workshop, code: str, tmp_path: Path, show: Callable[[Paper], PaperDialog]
) -> None:
    dialog = show(shop.studio.ask(CardFor(code)))
    dialog.save_to(tmp_path / "missing" / "card.pdf")
    assert "could not be written" in dialog.status.text()
