"""What the papers say: windows in absolute time, what is written already, what is due."""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.present.paper.blocks import Document, Frames, Heading, Said, Table
from studio_log.services.commands import SplitLot, Undo
from studio_log.services.papers import DRAWING, CardFor, DaySheetFor, RecordFor
from studio_log.services.swatches import NewSwatch
from tests.support.builders import NINE


@pytest.fixture
def code(shop):
    code = shop.new("Linen table runners")
    shop.mark(code, "bean-soak", Act.START)
    return code


def said(document: Document) -> str:
    found = []
    for block in document.blocks:
        if isinstance(block, Heading):
            found.append(block.text)
        elif isinstance(block, Table):
            for row in block.rows:
                found += [one.text for cell in row if isinstance(cell, tuple) for one in cell]
    return "\n".join(found)


def table(document: Document, number: int = 0) -> Table:
    return [block for block in document.blocks if isinstance(block, Table)][number]


def test_the_card_has_a_row_for_every_step_with_what_is_known_and_frames(shop, code):
    document = shop.studio.ask(CardFor(code)).document
    steps = table(document)
    assert len(steps.rows) == len(shop.lot(code).steps)
    assert document.code == code
    _, title, when, begun, ended = steps.rows[0]
    assert title[0] == Said("Bean soak", bold=True)
    # 9 June 2026 is a Tuesday; the beans were laid in at nine and want twelve hours.
    assert [one.text for one in when][:1] == ["end Tue 9 Jun 21:00"]
    assert begun == (Said("Tue 9 Jun 09:00"),)
    assert ended == Frames()
    assert steps.rows[1][3:] == (Frames(), Frames())
    assert "dry soybeans" in said(document)


def test_paper_never_says_today(shop, code):
    for question in (CardFor(code), RecordFor(code)):
        table_words = said(shop.studio.ask(question).document)
        journal = table_words.split("Journal")[-1]
        assert "today" not in journal
    assert "today" not in said(shop.studio.ask(CardFor(code)).document)


def test_the_record_tells_journal_lineage_and_sources(shop, code):
    shop.mark(code, "now", Act.NOTE, note="Smells of beans.", readings={"temperature": 21.0})
    child = shop.do(SplitLot(code, (2,), "half")).code
    shop.mark(code, "now", Act.NOTE, note="taken away again")
    shop.do(Undo(code))
    paper = shop.studio.ask(RecordFor(code))
    words = said(paper.document)
    assert f"split into {child}" in words
    assert "Smells of beans." in words
    assert "temperature 21" in words
    assert "taken back" in words
    assert "Where the figures come from" in words
    assert paper.drawn is not None
    assert paper.drawn.now == NINE
    assert any(getattr(block, "pictures", ()) and block.pictures[0].key == DRAWING
               for block in paper.document.blocks)  # fmt: skip


def test_the_record_tells_the_swatches_that_were_kept(shop, code):
    swatch = shop.do(NewSwatch(code, name="from the hem", place="card box")).code
    words = said(shop.studio.ask(RecordFor(code)).document)
    assert swatch in words
    assert "from the hem" in words
    assert "card box" in words
    assert "Swatches" not in said(shop.studio.ask(RecordFor(shop.new("other"))).document)


def test_the_day_sheet_lists_what_is_due_by_time_with_frames(shop, code):
    other = shop.new("second")
    shop.mark(other, "bean-soak", Act.START, at=NINE)
    shop.clock.move(hours=1)
    document = shop.studio.ask(DaySheetFor()).document
    later = [row for block in document.blocks if isinstance(block, Table) for row in block.rows]
    assert [row[2][0].text for row in later] == sorted([code, other])
    assert all(row[1][0].text == "Tue 9 Jun 21:00" for row in later)
    assert all(row[4] == Frames(day=False) for row in later)


def test_more_is_due_than_the_bench_shows(shop):
    for _ in range(15):
        code = shop.new()
        shop.mark(code, "bean-soak", Act.START)
    document = shop.studio.ask(DaySheetFor()).document
    rows = [row for block in document.blocks if isinstance(block, Table) for row in block.rows]
    assert len(rows) == 15


def test_an_unknown_lot_is_refused(shop):
    for question in (CardFor("26-999"), RecordFor("26-999")):
        with pytest.raises(Refusal, match="26-999"):
            shop.studio.ask(question)
