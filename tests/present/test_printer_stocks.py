"""What lies in which printer: kept as a setting, hostile until read."""

import json

import pytest

from studio_log.domain.errors import Refusal
from studio_log.present.printer_stocks import MOST, read_stocks, with_stock

STOCK = "tag-80x50"


def test_the_printer_used_last_stands_last_and_the_oldest_goes():
    text = ""
    for number in range(MOST + 5):
        text = with_stock(read_stocks(text), f"printer {number}", STOCK)
    text = with_stock(read_stocks(text), "printer 10", STOCK)
    kept = list(read_stocks(text))
    assert len(kept) == MOST
    assert kept[-1] == "printer 10"
    assert kept[0] == "printer 5"


@pytest.mark.parametrize("name", ["", "x" * 300])
def test_a_printer_without_a_name_is_not_kept(name):
    assert with_stock({}, name, STOCK) == ""
    assert read_stocks(with_stock({"Office": STOCK}, name, STOCK)) == {"Office": STOCK}


@pytest.mark.parametrize(
    "text",
    ["{", "[]", "7", '{"Office": 7}', '{"Office": "no stock"}', '{"": "tag-80x50"}',
     json.dumps({f"p{n}": STOCK for n in range(MOST + 1)}), "[" * 100_000],
)  # fmt: skip
def test_what_makes_no_sense_is_refused(text):
    with pytest.raises(Refusal):
        read_stocks(text)
