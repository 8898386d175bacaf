"""Papers laid out in mm: nothing leaves the page, rows never break, heads are repeated."""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.present.paper.blocks import (
    PAGES,
    Column,
    Document,
    Frames,
    Heading,
    Lines,
    PageName,
    Picture,
    Pictures,
    Said,
    Table,
    Tick,
    Words,
    cell,
)
from studio_log.present.paper.setting import MARGIN, Page, set_document
from studio_log.present.tag_marks import Box, FrameMark, QrMark, TextMark, TextSize


def measure(text: str, size: float, *, bold: bool) -> TextSize:
    """A font whose letters are all as wide as half their size."""
    return TextSize(len(text) * size * (0.55 if bold else 0.5), size * 0.75, size * 0.2)


def document(*blocks: object, code: str = "26-031") -> Document:
    return Document("26-031 Runners", code, ("Step card",), "26-031", "Harbour Lane", "as of now",
                    blocks)  # type: ignore[arg-type] # fmt: skip


def rows_of(count: int, words: str = "one two three") -> Table:
    columns = (Column("No.", mm=10), Column("What", share=1), Column("Begun", mm=31))
    rows = tuple((cell(str(n)), (Said("Title", bold=True), Said(words)), Frames())
                 for n in range(count))  # fmt: skip
    return Table(columns, rows, least=11)


def boxes(page: Page) -> list[Box]:
    return [*(mark.box for mark in page.marks), *(one.box for one in page.pictures)]


def words_on(page: Page) -> list[str]:
    return [mark.text for mark in page.marks if isinstance(mark, TextMark)]


@pytest.mark.parametrize("name", ["a4", "letter"])
@pytest.mark.parametrize("count", [0, 1, 17, 80])
def test_nothing_leaves_the_margins_and_no_row_breaks(name: PageName, count: int) -> None:
    blocks = (Heading("Steps"), rows_of(count, "many words " * 30), Lines(3),
              Pictures((Picture("a", 1.5, "said " * 30),) * 5, high=60, across=2),
              Words("word " * 400))  # fmt: skip
    pages = set_document(document(*blocks), measure, name)
    width, height = PAGES[name]
    inner = Box(0, 0, width, height).grown(-MARGIN + 0.2)
    for page in pages:
        assert all(inner.holds(box) for box in boxes(page))
        body = Box.between(MARGIN, MARGIN, width - MARGIN, height - MARGIN - 9 + 0.001)
        assert all(body.holds(row) for row in page.rows)
        assert not any(one.meets(other) for one in page.rows for other in page.rows
                       if one is not other)  # fmt: skip
    assert sum(len(page.rows) for page in pages) == count


def test_heads_and_numbers_stand_on_every_page() -> None:
    pages = set_document(document(rows_of(60)), measure)
    assert len(pages) > 2
    for number, page in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in words_on(page)
        assert "What" in words_on(page)
        assert ("Harbour Lane" in words_on(page)) == (number > 1)


def test_a_heading_goes_over_with_what_it_heads() -> None:
    for count in range(1, 40):
        pages = set_document(document(rows_of(count), Heading("Cautions"), rows_of(1)), measure)
        (where,) = (number for number, page in enumerate(pages) if "Cautions" in words_on(page))
        last = words_on(pages[where])
        assert last.index("Cautions") < len(last) - 5
        assert len(pages[-1].rows) >= 1


def test_every_word_stands_somewhere() -> None:
    words = [f"w{n}" for n in range(3000)]
    table = Table((Column("", share=1),), ((cell(" ".join(words)),),), heads=False)
    pages = set_document(document(table), measure)
    said = " ".join(text for page in pages for text in words_on(page)).split()
    assert [word for word in said if word.startswith("w")] == words
    assert len(pages) > 1


def test_frames_are_wide_enough_to_write_in() -> None:
    (page,) = set_document(document(rows_of(1)), measure)
    frames = [mark.box for mark in page.marks if isinstance(mark, FrameMark)]
    assert len(frames) == 4
    # A figure written by hand is some 4 mm wide and 6 mm high: common practice, no source.
    assert all(box.width >= 5 and box.height >= 6.5 for box in frames)


def test_the_day_sheet_s_frames_are_two_and_its_boxes_square() -> None:
    row = (Tick(), cell("Stir"), Frames(day=False))
    columns = (Column("", mm=8), Column("What", share=1), Column("Done at", mm=20))
    (page,) = set_document(document(Table(columns, (row,), least=10), code=""), measure)
    frames = [mark.box for mark in page.marks if isinstance(mark, FrameMark)]
    assert len(frames) == 3
    assert frames[0].width == frames[0].height
    assert not any(isinstance(mark, QrMark) for mark in page.marks)


def test_a_paper_like_a_book_is_refused() -> None:
    with pytest.raises(Refusal, match="Nothing was made"):
        set_document(document(rows_of(20_000)), measure)
