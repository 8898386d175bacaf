"""Tags in a PDF: true size, read back by other people's readers, words found, written whole."""

import math
import random
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image, ImageChops, ImageDraw

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.present.tag_layout import lay_out_tag
from studio_log.present.tag_marks import Box, QrMark
from studio_log.present.tag_stock import find_stock
from studio_log.ui.ink.marks import FontMeasure
from studio_log.ui.tags.pdf import cut_to_fit, lay_out_tags, write_pdf
from tests.present.test_tag_layout import HOSTILE, check

pytestmark = pytest.mark.usefixtures("qapp")
DPI = 300
MM_PER_POINT = 25.4 / 72
CAUTION = "soy: allergen · keep from children and pets while wet"
Render = Callable[[Path], list[Image.Image]]


def needs(tool: str) -> str:
    found = shutil.which(tool)
    if found is None:
        pytest.skip(f"{tool} is not installed")
    return found


def a_tag(code: str = "26-031", name: str = "Linen table runners × 2") -> TagFacts:
    rows = (TagRow("first soak", "9 Jun 09:20"), TagRow("dip 2"), TagRow("cured from"))
    return TagFacts(code, name, "412 g", "soy binder for immersion", "begun 8 June 2026", rows,
                    CAUTION, "Harbour Lane Cloth Studio")  # fmt: skip


def words_of(path: Path) -> str:
    done = subprocess.run([needs("pdftotext"), path, "-"], capture_output=True, check=True)
    return " ".join(done.stdout.decode().split())


@pytest.fixture
def render(tmp_path: Path) -> Render:
    """Render a PDF by poppler, which is none of ours, at 300 dots to the inch."""

    def pages(path: Path) -> list[Image.Image]:
        stem = tmp_path / f"page-of-{path.stem}"
        command = [needs("pdftoppm"), "-r", str(DPI), "-gray", "-png", path, stem]
        subprocess.run(command, check=True)
        return [Image.open(one).copy() for one in sorted(tmp_path.glob(f"{stem.name}-*.png"))]

    return pages


def cropped(page: Image.Image, box: Box) -> Image.Image:
    scale = DPI / 25.4
    edges = (box.x, box.y, box.right, box.bottom)
    return page.crop(tuple(round(edge * scale) for edge in edges))


def read(image: Image.Image) -> list[str]:
    return [found.text for found in zxingcpp.read_barcodes(image)]


def test_the_page_is_80_by_50_mm(tmp_path: Path) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    told = subprocess.run([needs("pdfinfo"), path], capture_output=True, check=True).stdout.decode()
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", told)
    assert size is not None
    # A PDF page is a whole number of points here: half a point astray at most.
    assert float(size[1]) * MM_PER_POINT == pytest.approx(80, abs=0.5 * MM_PER_POINT)
    assert float(size[2]) * MM_PER_POINT == pytest.approx(50, abs=0.5 * MM_PER_POINT)
    assert "Pages:           1\n" in told


def test_a_reader_reads_the_code_back(tmp_path: Path, render: Render) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    [page] = render(path)
    assert read(page) == ["26-031"]


def test_another_reader_agrees(tmp_path: Path, render: Render) -> None:
    reader = needs("zbarimg")
    path, picture = tmp_path / "tag.pdf", tmp_path / "tag.png"
    write_pdf(path, [a_tag()], "tag-80x50")
    render(path)[0].save(picture)
    done = subprocess.run([reader, "--quiet", "--raw", picture], capture_output=True, check=True)
    assert done.stdout.decode().split() == ["26-031"]


def stained(image: Image.Image, qr: QrMark, seed: int) -> Image.Image:
    """Lay a round stain over a tenth of the symbol's modules, anywhere beside its eyes."""
    chance, modules = random.Random(seed), qr.symbol.modules
    radius = math.sqrt(0.1 * modules * modules / math.pi)
    eyes = ((0, 0), (modules - 8, 0), (0, modules - 8))
    while True:
        x, y = (chance.uniform(radius, modules - radius) for _ in range(2))
        if all(math.hypot(max(a - x, 0, x - a - 8), max(b - y, 0, y - b - 8)) > radius
               for a, b in eyes):  # fmt: skip
            break
    spoilt, dots = image.copy(), DPI / 25.4
    left, top = ((at + (place - radius) * qr.module) * dots for at, place in ((qr.x, x), (qr.y, y)))
    side = 2 * radius * qr.module * dots
    shade = chance.choice((0, 128, 255))
    ImageDraw.Draw(spoilt).ellipse((left, top, left + side, top + side), fill=shade)
    return spoilt


@pytest.mark.parametrize("stock", ["tag-80x50", "a4-2x4", "tag-60x40", "tape-24@180", "a4-4x11"])
def test_a_reader_reads_a_code_of_which_a_tenth_is_stained(
    tmp_path: Path, render: Render, stock: str
) -> None:
    # ISO/IEC 18004: level Q restores about a quarter of the codewords. Without an eye nothing is
    # found at all, so stains lie beside them; scattered grains, which touch a codeword each, are
    # beyond any level.
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], stock)
    page = render(path)[0]
    found = cut_to_fit([a_tag()], find_stock(stock))
    (placed,) = lay_out_tags([a_tag()], found)
    (qr,) = (mark for mark in placed.marks if isinstance(mark, QrMark))
    assert qr.symbol.version == 4
    assert "26-031" in read(page)
    cell = found.cell(0)
    part = cropped(page, cell)
    assert all(read(stained(part, qr, seed)) == ["26-031"] for seed in range(20))


def test_a_tape_is_as_long_as_its_words(tmp_path: Path) -> None:
    path = tmp_path / "tape.pdf"
    write_pdf(path, [a_tag(), a_tag(name="Linen table runners for the long hall")], "tape-24")
    told = subprocess.run([needs("pdfinfo"), path], capture_output=True, check=True).stdout.decode()
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", told)
    assert size is not None
    assert float(size[2]) * MM_PER_POINT == pytest.approx(24, abs=0.5 * MM_PER_POINT)
    assert 30 < float(size[1]) * MM_PER_POINT < 150
    assert "Pages:           2\n" in told
    assert "Linen table runners for the long hall" in words_of(path)


@pytest.mark.parametrize("dpi", [203, 600])
def test_coarse_and_fine_printers_print_a_readable_code(tmp_path: Path, dpi: int) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    stem = tmp_path / "mono"
    command = [needs("pdftoppm"), "-r", str(dpi), "-mono", "-singlefile", path, stem]
    subprocess.run(command, check=True)
    assert read(Image.open(tmp_path / "mono.pbm").convert("L")) == ["26-031"]


def test_the_qr_comes_out_in_its_true_size_and_place(tmp_path: Path, render: Render) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    [page] = render(path)
    placed = lay_out_tag(a_tag(), (80.0, 50.0), FontMeasure())
    [qr] = [mark for mark in placed.marks if isinstance(mark, QrMark)]
    # The quiet zone is white, so the dark in it is the symbol's, finder to finder.
    dark = ImageChops.invert(cropped(page, qr.quiet)).point(lambda value: 255 * (value > 127))
    ink = dark.getbbox()
    assert ink is not None
    left, top, right, bottom = (edge * 25.4 / DPI for edge in ink)
    assert right - left == pytest.approx(qr.box.width, abs=0.15)
    assert bottom - top == pytest.approx(qr.box.height, abs=0.15)
    assert left == pytest.approx(qr.box.x - qr.quiet.x, abs=0.15)
    assert top == pytest.approx(qr.box.y - qr.quiet.y, abs=0.15)


def test_words_can_be_searched_for(tmp_path: Path) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    said = words_of(path)
    for words in ("26-031", "Linen table runners × 2", "412 g", CAUTION, "first soak",
                  "soy binder for immersion", "begun 8 June 2026"):  # fmt: skip
        assert words in said


def test_fonts_are_within_and_nothing_is_a_picture(tmp_path: Path) -> None:
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    told = subprocess.run([needs("pdffonts"), path], capture_output=True, check=True)
    fonts = told.stdout.decode().splitlines()[2:]
    assert fonts
    for line in fonts:
        embedded = line.split()[-5]
        assert embedded == "yes", line
    images = subprocess.run([needs("pdfimages"), "-list", path], capture_output=True, check=True)
    assert len(images.stdout.decode().splitlines()) == 2  # its heading alone


@pytest.mark.parametrize("slug", ["a4-2x5", "letter-2x4"])
def test_every_tag_of_a_sheet_is_read_in_its_place(
    tmp_path: Path, render: Render, slug: str
) -> None:
    stock, path = find_stock(slug), tmp_path / "sheet.pdf"
    codes = [f"26-{number:03}" for number in range(31, 31 + stock.count)]
    write_pdf(path, [a_tag(code) for code in codes], slug, start_at=3)
    pages = render(path)
    assert len(pages) == 2
    found = [
        (number, place, read(cropped(page, stock.cell(place))))
        for number, page in enumerate(pages)
        for place in range(stock.count)
    ]
    expected = [[], [], *([code] for code in codes)]
    expected += [[]] * (2 * stock.count - len(expected))
    assert [codes_read for _, _, codes_read in found] == expected


@pytest.mark.parametrize("name", HOSTILE, ids=range(len(HOSTILE)))
@pytest.mark.parametrize("slug", ["tag-80x50", "tag-60x40"])
def test_any_name_stays_inside_in_the_real_font(
    tmp_path: Path, render: Render, name: str, slug: str
) -> None:
    tag, stock, path = a_tag(name=name), find_stock(slug), tmp_path / "tag.pdf"
    [placed] = lay_out_tags([tag], stock)
    check(placed)
    write_pdf(path, [tag], slug)
    [page] = render(path)
    assert read(page) == ["26-031"]
    ink = ImageChops.invert(page).getbbox()
    assert ink is not None
    left, top, right, bottom = (edge * 25.4 / DPI for edge in ink)
    inked = Box.between(left, top, right, bottom)
    assert placed.margin.grown(0.15).holds(inked), inked


def test_the_file_is_replaced_whole_and_nothing_is_left_beside(tmp_path: Path) -> None:
    path = tmp_path / "tag.pdf"
    path.write_text("old", encoding="utf-8")
    write_pdf(path, [a_tag()], "tag-80x50")
    assert path.read_bytes().startswith(b"%PDF-")
    assert [one.name for one in tmp_path.iterdir()] == ["tag.pdf"]
    assert path.stat().st_mode & 0o777 == Path(__file__).parent.stat().st_mode & 0o777 & 0o666


def test_a_path_that_fails_is_refused_and_nothing_is_changed(tmp_path: Path) -> None:
    folder = tmp_path / "folder"
    folder.mkdir()
    (tmp_path / "file").write_text("kept", encoding="utf-8")
    for path in (folder, tmp_path / "gone" / "tag.pdf", tmp_path / "file" / "tag.pdf",
                 tmp_path / ("n" * 300), tmp_path / "a\0b"):  # fmt: skip
        with pytest.raises(Refusal, match="could not be written"):
            write_pdf(path, [a_tag()], "tag-80x50")
    assert sorted(one.name for one in tmp_path.iterdir()) == ["file", "folder"]
    assert (tmp_path / "file").read_text(encoding="utf-8") == "kept"
    assert not list(folder.iterdir())


def test_a_full_disk_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "tag.pdf"
    path.write_text("old", encoding="utf-8")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(Refusal, match="No space left"):
        write_pdf(path, [a_tag()], "tag-80x50")
    assert path.read_text(encoding="utf-8") == "old"
    assert [one.name for one in tmp_path.iterdir()] == ["tag.pdf"]


@pytest.mark.parametrize(
    ("codes", "slug", "start_at", "words"),
    [
        ([], "tag-80x50", 1, "no lot"),
        (["26-031"], "a5-9x9", 1, "no tag stock"),
        (["26-031"], "tag-80x50", 2, "places run from 1 to 1"),
        (["26-031"], "a4-2x5", 0, "places run from 1 to 10"),
        (["26-031"] * 2001, "a4-2x5", 1, "too many"),
    ],
)
def test_what_cannot_be_printed_is_refused_before_a_file_is_made(
    tmp_path: Path, codes: list[str], slug: str, start_at: int, words: str
) -> None:
    with pytest.raises(Refusal, match=words):
        write_pdf(tmp_path / "tag.pdf", [a_tag(code) for code in codes], slug, start_at=start_at)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("display", [None, ":987"], ids=["no display", "a dead display"])
def test_a_process_without_a_window_writes_a_tag(
    tmp_path: Path, render: Render, display: str | None
) -> None:
    path = tmp_path / "tag.pdf"
    script = (
        "import os, sys\n"
        "os.environ.pop('QT_QPA_PLATFORM', None)\n"
        "os.environ.pop('WAYLAND_DISPLAY', None)\n"
        f"os.environ.update({{'DISPLAY': {display!r}}} if {display!r} else {{}})\n"
        "from pathlib import Path\n"
        "from studio_log.domain.tags import TagFacts\n"
        "from studio_log.ui.tags.pdf import write_pdf\n"
        "tag = TagFacts('26-031', 'Linen', '412 g', '', '', (), '', '')\n"
        "write_pdf(Path(sys.argv[1]), [tag], 'tag-80x50')\n"
    )
    root = Path(__file__).parents[2]
    done = subprocess.run(
        [sys.executable, "-c", script, str(path)], cwd=root, capture_output=True, check=False
    )
    assert (done.returncode, done.stderr.decode()) == (0, "")
    assert read(render(path)[0]) == ["26-031"]


def test_measured_words_are_as_wide_in_the_pdf(tmp_path: Path) -> None:
    """The measure handed to the layout and the painter's font agree, by poppler's boxes."""
    path = tmp_path / "tag.pdf"
    write_pdf(path, [a_tag()], "tag-80x50")
    told = subprocess.run(
        [needs("pdftotext"), "-bbox", path, "-"], capture_output=True, check=True
    ).stdout.decode()
    box = re.search(r'xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)" yMax="[\d.]+">26-031<', told)
    assert box is not None
    placed = lay_out_tag(a_tag(), (80.0, 50.0), FontMeasure())
    code = next(mark for mark in placed.marks if getattr(mark, "text", "") == "26-031")
    width = (float(box[2]) - float(box[1])) * MM_PER_POINT
    assert width == pytest.approx(code.box.width, abs=0.15)
