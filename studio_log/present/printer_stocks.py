"""Which stock of tags lies in which printer, and which of its labels is the next free one.

Kept as a setting: JSON by the names of printers, the one used last at the end. A stock alone
says that its first label is free; `[stock, place]` names another.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.present.tag_stock import TagStock, find_stock

MOST: Final = 20
LONGEST: Final = 200
AMISS: Final = "The printers' stocks make no sense. Nothing was changed."


@dataclass(frozen=True)
class InPrinter:
    """A stock by its slug, and the place of its next free label, from 1."""

    stock: str
    place: int = 1


def read_stocks(text: str) -> dict[str, InPrinter]:
    """Give what lies in printers by their names; Refusal where the text is none such."""
    try:
        kept = json.loads(text) if text else {}
    except (ValueError, RecursionError) as error:
        raise Refusal(AMISS) from error
    if not isinstance(kept, dict) or len(kept) > MOST:
        raise Refusal(AMISS)
    if not all(0 < len(printer) <= LONGEST for printer in kept):
        raise Refusal(AMISS)
    return {printer: _read(value) for printer, value in kept.items()}


def _read(value: object) -> InPrinter:
    stock, place = value if isinstance(value, list) and len(value) == 2 else (value, 1)
    # JSON's true and 2.0 are not places, though Python takes them for 1 and 2.
    if not isinstance(stock, str) or type(place) is not int:
        raise Refusal(AMISS)
    if not 1 <= place <= find_stock(stock).count:
        raise Refusal(AMISS)
    return InPrinter(stock, place)


def with_stock(
    stocks: Mapping[str, InPrinter], printer: str, laid: InPrinter
) -> dict[str, InPrinter]:
    """Put what lies in a printer last; the oldest of too many goes, a nameless one is not kept."""
    if not 0 < len(printer) <= LONGEST:
        return dict(stocks)
    rest = {name: one for name, one in stocks.items() if name != printer}
    return dict([*rest.items(), (printer, laid)][-MOST:])


def stocks_text(stocks: Mapping[str, InPrinter]) -> str:
    """Give the text that `read_stocks` reads; none where nothing is kept."""
    told = {
        name: one.stock if one.place == 1 else [one.stock, one.place]
        for name, one in stocks.items()
    }
    return json.dumps(told, ensure_ascii=False) if told else ""


def place_after(stock: TagStock, start_at: int, count: int) -> int:
    """Give the place of the label after `count` tags from `start_at`: 1 on a fresh sheet."""
    return (start_at - 1 + count) % stock.count + 1
