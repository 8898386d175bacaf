"""Swatch cards: nothing overlaps, true in millimetres, read back by other people's readers."""

import itertools
import re
import shutil
import subprocess
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image, ImageChops

from studio_log.domain.errors import Refusal
from studio_log.present.swatch_card import CardFacts, lay_out_card
from studio_log.present.tag_marks import QrMark, TextMark
from studio_log.present.tag_stock import all_stock, find_stock, single_tag
from studio_log.services.swatches import CardsFor, NewSwatch
from studio_log.ui.ink.marks import FontMeasure
from studio_log.ui.swatches.card_dialog import CardDialog
from studio_log.ui.swatches.cards import write_cards
from tests.support.fixtures import Workshop

pytestmark = [
    pytest.mark.usefixtures("qapp"),
    pytest.mark.qt_log_ignore("propagateSizeHints"),
]
DPI = 300
FACTS = CardFacts(
    "W26-014", "second coat, rinsed hot", "26-031 Linen table runners × 2",
    ("Scour for cellulose: 1 to 2 Jun 2026", "Soy binder for immersion: 2 to 9 Jun 2026",
     "Dye immersion: 9 Jun 2026"),
    "L* 52.1  a* 31.8  b* 24.0 · photo with target · 2u 2.4", "cut 9 Jun 2026, piece 1: linen",
    "master half: drawer 3; test half: south window", "Harbour Lane Cloth Studio",
)  # fmt: skip
HOSTILE = CardFacts(
    "W26-99999", "x" * 300 + "\n\u202e" + "é" * 40, "26-99999 " + "word " * 80,
    tuple(f"method {one} " + "long " * 20 for one in range(30)), "L" * 200, "c" * 200, "h" * 400,
    "studio " * 30,
)  # fmt: skip


def needs(tool: str) -> str:
    found = shutil.which(tool)
    if found is None:
        pytest.skip(f"{tool} is not installed")
    return found


@pytest.mark.parametrize(
    "facts", [FACTS, HOSTILE, CardFacts("W26-001")], ids=["full", "hostile", "bare"]
)
@pytest.mark.parametrize("size", [*{one.tag for one in all_stock()}, (60.0, 40.0), (105.0, 74.0)])
def test_no_two_marks_overlap_and_none_leaves_the_card(
    facts: CardFacts, size: tuple[float, float]
) -> None:
    card = lay_out_card(facts, size, FontMeasure())
    boxes = [
        mark.quiet if isinstance(mark, QrMark) else mark.box
        for mark in card.marks
        if not (isinstance(mark, TextMark) and card.cloth.holds(mark.box))
    ]
    for one, other in itertools.combinations(boxes, 2):
        assert not one.meets(other), (one, other)
    for mark in card.marks:
        assert card.margin.holds(mark.box), mark
    codes = [mark.text for mark in card.marks if isinstance(mark, TextMark)]
    assert facts.code in codes, "the code is whole"
    assert card.cloth.width > 0.4 * (size[0] - 6), "the cloth has its room"
    if facts is HOSTILE:
        assert card.cut


def test_a_card_is_true_in_millimetres_and_its_code_is_read(tmp_path: Path) -> None:
    """By poppler's page size and pixels, and by zxing, neither of them ours."""
    path = tmp_path / "card.pdf"
    write_cards(path, [FACTS], "tag-80x50")
    told = subprocess.run([needs("pdfinfo"), path], capture_output=True, text=True, check=True)
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", told.stdout)
    assert size is not None
    assert [float(one) * 25.4 / 72 for one in size.groups()] == pytest.approx([80, 50], abs=0.1)
    stem = tmp_path / "page"
    subprocess.run([needs("pdftoppm"), "-r", str(DPI), "-gray", "-png", path, stem], check=True)
    (shot,) = tmp_path.glob("page*.png")
    with Image.open(shot) as image:
        (found,) = zxingcpp.read_barcodes(image)
        assert found.text == "W26-014"
        cloth = lay_out_card(FACTS, (80, 50), FontMeasure()).cloth
        per_mm = DPI / 25.4
        left = ImageChops.invert(image.convert("L")).crop(
            (0, round(20 * per_mm), round(42 * per_mm), round(20 * per_mm) + 3)
        )
        dark = [x for x in range(left.width) if left.getpixel((x, 1)) > 128]  # type: ignore[operator]
        assert dark[0] / per_mm == pytest.approx(cloth.x, abs=0.1), "the frame's left edge"
        assert dark[-1] / per_mm == pytest.approx(cloth.right, abs=0.15), "and its right one"
    text = subprocess.run(
        [needs("pdftotext"), path, "-"], capture_output=True, text=True, check=True
    ).stdout
    for words in ("W26-014", "26-031", "Soy binder", "L* 52.1", "drawer 3", "Harbour Lane"):
        assert words in text


def test_many_cards_begin_where_the_sheet_is_still_free(tmp_path: Path) -> None:
    sheet = next(one for one in all_stock() if one.count > 4)
    path = tmp_path / "cards.pdf"
    facts = [CardFacts(f"W26-{one:03d}") for one in range(1, 6)]
    write_cards(path, facts, sheet.slug, start_at=sheet.count)
    told = subprocess.run([needs("pdfinfo"), path], capture_output=True, text=True, check=True)
    assert "Pages:           2" in told.stdout
    with pytest.raises(Refusal, match="no place"):
        write_cards(path, facts, sheet.slug, start_at=sheet.count + 1)
    with pytest.raises(Refusal, match="no swatch"):
        write_cards(path, [], sheet.slug)


def test_the_dialog_shows_what_it_writes(shop: Workshop, tmp_path: Path) -> None:
    code = shop.do(NewSwatch(shop.new(), name="first")).code
    facts = shop.studio.ask(CardsFor((code,)))
    assert facts[0].lot == "26-001 runners"
    box = CardDialog(facts)
    box.show()
    assert "1 page" in box.status.text()
    box.save_to(tmp_path / "card.pdf")
    assert (tmp_path / "card.pdf").read_bytes().startswith(b"%PDF")
    box.save_to(tmp_path / "nowhere" / "card.pdf")
    assert "be written" in box.status.text()
    assert "Saved" not in box.status.text()
    box.close()
    with pytest.raises(Refusal, match="too large"):
        lay_out_card(CardFacts("W" * 300), single_tag(60, 40).tag, FontMeasure())
    assert find_stock("tag-80x50").tag == pytest.approx((80, 50))
