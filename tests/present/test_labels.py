"""Labels, sheets by their measures and tape: everything inside, whole words, readable codes."""

import csv
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.present.label_layout import inner_of, lay_out_label, tape_length
from studio_log.present.qr import encode, printed_module
from studio_log.present.tag_layout import lay_out_any
from studio_log.present.tag_marks import Box, QrMark, TextMark
from studio_log.present.tag_stock import SheetSizes, TagStock, find_stock, own_sheet, tape
from tests.present.test_tag_layout import HOSTILE, ROWS, facts, wide_measure
from tests.support.reference import rows
from tests.support.tree import TREE

SHEETS = Path("shared") / "reference" / "label_sheets.csv"
"""Only read where it stands: it derives from other people's files."""


def sheets() -> list[dict[str, str]]:
    found = [place / SHEETS for place in TREE.parents if (place / SHEETS).is_file()]
    if not found:
        pytest.skip("the check table of label sheets is not beside the project")
    with found[0].open(encoding="utf-8") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def typed(row: dict[str, str]) -> TagStock:
    n = {key: float(value) for key, value in row.items() if key != "paper"}
    return own_sheet(
        SheetSizes((n["paper_w"], n["paper_h"]), (n["label_w"], n["label_h"]), int(n["nx"]),
                   int(n["ny"]), (n["x0"], n["y0"]), (n["dx"], n["dy"]))
    )  # fmt: skip


def test_every_common_sheet_can_be_typed_in_and_its_labels_lie_where_they_should() -> None:
    # Source: label_sheets.csv, geometries of a public template database; tolerance 0.01 mm.
    told = sheets()
    assert len(told) >= 8
    for row in told:
        stock = typed(row)
        assert stock.count == int(row["count"])
        first, last = stock.cell(0), stock.cell(stock.count - 1)
        wanted = ("x0", "y0", "last_x", "last_y", "label_w", "label_h", "right_mm", "bottom_mm")
        found = (first.x, first.y, last.x, last.y, last.width, last.height,
                 stock.page[0] - last.right, stock.page[1] - last.bottom)  # fmt: skip
        assert found == pytest.approx([float(row[name]) for name in wanted], abs=0.01)
        for one, other in combinations(map(stock.cell, range(stock.count)), 2):
            assert not one.grown(-0.01).meets(other.grown(-0.01))
        assert find_stock(stock.slug) == stock


def test_a_label_of_every_common_sheet_has_code_and_name() -> None:
    for row in sheets():
        stock = typed(row)
        label = lay_out_any(facts(rows=()), stock.tag, wide_measure, stock.dots)
        said = " ".join(mark.text for mark in label.marks if isinstance(mark, TextMark))
        assert "26-031" in said
        assert "name" not in label.left_out
        assert any(isinstance(mark, QrMark) for mark in label.marks)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"pitch": (69.0, 37.0)}, "overlap"),
        ({"first": (5.0, 0.0)}, "edge of the page"),
        ({"down": 9}, "edge of the page"),
        ({"label": (5.0, 2.0), "pitch": (5.0, 2.0)}, "to be read"),
        ({"page": (9000.0, 297.0)}, "page"),
    ],
)
def test_measures_that_do_not_go_together_are_refused(more: dict[str, object], words: str) -> None:
    told = {"page": (210.0, 297.0), "label": (70.0, 37.0), "across": 3, "down": 8,
            "first": (0.0, 0.0), "pitch": (70.0, 37.0)}  # fmt: skip
    own_sheet(SheetSizes(**told))  # type: ignore[arg-type]
    with pytest.raises(Refusal, match=words):
        own_sheet(SheetSizes(**(told | more)))  # type: ignore[arg-type]


@pytest.mark.long
@given(
    st.sampled_from([*HOSTILE, "", "Linen runners", "n" * 200]),
    st.sampled_from([*HOSTILE, "", "soy: allergen"]),
    st.floats(15, 120),
    st.floats(3.5, 60),
    st.sampled_from([180, 203, 300, 600]),
)
@settings(max_examples=150, deadline=None)
def test_marks_of_a_label_stay_inside_apart_and_whole(
    name: str, caution: str, width: float, height: float, dots: int
) -> None:
    try:
        label = lay_out_label(facts(name=name, caution=caution), (width, height), wide_measure,
                              dots)  # fmt: skip
    except Refusal:
        assert width < 40 or height < 5
        return
    inner = inner_of((width, height))
    for mark in label.marks:
        room = Box(0, 0, width, height) if isinstance(mark, QrMark) else inner
        assert room.holds(mark.quiet if isinstance(mark, QrMark) else mark.box)
    for one, other in combinations(label.marks, 2):
        first = one.quiet if isinstance(one, QrMark) else one.box
        assert not first.meets(other.box)
    said = " ".join(mark.text for mark in label.marks if isinstance(mark, TextMark))
    assert "…" not in said.replace("…", "", HOSTILE.count("…"))
    if "caution" not in label.left_out and caution == "soy: allergen":
        assert caution in said
    for mark in label.marks:
        if isinstance(mark, QrMark):
            # Whole dots of the printer, and none finer than what is still read.
            assert mark.module * dots / 25.4 == pytest.approx(round(mark.module * dots / 25.4))
            assert mark.module >= printed_module(0.33, dots)[1] - 1e-6


def test_a_small_label_drops_whole_fields_the_least_needed_first() -> None:
    label = lay_out_label(facts(), (38.0, 14.0), wide_measure)
    assert label.has_code
    assert label.left_out == tuple(
        what for what in ("name", "caution", "weight", "method", "begun", "studio")
        if what in label.left_out
    )  # fmt: skip
    assert "name" not in label.left_out
    assert "studio" in label.left_out


def test_the_smallest_symbol_of_a_lot_s_code_has_21_modules() -> None:
    # ISO/IEC 18004: version 1 has 21 modules and holds 16 letters at level Q.
    assert encode("26-031").modules == 21


@pytest.mark.parametrize("row", rows("tape_widths.csv"), ids=lambda row: row["width_mm"])
def test_tape_of_every_usual_width_takes_a_label(row: dict[str, str]) -> None:
    # Source: tape_widths.csv; usual widths, from memory.
    width = float(row["width_mm"])
    tag = facts(rows=())
    length = tape_length(tag, width, wide_measure)
    label = lay_out_label(tag, (length, width), wide_measure)
    # 29 modules with the quiet zone, of 0.3387 mm at 300 to the inch, are 9.8 mm.
    assert label.has_code == (width >= 9.9)
    if width >= 29:
        assert label.left_out == ()
    if length > 13 and not label.left_out:
        with_less = lay_out_label(tag, (length - 1, width), wide_measure, smallest=2.0)
        assert with_less.left_out or not with_less.has_code


def test_tape_is_named_by_its_width_and_cut_where_the_words_end() -> None:
    assert find_stock("tape-24").fits
    assert find_stock("tape-24").page[1] == 24
    assert find_stock("tape-24x90").page == (90, 24)
    assert find_stock("tape-12@180").dots == 180
    assert tape(24, None).slug == "tape-24"
    for slug in ("tape-", "tape-0", "tape-2", "tape-24x", "sheet:1x1", "tape-24@9"):
        with pytest.raises(Refusal):
            find_stock(slug)


def test_fields_that_were_not_chosen_stay_away() -> None:
    tag = facts(rows=ROWS)
    only = tag.only({"name", "rows"})
    assert (only.name, only.rows, only.caution) == (tag.name, tag.rows, tag.caution)
    assert (only.weight, only.method, only.begun, only.studio) == ("", "", "", "")
    assert tag.only(()).rows == ()
