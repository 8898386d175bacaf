"""Tag stock: what ships, what a typed size may be, and tables that are wrong."""

from itertools import combinations
from pathlib import Path

import pytest

from studio_log.domain.errors import Refusal
from studio_log.present.tag_marks import Box
from studio_log.present.tag_stock import (
    DEFAULT_SLUG,
    TagStock,
    all_stock,
    cut_marks,
    find_stock,
    load_stock,
    pages_of,
    read_stock,
    stock_file,
)

GOOD = """
[[stock]]
slug = "two"
title = "Two"
page = [200, 60]
across = 2
down = 1
margin = [5, 10, 5, 10]
gap = [4, 0]
dots = 300
marks = true
"""
DEEP = b"x = " + b"[" * 9000


@pytest.fixture(params=all_stock(), ids=lambda stock: stock.slug)
def stock(request: pytest.FixtureRequest) -> TagStock:
    found = request.param
    assert isinstance(found, TagStock)
    return found


def test_the_default_is_a_single_tag_of_80_by_50_mm() -> None:
    first = all_stock()[0]
    assert (first.slug, first.page, first.tag, first.count) == (
        DEFAULT_SLUG,
        (80.0, 50.0),
        (80.0, 50.0),
        1,
    )


def test_sheets_have_the_pages_of_their_names() -> None:
    # Source: ISO 216 (A4, 210 × 297 mm); Letter, 8.5 × 11 in at 25.4 mm to the inch.
    pages = {"a4": (210.0, 297.0), "letter": (8.5 * 25.4, 11 * 25.4)}
    sheets = [one for one in all_stock() if one.count > 1]
    assert len(sheets) == 7
    for one in sheets:
        paper, division = one.slug.split("-")
        across, down = map(int, division.split("x"))
        assert one.page == pytest.approx(pages[paper])
        assert (one.across, one.down) == (across, down)


def test_tags_lie_on_the_page_and_apart(stock: TagStock) -> None:
    page = Box(0, 0, *stock.page)
    cells = [stock.cell(place) for place in range(stock.count)]
    assert all(page.holds(cell) for cell in cells)
    assert not any(one.meets(other) for one, other in combinations(cells, 2))


def test_margins_and_tags_add_up_to_the_page() -> None:
    # By hand: (200 - 10 - 10 - 4) / 2 = 88 wide, 60 - 5 - 5 = 50 high.
    [two] = read_stock(GOOD.encode(), "two.toml")
    assert two.tag == (88.0, 50.0)
    assert two.cell(1) == Box(102.0, 5.0, 88.0, 50.0)


def test_ticks_stand_in_the_margin_only(stock: TagStock) -> None:
    page = Box(0, 0, *stock.page)
    ticks = cut_marks(stock)
    assert bool(ticks) == stock.marks
    for tick in ticks:
        assert page.holds(tick.box)
        assert not any(tick.box.meets(stock.cell(place)) for place in range(stock.count))


def test_every_cut_of_a_sheet_has_a_tick_at_both_ends() -> None:
    # 2 × 5 tags side by side are parted by 3 upright and 6 level cuts.
    ticks = cut_marks(find_stock("a4-2x5"))
    upright = [tick for tick in ticks if tick.x1 == tick.x2]
    assert (len(upright), len(ticks) - len(upright)) == (2 * 3, 2 * 6)


def test_places_run_on_over_pages_from_the_first() -> None:
    sheet = find_stock("letter-2x4")
    pages = pages_of(10, sheet, start_at=7)
    assert [[place.index for place in page] for page in pages] == [[0, 1], list(range(2, 10))]
    assert pages[0][0].cell == sheet.cell(6)
    assert pages[1][0].cell == sheet.cell(0)


@pytest.mark.parametrize("start_at", [0, -1, 9, 10**9])
def test_a_place_that_is_not_there_is_refused(start_at: int) -> None:
    with pytest.raises(Refusal, match="places run from 1 to 8"):
        pages_of(1, find_stock("a4-2x4"), start_at)


def test_a_size_may_be_typed() -> None:
    typed = find_stock("tag-92.5x55")
    assert (typed.tag, typed.count) == ((92.5, 55.0), 1)


@pytest.mark.parametrize(
    "slug",
    ["", "tag", "tag-0x0", "tag-14x50", "tag-80x3", "tag-999x50", "tag-80x50\n", "tag-８０x50",
     "../a4-2x5", "A4-2X5", "x" * 10_000],
)  # fmt: skip
def test_stock_that_is_not_there_is_refused(slug: str) -> None:
    with pytest.raises(Refusal, match="Nothing was printed") as refused:
        find_stock(slug)
    assert len(str(refused.value)) < 300


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ('slug = "two"', 'slug = "../two"', "slug"),
        ('slug = "two"', "slug = 2", "slug"),
        ('title = "Two"', 'title = ""', "title"),
        ('title = "Two"', 'title = "a\\nb"', "title"),
        ("page = [200, 60]", "page = [200]", "page"),
        ("page = [200, 60]", "page = [nan, 60]", "page"),
        ("page = [200, 60]", "page = [200, inf]", "page"),
        ("page = [200, 60]", 'page = ["200", 60]', "page"),
        ("page = [200, 60]", "page = [true, 60]", "page"),
        ("page = [200, 60]", "page = [-200, 60]", "page"),
        ("page = [200, 60]", "page = [0, 60]", "page"),
        ("page = [200, 60]", "page = [31, 60]", "a tag"),
        ("across = 2", "across = 0", "across"),
        ("across = 2", "across = 2.0", "across"),
        ("across = 2", "across = true", "across"),
        ("across = 2\ndown = 1", "across = 21\ndown = 21", "across × down"),
        ("margin = [5, 10, 5, 10]", "margin = [5, 10, 5]", "margin"),
        ("margin = [5, 10, 5, 10]", "margin = [5, -10, 5, 10]", "margin"),
        ("gap = [4, 0]", "", "gap"),
        ("dots = 300", "dots = 10", "dots"),
        ("marks = true", 'marks = "yes"', "marks"),
        ("marks = true", "marks = true\ncolour = 1", "colour"),
    ],
)
def test_a_wrong_table_is_refused_with_file_and_field(old: str, new: str, field: str) -> None:
    assert old in GOOD
    with pytest.raises(Refusal, match=r"mine\.toml") as refused:
        read_stock(GOOD.replace(old, new).encode(), "mine.toml")
    assert f" {field} " in str(refused.value)


@pytest.mark.parametrize(
    "raw",
    [b"", b"\xff\xfe", b"stock = 1", b"stock = []", b"stock = [1]", b"[[stock", DEEP],
    ids=["empty", "not utf-8", "a number", "no entry", "no table", "torn", "deep"],
)  # fmt: skip
def test_what_is_no_table_is_refused(raw: bytes) -> None:
    with pytest.raises(Refusal, match=r"mine\.toml"):
        read_stock(raw, "mine.toml")


def test_a_slug_used_twice_is_refused() -> None:
    with pytest.raises(Refusal, match="slug is used twice"):
        read_stock((GOOD + GOOD).encode(), "mine.toml")


def test_a_file_that_cannot_be_read_or_is_too_long_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refusal, match=r"gone\.toml cannot be read"):
        load_stock(tmp_path / "gone.toml")
    long = tmp_path / "long.toml"
    long.write_text("#" * 70_000, encoding="utf-8")
    with pytest.raises(Refusal, match="too long"):
        load_stock(long)


def test_the_shipped_table_is_found() -> None:
    assert stock_file().name == "tag_stock.toml"
    assert load_stock(stock_file()) == all_stock()
