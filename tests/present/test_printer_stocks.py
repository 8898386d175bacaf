"""What lies in which printer: kept as a setting, hostile until read."""

import json

import pytest

from studio_log.domain.errors import Refusal
from studio_log.present.printer_stocks import (
    MOST,
    InPrinter,
    place_after,
    read_stocks,
    stocks_text,
    with_stock,
)
from studio_log.present.tag_stock import find_stock, tape

STOCK = "tag-80x50"
LAID = InPrinter(STOCK)


def test_the_printer_used_last_stands_last_and_the_oldest_goes():
    kept = {}
    for number in range(MOST + 5):
        kept = with_stock(kept, f"printer {number}", LAID)
    names = list(read_stocks(stocks_text(with_stock(kept, "printer 10", LAID))))
    assert len(names) == MOST
    assert names[-1] == "printer 10"
    assert names[0] == "printer 5"


@pytest.mark.parametrize("name", ["", "x" * 300])
def test_a_printer_without_a_name_is_not_kept(name):
    assert stocks_text(with_stock({}, name, LAID)) == ""
    assert with_stock({"Office": LAID}, name, LAID) == {"Office": LAID}


@pytest.mark.parametrize(
    "text",
    ["{", "[]", "7", '{"Office": 7}', '{"Office": "no stock"}', '{"": "tag-80x50"}',
     '{"Office": ["a4-2x4"]}', '{"Office": ["a4-2x4", 0]}', '{"Office": ["a4-2x4", 9]}',
     '{"Office": ["a4-2x4", true]}', '{"Office": ["a4-2x4", 2.5]}', '{"Office": [4, 2]}',
     '{"Office": ["tag-80x50", 2]}', '{"Office": ["a4-2x4", 2, 3]}',
     json.dumps({f"p{n}": STOCK for n in range(MOST + 1)}), "[" * 100_000],
)  # fmt: skip
def test_what_makes_no_sense_is_refused(text):
    with pytest.raises(Refusal):
        read_stocks(text)


def test_the_next_free_label_is_kept_and_a_stock_alone_means_the_first():
    laid = {"Labels": LAID, "Office": InPrinter("a4-2x4", 5)}
    text = stocks_text(laid)
    assert json.loads(text) == {"Labels": STOCK, "Office": ["a4-2x4", 5]}
    assert read_stocks(text) == laid


@pytest.mark.parametrize(
    ("start", "count", "place"), [(1, 1, 2), (5, 3, 8), (5, 4, 1), (8, 1, 1), (7, 20, 3)]
)
def test_what_was_printed_leaves_the_labels_behind_it(start, count, place):
    # Counted by hand on a sheet of eight.
    assert place_after(find_stock("a4-2x4"), start, count) == place


def test_a_tape_and_a_single_tag_always_begin_anew():
    assert place_after(tape(24, 60.0, 180), 1, 7) == 1
    assert place_after(find_stock(STOCK), 1, 3) == 1
