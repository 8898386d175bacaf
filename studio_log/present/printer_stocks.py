"""Which stock of tags lies in which printer, as a setting keeps it: JSON, the last one last."""

import json
from collections.abc import Mapping
from typing import Final

from studio_log.domain.errors import Refusal
from studio_log.present.tag_stock import find_stock

MOST: Final = 20
LONGEST: Final = 200
AMISS: Final = "The printers' stocks make no sense. Nothing was changed."


def read_stocks(text: str) -> dict[str, str]:
    """Give stocks by the names of printers; Refusal where the text is none."""
    try:
        kept = json.loads(text) if text else {}
    except (ValueError, RecursionError) as error:
        raise Refusal(AMISS) from error
    if not isinstance(kept, dict) or len(kept) > MOST:
        raise Refusal(AMISS)
    for printer, stock in kept.items():
        if not 0 < len(printer) <= LONGEST or not isinstance(stock, str):
            raise Refusal(AMISS)
        find_stock(stock)
    return kept


def with_stock(stocks: Mapping[str, str], printer: str, stock: str) -> str:
    """Give the text with a printer's stock as the last one; the oldest of too many goes."""
    if not 0 < len(printer) <= LONGEST:
        return json.dumps(dict(stocks), ensure_ascii=False) if stocks else ""
    rest = {name: kept for name, kept in stocks.items() if name != printer}
    every = [*rest.items(), (printer, stock)][-MOST:]
    return json.dumps(dict(every), ensure_ascii=False)
