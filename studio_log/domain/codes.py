"""Codes of lots and of what else has a journal: final ones, and those given off the network.

A studio on a server gives its numbers there. What is begun while the server is out of reach
gets a provisional code, far above any number that a year sees; it is numbered as soon as the
server answers, and until then no tag is printed with it.
"""

import re
from collections.abc import Mapping
from typing import Any, Final

PROVISIONAL: Final = 90_000
"""Numbers above this one are provisional: 26-90001."""
_PROVISIONAL: Final = re.compile(r"(?<![\w-])[A-Z]?\d{2}-9\d{4}(?!\d)")
_CODE: Final = re.compile(r"[A-Z]?\d{2}-(\d{1,6})")


def is_provisional(code: str) -> bool:
    """Say whether a code was given off the network and is not final."""
    found = _CODE.fullmatch(code)
    return found is not None and int(found[1]) > PROVISIONAL


def renamed(value: Any, names: Mapping[str, str]) -> Any:
    """Give a value of JSON in which provisional codes are the final ones, wherever they stand."""
    if isinstance(value, str):
        return _PROVISIONAL.sub(lambda found: names.get(found[0], found[0]), value)
    if isinstance(value, Mapping):
        return {renamed(key, names): renamed(one, names) for key, one in value.items()}
    if isinstance(value, list | tuple):
        return [renamed(one, names) for one in value]
    return value


def names_provisional(value: Any) -> bool:
    """Say whether a provisional code stands anywhere in a value of JSON."""
    if isinstance(value, str):
        return _PROVISIONAL.search(value) is not None
    if isinstance(value, Mapping):
        return any(names_provisional(part) for pair in value.items() for part in pair)
    return isinstance(value, list | tuple) and any(map(names_provisional, value))
